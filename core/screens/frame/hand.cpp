#include "screens/frame/hand.h"

#include <string>
#include <utility>

#include "book/book_edit.h"
#include "frame/drawings/hand_drawing.h"
#include "frame/keys.h"
#include "frame/placing/hand_timber.h"
#include "screens/frame/form.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

std::string hand_path(std::string_view mark) { return "frame.added.@" + std::string(mark) + "."; }

const HandTimber* find_hand(const Book& book, std::string_view mark) {
  for (const HandTimber& timber : book.frame.added)
    if (timber.mark == mark) return &timber;
  return nullptr;
}

std::string free_mark(const Book& book, const Frame* frame) {
  for (int n = 1;; ++n) {
    std::string mark = "X-" + std::to_string(n);
    const bool taken = find_hand(book, mark) != nullptr || (frame != nullptr && timber_by_mark(*frame, mark) >= 0);
    if (!taken) return mark;
  }
}

template <class Edit>
void edit_hand(Context& context, const HandTimber& timber, Edit&& edit) {
  edit_book(context, [&](Book& book) {
    HandTimber next = timber;
    edit(next);
    book = with_added(std::move(book), next);
  });
}

/// A tapped figure opens its field.
void hand_drawn(Context& context, const ShownFrame& shown, ItemKey key, std::string_view name, float height,
                const draw::Drawing& drawing, const std::string& root) {
  const Voice voice = voice_of(context);
  const auto words = [&](std::string_view figure) {
    bentbook::FigureText said = hand_figure(figure, shown.book, root, voice);
    if (figure == "station" && !has_usual_type(context)) said.drawn.clear();
    return said;
  };
  const auto tapped = drawing_form(context, key, name, drawing_height(context, height), drawing, words);
  if (tapped) open_field(context, root + *tapped, frame_field_name(root + *tapped, voice.language));
}

void feature_rows(Context& context, const ShownFrame& shown, const HandTimber& timber, std::size_t i) {
  Ui& ui = context.ui;
  const HandFeature& f = timber.features[i];
  const std::string number = std::to_string(i);
  const std::string prefix = hand_path(timber.mark) + "features." + number + ".";
  heading(ui, "hand.feature." + number, feature_name(f.kind, ui.language), 3);
  if (const auto face = choice(ui, "hand.face." + number, context.say(Msg::kFieldFace), {"1", "2", "3", "4"},
                               static_cast<int>(f.face) - 1))
    edit_hand(context, timber, [&](HandTimber& t) { t.features[i].face = static_cast<Face>(*face + 1); });
  hand_drawn(context, shown, "hand.cut." + number, feature_name(f.kind, ui.language), 210,
             hand_feature_drawing(timber, f), prefix);
  if (button(ui, "hand.remove." + number, context.say(Msg::kHandFeatureRemove), Weight::kDestructive)) {
    edit_hand(context, timber,
              [&](HandTimber& t) { t.features.erase(t.features.begin() + static_cast<std::ptrdiff_t>(i)); });
    context.toast(std::string(context.say(Msg::kUndone)), true);
  }
}

HandFeature new_feature(FeatureKind kind, const HandTimber& timber) {
  HandFeature f;
  f.kind = kind;
  f.station = {timber.length.count / 2};
  f.offset = {timber.wood.nominal.breadth.count / 2};
  f.along = Length::inches(6);
  f.across = Length::inches(2);
  f.depth = kind == FeatureKind::kHole ? Length{} : Length::inches(2);
  f.diameter = Length::inches(1);
  if (kind == FeatureKind::kTenon) f.station = timber.length;
  return f;
}

void features(Context& context, const ShownFrame& shown, const HandTimber& timber) {
  Ui& ui = context.ui;
  for (std::size_t i = 0; i < timber.features.size(); ++i) {
    const std::size_t before = timber.features.size();
    feature_rows(context, shown, timber, i);
    if (timber.features.size() != before) return;
  }
  heading(ui, "hand.add_heading", context.say(Msg::kHandFeatureAdd), 3);
  for (int k = 0; k < static_cast<int>(keys::kFeatureKind.size()); ++k) {
    const auto kind = static_cast<FeatureKind>(k);
    if (!enters_by_hand(kind)) continue;
    if (!button(ui, "hand.add." + std::string(keys::word(keys::kFeatureKind, kind)), feature_name(kind, ui.language)))
      continue;
    edit_hand(context, timber, [&](HandTimber& t) { t.features.push_back(new_feature(kind, t)); });
    // Its last row, so that all of them come into view.
    reveal(ui, "hand.remove." + std::to_string(timber.features.size()));
  }
}

void place_part(Context& context, const HandTimber& timber) {
  const std::string prefix = hand_path(timber.mark);
  if (toggle(context.ui, "hand.placed", context.say(Msg::kHandPlaced), timber.placed))
    edit_hand(context, timber, [](HandTimber& t) { t.placed = !t.placed; });
  if (!timber.placed) return;
  for (const char* axis : {"x", "y", "z"}) frame_field(context, prefix + axis);
  for (const char* angle : {"turn", "rise", "roll"}) frame_field(context, prefix + angle);
}

/// A mark that was not taken yet makes the timber.
void new_timber(Context& context, const ShownFrame& shown) {
  Ui& ui = context.ui;
  const std::string mark = free_mark(shown.book, shown.frame() ? &*shown.frame() : nullptr);
  body(ui, "hand.how", context.say(Msg::kHandHow));
  if (!button(ui, "hand.make", say(Msg::kHandMake, ui.language, mark), Weight::kPrimary)) return;
  edit_book(context, [&](Book& book) {
    HandTimber timber;
    timber.mark = mark;
    timber.species = book.frame.species;
    book = with_added(std::move(book), timber);
  });
  context.pages.turn_to(frame_hand_page(mark));
}

void hand_screen(Context& context) {
  const std::string mark = context.subject;
  frame_page(context, "hand.page", [&](const ShownFrame& shown) {
    Ui& ui = context.ui;
    if (mark.empty()) return new_timber(context, shown);
    const HandTimber* found = find_hand(shown.book, mark);
    if (found == nullptr) return note(ui, "hand.gone", say(Msg::kBookNoMark, ui.language, mark));
    // An edit replaces the book under the page: this copy stays.
    const HandTimber timber = *found;
    heading(ui, "hand.heading", mark);
    if (const Result<Timber> solved = solve_hand_timber(timber); !solved)
      refusal(ui, "hand.refused", frame_error_text(solved.error(), voice_of(context)));
    const std::string prefix = hand_path(mark);
    note(ui, "hand.side_title", context.say(Msg::kHandSide));
    hand_drawn(context, shown, "hand.timber", context.say(Msg::kHandSide), 150, hand_drawing(timber), prefix);
    note(ui, "hand.top_title", context.say(Msg::kHandTop));
    hand_drawn(context, shown, "hand.top", context.say(Msg::kHandTop), 110, hand_top_drawing(timber), prefix);
    hand_drawn(context, shown, "hand.section", context.say(Msg::kFrameSections), 130, hand_section_drawing(timber),
               prefix);
    note(ui, "hand.ends", context.say(Msg::kHandEnds));
    place_part(context, timber);
    features(context, shown, timber);
    space(ui, 16);
    if (button(ui, "hand.delete", context.say(Msg::kSheetTakeOut), Weight::kDestructive)) {
      edit_book(context, [&](Book& next) { next = without_added(std::move(next), mark); });
      context.toast(say(Msg::kSheetTakenOut, ui.language, mark), true);
      context.pages.pop();
    }
  });
}

}  // namespace

bentbook::FigureText hand_figure(std::string_view key, const Book& book, const std::string& root, const Voice& voice) {
  const std::string path = root + std::string(key);
  const auto field = field_at(book, path);
  if (!field) return {};
  std::string value = field_text(voice, *field), drawn;
  const auto* length = std::get_if<Length>(&field->value);
  if (key == "station") drawn = say(Msg::kAsideFromA, voice.language, value);
  const auto* angle = std::get_if<Angle>(&field->value);
  if (angle != nullptr && *angle == Angle{}) drawn = text(Msg::kEndCutSquare, voice.language);
  if (key == "diameter") drawn = say(Msg::kAsideHole, voice.language, value);
  if (key == "depth")
    drawn = length != nullptr && length->count == 0 ? std::string(text(Msg::kAsideThrough, voice.language))
                                                    : say(Msg::kAsideDeep, voice.language, value);
  return {std::move(value), frame_field_name(path, voice.language), std::move(drawn)};
}

Page frame_hand_page(std::string mark) { return {"frame.hand", Msg::kHandTitle, hand_screen, std::move(mark)}; }

}  // namespace bentbook::screens
