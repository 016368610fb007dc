// Corners solved whole, against the trade's printed tables. Sources stand at the cases; the closed forms alone are in
// trade_tables_test.cpp, random corners in tests/property.
#include "roof/corner/corner.h"

#include <catch_amalgamated.hpp>
#include <cmath>

#include "roof/corner/corner_cuts.h"
#include "words/roofs/corner_words.h"

using namespace bentbook;
using Catch::Matchers::WithinAbs;

namespace {

/// Thin stock, no ridge, a foot of run: what tables are printed for.
CornerInput table_corner(int rise, int other, CornerKind kind = CornerKind::kHip) {
  CornerInput input;
  input.kind = kind;
  input.pitch = Slope::in_12(Length::inches(rise));
  input.pitch_other = Slope::in_12(Length::inches(other));
  input.run = Length::feet(1);
  input.hip_breadth = input.jack_breadth = Length::inches(3, 2);
  input.hip_depth = Length::inches(30);
  input.jack_depth = Length::inches(11, 2);
  input.ridge = input.overhang = {};
  input.seat = Length::inches(1);
  input.spacing = Length::inches(16);
  return input;
}

RoofCorner solved(const CornerInput& input) {
  auto corner = solve_corner(input);
  REQUIRE(corner);
  return *corner;
}

const CornerCut& cut_of(const FixedList<CornerCut, 16>& cuts, CornerCutName name, int roof) {
  for (const CornerCut& cut : cuts)
    if (cut.name == name && cut.roof == roof) return cut;
  FAIL("no such cut");
  return cuts[0];
}

}  // namespace

// NAVEDTRA 14044 ch. 2; Griffith, Carpentry, 1916; Audel's Guide vol. 3: hip for each foot of common run, difference
// of jacks at 16 in, side cuts against 12 (hip 12 · 16.97 over the hip, jack 144 over the common).
TEST_CASE("a square corner gives the handbooks' hip, jacks and side cuts", "[roof][corner][trade]") {
  struct Row {
    int rise;
    double hip, difference;
  };
  for (const Row& row : {Row{8, 18.76, 19.23}, Row{10, 19.70, 20.83}, Row{12, 20.78, 22.63}}) {
    CAPTURE(row.rise);
    const CornerInput input = table_corner(row.rise, row.rise);
    const RoofCorner corner = solved(input);
    const auto cuts = corner_cuts(input, corner);
    const double common = std::hypot(12, row.rise);
    if (row.rise != 10) CHECK_THAT(corner.per_foot.in(), WithinAbs(row.hip, 0.005));
    CHECK(corner.per_foot == corner.length);
    CHECK_THAT(corner.square_run.in(), WithinAbs(16.97, 0.005));
    if (row.rise != 12) CHECK_THAT(corner.roof(0).jack_difference.in(), WithinAbs(row.difference, 0.005));
    CHECK(corner.roof(0).jack_difference == corner.roof(1).jack_difference);
    const CutLine jack = cut_line(cut_of(cuts, CornerCutName::kJack, 0), Face::kTop);
    CHECK(jack.from_length == corner.roof(0).jack_side);
    CHECK_THAT(on_square(jack.off_square).number.in(), WithinAbs(144 / common, 1e-6));
    CHECK(on_square(jack.off_square).along_12);
    const CutLine hip = cut_line(cut_of(cuts, CornerCutName::kPeakCheek, 0), Face::kTop);
    CHECK_THAT(on_square(hip.off_square).number.in(),
               WithinAbs(12 * 16.970563 / std::hypot(16.970563, row.rise), 1e-6));
    CHECK(on_square(hip.off_square).along_12);
  }
}

// Hodgson, ABC of the Steel Square: span 24 ft, end run 16 ft, rise 10 ft: the hip runs 20 ft; 20 and 10 on the square.
TEST_CASE("the hip of an unequal roof runs 20 ft and rises 10", "[roof][corner][trade]") {
  CornerInput input = table_corner(10, 1);
  input.run = Length::feet(12);
  input.pitch_other = Slope::ratio(Length::feet(10), Length::feet(16));
  const RoofCorner corner = solved(input);
  CHECK(corner.run == Length::feet(20));
  CHECK(corner.rise == Length::feet(10));
  CHECK(corner.roof(1).run == Length::feet(16));
  CHECK_THAT(corner.length.in(), WithinAbs(12 * std::sqrt(500.0), 1e-6));
}

// Published irregular-roof framing notes, recomputed: valley of 12 in 12 and 8 in 12 over a square corner.
TEST_CASE("the valley of 12 in 12 and 8 in 12", "[roof][corner][trade]") {
  const CornerInput input = table_corner(12, 8, CornerKind::kValley);
  const RoofCorner corner = solved(input);
  const CornerRoof &steep = corner.roof(0), &low = corner.roof(1);
  CHECK_THAT(corner.slope.deg(), WithinAbs(29.01714, 1e-5));
  CHECK_THAT(steep.plan.deg(), WithinAbs(33.69007, 1e-5));
  CHECK_THAT(steep.jack_side.deg(), WithinAbs(46.68614, 1e-5));
  CHECK_THAT(steep.backing.deg(), WithinAbs(36.03989, 1e-5));
  CHECK_THAT(steep.jack_difference.in(), WithinAbs(15.08495, 1e-5));
  CHECK_THAT(low.plan.deg(), WithinAbs(56.30993, 1e-5));
  CHECK_THAT(low.jack_side.deg(), WithinAbs(29.01714, 1e-5));
  CHECK_THAT(low.backing.deg(), WithinAbs(17.92021, 1e-5));
  CHECK_THAT(low.jack_difference.in(), WithinAbs(28.84441, 1e-5));
  CHECK(corner.drop == Length{});
  CHECK(corner.shift == Length{});
}

// TAFE roofing tables to AS 1684, per unit of run.
TEST_CASE("hips of 30, 22 and 40 degrees per unit of run, in millimetres", "[roof][corner][trade]") {
  for (const auto& [degrees, per_unit] : {std::pair{30, 1.52753}, {22, 1.47079}, {40, 1.64441}}) {
    CornerInput input = table_corner(8, 8);
    input.pitch = input.pitch_other = Slope::of_angle(Angle::degrees(degrees));
    input.run = Length::mm(1000);
    CHECK_THAT(solved(input).length.to_mm() / 1000, WithinAbs(per_unit, 5e-6));
  }
}

// Published hip-drop example: 8 in 12, 1 1/2 in: about 3/8 in; 12 and 8 in 12: plane geometry. Backing of a square hip:
// plane geometry; with the hip's own slope in the place of the common's it would be 17.55°.
TEST_CASE("drop, shift and backing", "[roof][corner][trade]") {
  const RoofCorner square = solved(table_corner(8, 8));
  CHECK_THAT(square.drop.in(), WithinAbs(0.3536, 1e-4));
  CHECK(square.shift == Length{});
  CHECK_THAT(square.roof(0).backing.deg(), WithinAbs(23.093, 5e-4));
  CHECK_THAT(solved(table_corner(12, 12)).roof(0).backing.deg(), WithinAbs(30, 1e-8));
  const RoofCorner unlike = solved(table_corner(12, 8));
  CHECK_THAT(unlike.shift.in(), WithinAbs(0.288, 5e-4));
  CHECK(unlike.shift_to == 1);
  CHECK_THAT(unlike.drop.in(), WithinAbs(0.384, 1e-3));
  CornerInput backed = table_corner(12, 8);
  backed.backed = true;
  CHECK(solved(backed).drop == Length{});
  // Hip heel = common heel less the drop.
  CHECK(solved(backed).heel - unlike.heel == unlike.drop);
}

// NAVEDTRA 14044 ch. 2: a hip is shortened by half the 45° thickness of its ridge, a jack by half that of the hip;
// both level.
TEST_CASE("shortenings at a square corner are half the 45° thicknesses", "[roof][corner][trade]") {
  CornerInput input = table_corner(8, 8);
  input.run = Length::feet(12);
  input.ridge = Length::inches(3, 2);
  const double half45 = 1.5 / 2 * std::sqrt(2.0), rate = std::sqrt(144.0 + 64) / 12;
  const RoofCorner corner = solved(input);
  CHECK_THAT(corner.shortening_level.in(), WithinAbs(half45, 1e-6));
  CHECK_THAT(corner.roof(0).jack_shortening.in(), WithinAbs(half45 * rate, 1e-6));
  CHECK_THAT((corner.length - corner.to_cut).in(), WithinAbs(half45 / corner.cos, 1e-6));
  input.peak = CornerPeak::kBetween;
  CHECK_THAT(solved(input).shortening_level.in(), WithinAbs(half45, 1e-6));
}

TEST_CASE("jacks stand between the corner and the last common, on either roof", "[roof][corner]") {
  for (const CornerKind kind : {CornerKind::kHip, CornerKind::kValley}) {
    CornerInput input = table_corner(12, 6, kind);
    input.run = Length::feet(12);
    const RoofCorner corner = solved(input);
    for (const int roof : {0, 1}) {
      const CornerRoof& r = corner.roof(roof);
      const double along = r.run.in() / std::tan(r.plan.rad());  // the last common's place, by the plan's triangle
      CAPTURE(roof, static_cast<int>(kind), along);
      // Of a valley those that half its thickness leaves nothing of are none.
      CHECK(r.jacks <= static_cast<int>(std::ceil(along / 16 - 1e-9)) - 1);
      CHECK(r.jacks >= static_cast<int>(std::ceil(along / 16 - 1e-9)) - 2);
      const Jack first = jack_of(input, corner, roof, 1), second = jack_of(input, corner, roof, 2);
      const Length grows = kind == CornerKind::kHip ? second.line - first.line : first.line - second.line;
      CHECK_THAT(grows.in(), WithinAbs(r.jack_difference.in(), 1e-6));
      CHECK(first.length < first.line);
    }
  }
}

TEST_CASE("what gives no corner names the field that gives way", "[roof][corner]") {
  struct Case {
    const char* where;
    ErrorCode code;
    void (*change)(CornerInput&);
  };
  const Case cases[] = {
      {"eave_angle", ErrorCode::kTooLarge, [](CornerInput& c) { c.eave_angle = Angle::degrees(180); }},
      {"eave_angle", ErrorCode::kTooSmall, [](CornerInput& c) { c.eave_angle = {}; }},
      {"pitch", ErrorCode::kNotPositive, [](CornerInput& c) { c.pitch = Slope::in_12({}); }},
      {"pitch_other", ErrorCode::kSteep, [](CornerInput& c) { c.pitch_other = Slope::of_angle(Angle::degrees(90)); }},
      {"pitch_other", ErrorCode::kSteep, [](CornerInput& c) { c.pitch_other.run = {}; }},
      {"run", ErrorCode::kNotPositive, [](CornerInput& c) { c.run = {}; }},
      {"spacing", ErrorCode::kNotPositive, [](CornerInput& c) { c.spacing = {}; }},
      {"hip_breadth", ErrorCode::kNotPositive, [](CornerInput& c) { c.hip_breadth = {}; }},
      {"hip_breadth", ErrorCode::kTooLarge, [](CornerInput& c) { c.hip_breadth = Length::inches(40); }},
      {"overhang", ErrorCode::kNegative, [](CornerInput& c) { c.overhang = Length::inches(-1); }},
      {"seat", ErrorCode::kSeatTooLong, [](CornerInput& c) { c.seat = Length::inches(20); }},
      {"seat", ErrorCode::kSeatTooLong,
       [](CornerInput& c) { c.seat = Length::inches(96, 10); }},  // nothing left once dropped
      {"heel", ErrorCode::kHeelTooLarge, [](CornerInput& c) { c.heel_by = HeelBy::kHeel, c.heel = Length::inches(7); }},
      {"heel", ErrorCode::kTooSmall, [](CornerInput& c) { c.heel_by = HeelBy::kHeel, c.heel = Length::inches(1, 4); }},
      {"pitch_other", ErrorCode::kImpossible,
       [](CornerInput& c) { c.pitch_other = Slope::of_angle(Angle{90'000'000'000 - 9}); }},
      {"peak", ErrorCode::kImpossible,
       [](CornerInput& c) {
         c.eave_angle = Angle::degrees(150), c.pitch = Slope::in_12(Length::inches(2)), c.peak = CornerPeak::kBetween;
         c.seat = {};
       }},
  };
  for (const Case& one : cases) {
    CornerInput input = table_corner(8, 8);
    one.change(input);
    const auto corner = solve_corner(input);
    CAPTURE(one.where, static_cast<int>(one.code));
    REQUIRE_FALSE(corner);
    CHECK(corner.error().where == one.where);
    CHECK(corner.error().code == one.code);
    if (one.code != ErrorCode::kSeatTooLong && one.code != ErrorCode::kHeelTooLarge) continue;
    // The limit that is told would do.
    (input.heel_by == HeelBy::kSeat ? input.seat : input.heel) = Length{corner.error().limit};
    CHECK(solve_corner(input));
  }
}

TEST_CASE("a roof that rises away from the hip is said, and has no jacks", "[roof][corner]") {
  CornerInput input = table_corner(2, 12);
  input.eave_angle = Angle::degrees(150);
  input.seat = {};
  const RoofCorner corner = solved(input);
  REQUIRE(corner.cautions.count > 0);
  CHECK(corner.cautions[0].id == CornerCautionId::kRisesAway);
  CHECK(corner.cautions[0].roof == 0);
  CHECK_FALSE(corner.roof(0).meets);
  CHECK(corner.roof(0).jacks == 0);
  CHECK(corner.roof(0).backing < Angle{});
  // With a hip that stands square to its eave there are none either, and nothing is endless.
  input = table_corner(6, 12);
  input.eave_angle = Angle::degrees(120);
  const RoofCorner square = solved(input);
  CHECK_THAT(square.roof(0).plan.deg(), WithinAbs(90, 1e-9));
  CHECK(square.roof(0).jack_difference == Length{});
  CHECK(square.roof(0).jacks == 0);
}

// NAVEDTRA 14044 ch. 2: a hip is stepped off with 17 (16.97) and the rise; common practice: half of both where a leg is
// too short.
TEST_CASE("the framing square's numbers for a hip fit on its legs", "[corner][words]") {
  Voice voice;
  voice.marks = Marks::kAscii;
  CornerInput input = table_corner(8, 8);
  CHECK(hold_square_text(input, solved(input), voice) == "Hold ~ 17\" on the body and 8\" on the tongue.");
  input = table_corner(20, 20);
  CHECK(hold_square_text(input, solved(input), voice) == "Hold 8-1/2\" on the body and 10\" on the tongue.");
}

TEST_CASE("a square's numbers for a cut are never over 12, and 300 mm to a metric crew", "[corner][words]") {
  Voice voice;
  voice.marks = Marks::kAscii;
  // 8 in 12, 144 over the common: 9.98 against 12 (NAVEDTRA 14044).
  CHECK(on_square_text(Angle::from_degrees(50.2378), voice) == "Square: 12 and 10\", line along the 12");
  CHECK(on_square_text({}, voice) == "Square across");
  voice.lengths = {LengthForm::kMm, 16, 1};
  CHECK(on_square_text(Angle::from_degrees(30), voice) == "Square: 300 and 173.2 mm, line along the 173.2 mm");
}
