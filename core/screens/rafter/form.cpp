#include "screens/rafter/form.h"

#include <utility>

#include "roof/rafter_fields.h"
#include "words/error_words.h"
#include "words/figures.h"

namespace bentbook::screens {
namespace {

std::string keypad_key(std::string_view field) { return "rafter." + std::string(field); }

bool is_pitch(std::string_view field) { return field == "pitch_left" || field == "pitch_right"; }
Side side_of(std::string_view field) { return field.ends_with("_right") ? Side::kRight : Side::kLeft; }

/// Accepted entries; whether the rafter can be cut so is the solver's to say. What is paced off on the building starts
/// with feet, what is measured on a timber with inches.
LengthRange range_of(std::string_view field) {
  LengthRange range;
  if (field == "span" || field == "run" || field.starts_with("measured_")) range.bare = BareUnit::kFoot;
  if (field.starts_with("plate_height")) range.min = Length{} - Length::feet(100);
  return range;
}

bool take_edits(Context& context, RafterInput& input) {
  bool any = false;
  for (const std::string_view field : rafter_length_keys())
    if (const auto value = context.keypad.take_length(keypad_key(field)))
      any |= set_rafter_length(input, field, *value);
  for (const Side side : {Side::kLeft, Side::kRight}) {
    if (const auto value = context.keypad.take_slope(keypad_key(of_side("pitch", side)))) {
      set_rafter_pitch(input, side, *value);
      any = true;
    }
  }
  if (const auto value = context.keypad.take_count("rafter.load")) {
    input.load_psf = static_cast<double>(*value);
    any = true;
  }
  return any;
}

/// True if the open keypad says something about this rafter.
bool preview(const Context& context, RafterInput& input) {
  if (!context.keypad.is_open() || !context.keypad.key().starts_with("rafter.")) return false;
  const std::string_view field = std::string_view(context.keypad.key()).substr(7);
  if (is_pitch(field)) {
    const auto value = context.keypad.preview_slope(context.keypad.key());
    if (value) set_rafter_pitch(input, side_of(field), *value);
    return value.has_value();
  }
  const auto value = context.keypad.preview_length(context.keypad.key());
  return value && set_rafter_length(input, field, *value);
}

}  // namespace

std::string of_side(std::string_view field, Side side) {
  return std::string(field) + (side == Side::kLeft ? "_left" : "_right");
}

ShownRafter rafter_now(Context& context) {
  Places next = context.places;
  if (take_edits(context, next.rafter) && !(next == context.places)) context.change(next);
  RafterInput typed = next.rafter;
  if (preview(context, typed)) {
    Result<RafterPair> pair = solve_rafters(typed);
    if (pair) return {typed, std::move(pair)};
  }
  return {next.rafter, solve_rafters(next.rafter)};
}

void open_rafter_field(Context& context, std::string_view field) {
  const RafterInput& input = context.places.rafter;
  const std::string name = field_name(field, context.ui.language);
  if (is_pitch(field))
    context.keypad.open_slope(keypad_key(field), name, rafter_pitch(input, side_of(field)));
  else if (is_rafter_length(field))
    context.keypad.open_length(keypad_key(field), name, rafter_length(input, field), range_of(field));
}

void rafter_field_row(Context& context, const ShownRafter& shown, std::string_view field) {
  const Voice voice = voice_of(context);
  const std::string value = is_pitch(field) ? print_slope(rafter_pitch(shown.input, side_of(field)), voice.marks)
                                            : say_length(rafter_length(shown.input, field), voice);
  const bool editing = context.keypad.is_open(keypad_key(field));
  if (given(context.ui, "field." + std::string(field), field_name(field, context.ui.language), value, editing))
    open_rafter_field(context, field);
}

void rafter_form(Context& context, ItemKey prefix, std::string_view name, float height, const draw::Drawing& drawing,
                 const ShownRafter& shown) {
  const Voice voice = voice_of(context);
  const auto tapped =
      drawing_form(context, prefix, name, drawing_height(context, height), drawing,
                   [&](std::string_view key) { return rafter_figure(key, shown.input, *shown.pair, voice); });
  if (tapped) open_rafter_field(context, *tapped);
}

void rafter_refused(Context& context, const ShownRafter& shown) {
  Ui& ui = context.ui;
  const Voice voice = voice_of(context);
  const Error& error = shown.pair.error();
  caution(ui, "rafter.refused", error_text(error, voice));
  const bool known = is_pitch(error.where) || is_rafter_length(error.where);
  if (known) rafter_field_row(context, shown, error.where);
  if (is_rafter_length(error.where) && error.limit > 0) {
    const std::string nearest = say_length_at_most({error.limit}, voice);
    if (button(ui, "rafter.use_limit", say(Msg::kRafterUseLimit, ui.language, nearest), Weight::kPrimary))
      edit_rafter(context, [&](RafterInput& input) { set_rafter_length(input, error.where, {error.limit}); });
  }
  space(ui, 16);
  for (const std::string_view field :
       {"span", "pitch_left", "pitch_right", "depth", "seat_left", "seat_right", "overhang_left"}) {
    if (field == error.where || (shown.input.alike && field.ends_with("_right"))) continue;
    rafter_field_row(context, shown, field);
  }
}

}  // namespace bentbook::screens
