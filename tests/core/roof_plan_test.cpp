// A roof of any plan against the trade's printed tables and worked examples: beside each check its source.

#include <algorithm>
#include <catch_amalgamated.hpp>
#include <cmath>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "measure/fields.h"
#include "roof/plan/solve_roof.h"

using namespace bentbook;
using Catch::Matchers::WithinAbs;

namespace {

constexpr double kDegree = 3.14159265358979323846 / 180;
Slope in12(std::int64_t n, std::int64_t d = 1) { return Slope::in_12(Length::inches(n, d)); }

RoofSolution solved(const RoofPlan& plan) {
  auto roof = solve_roof(plan);
  INFO((roof ? std::string() : roof.error().where));
  REQUIRE(roof);
  return *std::move(roof);
}

std::vector<const RoofTimber*> all_of(const RoofSolution& roof, RoofTimberKind kind, int side = -1) {
  std::vector<const RoofTimber*> found;
  for (const RoofTimber& t : roof.timbers)
    if (t.kind == kind && (side < 0 || t.left == side)) found.push_back(&t);
  return found;
}

/// The only finding of its kind.
RoofFinding finding_of(const RoofSolution& roof, RoofFindingId id) {
  RoofFinding found;
  int count = 0;
  for (const RoofFinding& f : roof.findings)
    if (f.id == id) found = f, ++count;
  REQUIRE(count == 1);
  return found;
}
bool says(const RoofSolution& roof, RoofFindingId id) {
  for (const RoofFinding& f : roof.findings)
    if (f.id == id) return true;
  return false;
}

/// Off the timber's length on the top face, the cut against another timber at the upper end.
double side_cut(const RoofTimber& t) {
  for (const RoofEndCut& cut : t.cuts)
    if (cut.at_b && cut.name == RoofCutName::kCheek)
      return 90 - std::fabs(blade_angles(cut.plane, Face::kTop).swing) / kDegree;
  return 0;
}

}  // namespace

TEST_CASE("A hipped rectangle has one ridge, four hips and four planes", "[roofplan]") {
  const RoofSolution roof = solved(rectangle_roof(Length::feet(30), Length::feet(20), in12(8)));
  const auto ridges = all_of(roof, RoofTimberKind::kRidge), hips = all_of(roof, RoofTimberKind::kHip);
  CHECK(ridges.size() == 1);
  CHECK(hips.size() == 4);
  CHECK_THAT(ridges[0]->line_length, WithinAbs(120, 1e-9));  // 30 ft less twice half of 20
  double area = 0;
  for (const RoofFace& face : roof.shape.faces) area += face.plan_area;
  CHECK_THAT(area, WithinAbs((360 + 24) * (240 + 24), 1e-6));
}

TEST_CASE("A square plan is a pyramid: four hips that meet in a point, and no ridge", "[roofplan]") {
  const RoofSolution roof = solved(rectangle_roof(Length::feet(20), Length::feet(20), in12(12)));
  CHECK(all_of(roof, RoofTimberKind::kRidge).empty());
  CHECK(all_of(roof, RoofTimberKind::kHip).size() == 4);
  CHECK(all_of(roof, RoofTimberKind::kHipJack).size() > 8);
}

TEST_CASE("Hips and common rafters have the lengths that are printed for each foot of run", "[roofplan]") {
  // NAVEDTRA 14044 ch. 2; Griffith, Carpentry, 1916; Hodgson, ABC of the Steel Square.
  const struct {
    int rise;
    double common, hip;
  } rows[] = {{8, 14.42, 18.76}, {12, 16.97, 20.78}};
  for (const auto& row : rows) {
    const RoofSolution roof = solved(rectangle_roof(Length::feet(30), Length::feet(20), in12(row.rise)));
    CHECK_THAT(all_of(roof, RoofTimberKind::kHip)[0]->line_length / 10, WithinAbs(row.hip, 0.005));
    CHECK_THAT(all_of(roof, RoofTimberKind::kCommon)[0]->line_length / 10, WithinAbs(row.common, 0.005));
  }
}

TEST_CASE("Hip and rafter of a square corner for each unit of run are those of printed tables in degrees",
          "[roofplan]") {
  // TAFE tables to AS 1684: 30°, 22°, 40°.
  const struct {
    int degrees;
    double rafter, hip;
  } rows[] = {{30, 1.15470, 1.52753}, {22, 1.07853, 1.47079}, {40, 1.30541, 1.64441}};
  for (const auto& row : rows) {
    RoofPlan plan = rectangle_roof(Length::feet(30), Length::feet(20), Slope::of_angle(Angle::degrees(row.degrees)));
    const RoofSolution roof = solved(plan);
    CHECK_THAT(all_of(roof, RoofTimberKind::kHip)[0]->line_length / 120, WithinAbs(row.hip, 5e-6));
    CHECK_THAT(all_of(roof, RoofTimberKind::kCommon)[0]->line_length / 120, WithinAbs(row.rafter, 5e-6));
  }
}

TEST_CASE("Jacks differ by the printed common difference", "[roofplan]") {
  // NAVEDTRA 14044; Griffith: 16 in on centre, 8 and 10 in 12.
  const struct {
    int rise;
    double difference;
  } rows[] = {{8, 19.23}, {10, 20.83}};
  for (const auto& row : rows) {
    RoofPlan plan = rectangle_roof(Length::feet(30), Length::feet(20), in12(row.rise));
    plan.spacing = Length::inches(16);
    plan.common.depth = Length::inches(8);
    const auto roof = solved(plan);
    const auto jacks = all_of(roof, RoofTimberKind::kHipJack, 0);
    REQUIRE(jacks.size() > 4);
    CHECK_THAT(jacks[2]->line_length - jacks[1]->line_length, WithinAbs(row.difference, 0.005));
    CHECK_THAT(jacks[2]->length - jacks[1]->length, WithinAbs(row.difference, 0.005));
  }
}

TEST_CASE("An unequal roof's hip runs as far as the worked example says", "[roofplan]") {
  // Hodgson, ABC of the Steel Square: span 24 ft, the end's run 16 ft, rise 10 ft: the hip's run is 20 ft, its numbers
  // on the square 20 and 10.
  RoofPlan plan = rectangle_roof(Length::feet(40), Length::feet(24), in12(10));
  plan.sides[1].pitch = plan.sides[3].pitch = Slope::ratio(Length::feet(10), Length::feet(16));
  plan.common.depth = Length::inches(8);
  const RoofSolution roof = solved(plan);
  for (const RoofTimber* hip : all_of(roof, RoofTimberKind::kHip)) {
    CHECK_THAT(hip->run, WithinAbs(240, 1e-6));
    CHECK_THAT(std::tan(hip->slope), WithinAbs(0.5, 1e-9));
  }
}

TEST_CASE("Backing and drop of a square hip are those in print", "[roofplan]") {
  // Published hip-drop example, 8/12 and 1 1/2 in stock: about 3/8 in (exact 0.3536). Backing at 8/12 and 12/12:
  // asin(sin common slope · cos 45°) = 23.093° and 30°.
  RoofPlan plan = rectangle_roof(Length::feet(30), Length::feet(20), in12(8));
  plan.hip.breadth = Length::inches(3, 2);
  const RoofSolution dropped = solved(plan);
  CHECK_THAT(all_of(dropped, RoofTimberKind::kHip)[0]->drop, WithinAbs(0.3536, 5e-5));
  plan.hip_top = HipTop::kBacked;
  for (const auto& [rise, backing] : {std::pair{8, 23.093}, {12, 30.0}}) {
    for (PlanSide& side : plan.sides) side.pitch = in12(rise);
    plan.common.depth = Length::inches(8);
    const RoofSolution roof = solved(plan);
    for (const RoofTimber* hip : all_of(roof, RoofTimberKind::kHip)) {
      REQUIRE(hip->backing.size() == 2);
      for (const CutPlane& bevel : hip->backing)
        CHECK_THAT(std::atan2(std::fabs(bevel.normal.y), bevel.normal.z) / kDegree, WithinAbs(backing, 5e-4));
    }
  }
}

TEST_CASE("An unbacked hip between unlike roofs is shifted and dropped as a worked example has it", "[roofplan]") {
  // 12 and 8 in 12, 1 1/2 in stock: shift 0.288 toward the shallower roof, then drop 0.384 (irregular-roof notes).
  RoofPlan plan = rectangle_roof(Length::feet(40), Length::feet(20), in12(12));
  plan.sides[1].pitch = plan.sides[3].pitch = in12(8);
  plan.hip.breadth = Length::inches(3, 2);
  plan.common.depth = Length::inches(8);
  const RoofSolution roof = solved(plan);
  for (const RoofTimber* hip : all_of(roof, RoofTimberKind::kHip)) {
    CHECK_THAT(hip->drop, WithinAbs(0.384, 1e-3));
    const double left = roof.shape.planes[static_cast<std::size_t>(hip->left)].tan;
    CHECK_THAT(hip->shift, WithinAbs(left < 0.9 ? 0.288 : -0.288, 1e-3));
  }
}

TEST_CASE("The valley between 12 and 8 in 12 has the angles of the published notes", "[roofplan]") {
  // Published irregular-roof framing notes, recomputed: valley slope 29.01714°; the 12/12 side: jack side
  // cut 46.68614°, jack difference at 16 in 15.08495 in; the 8/12 side: 29.01714°, 28.84441 in.
  RoofPlan plan = l_roof(Length::feet(48), Length::feet(30), Length::feet(24), Length::feet(30), in12(8));
  for (const std::size_t side : {1u, 3u}) plan.sides[side].pitch = in12(12);
  plan.spacing = Length::inches(16);
  plan.common.depth = Length::inches(8);
  plan.valley.depth = plan.hip.depth = Length::inches(14);
  const RoofSolution roof = solved(plan);
  const auto valleys = all_of(roof, RoofTimberKind::kValley);
  REQUIRE(valleys.size() == 1);
  CHECK_THAT(valleys[0]->slope / kDegree, WithinAbs(29.01714, 5e-6));
  for (const auto& [side, cut, difference] : {std::tuple{3, 46.68614, 15.08495}, {4, 29.01714, 28.84441}}) {
    auto jacks = all_of(roof, RoofTimberKind::kValleyJack, side);
    REQUIRE(jacks.size() > 3);
    CHECK_THAT(std::fabs(jacks[1]->line_length - jacks[2]->line_length), WithinAbs(difference, 6e-6));
    for (const RoofEndCut& end : jacks[1]->cuts)
      if (!end.at_b)
        CHECK_THAT(90 - std::fabs(blade_angles(end.plane, Face::kTop).swing) / kDegree, WithinAbs(cut, 5e-6));
  }
}

TEST_CASE("A jack's side cut at a square corner is the number on the square", "[roofplan]") {
  // 144 over the common rafter's length for each foot of run, against 12 (NAVEDTRA 14044).
  const RoofSolution roof = solved(rectangle_roof(Length::feet(30), Length::feet(20), in12(8)));
  for (const RoofTimber* jack : all_of(roof, RoofTimberKind::kHipJack))
    CHECK_THAT(std::tan(side_cut(*jack) * kDegree), WithinAbs(144 / std::sqrt(208.0) / 12, 1e-9));
}

TEST_CASE("A lean-to, a gable and a shed are plans with gables", "[roofplan]") {
  RoofPlan gable = rectangle_roof(Length::feet(24), Length::feet(16), in12(9));
  gable.sides[1].kind = gable.sides[3].kind = SideKind::kGable;
  const RoofSolution roof = solved(gable);
  CHECK(all_of(roof, RoofTimberKind::kHip).empty());
  REQUIRE(all_of(roof, RoofTimberKind::kRidge).size() == 1);
  CHECK_THAT(all_of(roof, RoofTimberKind::kRidge)[0]->length, WithinAbs(288 + 24, 1e-9));  // past both gables' overhang
  // Both rafters of a pair stand at one place along the wall.
  CHECK(all_of(roof, RoofTimberKind::kCommon, 0).size() == all_of(roof, RoofTimberKind::kCommon, 2).size());

  RoofPlan shed = gable;
  shed.sides[2].kind = SideKind::kGable;
  const RoofSolution lean = solved(shed);
  CHECK(all_of(lean, RoofTimberKind::kRidge).empty());
  CHECK(all_of(lean, RoofTimberKind::kCommon).size() > 10);
}

TEST_CASE("Fascias that do not line up are told with both cures, and either one lines them up", "[roofplan]") {
  // Common practice: the same fascia line by another overhang, or the same overhang by another plate.
  RoofPlan plan = rectangle_roof(Length::feet(30), Length::feet(20), in12(8));
  plan.sides[1].pitch = in12(12);
  plan.common.depth = Length::inches(8);
  const RoofSolution roof = solved(plan);
  RoofFinding first;
  for (const RoofFinding& f : roof.findings)
    if (f.id == RoofFindingId::kFasciaApart && f.a == 0) first = f;
  REQUIRE(first.b == 1);
  CHECK_THAT(first.value, WithinAbs(-4, 1e-9));    // 12 in of overhang fall 8 and 12
  CHECK_THAT(first.overhang, WithinAbs(8, 1e-9));  // 12/12 falls 8 in 8
  CHECK_THAT(first.plate, WithinAbs(4, 1e-9));

  RoofPlan shorter = plan;
  shorter.sides[1].overhang = Length::from_inches(first.overhang);
  CHECK_FALSE(says(solved(shorter), RoofFindingId::kFasciaApart));
  RoofPlan raised = plan;
  raised.sides[1].plate_height = Length::from_inches(first.plate);
  CHECK_FALSE(says(solved(raised), RoofFindingId::kFasciaApart));
}

TEST_CASE("The thrust of a loose gable roof is a figure, that of a hip roof is not known", "[roofplan]") {
  RoofPlan plan = rectangle_roof(Length::feet(30), Length::feet(20), in12(8));
  plan.feet = Feet::kLoose;
  CHECK(says(solved(plan), RoofFindingId::kThrustUnknown));
  plan.sides[1].kind = plan.sides[3].kind = SideKind::kGable;
  // w · span / (4 tan θ): 60 lb/ft · 20 ft / (4 · 8/12) = 450 lb.
  CHECK_THAT(finding_of(solved(plan), RoofFindingId::kThrust).value, WithinAbs(450, 1e-9));
}

TEST_CASE("What cannot be a roof is refused with the field that gives way", "[roofplan]") {
  const RoofPlan good = rectangle_roof(Length::feet(30), Length::feet(20), in12(8));
  const auto refused = [](const RoofPlan& plan) {
    const auto roof = solve_roof(plan);
    return roof ? std::string("solved") : roof.error().where;
  };
  RoofPlan plan = good;
  plan.sides.resize(2);
  CHECK(refused(plan) == "sides");
  plan = good;
  plan.sides[2].pitch = in12(0);
  CHECK(refused(plan) == "sides.2.pitch");
  plan.sides[2].pitch = Slope::of_angle(Angle::degrees(90));
  CHECK(refused(plan) == "sides.2.pitch");
  plan = good;
  plan.sides[1].x = Length::inches(1);
  CHECK(refused(plan) == "sides.0.length");
  plan = good;  // a corner in a straight wall
  plan.sides.insert(plan.sides.begin() + 1, plan.sides[0]);
  plan.sides[1].x = Length::feet(10);
  CHECK(refused(plan) == "sides.1.corner");
  plan = good;  // crossing
  std::swap(plan.sides[1], plan.sides[2]);
  CHECK(refused(plan) == "outline");
  plan = good;  // clockwise
  std::swap(plan.sides[1], plan.sides[3]);
  CHECK(refused(plan) == "outline");
  plan = good;
  for (PlanSide& side : plan.sides) side.kind = SideKind::kGable;
  CHECK(refused(plan) == "roof");
  plan = good;
  plan.heel_by = HeelBy::kSeat;
  plan.seat = Length::feet(2);
  CHECK(refused(plan) == "sides.0.seat");
  plan = good;
  plan.heel = Length::inches(20);
  CHECK(refused(plan) == "sides.0.heel");
  // A bay narrows outward: its front's plane, taken down to where its neighbours begin, has no length left.
  plan = bay_roof(Length::feet(30), Length::feet(20), Length::feet(8), Length::feet(3), in12(8));
  plan.sides[2].plate_height = Length::feet(10);
  CHECK(refused(plan) == "sides.2.plane");
}

TEST_CASE("Every plan to begin with is solved without a clash, and its timbers have marks of their own", "[roofplan]") {
  const Length feet20 = Length::feet(20);
  for (const RoofPlan& plan :
       {rectangle_roof(Length::feet(30), feet20, in12(8)), l_roof(Length::feet(40), feet20, feet20, feet20, in12(8)),
        l_roof(Length::feet(40), feet20, Length::feet(16), feet20, in12(8)),
        t_roof(Length::feet(40), feet20, feet20, feet20, in12(8)),
        t_roof(Length::feet(44), feet20, Length::feet(14), feet20, in12(8)),
        u_roof(Length::feet(60), feet20, feet20, feet20, in12(8)),
        bay_roof(Length::feet(30), feet20, Length::feet(12), Length::feet(3), in12(8))}) {
    const RoofSolution roof = solved(plan);
    CHECK_FALSE(says(roof, RoofFindingId::kClash));
    std::vector<std::string> marks;
    for (const RoofTimber& t : roof.timbers) marks.push_back(t.mark);
    std::sort(marks.begin(), marks.end());
    CHECK(std::adjacent_find(marks.begin(), marks.end()) == marks.end());
  }
}
