#include <vector>

#include "fuzz.h"
#include "shop/log/chunk.h"
#include "shop/log/record.h"

using namespace bentbook;

namespace {

/// Lines as they come from a camera: every one ends in an error or a piece, and what was taken can be taken again.
void read_lines(std::string_view bytes) {
  Chunks chunks, again;
  std::string_view rest = bytes;
  while (const auto line = take_line(rest)) {
    (void)take_chunk(chunks, *line);
    if (const auto label = read_label(*line)) fuzz::hold(label_text(*label) == *line);
    if (const auto plain = read_base45(*line)) fuzz::hold(read_base45(base45(*plain)).has_value());
  }
  for (const std::string& text : chunk_texts(chunks)) fuzz::hold(*take_chunk(again, text) == Taken::kNew);
  fuzz::hold(again.count() == chunks.count());
  const auto whole = joined(chunks);
  fuzz::hold(whole.has_value() ? chunks.complete() : true);
}

/// The bytes cut into pieces, given in an order of their own making, are the bytes.
void round_trip(std::string_view bytes) {
  if (bytes.size() < 2) return;
  const auto each = static_cast<std::size_t>(static_cast<unsigned char>(bytes[0]));
  const auto texts = make_chunks(bytes, each);
  if (!texts) return;
  Chunks chunks;
  const std::size_t from = static_cast<unsigned char>(bytes[1]) % texts->size();
  for (std::size_t i = 0; i < texts->size(); ++i)
    fuzz::hold(take_chunk(chunks, (*texts)[(from + i) % texts->size()]).has_value());
  fuzz::hold(*joined(chunks) == bytes);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view bytes = fuzz::text_of(data, size);
  read_lines(bytes);
  round_trip(bytes);
  return 0;
}
