#include <initializer_list>

#include "measure/parse.h"
#include "measure/print.h"
#include "random.h"
#include "rows.h"

using namespace bentbook;

namespace golden {
namespace {

constexpr LengthForm kForms[] = {LengthForm::kFeetInches, LengthForm::kInchFraction, LengthForm::kDecimalInch,
                                 LengthForm::kMm, LengthForm::kMetre};

const char* pick(Random& random, std::initializer_list<const char*> texts) {
  return texts.begin()[random.whole(0, static_cast<std::int64_t>(texts.size()) - 1)];
}

/// Pieces in any order: nonsense, most of it.
std::string scattered(Random& random) {
  std::string text;
  for (std::int64_t left = random.whole(1, 6); left > 0; --left) {
    text += pick(random, {"12", "7",   "3/8",  "7-3/8", "' ",      "\" ", "′", "″",  " - ", "-",   " + ",
                          "*",  " / ", "(",    ")",     "151.375", " ",   "m", "mm", " ft", " in", "3,2",
                          "½",  "25'", "16\"", "0",     "1/3",     "x",   "°", "%",  ":",   "0.5"});
  }
  return text;
}

std::string measure(Random& random) {
  std::string text;
  if (random.whole(0, 2) == 0)
    return std::to_string(random.whole(0, 9999)) + pick(random, {"", " mm", "mm", ".5 cm", " m"});
  if (random.whole(0, 1) == 0)
    text = std::to_string(random.whole(0, 40)) + pick(random, {"'", "' ", "'-", "′ ", " ft ", "-"});
  text += std::to_string(random.whole(0, 11)) + pick(random, {"", "-3/8", " 5/16", "½", ".25"});
  return text + pick(random, {"", "\"", "″", " in"});
}

/// Measures with signs between: sense, most of it.
std::string entry(Random& random) {
  std::string text = pick(random, {"", "", "-", " ", "(", "2 * ("});
  const bool open = text.find('(') != std::string::npos;
  text += measure(random);
  for (std::int64_t left = random.whole(0, 2); left > 0; --left) {
    if (random.whole(0, 1) == 0) {
      text += pick(random, {" + ", " - ", "-", "+"}) + measure(random);
    } else {
      text += pick(random, {" * ", " / ", "/", "*"}) + std::to_string(random.whole(0, 12));
    }
  }
  return open ? text + ")" + pick(random, {"", "/3", " * 1.5"}) : text;
}

std::string slope_entry(Random& random) {
  const std::string rise = std::to_string(random.whole(0, 24)) + pick(random, {"", "", ".5", " 1/2", "-3/8", "½"});
  return rise + pick(random, {"/12", ":12", " in 12", "°", " deg", "%", " mm/m", "", "° 30′", " / 10 1/2"});
}

bool one_in_four(Random& random) { return random.whole(0, 3) == 0; }

template <class T, class Write>
void result_row(Rows& rows, const std::string& text, const Result<T>& result, Write write) {
  rows.word("[" + text + "]");
  if (result) {
    write(*result);
  } else {
    rows.word("error").whole(static_cast<int>(result.error().code)).whole(result.error().at);
  }
  rows.end();
}

void slope_row(Rows& rows, const Slope& slope) {
  rows.word(print_slope(slope, Marks::kScreen)).word(print_slope(slope, Marks::kAscii));
  rows.bits(slope.tan()).bits(slope.cos()).bits(slope.sin()).bits(slope.rad()).bits(slope.deg());
  rows.whole(Angle::from_radians(slope.rad()).nano_degrees);
  rows.word(print_degrees(Angle::from_degrees(slope.deg()), 3, Marks::kScreen));
}

}  // namespace

void length_print_rows(Rows& rows) {
  Random random(201);
  for (int i = 0; i < 4000; ++i) {
    const std::int64_t most = Length::kLimit >> random.whole(0, 30);
    const Length value{random.whole(-most, most)};
    const LengthStyle style{kForms[i % 5], 8 << random.whole(0, 3), static_cast<int>(random.whole(0, 5))};
    const Printed printed = print_length(value, style, i % 2 == 0 ? Marks::kScreen : Marks::kAscii);
    rows.whole(value.count).word(printed.text).whole(printed.shown.count).whole(printed.rounded ? 1 : 0);
    rows.whole(Length::from_inches(value.in() * 1.0000001).count).bits(value.to_mm()).end();
  }
}

void length_parse_rows(Rows& rows) {
  Random random(202);
  for (int i = 0; i < 4000; ++i) {
    const std::string text = one_in_four(random) ? scattered(random) : entry(random);
    const auto bare = static_cast<BareUnit>(i % 4);
    result_row(rows.whole(i % 4), text, parse_length(text, bare), [&](Length v) { rows.whole(v.count); });
  }
  for (int i = 0; i < 500; ++i) {
    const std::string text = one_in_four(random) ? scattered(random) : slope_entry(random);
    result_row(rows, text, parse_angle(text), [&](Angle v) { rows.whole(v.nano_degrees); });
  }
}

void slope_rows(Rows& rows) {
  Random random(203);
  for (int i = 0; i < 1500; ++i) {
    slope_row(rows.word("pitch"), Slope::in_12(Length::inches(random.whole(0, 24 * 64), 64)));
    rows.end();
    slope_row(rows.word("angle"), Slope::of_angle(Angle{random.whole(0, 90 * Angle::kPerDegree - 1)}));
    rows.end();
  }
  for (int i = 0; i < 1500; ++i) {
    const std::string text = one_in_four(random) ? scattered(random) : slope_entry(random);
    const auto bare = static_cast<BareSlope>(i % 4);
    result_row(rows.whole(i % 4), text, parse_slope(text, bare), [&](const Slope& v) { slope_row(rows, v); });
  }
}

}  // namespace golden
