// How long temporaries stay, by steps that are written down. That a wall's braces stay until its plate is fastened is
// common practice.

#include <algorithm>
#include <catch_amalgamated.hpp>

#include "frame/facts.h"
#include "frame/placing/solve_frame.h"
#include "raising/check_temporaries.h"
#include "words/raising_words.h"

using namespace bentbook;

namespace {

const Frame& small_frame() {
  static const Frame frame =
      solve_frame(default_plan(Length::feet(20), Length::feet(24), Length::feet(10), Slope::in_12(Length::inches(8))))
          .value();
  return frame;
}

/// The first plate that lies on a post.
std::string plate_over(const std::string& post) {
  const Frame& frame = small_frame();
  for (const Joint& joint : frame.joints)
    if (joint.meeting == Meeting::kPostTop && joint.member == timber_by_mark(frame, post))
      return frame.timbers[static_cast<std::size_t>(joint.receiver)].mark;
  return {};
}

Temporary brace_on(const std::string& mark) {
  Temporary brace;
  brace.name = "T1";
  brace.kind = TemporaryKind::kDiagonal;
  brace.from = {mark, Length::feet(6)};
  return brace;
}

RaisingStep step_of(std::vector<std::string> marks, std::vector<std::string> put_up,
                    std::vector<std::string> take_out) {
  RaisingStep step;
  step.marks = std::move(marks);
  step.put_up = std::move(put_up);
  step.take_out = std::move(take_out);
  return step;
}

std::vector<int> taken_out_in(const RaisingPlan& plan) {
  std::vector<int> in;
  for (std::size_t s = 0; s < plan.steps.size(); ++s)
    in.insert(in.end(), plan.steps[s].take_out.size(), static_cast<int>(s));
  return in;
}

}  // namespace

TEST_CASE("what is taken out before its post's plate comes is taken out then", "[raising]") {
  const std::string plate = plate_over("P-A1");
  REQUIRE_FALSE(plate.empty());
  RaisingPlan plan;
  plan.temporaries = {brace_on("P-A1")};
  plan.steps = {step_of({"P-A1"}, {"T1"}, {}), step_of({"P-E1"}, {}, {"T1"}), step_of({"P-A2"}, {}, {}),
                step_of({plate}, {}, {}), step_of({"P-E2"}, {}, {})};
  RaisingPlan tie = plan;
  tie.temporaries = {brace_on("T-1")};
  RaisingPlan late = plan;
  std::swap(late.steps[1].take_out, late.steps[4].take_out);
  keep_until_plates(small_frame(), plan);
  CHECK(taken_out_in(plan) == std::vector<int>{3});
  SECTION("done steps stay as they are") {
    RaisingPlan done = tie;
    done.temporaries = {brace_on("P-A1")};
    done.steps[0].done = done.steps[1].done = true;
    keep_until_plates(small_frame(), done);
    CHECK(taken_out_in(done) == std::vector<int>{1});
  }
  SECTION("what holds no post stays as it is, and what stays longer") {
    keep_until_plates(small_frame(), tie);
    CHECK(taken_out_in(tie) == std::vector<int>{1});
    keep_until_plates(small_frame(), late);
    CHECK(taken_out_in(late) == std::vector<int>{4});
  }
}

TEST_CASE("what would go up again before the plate comes stays up all the while", "[raising]") {
  const std::string plate = plate_over("P-A1");
  RaisingPlan plan;
  plan.temporaries = {brace_on("P-A1")};
  plan.steps = {step_of({"P-A1"}, {"T1"}, {}), step_of({"P-E1"}, {}, {"T1"}), step_of({"P-A2"}, {"T1"}, {}),
                step_of({plate}, {}, {}), step_of({"P-E2"}, {}, {"T1"})};
  RaisingPlan twice = plan;
  std::swap(twice.steps[3], twice.steps[4]);
  keep_until_plates(small_frame(), plan);
  CHECK(plan.steps[2].put_up.empty());
  CHECK(taken_out_in(plan) == std::vector<int>{4});
  keep_until_plates(small_frame(), twice);
  CHECK(twice.steps[2].put_up.empty());
  CHECK(taken_out_in(twice) == std::vector<int>{4});
}

TEST_CASE("a brace that nothing needs is told from there on; on a post, from where its plate is on", "[raising]") {
  const Frame& frame = small_frame();
  RaisingPlan plan;
  plan.temporaries = {brace_on("P-A1")};
  plan.steps.resize(5);
  std::vector<int> step_of_timber(frame.timbers.size(), -1);
  step_of_timber[static_cast<std::size_t>(timber_by_mark(frame, plate_over("P-A1")))] = 3;
  OrderCheck check;
  check.steps.resize(5);
  for (std::size_t s = 0; s < 5; ++s) {
    check.steps[s].bare = s > 0;
    if (s > 0) check.steps[s].temporaries = {0};
    if (s < 4) check.steps[s].temporaries_after = {0};
  }
  check.steps[4].bare = false;
  const auto idle_from = [&](const std::string& mark) {
    plan.temporaries = {brace_on(mark)};
    OrderCheck told = check;
    say_idle(frame, plan, step_of_timber, told);
    REQUIRE(told.faults.size() == 1);
    CHECK(told.faults[0].id == OrderFaultId::kTemporaryIdle);
    CHECK(told.faults[0].marks == std::vector<std::string>{"T1"});
    return told.faults[0].step;
  };
  CHECK(idle_from("T-1") == 1);
  CHECK(idle_from("P-A1") == 3);
}

TEST_CASE("where a stake stands is said straight out, by both walls where it is askew, and plainly where it is below",
          "[raising]") {
  const Frame& frame = small_frame();
  Voice voice;
  const Vec3 foot = frame.timbers[static_cast<std::size_t>(timber_by_mark(frame, "P-A1"))].at.origin;
  const auto said = [&](double x, double y) {
    Temporary brace = brace_on("P-A1");
    brace.ground_x = Length::from_inches(foot.x + x);
    brace.ground_y = Length::from_inches(foot.y + y);
    return temporary_text(brace, frame, voice);
  };
  const auto ends = [](const std::string& text, const std::string& end) { return text.ends_with(end); };
  CHECK(ends(said(-96, 0), "to the ground, 8′ 0″ out toward the left wall"));
  CHECK(ends(said(0.3, -60), "to the ground, 5′ 0″ out toward the first bent"));
  CHECK(ends(said(-60, 72), "to the ground, 6′ 0″ out toward the last bent and 5′ 0″ toward the left wall"));
  CHECK(ends(said(0, 0), "to the ground"));
  CHECK(ends(said(0.01, -0.02), "to the ground"));
}
