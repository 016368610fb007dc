#include <catch_amalgamated.hpp>

#include "frame/placing/hand_timber.h"
#include "frame/placing/solve_frame.h"
#include "frame/plan.h"
#include "frame/sheet/face_marks.h"
#include "frame/sheet/sheet.h"
#include "from_marks.h"

using namespace bentbook;

namespace {

HandTimber eight_by_ten() {
  HandTimber hand;
  hand.mark = "X-1";
  hand.wood.nominal = hand.wood.design = hand.wood.actual = {Length::inches(8), Length::inches(10)};
  hand.length = Length::feet(12);
  return hand;
}

Timber solved(const HandTimber& hand) {
  const auto timber = solve_hand_timber(hand);
  REQUIRE(timber);
  return *timber;
}

Frame alone(const Timber& timber) {
  Frame frame;
  frame.timbers = {timber};
  return frame;
}

Saw table_saw() {
  Saw saw;
  saw.kind = SawKind::kChainsawBar;
  saw.reach = Length::inches(16);
  return saw;
}

double rad(double degrees) { return degrees * libm::kPi / 180; }

}  // namespace

TEST_CASE("a square end is marked at one station on all four arrises", "[marks]") {
  const LayoutMarks marks = layout_marks(solved(eight_by_ten()));
  REQUIRE(marks.cuts.size() == 2);
  for (int i = 0; i < 4; ++i) {
    CHECK(marks.cuts[0].stations[static_cast<unsigned>(i)] == 0);
    CHECK(marks.cuts[1].stations[static_cast<unsigned>(i)] == Catch::Approx(144));
  }
  CHECK(marks.cuts[0].waste == Waste::kTowardA);
  CHECK(marks.cuts[1].waste == Waste::kTowardB);
  REQUIRE(marks.cuts[1].lines.size() == 4);
  for (const LineMark& line : marks.cuts[1].lines) CHECK(line.off_square == Catch::Approx(0).margin(1e-12));
}

// A cut off square by a seen from the side, by t seen from the top: the stations of two arrises of one face differ by
// the face's width times the tangent (plane geometry).
TEST_CASE("a compound end runs back on each face by its width times the tangent", "[marks]") {
  HandTimber hand = eight_by_ten();
  hand.b = {Angle::degrees(30), Angle::degrees(20)};
  const LayoutMarks marks = layout_marks(solved(hand));
  const auto& s = marks.cuts[1].stations;
  CHECK(s[0] == Catch::Approx(144));                             // top and far: the longest point
  CHECK(s[0] - s[1] == Catch::Approx(8 * libm::tan(rad(20))));   // across the top
  CHECK(s[1] - s[2] == Catch::Approx(10 * libm::tan(rad(30))));  // down the near face
  CHECK(s[3] - s[2] == Catch::Approx(8 * libm::tan(rad(20))));   // across the bottom
  for (const LineMark& line : marks.cuts[1].lines) {
    const bool flat = line.face == Face::kTop || line.face == Face::kBottom;
    CHECK(line.off_square == Catch::Approx(rad(flat ? 20 : 30)));
  }
}

// On a compound cut with the line off square by s on the face ridden and by a on the face beside it, the blade tilts by
// atan(tan a · cos s) (the side view's tangent, foreshortened along the line; plane geometry).
TEST_CASE("the saw's tilt of a compound cut is the side angle, foreshortened", "[marks]") {
  HandTimber hand = eight_by_ten();
  hand.b = {Angle::degrees(30), Angle::degrees(20)};
  Frame frame;
  frame.timbers = {solved(hand)};
  int seen = 0;
  for (const SawCut& way : solve_sheet(frame, 0, table_saw()).saw_cuts) {
    if (way.work != WorkOn::kEndCut || way.index != 1) continue;
    ++seen;
    const bool flat = way.face == Face::kTop || way.face == Face::kBottom;
    const double on_face = rad(flat ? 20 : 30), beside = rad(flat ? 30 : 20);
    CHECK(libm::fabs(way.blade.swing) == Catch::Approx(on_face));
    CHECK(libm::fabs(way.blade.tilt) == Catch::Approx(libm::atan(libm::tan(beside) * libm::cos(on_face))));
    CHECK(way.pass.travel.in() == Catch::Approx((flat ? 8 : 10) / libm::cos(on_face)));
    CHECK(way.through);
  }
  CHECK(seen > 0);
}

TEST_CASE("check measures of a square timber are its length, width and their diagonal", "[marks]") {
  // trade.md: a diagonal is the root of the squares; 12 ft by 8 in and by 10 in.
  const CheckMeasures check = check_measures(solved(eight_by_ten()));
  CHECK(check.overall == 144);
  for (const double a : check.arrises) CHECK(a == Catch::Approx(144));
  CHECK(check.rising[0] == Catch::Approx(libm::sqrt(144 * 144 + 64)));
  CHECK(check.falling[1] == Catch::Approx(libm::sqrt(144 * 144 + 100)));
}

TEST_CASE("a handed cut has unequal diagonals, the other way round on the opposite face", "[marks]") {
  HandTimber hand = eight_by_ten();
  hand.b.tilt = Angle::degrees(25);
  const CheckMeasures check = check_measures(solved(hand));
  CHECK(check.rising[0] > check.falling[0]);  // the far side of the top is the longer one
  CHECK(check.rising[2] == Catch::Approx(check.rising[0]));
  CHECK(check.rising[1] == Catch::Approx(check.falling[1]));
}

TEST_CASE("a tenon's arrises are measured from shoulder to shoulder", "[marks]") {
  HandTimber hand = eight_by_ten();
  hand.features = {
      {FeatureKind::kTenon, Face::kTop, hand.length, Length::inches(4), Length::inches(4), Length::inches(2), {}, {}}};
  const CheckMeasures check = check_measures(solved(hand));
  for (const double a : check.arrises) CHECK(a == Catch::Approx(140));
  CHECK(check.overall == 144);
}

// A rafter let into a ridge beam's end may run out just at the arris: the wood on both faces of the arris is gone
// there. One that only touches the arris from outside, or takes one of its faces alone, leaves it.
TEST_CASE("an arris that a recess at the end runs out at is measured from behind the recess", "[marks]") {
  const auto first_arris = [](std::initializer_list<Vec2> outline) {
    Timber timber = solved(eight_by_ten());  // y -4 to 4, z -5 to 5: arris 1 at (4, 5)
    Pocket pocket;
    pocket.sweep = Axis::kX;
    pocket.from = 0;
    pocket.to = 3;
    for (const Vec2& p : outline) pocket.outline.add(p);
    timber.pockets.push_back(pocket);
    return check_measures(timber).arrises[0];
  };
  CHECK(first_arris({{5, 0}, {5, 4}, {3, 6}, {3, 0}}) == Catch::Approx(141));  // its corner lies on the line y + z = 9
  CHECK(first_arris({{4, 0}, {4, 5}, {3, 5}, {3, 0}}) == Catch::Approx(141));  // flush with both faces
  CHECK(first_arris({{5, 4}, {5, 6}, {3, 6}}) == Catch::Approx(144));          // from outside
  CHECK(first_arris({{5, 3}, {5, 6}, {4, 5}, {3, 3}}) == Catch::Approx(144));  // the top stays
}

TEST_CASE("every cut and pocket of a frame comes back from its marks alone", "[marks]") {
  const auto frame =
      solve_frame(default_plan(Length::feet(20), Length::feet(24), Length::feet(10), Slope::in_12(Length::inches(8))));
  REQUIRE(frame);
  int cuts = 0, pockets = 0;
  for (const Timber& timber : frame->timbers) {
    const LayoutMarks marks = layout_marks(timber);
    for (const CutMarks& cut : marks.cuts) {
      INFO(timber.mark << " cut " << cut.cut);
      CHECK(from_marks::comes_back(timber, cut));
      ++cuts;
    }
    for (const RecessMarks& recess : marks.recesses) {
      INFO(timber.mark << " pocket " << recess.pocket);
      CHECK(from_marks::comes_back(timber, recess));
      ++pockets;
    }
  }
  CHECK(cuts > 100);
  CHECK(pockets > 200);
}

TEST_CASE("work begins with the ends and finishes with the holes, slots before their relief", "[marks]") {
  FramePlan plan = default_plan(Length::feet(20), Length::feet(24), Length::feet(10), Slope::in_12(Length::inches(8)));
  for (JointType& joint : plan.joints)
    if (kind_of(joint) == JointKind::kMortiseTenon) joint = KnifePlate{};
  const auto frame = solve_frame(plan);
  REQUIRE(frame);
  int slots = 0;
  for (int i = 0; i < static_cast<int>(frame->timbers.size()); ++i) {
    const Timber& timber = frame->timbers[static_cast<unsigned>(i)];
    const Sheet sheet = solve_sheet(*frame, i, table_saw());
    CHECK(sheet.steps.size() == timber.cuts.size() + timber.features.size());
    bool features = false, holes = false;
    int slot_at = -1;
    for (int n = 0; n < static_cast<int>(sheet.steps.size()); ++n) {
      const BenchStep& step = sheet.steps[static_cast<unsigned>(n)];
      if (step.work == WorkOn::kEndCut) {
        CHECK(!features);
        CHECK(step.saw_cuts.size() == 1);
        continue;
      }
      features = true;
      const FeatureKind kind = timber.features[static_cast<unsigned>(step.index)].kind;
      if (kind == FeatureKind::kHole) holes = true;
      if (kind != FeatureKind::kHole) CHECK(!holes);
      if (kind == FeatureKind::kSlot) slot_at = n, ++slots;
      if (kind == FeatureKind::kRelief) CHECK(slot_at >= 0);
    }
  }
  CHECK(slots > 0);
}

TEST_CASE("bow lifts the wood most in the middle, by what was measured there", "[rough]") {
  // trade.md: offset = 4 c x (L − x) / L²: c in the middle, three quarters of it at a quarter of the length.
  CHECK(bow_offset(0.5, 144, 72) == Catch::Approx(0.5));
  CHECK(bow_offset(0.5, 144, 36) == Catch::Approx(0.375));
  CHECK(bow_offset(0.5, 144, 0) == 0);
  CHECK(bow_offset(0.5, 144, 144) == 0);
}

TEST_CASE("rough wood: a housing on the floating face is cut to the inner size, deeper by what the wood is over",
          "[rough]") {
  HandTimber hand = eight_by_ten();
  hand.wood.actual = {Length::inches(65, 8), Length::inches(83, 8)};  // 1/8 and 3/8 over
  hand.features = {{FeatureKind::kHousing,
                    Face::kTop,
                    Length::feet(6),
                    Length::inches(4),
                    Length::inches(8),
                    Length::inches(2),
                    Length::inches(1),
                    {}}};
  const Timber timber = solved(hand);
  const auto floating = floating_faces(timber);
  REQUIRE(floating.size() == 2);
  CHECK(floating[0].face == Face::kBottom);
  CHECK(floating[0].over == Catch::Approx(0.375));
  CHECK(floating[1].face == Face::kFar);
  CHECK(floating[1].over == Catch::Approx(0.125));
  // Face 1 is the reference: it lies in its design plane and the housing keeps its depth.
  const LayoutMarks marks = layout_marks(timber);
  REQUIRE(marks.recesses[0].faces.size() == 1);
  CHECK(marks.recesses[0].faces[0].depth == Catch::Approx(1));
  Timber bowed = timber;
  bowed.wood.bow = Length::inches(1, 4);
  CHECK(depth_here(bowed, marks.recesses[0].faces[0]) == Catch::Approx(1.25));
}

TEST_CASE("a housing in a post that measures over keeps its inner size", "[rough]") {
  // The post's inner face floats: what a tie's housing leaves between it and the outer face stays the same.
  FramePlan plan = default_plan(Length::feet(20), Length::feet(24), Length::feet(10), Slope::in_12(Length::inches(8)));
  const auto inner = [](const FramePlan& p) {
    const auto frame = solve_frame(p);
    REQUIRE(frame);
    for (const Timber& timber : frame->timbers) {
      if (timber.mark != "P-A2") continue;
      const LayoutMarks marks = layout_marks(timber);
      for (const RecessMarks& recess : marks.recesses)
        for (const RecessOnFace& on : recess.faces)
          if (timber.features[static_cast<unsigned>(recess.feature)].kind == FeatureKind::kHousing &&
              on.face == Face::kBottom)
            return timber.wood.actual.depth.in() - on.depth;
    }
    return 0.0;
  };
  const double planned = inner(plan);
  REQUIRE(planned > 0);
  Override rough;
  rough.mark = "P-A2";
  rough.has_wood = true;
  rough.wood.actual = {Length::inches(65, 8), Length::inches(67, 8)};
  plan.overrides = {rough};
  CHECK(inner(plan) == Catch::Approx(planned));
}

TEST_CASE("a joint on a marked knot is warned about, one beside it is not", "[rough]") {
  HandTimber hand = eight_by_ten();
  hand.features = {{FeatureKind::kMortise,
                    Face::kTop,
                    Length::feet(6),
                    Length::inches(4),
                    Length::inches(8),
                    Length::inches(2),
                    Length::inches(4),
                    {}}};
  Timber timber = solved(hand);
  timber.defects = {{DefectKind::kKnot, Face::kTop, Length::inches(70), Length::inches(73)}};
  CHECK(defect_warnings(timber, layout_marks(timber)).size() == 1);
  timber.defects = {{DefectKind::kKnot, Face::kTop, Length::inches(90), Length::inches(93)},
                    {DefectKind::kKnot, Face::kBottom, Length::inches(70), Length::inches(73)}};
  CHECK(defect_warnings(timber, layout_marks(timber)).empty());
}

TEST_CASE("mirror images are told apart as left and right, and not called alike", "[marks]") {
  FramePlan plan = default_plan(Length::feet(20), Length::feet(24), Length::feet(10), Slope::in_12(Length::inches(8)));
  const auto frame = solve_frame(plan);
  REQUIRE(frame);
  int pairs = 0;
  for (int i = 0; i < static_cast<int>(frame->timbers.size()); ++i) {
    const Sheet sheet = solve_sheet(*frame, i, table_saw());
    if (sheet.hand == Hand::kNone) continue;
    ++pairs;
    for (const int other : sheet.mirrored) {
      const Sheet mate = solve_sheet(*frame, other, table_saw());
      CHECK(mate.hand != Hand::kNone);
      CHECK(mate.hand != sheet.hand);
      CHECK(std::find(sheet.alike.begin(), sheet.alike.end(), other) == sheet.alike.end());
    }
  }
  CHECK(pairs % 2 == 0);
}

TEST_CASE("faces follow each other as the timber is rolled, and an end cut has one station on the arris of two faces",
          "[marks]") {
  const Timber timber = solved(eight_by_ten());
  const Sheet sheet = solve_sheet(alone(timber), 0, table_saw());
  for (const Face face : kFaces) {
    const FaceMarks marks = face_marks(timber, sheet, face), next = face_marks(timber, sheet, rolled(face));
    CHECK(marks.left == next.face);
    CHECK(next.right == marks.face);
    CHECK(marks.width == (face == Face::kTop || face == Face::kBottom ? 8 : 10));
    for (const FaceMark& mark : marks.marks) {
      if (mark.work != WorkOn::kEndCut) continue;
      const auto same = std::find_if(next.marks.begin(), next.marks.end(),
                                     [&](const FaceMark& m) { return m.work == mark.work && m.index == mark.index; });
      REQUIRE(same != next.marks.end());
      const auto at = [](const FaceMark& m, double y) {
        for (const FaceLine& l : m.lines)
          for (const Vec2& p : {l.a, l.b})
            if (libm::fabs(p.y - y) < 1e-9) return p.x;
        return -1.0;
      };
      CHECK(at(mark, 0) == Catch::Approx(at(*same, next.width)));
    }
  }
}

TEST_CASE("a section is drawn to its proportion, as it lies with each face up", "[marks]") {
  const Sides sides{-3, 3, -5, 5};  // 6 wide, 10 deep
  const Vec2 up = section_within(sides, Face::kTop, 30), rolled_on = section_within(sides, Face::kNear, 30);
  CHECK(up.x == Catch::Approx(18));
  CHECK(up.y == Catch::Approx(30));
  CHECK(rolled_on.x == Catch::Approx(30));
  CHECK(rolled_on.y == Catch::Approx(18));
}
