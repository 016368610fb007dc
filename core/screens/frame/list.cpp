#include "screens/frame/list.h"

#include <algorithm>
#include <array>
#include <string>

#include "frame/list/csv_write.h"
#include "frame/mark.h"
#include "numeric/sorting.h"
#include "screens/frame/form.h"
#include "screens/frame/hand.h"
#include "screens/timber/sheet.h"
#include "ui/widgets_inside.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

bool holds(std::string_view text, std::string_view wanted) {
  return std::search(text.begin(), text.end(), wanted.begin(), wanted.end(),
                     [](char a, char b) { return lower(a) == lower(b); }) != text.end();
}

/// What rows are put together by, and the heading over them.
struct Group {
  std::int64_t key = 0, second = 0;
  friend bool operator==(const Group&, const Group&) = default;
  friend bool operator<(const Group& a, const Group& b) { return a.key != b.key ? a.key < b.key : a.second < b.second; }
};

Group group_of(const Timber& timber, int order) {
  if (order == 0) return {static_cast<std::int64_t>(timber.kind)};
  if (order == 2) return {timber.wood.nominal.breadth.count, timber.wood.nominal.depth.count};
  if (order == 3) return {timber.place.bent, stands_in_bent(timber, timber.place.bent) ? 0 : 1};
  return {};
}

std::string heading_of(const Timber& timber, int order, int count, const Voice& voice) {
  std::string name;
  if (order == 0) name = kind_name(timber.kind, voice.language);
  if (order == 2) name = section_text(timber.wood.nominal, voice);
  if (order == 3) {
    const std::string bent = std::to_string(timber.place.bent);
    name = timber.place.bent < 0
               ? std::string(text(Msg::kListNoBent, voice.language))
               : say(stands_in_bent(timber, timber.place.bent) ? Msg::kViewBent : Msg::kListBay, voice.language, bent);
  }
  return name + " · " + std::to_string(count);
}

void make_rows(FrameMemory::List& list, const Frame& frame, const Voice& voice) {
  struct Found {
    int timber;
    Group group;
  };
  std::vector<Found> found;
  for (std::size_t i = 0; i < frame.timbers.size(); ++i) {
    const Timber& timber = frame.timbers[i];
    if (list.search.empty() || holds(timber.mark, list.search) ||
        holds(kind_name(timber.kind, voice.language), list.search))
      found.push_back({static_cast<int>(i), group_of(timber, list.order)});
  }
  const auto mark = [&](const Found& f) -> const std::string& {
    return frame.timbers[static_cast<std::size_t>(f.timber)].mark;
  };
  sort_by(found, [&](const Found& a, const Found& b) {
    return a.group == b.group ? mark_before(mark(a), mark(b)) : a.group < b.group;
  });
  list.rows.clear();
  list.found = static_cast<int>(found.size());
  for (std::size_t i = 0; i < found.size(); ++i) {
    if (list.order != 1 && (i == 0 || !(found[i].group == found[i - 1].group))) {
      std::size_t end = i;
      while (end < found.size() && found[end].group == found[i].group) ++end;
      const Timber& timber = frame.timbers[static_cast<std::size_t>(found[i].timber)];
      list.rows.push_back({-1, heading_of(timber, list.order, static_cast<int>(end - i), voice)});
    }
    list.rows.push_back({found[i].timber, {}});
  }
}

/// Where the frame, what is asked for, or the words that headings are made of have changed.
void make_rows_again(const Context& context, FrameMemory::List& list, const ShownFrame& shown) {
  const Voice voice = voice_of(context);
  std::string words = list.search;
  for (const int part :
       {list.order, static_cast<int>(voice.language), static_cast<int>(voice.lengths.form), voice.lengths.denominator})
    words += "/" + std::to_string(part);
  if (list.of == shown.solved && list.of_words == words) return;
  list.of = shown.solved;
  list.of_words = std::move(words);
  make_rows(list, *shown.frame(), voice);
}

/// All rows stand equally high, so that those out of sight need not be measured.
void timber_row(Context& context, const Timber& timber, const Rect& box, const Voice& voice) {
  Ui& ui = context.ui;
  std::string title = timber.mark, second = std::string(kind_name(timber.kind, voice.language)) + " · " +
                                            section_text(timber.wood.nominal, voice) + " · " +
                                            say_inches(timber.length, voice);
  if (timber.overridden.any())
    second =
        std::string(context.say(timber.overridden.added ? Msg::kSheetAdded : Msg::kSheetOverridden)) + " · " + second;
  const bool warned = !timber.warnings.empty();
  const Look look = add_pressed(ui, {"list." + timber.mark, Role::kButton, Touch::kPress, title, second, box}, false);
  ImDrawList& list = pen(ui);
  if (look.lit || look.held) list.AddRectFilled(top_left(box), bottom_right(box), ui.theme.pressed);
  list.AddRectFilled({box.x, box.y + box.h - 1}, bottom_right(box), ui.theme.rule);
  ImFont &strong = *ui.fonts.strong, &small = *ui.fonts.note;
  const float inner = box.w - 32 - (warned ? 28 : 0);
  const float top = box.y + (box.h - strong.FontSize - small.FontSize) / 2;
  draw_text(list, strong, {box.x, top}, ui.theme.ink, fit_text(strong, title, inner));
  draw_text(list, small, {box.x, top + strong.FontSize}, ui.theme.quiet, fit_text(small, second, inner));
  if (warned) draw_triangle_sign(list, {box.x + box.w - 54, box.y + box.h / 2 - 11, 22, 22}, ui.theme.caution);
  draw_icon(list, Icon::kForward, {box.x + box.w - 24, box.y + box.h / 2 - 10, 20, 20}, ui.theme.ink);
  draw_focus(ui, look, box);
  if (look.pressed) context.pages.push(frame_sheet_page(timber.mark));
}

void heading_row(Ui& ui, const std::string& words, std::size_t row, const Rect& box) {
  draw_text(pen(ui), *ui.fonts.strong, {box.x, box.y + box.h - ui.fonts.strong->FontSize - 6}, ui.theme.ink, words);
  Item item{"list.heading." + std::to_string(row), Role::kHeading, Touch::kNone, words, {}, box};
  item.level = 3;
  add_read(ui, std::move(item));
}

void rows(Context& context, const FrameMemory::List& list, const Frame& frame) {
  Ui& ui = context.ui;
  const Voice voice = voice_of(context);
  const float height = std::max(ui.theme.target + kGap, ui.fonts.strong->FontSize + ui.fonts.note->FontSize + 2 * kGap);
  const Rect all = take_box(ui, height * static_cast<float>(list.rows.size()));
  const Rect seen = ui.column.clip;
  const auto row_at = [&](float y) { return static_cast<long>((y - all.y) / height); };
  const long count = static_cast<long>(list.rows.size());
  // One beyond either edge, for the keyboard's sake.
  const long first = std::clamp(row_at(seen.y) - 1, 0L, count),
             last = std::clamp(row_at(seen.y + seen.h) + 2, 0L, count);
  for (long i = first; i < last; ++i) {
    const FrameMemory::List::Row& row = list.rows[static_cast<std::size_t>(i)];
    const Rect box{all.x, all.y + height * static_cast<float>(i), all.w, height};
    if (row.timber < 0)
      heading_row(ui, row.heading, static_cast<std::size_t>(i), box);
    else
      timber_row(context, frame.timbers[static_cast<std::size_t>(row.timber)], box, voice);
  }
}

void list_screen(Context& context) {
  frame_page(context, "list.page", [&](const ShownFrame& shown) {
    Ui& ui = context.ui;
    if (!shown.frame()) return frame_refused(context, shown);
    FrameMemory::List& list = context.frame_memory.list;
    if (const auto search = text_field(ui, "list.search", context.say(Msg::kListSearch), list.search))
      list.search = *search;
    if (const auto order = choice(ui, "list.order", context.say(Msg::kListOrder),
                                  {context.say(Msg::kListByKind), context.say(Msg::kListByMark),
                                   context.say(Msg::kListBySection), context.say(Msg::kListByBent)},
                                  list.order))
      list.order = *order;
    make_rows_again(context, list, shown);
    fact(ui, "list.count", context.say(Msg::kListFound), std::to_string(list.found), true);
    if (button(ui, "list.add", context.say(Msg::kHandAdd))) context.pages.push(frame_hand_page(""));
    if (!shown.book.frame.added.empty() && button(ui, "list.share", context.say(Msg::kListShare)))
      context.platform.share_file(context.desk.title() + ".csv", "text/csv", write_timbers_csv(shown.book.frame.added));
    rows(context, list, *shown.frame());
  });
}

}  // namespace

Page frame_list_page() { return {"frame.list", Msg::kFrameTimbers, list_screen}; }

}  // namespace bentbook::screens
