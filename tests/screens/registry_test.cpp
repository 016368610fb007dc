#include "ui/registry.h"

#include <catch_amalgamated.hpp>

using namespace bentbook::screens;

namespace {

Item button(std::string key, Rect rect) {
  Item item;
  item.key = std::move(key);
  item.role = Role::kButton;
  item.touch = Touch::kPress;
  item.rect = rect;
  return item;
}

}  // namespace

TEST_CASE("the registry's revision grows only when something differs", "[registry]") {
  Registry r;
  const auto frame = [&](float y) {
    r.begin_frame();
    r.add(button("a", {0, y, 10, 10}));
    r.end_frame();
    return r.revision();
  };
  const auto first = frame(0);
  REQUIRE(frame(0) == first);
  REQUIRE(frame(5) == first + 1);
  REQUIRE(frame(5) == first + 1);
}

TEST_CASE("of two items under a finger the later one lies on top, and an exact hit beats a near one", "[registry]") {
  Registry r;
  r.begin_frame();
  r.add(button("under", {0, 0, 100, 100}));
  r.add(button("over", {40, 40, 20, 20}));
  Item text = button("text", {0, 0, 100, 100});
  text.touch = Touch::kNone;
  r.add(text);
  Item off = button("off", {0, 0, 100, 100});
  off.enabled = false;
  r.add(off);
  r.end_frame();
  REQUIRE(r.at(50, 50)->key == "over");
  REQUIRE(r.at(38, 50, 4)->key == "under");
  REQUIRE(r.at(102, 50, 4)->key == "under");
  REQUIRE(r.at(110, 50, 4) == nullptr);
}

TEST_CASE("an action waits for its widget one frame and is then dropped", "[registry]") {
  Registry r;
  r.queue({Action::Kind::kPress, "a", {}, 0});
  r.begin_frame();
  REQUIRE_FALSE(r.take("b", Action::Kind::kPress));
  REQUIRE_FALSE(r.take("a", Action::Kind::kHold));
  REQUIRE(r.take("a", Action::Kind::kPress));
  REQUIRE_FALSE(r.take("a", Action::Kind::kPress));
  r.queue({Action::Kind::kPress, "gone", {}, 0});
  REQUIRE(r.has_actions());
  r.end_frame();
  REQUIRE_FALSE(r.has_actions());
}
