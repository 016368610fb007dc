#include "ui/gesture.h"

#include <algorithm>
#include <utility>

#include "numeric/libm.h"

namespace bentbook::screens {
namespace {

float magnitude(float v) { return v < 0 ? -v : v; }

float distance(float ax, float ay, float bx, float by) {
  return static_cast<float>(libm::hypot(static_cast<double>(ax - bx), static_cast<double>(ay - by)));
}

}  // namespace

void Gesture::send(PointerEvent::Kind kind, float x, float y) { out_.pointer.push_back({kind, x, y}); }

void Gesture::cancel_press() {
  send(PointerEvent::Kind::kCancel, 0, 0);
  send(PointerEvent::Kind::kAway, 0, 0);
}

void Gesture::touch(TouchPhase phase, std::int64_t finger, float x, float y, double now_ms, const Registry& registry) {
  switch (phase) {
    case TouchPhase::kDown:
      return down(finger, x, y, now_ms, registry);
    case TouchPhase::kMove:
      return move(finger, x, y, now_ms, registry);
    case TouchPhase::kUp:
      return up(finger, x, y, now_ms, false);
    case TouchPhase::kCancel:
      return up(finger, x, y, now_ms, true);
  }
}

void Gesture::down(std::int64_t finger, float x, float y, double now_ms, const Registry& registry) {
  for (const Finger& f : fingers_)
    if (f.id == finger) return;
  fingers_.push_back({finger, x, y});
  if (fingers_.size() == 2 && state_ != State::kSpent) return begin_pinch(registry);
  if (fingers_.size() != 1) return;

  const bool stopped_coasting = velocity_ != 0;
  velocity_ = 0;
  start_x_ = x;
  start_y_ = y;
  down_ms_ = now_ms;
  samples_.clear();
  const Item* item = registry.at(x, y, 4);
  touch_ = item ? item->touch : Touch::kNone;
  const Item* held = registry.held_at(x, y);
  if (held == nullptr) held = item;
  held_ = held != nullptr && touch_ != Touch::kTurn ? held->key : std::string{};
  const ScrollArea* area = registry.area_at(x, y);
  area_ = area ? area->id : 0;
  horizontal_ = area && area->horizontal;
  last_ = horizontal_ ? x : y;
  samples_.push_back({now_ms, last_});
  send(PointerEvent::Kind::kMove, x, y);
  if (stopped_coasting && area_ != 0) {
    // The finger that stops a coasting page presses nothing.
    send(PointerEvent::Kind::kAway, 0, 0);
    state_ = State::kScrolling;
    return;
  }
  state_ = State::kWaiting;
  if (touch_ == Touch::kDrag || touch_ == Touch::kHold) {
    send(PointerEvent::Kind::kDown, x, y);
    state_ = State::kPressed;
  }
}

void Gesture::move(std::int64_t finger, float x, float y, double now_ms, const Registry& registry) {
  std::size_t i = 0;
  while (i < fingers_.size() && fingers_[i].id != finger) ++i;
  if (i == fingers_.size()) return;
  fingers_[i].x = x;
  fingers_[i].y = y;
  if (state_ == State::kPinching) {
    if (i < 2) pinch_moved();
    return;
  }
  if (i != 0) return;
  const float wandered = distance(x, y, start_x_, start_y_);
  const float along = magnitude(horizontal_ ? x - start_x_ : y - start_y_);
  switch (state_) {
    case State::kWaiting:
      if (wandered <= kSlop) return;
      if (touch_ == Touch::kTurn) return begin_turn(x, y, now_ms, registry);
      if (area_ != 0 && along * 2 >= wandered) return begin_scroll(x, y, now_ms, registry);
      send(PointerEvent::Kind::kAway, 0, 0);
      state_ = State::kSpent;
      return;
    case State::kPressed:
      if (touch_ == Touch::kHold && wandered > kSlop) {
        cancel_press();
        if (area_ != 0) return begin_scroll(x, y, now_ms, registry);
        state_ = State::kSpent;
        return;
      }
      return send(PointerEvent::Kind::kMove, x, y);
    case State::kScrolling: {
      const float at = horizontal_ ? x : y;
      out_.scrolls.push_back({area_, last_ - at});
      last_ = at;
      samples_.push_back({now_ms, at});
      return;
    }
    default:
      return;
  }
}

/// The finger left the slop on something that is turned: it scrolls where it goes along the page, else it has hold of
/// it from where it went down.
void Gesture::begin_turn(float x, float y, double now_ms, const Registry& registry) {
  const float across = magnitude(x - start_x_), up = magnitude(y - start_y_);
  if (area_ != 0 && (horizontal_ ? across >= up : up >= across)) return begin_scroll(x, y, now_ms, registry);
  send(PointerEvent::Kind::kDown, start_x_, start_y_);
  send(PointerEvent::Kind::kMove, x, y);
  state_ = State::kPressed;
}

void Gesture::begin_scroll(float x, float y, double now_ms, const Registry&) {
  send(PointerEvent::Kind::kAway, 0, 0);
  state_ = State::kScrolling;
  // From where it is now: the content does not jump by the slop.
  last_ = horizontal_ ? x : y;
  samples_.clear();
  samples_.push_back({now_ms, last_});
}

void Gesture::up(std::int64_t finger, float x, float y, double now_ms, bool cancelled) {
  std::size_t i = 0;
  while (i < fingers_.size() && fingers_[i].id != finger) ++i;
  if (i == fingers_.size()) return;
  const bool first = i == 0;
  fingers_.erase(fingers_.begin() + static_cast<std::ptrdiff_t>(i));
  if (state_ == State::kPinching) {
    // What is left of a pinch does nothing more until every finger is up.
    state_ = State::kSpent;
  } else if (first) {
    if (state_ == State::kWaiting && !cancelled) {
      send(PointerEvent::Kind::kMove, start_x_, start_y_);
      send(PointerEvent::Kind::kDown, start_x_, start_y_);
      send(PointerEvent::Kind::kUp, start_x_, start_y_);
      send(PointerEvent::Kind::kAway, 0, 0);
    } else if (state_ == State::kPressed && !cancelled) {
      send(PointerEvent::Kind::kMove, x, y);
      send(PointerEvent::Kind::kUp, x, y);
      send(PointerEvent::Kind::kAway, 0, 0);
    } else if (state_ == State::kWaiting || state_ == State::kPressed) {
      cancel_press();
    } else if (state_ == State::kScrolling && !cancelled) {
      samples_.push_back({now_ms, horizontal_ ? x : y});
      std::size_t oldest = 0;
      while (oldest + 1 < samples_.size() && now_ms - samples_[oldest].ms > kVelocityWindow) ++oldest;
      const double span = now_ms - samples_[oldest].ms;
      const float speed = span > 1 ? (samples_[oldest].at - samples_.back().at) / static_cast<float>(span) : 0;
      velocity_ = magnitude(speed) >= kCoastStart ? speed : 0;
      coast_ms_ = now_ms;
    }
    state_ = State::kSpent;
  }
  if (fingers_.empty()) state_ = State::kIdle;
}

void Gesture::begin_pinch(const Registry& registry) {
  if (state_ == State::kWaiting || state_ == State::kPressed) cancel_press();
  velocity_ = 0;
  state_ = State::kPinching;
  const Finger &a = fingers_[0], &b = fingers_[1];
  pinch_x_ = (a.x + b.x) / 2;
  pinch_y_ = (a.y + b.y) / 2;
  pinch_span_ = distance(a.x, a.y, b.x, b.y);
  pinch_key_.clear();
  // A picture that takes no finger of its own still takes two.
  for (auto item = registry.items().rbegin(); item != registry.items().rend(); ++item) {
    if (item->role != Role::kImage) continue;
    const Rect& r = item->rect;
    if (pinch_x_ >= r.x && pinch_x_ < r.x + r.w && pinch_y_ >= r.y && pinch_y_ < r.y + r.h) {
      pinch_key_ = item->key;
      break;
    }
  }
}

void Gesture::pinch_moved() {
  const Finger &a = fingers_[0], &b = fingers_[1];
  const float x = (a.x + b.x) / 2, y = (a.y + b.y) / 2, span = distance(a.x, a.y, b.x, b.y);
  const float factor = pinch_span_ > 8 && span > 8 ? span / pinch_span_ : 1;
  out_.pinches.push_back({pinch_key_, pinch_x_, pinch_y_, factor, x - pinch_x_, y - pinch_y_});
  pinch_x_ = x;
  pinch_y_ = y;
  pinch_span_ = span;
}

void Gesture::coast(double now_ms, const Registry& registry) {
  const double elapsed = now_ms - coast_ms_;
  if (elapsed <= 0) return;
  // Constant slowing, integrated exactly: the same way at any frame rate.
  const float speed = magnitude(velocity_), sign = velocity_ < 0 ? -1.0F : 1.0F;
  const float time = std::min(static_cast<float>(elapsed), speed / kCoastSlowing);
  const float by = sign * (speed * time - kCoastSlowing * time * time / 2);
  velocity_ = sign * (speed - kCoastSlowing * time);
  coast_ms_ = now_ms;
  bool stopped = time < static_cast<float>(elapsed) || velocity_ == 0;
  bool found = false;
  for (const ScrollArea& area : registry.scroll_areas()) {
    if (area.id != area_) continue;
    found = true;
    if (area.offset + by <= 0 || area.offset + by >= area.max_offset) stopped = true;
  }
  if (!found) {
    velocity_ = 0;
    return;
  }
  if (by != 0) out_.scrolls.push_back({area_, by});
  if (stopped) velocity_ = 0;
}

GestureStep Gesture::step(double now_ms, const Registry& registry) {
  if (state_ == State::kWaiting && !held_.empty() && now_ms - down_ms_ >= kLongPressMs) {
    out_.long_press = held_;
    send(PointerEvent::Kind::kAway, 0, 0);
    state_ = State::kSpent;
  }
  if (velocity_ != 0) coast(now_ms, registry);
  return std::exchange(out_, {});
}

double Gesture::wish(double now_ms) const {
  if (velocity_ != 0) return 0;
  if (state_ == State::kWaiting && !held_.empty()) {
    const double left = kLongPressMs - (now_ms - down_ms_);
    return left > 0 ? left : 0;
  }
  return -1;
}

void Gesture::reset() {
  if (state_ == State::kWaiting || state_ == State::kPressed) cancel_press();
  GestureStep kept = std::move(out_);
  *this = Gesture{};
  out_ = std::move(kept);
}

}  // namespace bentbook::screens
