#include "screens/frame/form.h"

#include <utility>

#include "frame/keys.h"
#include "screens/books/screen.h"
#include "words/frame_words.h"

namespace bentbook::screens {
ShownFrame frame_now(Context& context) {
  if (context.keypad.is_open() && context.keypad.key().starts_with("frame.")) {
    if (auto typed = typed_book(context)) {
      const BooksDesk::Preview seen = context.desk.preview(std::move(*typed));
      if (*seen.model.frame) return {seen.book, seen.model.frame, true};
    }
  }
  return {context.desk.book(), context.desk.model().frame, false};
}

std::string bay_path(const Bay& bay) { return "frame.bays.@" + std::to_string(bay.label) + ".width"; }

std::string frame_field_name(std::string_view path, Language language) {
  const auto ends = [&](std::string_view end) { return path.ends_with(end); };
  constexpr std::string_view kBays = "frame.bays.@", kSections = "frame.sections.", kHips = "frame.hips.";
  if (path.starts_with(kBays))
    return say(Msg::kBayNamed, language, path.substr(kBays.size(), path.rfind('.') - kBays.size()));
  if (path.starts_with("frame.girts.")) return std::string(text(Msg::kGirtTop, language));
  const bool section = ends(".breadth") || ends(".depth");
  if (path.starts_with(kHips) && !section)
    return field_name("hips_" + std::string(path.substr(kHips.size())), language);
  if (path.starts_with(kSections) || path.starts_with(kHips)) {
    const std::size_t from = path.starts_with(kHips) ? kHips.size() : kSections.size();
    const int i = keys::index_of(keys::kTimberKind, path.substr(from, path.rfind('.') - from));
    const std::string name(kind_name(static_cast<TimberKind>(i < 0 ? 0 : i), language));
    return say(ends(".breadth") ? Msg::kBreadthOf : Msg::kDepthOf, language, name);
  }
  for (const std::string_view joints : {"frame.joints.", ".joint_a.", ".joint_b."})
    if (const std::size_t at = path.find(joints); at != std::string_view::npos) {
      std::string_view measure = path.substr(at + joints.size());
      if (at == 0) measure = measure.substr(measure.find('.') + 1);  // the meeting's word stands before it
      return std::string(joint_measure_name(measure, language));
    }
  constexpr std::pair<std::string_view, std::string_view> kNames[] = {{".plate_left", "plate_height_left"},
                                                                      {".plate_right", "plate_height_right"},
                                                                      {".actual.breadth", "actual_breadth"},
                                                                      {".actual.depth", "actual_depth"},
                                                                      {".nominal.breadth", "breadth"},
                                                                      {".nominal.depth", "depth"},
                                                                      {".section.breadth", "breadth"},
                                                                      {".section.depth", "depth"},
                                                                      {".depth", "feature_depth"},
                                                                      {".end_a.angle", "a_angle"},
                                                                      {".end_a.tilt", "a_tilt"},
                                                                      {".end_b.angle", "b_angle"},
                                                                      {".end_b.tilt", "b_tilt"}};
  for (const auto& [end, name] : kNames)
    if (ends(end)) return field_name(name, language);
  return field_name(path.substr(path.rfind('.') + 1), language);
}

void frame_field(Context& context, std::string_view path, std::string_view unit) {
  given_field(context, path, frame_field_name(path, context.ui.language), unit);
}

void frame_refused(Context& context, const ShownFrame& shown) {
  Ui& ui = context.ui;
  const Error& error = shown.frame().error();
  refusal(ui, "frame.refused", frame_error_text(error, voice_of(context)));
  const std::string refused = "frame." + error.where;
  if (const auto field = field_now(context, refused)) {
    frame_field(context, refused);
    const bool bound = error.code == ErrorCode::kTooSmall || error.code == ErrorCode::kTooLarge;
    if (field->kind() == FieldKind::kLength && bound && error.limit > 0) {
      const std::string nearest = say_length({error.limit}, voice_of(context));
      if (button(ui, "frame.use_limit", say(Msg::kRafterUseLimit, ui.language, nearest), Weight::kPrimary))
        put_field(context, refused, Length{error.limit});
    }
  }
  space(ui, 16);
  for (const std::string_view path :
       {"frame.span", "frame.plate_left", "frame.plate_right", "frame.pitch_left", "frame.pitch_right"})
    if (path != refused) frame_field(context, path);
  for (const Bay& bay : shown.plan().bays) frame_field(context, bay_path(bay));
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
      refusal(ui, "book.unreadable",
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
