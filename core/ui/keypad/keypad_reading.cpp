#include <string>

#include "measure/parse.h"
#include "measure/print.h"
#include "ui/keypad/keypad.h"

namespace bentbook::screens {
namespace {

Error past(ErrorCode code, std::int64_t limit = 0) { return {code, {}, -1, limit}; }

/// The about sign where rounding moved the value.
std::string shown(const Printed& printed) { return printed.rounded ? "≈ " + printed.text : printed.text; }

}  // namespace

Keypad::Reading Keypad::reading() const {
  if (fresh_) return opened_;
  Reading out = read_entry();
  check_range(out);
  if (out.error) out.error->where = title_;
  return out;
}

void Keypad::check_range(Reading& out) const {
  if (out.length) {
    if (*out.length < range_.min)
      out.error = range_.min == Length{} ? past(ErrorCode::kNegative) : past(ErrorCode::kTooSmall, range_.min.count);
    if (*out.length > range_.max) out.error = past(ErrorCode::kTooLarge, range_.max.count);
  }
  if (out.angle) {
    if (*out.angle < angle_min_) out.error = past(ErrorCode::kTooSmall, angle_min_.nano_degrees);
    if (*out.angle > angle_max_) out.error = past(ErrorCode::kTooLarge, angle_max_.nano_degrees);
  }
  if (out.count) {
    if (*out.count < count_min_) out.error = past(ErrorCode::kTooSmall, count_min_);
    if (*out.count > count_max_) out.error = past(ErrorCode::kTooLarge, count_max_);
  }
}

Keypad::Reading Keypad::read_entry() const {
  Reading out;
  const std::string text = entry();
  const auto keep = [&out](const auto& result, auto& place) {
    if (result)
      place = *result;
    else
      out.error = result.error();
  };
  switch (quantity_) {
    case Quantity::kLength:
      keep(parse_length(text, bare()), out.length);
      break;
    case Quantity::kAngle:
      keep(parse_angle(text), out.angle);
      break;
    case Quantity::kCount:
      keep(parse_decimal(text, step_.decimals), out.count);
      if (out.error && out.error->code == ErrorCode::kTooLarge) out.error->limit = count_max_;
      break;
    case Quantity::kSlope:
      // The slots hold a rise for 12 of run; typed text may say any slope.
      if (typing_ || form_ != BareSlope::kIn12) {
        keep(parse_slope(text, form_), out.slope);
      } else if (const auto rise = parse_length(text, BareUnit::kInch)) {
        out.slope = Slope::in_12(*rise);
      } else {
        out.error = rise.error();
      }
      break;
  }
  return out;
}

std::string Keypad::limit_text(const Error& error) const {
  if (quantity_ == Quantity::kCount) return steps_text(error.limit, step_);
  // Of a slope, only what is said in degrees has limits with a number.
  if (quantity_ == Quantity::kAngle || quantity_ == Quantity::kSlope)
    return print_degrees({error.limit}, 1, Marks::kScreen);
  return {};
}

std::string Keypad::echo() const {
  const Reading now = reading();
  if (!now.good()) return {};
  switch (quantity_) {
    case Quantity::kLength:
      return shown(print_length(*now.length, style_, Marks::kScreen));
    case Quantity::kAngle:
      return print_degrees(*now.angle, 3, Marks::kScreen);
    case Quantity::kCount:
      return steps_text(*now.count, step_);
    case Quantity::kSlope:
      break;
  }
  const std::string said = print_slope(*now.slope, Marks::kScreen);
  const std::string angle = print_degrees(Angle::from_degrees(now.slope->deg()), 2, Marks::kScreen);
  return now.slope->form == SlopeForm::kAngle ? angle : said + " = " + angle;
}

}  // namespace bentbook::screens
