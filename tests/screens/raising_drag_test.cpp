// The order by its grips: a step is dragged through the list, and what came of it is said.
#include <catch_amalgamated.hpp>

#include "raising_bed.h"

using namespace bentbook;
using namespace bentbook::screens;

namespace {

struct OrderBed : RaisingBed {
  using RaisingBed::RaisingBed;
  /// So many steps of one timber each, and their list on the screen.
  void order_of(std::size_t steps) {
    go("raising.tap");
    std::vector<std::string> marks;
    for (const Item& item : app.registry().items())
      if (item.key.starts_with("tap.mark.") && marks.size() < steps) marks.push_back(item.key);
    REQUIRE(marks.size() == steps);
    for (const std::string& mark : marks) press(mark);
    go("tap.each");
    go("bar.back");
    go("raising.order");
  }
  [[nodiscard]] static std::string grip(int step) { return "order.grip." + std::to_string(step); }
  [[nodiscard]] Rect row(int step) const { return item("order.step." + std::to_string(step)).rect; }
  /// The finger goes down on a step's grip.
  void take(int step) {
    const Rect r = item(grip(step)).rect;
    x = r.x + r.w / 2;
    y = r.y + r.h / 2;
    finger(TouchPhase::kDown, x, y);
    settle();
  }
  /// …on by so much, in small steps.
  void pull(float by) {
    for (int i = 1; i <= 10; ++i) {
      finger(TouchPhase::kMove, x, y + by * static_cast<float>(i) / 10);
      frame();
    }
    y += by;
    settle();
  }
  void let_go() {
    finger(TouchPhase::kUp, x, y);
    rest();
    work();
  }
  /// Frames until none is wanted at once; how many.
  int settle() {
    for (int n = 1; n < 400; ++n)
      if (frame() != 0) return n;
    throw std::runtime_error("it does not come to rest");
  }
  [[nodiscard]] std::vector<std::string> firsts() const {
    std::vector<std::string> out;
    for (const RaisingStep& step : stored().steps) out.push_back(step.marks.at(0));
    return out;
  }
  float x = 0, y = 0;
};

using Names = std::vector<std::string>;

Names moved(Names marks, std::size_t from, std::size_t to) {
  const std::string mark = marks.at(from);
  marks.erase(marks.begin() + static_cast<std::ptrdiff_t>(from));
  marks.insert(marks.begin() + static_cast<std::ptrdiff_t>(to), mark);
  return marks;
}

}  // namespace

TEST_CASE("a step that is dragged down by its grip stands where it was let go of, and one undo takes it back",
          "[screens][raising]") {
  OrderBed bed;
  bed.order_of(4);
  const Names before = bed.firsts();
  const std::string name = "Move step 1: " + before[0];
  CHECK(bed.item(bed.grip(0)).name == name);
  CHECK(bed.item(bed.grip(0)).rect.w >= 48);
  CHECK(bed.item(bed.grip(0)).rect.h >= 48);
  const float far = bed.row(2).y - bed.row(0).y;
  bed.take(0);
  bed.pull(far);
  CHECK(bed.row(1).y < bed.row(2).y);
  CHECK(bed.row(2).y < bed.row(0).y);
  CHECK(bed.row(0).y < bed.row(3).y);
  CHECK(bed.item("order.step.0").name == "3. Post " + before[0]);
  CHECK(bed.firsts() == before);
  bed.let_go();
  CHECK(bed.firsts() == moved(before, 0, 2));
  bed.tap("bar.undo");
  CHECK(bed.firsts() == before);
}

TEST_CASE("a step that is dragged up goes before those that it passed", "[screens][raising]") {
  OrderBed bed;
  bed.order_of(5);
  const Names before = bed.firsts();
  bed.take(4);
  bed.pull(bed.row(1).y - bed.row(4).y);
  CHECK(bed.row(4).y < bed.row(1).y);
  bed.let_go();
  CHECK(bed.firsts() == moved(before, 4, 1));
}

TEST_CASE("what a dragged step breaks is said at once, and why", "[screens][raising]") {
  OrderBed bed;
  bed.go("raising.search");
  bed.go("search.go");
  CHECK(bed.item("search.step.1").name.starts_with("1  "));  // looked at before it is taken
  bed.go("search.take");
  CHECK(bed.item("order.verdict").name == "No collapse found, as assumed");
  const Names before = bed.firsts();
  bed.take(0);
  bed.pull(bed.row(2).y - bed.row(0).y);
  CHECK(bed.item("order.verdict").name == "Let go here to have it checked");
  bed.finger(TouchPhase::kUp, bed.x, bed.y);
  bed.rest();
  CHECK(bed.item("order.verdict").name == "The order is being checked.");
  CHECK(bed.firsts() == moved(before, 0, 2));
  bed.work();
  CHECK(bed.item("order.verdict").name == "Step 1 has a fault. " + bed.value("order.step.0"));
  CHECK(bed.item("order.verdict").live);
  bed.go("order.verdict.open");
  REQUIRE(bed.shows("step.fault.0"));
  bed.go("bar.back");
  bed.tap("bar.undo");
  bed.work();
  CHECK(bed.item("order.verdict").name == "No collapse found, as assumed");
}

TEST_CASE("until the order is checked again its rows keep their height", "[screens][raising]") {
  OrderBed bed(320, 568);
  bed.order_of(3);
  const float foot = bed.row(2).y + bed.row(2).h;
  bed.take(2);
  bed.pull(bed.row(1).y - bed.row(2).y);
  bed.finger(TouchPhase::kUp, bed.x, bed.y);
  bed.rest();
  CHECK(bed.row(2).y + bed.row(2).h == foot);
}

TEST_CASE("while the finger that holds a step lies still no frame is drawn", "[screens][raising]") {
  OrderBed bed;
  const bool calm = GENERATE(true, false);
  Viewport v;
  v.reduced_motion = calm;
  bed.view(v);
  bed.order_of(4);
  bed.take(0);
  for (int i = 1; i <= 5; ++i) bed.finger(TouchPhase::kMove, bed.x, bed.y + 30 * static_cast<float>(i));
  bed.y += 150;
  const int frames = bed.settle();
  // The rows glide, or with reduced motion stand there at once.
  CHECK(frames >= (calm ? 1 : 8));
  CHECK(frames <= (calm ? 12 : 60));
  CHECK(bed.frame() < 0);
  bed.let_go();
  CHECK(bed.frame() < 0);
}

TEST_CASE("a step held at the list's edge scrolls the list by itself until its end", "[screens][raising]") {
  OrderBed bed;
  bed.order_of(24);
  const Names before = bed.firsts();
  REQUIRE(bed.app.registry().scroll_areas().size() == 1);
  const auto area = [&] { return bed.app.registry().scroll_areas().at(0); };
  REQUIRE(area().max_offset > 200);
  bed.take(0);
  const float foot = area().rect.y + area().rect.h;
  bed.pull(foot - 10 - bed.y);
  CHECK(area().offset > 200);
  CHECK(bed.row(22).h >= 48);
  CHECK(bed.row(22).y < bed.row(0).y);
  CHECK(bed.frame() < 0);
  bed.let_go();
  CHECK(bed.firsts() == moved(before, 0, 23));
  CHECK(bed.row(23).y + bed.row(23).h < foot);

  bed.take(23);
  // Taken up near the edge, the list rests until the finger goes on that way.
  const float there = area().offset;
  bed.pull(-4);
  CHECK(area().offset == there);
  bed.pull(area().rect.y + 8 - bed.y);
  CHECK(area().offset < 64);
  bed.let_go();
  CHECK(bed.firsts() == before);
}

TEST_CASE("Escape, a second finger, or another page lets a dragged step fall back", "[screens][raising]") {
  OrderBed bed;
  bed.order_of(4);
  const Names before = bed.firsts();
  const float home = bed.row(0).y;
  bed.take(0);
  bed.pull(bed.row(2).y - bed.row(0).y);
  const std::string how = GENERATE("escape", "finger", "page", "cancel", "turned", "locked");
  INFO(how);
  if (how == "escape") bed.key(Key::kEscape);
  if (how == "finger") bed.finger(TouchPhase::kDown, 40, 300, 2);
  if (how == "page") bed.press("place.shop");
  if (how == "cancel") bed.finger(TouchPhase::kCancel, bed.x, bed.y);
  if (how == "locked") bed.press("bar.lock");
  if (how == "turned") {
    Viewport v;
    v.width = 844;
    v.height = 390;
    v.reduced_motion = true;
    bed.view(v);
    bed.view({});
  }
  bed.rest();
  if (how == "page") bed.press("place.raising");
  CHECK(bed.shows("order.step.0"));
  CHECK(bed.row(0).y == home);
  bed.finger(TouchPhase::kMove, bed.x, bed.y + 40);
  bed.rest();
  bed.let_go();
  if (how == "finger") bed.finger(TouchPhase::kUp, 40, 300, 2);
  bed.rest();
  CHECK(bed.firsts() == before);
  CHECK(bed.row(0).y == home);
}

TEST_CASE("a step that is done has no grip, and none is dragged up past it", "[screens][raising]") {
  OrderBed bed;
  bed.order_of(5);
  const Names before = bed.firsts();
  for (const int done : {0, 1}) {
    bed.go("order.step." + std::to_string(done));
    bed.hold_by_name("step.done");
    bed.work();
    bed.go("bar.back");
  }
  CHECK_FALSE(bed.shows(bed.grip(0)));
  CHECK_FALSE(bed.shows(bed.grip(1)));
  bed.take(4);
  bed.pull(bed.row(0).y - bed.row(4).y - 20);
  CHECK(bed.row(1).y < bed.row(4).y);
  bed.let_go();
  CHECK(bed.firsts() == moved(before, 4, 2));
  CHECK(bed.stored().steps[1].done);
  CHECK_FALSE(bed.stored().steps[2].done);
}

TEST_CASE("a grip that is only tapped, or pressed through the mirror, asks for the step's number",
          "[screens][raising]") {
  OrderBed bed;
  bed.order_of(4);
  const Names before = bed.firsts();
  const bool by_finger = GENERATE(true, false);
  if (by_finger)
    bed.tap(bed.grip(0));
  else
    bed.press(bed.grip(0));
  REQUIRE(bed.shows("keypad.done"));
  bed.tap_keypad({"digit.3", "done"});
  bed.work();
  CHECK(bed.firsts() == moved(before, 0, 2));
}

TEST_CASE("the mouse drags a step too", "[screens][raising]") {
  OrderBed bed;
  bed.order_of(4);
  const Names before = bed.firsts();
  const Rect r = bed.item(bed.grip(1)).rect;
  bed.app.mouse_move(r.x + 20, r.y + 20);
  bed.rest();
  bed.app.mouse_button(MouseButton::kLeft, true);
  bed.settle();
  bed.app.mouse_move(r.x - 60, r.y + 20 + bed.row(3).y - bed.row(1).y);
  bed.settle();
  const bool dropped = GENERATE(true, false);
  if (!dropped) bed.key(Key::kEscape);
  bed.app.mouse_button(MouseButton::kLeft, false);
  bed.rest();
  CHECK(bed.shows("order.step.0"));
  CHECK(bed.firsts() == (dropped ? moved(before, 1, 3) : before));
}
