#include "screens/frame/form.h"

#include <utility>

#include "frame/keys.h"
#include "screens/books/screen.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

constexpr std::string_view kPrefix = "frame.";
std::string keypad_key(std::string_view field) { return std::string(kPrefix) + std::string(field); }

bool is_slope(std::string_view field) { return field == "pitch_left" || field == "pitch_right"; }

const Frame* frame_of(const BookModel& model) { return *model.frame ? &**model.frame : nullptr; }

/// One outcome of the keypad into the book: what the field holds says which kind is to be taken.
void take_edit(Context& context, Book& book, const std::string& key) {
  const std::string_view field = std::string_view(key).substr(kPrefix.size());
  Keypad& keypad = context.keypad;
  if (is_slope(field)) {
    if (const auto slope = keypad.take_slope(key)) set_slope(book, field, *slope);
  } else if (Angle* at = find_angle(book, field)) {
    *at = keypad.take_angle(key).value_or(*at);
  } else if (const auto now = count_at(book, field)) {
    set_count(book, field, keypad.take_count(key).value_or(*now));
  } else if (const auto length = keypad.take_length(key)) {
    set_length(book, field, *length, frame_of(context.desk.model()));
  }
}

bool preview(Context& context, Book& book) {
  const Keypad& keypad = context.keypad;
  if (!keypad.is_open() || !keypad.key().starts_with(kPrefix)) return false;
  const std::string_view field = std::string_view(keypad.key()).substr(kPrefix.size());
  if (const auto slope = keypad.preview_slope(keypad.key())) return set_slope(book, field, *slope), true;
  if (const auto angle = keypad.preview_angle(keypad.key())) {
    if (Angle* at = find_angle(book, field)) *at = *angle;
    return true;
  }
  const auto length = keypad.preview_length(keypad.key());
  if (length) set_length(book, field, *length, frame_of(context.desk.model()));
  return length.has_value();
}

/// What is paced off on the building starts with feet, what is measured on a timber with inches.
LengthRange range_of(std::string_view field) {
  LengthRange range;
  const std::string_view what = split_key(field).first;
  if (what == "span" || what == "bay" || what == "plate_left" || what == "plate_right" || what == "girt" ||
      what == "stock_most")
    range.bare = BareUnit::kFoot;
  return range;
}

}  // namespace

void take_frame_edits(Context& context) {
  if (context.desk.state() != BooksDesk::State::kOpen || context.keypad.waiting(kPrefix).empty()) return;
  Book next = context.desk.book();
  for (std::string key; !(key = context.keypad.waiting(kPrefix)).empty();) take_edit(context, next, key);
  context.change_book(std::move(next));
}

ShownFrame frame_now(Context& context) {
  if (context.keypad.is_open() && context.keypad.key().starts_with(kPrefix)) {
    Book typed = context.desk.book();
    if (preview(context, typed)) {
      const BooksDesk::Preview seen = context.desk.preview(std::move(typed));
      if (*seen.model.frame) return {seen.book, seen.model.frame, true};
    }
  }
  return {context.desk.book(), context.desk.model().frame, false};
}

std::string frame_field_name(std::string_view field, Language language) {
  const auto [what, rest] = split_key(field);
  if (what == "bay") return say(Msg::kBayNamed, language, rest);
  if (what == "girt") return std::string(text(Msg::kGirtTop, language));
  if (what == "section") {
    const auto [kind, part] = split_key(rest);
    const int i = keys::index_of(keys::kTimberKind, kind);
    const std::string name(kind_name(static_cast<TimberKind>(i < 0 ? 0 : i), language));
    return say(part == "breadth" ? Msg::kBreadthOf : Msg::kDepthOf, language, name);
  }
  const std::size_t colon = field.rfind(':');
  if (what == "joint" || what == "end")
    if (const auto name = joint_measure_name(field.substr(colon + 1), language); !name.empty())
      return std::string(name);
  std::string name(colon == std::string_view::npos ? field : field.substr(colon + 1));
  if (name == "plate_left" || name == "plate_right") name.insert(5, "_height");
  return field_name(name, language);
}

void frame_length_row(Context& context, std::string_view field, std::string_view name, Length value,
                      LengthRange range) {
  const std::string key = keypad_key(field);
  const Voice voice = voice_of(context);
  if (given(context.ui, key, name, say_length(value, voice), context.keypad.is_open(key)))
    context.keypad.open_length(key, name, value, range);
}

void open_plan_field(Context& context, const Book& book, std::string_view field) {
  const std::string name = frame_field_name(field, context.ui.language);
  if (is_slope(field)) return context.keypad.open_slope(keypad_key(field), name, slope_of(book.frame, field));
  if (const auto at = length_at(book, field)) context.keypad.open_length(keypad_key(field), name, *at, range_of(field));
}

void plan_row(Context& context, const Book& book, std::string_view field) {
  if (const auto at = length_at(book, field))
    frame_length_row(context, field, frame_field_name(field, context.ui.language), *at, range_of(field));
}

void slope_row(Context& context, const Book& book, std::string_view field) {
  const std::string key = keypad_key(field), name = frame_field_name(field, context.ui.language);
  const std::string value = print_slope(slope_of(book.frame, field), voice_of(context).marks);
  if (given(context.ui, key, name, value, context.keypad.is_open(key))) open_plan_field(context, book, field);
}

void angle_row(Context& context, const Book& book, std::string_view field) {
  const auto at = angle_at(book, field);
  if (!at) return;
  const std::string key = keypad_key(field), name = frame_field_name(field, context.ui.language);
  if (given(context.ui, key, name, say_angle(*at, voice_of(context)), context.keypad.is_open(key)))
    context.keypad.open_angle(key, name, *at, Angle{} - Angle::degrees(180), Angle::degrees(180));
}

void count_row(Context& context, const Book& book, std::string_view field, std::string_view value, std::int64_t most) {
  const auto count = count_at(book, field);
  if (!count) return;
  const std::string key = keypad_key(field), name = frame_field_name(field, context.ui.language);
  const std::string plain = std::to_string(*count);
  if (given(context.ui, key, name, value.empty() ? std::string_view(plain) : value, context.keypad.is_open(key)))
    context.keypad.open_count(key, name, *count, 0, most);
}

void frame_refused(Context& context, const ShownFrame& shown) {
  Ui& ui = context.ui;
  const Error& error = shown.frame().error();
  caution(ui, "frame.refused", frame_error_text(error, voice_of(context)));
  const bool slope = is_slope(error.where);
  if (slope) slope_row(context, shown.book, error.where);
  if (length_at(shown.book, error.where)) {
    plan_row(context, shown.book, error.where);
    const bool bound = error.code == ErrorCode::kTooSmall || error.code == ErrorCode::kTooLarge;
    if (bound && error.limit > 0) {
      const std::string nearest = say_length({error.limit}, voice_of(context));
      if (button(ui, "frame.use_limit", say(Msg::kRafterUseLimit, ui.language, nearest), Weight::kPrimary))
        edit_book(context, [&](Book& book) { set_length(book, error.where, {error.limit}, nullptr); });
    }
  }
  space(ui, 16);
  for (const std::string_view field : {"span", "plate_left", "plate_right"})
    if (field != error.where) plan_row(context, shown.book, field);
  for (const std::string_view field : {"pitch_left", "pitch_right"})
    if (field != error.where) slope_row(context, shown.book, field);
  for (const Bay& bay : shown.plan().bays) plan_row(context, shown.book, "bay:" + std::to_string(bay.label));
}

bool book_is_open(Context& context) {
  Ui& ui = context.ui;
  const BooksDesk& desk = context.desk;
  switch (desk.state()) {
    case BooksDesk::State::kOpen:
      return true;
    case BooksDesk::State::kWaiting:
      note(ui, "book.waiting", context.say(Msg::kBookWaiting));
      return false;
    case BooksDesk::State::kUnreadable:
      caution(ui, "book.unreadable",
              say(Msg::kBookUnreadableWhy, ui.language, frame_error_text(desk.error(), voice_of(context))));
      if (button(ui, "book.share_raw", context.say(Msg::kDamagedShare))) context.desk.share(desk.shelf().open);
      break;
    case BooksDesk::State::kNone:
      body(ui, "book.none", context.say(Msg::kBookNone));
      break;
  }
  if (button(ui, "book.to_books", context.say(Msg::kBooks), Weight::kPrimary)) context.pages.push(books_page());
  return false;
}

}  // namespace bentbook::screens
