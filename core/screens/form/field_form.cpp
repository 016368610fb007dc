#include "screens/form/field_form.h"

#include <algorithm>
#include <utility>

#include "numeric/libm.h"
#include "screens/form/drawing_form.h"
#include "screens/form/usual.h"

namespace bentbook::screens {
namespace {

constexpr std::string_view kRafterRoot = "rafter.", kBenchRoot = "bench.", kCornerRoot = "corner.";

bool in_places(std::string_view path) {
  return path.starts_with(kRafterRoot) || path.starts_with(kBenchRoot) || path.starts_with(kCornerRoot);
}

bool book_open(const Context& context) { return context.desk.state() == BooksDesk::State::kOpen; }

/// The frame of the open book; nullptr: its plan gives none.
const Frame* frame_of(const Context& context) {
  const Result<Frame>& frame = *context.desk.model().frame;
  return frame ? &*frame : nullptr;
}

/// A count or a number, in the unit that it is kept in.
double kept_number(const Field& field) {
  const auto* count = std::get_if<std::int64_t>(&field.value);
  return count != nullptr ? static_cast<double>(*count) : std::get<double>(field.value);
}
EntryStep step_of(const Context& context, const Field& field) { return entry_step(field.kept, context.style().form); }

bool by_keypad(FieldKind kind) {
  return kind != FieldKind::kText && kind != FieldKind::kFlag && kind != FieldKind::kChoice;
}

/// What the keypad reads, as a value of that field: as it is kept where it is what the figure shows already. None:
/// nothing was read.
std::optional<FieldValue> read_value(const Context& context, const Field& field, const Keypad::Reading& reading) {
  const EntryStep step = step_of(context, field);
  const auto now = [&](std::int64_t shown, const FieldValue& read) {
    return *reading.count == shown ? field.value : read;
  };
  switch (field.kind()) {
    case FieldKind::kLength:
      if (reading.length) return *reading.length;
      break;
    case FieldKind::kSlope:
      if (reading.slope) return *reading.slope;
      break;
    case FieldKind::kAngle:
      if (reading.angle) return *reading.angle;
      break;
    case FieldKind::kCount:
      if (reading.count) return now(steps_of(kept_number(field), step), steps_of(kept_of(*reading.count, step), {}));
      break;
    case FieldKind::kNumber:
      if (reading.count) return now(steps_of(kept_number(field), step), kept_of(*reading.count, step));
      break;
    case FieldKind::kWeight: {
      const WeightUnit unit = weight_unit(context.style().form);
      if (reading.count)
        return now(whole_units(std::get<bentbook::Weight>(field.value), unit),
                   bentbook::Weight{*reading.count * per_unit(unit)});
      break;
    }
    default:
      break;
  }
  return std::nullopt;
}

Result<Book> set_in_book(const Context& context, std::string_view path, const FieldValue& value) {
  return with_field(context.desk.book(), path, value, frame_of(context));
}

std::optional<FieldValue> typed_value(const Context& context) {
  const std::string& path = context.keypad.key();
  const auto reading = context.keypad.preview(path);
  const auto field = reading ? field_now(context, path) : std::nullopt;
  return field ? read_value(context, *field, *reading) : std::nullopt;
}

/// What is gone by now (its book closed, its timber taken out) takes nothing.
template <class Values, class Change, class Set>
void take_into(Context& context, std::initializer_list<std::string_view> roots, const Values& now, const Change& change,
               const Set& set) {
  std::optional<Values> next;
  for (const std::string_view root : roots) {
    for (std::string path; !(path = context.keypad.waiting(root)).empty();) {
      const auto reading = context.keypad.take(path);
      const auto field = field_now(context, path);
      const auto value = field ? read_value(context, *field, *reading) : std::nullopt;
      if (!value) continue;
      if (auto told = set(next ? *next : now, path, *value)) next = std::move(*told);
    }
  }
  if (next && !(*next == now)) change(std::move(*next));
}

void open_number(Context& context, std::string_view path, std::string_view name, const Field& field) {
  const bool count = field.kind() == FieldKind::kCount;
  const EntryStep step = step_of(context, field);
  // Rounded inward: nothing past a limit can be entered.
  constexpr double kMost = 1'000'000;
  const double least = libm::ceil(std::max(0.0, count ? static_cast<double>(field.least) : 0) / step.size);
  const double most = libm::floor((count ? static_cast<double>(field.most) : field.high) / step.size);
  context.keypad.open_count(path, name, steps_of(kept_number(field), step), static_cast<std::int64_t>(least),
                            static_cast<std::int64_t>(std::min(kMost, most)), step);
}

void open_on(Context& context, std::string_view path, std::string_view name, const Field& field) {
  Keypad& keypad = context.keypad;
  switch (field.kind()) {
    case FieldKind::kLength:
      return keypad.open_length(path, name, std::get<Length>(field.value), field.length);
    case FieldKind::kSlope:
      return keypad.open_slope(path, name, std::get<Slope>(field.value));
    case FieldKind::kAngle:
      return keypad.open_angle(path, name, std::get<Angle>(field.value), field.angle.min, field.angle.max);
    case FieldKind::kCount:
    case FieldKind::kNumber:
      return open_number(context, path, name, field);
    case FieldKind::kWeight:
      return keypad.open_count(path, name,
                               whole_units(std::get<bentbook::Weight>(field.value), weight_unit(context.style().form)),
                               0, 1'000'000);
    default:
      return;
  }
}

/// What is changed now is what undo will name.
void touch_field(Context& context, std::string_view path, std::string_view name) {
  constexpr std::size_t kRemembered = 40;
  std::erase_if(context.touched, [&](const NamedField& field) { return field.path == path; });
  context.touched.insert(context.touched.begin(), {std::string(path), std::string(name)});
  if (context.touched.size() > kRemembered) context.touched.pop_back();
}

void open_keypad(Context& context, std::string_view path, std::string_view name, const Field& field) {
  touch_field(context, path, name);
  open_on(context, path, name, field);
  offer_usual(context, path, field);
}

}  // namespace

std::optional<Field> field_now(const Context& context, std::string_view path) {
  if (in_places(path)) return field_at(context.places, path);
  if (!book_open(context)) return std::nullopt;
  return field_at(context.desk.book(), path, frame_of(context));
}

std::string field_text(const Voice& voice, const Field& field) {
  const FieldValue& value = field.value;
  switch (field.kind()) {
    case FieldKind::kText:
      return std::get<std::string>(value);
    case FieldKind::kCount:
    case FieldKind::kNumber:
      return say_kept(kept_number(field), field.kept, voice);
    case FieldKind::kLength:
      return say_length(std::get<Length>(value), voice);
    case FieldKind::kSlope:
      return print_slope(std::get<Slope>(value), voice.marks);
    case FieldKind::kAngle:
      return say_angle(std::get<Angle>(value), voice);
    case FieldKind::kWeight:
      return print_weight(std::get<bentbook::Weight>(value), voice.lengths.form);
    case FieldKind::kFlag:
    case FieldKind::kChoice:
      break;
  }
  return {};
}

void given_field(Context& context, std::string_view path, std::string_view name, std::string_view unit) {
  const auto field = field_now(context, path);
  if (!field || !by_keypad(field->kind())) return;
  Field shown = *field;
  if (const auto reading = context.keypad.preview(path))
    if (const auto typed = read_value(context, *field, *reading)) shown.value = *typed;
  std::string text = field_text(voice_of(context), shown);
  if (!unit.empty()) text += ' ' + std::string(unit);
  if (given(context.ui, path, name, text, context.keypad.is_open(path))) open_keypad(context, path, name, *field);
}

void walk_on(Context& context, std::string_view path, std::string_view name, std::string_view item) {
  if (!context.keypad.take_next(path)) return;
  turn_to(context.ui, item);
  open_field(context, path, name);
}

void open_field(Context& context, std::string_view path, std::string_view name) {
  if (const auto field = field_now(context, path)) open_keypad(context, path, name, *field);
}

bool given_flag(Context& context, std::string_view path, std::string_view name, std::string_view second) {
  const auto field = field_now(context, path);
  const bool on = field && field->kind() == FieldKind::kFlag && std::get<bool>(field->value);
  if (field && toggle(context.ui, path, name, on, second)) {
    touch_field(context, path, name);
    put_field(context, path, !on);
  }
  return on;
}

void given_choice(Context& context, std::string_view path, std::string_view name,
                  std::initializer_list<std::string_view> options) {
  const auto field = field_now(context, path);
  if (!field || field->kind() != FieldKind::kChoice) return;
  if (const auto picked = choice(context.ui, path, name, options, std::get<Choice>(field->value).index)) {
    touch_field(context, path, name);
    put_field(context, path, Choice{*picked});
  }
}

void put_field(Context& context, std::string_view path, const FieldValue& value) {
  if (in_places(path)) {
    auto next = with_field(context.places, path, value);
    if (next && !(*next == context.places)) context.change(std::move(*next));
  } else if (book_open(context)) {
    if (auto next = set_in_book(context, path, value)) context.change_book(std::move(*next));
  }
}

void take_fields(Context& context) {
  take_into(context, {"frame.", "raising.", "stock."}, context.desk.book(), context.change_book,
            [&](Book book, std::string_view path, const FieldValue& value) {
              return with_field(std::move(book), path, value, frame_of(context));
            });
  take_into(context, {kRafterRoot, kBenchRoot, kCornerRoot}, context.places, context.change,
            [](Places places, std::string_view path, const FieldValue& value) {
              return with_field(std::move(places), path, value);
            });
}

std::optional<Book> typed_book(const Context& context) {
  if (in_places(context.keypad.key()) || !book_open(context)) return std::nullopt;
  const auto value = typed_value(context);
  if (!value) return std::nullopt;
  auto next = set_in_book(context, context.keypad.key(), *value);
  return next ? std::optional(std::move(*next)) : std::nullopt;
}

std::optional<Places> typed_places(const Context& context) {
  const auto value = in_places(context.keypad.key()) ? typed_value(context) : std::nullopt;
  if (!value) return std::nullopt;
  auto next = with_field(context.places, context.keypad.key(), *value);
  return next ? std::optional(std::move(*next)) : std::nullopt;
}

}  // namespace bentbook::screens
