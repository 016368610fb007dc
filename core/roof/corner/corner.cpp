#include "roof/corner/corner.h"

#include "numeric/libm.h"

namespace bentbook {
namespace {

double cos_of_tan(double t) { return 1 / libm::sqrt(1 + t * t); }
double sin_of_tan(double t) { return t / libm::sqrt(1 + t * t); }

/// How fast each roof falls away from the hip line, square to it in plan.
struct Falls {
  double own, other;
};
Falls falls(double eave, double own, double other) {
  const double plan = hip_plan_angle(eave, own, other);
  return {own * libm::cos(plan), other * libm::cos(eave - plan)};
}

}  // namespace

double hip_plan_angle(double eave, double own, double other) {
  return libm::atan2(libm::sin(eave), own / other + libm::cos(eave));
}

double hip_slope(double own, double plan) { return libm::atan(own * libm::sin(plan)); }

double backing_angle(double own, double plan) { return libm::asin(sin_of_tan(own) * libm::cos(plan)); }

double jack_side_cut(double own, double plan) { return libm::atan2(cos_of_tan(own), libm::tan(plan)); }

double jack_difference(double spacing, double own, double plan) { return spacing * libm::tan(plan) / cos_of_tan(own); }

double hip_drop(double thickness, double eave, double own, double other) {
  // The arrises stand u and v off the hip line, u + v = thickness, where both roofs have fallen by the same drop.
  const Falls f = falls(eave, own, other);
  return thickness * f.own * f.other / (f.own + f.other);
}

double hip_shift(double thickness, double eave, double own, double other) {
  const Falls f = falls(eave, own, other);
  return thickness / 2 * (f.other - f.own) / (f.own + f.other);
}

}  // namespace bentbook
