#pragma once
/// The item registry: every widget of the last frame with its key, role, name, value and rectangle. One list, four
/// readers: the accessibility mirror, the browser tests, the text field overlay and the gesture arbiter.
/// The widget wrappers in widgets.h fill it; nothing else draws something that can be pressed or read.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "ui/input.h"

namespace bentbook::screens {

enum class Role : std::uint8_t {
  kButton,
  kCheckbox,
  kRadio,
  kTab,
  kSlider,
  kTextField,
  kHeading,
  kText,
  kAnswer,
  kDialog,
  kImage
};

/// What a finger that goes down on the item does (gesture.h).
enum class Touch : std::uint8_t {
  kPress,  ///< pressed on lift, unless it became a scroll
  kDrag,   ///< takes the finger at once (slider, tape)
  kTurn,   ///< takes a finger that goes across the page; one that goes along it scrolls what can be scrolled
  kHold,   ///< fires after a hold (rain lock, ticks)
  kNone,   ///< cannot be touched (text, headings)
};

struct Item {
  std::string key;  ///< stable, from code, never from a label; unique in a frame
  Role role = Role::kText;
  Touch touch = Touch::kNone;
  std::string name;   ///< accessible name, in the user's language
  std::string value;  ///< current value as text ("" where there is none)
  Rect rect;          ///< visible part, CSS px
  bool enabled = true;
  bool checked = false;                           ///< checkbox, radio, tab
  bool live = false;                              ///< an answer that changes; announced politely
  int level = 0;                                  ///< headings: 1..3
  double min = 0, max = 0, step = 0, number = 0;  ///< sliders
  int scroll = 0;                                 ///< scroll area the item lies in (0: none); see ScrollArea
  friend bool operator==(const Item&, const Item&) = default;
};

/// A region that a finger scrolls.
struct ScrollArea {
  int id = 0;
  std::string key;
  Rect rect;
  float offset = 0, max_offset = 0;
  bool horizontal = false;
};

/// An action from the mirror (screen reader, keyboard, test) waiting for its widget in the next frame.
struct Action {
  enum class Kind : std::uint8_t { kPress, kSetNumber, kSetText, kHold, kFocus } kind = Kind::kPress;
  std::string key;
  std::string text;
  double number = 0;
};

class Registry {
 public:
  void begin_frame();  ///< forget the last frame's items
  void add(Item item);
  void add(ScrollArea area);
  void end_frame();  ///< bumps revision() if anything differs from the frame before; drops stale actions
  [[nodiscard]] const std::vector<Item>& items() const { return items_; }
  [[nodiscard]] const std::vector<ScrollArea>& scroll_areas() const { return areas_; }
  [[nodiscard]] std::uint64_t revision() const { return revision_; }
  /// Topmost touchable item under a point, its rectangle grown by `slop`; nullptr if none.
  [[nodiscard]] const Item* at(float x, float y, float slop = 0) const;
  /// Topmost item under a point that means something when it is held: a touchable one, an answer, a picture.
  [[nodiscard]] const Item* held_at(float x, float y) const;
  [[nodiscard]] const Item* find(std::string_view key) const;
  /// Innermost area under a point that has something to scroll; nullptr if none.
  [[nodiscard]] const ScrollArea* area_at(float x, float y) const;

  void queue(Action action);
  /// For widgets: true and removed if such an action waits for `key`.
  bool take(std::string_view key, Action::Kind kind, Action* out = nullptr);
  [[nodiscard]] bool has_actions() const { return !actions_.empty(); }

 private:
  std::vector<Item> items_, before_;
  std::vector<ScrollArea> areas_;
  std::vector<Action> actions_;
  std::uint64_t revision_ = 0;
};

}  // namespace bentbook::screens
