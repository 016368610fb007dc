#include "measure/slope.h"

#include "measure/round.h"
#include "numeric/libm.h"

namespace bentbook {
namespace {

// Past every angle that is printed or kept; keeps sums of two inside 64 bits.
constexpr std::int64_t kAngleLimit = 4'000'000'000 * Angle::kPerDegree;

double slope_length(double rise, double run) { return libm::sqrt(rise * rise + run * run); }

}  // namespace

Angle Angle::from_degrees(double deg) { return {nearest_count(deg * 1e9, kAngleLimit)}; }

Angle Angle::from_radians(double rad) { return from_degrees(rad * (180.0 / libm::kPi)); }

double Angle::rad() const { return deg() * (libm::kPi / 180.0); }

// A ratio needs no trigonometry: its sides are whole counts below 2^53, so only the root and one quotient round.
// Of an angle, the values that are exact on paper (45, 30, 60 degrees) are returned exact: pi is not, and a tie at a
// graduation or a division must stay a tie.

double Slope::tan() const {
  if (form != SlopeForm::kAngle) return static_cast<double>(rise.count) / static_cast<double>(run.count);
  if (angle == Angle::degrees(45)) return 1.0;
  return libm::tan(angle.rad());
}

double Slope::cos() const {
  if (form != SlopeForm::kAngle) {
    const double level = static_cast<double>(run.count);
    return level / slope_length(static_cast<double>(rise.count), level);
  }
  if (angle == Angle::degrees(60)) return 0.5;
  return libm::cos(angle.rad());
}

double Slope::sin() const {
  if (form != SlopeForm::kAngle) {
    const double plumb = static_cast<double>(rise.count);
    return plumb / slope_length(plumb, static_cast<double>(run.count));
  }
  if (angle == Angle::degrees(30)) return 0.5;
  return libm::sin(angle.rad());
}

double Slope::rad() const { return form == SlopeForm::kAngle ? angle.rad() : libm::atan(tan()); }

double Slope::deg() const { return form == SlopeForm::kAngle ? angle.deg() : rad() * (180.0 / libm::kPi); }

}  // namespace bentbook
