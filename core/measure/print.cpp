#include "measure/print.h"

#include "numeric/int128.h"

namespace bentbook {
namespace {

struct Glyphs {
  std::string_view foot, inch, before_fraction, slash, minus, degree;
};

constexpr Glyphs kScreenGlyphs{"\u2032", "\u2033", " ", "\u2044", "\u2212", "\u00b0"};
constexpr Glyphs kAsciiGlyphs{"'", "\"", "-", "/", "-", ""};

const Glyphs& glyphs_of(Marks marks) { return marks == Marks::kScreen ? kScreenGlyphs : kAsciiGlyphs; }

std::string digits_of(Int128 n) {  // n >= 0
  std::string text;
  do {
    text.insert(text.begin(), static_cast<char>('0' + static_cast<int>(n % 10)));
    n /= 10;
  } while (n > 0);
  return text;
}

Int128 power_of_10(int n) {
  Int128 power = 1;
  for (; n > 0; --n) power *= 10;
  return power;
}

/// `scaled` / 10^decimals. scaled >= 0.
std::string decimal_text(Int128 scaled, int decimals) {
  std::string text = digits_of(scaled);
  const auto places = static_cast<std::size_t>(decimals);
  if (places == 0) return text;
  if (text.size() <= places) text.insert(0, places + 1 - text.size(), '0');
  return text.insert(text.size() - places, 1, '.');
}

int clamped(int value, int least, int most) { return value < least ? least : value > most ? most : value; }

/// `steps` of 1/denominator inch as whole inches and a reduced fraction: 7 3/8, 3/8, 7.
std::string inch_text(Int128 steps, int denominator, const Glyphs& glyphs) {
  const Int128 whole = steps / denominator;
  int num = static_cast<int>(steps % denominator);
  int den = denominator;
  if (num == 0) return digits_of(whole);
  for (; num % 2 == 0; num /= 2) den /= 2;
  std::string text;
  if (whole > 0) text.append(digits_of(whole)).append(glyphs.before_fraction);
  return text.append(digits_of(num)).append(glyphs.slash).append(digits_of(den));
}

/// The smallest step of a style, in counts: `counts` for 10^-decimals or 1/denominator of a unit.
struct Division {
  std::int64_t counts = 0;
  int decimals = 0;
  int denominator = 1;
};

bool fraction_form(LengthForm form) { return form == LengthForm::kFeetInches || form == LengthForm::kInchFraction; }

Division division_of(LengthStyle style) {
  Division division;
  std::int64_t unit = Length::kPerInch;
  if (fraction_form(style.form)) {
    const int d = style.denominator;
    const bool on_a_tape = d >= 1 && d <= 128 && (d & (d - 1)) == 0;
    division.denominator = on_a_tape ? d : 16;
    division.counts = unit / division.denominator;
    return division;
  }
  // No more decimals than an eighth of a nanometre can tell exactly.
  if (style.form == LengthForm::kDecimalInch) division.decimals = clamped(style.decimals, 0, 5);
  if (style.form == LengthForm::kMm) {
    unit = Length::kPerMm;
    division.decimals = clamped(style.decimals, 0, 1);
  }
  if (style.form == LengthForm::kMetre) {
    unit = 1000 * Length::kPerMm;
    division.decimals = clamped(style.decimals, 0, 9);
  }
  division.counts = unit / static_cast<std::int64_t>(power_of_10(division.decimals));
  return division;
}

std::string magnitude_text(Int128 steps, LengthForm form, const Division& division, const Glyphs& glyphs) {
  std::string text;
  switch (form) {
    case LengthForm::kFeetInches: {
      const Int128 foot = 12 * division.denominator;
      if (steps >= foot) text.append(digits_of(steps / foot)).append(glyphs.foot).append(" ");
      std::string inches = inch_text(steps % foot, division.denominator, glyphs);
      // 12' 0 3/8": the 0 shows that no inch was forgotten.
      const bool fraction_alone = steps % foot > 0 && steps % foot < division.denominator;
      if (!text.empty() && fraction_alone) text.append("0").append(glyphs.before_fraction);
      return text.append(inches).append(glyphs.inch);
    }
    case LengthForm::kInchFraction:
      return text.append(inch_text(steps, division.denominator, glyphs)).append(glyphs.inch);
    case LengthForm::kDecimalInch:
      return text.append(decimal_text(steps, division.decimals)).append(glyphs.inch);
    case LengthForm::kMm:
      return text.append(decimal_text(steps, division.decimals)).append(" mm");
    case LengthForm::kMetre:
      break;
  }
  return text.append(decimal_text(steps, division.decimals)).append(" m");
}

/// counts / unit in at most so many decimals, without closing zeros. counts >= 0.
std::string short_decimal(Int128 counts, std::int64_t unit, int decimals) {
  const Int128 scaled = divide_half_up(counts * power_of_10(decimals), unit);
  return without_trailing_zeros(decimal_text(scaled, decimals));
}

bool whole_number_of(Length value, std::int64_t counts) { return value.count % counts == 0; }

/// One side of a ratio that was not said in inches.
std::string side_text(Length value, Marks marks) {
  if (whole_number_of(value, Length::kPerInch / 64)) {
    return inch_text(value.count / (Length::kPerInch / 64), 64, glyphs_of(marks)).append(glyphs_of(marks).inch);
  }
  return short_decimal(value.count, Length::kPerMm, 9) + " mm";
}

std::string ratio_text(Length rise, Length run, Marks marks) {
  constexpr std::int64_t kSixtyFourth = Length::kPerInch / 64;
  constexpr std::int64_t kHundredThousandth = Length::kPerInch / 100'000;
  const Glyphs& glyphs = glyphs_of(marks);
  if (whole_number_of(rise, kSixtyFourth) && whole_number_of(run, kSixtyFourth)) {
    return inch_text(rise.count / kSixtyFourth, 64, glyphs) + ":" + inch_text(run.count / kSixtyFourth, 64, glyphs);
  }
  const bool decimals = whole_number_of(rise, kHundredThousandth) && whole_number_of(run, kHundredThousandth);
  const bool metric = whole_number_of(rise, Length::kPerMm) && whole_number_of(run, Length::kPerMm);
  if (decimals && !metric) {
    return short_decimal(rise.count, Length::kPerInch, 5) + ":" + short_decimal(run.count, Length::kPerInch, 5);
  }
  return side_text(rise, marks) + ":" + side_text(run, marks);
}

}  // namespace

Printed print_length(Length value, LengthStyle style, Marks marks) {
  const Division division = division_of(style);
  const bool negative = value.count < 0;
  const Int128 size = negative ? -static_cast<Int128>(value.count) : static_cast<Int128>(value.count);
  const Int128 steps = divide_half_up(size, division.counts);
  const Int128 off = steps * division.counts - size;
  Printed printed;
  printed.rounded = 4 * (off < 0 ? -off : off) > division.counts;
  // A tenth that is none tells nobody anything.
  const bool whole_mm = style.form == LengthForm::kMm && division.decimals == 1 && steps % 10 == 0;
  printed.text = whole_mm ? magnitude_text(steps / 10, style.form, {}, glyphs_of(marks))
                          : magnitude_text(steps, style.form, division, glyphs_of(marks));
  if (negative && steps > 0) printed.text.insert(0, glyphs_of(marks).minus);
  printed.shown = Length{static_cast<std::int64_t>(negative ? -(steps * division.counts) : steps * division.counts)};
  return printed;
}

std::string print_degrees(Angle value, int decimals, Marks marks) {
  const int places = clamped(decimals, 0, 9);
  const Int128 size = value.nano_degrees < 0 ? -static_cast<Int128>(value.nano_degrees) : Int128{value.nano_degrees};
  const Int128 scaled = divide_half_up(size, power_of_10(9 - places));
  std::string text = decimal_text(scaled, places).append(glyphs_of(marks).degree);
  if (value.nano_degrees < 0 && scaled > 0) text.insert(0, glyphs_of(marks).minus);
  return text;
}

std::string print_slope(const Slope& slope, Marks marks) {
  const bool screen = marks == Marks::kScreen;
  switch (slope.form) {
    case SlopeForm::kAngle:
      return without_trailing_zeros(print_degrees(slope.angle, 9, Marks::kAscii)) + (screen ? "\u00b0" : " deg");
    case SlopeForm::kPercent:
      return short_decimal(slope.rise.count, Length::kPerInch, 5) + (screen ? " %" : "%");
    case SlopeForm::kMmPerM:
      return short_decimal(slope.rise.count, Length::kPerMm, 4) + " mm/m";
    case SlopeForm::kRatio:
      break;
  }
  return ratio_text(slope.rise, slope.run, marks);
}

}  // namespace bentbook
