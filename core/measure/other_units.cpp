#include "measure/other_units.h"

#include "measure/parse.h"
#include "measure/print.h"
#include "numeric/libm.h"

namespace bentbook {
namespace {

constexpr std::string_view kAbout = "≈ ", kDegree = "°";

std::string with_about(const Printed& printed, bool about) {
  return (about || printed.rounded ? std::string(kAbout) : std::string{}) + printed.text;
}

/// Degrees are themselves rounded: what they give in 12 is always about, but for level.
std::optional<std::string> in_twelve(std::string_view degrees) {
  const auto slope = parse_slope(degrees, BareSlope::kDegrees);
  if (!slope) return {};
  constexpr double kSteepest = 85;
  if (slope->deg() > kSteepest) return {};
  const auto whole = static_cast<std::int64_t>(libm::floor(slope->tan() * 12 * 16 + 0.5));
  const Printed rise = print_length(Length::inches(whole, 16), {LengthForm::kInchFraction, 16, 0}, Marks::kScreen);
  std::string text = rise.text;
  constexpr std::string_view kInch = "″";
  if (text.ends_with(kInch)) text.resize(text.size() - kInch.size());
  return (whole == 0 ? std::string{} : std::string(kAbout)) + text + ":12";
}

}  // namespace

std::optional<std::string> in_other_units(std::string_view printed) {
  const bool about = printed.starts_with(kAbout);
  if (about) printed.remove_prefix(kAbout.size());
  if (printed.ends_with(kDegree)) return in_twelve(printed);
  const bool metric = printed.ends_with(" mm") || printed.ends_with(" m");
  if (!metric && !printed.ends_with("″")) return {};
  const auto length = parse_length(printed, BareUnit::kInch);
  if (!length) return {};
  const LengthStyle style = metric ? LengthStyle{} : LengthStyle{LengthForm::kMm, 16, 1};
  return with_about(print_length(*length, style, Marks::kScreen), about);
}

}  // namespace bentbook
