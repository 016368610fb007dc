#include <catch_amalgamated.hpp>

#include "book/book.h"
#include "frame/facts.h"
#include "frame/placing/solve_frame.h"
#include "raising/lifting/hand_raise.h"
#include "raising/lifting/pick.h"
#include "random.h"

using namespace bentbook;
using Catch::Approx;

namespace {

bool has(const Pick& pick, PickNoteId id) {
  return std::any_of(pick.notes.begin(), pick.notes.end(), [&](const PickNote& n) { return n.id == id; });
}

Frame demo_frame() {
  auto frame = solve_frame(demo_book().frame);
  REQUIRE(frame);
  return *std::move(frame);
}

LiftingGear sling(std::int64_t rated, std::int64_t choked, int feet, int count = 4) {
  return {"sling", GearKind::kSling, Length::feet(feet), Weight::pounds(rated), Weight::pounds(choked), count};
}

/// A crane that carries anything anywhere, and a crew that carries next to nothing.
RaisingPlan with_crane() {
  RaisingPlan plan;
  plan.crane.present = true;
  plan.crane.chart = {{Length::feet(200), Weight::pounds(20'000)}};
  plan.crew.each = Weight::pounds(1);
  return plan;
}

int of_kind(const Frame& frame, TimberKind kind) {
  for (std::size_t i = 0; i < frame.timbers.size(); ++i)
    if (frame.timbers[i].kind == kind) return static_cast<int>(i);
  FAIL("no such timber");
  return -1;
}

}  // namespace

// Sling tension factors of rigging charts (trade.md, Lifting): 90° 1.000, 60° 1.155, 45° 1.414, 30° 2.000.
TEST_CASE("sling factors are those of the rigging charts", "[pick]") {
  for (const auto& [degrees, factor] : {std::pair{90, 1.000}, {60, 1.155}, {45, 1.414}, {30, 2.000}}) {
    CHECK(sling_factor(degrees) == Approx(factor).margin(0.0005));
    if (degrees == 90) continue;
    const Vec3 points[] = {{-50, 0, 10}, {50, 0, 10}};
    const auto hang = hang_at_angle(points, {0, 0, 0}, {0, 0, 1}, 1000, degrees);
    REQUIRE(hang);
    CHECK(hang->most_tension == Approx(500 * factor).margin(0.3));
    CHECK(hang->least_angle == Approx(degrees));
  }
}

TEST_CASE("of four alike legs two are counted", "[pick]") {
  const Vec3 points[] = {{-40, -30, 5}, {40, -30, 5}, {40, 30, 5}, {-40, 30, 5}};
  const auto hang = hang_at_angle(points, {0, 0, 0}, {0, 0, 1}, 1000, 60);
  REQUIRE(hang);
  for (const SlingLeg& leg : hang->legs) CHECK(leg.tension == Approx(500 * 1.1547).epsilon(1e-4));
}

// Forces and levers of a body in balance, reckoned apart from the code: Σ T u = W up, Σ p × T u = cg × W up.
TEST_CASE("two and three unequal legs hold the load in balance", "[pick]") {
  Random random(7001);
  int seen = 0;
  for (int n = 0; n < 2000; ++n) {
    std::vector<Vec3> points;
    const int legs = static_cast<int>(random.whole(2, 3));
    const Vec3 cg{random.real(-5, 5), random.real(-5, 5), random.real(-5, 5)};
    if (legs == 2) {
      const double turn = random.real(0, 6.28);
      for (const double side : {-1.0, 1.0}) {
        const double far = side * random.real(5, 90);
        points.push_back(cg + Vec3{far * libm::cos(turn), far * libm::sin(turn), random.real(1, 30)});
      }
    } else {
      for (int i = 0; i < 3; ++i)
        points.push_back(cg + Vec3{random.real(-90, 90), random.real(-90, 90), random.real(1, 30)});
    }
    const double weight = random.real(50, 5000);
    const auto hang = hang_on_legs(points, cg, {0, 0, 1}, weight, random.real(60, 200));
    if (!hang) continue;
    ++seen;
    Vec3 force, lever;
    for (const SlingLeg& leg : hang->legs) {
      REQUIRE(leg.tension >= 0);
      const Vec3 pull = (leg.tension / norm(hang->hook - leg.point)) * (hang->hook - leg.point);
      force = force + pull;
      lever = lever + cross(leg.point - cg, pull);
    }
    REQUIRE(norm(force - Vec3{0, 0, weight}) < 1e-6 * weight);
    REQUIRE(norm(lever) < 1e-5 * weight);
  }
  CHECK(seen > 600);
}

TEST_CASE("a crane's chart is read at the next longer radius, block and rigging off", "[pick]") {
  Crane crane;
  crane.present = true;
  crane.chart = {{Length::feet(30), Weight::pounds(4000)},
                 {Length::feet(20), Weight::pounds(7000)},
                 {Length::feet(40), Weight::pounds(2600)}};
  crane.hook_block = Weight::pounds(300);
  crane.rigging = Weight::pounds(100);
  const auto reading = read_chart(crane, 20 * 12 + 1);
  REQUIRE(reading);
  CHECK(reading->row_radius == Length::feet(30));
  CHECK(reading->net_lb == Approx(3600));
  CHECK(read_chart(crane, 240)->net_lb == Approx(6600));
  CHECK(!read_chart(crane, 481).has_value());
  const Vec3 stack{-35 * 12, 0, 0};
  const CraneLift lift = lift_by_crane(crane, stack, {0, 240, 0}, 2000);
  CHECK(lift.at_stack->row_radius == Length::feet(40));
  CHECK(lift.margin_lb == Approx(200));
  CHECK(lift.within);
  CHECK(!lift_by_crane(crane, stack, {0, 240, 0}, 2300).within);
}

TEST_CASE("a pick weighs green wood and fifteen per cent", "[pick]") {
  const Frame frame = demo_frame();
  const RaisingPlan plan = with_crane();
  const int tie = of_kind(frame, TimberKind::kTie);
  const Timber& timber = frame.timbers[static_cast<std::size_t>(tie)];
  const TimberFacts facts = facts_of(timber);
  const Pick pick = solve_pick(frame, plan, std::vector{tie});
  const double green = facts.volume / 1728 * density_at(timber.species, timber.species.green_moisture);
  CHECK(pick.weight_lb == libm::ceil(1.15 * std::max(green, facts.weight_lb)));
  CHECK(norm(pick.cg - facts.cg_world) < 1e-9);
  REQUIRE(pick.legs.size() == 2);
  CHECK(has(pick, PickNoteId::kNoSlings));
  CHECK(!pick.refused());
  CHECK(pick.least_angle == Approx(60));
  CHECK(pick.legs[0].tension == Approx(pick.weight_lb / 2 * 1.1547).epsilon(1e-3));
  CHECK(pick.legs[0].station + pick.legs[1].station == Approx(2 * facts.cg.x));
}

TEST_CASE("gear is chosen, and what does not carry is refused with its figures", "[pick]") {
  const Frame frame = demo_frame();
  const int tie = of_kind(frame, TimberKind::kTie);
  RaisingPlan plan = with_crane();
  plan.gear = {sling(9000, 7000, 10), sling(1500, 1100, 10), sling(60, 40, 10)};
  Pick pick = solve_pick(frame, plan, std::vector{tie});
  CHECK(pick.sling == 1);
  CHECK(pick.choked);
  CHECK(!pick.refused());
  CHECK(pick.least_angle >= 60);
  plan.gear = {sling(60, 40, 10)};
  pick = solve_pick(frame, plan, std::vector{tie});
  CHECK(pick.refused());
  CHECK(has(pick, PickNoteId::kSlingWeak));
  plan.gear = {sling(9000, 0, 10)};
  pick = solve_pick(frame, plan, std::vector{tie});
  CHECK(!pick.choked);
  CHECK(has(pick, PickNoteId::kNeedsFitting));
  plan.gear = {sling(9000, 7000, 10, 1)};
  CHECK(has(solve_pick(frame, plan, std::vector{tie}), PickNoteId::kSlingsFew));
  plan.gear = {sling(9000, 7000, 10)};
  plan.crane.chart = {{Length::feet(60), Weight::pounds(200)}};
  pick = solve_pick(frame, plan, std::vector{tie});
  CHECK(has(pick, PickNoteId::kOverCapacity));
  CHECK(!can_pick(frame, plan, pick_bodies(frame, plan), std::vector{tie}));
  plan.crane.chart = {{Length::feet(60), Weight::pounds(9000)}};
  CHECK(can_pick(frame, plan, pick_bodies(frame, plan), std::vector{tie}));
  plan.crane.chart = {{Length::feet(5), Weight::pounds(9000)}};
  CHECK(has(solve_pick(frame, plan, std::vector{tie}), PickNoteId::kPastChart));
}

TEST_CASE("posts hang plumb from one point; any timber or set gives a pick", "[pick]") {
  const Frame frame = demo_frame();
  RaisingPlan plan = with_crane();
  plan.gear = {sling(3000, 2400, 12)};
  const Pick post = solve_pick(frame, plan, std::vector{of_kind(frame, TimberKind::kPost)});
  REQUIRE(post.legs.size() == 1);
  CHECK(post.legs[0].at.z > post.cg.z);
  CHECK(post.legs[0].tension == Approx(post.weight_lb));
  plan.crew.each = Weight::pounds(50);
  Random random(7002);
  const auto bodies = pick_bodies(frame, plan);
  for (int n = 0; n < 500; ++n) {
    std::vector<int> some;
    for (int i = static_cast<int>(random.whole(1, 6)); i > 0; --i)
      some.push_back(static_cast<int>(random.whole(0, static_cast<std::int64_t>(frame.timbers.size()) - 1)));
    const Pick pick = solve_pick(frame, plan, bodies, some);
    REQUIRE(pick.weight_lb > 0);
    if (!hangs(pick.by)) {
      // What the crew can do without the crane: it has the people.
      REQUIRE((pick.by == LiftBy::kHands || pick.by == LiftBy::kTipUp));
      REQUIRE(pick.needed() <= plan.crew.people);
      REQUIRE_FALSE(pick.rated);
      continue;
    }
    REQUIRE((pick.legs.empty() == has(pick, PickNoteId::kNoPoints)));
    double lifted = 0;
    for (const PickLeg& leg : pick.legs) lifted += leg.tension * libm::sin(leg.from_level * libm::kPi / 180);
    if (!pick.legs.empty()) REQUIRE(lifted >= pick.weight_lb * (1 - 1e-6));
    if (pick.legs.size() == 2 || pick.legs.size() == 1) REQUIRE(lifted == Approx(pick.weight_lb).epsilon(1e-6));
  }
}

// Levers about the foot (trade.md): Σ W z / z_lift. Two posts of 100 lb with their middles at 60 in and a tie of 200 lb
// at 110 in: (2 · 100 · 60 + 200 · 110) / 110 = 309.09 lb.
TEST_CASE("a bent raised by hand: levers about its feet", "[pick]") {
  Frame frame;
  const auto stick = [&](TimberKind kind, Vec3 origin, Vec3 x, Vec3 y, Vec3 z, double length) {
    Timber t;
    t.kind = kind;
    t.at = {origin, x, y, z};
    t.length = length;
    t.sides = {-4, 4, -4, 4};
    frame.timbers.push_back(t);
  };
  stick(TimberKind::kPost, {-60, 0, 0}, {0, 0, 1}, {0, 1, 0}, {-1, 0, 0}, 120);
  stick(TimberKind::kPost, {60, 0, 0}, {0, 0, 1}, {0, 1, 0}, {-1, 0, 0}, 120);
  stick(TimberKind::kTie, {-56, 0, 110}, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}, 112);
  const std::vector<PickBody> bodies = {{100, {-60, 0, 60}}, {100, {60, 0, 60}}, {200, {0, 0, 110}}};
  const std::vector<int> bent = {0, 1, 2};
  RaisingPlan plan;
  const HandRaise raise = raise_by_hand(frame, plan, bodies, bent);
  CHECK(raise.most_lb == Approx(309.09).margin(0.01));
  CHECK(raise.people == 7);  // at 50 lb each
  CHECK(raise.cg_height == Approx(85));
  CHECK(raise.cg_behind == Approx(4));
  CHECK(raise.balance == Approx(libm::atan2(85, 4) * 180 / libm::kPi));
  CHECK(raise.hands_until == Approx(libm::asin(78.0 / 110) * 180 / libm::kPi));
  REQUIRE(raise.rows.size() > 5);
  CHECK(raise.rows.front().push_lb == Approx(raise.most_lb));
  CHECK(raise.rows.back().push_lb == Approx(0).margin(1e-6));
  for (std::size_t i = 1; i < raise.rows.size(); ++i) CHECK(raise.rows[i].push_lb < raise.rows[i - 1].push_lb);

  const auto ground = lay_on_ground(frame, bent);
  REQUIRE(ground);
  CHECK(ground->why == FaceDownWhy::kReference);
  CHECK(ground->down.y == Approx(1));  // face 2, toward −y, is the reference and lies up
  CHECK(ground->block_height == Approx(limits::kLeastBlock));
  CHECK(ground->blocks.size() == 4);
  REQUIRE(ground->diagonals.size() == 2);
  CHECK(ground->diagonals[0].length == Approx(libm::sqrt(120 * 120 + 120 * 120)));
  CHECK(ground->diagonals[0].length == Approx(ground->diagonals[1].length));
  CHECK(ground->toe_stops == std::vector{0, 1});
  CHECK(ground->strongbacks.empty());

  // Something that stands out on the side that would lie down turns it over.
  stick(TimberKind::kBrace, {0, 6, 100}, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}, 40);
  const auto turned = lay_on_ground(frame, std::vector{0, 1, 2, 3});
  CHECK(turned->why == FaceDownWhy::kFewer);
  CHECK(turned->down.y == Approx(-1));
  CHECK(turned->stands_out_up == 1);
}
