#include "cut/triangle.h"

#include "numeric/libm.h"

namespace bentbook {
namespace {

constexpr Length kNone{};

Result<void> check_length(Length value, const char* where) {
  if (value < kNone) return fail(ErrorCode::kNegative, where);
  if (value.count > Length::kLimit) return fail(ErrorCode::kTooLarge, where, -1, Length::kLimit);
  return {};
}

Triangle from_legs(Length rise, Length run) {
  Triangle t;
  t.rise = rise;
  t.run = run;
  t.slope_length = Length::from_inches(libm::hypot(rise.in(), run.in()));
  t.angle = Angle::from_radians(libm::atan2(rise.in(), run.in()));
  t.level = rise == kNone;
  t.vertical = run == kNone;
  t.tan = t.vertical ? 0 : rise.in() / run.in();
  return t;
}

/// The leg that a slope length and the other leg leave.
Length other_leg(Length slope_length, Length leg) {
  const double s = slope_length.in(), a = leg.in();
  return Length::from_inches(libm::sqrt((s - a) * (s + a)));
}

Result<Triangle> from_slope_length(Length slope_length, Length leg, bool leg_is_rise) {
  if (slope_length == kNone) return fail(ErrorCode::kNotPositive, "slope_length");
  if (slope_length < leg) return fail(ErrorCode::kImpossible, "slope_length", -1, leg.count);
  const Length other = other_leg(slope_length, leg);
  Triangle t = leg_is_rise ? from_legs(leg, other) : from_legs(other, leg);
  t.slope_length = slope_length;
  return t;
}

Result<Triangle> from_angle(const TriangleInput& input, TrianglePart part) {
  const Slope& slope = input.slope;
  Triangle t;
  if (part == TrianglePart::kRun) {
    if (input.run == kNone) return fail(ErrorCode::kNotPositive, "run");
    t = from_legs(Length::from_inches(input.run.in() * slope.tan()), input.run);
    t.slope_length = Length::from_inches(input.run.in() / slope.cos());
  } else if (part == TrianglePart::kRise) {
    if (input.rise == kNone) return fail(ErrorCode::kNotPositive, "rise");
    if (!(slope.tan() > 0)) return fail(ErrorCode::kImpossible, "rise");
    t = from_legs(input.rise, Length::from_inches(input.rise.in() / slope.tan()));
    t.slope_length = Length::from_inches(input.rise.in() / slope.sin());
  } else {
    if (input.slope_length == kNone) return fail(ErrorCode::kNotPositive, "slope_length");
    t = from_legs(Length::from_inches(input.slope_length.in() * slope.sin()),
                  Length::from_inches(input.slope_length.in() * slope.cos()));
    t.slope_length = input.slope_length;
  }
  t.tan = slope.tan();
  t.angle = Angle::from_degrees(slope.deg());
  return t;
}

Result<void> check_slope(const Slope& slope) {
  if (slope.form == SlopeForm::kAngle) {
    if (slope.angle < Angle{}) return fail(ErrorCode::kNegative, "slope");
    if (slope.angle >= Angle::degrees(90)) return fail(ErrorCode::kSteep, "slope");
  } else {
    if (slope.rise < kNone) return fail(ErrorCode::kNegative, "slope");
    if (slope.run <= kNone) return fail(ErrorCode::kSteep, "slope");
  }
  return {};
}

Result<void> check_parts(const TriangleInput& input) {
  if (input.older == input.newer) return fail(ErrorCode::kMissing, "triangle");
  for (const TrianglePart part : {input.older, input.newer}) {
    Result<void> ok;
    if (part == TrianglePart::kRise) ok = check_length(input.rise, "rise");
    if (part == TrianglePart::kRun) ok = check_length(input.run, "run");
    if (part == TrianglePart::kSlopeLength) ok = check_length(input.slope_length, "slope_length");
    if (part == TrianglePart::kSlope) ok = check_slope(input.slope);
    if (!ok) return ok;
  }
  return {};
}

}  // namespace

Result<Triangle> solve_triangle(const TriangleInput& input) {
  if (auto ok = check_parts(input); !ok) return tl::unexpected(ok.error());
  if (input.given(TrianglePart::kSlope))
    return from_angle(input, input.older == TrianglePart::kSlope ? input.newer : input.older);
  if (input.given(TrianglePart::kSlopeLength)) {
    const bool rise = input.given(TrianglePart::kRise);
    return from_slope_length(input.slope_length, rise ? input.rise : input.run, rise);
  }
  if (input.rise == kNone && input.run == kNone) return fail(ErrorCode::kNotPositive, "run");
  return from_legs(input.rise, input.run);
}

SlopeFacts slope_facts(const Slope& slope) {
  SlopeFacts f;
  f.angle = Angle::from_degrees(slope.deg());
  f.complement = Angle::degrees(90) - f.angle;
  f.in_12 = 12 * slope.tan();
  f.percent = 100 * slope.tan();
  f.mm_per_m = 1000 * slope.tan();
  return f;
}

}  // namespace bentbook
