// A roof with hipped ends over posts, plates and ties.

#include <algorithm>
#include <array>
#include <catch_amalgamated.hpp>
#include <cmath>
#include <string>
#include <vector>

#include "book/book.h"
#include "book/book_file.h"
#include "book/field.h"
#include "frame/drawings/elevation.h"
#include "frame/sheet/layout_marks.h"
#include "hip_frames.h"
#include "raising/insertion/assemblies.h"
#include "raising/insertion/blocking.h"
#include "raising/stability/standing.h"

using namespace bentbook;
using Catch::Matchers::WithinAbs;

namespace {

/// What bears under a rafter's foot and at its head.
struct Carried {
  int seats = 0, heads = 0;
};
Carried carried(const Frame& frame, const Timber& t) {
  const int index = timber_by_mark(frame, t.mark);
  Carried h;
  for (const Joint& joint : frame.joints) {
    if (joint.contacts == 0) continue;
    if (joint.kind == JointKind::kBirdsMouth)
      h.seats += joint.member == index ? 1 : 0;
    else
      h.heads += joint.member == index || (joint.bearing == Bearing::kButts && joint.receiver == index) ? 1 : 0;
  }
  return h;
}

}  // namespace

TEST_CASE("A hip-ended frame of usual size has nothing said against it but that it is not engineered", "[hipframe]") {
  for (const auto& [span, length, height] :
       {std::array{20, 36, 10}, {24, 48, 10}, {16, 16, 9}, {24, 24, 10}, {24, 26, 10}, {30, 60, 12}})
    for (const int rise : {4, 6, 8, 9, 12, 16}) {
      CAPTURE(span, length, rise);
      nothing_said(framed(hip_plan(span, length, height, rise)));
    }
}

TEST_CASE("A metric hip-ended frame is bought in round millimetres and has nothing said against it", "[hipframe]") {
  const FramePlan plan = default_hip_plan(Length::mm(7200), Length::mm(14400), Length::mm(3000),
                                          Slope::of_angle(Angle::degrees(35)), SizedBy::kMillimetres);
  for (const Section& section : {plan.hips.hip, plan.hips.dragon_tie}) {
    CHECK(section.breadth.count % Length::mm(5).count == 0);
    CHECK(section.depth.count % Length::mm(5).count == 0);
  }
  nothing_said(framed(plan));
}

// Sides and ends whose rafters, as high over their plates, can all bear 1 1/2 in (IRC R802.6) by notches of a sixth.
TEST_CASE("A hip-ended frame whose ends have another pitch begins with nothing said against it", "[hipframe]") {
  for (const auto& [sides, ends] : {std::array{8, 9},
                                    {8, 10},
                                    {9, 8},
                                    {10, 8},
                                    {10, 9},
                                    {6, 8},
                                    {8, 6},
                                    {9, 10},
                                    {10, 12},
                                    {12, 10},
                                    {5, 6},
                                    {8, 4}})
    for (const auto& [span, length] : {std::array{20, 40}, {24, 48}, {30, 60}}) {
      CAPTURE(sides, ends, span);
      const Slope pitch = Slope::in_12(Length::inches(sides)), end = Slope::in_12(Length::inches(ends));
      nothing_said(framed(
          default_hip_plan(Length::feet(span), Length::feet(length), Length::feet(10), pitch, SizedBy::kInches, end)));
      nothing_said(framed(default_hip_plan(Length::mm(300 * span), Length::mm(300 * length), Length::mm(3000), pitch,
                                           SizedBy::kMillimetres, end)));
    }
}

// By hand: both legs longer by 3 in, or by 75 mm, make the side across longer by √2 of it.
TEST_CASE("Braces of a hipped end pass the wall's by 3 in, or by 75 mm where wood is bought by them", "[hipframe]") {
  const auto longer = [](const Frame& frame) {
    return timber_of(frame, "B-A1.1").length - timber_of(frame, "B-A1.3").length;
  };
  CHECK_THAT(longer(framed(hip_plan(24, 48, 10, 9))), WithinAbs(3 * std::sqrt(2.0), 1e-9));
  const FramePlan metric = default_hip_plan(Length::mm(7200), Length::mm(14400), Length::mm(3000),
                                            Slope::of_angle(Angle::degrees(35)), SizedBy::kMillimetres);
  CHECK_THAT(longer(framed(metric)), WithinAbs(75 / 25.4 * std::sqrt(2.0), 1e-9));
}

TEST_CASE("Every foot and head of a hip-ended frame's rafters is carried", "[hipframe]") {
  for (const auto& [span, length] : {std::array{24, 48}, {20, 20}, {23, 41}}) {
    FramePlan plan = hip_plan(span, length, 10, 9);
    plan.rafter_spacing = Length::inches(20);
    const Frame frame = framed(plan);
    for (const Timber& t : frame.timbers) {
      CAPTURE(span, t.mark);
      const Carried h = carried(frame, t);
      if (t.kind == TimberKind::kHipRafter) {
        CHECK(h.seats >= 1);
        CHECK(h.heads >= 1);
      }
      if (t.kind == TimberKind::kCommonRafter) CHECK((h.seats >= 1 && h.heads >= 1));
      if (t.kind == TimberKind::kJackRafter) CHECK((h.seats >= 1 && h.heads >= 1));
    }
  }
}

TEST_CASE("A corner post bears on lapped sills, and under lapped plates", "[hipframe]") {
  FramePlan plan = hip_plan(24, 48, 10, 9);
  plan.sills = true;
  const Frame frame = framed(plan);
  for (const Joint& joint : frame.joints)
    if (joint.meeting == Meeting::kPostFoot || joint.meeting == Meeting::kPostTop) {
      CAPTURE(frame.timbers[static_cast<std::size_t>(joint.member)].mark, static_cast<int>(joint.meeting));
      CHECK(joint.contacts > 0);
    }
}

// NAVEDTRA 14044, Griffith: at 9 in 12 a common is 15.00 in a foot of run, and jacks 24 in apart differ by twice that.
// Hip per foot of common run: √(288 + 81) = 19.2094; twelve feet of it.
TEST_CASE("Jacks of a hip-ended frame differ as the tables have it, and hips are as long", "[hipframe]") {
  const Frame frame = framed(hip_plan(24, 48, 10, 9));
  for (const auto& [shorter, longer] :
       {std::pair{"JR-A1.1", "JR-A1.2"}, {"JR-A1.2", "JR-A1.3"}, {"JR-1.1", "JR-1.2"}, {"JR-1.2", "JR-1.3"}})
    CHECK_THAT(timber_of(frame, longer).length - timber_of(frame, shorter).length, WithinAbs(30, 1e-9));
  const Timber& hip = timber_of(frame, "HR-A1");
  // From over the wall's corner to over the peak, along its slope.
  const Vec3 corner{-144, -4, 0}, peak{0, 140, 0};
  const Vec3 level = unit(peak - corner);
  const double slope_cos = dot(hip.at.x, level);
  CHECK_THAT(norm(peak - corner) / slope_cos, WithinAbs(12 * 19.209373, 1e-4));
  // Its arrises lie in the roof planes: dropped by half its breadth's fall.
  const Timber& common = timber_of(frame, "C-A3");
  const auto over = [](const Timber& t, Vec3 p) {
    const Vec3 up = t.at.z;
    const double top = dot(up, t.at.origin) + t.sides.z_hi;
    return (top - up.x * p.x - up.y * p.y) / up.z;
  };
  const Vec3 side = unit(Vec3{-level.y, level.x, 0});
  const Vec3 arris = corner + 60 * level + 3 * side;
  const double roof = over(common, {arris.x, 0, 0});
  CHECK_THAT(over(hip, arris), WithinAbs(roof, 1e-9));
}

TEST_CASE("Both halves and both ends of a hip-ended frame mirror each other", "[hipframe]") {
  for (const auto& [span, length] : {std::array{24, 48}, {21, 37}, {18, 18}}) {
    const Frame frame = framed(hip_plan(span, length, 10, 8));
    const double middle = length * 6 - 4;
    for (const bool along : {false, true})
      for (const Timber& t : frame.timbers) {
        const bool rafter = t.kind == TimberKind::kHipRafter || t.kind == TimberKind::kJackRafter ||
                            t.kind == TimberKind::kCommonRafter;
        if (!rafter) continue;
        Vec3 image = to_world(t.at, {t.length / 2, 0, 0});
        image = along ? Vec3{image.x, 2 * middle - image.y, image.z} : Vec3{-image.x, image.y, image.z};
        CAPTURE(t.mark, along);
        CHECK(std::any_of(frame.timbers.begin(), frame.timbers.end(), [&](const Timber& other) {
          return other.kind == t.kind && std::fabs(other.length - t.length) < 1e-6 &&
                 norm(to_world(other.at, {other.length / 2, 0, 0}) - image) < 1e-6;
        }));
      }
  }
}

TEST_CASE("Ends of another pitch overhang so that fascias line up, and their hips stand over the corners",
          "[hipframe]") {
  FramePlan plan = hip_plan(24, 48, 10, 8);
  plan.hips.pitch = Slope::in_12(Length::inches(10));
  const Frame frame = framed(plan);
  CHECK_FALSE(found(frame, FindingId::kClash));
  // Tops of the tails' plumb cuts.
  const auto fascia = [](const Timber& t) {
    double out = 1e300, z = -1e300;
    const Vec3 level = unit(Vec3{t.at.x.x, t.at.x.y, 0});
    for (const Vec3& p : corners_of(t)) out = std::min(out, dot(level, p));
    for (const Vec3& p : corners_of(t))
      if (dot(level, p) < out + 1e-6) z = std::max(z, p.z);
    return z;
  };
  const double side = fascia(timber_of(frame, "C-A3")), end = fascia(timber_of(frame, "JR-1.4"));
  CHECK_THAT(end, WithinAbs(side, 1e-6));
  // By hand: up the hip's plan the sides rise 8 in 12 and run 144 in, the ends 10 and 115.2. Its arrises lie in both,
  // alike high, p and q from the corner's line: 8 · 115.2 p = 10 · 144 q, p + q = 6 in. It is off by 3 − q toward the
  // sides, which are the shallower ones.
  const double q = 6 * 8 * 115.2 / (8 * 115.2 + 10 * 144);
  for (const Timber* hip : all_of(frame, TimberKind::kHipRafter)) {
    CAPTURE(hip->mark);
    const double in = hip->at.x.y > 0 ? 1 : -1;
    const Vec3 corner{hip->at.x.x > 0 ? -144.0 : 144.0, in > 0 ? -4.0 : 48 * 12 - 4.0, 0};
    const Vec3 level = unit(Vec3{hip->at.x.x, hip->at.x.y, 0});
    const Vec3 to{corner.x - hip->at.origin.x, corner.y - hip->at.origin.y, 0};
    const Vec3 off = to - dot(to, level) * level;
    CHECK_THAT(norm(off), WithinAbs(3 - q, 1e-6));
    CHECK(in * off.y < 0);
  }
  // Too flat an end does not reach its plate with the sides' heel, which is told by the field.
  plan.hips.pitch = Slope::in_12(Length::inches(6));
  std::get<BirdsMouth>(plan.joints[static_cast<std::size_t>(Meeting::kRafterPlate)]).seat = Length::inches(1, 2);
  const auto flat = solve_frame(plan);
  REQUIRE_FALSE(flat);
  CHECK(flat.error().where == "hips.pitch");
}

TEST_CASE("A hip roof that nothing ties says that an engineer must say its push at the corners", "[hipframe]") {
  FramePlan plan = hip_plan(24, 48, 10, 9);
  plan.ties = false;
  const Frame frame = framed(plan);
  CHECK(found(frame, FindingId::kCornerThrust));
  CHECK(found(frame, FindingId::kPeakUncarried));
  CHECK(all_of(frame, TimberKind::kKingPost).empty());
}

TEST_CASE("A building too short for its hips says how long its bays must be together", "[hipframe]") {
  FramePlan plan = hip_plan(24, 48, 10, 9);
  plan.bays = {{Length::feet(8), 2}, {Length::feet(8), 3}};
  const auto frame = solve_frame(plan);
  REQUIRE_FALSE(frame);
  CHECK(frame.error().where == "bays");
  CHECK(frame.error().code == ErrorCode::kTooSmall);
  // As long as the span, less the post that stands half outside of each end bent.
  CHECK_THAT(Length{frame.error().limit}.in(), WithinAbs(24 * 12 - 8, 1e-6));
}

TEST_CASE("Dragon ties cross the corners by choice, let into both plates", "[hipframe]") {
  FramePlan plan = hip_plan(24, 48, 10, 9);
  plan.hips.dragon_ties = true;
  const Frame frame = framed(plan);
  nothing_said(frame);
  const auto ties = all_of(frame, TimberKind::kDragonTie);
  REQUIRE(ties.size() == 4);
  for (const Timber* tie : ties) {
    CHECK(carried(frame, *tie).heads == 2);
    CHECK_THAT(tie->at.x.z, WithinAbs(0, 1e-12));
  }
  // By hand, shoulder to shoulder: legs of 42 in make the arrises toward the middle 42 √2 long; at 45° those toward the
  // corner are shorter by twice the breadth.
  for (const Timber* tie : ties) {
    auto arrises = check_measures(*tie).arrises;
    std::sort(arrises.begin(), arrises.end());
    const double longest = 42 * std::sqrt(2.0), breadth = plan.hips.dragon_tie.breadth.in();
    CHECK_THAT(arrises[0], WithinAbs(longest - 2 * breadth, 1e-6));
    CHECK_THAT(arrises[1], WithinAbs(longest - 2 * breadth, 1e-6));
    CHECK_THAT(arrises[2], WithinAbs(longest, 1e-6));
    CHECK_THAT(arrises[3], WithinAbs(longest, 1e-6));
  }
}

TEST_CASE("Hips of a real size, more girts, sills and plates of another size make a frame without clashes",
          "[hipframe]") {
  FramePlan plan = hip_plan(26, 44, 11, 10);
  plan.hips.hip = {Length::inches(8), Length::inches(10)};
  plan.sills = true;
  plan.end_girts = true;
  plan.girts = {Length::feet(3), Length::feet(6)};
  plan.sections.plate = {Length::inches(8), Length::inches(10)};
  plan.joints[static_cast<std::size_t>(Meeting::kRafterRidge)] = HousedButt{Length::inches(1, 2)};
  const Frame frame = framed(plan);
  CHECK_FALSE(found(frame, FindingId::kClash));
  CHECK_FALSE(found(frame, FindingId::kNoRoom));
  CHECK_FALSE(found(frame, FindingId::kJointUnfit));
  // Two girt lines, each in two pieces past the end's middle post.
  CHECK(timber_by_mark(frame, "G-1.4") >= 0);
}

TEST_CASE("Two hips of an end are raised as a pair, in which they stand; posts that no tie joins are no bent",
          "[hipframe][raising]") {
  const Book book = [] {
    Book made = new_book("", Length::feet(16), Length::feet(28), Length::feet(9), Slope::in_12(Length::inches(8)));
    made.frame = hip_plan(16, 28, 9, 8);
    return made;
  }();
  const Frame frame = framed(book.frame);
  Blocking blocking(frame);
  std::vector<std::vector<std::string>> pieces;
  for (const Assembly& made : propose_assemblies(frame, blocking, AssemblyStyle::kBents)) pieces.push_back(made.marks);
  const auto proposed = [&](const std::string& a, const std::string& b) {
    return std::any_of(pieces.begin(), pieces.end(), [&](const std::vector<std::string>& marks) {
      return std::find(marks.begin(), marks.end(), a) != marks.end() &&
             std::find(marks.begin(), marks.end(), b) != marks.end();
    });
  };
  const std::string last = std::to_string(book.frame.bays.back().label);
  CHECK(proposed("HR-A1", "HR-E1"));
  CHECK(proposed("HR-A" + last, "HR-E" + last));
  CHECK_FALSE(proposed("P-A1", "B-A1.1"));
  CHECK(proposed("P-A2", "T-2"));
  // All but jacks and hips; then with one hip, which its notch and the ridge hold too; then with its mate.
  const StandingModel model = make_standing_model(frame, book.raising);
  std::vector<int> standing;
  for (std::size_t i = 0; i < frame.timbers.size(); ++i)
    if (frame.timbers[i].kind != TimberKind::kJackRafter && frame.timbers[i].kind != TimberKind::kHipRafter)
      standing.push_back(static_cast<int>(i));
  const auto stands = [&](std::initializer_list<const char*> hips) {
    std::vector<int> with = standing;
    for (const char* hip : hips) with.push_back(timber_by_mark(frame, hip));
    return check_standing(model, with, {}, StandingDepth::kStands).stands();
  };
  CHECK(stands({}));
  CHECK(stands({"HR-A1"}));
  CHECK(stands({"HR-A1", "HR-E1"}));
}

TEST_CASE("A hip-ended book is read back as it was written, and a gable's has no word of hips", "[hipframe]") {
  Book book = new_book("Hips", Length::feet(24), Length::feet(48), Length::feet(10), Slope::in_12(Length::inches(9)));
  CHECK(write_book(book).find("hips") == std::string::npos);
  book.frame = hip_plan(24, 48, 10, 9);
  book.frame.hips.dragon_ties = true;
  book.frame.hips.pitch = Slope::in_12(Length::inches(10));
  const auto again = read_book(write_book(book));
  REQUIRE(again);
  CHECK(again->frame == book.frame);
}

TEST_CASE("a gable whose ends become hips gets its posts under the peaks, unless somebody set its bays",
          "[hipframe][book]") {
  Book book = new_book("Barn", Length::feet(24), Length::feet(48), Length::feet(10), Slope::in_12(Length::inches(9)));
  const std::vector<Bay> gable = book.frame.bays;
  book = with_field(std::move(book), "frame.form", Choice{2}).value();
  CHECK(book.frame ==
        default_hip_plan(Length::feet(24), Length::feet(48), Length::feet(10), Slope::in_12(Length::inches(9))));
  // The ends' pitch goes on moving the peaks, and the bays with them.
  const Book steep = with_field(book, "frame.hips.pitch", Slope::in_12(Length::inches(12))).value();
  CHECK(steep.frame.bays.front().width < book.frame.bays.front().width);
  CHECK(outside_length(steep.frame) == Length::feet(48));
  CHECK(with_field(book, "frame.form", Choice{0}).value().frame.bays == gable);
  Book set = with_field(book, "frame.bays.@2.width", Length::feet(14)).value();
  const std::vector<Bay> bays = set.frame.bays;
  set = with_field(std::move(set), "frame.hips.pitch", Slope::in_12(Length::inches(12))).value();
  CHECK(set.frame.bays == bays);
}

TEST_CASE("hipped ends that had the sides' pitch keep to it while the roof is a gable again", "[hipframe][book]") {
  Book book = new_book("Barn", Length::feet(24), Length::feet(48), Length::feet(10), Slope::in_12(Length::inches(9)));
  const auto set = [](Book it, const char* path, const FieldValue& value) {
    return with_field(std::move(it), path, value).value();
  };
  const Slope steep = Slope::in_12(Length::inches(12)), own = Slope::in_12(Length::inches(10));
  // A gable that was never hipped has no word of hips.
  CHECK(write_book(set(book, "frame.pitch_left", steep)).find("hips") == std::string::npos);
  book = set(std::move(book), "frame.form", Choice{2});
  const auto through_gable = [&](Book it) {
    it = set(std::move(it), "frame.form", Choice{0});
    it = set(std::move(it), "frame.pitch_left", steep);
    return set(std::move(it), "frame.form", Choice{2}).frame.hips.pitch;
  };
  CHECK(through_gable(book) == steep);
  // Ends of their own pitch keep that.
  CHECK(through_gable(set(book, "frame.hips.pitch", own)) == own);
}
