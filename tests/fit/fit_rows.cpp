/// Writes frames as text for tests/fit/check.mjs: of each timber nothing but what its sheet says, and of the frame
/// where each stands and which faces touch.
///   fit_rows COUNT SEED clean|clashing|turned|roofs|dormers|hips [WRONG]
/// clean: plans in which the frame finds no two timbers that take the same room; clashing: only those in which it does.
/// hips: clean ones, of frames with hipped ends.
/// roofs: roofs of any plan, of one pitch, hips and valleys and jacks, over their wall plates.
/// dormers: such roofs with dormers on them.
/// turned: clean ones, their timbers of rough wood and with other reference faces.
/// WRONG: inches by which every end B is cut too long; `fence`: in each plan one timber's fence is measured from the
/// wrong face; `shoulder`: one tenon's shoulder is not cut; the name of a step's number: one of them is 1/8 in or 1°
/// off. Steps are written of every plan that is turned or made wrong so, of the others of one in kStepsOfOneIn.

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <string_view>
#include <utility>

#include "frame/keys.h"
#include "frame/placing/solve_frame.h"
#include "frame/roofs/roof_frame.h"
#include "roof/plan/roof_edits.h"
#include "roof/plan/solve_roof.h"
#include "roof_plans.h"
#include "shop/steps.h"
#include "solid_rows.h"

using namespace bentbook;

namespace {

void cut_too_long(Frame& frame, double by) {
  for (Timber& t : frame.timbers) {
    t.length += by;
    for (EndCut& cut : t.cuts)
      if (cut.end == End::kB) cut.plane.offset += cut.plane.normal.x * by;
  }
}

/// What other joints take of where this one bears, as the timbers' own warnings say: pockets, by timber.
void write_cut_into(const Frame& frame, const Joint& joint, int index) {
  for (const int i : {joint.member, joint.receiver}) {
    const Timber& t = frame.timbers[static_cast<std::size_t>(i)];
    for (const TimberWarning& w : t.warnings) {
      if (w.id != WarningId::kContactCut || w.joint != index) continue;
      for (const Feature& f : t.features)
        if (f.joint == static_cast<int>(w.value2))
          for (int p = f.first_pocket; p < f.first_pocket + f.pockets; ++p) std::printf("cut_into %d %d\n", i, p);
    }
  }
}

void write_contact(const Frame& frame, const ContactFace& c) {
  const Joint& joint = frame.joints[static_cast<std::size_t>(c.joint)];
  std::printf("contact %d %d %d %.17g %.17g %.17g", static_cast<int>(joint.meeting), joint.member, joint.receiver,
              c.normal.x, c.normal.y, c.normal.z);
  for (const Vec3& p : c.corners) std::printf(" %.17g %.17g %.17g", p.x, p.y, p.z);
  std::printf("\n");
  write_cut_into(frame, joint, c.joint);
}

constexpr int kStepsOfOneIn = 5;

enum class Wrong : std::uint8_t { kNothing, kFence, kShoulder, kNumber };
struct Fault {
  Wrong wrong = Wrong::kNothing;
  int name = -1;  ///< StepNumberName
};

/// What argv says besides inches.
Fault fault_of(std::string_view word) {
  if (word == "fence") return {Wrong::kFence, -1};
  if (word == "shoulder") return {Wrong::kShoulder, -1};
  const int name = keys::index_of(kStepNumberWords, word);
  return name >= 0 ? Fault{Wrong::kNumber, name} : Fault{};
}

/// Every other plan is sawn with a saw of long reach.
Saw saw_for(int number) {
  Saw saw;
  if (number % 2 != 0) return saw;
  saw.kind = SawKind::kChainsawBar;
  saw.reach = Length::inches(16);
  return saw;
}

double* value_of(WorkStep& step, StepNumberName name) {
  for (StepNumber& n : step.numbers)
    if (n.name == name) return &n.value;
  return nullptr;
}

/// Both gauges of one recess as if its timber's other face were the reference.
bool from_wrong_face(const Timber& t, std::vector<WorkStep>& steps) {
  for (WorkStep& step : steps) {
    double *near = value_of(step, StepNumberName::kFence), *far = value_of(step, StepNumberName::kFar);
    if (near == nullptr || far == nullptr || step.part != StepPart::kWhole) continue;
    Face from = Face::kTop;
    for (const StepNumber& n : step.numbers)
      if (n.name == StepNumberName::kFence) from = n.from.value_or(Face::kTop);
    const bool depth = from == Face::kTop || from == Face::kBottom;
    const double thick = depth ? t.sides.z_hi - t.sides.z_lo : t.sides.y_hi - t.sides.y_lo;
    const double wrong = thick - *far;
    if (wrong - *near < 0.1 && *near - wrong < 0.1) continue;
    *far = thick - *near;
    *near = wrong;
    return true;
  }
  return false;
}

bool without_shoulder(std::vector<WorkStep>& steps) {
  for (std::size_t i = 1; i < steps.size(); ++i)
    if (steps[i].part == StepPart::kShoulder && steps[i - 1].part == StepPart::kShoulder &&
        steps[i].of == steps[i - 1].of) {
      steps.erase(steps.begin() + static_cast<std::ptrdiff_t>(i));
      return true;
    }
  return false;
}

bool off_by_a_little(std::vector<WorkStep>& steps, StepNumberName name) {
  for (WorkStep& step : steps)
    if (double* value = value_of(step, name); value != nullptr) {
      *value += is_degrees(name) ? 1 : -1.0 / 8;  // the other way a cut may lie past the tip, and take no wood
      return true;
    }
  return false;
}

/// Of what is done to a timber nothing but its steps' numbers. True: `wrong` was put in.
bool write_steps(const Frame& frame, int timber, const Saw& saw, Fault fault) {
  const Timber& t = frame.timbers[static_cast<std::size_t>(timber)];
  std::vector<WorkStep> steps = work_steps(frame, solve_sawing(frame, timber, saw));
  const bool done = fault.wrong == Wrong::kFence      ? from_wrong_face(t, steps)
                    : fault.wrong == Wrong::kShoulder ? without_shoulder(steps)
                    : fault.wrong == Wrong::kNumber   ? off_by_a_little(steps, static_cast<StepNumberName>(fault.name))
                                                      : false;
  std::printf("planned %.17g %.17g 1 %d\n", t.wood.design.breadth.in(), t.wood.design.depth.in(),
              t.handed_pair >= 0 ? 1 : 0);
  const auto word = [](std::string_view text) { std::printf(" %.*s", static_cast<int>(text.size()), text.data()); };
  for (const WorkStep& step : steps) {
    std::printf("step %s %s", step.id.c_str(), step.of.c_str());
    word(keys::word(kStepWorkWords, step.work));
    word(keys::word(kStepPartWords, step.part));
    word(step.end ? keys::word(keys::kEnd, *step.end) : "-");
    for (const StepNumber& n : step.numbers) {
      word(keys::word(kStepNumberWords, n.name));
      std::printf("=%.17g", n.value);
      if (n.from) std::printf("@%d", static_cast<int>(*n.from));
    }
    std::printf("\n");
  }
  return done;
}

/// Rough wood hung from whichever faces.
FramePlan turned(Random& random, FramePlan plan) {
  const Frame frame = solve_frame(plan).value_or(Frame{});
  plan.overrides.clear();
  for (const Timber& t : frame.timbers) {
    Override o;
    o.mark = t.mark;
    o.has_wood = true;
    o.wood = t.wood;
    o.wood.actual.breadth = o.wood.design.breadth + Length::inches(random.whole(-2, 3), 8);
    o.wood.actual.depth = o.wood.design.depth + Length::inches(random.whole(-2, 3), 8);
    o.wood.top_is_reference = chance(random, 50);
    o.wood.near_is_reference = chance(random, 50);
    plan.overrides.push_back(o);
  }
  return plan;
}

/// Tails of half a foot at least: the heel of a hip's notch in a shorter one runs out between its two tail cuts, which
/// no step's numbers say exactly.
RoofPlan roof_to_check(Random& random) {
  RoofPlan roof = random_roof(random, {true, false, false});
  for (PlanSide& side : roof.sides) side.overhang = std::max(side.overhang, Length::inches(6));
  return roof;
}

/// With dormers where they have room, as they are told they would have it.
RoofPlan dormered_to_check(Random& random) {
  for (;;) {
    RoofPlan roof = dormered_roof(random, true);
    for (PlanSide& side : roof.sides) side.overhang = std::max(side.overhang, Length::inches(6));
    if (roof.dormers.empty()) continue;
    for (int i = 0; i < 12; ++i) {
      const auto solved = solve_roof(roof);
      if (solved) return roof;
      if (!take_cure(roof, solved.error())) break;
    }
  }
}

void write_frame(const Frame& frame, int number, bool with_steps, Fault fault) {
  std::printf("plan %d\n", number);
  for (const Finding& f : frame.findings)
    if (f.id == FindingId::kClash) std::printf("clash %s %s %.17g\n", f.mark.c_str(), f.other.c_str(), f.value);
  const Saw saw = saw_for(number / kStepsOfOneIn);
  for (std::size_t i = 0; i < frame.timbers.size(); ++i) {
    write_timber(frame.timbers[i]);
    if (with_steps && write_steps(frame, static_cast<int>(i), saw, fault)) fault = {};
  }
  for (const ContactFace& c : frame.contacts) write_contact(frame, c);
  std::printf("end\n");
}

}  // namespace

int main(int argc, char** argv) try {
  if (argc < 4) return 2;
  const int count = std::atoi(argv[1]);
  Random random(std::strtoull(argv[2], nullptr, 10));
  const bool clashing = std::strcmp(argv[3], "clashing") == 0;
  const bool turn = std::strcmp(argv[3], "turned") == 0;
  const bool roofs = std::strcmp(argv[3], "roofs") == 0;
  const bool dormers = std::strcmp(argv[3], "dormers") == 0;
  const bool hips = std::strcmp(argv[3], "hips") == 0;
  const Fault fault = fault_of(argc > 4 ? argv[4] : "");
  const double too_long = argc > 4 && fault.wrong == Wrong::kNothing ? std::atof(argv[4]) : 0;
  int others = 0;
  for (int written = 0; written < count;) {
    FramePlan plan = roofs || dormers ? FramePlan{} : hips ? random_hip_plan(random) : plan_to_check(random);
    auto frame = roofs     ? frame_of_roof(roof_to_check(random), plan)
                 : dormers ? frame_of_roof(dormered_to_check(random), plan)
                           : solve_frame(turn ? turned(random, std::move(plan)) : plan);
    if (!frame || clashes(*frame) != clashing) {
      ++others;
      continue;
    }
    if (too_long != 0) cut_too_long(*frame, too_long);
    const bool with_steps = turn || roofs || dormers || hips || fault.wrong != Wrong::kNothing ||
                            (too_long == 0 && written % kStepsOfOneIn == 0);
    write_frame(*frame, written++, with_steps, fault);
  }
  std::printf("passed_over %d\n", others);
  return 0;
} catch (...) {
  return 1;
}
