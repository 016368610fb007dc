#pragma once
/// What the wrappers share among themselves and with the App. Screens do not include this.

#include <imgui.h>

#include <map>
#include <string>
#include <vector>

#include "ui/drawing/canvas.h"
#include "ui/measure_text.h"
#include "ui/platform.h"
#include "ui/widgets.h"

namespace bentbook::screens {

inline constexpr float kRowPad = 8;  ///< inside a row, around its text

struct Ui::Memory {
  Platform* platform = nullptr;

  struct Scroll {
    std::string key;
    int id = 0;
    float offset = 0, max = 0;
    bool moved = false;  ///< offset was set by us: ImGui is told with the next begin_scroll()
  };
  std::vector<Scroll> scrolls;
  struct Open {  ///< a scroll area between begin and end
    Column outer;
    std::size_t index = 0;
    Rect box;
    float top = 0;
  };
  std::vector<Open> open;

  // This frame's gestures and events; the App fills them before the page is drawn.
  std::vector<ScrollBy> scroll_by;
  std::vector<Pinch> pinches;
  std::string long_press;
  std::vector<PlatformEvent> committed_texts;
  struct Refused {  ///< what was typed into a field and does not show
    std::string key;
    std::uint32_t code = 0;
  } refused_text;

  struct Sheet {  ///< a drawing as it was last laid out, and how the fingers left it
    Canvas canvas;
    CanvasView view;
    Rect box;
  };
  std::map<std::string, Sheet, std::less<>> sheets;

  Rect message;              ///< a short word over the page, as it lay last: no row lies under it; w = 0: none
  std::string last_pressed;  ///< on a page, not on the keypad
  std::string editing;       ///< what the open keypad is on; "" if it is closed
  std::string reveal;        ///< item to bring into view
  std::string focus;         ///< item that the mirror's focus is on
  std::string hold;          ///< item that is being held
  double hold_from_ms = 0;
  bool hold_fired = false;
  bool new_page = false;    ///< another page, which starts at its top
  bool want_frame = false;  ///< a wrapper needs one more frame at once
  double wake_ms = -1;      ///< the next frame that a page wants by the clock; < 0: none
  void wake_at(double ms) { wake_ms = wake_ms < 0 || ms < wake_ms ? ms : wake_ms; }
};

/// How the item under the pointer is to be drawn.
struct Look {
  bool pressed = false;  ///< it was pressed, by a pointer, a key or the mirror
  bool lit = false;      ///< the pointer is on it
  bool held = false;     ///< the pointer is down on it
  bool focused = false;  ///< the keyboard is on it
};

/// Register a thing that is only read. `item.rect` is the whole box; the registry gets its visible part.
void add_read(Ui&, Item item);
/// Register a thing that is pressed, give it its place in ImGui, and say what happened to it. `writes`: it changes a
/// value, so a reading tab leaves it inert.
Look add_pressed(Ui&, Item item, bool writes = true);

[[nodiscard]] Rect shared_part(const Rect& a, const Rect& b);
[[nodiscard]] inline ImVec2 top_left(const Rect& r) { return {r.x, r.y}; }
[[nodiscard]] inline ImVec2 bottom_right(const Rect& r) { return {r.x + r.w, r.y + r.h}; }
[[nodiscard]] inline Rect shrunk(const Rect& r, float by) { return {r.x + by, r.y + by, r.w - 2 * by, r.h - 2 * by}; }

/// Ground under the finger and the rule that parts a row from the next.
void draw_row(Ui&, const Look&, const Rect& box);
/// A title over a quiet text, both wrapped.
struct TwoLines {
  float title = 0, note = 0;
  [[nodiscard]] float height() const { return title + note; }
};
[[nodiscard]] TwoLines measure_two(Ui&, std::string_view title, std::string_view second, float width);

void draw_icon(ImDrawList&, Icon, const Rect& box, ImU32 colour, float stroke = 2);
void draw_triangle_sign(ImDrawList&, const Rect& box, ImU32 colour);
void draw_focus(Ui&, const Look&, const Rect&);
void draw_dotted_line(ImDrawList&, ImVec2 from, float width, ImU32 colour);
/// Lines of text centred in a box, smaller than the font where it has no room for them.
void draw_centred(ImDrawList&, ImFont&, const Rect& box, ImU32 colour, std::string_view text);
[[nodiscard]] float wrapped_height(ImFont&, std::string_view text, float width);

}  // namespace bentbook::screens
