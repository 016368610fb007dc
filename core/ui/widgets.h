#pragma once
/// Every widget, wrapped once. A wrapper lays itself out below the one before it, draws in our own look, tells the
/// registry what it is (key, role, name, value, rectangle, touch) and takes the mirror's actions. Nothing else in the
/// screens draws something that can be pressed or read.
///
/// Keys are stable words from code ("rafter.span"), unique in a frame, never a label. Lengths and positions are CSS px.
/// Texts may hold measures as print_length() gives them; fractions are set as fractions and a measure is never broken.
///
///   body(ui, "saw.kind.note", text);
///   if (given(ui, "rafter.span", name, value)) keypad.open_length(...);
///   if (const auto picked = choice(ui, "saw.kind", name, {kinds}, index)) ...

#include <cstdint>
#include <initializer_list>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "ui/fonts.h"
#include "ui/gesture.h"
#include "ui/registry.h"
#include "ui/theme.h"
#include "words/strings.h"

namespace bentbook::screens {

using ItemKey = std::string_view;

/// Where the next widget goes: a column `width` wide whose next free line is at `y`.
struct Column {
  float x = 0, y = 0, width = 0;
  int scroll = 0;  ///< scroll area the column lies in, 0: none
  Rect clip;       ///< what of it can be seen
};

/// What wrappers stand on for one frame. Owned by the App; screens pass it on.
struct Ui {
  Registry& registry;
  const Theme& theme;
  const Fonts& fonts;
  Language language = Language::kEn;
  bool locked = false;     ///< rain lock: everything but scrolling and the unlock ring is inert
  bool read_only = false;  ///< another tab writes: what changes values is inert
  Column column;
  double now_ms = 0;
  struct Memory;  ///< what wrappers remember between frames (scroll offsets, holds)
  Memory& memory;

  [[nodiscard]] std::string_view say(Msg msg) const { return text(msg, language); }
};

// ── Layout ────────────────────────────────────────────────────────────────────────────────────────────────────────
/// Leave `px` free (grid: multiples of 8).
void space(Ui&, float px);
/// Take a box of this height over the column's width out of the flow.
[[nodiscard]] Rect take_box(Ui&, float height);
/// The same, as wide as `width`; the column goes on below.
[[nodiscard]] Rect take_box(Ui&, float width, float height);
/// Run `draw` in parts of the column side by side, `gap` apart; the column goes on below the tallest. On a column
/// narrower than `at_least` × parts they stand below one another instead.
template <class... Parts>
void side_by_side(Ui&, float gap, float at_least, Parts&&... parts);
/// Things of a list, each begun with next(), two abreast where the column has room for two that are `at_least` wide;
/// the column goes on below them when this ends.
class Abreast {
 public:
  Abreast(Ui&, float gap, float at_least);
  ~Abreast();
  Abreast(const Abreast&) = delete;
  Abreast& operator=(const Abreast&) = delete;
  void next();

 private:
  Ui& ui_;
  Column whole_;
  float step_, top_ = 0, bottom_ = 0;
  bool two_, right_ = true;
};
/// A scroll area that fills `box`; what stands between begin and end scrolls by finger, wheel and keyboard.
void begin_scroll(Ui&, ItemKey key, Rect box);
void end_scroll(Ui&);
/// Bring an item of this frame's scroll area into view with the next frame (a figure that the keypad would cover).
void reveal(Ui&, ItemKey item);
/// The keypad goes over to this item as if it had been tapped.
void turn_to(Ui&, ItemKey item);
/// Draw list of the window that the column lies in.
[[nodiscard]] ImDrawList& pen(Ui&);

// ── Words ─────────────────────────────────────────────────────────────────────────────────────────────────────────
void heading(Ui&, ItemKey, std::string_view text, int level = 2);
void body(Ui&, ItemKey, std::string_view text);
void note(Ui&, ItemKey, std::string_view text);
/// What gives no answer, or is not as it should be, and why; nobody is hurt by it: a bar and the text.
void refusal(Ui&, ItemKey, std::string_view text);
/// What can hurt: a drawn triangle, the word Caution, the text, in the caution colours.
void caution(Ui&, ItemKey, std::string_view text);

/// A caution in a line that more can be unfolded from; true when it was pressed.
[[nodiscard]] bool caution_row(Ui&, ItemKey, std::string_view text, bool open);

/// The heaviest type on the screen: what is cut or marked. `value` as print_length gives it; `about`: an about sign
/// stands before it (rounding moved it). `exact` is a quiet second line ("" for none). Announced when it changes.
void answer(Ui&, ItemKey, std::string_view label, std::string_view value, std::string_view exact = {},
            bool about = false);
/// A quiet fact: label left, value right, on one line where both fit. Announced with the answers when `live`.
void fact(Ui&, ItemKey, std::string_view label, std::string_view value, bool live = false);

// ── Pressed ───────────────────────────────────────────────────────────────────────────────────────────────────────
enum class Weight : std::uint8_t { kPrimary, kQuiet, kDestructive };
enum class Icon : std::uint8_t {
  kBack,
  kForward,
  kBefore,  ///< the one before on the same level, not the page below
  kAfter,
  kTurnLeft,
  kTurnRight,
  kClose,
  kPlus,
  kMinus,
  kTimes,
  kDivide,
  kErase,
  kTick,
  kUndo,
  kRedo,
  kLock,
  kMenu,
  kShare,
  kPen,
  kFind,
  kBin,
  kMove,
  kAngles,
  kRafter,
  kFrame,
  kShop,
  kRaising,
};

[[nodiscard]] bool button(Ui&, ItemKey, std::string_view label, Weight = Weight::kQuiet, bool enabled = true);
/// The same in a given box (bars, keypad). `name` is read aloud when it differs from what is drawn.
[[nodiscard]] bool button_in(Ui&, ItemKey, Rect, std::string_view label, Weight = Weight::kQuiet, bool enabled = true,
                             std::string_view name = {});
[[nodiscard]] bool icon_button(Ui&, ItemKey, Rect, Icon, std::string_view name, bool enabled = true);
/// Icon over a word; chosen ones carry a bar and heavier type. `type`: the words' line height, as tab_type says.
[[nodiscard]] bool tab_in(Ui&, ItemKey, Rect, Icon, std::string_view name, bool chosen, float type);
/// The largest line height, up to a body text's, at which no name is wider than `width`: tabs are read at one size and
/// never cut.
[[nodiscard]] float tab_type(Ui&, std::span<const std::string_view> names, float width);

/// One of a few, side by side (below one another where they do not fit). The new choice when one was pressed.
[[nodiscard]] std::optional<int> choice(Ui&, ItemKey, std::string_view name, std::span<const std::string_view> options,
                                        int chosen);
[[nodiscard]] std::optional<int> choice(Ui&, ItemKey, std::string_view name,
                                        std::initializer_list<std::string_view> options, int chosen);
/// On or off; true when it was pressed.
[[nodiscard]] bool toggle(Ui&, ItemKey, std::string_view label, bool on, std::string_view note = {});
/// A row that leads on: title, a quiet second line, a chevron.
[[nodiscard]] bool list_row(Ui&, ItemKey, std::string_view title, std::string_view note = {});
/// A row that more rows are unfolded from: as list_row, with a plus or minus in the chevron's place.
[[nodiscard]] bool fold_row(Ui&, ItemKey, std::string_view title, std::string_view note, bool open);
/// A row to choose from a list of things (saws): a ring that is filled when chosen.
[[nodiscard]] bool pick_row(Ui&, ItemKey, std::string_view title, std::string_view note, bool chosen);
/// A row of a list that is put in order by hand: as list_row, with a grip at its right edge that a finger drags. What
/// stays where it is has a tick there.
struct MovableRow {
  std::string_view title, note;
  std::string_view grip;  ///< the grip's name; empty: the row stays
  float at_least = 0;     ///< height
  bool caution = false;   ///< the note says what is wrong: it carries the triangle
  bool lifted = false;    ///< it lies under the finger, above the others
};
struct MovableSaid {
  bool pressed = false;  ///< the row
  bool gripped = false;  ///< the grip, as a key is pressed: tapped, or by the mirror
  Rect box;              ///< the whole row
};
[[nodiscard]] MovableSaid movable_row(Ui&, ItemKey key, ItemKey grip_key, const MovableRow&);
/// The place that a lifted row would take: dashed, as what is hidden.
void dashed_box(Ui&, const Rect&);
/// What the pointer does with an item that it went down on, asked before the item is drawn in this frame. A press that
/// was cancelled ends without kLetGo.
struct Hold {
  enum class Is : std::uint8_t { kNone, kHeld, kLetGo } is = Is::kNone;
  float y = 0;
};
[[nodiscard]] Hold hold_of(Ui&, ItemKey);
/// Scrolls the open area while something is held at `y`, near its top or its bottom edge.
void scroll_near_edge(Ui&, float y, double elapsed_ms, bool up, bool down);
/// A verdict in a strip at the page's foot, never cut, over a note of at most two lines; the mirror has all of it, and
/// `key`.open where it leads on. True when pressed. Its height has room for each of `titles`.
[[nodiscard]] float foot_height(Ui&, const Rect& page, std::span<const std::string_view> titles);
/// The strip's ground alone, with the line above it.
void foot_ground(Ui&, Rect);
[[nodiscard]] bool foot_row(Ui&, ItemKey, Rect, std::string_view title, std::string_view note, bool caution,
                            bool leads_on);
/// What the user gave: label left, the measure right in edit ink with a dotted underline. True when tapped. `editing`:
/// the keypad is on it.
[[nodiscard]] bool given(Ui&, ItemKey, std::string_view label, std::string_view value, bool editing = false);
/// A target over a figure that something else drew (canvas). Role button; grown to a full target around its middle.
[[nodiscard]] bool figure(Ui&, ItemKey, std::string_view name, std::string_view value, Rect drawn);
/// A figure that is only read (an answer on a drawing).
void figure_read(Ui&, ItemKey, std::string_view name, std::string_view value, Rect drawn, bool live = false);
/// A picture's place in the registry, so that it has a name and takes pinches. `drag`: it takes one finger too.
void picture(Ui&, ItemKey, std::string_view name, Rect, bool drag = false);
/// The long press that ended on `key` in this frame.
[[nodiscard]] bool long_pressed(Ui&, ItemKey);
/// Two fingers on `key` since the last frame.
[[nodiscard]] std::optional<Pinch> pinched(Ui&, ItemKey);

/// Text through the platform's real text field; the new text once it was committed. One with a character that does not
/// show (text/invisible.h) is refused below the field, the character named.
[[nodiscard]] std::optional<std::string> text_field(Ui&, ItemKey, std::string_view label, std::string_view value);
/// A value between min and max in steps, dragged; the new value while it changes.
[[nodiscard]] std::optional<double> slider(Ui&, ItemKey, std::string_view name, double value, double min, double max,
                                           double step, std::string_view value_text);
/// Fires when it was held for `hold_ms`; a ring fills meanwhile, around the icon where there is one.
[[nodiscard]] bool hold_button(Ui&, ItemKey, Rect, std::string_view label, double hold_ms,
                               std::optional<Icon> icon = {});

// ── Definitions ───────────────────────────────────────────────────────────────────────────────────────────────────
template <class... Parts>
void side_by_side(Ui& ui, float gap, float at_least, Parts&&... parts) {
  const Column whole = ui.column;
  constexpr auto n = static_cast<float>(sizeof...(Parts));
  const float width = (whole.width - gap * (n - 1)) / n;
  if (width < at_least) {
    (parts(ui), ...);
    return;
  }
  float left = whole.x, bottom = whole.y;
  const auto part = [&](auto&& draw) {
    ui.column = whole;
    ui.column.x = left;
    ui.column.width = width;
    draw(ui);
    if (ui.column.y > bottom) bottom = ui.column.y;
    left += width + gap;
  };
  (part(parts), ...);
  ui.column = whole;
  ui.column.y = bottom;
}

}  // namespace bentbook::screens
