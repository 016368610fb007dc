// Dormers on a roof of any plan against the closed forms that the trade works them by; sources stand beside the checks.

#include <algorithm>
#include <catch_amalgamated.hpp>
#include <cmath>
#include <string>
#include <vector>

#include "book/book_file.h"
#include "frame/facts.h"
#include "frame/roofs/roof_frame.h"
#include "frame/sheet/sheet.h"
#include "roof/plan/roof_drawing.h"
#include "roof/plan/roof_edits.h"
#include "roof/plan/solve_roof.h"
#include "shop/steps.h"

using namespace bentbook;
using Catch::Matchers::WithinAbs;

namespace {

Slope in12(std::int64_t n) { return Slope::in_12(Length::inches(n)); }

/// 40 by 24 ft, gables at both ends, 12 in 12; a gable dormer 6 ft wide in the middle of side A, 3 ft in.
RoofPlan some_roof(DormerKind kind) {
  RoofPlan plan = rectangle_roof(Length::feet(40), Length::feet(24), in12(12));
  plan.sides[1].kind = plan.sides[3].kind = SideKind::kGable;
  plan.spacing = Length::inches(16);
  Dormer d;
  d.kind = kind;
  d.centre = Length::feet(20);
  d.face = Length::feet(3);
  d.plate_height = Length::feet(6);
  d.pitch = in12(kind == DormerKind::kGable ? 8 : 4);
  plan.dormers.push_back(d);
  return plan;
}

RoofSolution solved(const RoofPlan& plan) {
  auto roof = solve_roof(plan);
  INFO((roof ? std::string() : roof.error().where));
  REQUIRE(roof);
  return *std::move(roof);
}

Error refusal(const RoofPlan& plan) {
  const auto roof = solve_roof(plan);
  REQUIRE_FALSE(roof);
  return roof.error();
}

std::vector<const RoofTimber*> all_of(const RoofSolution& roof, RoofTimberKind kind) {
  std::vector<const RoofTimber*> found;
  for (const RoofTimber& t : roof.timbers)
    if (t.kind == kind) found.push_back(&t);
  return found;
}

const RoofTimber& by_mark(const RoofSolution& roof, std::string_view mark) {
  for (const RoofTimber& t : roof.timbers)
    if (t.mark == mark) return t;
  INFO(mark);
  REQUIRE(false);
  return roof.timbers[0];
}

bool says(const RoofSolution& roof, RoofFindingId id) {
  return std::any_of(roof.findings.begin(), roof.findings.end(), [&](const RoofFinding& f) { return f.id == id; });
}

/// By how much a timber's joints are held: whether each contact it should have is there.
bool touches(const RoofSolution& roof, std::string_view member, std::string_view receiver) {
  return std::any_of(roof.contacts.begin(), roof.contacts.end(), [&](const RoofContact& c) {
    return roof.timbers[static_cast<std::size_t>(c.member)].mark == member &&
           roof.timbers[static_cast<std::size_t>(c.receiver)].mark == receiver;
  });
}

}  // namespace

TEST_CASE("A gable dormer's ridge and valleys have the lengths of their triangles", "[dormer]") {
  // Worked by hand. Main roof 12 in 12, heel 2 3/4: tops 2.75 over the plates at the wall, so z = 2.75 + v. Dormer:
  // plates at 72, tops 74.75 over its walls; half width 36 at 8 in 12 rises 24: ridge at 98.75, met at v = 96. Its
  // walls' lines meet the roof at v = 72. A valley runs 36 across and 24 in: level √(36² + 24²) = 43.2666, up 24.
  const RoofSolution roof = solved(some_roof(DormerKind::kGable));
  REQUIRE(roof.dormers.size() == 1);
  const DormerShape& d = roof.dormers[0];
  CHECK_THAT(d.meets, WithinAbs(96, 1e-9));
  CHECK_THAT(d.wall_end, WithinAbs(72, 1e-9));
  CHECK_THAT(ridge_length(d), WithinAbs(96 - 36 + 6, 1e-9));
  CHECK_THAT(opening_length(d, roof.shape.planes[0]), WithinAbs(60 * std::sqrt(2.0), 1e-9));
  for (const RoofTimber* valley : all_of(roof, RoofTimberKind::kValley)) {
    CHECK_THAT(valley->run, WithinAbs(std::sqrt(36 * 36 + 24 * 24), 1e-9));
    CHECK_THAT(valley->line_length, WithinAbs(std::sqrt(36 * 36 + 24 * 24 + 24 * 24), 1e-9));
  }
  CHECK(all_of(roof, RoofTimberKind::kValley).size() == 2);
  CHECK_THAT(by_mark(roof, "R-DM1").length, WithinAbs(66, 1e-9));
  CHECK_FALSE(says(roof, RoofFindingId::kClash));
  CHECK(says(roof, RoofFindingId::kDormer));
}

TEST_CASE("A valley of 12 and 8 in 12 has the printed slope and plan angles", "[dormer]") {
  // Published irregular-roof framing notes, recomputed: valley slope 29.01714°, plan angle 33.69007° on the 12 in 12
  // side and 56.30993° on the other.
  const RoofSolution roof = solved(some_roof(DormerKind::kGable));
  constexpr double kDegree = 3.14159265358979323846 / 180;
  const RoofTimber& valley = by_mark(roof, "VR-DM1L");
  CHECK_THAT(valley.slope / kDegree, WithinAbs(29.01714, 5e-6));
  const RoofPlane &main = roof.shape.planes[0], &own = roof.shape.planes[static_cast<std::size_t>(valley.right)];
  const Vec2 along = unit(flat(valley.at.x));
  CHECK_THAT(std::asin(dot(main.in, along)) / kDegree, WithinAbs(33.69007, 5e-6));
  CHECK_THAT(std::asin(dot(own.in, along)) / kDegree, WithinAbs(56.30993, 5e-6));
}

TEST_CASE("With one pitch a dormer's valleys run at half a right angle and have the printed length for each foot",
          "[dormer]") {
  // NAVEDTRA 14044; Griffith: hip or valley per foot of common run at 8 and 12 in 12, 18.76 and 20.78.
  const struct {
    int rise;
    double length;
  } rows[] = {{8, 18.76}, {12, 20.78}};
  for (const auto& row : rows) {
    RoofPlan plan = some_roof(DormerKind::kGable);
    for (PlanSide& side : plan.sides) side.pitch = in12(row.rise);
    plan.dormers[0].pitch = in12(row.rise);
    plan.dormers[0].plate_height = Length::inches(row.rise == 8 ? 48 : 64);
    const RoofSolution roof = solved(plan);
    CHECK_THAT(by_mark(roof, "VR-DM1L").line_length / 3, WithinAbs(row.length, 0.005));
  }
}

TEST_CASE("A dormer's opening is headed off: cut rafters end at headers between doubled trimmers", "[dormer]") {
  for (const DormerKind kind : {DormerKind::kGable, DormerKind::kShed}) {
    const RoofSolution roof = solved(some_roof(kind));
    CHECK(all_of(roof, RoofTimberKind::kTrimmer).size() == 4);
    CHECK(all_of(roof, RoofTimberKind::kHeader).size() == 2);
    CHECK(all_of(roof, RoofTimberKind::kPost).size() == 2);
    CHECK(all_of(roof, RoofTimberKind::kPlate).size() == (kind == DormerKind::kGable ? 3 : 1));
    // 56 in between the trimmers, rafters 16 in apart: three of them, each below and above.
    CHECK(all_of(roof, RoofTimberKind::kCutCommon).size() == 6);
    for (const RoofTimber& t : roof.timbers)
      if (t.kind == RoofTimberKind::kHeader) {
        int ends = 0;
        for (const RoofContact& c : roof.contacts)
          if (roof.timbers[static_cast<std::size_t>(c.member)].mark == t.mark) ++ends;
        CHECK(ends == 2);
        CHECK_THAT(t.length, WithinAbs(72 - 4 * 4, 1e-9));
      }
    CHECK_FALSE(says(roof, RoofFindingId::kClash));
    CHECK_FALSE(says(roof, RoofFindingId::kNoBearing));
  }
}

TEST_CASE("A gable dormer's ridge hangs in its header, its valleys in trimmers, ridge and header", "[dormer]") {
  const RoofSolution roof = solved(some_roof(DormerKind::kGable));
  CHECK(touches(roof, "R-DM1", "HD-DM1U"));
  CHECK(touches(roof, "VR-DM1L", "R-DM1"));
  CHECK(touches(roof, "VR-DM1R", "HD-DM1U"));
  CHECK(touches(roof, "P-DM1L", "L-DM1L"));
  CHECK(touches(roof, "L-DM1F", "L-DM1L"));
  int on_trimmers = 0;
  for (const RoofContact& c : roof.contacts)
    if (roof.timbers[static_cast<std::size_t>(c.receiver)].kind == RoofTimberKind::kTrimmer) ++on_trimmers;
  CHECK(on_trimmers == 4 + 2 + 2 + 2);  // headers' ends, valleys, posts, side plates
}

TEST_CASE("A shed dormer's rafters run from its face to the header where both planes meet", "[dormer]") {
  // z = 2.75 + v on the roof; on the shed 74.75 + (v − 36) / 3: alike at v = 90. Rafter 54 level: √(54² + 18²).
  const RoofSolution roof = solved(some_roof(DormerKind::kShed));
  CHECK_THAT(roof.dormers[0].meets, WithinAbs(90, 1e-9));
  int rafters = 0;
  for (const RoofTimber& t : roof.timbers) {
    if (t.dormer != 0 || t.kind != RoofTimberKind::kCommon) continue;
    ++rafters;
    CHECK_THAT(t.line_length, WithinAbs(std::sqrt(54.0 * 54 + 18 * 18), 1e-9));
    CHECK(touches(roof, t.mark, "HD-DM1U"));
  }
  CHECK(rafters == 5);
}

TEST_CASE("A dormer flush with its wall cuts the eave and needs no lower header", "[dormer]") {
  for (const DormerKind kind : {DormerKind::kGable, DormerKind::kShed}) {
    RoofPlan plan = some_roof(kind);
    plan.dormers[0].face = {};
    plan.dormers[0].plate_height = Length::feet(4);
    plan.dormers[0].doubled = false;
    const RoofSolution roof = solved(plan);
    CHECK(all_of(roof, RoofTimberKind::kHeader).size() == 1);
    CHECK(all_of(roof, RoofTimberKind::kTrimmer).size() == 2);
    for (const RoofTimber* t : all_of(roof, RoofTimberKind::kCutCommon)) CHECK_FALSE(t->seat.cut);
    CHECK_FALSE(says(roof, RoofFindingId::kClash));
  }
}

TEST_CASE("A dormer that has no room is refused with what would be accepted, and that is", "[dormer]") {
  const auto cured = [](RoofPlan plan, ErrorCode code, const char* where, auto&& put) {
    const Error error = refusal(plan);
    INFO(error.where);
    CHECK(error.code == code);
    CHECK(error.where == where);
    REQUIRE(error.limit > 0);
    put(plan.dormers[0], Length{error.limit});
    CHECK(solve_roof(plan));
  };
  RoofPlan high = some_roof(DormerKind::kGable);
  high.dormers[0].plate_height = Length::feet(13);
  cured(high, ErrorCode::kTooLarge, "dormers.0.plate_height", [](Dormer& d, Length l) { d.plate_height = l; });
  RoofPlan low = some_roof(DormerKind::kShed);
  low.dormers[0].plate_height = Length::feet(3);
  cured(low, ErrorCode::kTooSmall, "dormers.0.plate_height", [](Dormer& d, Length l) { d.plate_height = l; });
  RoofPlan aside = some_roof(DormerKind::kGable);
  aside.dormers[0].centre = Length::feet(1);
  cured(aside, ErrorCode::kConflict, "dormers.0.centre", [](Dormer& d, Length l) { d.centre = l; });
  RoofPlan wide = some_roof(DormerKind::kShed);
  wide.dormers[0].width = Length::feet(60);
  cured(wide, ErrorCode::kTooLarge, "dormers.0.width", [](Dormer& d, Length l) { d.width = l; });
  RoofPlan narrow = some_roof(DormerKind::kGable);
  narrow.dormers[0].width = Length::feet(1);
  cured(narrow, ErrorCode::kTooSmall, "dormers.0.width", [](Dormer& d, Length l) { d.width = l; });
  RoofPlan near = some_roof(DormerKind::kGable);
  near.dormers[0].face = Length::inches(2);
  cured(near, ErrorCode::kTooSmall, "dormers.0.face", [](Dormer& d, Length l) { d.face = l; });
}

TEST_CASE("A dormer's side, pitch and place are judged before anything is built", "[dormer]") {
  RoofPlan steep = some_roof(DormerKind::kShed);
  steep.dormers[0].pitch = in12(12);
  CHECK(refusal(steep).where == "dormers.0.pitch");
  RoofPlan on_gable = some_roof(DormerKind::kGable);
  on_gable.dormers[0].side = 1;
  CHECK(refusal(on_gable).where == "dormers.0.side");
  on_gable.dormers[0].side = 99;
  CHECK(refusal(on_gable).where == "dormers.0.side");
  RoofPlan two = some_roof(DormerKind::kGable);
  two.dormers.push_back(two.dormers[0]);
  const Error error = refusal(two);
  CHECK(error.where == "dormers.1.centre");
  two.dormers[1].centre.count = error.limit;
  CHECK(solved(two).dormers.size() == 2);
  RoofPlan hipped = some_roof(DormerKind::kGable);
  for (PlanSide& side : hipped.sides) side.kind = SideKind::kEave;
  hipped.dormers[0].centre = Length::feet(5);
  CHECK(refusal(hipped).where == "dormers.0.centre");
}

TEST_CASE("Any figures at all in a dormer end in a roof or a refusal", "[dormer]") {
  const Length far{Length::kLimit};
  for (const DormerKind kind : {DormerKind::kGable, DormerKind::kShed})
    for (const Length hostile : {far, -far, Length{1}, Length{-1}, Length{}})
      for (int field = 0; field < 5; ++field) {
        RoofPlan plan = some_roof(kind);
        Dormer& d = plan.dormers[0];
        Length* const fields[] = {&d.centre, &d.width, &d.face, &d.plate_height, &d.overhang};
        *fields[field] = hostile;
        const auto roof = solve_roof(plan);
        if (!roof) {
          CHECK(roof.error().where.rfind("dormers.0.", 0) == 0);
          continue;
        }
        for (const RoofTimber& t : roof->timbers) CHECK(std::isfinite(t.length));
      }
}

TEST_CASE("A dormered roof's frame knows every timber of it, with sheet, steps and bearings", "[dormer]") {
  for (const DormerKind kind : {DormerKind::kGable, DormerKind::kShed}) {
    const RoofPlan plan = some_roof(kind);
    const RoofSolution roof = solved(plan);
    const auto frame = frame_of_roof(plan, FramePlan{});
    REQUIRE(frame);
    for (const Finding& f : frame->findings) CHECK(f.id != FindingId::kClash);
    CHECK(frame->timbers.size() == roof.timbers.size() + 2);
    for (const RoofTimber& t : roof.timbers) {
      const int i = timber_by_mark(*frame, t.mark);
      INFO(t.mark);
      REQUIRE(i >= 0);
      const Timber& own = frame->timbers[static_cast<std::size_t>(i)];
      CHECK_THAT(volume_of(solid_of(own)).volume, WithinAbs(volume_of(solid_of(t)).volume, 1e-6));
      CHECK(work_steps(*frame, solve_sheet(*frame, i, Saw{})).size() > 1);
      int held = 0;
      for (const Joint& joint : frame->joints)
        if ((joint.member == i || joint.receiver == i) && joint.contacts > 0) ++held;
      CHECK(held > 0);
      int seats = 0;
      for (const Joint& joint : frame->joints)
        if (joint.member == i && joint.kind == JointKind::kBirdsMouth && joint.contacts > 0) ++seats;
      if (t.seat.cut && t.kind != RoofTimberKind::kHip) CHECK(seats == 1);
    }
  }
}

TEST_CASE("On a dormer's drawings each of its figures is asked for once", "[dormer]") {
  for (const DormerKind kind : {DormerKind::kGable, DormerKind::kShed}) {
    const RoofPlan plan = some_roof(kind);
    const RoofSolution roof = solved(plan);
    std::vector<std::string> keys;
    const draw::Drawing own = dormer_drawing(roof, 0), above = roof_plan_drawing(plan, &roof, -1, 0, 0);
    for (const draw::Drawing* drawing : {&own, &above}) {
      for (const draw::Note& note : drawing->notes) keys.push_back(note.key);
      for (const draw::Dimension& d : drawing->dimensions) keys.push_back(d.key);
    }
    for (const char* key : {"width", "plate_height", "pitch", "overhang", "face", "dormer.0", "dormer.0.centre"})
      CHECK(std::count(keys.begin(), keys.end(), key) == 1);
  }
}

TEST_CASE("Dormers come back from a file as they went, and a roof without them is written as before", "[dormer]") {
  Book book = new_book("", Length::feet(20), Length::feet(24), Length::feet(10), in12(8));
  book.framed = false;
  book.roof = some_roof(DormerKind::kShed);
  book.roof.dormers[0].doubled = false;
  const auto back = read_book(write_book(book));
  REQUIRE(back);
  CHECK(back->roof == book.roof);
  book.roof.dormers.clear();
  CHECK(write_book(book).find("dormer") == std::string::npos);
}

TEST_CASE("Dormers stay where they stand when a side is put in or taken out before theirs", "[dormer]") {
  RoofPlan plan = rectangle_roof(Length::feet(40), Length::feet(24), in12(12));
  Dormer d;
  d.side = 2;
  d.centre = Length::feet(20);
  plan.dormers.push_back(d);
  const RoofPlan out = with_part_out(plan, 0, Length::inches(6));
  REQUIRE(out.dormers.size() == 1);
  CHECK(out.dormers[0].side == 6);
  const RoofPlan back = without_side(out, 2);
  REQUIRE(back.dormers.size() == 1);
  CHECK(back.sides[static_cast<std::size_t>(back.dormers[0].side)].y == Length::feet(24));
  CHECK(back.dormers[0].centre == Length::feet(20));
  // One over a part of the wall that stays where it is.
  plan.dormers[0].side = 0;
  plan.dormers[0].centre = Length::feet(35);
  const RoofPlan moved = with_part_out(plan, 0, Length::inches(6));
  REQUIRE(moved.dormers.size() == 1);
  CHECK(moved.dormers[0].side == 4);
}
