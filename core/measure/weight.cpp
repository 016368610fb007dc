#include "measure/weight.h"

namespace bentbook {

Weight Weight::from_lb(double lb) {
  if (!(lb == lb)) return {};
  const double counts = lb * static_cast<double>(kPerPound);
  if (counts >= static_cast<double>(kLimit)) return {kLimit};
  if (counts <= -static_cast<double>(kLimit)) return {-kLimit};
  return {static_cast<std::int64_t>(counts < 0 ? counts - 0.5 : counts + 0.5)};
}

WeightUnit weight_unit(LengthForm form) { return is_metric(form) ? WeightUnit::kKilogram : WeightUnit::kPound; }

std::int64_t whole_units(Weight value, WeightUnit unit) {
  return static_cast<std::int64_t>(divide_half_up(value.count, per_unit(unit)));
}

std::string print_weight(Weight value, LengthForm form) {
  const WeightUnit unit = weight_unit(form);
  return std::to_string(whole_units(value, unit)) + (unit == WeightUnit::kPound ? " lb" : " kg");
}

}  // namespace bentbook
