// A roof of any plan as a frame: its timbers and plates are what sheets, steps and lists know.

#include "frame/roofs/roof_frame.h"

#include <catch_amalgamated.hpp>
#include <string>
#include <utility>

#include "book/book.h"
#include "frame/facts.h"
#include "frame/sheet/sheet.h"
#include "model/book_model.h"
#include "roof/plan/solve_roof.h"
#include "shop/steps.h"

using namespace bentbook;
using Catch::Matchers::WithinAbs;

namespace {

RoofPlan some_l() {
  return l_roof(Length::feet(40), Length::feet(20), Length::feet(20), Length::feet(12),
                Slope::in_12(Length::inches(8)));
}

Frame framed(const RoofPlan& roof) {
  auto frame = frame_of_roof(roof, FramePlan{});
  REQUIRE(frame);
  return *std::move(frame);
}

int count_of(const Frame& frame, TimberKind kind) {
  int count = 0;
  for (const Timber& t : frame.timbers) count += t.kind == kind ? 1 : 0;
  return count;
}

bool found(const Frame& frame, FindingId id) {
  for (const Finding& f : frame.findings)
    if (f.id == id) return true;
  return false;
}

}  // namespace

TEST_CASE("A roof's frame has a plate under each eave and every timber of the roof, cut alike", "[roofplan]") {
  const Frame frame = framed(some_l());
  const auto roof = solve_roof(some_l());
  REQUIRE(roof);
  CHECK(count_of(frame, TimberKind::kPlate) == 6);
  CHECK(count_of(frame, TimberKind::kHipRafter) == 5);
  CHECK(count_of(frame, TimberKind::kValleyRafter) == 1);
  CHECK(frame.timbers.size() == roof->timbers.size() + 6);
  CHECK_FALSE(found(frame, FindingId::kClash));
  for (const RoofTimber& t : roof->timbers) {
    const int i = timber_by_mark(frame, t.mark);
    REQUIRE(i >= 0);
    const Timber& own = frame.timbers[static_cast<std::size_t>(i)];
    CHECK_THAT(own.length, WithinAbs(t.length, 1e-9));
    CHECK_THAT(volume_of(solid_of(own)).volume, WithinAbs(volume_of(solid_of(t)).volume, 1e-6));
  }
}

TEST_CASE("Every rafter of a roof's frame bears on a plate or on another timber, hips on both plates", "[roofplan]") {
  const Frame frame = framed(some_l());
  for (std::size_t i = 0; i < frame.timbers.size(); ++i) {
    const TimberKind kind = frame.timbers[i].kind;
    int seats = 0, ends = 0;
    for (const Joint& joint : frame.joints) {
      if (joint.member != static_cast<int>(i) || joint.contacts == 0) continue;
      (joint.kind == JointKind::kBirdsMouth ? seats : ends) += 1;
    }
    INFO(frame.timbers[i].mark);
    if (kind == TimberKind::kHipRafter || kind == TimberKind::kValleyRafter) CHECK(seats == 2);
    if (kind == TimberKind::kCommonRafter) CHECK((seats == 1 && ends >= 1));
    if (kind == TimberKind::kJackRafter) CHECK(seats + ends >= 2);
  }
}

TEST_CASE("Every timber of a roof's frame has a sheet and steps", "[roofplan]") {
  const Frame frame = framed(some_l());
  const Saw saw;
  for (std::size_t i = 0; i < frame.timbers.size(); ++i) {
    const Sheet sheet = solve_sheet(frame, static_cast<int>(i), saw);
    CHECK(work_steps(frame, sheet).size() > 3);
    CHECK(frame.timbers[i].alike >= 0);
  }
}

TEST_CASE("A book without a plan has its roof as its frame, and an edit of it is seen", "[roofplan]") {
  Book book = new_book("", Length::feet(20), Length::feet(24), Length::feet(10), Slope::in_12(Length::inches(8)));
  book.framed = false;
  book.roof = some_l();
  const BookModel model = solve(book);
  REQUIRE(*model.frame);
  const std::size_t timbers = (**model.frame).timbers.size();
  Book closer = book;
  closer.roof.spacing = Length::inches(16);
  const BookModel again = solve_again(closer, book, model);
  REQUIRE(*again.frame);
  CHECK((**again.frame).timbers.size() > timbers);
  // One timber set apart by its mark is taken out.
  Book without = book;
  Override gone;
  gone.mark = "C-A9";
  gone.removed = true;
  without.frame.overrides.push_back(gone);
  REQUIRE(timber_by_mark(**model.frame, "C-A9") >= 0);
  CHECK(timber_by_mark(**solve(without).frame, "C-A9") < 0);
}

TEST_CASE("What a roof's frame does not do is said", "[roofplan]") {
  RoofPlan roof = some_l();
  roof.feet = Feet::kLoose;
  roof.hip_top = HipTop::kBacked;
  const Frame frame = framed(roof);
  CHECK(found(frame, FindingId::kNotEngineered));
  CHECK(found(frame, FindingId::kCornerThrust));
  CHECK(found(frame, FindingId::kHipsDropped));
  roof.sides.resize(2);
  CHECK_FALSE(frame_of_roof(roof, FramePlan{}));
}
