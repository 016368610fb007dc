#include "screens/rafter/corner_form.h"

#include <string>

#include "words/error_words.h"
#include "words/roofs/corner_words.h"

namespace bentbook::screens {
namespace {

std::string corner_path(std::string_view field) { return "corner." + std::string(field); }

}  // namespace

ShownCorner corner_now(Context& context) {
  if (const auto typed = typed_places(context)) {
    Result<RoofCorner> corner = solve_corner(typed->corner);
    if (corner) return {typed->corner, std::move(corner)};
  }
  return {context.places.corner, solve_corner(context.places.corner)};
}

void corner_field(Context& context, std::string_view field) {
  given_field(context, corner_path(field), field_name(field, context.ui.language));
}

void corner_form(Context& context, ItemKey prefix, std::string_view name, float height, const draw::Drawing& drawing,
                 const ShownCorner& shown) {
  const Voice voice = voice_of(context);
  const auto tapped =
      drawing_form(context, prefix, name, drawing_height(context, height), drawing,
                   [&](std::string_view key) { return corner_figure(key, shown.input, *shown.corner, voice); });
  if (tapped) open_field(context, corner_path(*tapped), field_name(*tapped, context.ui.language));
}

void corner_refused(Context& context, const ShownCorner& shown) {
  Ui& ui = context.ui;
  const Voice voice = voice_of(context);
  const Error& error = shown.corner.error();
  refusal(ui, "corner.refused", error_text(error, voice));
  const auto known = field_now(context, corner_path(error.where));
  corner_field(context, error.where);
  const auto offer = [&](const std::string& nearest, const FieldValue& value) {
    if (button(ui, "corner.use_limit", say(Msg::kRafterUseLimit, ui.language, nearest), Weight::kPrimary))
      put_field(context, corner_path(error.where), value);
  };
  if (known && error.limit > 0) {
    if (known->kind() == FieldKind::kLength && error.code == ErrorCode::kTooSmall)
      offer(say_length_at_least({error.limit}, voice), Length{error.limit});
    else if (known->kind() == FieldKind::kLength)
      offer(say_length_at_most({error.limit}, voice), Length{error.limit});
    if (known->kind() == FieldKind::kAngle) offer(say_angle({error.limit}, voice), Angle{error.limit});
  }
  if (error.code == ErrorCode::kImpossible && error.where == "peak") {
    if (button(ui, "corner.use_ridge", context.say(Msg::kCornerPeakRidge), Weight::kPrimary))
      put_field(context, corner_path("peak"), Choice{0});
  }
  space(ui, 16);
  for (const std::string_view field :
       {"eave_angle", "pitch", "pitch_other", "run", "hip_breadth", "hip_depth", "jack_depth"})
    if (field != error.where) corner_field(context, field);
}

}  // namespace bentbook::screens
