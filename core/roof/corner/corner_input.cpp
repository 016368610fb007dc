#include "roof/corner/corner_input.h"

#include "roof/limits.h"

namespace bentbook {
namespace {

constexpr std::string_view kCornerKinds[] = {"hip", "valley"};
constexpr std::string_view kCornerPeaks[] = {"ridge", "between"};
constexpr std::string_view kCornerHeelBy[] = {"seat", "heel"};
constexpr AngleEntry kEaves{limits::kLeastEaves, limits::kMostEaves};

Result<void> check_slope(const Slope& slope, const char* where) {
  const bool by_angle = slope.form == SlopeForm::kAngle;
  if (by_angle ? slope.angle >= Angle::degrees(90) : slope.run <= Length{}) return fail(ErrorCode::kSteep, where);
  if (by_angle ? slope.angle <= Angle{} : slope.rise <= Length{}) return fail(ErrorCode::kNotPositive, where);
  return {};
}

struct CheckedLength {
  const char* where;
  Length CornerInput::*at;
  bool may_be_none;
};
constexpr CheckedLength kCheckedLengths[] = {
    {"run", &CornerInput::run, false},
    {"hip_breadth", &CornerInput::hip_breadth, false},
    {"hip_depth", &CornerInput::hip_depth, false},
    {"jack_breadth", &CornerInput::jack_breadth, false},
    {"jack_depth", &CornerInput::jack_depth, false},
    {"ridge", &CornerInput::ridge, true},
    {"overhang", &CornerInput::overhang, true},
    {"spacing", &CornerInput::spacing, false},
};

Result<void> check_one(Length value, const char* where, bool may_be_none) {
  if (value.count > Length::kLimit) return fail(ErrorCode::kTooLarge, where, -1, Length::kLimit);
  if (value < Length{}) return fail(may_be_none ? ErrorCode::kNegative : ErrorCode::kNotPositive, where);
  if (value == Length{} && !may_be_none) return fail(ErrorCode::kNotPositive, where);
  return {};
}

}  // namespace

void describe(Fields& fields, CornerInput& c) {
  fields.choice("kind", c.kind, kCornerKinds);
  fields.angle("eave_angle", c.eave_angle, kEaves);
  fields.slope("pitch", c.pitch);
  fields.slope("pitch_other", c.pitch_other);
  fields.length("run", c.run, kOnBuilding);
  fields.length("hip_breadth", c.hip_breadth);
  fields.length("hip_depth", c.hip_depth);
  fields.length("jack_breadth", c.jack_breadth);
  fields.length("jack_depth", c.jack_depth);
  fields.flag("backed", c.backed);
  fields.choice("peak", c.peak, kCornerPeaks);
  fields.length("ridge", c.ridge);
  fields.choice("heel_by", c.heel_by, kCornerHeelBy);
  fields.length("seat", c.seat);
  fields.length("heel", c.heel);
  fields.length("overhang", c.overhang);
  fields.length("spacing", c.spacing);
}

Result<void> check_corner(const CornerInput& input) {
  if (input.eave_angle < kEaves.min) return fail(ErrorCode::kTooSmall, "eave_angle", -1, kEaves.min.nano_degrees);
  if (input.eave_angle > kEaves.max) return fail(ErrorCode::kTooLarge, "eave_angle", -1, kEaves.max.nano_degrees);
  if (auto ok = check_slope(input.pitch, "pitch"); !ok) return ok;
  if (auto ok = check_slope(input.pitch_other, "pitch_other"); !ok) return ok;
  for (const CheckedLength& one : kCheckedLengths)
    if (auto ok = check_one(input.*one.at, one.where, one.may_be_none); !ok) return ok;
  return input.heel_by == HeelBy::kSeat ? check_one(input.seat, "seat", true) : check_one(input.heel, "heel", false);
}

}  // namespace bentbook
