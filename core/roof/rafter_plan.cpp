#include "roof/rafter_plan.h"

#include "numeric/libm.h"
#include "roof/rafter_check.h"

namespace bentbook {
namespace {

void set_slope(SidePlan& s, const Slope& slope) {
  s.tan = slope.tan();
  s.cos = slope.cos();
  s.sin = slope.sin();
}

/// Seat and heel, whichever was given: heel = depth / cos θ − seat · tan θ.
Result<void> set_heel(SidePlan& s, const RafterInput& input, const RafterSide& side, Side name) {
  const double depth = input.section.depth.in(), plumb_depth = depth / s.cos;
  if (side.heel_by == HeelBy::kSeat) {
    s.seat = side.seat.in();
    s.heel = plumb_depth - s.seat * s.tan;
    if (!(s.heel > 0))
      return fail(ErrorCode::kSeatTooLong, side_key("seat", name), -1, Length::from_inches(depth / s.sin).count - 1);
    return {};
  }
  s.heel = side.heel.in();
  s.seat = (plumb_depth - s.heel) / s.tan;
  if (s.seat < 0) {
    const Length most = Length::from_inches(plumb_depth);
    if (side.heel > most) return fail(ErrorCode::kHeelTooLarge, side_key("heel", name), -1, most.count);
    s.seat = 0;  // a heel as high as the rafter is plumb deep: no bird's mouth
  }
  return {};
}

Result<SidePlan> start_side(const RafterInput& input, const RafterSide& side, Side name) {
  SidePlan s;
  set_slope(s, side.measured ? Slope::ratio(side.measured_rise, side.measured_run) : side.pitch);
  s.plate_height = side.plate_height.in();
  if (auto ok = set_heel(s, input, side, name); !ok) return tl::unexpected(ok.error());
  return s;
}

/// Heels and plates stay: the ridge falls where the top edges meet.
Result<void> ridge_follows(RoofPlan& plan, const RafterInput& input) {
  SidePlan &l = plan.left, &r = plan.right;
  const double higher = (r.heel + r.plate_height) - (l.heel + l.plate_height);
  if (input.plan_by == PlanBy::kSpanAndRun) return fail(ErrorCode::kConflict, "held");
  if (input.plan_by == PlanBy::kSpan) {
    l.run = (plan.span * r.tan + higher) / (l.tan + r.tan);
    r.run = plan.span - l.run;
  } else {
    r.run = (l.run * l.tan - higher) / r.tan;
    plan.span = l.run + r.run;
  }
  if (!(l.run > 0 && r.run > 0)) return fail(ErrorCode::kImpossible, "held");
  return {};
}

/// The ridge stays where it was put: the right heel or the right plate follows.
Result<void> right_follows(RoofPlan& plan, const RafterInput& input) {
  SidePlan &l = plan.left, &r = plan.right;
  if (input.plan_by == PlanBy::kSpan) l.run = plan.span / 2;
  if (input.plan_by == PlanBy::kRun) plan.span = 2 * l.run;
  r.run = plan.span - l.run;
  if (!(r.run > 0)) return fail(ErrorCode::kTooLarge, "run", -1, input.span.count - 1);
  const double peak = l.plate_height + l.heel + l.run * l.tan;
  if (input.held == Held::kRidgeAndHeels) {
    r.plate_height = peak - r.heel - r.run * r.tan;
    return {};
  }
  const double plumb_depth = input.section.depth.in() / r.cos;
  r.heel = peak - r.plate_height - r.run * r.tan;
  r.seat = (plumb_depth - r.heel) / r.tan;
  if (!(r.heel > 0 && r.seat >= -1e-9)) return fail(ErrorCode::kImpossible, "held");
  if (r.seat < 0) r.seat = 0;
  return {};
}

/// A rafter that was measured in place stands on its own run.
void set_measured_run(SidePlan& s, const RafterSide& side) {
  if (side.measured) s.run = side.measured_run.in();
}

}  // namespace

std::string side_key(const char* field, Side side) {
  return std::string(field) + (side == Side::kLeft ? "_left" : "_right");
}

Result<RoofPlan> plan_roof(const RafterInput& input) {
  if (auto ok = check_rafter_fields(input); !ok) return tl::unexpected(ok.error());
  RoofPlan plan;
  plan.span = input.span.in();
  auto left = start_side(input, input.left, Side::kLeft);
  if (!left) return tl::unexpected(left.error());
  plan.left = *left;
  plan.left.run = input.run.in();
  if (input.alike) {
    if (input.plan_by == PlanBy::kSpan) plan.left.run = plan.span / 2;
    if (input.plan_by == PlanBy::kSpanAndRun && input.span != input.run * 2) return fail(ErrorCode::kConflict, "run");
    plan.span = 2 * plan.left.run;
    set_measured_run(plan.left, input.left);
    plan.right = plan.left;
    return plan;
  }
  auto right = start_side(input, input.right, Side::kRight);
  if (!right) return tl::unexpected(right.error());
  plan.right = *right;
  auto ok = input.held == Held::kHeelsAndPlates ? ridge_follows(plan, input) : right_follows(plan, input);
  if (!ok) return tl::unexpected(ok.error());
  set_measured_run(plan.left, input.left);
  set_measured_run(plan.right, input.right);
  return plan;
}

}  // namespace bentbook
