#include <algorithm>
#include <string>
#include <utility>

#include "screens/app/app_inside.h"
#include "screens/settings/help.h"
#include "screens/timber/go_to.h"
#include "words/words.h"

namespace bentbook::screens {
namespace {

constexpr double kUnlockMs = 800;
constexpr float kToastPad = 12;  ///< px

Msg place_name(Place place) {
  constexpr Msg kNames[] = {Msg::kPlaceAngles, Msg::kPlaceRafter, Msg::kPlaceFrame, Msg::kPlaceShop,
                            Msg::kPlaceRaising};
  return kNames[static_cast<std::size_t>(place)];
}

/// A page's title whole in its box: in smaller letters and over two lines where it must, cut where even that has no
/// room.
struct TitleLines {
  ImFont* font;
  float line;  ///< height
  std::vector<std::string> lines;
  TitleLines(Ui& ui, std::string_view title, float width, float height)
      : font(ui.fonts.strong), line(font->FontSize), lines{std::string(title)} {
    if (text_size(*font, title).x <= width) return;
    constexpr float kLeast = 15;
    font = ui.fonts.note;
    for (const float share : {1.0F, 0.8F, 0.65F, 0.5F}) {
      if (font->FontSize * share < kLeast && share < 1) break;
      line = font->FontSize * share;
      lines = wrap_text(*font, title, width / share);
      if (line * static_cast<float>(lines.size()) <= height &&
          std::all_of(lines.begin(), lines.end(),
                      [&](const std::string& l) { return text_size(*font, l).x * share <= width; }))
        return;
    }
    lines = {fit_text(*font, title, width * font->FontSize / line)};
  }
};

void fill(Ui& ui, const Rect& box) { pen(ui).AddRectFilled(top_left(box), bottom_right(box), ui.theme.panel); }

}  // namespace

std::string_view App::Impl::state_words(const Ui& ui) {
  if (read_only) return ui.say(Msg::kStateReadOnly);
  std::int64_t saved = 0;
  for (const Stored* store : stores()) {
    if (!store->failure.empty()) return ui.say(Msg::kStateFailed);
    if (store->pending()) return ui.say(Msg::kStatePending);
    saved += store->saved;
  }
  if (!shop.failure().empty()) return ui.say(Msg::kStateFailed);
  if (shop.pending()) return ui.say(Msg::kStatePending);
  return saved > 0 ? ui.say(Msg::kStateSaved) : std::string_view{};
}

/// Whether the page is about the open book.
bool App::Impl::subject_is_book() const {
  return (edits_book() || pages.place() == Place::kShop) && desk.state() == BooksDesk::State::kOpen;
}

std::string_view App::Impl::subject_name(const Ui& ui) const {
  return subject_is_book() ? shown_name(desk.title(), ui.language) : ui.say(Msg::kAppName);
}

/// The page's title and below it the book's name with what is kept; pressed, it leads to saws, settings, help.
void App::Impl::draw_title(Ui& ui, Rect box, bool stacked) {
  const std::string title(ui.say(pages.top().title));
  const std::string_view state = state_words(ui);
  const Look look = add_pressed(
      ui, {"bar.menu", Role::kButton, Touch::kPress, std::string(ui.say(Msg::kBarMenu)), std::string(state), box},
      false);
  ImDrawList& list = pen(ui);
  if (look.lit || look.held) list.AddRectFilled(top_left(box), bottom_right(box), ui.theme.pressed);
  const float pad = stacked ? 8 : kMargin, width = box.w - 2 * pad;
  ImFont& small = *ui.fonts.note;
  const TitleLines head(ui, title, width, box.h);
  const float high = head.line * static_cast<float>(head.lines.size());
  const bool two = high + small.FontSize <= box.h;
  float y = box.y + (box.h - high - (two ? small.FontSize : 0)) / 2;
  for (const std::string& line : head.lines) {
    draw_text(list, *head.font, {box.x + pad, y}, ui.theme.ink, line, head.line / head.font->FontSize);
    y += head.line;
  }
  Item heading_item{"page.title", Role::kHeading, Touch::kNone, title, {}, {box.x, y - high, box.w, high}};
  heading_item.level = 1;
  add_read(ui, std::move(heading_item));
  if (two) {
    // What is kept is said whole; a name gives way to it.
    std::string_view name = subject_name(ui);
    if (!state.empty() && (stacked || !subject_is_book())) name = {};
    const std::string behind = name.empty() ? std::string(state) : state.empty() ? "" : " · " + std::string(state);
    const float room = width - 20 - text_size(small, behind).x;
    const std::string line = name.empty() ? fit_text(small, behind, width - 20) : fit_text(small, name, room) + behind;
    draw_text(list, small, {box.x + pad, y}, ui.theme.quiet, line);
    draw_icon(list, Icon::kMenu, {box.x + pad + text_size(small, line).x + 4, y + small.FontSize / 2 - 7, 14, 14},
              ui.theme.ink);
  }
  draw_focus(ui, look, box);
  if (look.pressed && pages.top().key != std::string_view("menu")) pages.push(menu_page());
}

/// The key to any timber stands where there is one to go to and the keys beside it leave room.
bool App::Impl::finds(bool room) {
  return room && pages.place() != Place::kAngles && pages.place() != Place::kRafter &&
         desk.state() == BooksDesk::State::kOpen && pages.top().key != std::string_view("go_to");
}

/// Undo, redo, rain lock: from the right edge, or stacked in a side bar.
void App::Impl::draw_top_keys(Ui& ui, Rect box, bool stacked) {
  const float side = ui.theme.target;
  const bool three = stacked && box.w >= 3 * side + 2 * kGap;
  const float width = three ? (box.w - 2 * kGap) / 3 : stacked ? (box.w - kGap) / 2 : side;
  float x = stacked ? box.x : box.x + box.w - side;
  const auto next = [&] {
    const Rect r{x, box.y, width, side};
    x += stacked ? width + kGap : -(side + kGap);
    return r;
  };
  if (icon_button(ui, "bar.lock", next(), Icon::kLock, ui.say(Msg::kLockOn))) {
    locked = true;
    keypad.close();
  }
  if (finds(stacked ? three || !can_undo() : !can_redo()) &&
      icon_button(ui, "bar.find", next(), Icon::kFind, ui.say(Msg::kGoTo)))
    pages.push(go_to_mark_page());
  // Undo keeps its spot while there is either: a second press in haste never does the opposite.
  const bool redoes = !stacked && can_redo();
  if (!can_undo() && !redoes) return;
  const Rect undo_box = next();
  word_steps();
  const auto name = [&](Msg plain, Msg named, const std::string& words) {
    return words.empty() ? std::string(ui.say(plain)) : say(named, ui.language, words);
  };
  if (can_undo() &&
      icon_button(ui, "bar.undo", undo_box, Icon::kUndo, name(Msg::kUndo, Msg::kUndoWhat, step_words.undo), !read_only))
    undo();
  if (redoes &&
      icon_button(ui, "bar.redo", next(), Icon::kRedo, name(Msg::kRedo, Msg::kRedoWhat, step_words.redo), !read_only))
    redo();
}

void App::Impl::draw_back(Ui& ui, const Rect& box, bool worded) {
  const std::string name = say(Msg::kBackTo, ui.language, ui.say(pages.below().title));
  const Look look = add_pressed(ui, {"bar.back", Role::kButton, Touch::kPress, name, {}, box}, false);
  if (look.lit || look.held) pen(ui).AddRectFilled(top_left(box), bottom_right(box), ui.theme.pressed);
  const float mid = box.y + box.h / 2;
  draw_icon(pen(ui), Icon::kBack, {worded ? box.x + 8 : box.x + (box.w - 24) / 2, mid - 12, 24, 24}, ui.theme.ink, 3);
  if (worded)
    draw_text(pen(ui), *ui.fonts.strong, {box.x + 36, mid - ui.fonts.strong->FontSize / 2}, ui.theme.ink,
              fit_text(*ui.fonts.strong, ui.say(Msg::kBack), box.w - 40));
  draw_focus(ui, look, box);
  if (look.pressed) pages.pop();
}

void App::Impl::draw_places(Ui& ui, Rect box, bool stacked) {
  Rect rest = box;
  // The arrow has its place whether it is there or not, so that no tab moves under a thumb.
  const float arrow = ui.theme.target;
  const Rect back = stacked ? Rect{box.x, box.y + box.h - arrow, box.w, arrow} : Rect{box.x, box.y, arrow, box.h};
  if (pages.depth() > 0) draw_back(ui, back, stacked);
  if (stacked) {
    rest.h -= back.h + kGap;
  } else {
    rest.x += back.w + kGap;
    rest.w -= back.w + kGap;
  }
  const auto n = static_cast<float>(pages.places().size());
  // A low side bar has room for all only two by two.
  const bool pairs = stacked && (rest.h - kGap * (n - 1)) / n < ui.theme.target - 4;
  const float across = stacked ? (pairs ? 2.0F : 1.0F) : n;
  const float rows = stacked ? static_cast<float>((pages.places().size() + (pairs ? 1 : 0)) / (pairs ? 2 : 1)) : 1;
  // Whole pixels, or the last one ends beyond the edge by a rounding.
  const auto width = static_cast<float>(static_cast<int>((rest.w - kGap * (across - 1)) / across));
  const float height = stacked ? std::min(72.0F, (rest.h - kGap * (rows - 1)) / rows) : rest.h;
  std::vector<std::string_view> names;
  for (const Pages::Root& root : pages.places()) names.push_back(ui.say(place_name(root.place)));
  // A word may reach half into the gaps beside it.
  const float type = std::min(tab_type(ui, names, width + kGap - 4), height / 2);
  float x = rest.x, y = rest.y;
  for (const Pages::Root& root : pages.places()) {
    const std::string key = std::string("place.") + std::string(root.page.key);
    const bool chosen = root.place == pages.place();
    if (tab_in(ui, key, {x, y, width, height}, root.icon, ui.say(place_name(root.place)), chosen, type)) {
      pages.go(root.place);
      if (!chosen) save(places_store);
    }
    x += width + kGap;
    if (x + width > rest.x + rest.w + 1) {
      x = rest.x;
      y += height + kGap;
    }
  }
}

void App::Impl::draw_lock_strip(Ui& ui, Rect box) {
  fill(ui, box);
  const Rect inner{box.x + kGap, box.y + 4, box.w - 2 * kGap, box.h - 8};
  if (hold_button(ui, "lock.release", inner, ui.say(Msg::kLockRelease), kUnlockMs, Icon::kLock)) locked = false;
}

/// Draws the bars round `area` and returns what is left to the page.
Rect App::Impl::draw_bars(Ui& ui, Rect area, bool landscape) {
  const float target = ui.theme.target;
  if (landscape) {
    // Wide enough for the places' names at any text size, and for three keys and longer titles where the page can
    // spare it.
    constexpr float kSpared = 0.2F;
    const float three = 3 * target + 2 * kGap + 8;
    const float names = std::clamp(ui.fonts.body->FontSize * 4.7F, 104.0F, area.w * 0.36F);
    const float width = three <= area.w * kSpared ? std::max(names, three) : names;
    const Rect bar{area.x + area.w - width, area.y, width, area.h};
    fill(ui, {bar.x, 0, viewport.width - bar.x, viewport.height});
    const Rect inner{bar.x + 4, bar.y + 4, bar.w - 8, bar.h - 8};
    // Three lines of title where the places keep their height, two by two in three rows, the key back below them.
    const float spare = inner.h - 5 * target - 3 * kGap - 12;
    const float title = std::clamp(3 * ui.fonts.note->FontSize, target, std::max(target, spare));
    draw_title(ui, {inner.x, inner.y, inner.w, title}, true);
    draw_top_keys(ui, {inner.x, inner.y + title + 4, inner.w, target}, true);
    const float top = title + target + 12;
    draw_places(ui, {inner.x, inner.y + top, inner.w, inner.h - top}, true);
    Rect page{area.x, area.y, area.w - width, area.h};
    if (locked) {
      page.h -= target + kGap;
      draw_lock_strip(ui, {page.x, page.y + page.h, page.w, target + kGap});
    }
    return page;
  }
  const float top = target + 8, bottom = std::max(target + 8, ui.fonts.body->FontSize + 36);
  fill(ui, {0, 0, viewport.width, area.y + top});
  const int count = 1 + (finds(!can_redo()) ? 1 : 0) + (can_redo() ? 2 : can_undo() ? 1 : 0);
  const float keys = static_cast<float>(count) * (target + kGap);
  draw_title(ui, {area.x, area.y + 4, area.w - keys - kGap, target}, false);
  draw_top_keys(ui, {area.x, area.y + 4, area.w - kGap, target}, false);
  const Rect foot{area.x, area.y + area.h - bottom, area.w, bottom};
  fill(ui, {0, foot.y, viewport.width, viewport.height - foot.y});
  if (locked)
    draw_lock_strip(ui, foot);
  else
    draw_places(ui, foot, false);
  return {area.x, area.y + top, area.w, area.h - top - bottom};
}

/// Where it lies: over the page's foot; nothing where there is none or it has no room.
Rect App::Impl::toast_box(const Ui& ui, Rect page) {
  if (toast.until_ms >= 0 && now_ms >= toast.until_ms) toast = {};
  if (toast.until_ms < 0) return {};
  const float width = std::min(page.w - 2 * kGap, 480.0F);
  const float words = wrapped_height(*ui.fonts.body, toast.text, width - 2 * kToastPad - toast.key_width());
  const float height = std::max(ui.theme.target + 8, words + 2 * kToastPad);
  // It lies over the page alone: where the keypad leaves that no room, it waits.
  if (height + kGap > page.h) return {};
  return {page.x + (page.w - width) / 2, page.y + page.h - height - kGap, width, height};
}

void App::Impl::draw_toast(Ui& ui, Rect page) {
  const Rect box = toast_box(ui, page);
  // The page's rows make room for it, and take that back.
  if (box != memory.message) memory.want_frame = true;
  memory.message = box;
  if (box.w <= 0) return;
  const Theme& t = ui.theme;
  const float key = toast.key_width(), inner = box.w - 2 * kToastPad - key;
  const float words = wrapped_height(*ui.fonts.body, toast.text, inner);
  ImGui::SetCursorScreenPos(top_left(box));
  ImGui::BeginChild("toast", {box.w, box.h}, ImGuiChildFlags_None,
                    ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoBackground);
  ImDrawList& list = pen(ui);
  list.AddRectFilled(top_left(box), bottom_right(box), t.ink);
  draw_wrapped(list, *ui.fonts.body, {box.x + kToastPad, box.y + (box.h - words) / 2}, t.ground, toast.text, inner);
  Item item{"toast", Role::kText, Touch::kNone, toast.text, {}, box};
  item.live = true;
  add_read(ui, std::move(item));
  if (key > 0 &&
      button_in(ui, "toast.undo", {box.x + box.w - key - 4, box.y + 4, key, box.h - 8}, ui.say(Msg::kUndo))) {
    take_back(toast.undoes);
    toast = {};
  }
  ImGui::EndChild();
}

}  // namespace bentbook::screens
