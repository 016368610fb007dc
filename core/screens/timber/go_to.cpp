#include "screens/timber/go_to.h"

#include <algorithm>

#include "frame/mark.h"
#include "numeric/sorting.h"
#include "screens/frame/form.h"
#include "screens/frame/list.h"
#include "screens/shop/timber.h"
#include "screens/timber/sheet.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

/// More keys than these and a line is asked for first.
constexpr std::size_t kMostMarks = 24;

std::string kind_part(std::string_view mark) { return std::string(mark.substr(0, mark.find('-'))); }

/// The letters after the dash: "A", "AC"; a mark without them has none.
std::string line_part(std::string_view mark) {
  const std::size_t from = std::min(mark.find('-'), mark.size() - 1) + 1;
  std::size_t to = from;
  while (to < mark.size() && mark[to] >= 'A' && mark[to] <= 'Z') ++to;
  return std::string(mark.substr(from, to - from));
}

struct KeyCap {
  std::string text, shown, name;
  bool chosen = false;
};

/// Keys in rows over the column's width; which one was pressed.
std::optional<std::size_t> keys(Ui& ui, const std::string& prefix, const std::vector<KeyCap>& caps, float at_least) {
  const float side = ui.theme.target;
  const auto across = std::max(1, static_cast<int>((ui.column.width + kGap) / (std::max(at_least, side) + kGap)));
  const float width = (ui.column.width - kGap * static_cast<float>(across - 1)) / static_cast<float>(across);
  std::optional<std::size_t> pressed;
  Rect row;
  for (std::size_t i = 0; i < caps.size(); ++i) {
    const auto column = static_cast<int>(i) % across;
    if (column == 0) row = take_box(ui, side + kGap);
    const Rect box{row.x + static_cast<float>(column) * (width + kGap), row.y, width, side};
    if (button_in(ui, prefix + caps[i].text, box, caps[i].shown, caps[i].chosen ? Weight::kPrimary : Weight::kQuiet,
                  true, caps[i].name))
      pressed = i;
  }
  return pressed;
}

/// The different parts of the marks, in their order; the chosen one is marked.
template <class Part, class Name>
std::vector<KeyCap> parts_of(const std::vector<const Timber*>& timbers, const std::string& chosen, Part part,
                             Name name) {
  std::vector<KeyCap> out;
  for (const Timber* t : timbers) {
    std::string text = part(t->mark);
    const auto same = [&](const KeyCap& cap) { return cap.text == text; };
    if (text.empty() || std::any_of(out.begin(), out.end(), same)) continue;
    const bool is_chosen = text == chosen;
    std::string said = name(*t, text);
    out.push_back({std::move(text), said, said, is_chosen});
  }
  return out;
}

void go_to(Context& context, const std::string& mark) {
  context.pages.turn_to(context.pages.place() == Place::kShop ? shop_timber_page(mark) : frame_sheet_page(mark));
}

void go_to_screen(Context& context) {
  frame_page(context, "go_to.page", [&](const ShownFrame& shown) {
    if (!shown.frame()) return frame_refused(context, shown);
    Ui& ui = context.ui;
    FrameMemory::GoTo& memory = context.frame_memory.go_to;
    std::vector<const Timber*> timbers;
    timbers.reserve(shown.frame()->timbers.size());
    for (const Timber& t : shown.frame()->timbers) timbers.push_back(&t);
    sort_by(timbers, [](const Timber* a, const Timber* b) {
      return a->kind == b->kind ? mark_before(a->mark, b->mark) : a->kind < b->kind;
    });
    note(ui, "go_to.kinds", context.say(Msg::kGoToKind));
    const auto kinds = parts_of(timbers, memory.kind, kind_part, [&](const Timber& t, const std::string& text) {
      return text + " · " + std::string(kind_name(t.kind, ui.language));
    });
    if (const auto i = keys(ui, "go_to.kind.", kinds, 168)) memory = {kinds[*i].text, {}};
    const auto others = [&](const Timber* t) { return kind_part(t->mark) != memory.kind; };
    timbers.erase(std::remove_if(timbers.begin(), timbers.end(), others), timbers.end());
    if (timbers.size() > kMostMarks) {
      note(ui, "go_to.lines", context.say(Msg::kGoToLine));
      const auto lines =
          parts_of(timbers, memory.line, line_part, [](const Timber&, const std::string& text) { return text; });
      if (const auto i = keys(ui, "go_to.line.", lines, 64)) memory.line = lines[*i].text;
      const auto elsewhere = [&](const Timber* t) { return line_part(t->mark) != memory.line; };
      timbers.erase(std::remove_if(timbers.begin(), timbers.end(), elsewhere), timbers.end());
    }
    space(ui, kGap);
    std::vector<KeyCap> marks;
    marks.reserve(timbers.size());
    for (const Timber* t : timbers) marks.push_back({t->mark, t->mark, t->mark, false});
    if (const auto i = keys(ui, "go_to.mark.", marks, 96)) go_to(context, marks[*i].text);
    space(ui, kGap);
    if (list_row(ui, "go_to.search", context.say(Msg::kListSearch))) context.pages.turn_to(frame_list_page());
  });
}

}  // namespace

Page go_to_mark_page() { return {"go_to", Msg::kGoTo, go_to_screen}; }

}  // namespace bentbook::screens
