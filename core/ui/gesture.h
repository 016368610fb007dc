#pragma once
/// Fingers to presses, scrolling, zoom. Pure logic: touches and last frame's registry in, pointer events and gestures
/// out; no ImGui, no clock (times are handed in, ms).
///
/// One finger. Going down it sends only its position (the widget under it shows that it is meant). On an item that
/// takes the finger at once (Touch::kDrag, kHold) the press follows in the same breath. Else the press waits: lifted
/// within kSlop it becomes press and release; moved past kSlop inside a scroll area it scrolls that area, the press is
/// dropped, and after the lift the area coasts to a stop. On what is turned (Touch::kTurn) a finger that leaves the
/// slop and does not scroll takes hold of it. Held still for kLongPressMs, also on an answer or a picture that is not
/// turned, it becomes a long press and nothing else. After every lift the pointer goes away, or the widget would stay
/// lit. Second finger: whatever the first had begun is cancelled; both zoom and move about their centroid.

#include <cstdint>
#include <string>
#include <vector>

#include "ui/input.h"
#include "ui/registry.h"

namespace bentbook::screens {

/// What ImGui is told, in order. kAway: no pointer anywhere. kCancel: let go of the active widget without a press.
struct PointerEvent {
  enum class Kind : std::uint8_t { kMove, kDown, kUp, kAway, kCancel } kind = Kind::kMove;
  float x = 0, y = 0;
  friend constexpr bool operator==(const PointerEvent&, const PointerEvent&) = default;
};

/// Content of scroll area `area` is to move by `by` px along its axis (positive: the offset grows).
struct ScrollBy {
  int area = 0;
  float by = 0;
};

/// Two fingers since the last step: scale by `factor` about (x, y), then move by (dx, dy).
struct Pinch {
  std::string key;  ///< item under the centroid when the second finger came down; "" if none
  float x = 0, y = 0;
  float factor = 1;
  float dx = 0, dy = 0;
};

struct GestureStep {
  std::vector<PointerEvent> pointer;
  std::vector<ScrollBy> scrolls;
  std::vector<Pinch> pinches;
  std::string long_press;  ///< key of the item held still for kLongPressMs
};

class Gesture {
 public:
  static constexpr float kSlop = 10;               ///< px that a finger may wander and still press
  static constexpr double kLongPressMs = 500;      ///< still for so long: a long press
  static constexpr float kCoastSlowing = 0.0025F;  ///< px/ms lost each ms while coasting
  static constexpr float kCoastStart = 0.08F;      ///< px/ms below which a lift does not coast
  static constexpr double kVelocityWindow = 90;    ///< ms of movement before the lift that give the speed

  void touch(TouchPhase phase, std::int64_t finger, float x, float y, double now_ms, const Registry& registry);
  /// Let timers and coasting run up to now and hand out all that happened since the last call.
  GestureStep step(double now_ms, const Registry& registry);
  /// ms until step() has something to do without a touch: 0 while coasting, < 0 never.
  [[nodiscard]] double wish(double now_ms) const;
  /// Forget fingers and coasting (page hidden, rotated).
  void reset();

 private:
  enum class State : std::uint8_t { kIdle, kWaiting, kPressed, kScrolling, kPinching, kSpent };
  struct Finger {
    std::int64_t id = 0;
    float x = 0, y = 0;
  };
  struct Sample {
    double ms = 0;
    float at = 0;
  };
  void down(std::int64_t finger, float x, float y, double now_ms, const Registry& registry);
  void move(std::int64_t finger, float x, float y, double now_ms, const Registry& registry);
  void up(std::int64_t finger, float x, float y, double now_ms, bool cancelled);
  void begin_pinch(const Registry& registry);
  void pinch_moved();
  void begin_turn(float x, float y, double now_ms, const Registry& registry);
  void begin_scroll(float x, float y, double now_ms, const Registry& registry);
  void cancel_press();
  void coast(double now_ms, const Registry& registry);
  void send(PointerEvent::Kind kind, float x, float y);

  State state_ = State::kIdle;
  std::vector<Finger> fingers_;
  GestureStep out_;
  std::string held_;  ///< item under the first finger that a long press is of; "" none
  Touch touch_ = Touch::kNone;
  int area_ = 0;
  bool horizontal_ = false;
  float start_x_ = 0, start_y_ = 0, last_ = 0;
  double down_ms_ = 0;
  std::vector<Sample> samples_;
  float velocity_ = 0;  ///< coasting, px/ms
  double coast_ms_ = 0;
  float pinch_x_ = 0, pinch_y_ = 0, pinch_span_ = 0;
  std::string pinch_key_;
};

}  // namespace bentbook::screens
