// The Raising place by finger: an order made by tapping, checked off the frame; what the screens say of it.
#include <catch_amalgamated.hpp>
#include <set>

#include "answers/raising_task.h"
#include "bed.h"

using namespace bentbook;
using namespace bentbook::screens;

namespace {

/// Tasks are run as a shell runs them, between frames.
struct RaisingBed : Bed {
  RaisingTasks tasks;
  explicit RaisingBed(float width = 390, float height = 844) : Bed(width, height) {
    tap("place.raising");
    work();
  }
  void work() {
    for (int rounds = 0; rounds < 10; ++rounds) {
      const auto ids = std::exchange(platform.tasks, {});
      const auto requests = std::exchange(platform.requests, {});
      if (ids.empty()) return;
      for (std::size_t i = 0; i < ids.size(); ++i) {
        const auto answer = tasks.run(requests[i], {});
        REQUIRE(answer);
        app.on({EventKind::kTaskDone, ids[i], *answer, 0});
      }
      rest();
    }
  }
  void go(std::string_view key) {
    press(key);
    work();
  }
  void commit_text(std::string_view key, std::string_view text) {
    app.on({EventKind::kTextCommitted, std::string(key), std::string(text), 0});
    rest();
    work();
  }
  [[nodiscard]] RaisingPlan stored() const { return read_book(platform.stored("book1")).value().raising; }
  /// One step of these timbers.
  void bring(std::initializer_list<std::string_view> marks) {
    for (const std::string_view mark : marks) press("tap.mark." + std::string(mark));
    go("tap.together");
  }
};

}  // namespace

TEST_CASE("an order is made by tapping and checked step by step", "[screens][raising]") {
  RaisingBed bed;
  CHECK(bed.shows("raising.empty"));
  bed.go("raising.tap");
  bed.bring({"P-A1", "P-E1", "T-1"});
  bed.bring({"P-A2"});
  REQUIRE(bed.stored().steps.size() == 2);
  CHECK(bed.stored().steps[0].marks == std::vector<std::string>{"P-A1", "P-E1", "T-1"});
  bed.go("bar.back");
  CHECK(bed.shows("raising.unstable"));
  bed.go("raising.order");
  CHECK(bed.value("order.step.0").find("would not stand") != std::string::npos);
}

TEST_CASE("a step tells how it can give way and takes the braces that hold it", "[screens][raising]") {
  RaisingBed bed;
  bed.go("raising.tap");
  bed.bring({"P-A1", "P-E1", "T-1", "K-C1", "B-A1.1", "B-E1.1"});
  bed.go("bar.back");
  bed.go("raising.order");
  bed.go("order.step.0");
  REQUIRE(bed.shows("step.mode.0"));
  std::string modes;
  for (const Item& item : bed.app.registry().items())
    if (item.key.starts_with("step.mode.")) modes += item.name + "; ";
  INFO(modes);
  CHECK(modes.find("along the ridge") != std::string::npos);
  CHECK(bed.shows("step.pick"));
  REQUIRE(bed.shows("step.take_braces"));
  bed.go("step.take_braces");
  REQUIRE_FALSE(bed.stored().temporaries.empty());
  CHECK(bed.stored().steps[0].put_up.size() == bed.stored().temporaries.size());
  CHECK_FALSE(bed.shows("step.mode.0"));
  REQUIRE(bed.shows("step.verdict"));
  CHECK(bed.value("step.verdict") == "No collapse found, as assumed");
  bed.tap("bar.undo");
  bed.work();
  CHECK(bed.stored().temporaries.empty());
}

TEST_CASE("a tie between two standing posts cannot go in: it is said, with what to do", "[screens][raising]") {
  RaisingBed bed;
  bed.go("raising.tap");
  bed.bring({"P-A1"});
  bed.bring({"P-E1"});
  bed.bring({"L-A1"});
  bed.go("bar.back");
  bed.go("raising.order");
  bed.go("order.step.2");
  CHECK(bed.shows("step.fault.0"));
}

TEST_CASE("a step is moved, done, and taken out; all of it can be undone", "[screens][raising]") {
  RaisingBed bed;
  bed.go("raising.tap");
  bed.bring({"P-A1"});
  bed.bring({"P-E1"});
  bed.go("bar.back");
  bed.go("raising.order");
  bed.go("order.step.1");
  bed.go("step.earlier");
  CHECK(bed.stored().steps[0].marks == std::vector<std::string>{"P-E1"});
  bed.app.act({Action::Kind::kHold, "step.done", {}, 0});
  bed.rest();
  bed.work();
  CHECK(bed.stored().steps[0].done);
  bed.go("step.delete");
  CHECK(bed.stored().steps.size() == 1);
  bed.tap("bar.undo");
  CHECK(bed.stored().steps.size() == 2);
}

TEST_CASE("what the lead says of loads, gear and braces is kept", "[screens][raising]") {
  RaisingBed bed;
  bed.go("raising.loads");
  bed.press("loads.wind");
  bed.tap_keypad({"digit.1", "digit.5", "done"});
  CHECK(bed.stored().loads.wind_mph == 15);
  bed.press("loads.hold.2");
  CHECK(bed.shows("loads.hold.2.no_reason"));
  bed.press("loads.hold.2.pulls");
  bed.commit_text("loads.hold.2.reason", "pegs rated by the engineer");
  REQUIRE(bed.stored().holds.size() == 1);
  CHECK(bed.stored().holds[0].pulls);
  CHECK(bed.stored().holds[0].reason == "pegs rated by the engineer");
  CHECK_FALSE(bed.shows("loads.hold.2.no_reason"));
  bed.press("bar.back");
  bed.press("raising.gear");
  bed.press("gear.crane.present");
  bed.press("gear.chart.add");
  CHECK(bed.stored().crane.chart.size() == 1);
  bed.press("gear.add");
  bed.press("gear.piece.0.rated");
  bed.tap_keypad({"digit.9", "digit.0", "digit.0", "done"});
  CHECK(bed.stored().gear.at(0).rated == bentbook::Weight::pounds(900));
  bed.press("bar.back");
  bed.press("raising.temporaries");
  bed.press("braces.add");
  bed.commit_text("brace.from.mark", "P-A9");
  CHECK(bed.stored().temporaries.at(0).from.mark.empty());
  bed.commit_text("brace.from.mark", "P-A1");
  CHECK(bed.stored().temporaries.at(0).from.mark == "P-A1");
  bed.press("bar.back");
  bed.press("bar.back");
  bed.press("raising.wishes");
  bed.press("wishes.add");
  bed.commit_text("wish.0.marks", "P-A1, T-1");
  CHECK(bed.stored().wishes.at(0).marks == std::vector<std::string>{"P-A1", "T-1"});
}

TEST_CASE("the raising's pages: every key stands once and has a name", "[screens][raising]") {
  const char* language = GENERATE("en", "es");
  RaisingBed bed(320, 568);
  Viewport v;
  v.width = 320;
  v.height = 568;
  v.language = language;
  v.reduced_motion = true;
  bed.view(v);
  const auto sound = [&] {
    std::set<std::string> keys;
    for (const Item& item : bed.app.registry().items()) {
      INFO(item.key);
      CHECK(keys.insert(item.key).second);
      CHECK_FALSE(item.name.empty());
    }
  };
  bed.go("raising.tap");
  sound();
  bed.bring({"P-A1", "P-E1", "T-1"});
  bed.go("bar.back");
  sound();
  for (const char* row : {"raising.order", "raising.search", "raising.wishes", "raising.temporaries", "raising.loads",
                          "raising.gear", "raising.lists"}) {
    INFO(row);
    bed.go(row);
    sound();
    bed.go("bar.back");
  }
  bed.go("raising.order");
  bed.go("order.step.0");
  sound();
}
