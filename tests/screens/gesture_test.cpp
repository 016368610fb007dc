#include "ui/gesture.h"

#include <catch_amalgamated.hpp>
#include <cmath>
#include <string>

using namespace bentbook::screens;

namespace {

/// A page 300 × 600 with 1000 px to scroll; a button, a slider, a hold ring, a picture on it.
Registry page() {
  Registry r;
  r.begin_frame();
  const auto add = [&r](const char* key, Role role, Touch touch, Rect rect) {
    Item item;
    item.key = key;
    item.role = role;
    item.touch = touch;
    item.rect = rect;
    r.add(item);
  };
  add("picture", Role::kImage, Touch::kNone, {0, 300, 300, 200});
  add("button", Role::kButton, Touch::kPress, {0, 0, 300, 48});
  add("slider", Role::kSlider, Touch::kDrag, {0, 100, 300, 48});
  add("building", Role::kImage, Touch::kTurn, {0, 500, 300, 100});
  add("ring", Role::kButton, Touch::kHold, {0, 200, 300, 48});
  r.add(ScrollArea{7, "page", {0, 0, 300, 600}, 400, 1000, false});
  r.end_frame();
  return r;
}

/// m, d, u, a, c: what ImGui is told, in order.
std::string told(const GestureStep& step) {
  std::string out;
  for (const PointerEvent& e : step.pointer) out += "mduac"[static_cast<int>(e.kind)];
  return out;
}

float scrolled(const GestureStep& step) {
  float sum = 0;
  for (const ScrollBy& s : step.scrolls) sum += s.by;
  return sum;
}

}  // namespace

TEST_CASE("a tap sends its place first, the press on lift, and then the pointer goes away", "[gesture]") {
  const Registry r = page();
  Gesture g;
  g.touch(TouchPhase::kDown, 1, 20, 20, 0, r);
  REQUIRE(told(g.step(0, r)) == "m");
  g.touch(TouchPhase::kMove, 1, 24, 23, 30, r);
  g.touch(TouchPhase::kUp, 1, 24, 23, 60, r);
  REQUIRE(told(g.step(60, r)) == "mdua");
  REQUIRE(g.wish(60) < 0);
}

TEST_CASE("a slider takes the finger at once and follows it", "[gesture]") {
  const Registry r = page();
  Gesture g;
  g.touch(TouchPhase::kDown, 1, 20, 120, 0, r);
  REQUIRE(told(g.step(0, r)) == "md");
  g.touch(TouchPhase::kMove, 1, 20, 300, 16, r);
  const GestureStep moved = g.step(16, r);
  REQUIRE(told(moved) == "m");
  REQUIRE(moved.scrolls.empty());
  g.touch(TouchPhase::kUp, 1, 20, 300, 32, r);
  REQUIRE(told(g.step(32, r)) == "mua");
}

TEST_CASE("a finger that moves along the page scrolls it, presses nothing, and the page coasts", "[gesture]") {
  const Registry r = page();
  Gesture g;
  g.touch(TouchPhase::kDown, 1, 20, 20, 0, r);
  g.step(0, r);
  double now = 0;
  float by = 0;
  std::string all;
  for (int i = 1; i <= 10; ++i) {
    now = 16 * i;
    g.touch(TouchPhase::kMove, 1, 20, 20 + 12 * static_cast<float>(i), now, r);
    const GestureStep step = g.step(now, r);
    by += scrolled(step);
    all += told(step);
  }
  REQUIRE(all == "a");
  // Downward fingers bring what is above: the offset falls by what the finger went after it began to scroll.
  REQUIRE(by == Catch::Approx(-(120 - 12)));
  g.touch(TouchPhase::kUp, 1, 20, 140, now + 1, r);
  g.step(now + 1, r);
  REQUIRE(g.wish(now + 1) == 0);
  float coasted = 0;
  for (double t = now + 1; g.wish(t) == 0 && t < now + 5000; t += 16) coasted += scrolled(g.step(t, r));
  REQUIRE(coasted < -40);
  REQUIRE(g.wish(now + 5000) < 0);
}

TEST_CASE("coasting goes the same way at any frame rate", "[gesture]") {
  const Registry r = page();
  const auto coast = [&r](double frame_ms) {
    Gesture g;
    g.touch(TouchPhase::kDown, 1, 20, 200, 0, r);
    for (int i = 1; i <= 5; ++i) g.touch(TouchPhase::kMove, 1, 20, 200 - 16 * static_cast<float>(i), 16 * i, r);
    g.touch(TouchPhase::kUp, 1, 20, 120, 81, r);
    float sum = 0;
    for (double t = 81; t < 4000; t += frame_ms) {
      GestureStep step = g.step(t, r);
      for (const ScrollBy& s : step.scrolls) sum += s.by;
    }
    return sum;
  };
  // The finger's own way is the same in each, so what differs is the coasting.
  const float at_60 = coast(16.6);
  REQUIRE(at_60 > 150);
  REQUIRE(std::fabs(coast(8.3) - at_60) < 1);
  REQUIRE(std::fabs(coast(50) - at_60) < 1);
}

TEST_CASE("a finger that stops a coasting page presses nothing", "[gesture]") {
  const Registry r = page();
  Gesture g;
  g.touch(TouchPhase::kDown, 1, 20, 400, 0, r);
  for (int i = 1; i <= 5; ++i) g.touch(TouchPhase::kMove, 1, 20, 400 - 20 * static_cast<float>(i), 16 * i, r);
  g.touch(TouchPhase::kUp, 1, 20, 300, 81, r);
  g.step(90, r);
  REQUIRE(g.wish(90) == 0);
  g.touch(TouchPhase::kDown, 2, 20, 20, 100, r);
  g.touch(TouchPhase::kUp, 2, 20, 20, 130, r);
  const GestureStep step = g.step(130, r);
  REQUIRE(told(step).find('d') == std::string::npos);
  REQUIRE(g.wish(130) < 0);
}

TEST_CASE("moving across the page's axis drops the press and scrolls nothing", "[gesture]") {
  const Registry r = page();
  Gesture g;
  g.touch(TouchPhase::kDown, 1, 20, 20, 0, r);
  g.touch(TouchPhase::kMove, 1, 80, 22, 16, r);
  g.touch(TouchPhase::kUp, 1, 80, 22, 32, r);
  const GestureStep step = g.step(32, r);
  REQUIRE(told(step) == "ma");
  REQUIRE(step.scrolls.empty());
}

TEST_CASE("held still for half a second it is a long press and nothing else", "[gesture]") {
  const Registry r = page();
  Gesture g;
  g.touch(TouchPhase::kDown, 1, 20, 20, 0, r);
  g.step(0, r);
  REQUIRE(g.wish(100) == Catch::Approx(400));
  REQUIRE(g.step(499, r).long_press.empty());
  REQUIRE(g.step(500, r).long_press == "button");
  REQUIRE(g.wish(500) < 0);
  g.touch(TouchPhase::kUp, 1, 20, 20, 700, r);
  REQUIRE(told(g.step(700, r)).empty());
}

TEST_CASE("a hold ring keeps the press until the finger wanders off", "[gesture]") {
  const Registry r = page();
  Gesture g;
  g.touch(TouchPhase::kDown, 1, 20, 220, 0, r);
  REQUIRE(told(g.step(0, r)) == "md");
  REQUIRE(g.step(900, r).pointer.empty());
  g.touch(TouchPhase::kMove, 1, 20, 260, 910, r);
  REQUIRE(told(g.step(910, r)) == "caa");
}

TEST_CASE("a second finger cancels the press; both zoom and move about their middle", "[gesture]") {
  const Registry r = page();
  Gesture g;
  g.touch(TouchPhase::kDown, 1, 100, 400, 0, r);
  g.step(0, r);
  g.touch(TouchPhase::kDown, 2, 200, 400, 10, r);
  REQUIRE(told(g.step(10, r)) == "ca");
  g.touch(TouchPhase::kMove, 2, 300, 400, 20, r);
  const GestureStep step = g.step(20, r);
  REQUIRE(step.pinches.size() == 1);
  const Pinch& p = step.pinches[0];
  REQUIRE(p.key == "picture");
  REQUIRE(p.x == 150);
  REQUIRE(p.y == 400);
  REQUIRE(p.factor == Catch::Approx(2));
  REQUIRE(p.dx == 50);
  REQUIRE(p.dy == 0);
  // The finger that stays does nothing more.
  g.touch(TouchPhase::kUp, 2, 300, 400, 30, r);
  g.touch(TouchPhase::kMove, 1, 100, 300, 40, r);
  g.touch(TouchPhase::kUp, 1, 100, 300, 50, r);
  const GestureStep rest = g.step(50, r);
  REQUIRE(rest.pointer.empty());
  REQUIRE(rest.scrolls.empty());
  g.touch(TouchPhase::kDown, 3, 20, 20, 60, r);
  g.touch(TouchPhase::kUp, 3, 20, 20, 70, r);
  REQUIRE(told(g.step(70, r)) == "mmdua");
}

TEST_CASE("a cancelled touch presses nothing", "[gesture]") {
  const Registry r = page();
  Gesture g;
  g.touch(TouchPhase::kDown, 1, 20, 20, 0, r);
  g.touch(TouchPhase::kCancel, 1, 20, 20, 10, r);
  REQUIRE(told(g.step(10, r)) == "mca");
}

TEST_CASE("on a building that is turned a finger along the page scrolls, one across it takes hold", "[gesture]") {
  const Registry r = page();
  Gesture along;
  along.touch(TouchPhase::kDown, 1, 150, 550, 0, r);
  REQUIRE(told(along.step(0, r)) == "m");
  along.touch(TouchPhase::kMove, 1, 146, 530, 16, r);
  along.touch(TouchPhase::kMove, 1, 140, 500, 32, r);
  const GestureStep up = along.step(32, r);
  REQUIRE(told(up) == "a");
  REQUIRE(scrolled(up) == Catch::Approx(30));
  Gesture across;
  across.touch(TouchPhase::kDown, 1, 150, 550, 0, r);
  across.step(0, r);
  across.touch(TouchPhase::kMove, 1, 170, 546, 16, r);
  REQUIRE(told(across.step(16, r)) == "dm");
  // Once it has hold, it may go any way.
  across.touch(TouchPhase::kMove, 1, 170, 500, 32, r);
  const GestureStep turned = across.step(32, r);
  REQUIRE(told(turned) == "m");
  REQUIRE(turned.scrolls.empty());
  across.touch(TouchPhase::kUp, 1, 170, 500, 48, r);
  REQUIRE(told(across.step(48, r)) == "mua");
}

TEST_CASE(
    "where nothing scrolls a building is turned by a finger any way, tapped by one that stays, never long pressed",
    "[gesture]") {
  Registry r;
  r.begin_frame();
  r.add(Item{"building", Role::kImage, Touch::kTurn, {}, {}, Rect{0, 0, 300, 600}});
  r.end_frame();
  Gesture g;
  g.touch(TouchPhase::kDown, 1, 150, 300, 0, r);
  REQUIRE(told(g.step(0, r)) == "m");
  REQUIRE(g.wish(0) < 0);
  REQUIRE(g.step(Gesture::kLongPressMs + 1, r).long_press.empty());
  g.touch(TouchPhase::kMove, 1, 150, 330, 600, r);
  REQUIRE(told(g.step(600, r)) == "dm");
  g.touch(TouchPhase::kUp, 1, 150, 330, 620, r);
  REQUIRE(told(g.step(620, r)) == "mua");
  g.touch(TouchPhase::kDown, 1, 150, 300, 700, r);
  g.touch(TouchPhase::kUp, 1, 152, 301, 760, r);
  REQUIRE(told(g.step(760, r)) == "mmdua");
}
