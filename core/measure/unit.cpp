#include "measure/unit.h"

#include "text/print_fixed.h"

namespace bentbook {
namespace {

constexpr double kPascalPerPsf = 0.45359237 * 9.80665 / (0.3048 * 0.3048);
constexpr double kMetreASecondPerMph = 0.44704;

}  // namespace

KeptIn kept_in(std::string_view key) {
  return key.ends_with("_psf") ? KeptIn::kPsf : key.ends_with("_mph") ? KeptIn::kMph : KeptIn::kPlain;
}

EntryStep entry_step(KeptIn kept, LengthForm form) {
  if (!is_metric(form) || kept == KeptIn::kPlain) return {};
  if (kept == KeptIn::kMph) return {1 / kMetreASecondPerMph, 0};
  return {10 / kPascalPerPsf, 2};
}

std::int64_t steps_of(double kept, EntryStep step) {
  const double steps = kept / step.size;
  return static_cast<std::int64_t>(steps < 0 ? steps - 0.5 : steps + 0.5);
}

std::string steps_text(std::int64_t steps, EntryStep step) {
  double unit = 1;
  for (int i = 0; i < step.decimals; ++i) unit *= 10;
  return without_trailing_zeros(print_fixed(static_cast<double>(steps) / unit, step.decimals));
}

}  // namespace bentbook
