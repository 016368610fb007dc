#include <catch_amalgamated.hpp>
#include <cmath>
#include <cstdio>
#include <cstring>
#include <string>

#include "measure/parse.h"
#include "measure/print.h"
#include "random.h"

using namespace bentbook;

namespace {

LengthStyle random_style(Random& random) {
  constexpr LengthForm kForms[] = {LengthForm::kFeetInches, LengthForm::kInchFraction, LengthForm::kDecimalInch,
                                   LengthForm::kMm, LengthForm::kMetre};
  return {kForms[random.whole(0, 4)], 1 << random.whole(3, 6), static_cast<int>(random.whole(0, 5))};
}

/// Smallest division of a style in counts, told independently of the printer.
std::int64_t division(const LengthStyle& style) {
  constexpr std::int64_t kPowers[] = {1, 10, 100, 1000, 10'000, 100'000};
  switch (style.form) {
    case LengthForm::kDecimalInch:
      return 203'200'000 / kPowers[style.decimals];
    case LengthForm::kMm:
      return 8'000'000 / kPowers[style.decimals > 0 ? 1 : 0];
    case LengthForm::kMetre:
      return 8'000'000'000 / kPowers[style.decimals];
    default:
      return 203'200'000 / style.denominator;
  }
}

BareUnit random_unit(Random& random) { return static_cast<BareUnit>(random.whole(0, 3)); }
Marks random_marks(Random& random) { return random.bits() % 2 == 0 ? Marks::kScreen : Marks::kAscii; }

// Sizes from a 64th of an inch to kilometres, as often small as large.
Length random_length(Random& random) {
  const std::int64_t most = Length::kLimit >> random.whole(0, 24);
  return Length{random.whole(-most, most)};
}

/// An entry and what it comes to in plain doubles.
struct Reckoned {
  std::string text;
  double inches = 0;
  double largest = 0;  ///< the largest number on the way, for the tolerance
};

Reckoned random_measure(Random& random) {
  const std::int64_t whole = random.whole(1, 99);
  const std::int64_t eighths = random.whole(1, 7);
  const std::string number = std::to_string(whole);
  const double value = static_cast<double>(whole);
  const double fraction = static_cast<double>(eighths) / 8;
  switch (random.whole(0, 4)) {
    case 0:
      return {number + "' 7-" + std::to_string(eighths) + "/8\"", value * 12 + 7 + fraction};
    case 1:
      return {number + " " + std::to_string(eighths) + "/8", value + fraction};
    case 2:
      return {number + " mm", value / 25.4};
    case 3:
      return {number + ".5'", (value + 0.5) * 12};
    default:
      return {number + "\"", value};
  }
}

Reckoned random_sum(Random& random, int depth) {
  Reckoned sum;
  const std::int64_t terms = random.whole(1, 3);
  for (std::int64_t i = 0; i < terms; ++i) {
    Reckoned term = random_measure(random);
    if (depth > 0 && random.whole(0, 3) == 0) {
      term = random_sum(random, depth - 1);
      term.text = "(" + term.text + ")";
    }
    for (std::int64_t k = random.whole(0, 2); k > 0; --k) {
      const std::int64_t factor = random.whole(2, 12);
      const double by = static_cast<double>(factor);
      const std::int64_t way = random.whole(0, 2);
      if (way == 0) term.text += " * " + std::to_string(factor);
      if (way == 1) term.text += " / " + std::to_string(factor);
      if (way == 2 && k > 1) continue;
      if (way == 2) term.text = std::to_string(factor) + " * " + term.text;
      term.inches = way == 1 ? term.inches / by : term.inches * by;
    }
    const bool minus = i > 0 && random.whole(0, 1) == 0;
    if (i > 0) sum.text += minus ? " - " : " + ";
    sum.text += term.text;
    sum.inches += minus ? -term.inches : term.inches;
    sum.largest = std::fmax(std::fmax(sum.largest, term.largest), std::fabs(term.inches));
  }
  return sum;
}

std::string exact_decimals(double value, int decimals) {
  // The C library prints the double's whole expansion; what is cut off then decides, half going up.
  char text[1500];
  const int size = std::snprintf(text, sizeof text, "%.1100f", std::fabs(value));
  std::string digits(text, static_cast<std::size_t>(size));
  const std::size_t keep = digits.find('.') + 1 + static_cast<std::size_t>(decimals);
  const bool up = digits[keep] >= '5';
  digits.resize(decimals == 0 ? keep - 1 : keep);
  for (std::size_t i = digits.size(); up && i-- > 0;) {
    if (digits[i] == '.') continue;
    if (digits[i] != '9') {
      ++digits[i];
      break;
    }
    digits[i] = '0';
    if (i == 0) digits.insert(0, 1, '1');
  }
  const bool zero = digits.find_first_not_of("0.") == std::string::npos;
  return (std::signbit(value) && !zero ? "-" : "") + digits;
}

}  // namespace

TEST_CASE("what a print shows is what its text reads as, within half a division", "[length][property]") {
  Random random(20'240'501);
  const int cases = property_cases();
  for (int i = 0; i < cases; ++i) {
    const LengthStyle style = random_style(random);
    const std::int64_t step = division(style);
    Length value = random_length(random);
    if (i % 2 == 0) value.count = value.count / step * step;
    const Printed printed = print_length(value, style, random_marks(random));
    const auto read = parse_length(printed.text, random_unit(random));
    const std::int64_t off =
        printed.shown.count > value.count ? printed.shown.count - value.count : value.count - printed.shown.count;
    const bool holds = read && *read == printed.shown && 2 * off <= step && (value.count % step != 0 || off == 0) &&
                       printed.rounded == (4 * off > step);
    if (!holds) {
      INFO(printed.text << " for " << value.count);
      REQUIRE(holds);
    }
  }
  SUCCEED();
}

TEST_CASE("a value typed in feet, inches and sixty-fourths is exactly that", "[length][property]") {
  Random random(7);
  const int cases = property_cases();
  const char* const joins[][4] = {{"' ", "-", "\"", ""}, {"-", "-", "", ""},    {" ", " ", "", ""},
                                  {"'", " ", "", ""},    {"′ ", " ", "″", " "}, {" ft ", "-", " in", "  "}};
  for (int i = 0; i < cases; ++i) {
    const std::int64_t feet = random.whole(0, 2000);
    const std::int64_t inches = random.whole(0, 11);
    const std::int64_t den = std::int64_t{1} << random.whole(1, 6);
    const std::int64_t num = random.whole(1, den - 1);
    const auto& join = joins[random.whole(0, 5)];
    const std::string text = join[3] + std::to_string(feet) + join[0] + std::to_string(inches) + join[1] +
                             std::to_string(num) + "/" + std::to_string(den) + join[2];
    const auto read = parse_length(text, random_unit(random));
    const std::int64_t expected = (feet * 12 + inches) * 203'200'000 + num * 203'200'000 / den;
    if (!read || read->count != expected) {
      INFO(text);
      REQUIRE(read);
      REQUIRE(read->count == expected);
    }
  }
  SUCCEED();
}

TEST_CASE("sums, products and parentheses come out as plain arithmetic has them", "[length][property]") {
  Random random(23);
  const int cases = property_cases();
  for (int i = 0; i < cases; ++i) {
    const Reckoned sum = random_sum(random, 2);
    const auto read = parse_length(sum.text, BareUnit::kInch);
    const double size = std::fabs(sum.inches) + sum.largest;
    if (size > 300'000 || sum.text.size() > 256) continue;  // near a limit
    const bool holds = read && std::fabs(read->in() - sum.inches) < 1e-8 + 1e-12 * size;
    if (!holds) {
      INFO(sum.text << " should be " << sum.inches);
      REQUIRE(read);
      REQUIRE(holds);
    }
  }
  SUCCEED();
}

TEST_CASE("slopes and angles read back as they print", "[slope][property]") {
  Random random(11);
  const int cases = property_cases();
  for (int i = 0; i < cases; ++i) {
    Slope slope;
    switch (random.whole(0, 4)) {
      case 0:
        slope = Slope::in_12(Length::inches(random.whole(0, 24 * 64), 64));
        break;
      case 1:
        slope = Slope::ratio(Length::mm(random.whole(0, 9000)), Length::mm(random.whole(1, 9000)));
        break;
      case 2:
        slope = Slope::of_angle(Angle{random.whole(0, 90 * Angle::kPerDegree - 1)});
        break;
      case 3:
        slope = {SlopeForm::kPercent, Length::inches(random.whole(0, 40'000), 100), Length::inches(100), {}};
        break;
      default:
        slope = {SlopeForm::kMmPerM, Length{random.whole(0, 50'000) * (Length::kPerMm / 10)}, Length::mm(1000), {}};
        break;
    }
    const std::string text = print_slope(slope, random_marks(random));
    const auto read = parse_slope(text, static_cast<BareSlope>(random.whole(0, 3)));
    if (!read || !(*read == slope)) {
      INFO(text);
      REQUIRE(read);
      REQUIRE(*read == slope);
    }
  }
  SUCCEED();
}

TEST_CASE("the sides of a slope and its angle tell the same triangle", "[slope][property]") {
  Random random(13);
  const int cases = property_cases();
  for (int i = 0; i < cases; ++i) {
    const Slope slope = random.bits() % 2 == 0 ? Slope::ratio(Length{random.whole(0, Length::kLimit)},
                                                              Length{random.whole(1, Length::kLimit)})
                                               : Slope::of_angle(Angle{random.whole(0, 90 * Angle::kPerDegree - 1)});
    const double sin = slope.sin();
    const double cos = slope.cos();
    const bool holds = std::fabs(sin * sin + cos * cos - 1) < 1e-14 && std::fabs(slope.tan() * cos - sin) < 1e-14 &&
                       std::fabs(std::sin(slope.rad()) - sin) < 1e-14 &&
                       std::fabs(slope.deg() * 3.14159265358979323846 / 180 - slope.rad()) < 1e-14;
    if (!holds) {
      INFO(slope.rise.count << " / " << slope.run.count << ", " << slope.angle.nano_degrees);
      REQUIRE(holds);
    }
  }
  SUCCEED();
}

TEST_CASE("fixed decimals are the C library's exact expansion, cut half up", "[print][property]") {
  Random random(17);
  const int cases = property_cases() / 10;
  for (int i = 0; i < cases; ++i) {
    double value = 0;
    if (i % 3 == 0) {
      const std::uint64_t bits = random.bits();
      std::memcpy(&value, &bits, sizeof value);
    } else if (i % 3 == 1) {
      value = static_cast<double>(random.whole(-1'000'000, 1'000'000)) / 512;  // ties among them
    } else {
      value = random.real(-1000, 1000);
    }
    if (!std::isfinite(value)) continue;
    const int decimals = static_cast<int>(random.whole(0, 12));
    const std::string text = print_fixed(value, decimals);
    const std::string expected = exact_decimals(value, decimals);
    if (text != expected) REQUIRE(text == expected);
  }
  SUCCEED();
}

TEST_CASE("any bytes end in a value or an error inside the text", "[parse][property]") {
  Random random(19);
  const int cases = property_cases();
  const std::string alphabet = "0123456789'\"/-+*() .,:%mfti\xe2\x80\xb2\xb3\xc2\xb0x";
  for (int i = 0; i < cases; ++i) {
    std::string text(static_cast<std::size_t>(random.whole(0, 24)), ' ');
    for (char& c : text) {
      c = random.bits() % 16 == 0
              ? static_cast<char>(random.bits())
              : alphabet[static_cast<std::size_t>(random.whole(0, 1)) + random.bits() % (alphabet.size() - 1)];
    }
    const auto size = static_cast<std::int64_t>(text.size());
    const auto inside = [size](const Error& error) { return error.at >= 0 && error.at <= size; };
    const auto length = parse_length(text, random_unit(random));
    const auto slope = parse_slope(text, static_cast<BareSlope>(random.whole(0, 3)));
    const auto angle = parse_angle(text);
    const auto count = parse_count(text);
    const bool holds = (length || inside(length.error())) && (slope || inside(slope.error())) &&
                       (angle || inside(angle.error())) && (count || inside(count.error()));
    if (!holds) {
      INFO(text);
      REQUIRE(holds);
    }
  }
  SUCCEED();
}
