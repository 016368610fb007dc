#include <algorithm>
#include <tuple>

#include "catch_amalgamated.hpp"
#include "frame/joinery.h"
#include "frame/placing/solve_frame.h"
#include "numeric/index.h"
#include "raising/stability/mechanism.h"
#include "raising/stability/standing.h"

using namespace bentbook;

namespace {

/// A model made by hand: bars as timbers, pins as rows; what is not pinned across is kept in the plane y = 0.
struct Bars {
  StandingModel model;
  std::vector<int> all;

  int bar(Vec3 a, Vec3 b, double weight = 100) {
    StandingBody body;
    body.cg = 0.5 * (a + b);
    body.weight_lb = weight;
    body.placed = true;
    body.end_a = a;
    body.end_b = b;
    for (double& push : body.push_lb) push = weight / 10;
    const int i = static_cast<int>(model.bodies.size());
    model.bodies.push_back(body);
    model.touches.emplace_back();
    model.bent.push_back(1);
    model.timber_kind.push_back(TimberKind::kPost);
    model.axis.push_back(unit(b - a));
    model.length.push_back(norm(b - a));
    all.push_back(i);
    return i;
  }
  void row(int a, int b, Vec3 point, Vec3 direction, bool two_way = true) {
    HoldRow r{a, b, point, direction, two_way};
    model.touches[at(a)].push_back(static_cast<int>(model.rows.size()));
    if (b >= 0) model.touches[at(b)].push_back(static_cast<int>(model.rows.size()));
    model.rows.push_back(r);
  }
  /// A pin square to the plane.
  void pin(int a, int b, Vec3 point) {
    row(a, b, point, {1, 0, 0});
    row(a, b, point, {0, 0, 1});
  }
  /// Held in the plane y = 0: three of its six ways.
  void keep_in_plane(int i) {
    const StandingBody body = model.bodies[at(i)];
    const Vec3 side = cross(unit(body.end_b - body.end_a), Vec3{0, 1, 0});
    row(i, kGround, body.end_a, {0, 1, 0});
    row(i, kGround, body.end_b, {0, 1, 0});
    row(i, kGround, body.end_a + 10 * side, {0, 1, 0});
  }
  [[nodiscard]] int mechanisms() const { return check_standing(model, all, {}, StandingDepth::kRigid).mechanisms; }
};

Bars four_bar() {
  Bars bars;
  const Vec3 a{0, 0, 0}, b{0, 0, 100}, c{100, 0, 100}, d{100, 0, 0};
  bars.bar(a, b);
  bars.bar(b, c);
  bars.bar(d, c);
  for (const int i : bars.all) bars.keep_in_plane(i);
  bars.pin(0, kGround, a);
  bars.pin(0, 1, b);
  bars.pin(1, 2, c);
  bars.pin(2, kGround, d);
  return bars;
}

RaisingPlan all_hold() {
  RaisingPlan plan;
  for (int k = 0; k < kJointKinds; ++k) plan.holds.push_back({static_cast<JointKind>(k), true, true, true, "screwed"});
  return plan;
}

Frame small_frame() {
  return solve_frame(
             default_plan(Length::feet(20), Length::feet(12), Length::feet(10), Slope::in_12(Length::inches(8))))
      .value();
}

std::vector<int> of_kinds(const Frame& frame, std::initializer_list<TimberKind> kinds) {
  std::vector<int> found;
  for (std::size_t i = 0; i < frame.timbers.size(); ++i)
    if (std::find(kinds.begin(), kinds.end(), frame.timbers[i].kind) != kinds.end())
      found.push_back(static_cast<int>(i));
  return found;
}

}  // namespace

TEST_CASE("a joint left for later holds what its wood does, whatever is fastened with the steps",
          "[raising][standing]") {
  const Frame frame = small_frame();
  RaisingPlan with_step, after;
  with_step.fasten = FastenWhen::kWithStep;
  // A row as numbers, so that two plans' can be compared.
  using Row = std::tuple<double, double, double, double, double, double, bool, double, HoldKind>;
  const auto rows_of = [&](const RaisingPlan& plan, int joint) {
    const StandingModel model = make_standing_model(frame, plan);
    std::vector<Row> rows;
    for (const HoldRow& row : model.rows)
      if (row.joint == joint)
        rows.emplace_back(row.point.x, row.point.y, row.point.z, row.direction.x, row.direction.y, row.direction.z,
                          row.two_way, row.limit, row.kind);
    return rows;
  };
  int less = 0;
  for (int j = 0; j < static_cast<int>(frame.joints.size()); ++j) {
    RaisingPlan later = with_step;
    const Joint& joint = frame.joints[at(j)];
    later.later = {{frame.timbers[at(joint.receiver)].mark, frame.timbers[at(joint.member)].mark}};
    INFO(later.later[0].one << " " << later.later[0].other);
    CHECK(rows_of(later, j) == rows_of(after, j));
    less += rows_of(later, j) != rows_of(with_step, j) ? 1 : 0;
    const int other = j == 0 ? 1 : 0;
    CHECK(rows_of(later, other) == rows_of(with_step, other));
  }
  CHECK(less > 10);  // pegged and screwed joints
  // A knife plate before its pins are in holds nothing but what sits on it.
  const FramePlan wooden =
      default_plan(Length::feet(20), Length::feet(12), Length::feet(10), Slope::in_12(Length::inches(8)));
  const Frame plated = solve_frame(with_joinery(wooden, Joinery::kPlates)).value();
  int plates = 0;
  for (const Joint& joint : plated.joints) {
    if (joint.kind != JointKind::kKnifePlate || joint.carried == joint.receiver) continue;
    ++plates;
    RaisingPlan later = with_step;
    later.later = {{plated.timbers[at(joint.member)].mark, plated.timbers[at(joint.receiver)].mark}};
    const StandingModel model = make_standing_model(plated, later);
    CHECK(std::none_of(model.rows.begin(), model.rows.end(), [&](const HoldRow& row) {
      return row.joint >= 0 && plated.joints[at(row.joint)].member == joint.member &&
             plated.joints[at(row.joint)].receiver == joint.receiver;
    }));
  }
  CHECK(plates > 4);
}

// Source: Gruebler's count for plane linkages, 3 (n − 1) − 2 j with the ground counted in; any text on mechanisms.
TEST_CASE("A four-bar has one mechanism, a diagonal takes it away", "[raising][standing]") {
  Bars bars = four_bar();
  CHECK(bars.mechanisms() == 1);
  const StandingCheck check = check_standing(bars.model, bars.all, {});
  REQUIRE(check.modes.size() == 1);
  CHECK(check.modes[0].kind == ModeKind::kRacks);
  CHECK(check.modes[0].axis == WorldAxis::kAcross);
  CHECK(check.modes[0].bent == 1);
  CHECK(check.modes[0].motions.size() == 3);
  bars.row(1, kGround, {100, 0, 100}, unit(Vec3{-1, 0, -1}));
  CHECK(bars.mechanisms() == 0);
}

// Source: Maxwell's rule for plane frames of bars, b + r − 2 j (Maxwell 1864): a triangle on three reactions is just
// rigid; a five-bar chain has two ways to go; a square with both diagonals has a bar too many and no mechanism.
TEST_CASE("Maxwell's counts of textbook frames", "[raising][standing]") {
  const auto frame = [](std::vector<Vec3> joints, const std::vector<std::pair<int, int>>& bars, int fixed) {
    Bars made;
    std::vector<int> first(joints.size(), -1);
    for (const auto& [p, q] : bars) {
      const int i = made.bar(joints[at(p)], joints[at(q)]);
      made.keep_in_plane(i);
      for (const int joint : {p, q}) {
        if (first[at(joint)] < 0)
          first[at(joint)] = i;
        else
          made.pin(i, first[at(joint)], joints[at(joint)]);
      }
    }
    made.pin(first[0], kGround, joints[0]);
    made.row(first[at(fixed)], kGround, joints[at(fixed)], {0, 0, 1});
    return made.mechanisms();
  };
  const std::vector<Vec3> square{{0, 0, 0}, {100, 0, 0}, {100, 0, 100}, {0, 0, 100}};
  CHECK(frame({{0, 0, 0}, {100, 0, 0}, {50, 0, 80}}, {{0, 1}, {1, 2}, {2, 0}}, 1) == 0);
  CHECK(frame(square, {{0, 1}, {1, 2}, {2, 3}, {3, 0}}, 1) == 1);
  CHECK(frame(square, {{0, 1}, {1, 2}, {2, 3}, {3, 0}, {0, 2}}, 1) == 0);
  CHECK(frame(square, {{0, 1}, {1, 2}, {2, 3}, {3, 0}, {0, 2}, {1, 3}}, 1) == 0);
  CHECK(frame({{0, 0, 0}, {100, 0, 0}, {130, 0, 70}, {50, 0, 120}, {-30, 0, 70}},
              {{0, 1}, {1, 2}, {2, 3}, {3, 4}, {4, 0}}, 1) == 2);
}

// A bar lying on two supports: the null space, one-way rows counted both ways, sees nothing; a support inside of the
// centre of gravity on both sides lets it tip. Statics: moments about the nearer support.
TEST_CASE("What only rests falls though it has no mechanism", "[raising][standing]") {
  for (const bool tips : {false, true}) {
    Bars bars;
    const int tie = bars.bar({0, 0, 100}, {100, 0, 100});
    bars.keep_in_plane(tie);
    bars.row(tie, kGround, {0, 0, 100}, {1, 0, 0});
    bars.row(tie, kGround, {10, 0, 100}, {0, 0, 1}, false);
    bars.row(tie, kGround, {tips ? 40.0 : 90.0, 0, 100}, {0, 0, 1}, false);
    const StandingCheck check = check_standing(bars.model, bars.all, {});
    CHECK(check.mechanisms == 0);
    CHECK(check.forces != tips);
    CHECK(check.stands() != tips);
    if (tips) CHECK(check.factor == 0);
  }
}

// The person's load on an overhang: 100 lb of bar on supports at 0 and 60 of its 100 in, person at the end:
// 0.9 · 100 lb · 10 in = λ · 200 lb · 40 in. (Statics: moments about the support at 60.)
TEST_CASE("The margin is the largest load factor", "[raising][standing]") {
  Bars bars;
  const int tie = bars.bar({0, 0, 100}, {100, 0, 100});
  bars.keep_in_plane(tie);
  bars.row(tie, kGround, {0, 0, 100}, {1, 0, 0});
  bars.row(tie, kGround, {100, 0, 100}, {1, 0, 0});  // marks the last joint
  bars.row(tie, kGround, {0, 0, 100}, {0, 0, 1}, false);
  bars.row(tie, kGround, {60, 0, 100}, {0, 0, 1}, false);
  const StandingCheck check = check_standing(bars.model, bars.all, {});
  CHECK(check.mechanisms == 0);
  CHECK(check.factor == Catch::Approx(0.9 * 100 * 10 / (200 * 40.0)).margin(1.1e-3));
  CHECK(check.worst.kind == LoadKind::kPerson);
  CHECK_FALSE(check.forces);
}

// trade.md, "What a joint holds while the frame goes up".
TEST_CASE("The rows of the table of joints", "[raising][standing]") {
  const Frame frame = small_frame();
  const auto rows_of = [&](const StandingModel& model, Meeting meeting, bool two_way) {
    for (std::size_t j = 0; j < frame.joints.size(); ++j) {
      if (frame.joints[j].meeting != meeting) continue;
      return std::count_if(model.rows.begin(), model.rows.end(),
                           [&](const HoldRow& r) { return r.joint == static_cast<int>(j) && r.two_way == two_way; });
    }
    return std::ptrdiff_t{-1};
  };
  const StandingModel model = make_standing_model(frame, {});
  // A brace's tenon presses along it (one row) and holds across: three both ways.
  CHECK(rows_of(model, Meeting::kBraceEnd, false) == 1);
  CHECK(rows_of(model, Meeting::kBraceEnd, true) == 3);
  // A tenon's shoulder presses on both sides.
  CHECK(rows_of(model, Meeting::kTiePost, false) == 2);
  CHECK(rows_of(model, Meeting::kTiePost, true) == 3);
  // A bird's mouth only presses; screwed it holds along and out of the heel, and down.
  CHECK(rows_of(model, Meeting::kRafterPlate, true) == 0);
  const StandingModel screwed = make_standing_model(frame, all_hold());
  CHECK(rows_of(screwed, Meeting::kRafterPlate, true) == 2);
  // Posts on the ground: anchored they hold both ways, else they press alone.
  RaisingPlan loose;
  loose.posts_anchored = false;
  const StandingModel free = make_standing_model(frame, loose);
  const auto feet = [](const StandingModel& m) {
    return std::count_if(m.rows.begin(), m.rows.end(),
                         [](const HoldRow& r) { return r.kind == HoldKind::kFoot && r.two_way; });
  };
  CHECK(feet(model) == 4 * 4);
  CHECK(feet(free) == 0);
}

TEST_CASE("Guys pull, props press, short diagonals do both", "[raising][standing]") {
  const Frame frame = small_frame();
  StandingModel model = make_standing_model(frame, {});
  const std::string post = frame.timbers[at(of_kinds(frame, {TimberKind::kPost})[0])].mark;
  Temporary t;
  t.from = {post, Length::feet(6)};
  t.ground_x = Length::feet(-20);
  t.kind = TemporaryKind::kGuy;
  const auto row = [&] { return model.rows[at(model.temporary_row[at(add_temporary(model, frame, t))])]; };
  const HoldRow guy = row();
  CHECK_FALSE(guy.two_way);
  t.kind = TemporaryKind::kProp;
  const HoldRow prop = row();
  CHECK_FALSE(prop.two_way);
  CHECK(dot(guy.direction, prop.direction) < -0.99);
  t.kind = TemporaryKind::kDiagonal;
  CHECK_FALSE(row().two_way);  // longer than 75 × 1 1/2 in
  t.to = {frame.timbers[at(of_kinds(frame, {TimberKind::kPost})[1])].mark, Length::feet(6)};
  t.thickness = Length::inches(6);
  CHECK(row().two_way);
}

TEST_CASE("Braces are proposed until it stands, step by step", "[raising][standing]") {
  const Frame frame = small_frame();
  StandingModel model = make_standing_model(frame, all_hold());
  StandingRun run(model);
  std::vector<int> up, standing;
  for (const int t : of_kinds(frame, {TimberKind::kPost, TimberKind::kTie, TimberKind::kPlate})) {
    standing.push_back(t);
    std::sort(standing.begin(), standing.end());
    const StandingCheck check = run.check(standing, up, StandingDepth::kStands);
    if (check.stands()) continue;
    const BraceProposal proposal = propose_braces(model, frame, run, standing, up);
    REQUIRE(proposal.cures);
    CHECK(static_cast<int>(proposal.braces.size()) >= proposal.at_least);
    for (const Temporary& brace : proposal.braces) up.push_back(add_temporary(model, frame, brace));
    CHECK(run.stands(standing, up));
    // The same without memory.
    CHECK(check_standing(model, standing, up, StandingDepth::kStands).stands());
  }
  const StandingCheck last = run.check(standing, up, StandingDepth::kExplain, standing);
  CHECK(last.stands());
  CHECK(last.factor >= 1);
}

TEST_CASE("Bad input stands for nothing and never crashes", "[raising][standing]") {
  const Frame frame = small_frame();
  RaisingPlan plan;
  Temporary t;
  t.from.mark = "nothing";
  plan.temporaries.push_back(t);
  t.from.mark = frame.timbers[0].mark;
  t.to = t.from;
  plan.temporaries.push_back(t);
  const StandingModel model = make_standing_model(frame, plan);
  CHECK(model.temporary_row == std::vector<int>{-1, -1});
  const int far = static_cast<int>(frame.timbers.size());
  const std::vector<int> odd{-5, 0, 0, far, far + 7}, up{-1, 0, 1, 99};
  const StandingCheck check = check_standing(model, odd, up);
  CHECK(check.mechanisms == 2);  // one post on its foot leans both ways
  CHECK(std::count_if(check.warnings.begin(), check.warnings.end(),
                      [](const StandingWarning& w) { return w.id == StandingWarningId::kLoose; }) == 2);
  CHECK_FALSE(check_standing(model, {}, {}).stands());
  CHECK_FALSE(check_standing(make_standing_model({}, {}), odd, up).stands());
  StandingRun run(model);
  CHECK_FALSE(propose_braces(model, frame, run, {}, {}).cures);
}
