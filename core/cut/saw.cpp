#include "cut/saw.h"

namespace bentbook {
namespace {

Result<void> between(Angle value, Angle low, Angle high, const char* where) {
  if (value < low) return fail(ErrorCode::kTooSmall, where, -1, low.nano_degrees);
  if (value > high) return fail(ErrorCode::kTooLarge, where, -1, high.nano_degrees);
  return {};
}

}  // namespace

Angle in_scale(SquareReads square_reads, Angle off_square_or_reading) {
  if (square_reads == SquareReads::kZero) return off_square_or_reading;
  return Angle::degrees(90) - off_square_or_reading;
}

Result<void> check_saw(const Saw& saw) {
  if (saw.step <= Angle{}) return fail(ErrorCode::kNotPositive, "step");
  if (saw.step > Angle::degrees(45)) return fail(ErrorCode::kTooLarge, "step", -1, Angle::degrees(45).nano_degrees);
  if (saw.kind != SawKind::kHand && saw.reach <= Length{}) return fail(ErrorCode::kNotPositive, "reach");
  if (saw.reach.count > Length::kLimit) return fail(ErrorCode::kTooLarge, "reach", -1, Length::kLimit);
  if (auto ok = between(saw.max_swing, {}, Angle::degrees(90), "max_swing"); !ok) return ok;
  if (auto ok = between(saw.max_tilt, {}, Angle::degrees(90), "max_tilt"); !ok) return ok;
  return between(saw.scale_error, Angle::degrees(-5), Angle::degrees(5), "scale_error");
}

}  // namespace bentbook
