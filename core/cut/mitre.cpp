#include "cut/mitre.h"

#include "cut/limits.h"
#include "numeric/libm.h"

namespace bentbook {

Result<Mitre> solve_mitre(Angle between, Length depth_a, Length depth_b) {
  constexpr Angle kRight = Angle::degrees(90);
  if (between < limits::kLeastMitre) return fail(ErrorCode::kTooSmall, "between", -1, limits::kLeastMitre.nano_degrees);
  if (between > limits::kMostMitre) return fail(ErrorCode::kTooLarge, "between", -1, limits::kMostMitre.nano_degrees);
  if (depth_a <= Length{}) return fail(ErrorCode::kNotPositive, "depth_a");
  if (depth_b <= Length{}) return fail(ErrorCode::kNotPositive, "depth_b");
  const double phi = between.rad(), a = depth_a.in(), b = depth_b.in();
  const double alpha = libm::atan2(a * libm::sin(phi), b + a * libm::cos(phi));
  Mitre m;
  // Equal members share the angle exactly, whatever the last bit of atan2 says; an odd nano-degree goes to b.
  m.from_length_a = depth_a == depth_b ? Angle{between.nano_degrees / 2} : Angle::from_radians(alpha);
  m.from_length_b = between - m.from_length_a;
  m.off_square_a = kRight - m.from_length_a;
  m.off_square_b = kRight - m.from_length_b;
  m.line = Length::from_inches(a / libm::sin(alpha));
  return m;
}

}  // namespace bentbook
