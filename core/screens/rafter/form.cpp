#include "screens/rafter/form.h"

#include <utility>

#include "screens/rafter/pages.h"
#include "words/error_words.h"
#include "words/figures.h"

namespace bentbook::screens {
namespace {

std::string path_of(std::string_view field) { return "rafter." + std::string(field); }

}  // namespace

std::string of_side(std::string_view field, Side side) {
  return std::string(field) + (side == Side::kLeft ? "_left" : "_right");
}

ShownRafter rafter_now(Context& context) {
  if (const auto typed = typed_places(context)) {
    Result<RafterPair> pair = solve_rafters(typed->rafter);
    if (pair) return {typed->rafter, std::move(pair)};
  }
  return {context.places.rafter, solve_rafters(context.places.rafter)};
}

void rafter_field(Context& context, std::string_view field, std::string_view unit) {
  given_field(context, path_of(field), field_name(field, context.ui.language), unit);
}

void rafter_form(Context& context, ItemKey prefix, std::string_view name, float height, const draw::Drawing& drawing,
                 const ShownRafter& shown) {
  const Voice voice = voice_of(context);
  const auto tapped =
      drawing_form(context, prefix, name, drawing_height(context, height), drawing,
                   [&](std::string_view key) { return rafter_figure(key, shown.input, *shown.pair, voice); });
  if (!tapped) return;
  if (*tapped == "part.peak") return context.pages.push(rafter_peak_page());
  if (*tapped == "part.foot") return context.pages.push(rafter_foot_page());
  if (*tapped == "part.tail") return context.pages.push(rafter_tail_page());
  open_field(context, path_of(*tapped), field_name(*tapped, context.ui.language));
}

void rafter_refused(Context& context, const ShownRafter& shown) {
  Ui& ui = context.ui;
  const Voice voice = voice_of(context);
  const Error& error = shown.pair.error();
  refusal(ui, "rafter.refused", error_text(error, voice));
  const auto known = field_now(context, path_of(error.where));
  rafter_field(context, error.where);
  if (known && known->kind() == FieldKind::kLength && error.limit > 0) {
    const std::string nearest = say_length_at_most({error.limit}, voice);
    if (button(ui, "rafter.use_limit", say(Msg::kRafterUseLimit, ui.language, nearest), Weight::kPrimary))
      put_field(context, path_of(error.where), Length{error.limit});
  }
  space(ui, 16);
  for (const std::string_view field :
       {"span", "pitch_left", "pitch_right", "depth", "seat_left", "seat_right", "overhang_left"}) {
    if (field == error.where || (shown.input.alike && field.ends_with("_right"))) continue;
    rafter_field(context, field);
  }
}

}  // namespace bentbook::screens
