#include "cut/flip_test.h"

#include "cut/limits.h"
#include "numeric/libm.h"

namespace bentbook {

Result<Angle> scale_error_from_flip(Length gap, Length depth) {
  if (depth <= Length{}) return fail(ErrorCode::kNotPositive, "flip_depth");
  const Length most = flip_gap(limits::kMostScaleError, depth);
  if (gap > most || -gap > most) return fail(ErrorCode::kTooLarge, "flip_gap", -1, most.count);
  return Angle::from_radians(libm::asin(gap.in() / (2 * depth.in())));
}

Length flip_gap(Angle error, Length depth) { return Length::from_inches(2 * depth.in() * libm::sin(error.rad())); }

}  // namespace bentbook
