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

// One draw a statement: C++ leaves the order of two draws in one expression to the compiler.
class Typist {
 public:
  explicit Typist(std::uint64_t seed) : random_(seed) {}

  std::int64_t whole(std::int64_t least, std::int64_t most) { return random_.whole(least, most); }
  Typist& start() {
    text_.clear();
    return *this;
  }
  Typist& number(std::int64_t most) {
    text_ += std::to_string(whole(0, most));
    return *this;
  }
  Typist& one_of(std::initializer_list<const char*> texts) {
    text_ += texts.begin()[whole(0, static_cast<std::int64_t>(texts.size()) - 1)];
    return *this;
  }
  const std::string& text() const { return text_; }

 private:
  Random random_;
  std::string text_;
};

/// Pieces in any order: nonsense, most of it.
void scattered(Typist& typist) {
  for (std::int64_t left = typist.whole(1, 6); left > 0; --left) {
    typist.one_of({"12", "7",   "3/8",  "7-3/8", "' ",      "\" ", "′", "″",  " - ", "-",   " + ",
                   "*",  " / ", "(",    ")",     "151.375", " ",   "m", "mm", " ft", " in", "3,2",
                   "½",  "25'", "16\"", "0",     "1/3",     "x",   "°", "%",  ":",   "0.5"});
  }
}

void measure(Typist& typist) {
  if (typist.whole(0, 2) == 0) {
    typist.number(9999).one_of({"", " mm", "mm", ".5 cm", " m"});
    return;
  }
  if (typist.whole(0, 1) == 0) typist.number(40).one_of({"'", "' ", "'-", "′ ", " ft ", "-"});
  typist.number(11).one_of({"", "-3/8", " 5/16", "½", ".25"}).one_of({"", "\"", "″", " in"});
}

/// Measures with signs between: sense, most of it.
void entry(Typist& typist) {
  typist.one_of({"", "", "-", " ", "(", "2 * ("});
  const bool open = typist.text().find('(') != std::string::npos;
  measure(typist);
  for (std::int64_t left = typist.whole(0, 2); left > 0; --left) {
    if (typist.whole(0, 1) == 0) {
      typist.one_of({" + ", " - ", "-", "+"});
      measure(typist);
    } else {
      typist.one_of({" * ", " / ", "/", "*"}).number(12);
    }
  }
  if (open) typist.one_of({")", ")/3", ") * 1.5"});
}

void slope_entry(Typist& typist) {
  typist.number(24).one_of({"", "", ".5", " 1/2", "-3/8", "½"});
  typist.one_of({"/12", ":12", " in 12", "°", " deg", "%", " mm/m", "", "° 30′", " / 10 1/2"});
}

/// One entry in four is scattered, the others are written by `sensible`.
const std::string& typed(Typist& typist, void (*sensible)(Typist&)) {
  typist.start();
  (typist.whole(0, 3) == 0 ? scattered : sensible)(typist);
  return typist.text();
}

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
  Typist typist(202);
  for (int i = 0; i < 4000; ++i) {
    const std::string text = typed(typist, entry);
    const auto bare = static_cast<BareUnit>(i % 4);
    result_row(rows.whole(i % 4), text, parse_length(text, bare), [&](Length v) { rows.whole(v.count); });
  }
  for (int i = 0; i < 500; ++i) {
    const std::string text = typed(typist, slope_entry);
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
  Typist typist(204);
  for (int i = 0; i < 1500; ++i) {
    const std::string text = typed(typist, slope_entry);
    const auto bare = static_cast<BareSlope>(i % 4);
    result_row(rows.whole(i % 4), text, parse_slope(text, bare), [&](const Slope& v) { slope_row(rows, v); });
  }
}

}  // namespace golden
