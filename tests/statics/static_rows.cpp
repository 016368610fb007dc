/// Random partial frames with what their joints hold, and what core/raising says of them, as text for
/// tests/statics/statics_checks.py.
///   static_rows COUNT SEED [WRONG]
/// WRONG: 1: one timber of each set is printed without what holds it.
///
///   set NUMBER MECHANISMS STANDS FACTOR       FACTOR −1: not asked (mechanisms)
///   body X Y Z WEIGHT PUSH…                   centre of gravity, eight pushes
///   row A B TWO_WAY LIMIT PX PY PZ DX DY DZ   bodies by number, −1: the ground
///   mode, then a line a body: MX MY MZ TX TY TZ
///   case KIND HEAVY DIRECTION BODY PX PY PZ PERSON FACTOR
///   hung BEARS, then BODY PX PY PZ LB for each of what hangs at once
///   end

#include <algorithm>
#include <cstdio>
#include <cstdlib>

#include "frame/placing/solve_frame.h"
#include "numeric/index.h"
#include "plans.h"
#include "raising/limits.h"
#include "raising/stability/force_cases.h"
#include "raising/stability/load_factor.h"

using namespace bentbook;

namespace {

RaisingPlan random_raising(Random& random, bool loose) {
  RaisingPlan plan;
  plan.posts_anchored = loose || chance(random, 80);
  plan.loads.wind_mph = static_cast<int>(random.whole(0, 40));
  plan.loads.push_per_cent = static_cast<int>(random.whole(0, 15));
  for (int k = 0; k < kJointKinds; ++k)
    if (loose && chance(random, 85))
      plan.holds.push_back({static_cast<JointKind>(k), true, true, true, "drawn"});
    else if (chance(random, 50))
      plan.holds.push_back(
          {static_cast<JointKind>(k), chance(random, 80), chance(random, 50), chance(random, 50), "drawn"});
  return plan;
}

/// Some timbers that hang together, from a post on.
std::vector<int> random_set(Random& random, const Frame& frame) {
  const int n = static_cast<int>(frame.timbers.size());
  std::vector<int> set;
  std::vector<char> in(frame.timbers.size(), 0);
  const auto add = [&](int t) {
    if (in[at(t)] != 0) return;
    in[at(t)] = 1;
    set.push_back(t);
  };
  for (int posts = static_cast<int>(random.whole(1, 4)), t = 0; t < n && posts > 0; ++t) {
    if (frame.timbers[at(t)].kind != TimberKind::kPost) continue;
    if (chance(random, 60)) {
      add(t);
      --posts;
    }
  }
  const auto most = static_cast<std::size_t>(random.whole(1, 18));
  for (int tries = 0; tries < 400 && set.size() < most; ++tries) {
    const Joint& joint = frame.joints[at(static_cast<int>(random.whole(0, static_cast<int>(frame.joints.size()) - 1)))];
    if (in[at(joint.member)] != 0 || in[at(joint.receiver)] != 0 || chance(random, 1)) {
      add(joint.member);
      add(joint.receiver);
    }
  }
  std::sort(set.begin(), set.end());
  return set;
}

/// A guy, diagonal or prop from a random timber to another one or to the ground.
Temporary random_temporary(Random& random, const Frame& frame, const std::vector<int>& set) {
  const auto pick = [&] {
    return TimberPoint{
        frame.timbers[at(set[at(static_cast<int>(random.whole(0, static_cast<int>(set.size()) - 1)))])].mark,
        Length::inches(random.whole(0, 120))};
  };
  Temporary t;
  t.kind = static_cast<TemporaryKind>(random.whole(0, 2));
  t.from = pick();
  if (chance(random, 40))
    t.to = pick();
  else {
    t.ground_x = Length::inches(random.whole(-200, 200));
    t.ground_y = Length::inches(random.whole(-100, 500));
  }
  if (chance(random, 30)) t.rated = Weight::pounds(random.whole(100, 3000));
  return t;
}

struct Drawn {
  Frame frame;
  StandingModel model;
  std::vector<int> timbers, temporaries;
};

/// A seventh as they come, a seventh with random temporaries, the others braced as proposed, of which some braces then
/// are guys: those have no mechanism and may yet fall.
Drawn draw(Random& random) {
  Drawn drawn;
  while (drawn.frame.joints.empty()) drawn.frame = solve_frame(random_plan(random)).value_or(Frame{});
  drawn.timbers = random_set(random, drawn.frame);
  if (drawn.timbers.empty()) drawn.timbers.push_back(0);
  const std::int64_t kind = random.whole(0, 6);
  drawn.model = make_standing_model(drawn.frame, random_raising(random, kind >= 2));
  const auto add = [&](const Temporary& t) { drawn.temporaries.push_back(add_temporary(drawn.model, drawn.frame, t)); };
  if (kind == 1)
    for (int i = static_cast<int>(random.whole(1, 8)); i > 0; --i)
      add(random_temporary(random, drawn.frame, drawn.timbers));
  if (kind < 2) return drawn;
  StandingRun run(drawn.model);
  BraceProposal proposal = propose_braces(drawn.model, drawn.frame, run, drawn.timbers, {});
  const bool spoil = chance(random, 50);
  for (Temporary& t : proposal.braces) {
    if (spoil && chance(random, 40)) t.kind = TemporaryKind::kGuy;
    if (chance(random, 20)) t.rated = Weight::pounds(random.whole(200, 3000));
    add(t);
  }
  return drawn;
}

void print_vec(Vec3 v) { std::printf(" %.17g %.17g %.17g", v.x, v.y, v.z); }

void print_case(const StandingSet& set, const StandingModel& model, const LoadCase& load, double factor) {
  std::printf("case %d %d %d %d", static_cast<int>(load.kind), load.heavy ? 1 : 0, load.direction,
              load.timber < 0 ? -1 : set.place[at(load.timber)]);
  print_vec(load.point);
  std::printf(" %.17g %.17g\n", model.loads.person.lb(), factor);
}

void print_matrix(const StandingModel& model, const StandingSet& set, bool wrong) {
  for (const int t : set.timbers) {
    const StandingBody& body = model.bodies[at(t)];
    std::printf("body");
    print_vec(body.cg);
    std::printf(" %.17g", body.weight_lb);
    for (const double push : body.push_lb) std::printf(" %.17g", push);
    std::printf("\n");
  }
  const int left_out = wrong && !set.rows.empty() ? set.place[at(model.rows[at(set.rows[0])].a)] : -2;
  for (const int index : set.rows) {
    const HoldRow& row = model.rows[at(index)];
    const int a = set.place[at(row.a)], b = row.b < 0 ? -1 : set.place[at(row.b)];
    if (a == left_out || b == left_out) continue;
    std::printf("row %d %d %d %.17g", a, b, row.two_way ? 1 : 0, row.limit);
    print_vec(row.point);
    print_vec(row.direction);
    std::printf("\n");
  }
}

/// Pieces that hang on what stands: from a few pounds to more than its joints hold.
void print_hung(Random& random, const StandingModel& model, const StandingSet& set) {
  std::vector<std::vector<HungWeight>> moments(1);
  for (int n = static_cast<int>(random.whole(1, 4)); n > 0; --n) {
    const int t = set.timbers[at(static_cast<int>(random.whole(0, static_cast<int>(set.timbers.size()) - 1)))];
    const Vec3 where = model.bodies[at(t)].end_a +
                       static_cast<double>(random.whole(0, 100)) / 100 * model.length[at(t)] * model.axis[at(t)];
    moments[0].push_back({t, where, static_cast<double>(1 << random.whole(0, 14))});
  }
  std::printf("hung %d", bears(model, set, moments) ? 1 : 0);
  for (const HungWeight& weight : moments[0]) {
    std::printf(" %d", set.place[at(weight.timber)]);
    print_vec(weight.at);
    std::printf(" %.17g", weight.lb);
  }
  std::printf("\n");
}

void print_set(Random& random, int number, bool wrong) {
  const Drawn drawn = draw(random);
  const StandingModel& model = drawn.model;
  const StandingSet set = standing_set(model, drawn.timbers, drawn.temporaries);
  const Mechanisms found = mechanisms_of(model, set, rigid_joints(model), true);
  StandingRun run(model);
  const bool stands = run.stands(drawn.timbers, drawn.temporaries);
  const bool whole = found.count == 0;
  const ForceVerdict worst = whole ? worst_case(model, set) : ForceVerdict{};
  std::printf("set %d %d %d %.17g\n", number, found.count, stands ? 1 : 0, whole ? worst.factor : -1.0);
  print_matrix(model, set, wrong);
  for (const auto& mode : found.modes) {
    std::printf("mode\n");
    for (const TimberMotion& m : mode) {
      print_vec(m.move);
      print_vec(m.turn);
      std::printf("\n");
    }
  }
  if (whole) {
    const ForceSystem system = force_system(model, set.timbers, set.rows);
    ActiveSetSolver solver(system);
    LoadFactorProgram program(system);
    const std::vector<LoadCase> cases = load_cases(model, set);
    if (worst.factor < limits::kMostFactor) print_case(set, model, worst.worst, worst.factor);
    for (int i = 0; i < 2; ++i) {
      const LoadCase& load = cases[at(static_cast<int>(random.whole(0, static_cast<int>(cases.size()) - 1)))];
      print_case(set, model, load, program.solve_proven(solver, case_loads(model, set.timbers, load)).factor);
    }
  }
  if (whole)
    for (int i = 0; i < 2; ++i) print_hung(random, model, set);
  std::printf("end\n");
}

}  // namespace

int main(int argc, char** argv) {
  if (argc < 3) return 2;
  const int count = std::atoi(argv[1]);
  Random random(static_cast<std::uint64_t>(std::atoll(argv[2])));
  for (int i = 0; i < count; ++i) print_set(random, i, argc > 3);
  return 0;
}
