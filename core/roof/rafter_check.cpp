#include "roof/rafter_check.h"

#include "roof/limits.h"
#include "roof/rafter_plan.h"

namespace bentbook {
namespace {

constexpr Length kZero{};

bool positive(Length v) { return v > kZero && v.count <= Length::kLimit; }
bool not_negative(Length v) { return v >= kZero && v.count <= Length::kLimit; }

ErrorCode fault(Length v, ErrorCode low) { return v.count > Length::kLimit ? ErrorCode::kTooLarge : low; }

Result<void> want_positive(Length v, const char* where) {
  if (positive(v)) return {};
  return fail(fault(v, ErrorCode::kNotPositive), where, -1, Length::kLimit);
}
Result<void> want_not_negative(Length v, const char* where) {
  if (not_negative(v)) return {};
  return fail(fault(v, ErrorCode::kNegative), where, -1, Length::kLimit);
}

Result<void> check_pitch(const Slope& slope, Side side) {
  const bool by_angle = slope.form == SlopeForm::kAngle;
  if (by_angle ? slope.angle >= Angle::degrees(90) : slope.run <= kZero)
    return fail(ErrorCode::kSteep, side_key("pitch", side));
  if (by_angle ? slope.angle <= Angle{} : slope.rise <= kZero)
    return fail(ErrorCode::kNotPositive, side_key("pitch", side));
  return {};
}

Result<void> check_side(const RafterSide& s, Side side) {
  if (!s.measured) {
    if (auto ok = check_pitch(s.pitch, side); !ok) return ok;
  } else {
    if (!positive(s.measured_rise))
      return fail(fault(s.measured_rise, ErrorCode::kNotPositive), side_key("measured_rise", side), -1, Length::kLimit);
    if (!positive(s.measured_run))
      return fail(fault(s.measured_run, ErrorCode::kNotPositive), side_key("measured_run", side), -1, Length::kLimit);
  }
  if (s.heel_by == HeelBy::kSeat && !not_negative(s.seat))
    return fail(fault(s.seat, ErrorCode::kNegative), side_key("seat", side), -1, Length::kLimit);
  if (s.heel_by == HeelBy::kHeel && !positive(s.heel))
    return fail(fault(s.heel, ErrorCode::kNotPositive), side_key("heel", side), -1, Length::kLimit);
  if (!not_negative(s.overhang))
    return fail(fault(s.overhang, ErrorCode::kNegative), side_key("overhang", side), -1, Length::kLimit);
  if (s.plate_height.count > Length::kLimit || s.plate_height.count < -Length::kLimit)
    return fail(ErrorCode::kTooLarge, side_key("plate_height", side), -1, Length::kLimit);
  return {};
}

Result<void> check_peak(const RafterInput& input) {
  if (input.peak == PeakKind::kRidgeBoard) {
    if (auto ok = want_positive(input.ridge_thickness, "ridge"); !ok) return ok;
    return want_not_negative(input.ridge_depth, "ridge_depth");
  }
  if (input.peak == PeakKind::kOverBeam) {
    if (auto ok = want_positive(input.beam_breadth, "ridge_beam"); !ok) return ok;
    return want_not_negative(input.beam_seat, "ridge_seat");
  }
  return {};
}

Result<void> check_load(const RafterInput& input) {
  if (input.feet == Feet::kTied) return {};
  if (!(input.load_psf >= 0)) return fail(ErrorCode::kNegative, "load");
  if (input.load_psf > limits::kMostRafterLoad) return fail(ErrorCode::kTooLarge, "load");
  return want_positive(input.spacing, "spacing");
}

}  // namespace

Result<void> check_rafter_fields(const RafterInput& input) {
  Result<void> ok;
  if (input.plan_by != PlanBy::kRun) ok = want_positive(input.span, "span");
  if (ok && input.plan_by != PlanBy::kSpan) ok = want_positive(input.run, "run");
  if (ok) ok = want_positive(input.section.depth, "depth");
  if (ok) ok = want_positive(input.section.breadth, "breadth");
  if (ok) ok = want_not_negative(input.plate_breadth, "plate");
  if (ok) ok = want_not_negative(input.sheathing, "sheathing");
  if (ok) ok = want_not_negative(input.trim, "trim");
  if (ok && input.tail == TailCut::kLevelAndPlumb) ok = want_positive(input.tail_plumb, "tail_plumb");
  if (ok) ok = check_peak(input);
  if (ok) ok = check_load(input);
  if (ok) ok = check_side(input.left, Side::kLeft);
  if (ok && !input.alike) ok = check_side(input.right, Side::kRight);
  return ok;
}

}  // namespace bentbook
