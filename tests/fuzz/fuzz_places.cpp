#include "book/places.h"
#include "fuzz.h"
#include "roof/rafter_drawing.h"
#include "words/error_words.h"
#include "words/figures.h"

using namespace bentbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto places = read_places(fuzz::text_of(data, size));
  if (!places) {
    fuzz::hold(!places.error().where.empty());
    return 0;
  }
  const std::string once = write_places(*places);
  const auto again = read_places(once);
  fuzz::hold(again.has_value());
  fuzz::hold(again->rafter == places->rafter && again->angles == places->angles);
  fuzz::hold(write_places(*again) == once);
  // Whatever can be read can be solved or refused.
  static_cast<void>(solve_triangle(places->angles.triangle));
  const auto pair = solve_rafters(places->rafter);
  if (!pair) {
    fuzz::hold(!error_text(pair.error(), {}).empty());
    return 0;
  }
  const draw::Drawing drawing = roof_drawing(places->rafter, *pair);
  for (const auto& d : drawing.dimensions) fuzz::hold(!rafter_figure(d.key, places->rafter, *pair, {}).text.empty());
  return 0;
}
