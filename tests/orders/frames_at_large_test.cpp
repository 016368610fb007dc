// Frames as they are built, each as a new book begins (fastened with the step, no step on one temporary): an order is
// found that a judge who knows nothing of the search finds good, or the words say what a builder would change.

#include <algorithm>
#include <catch_amalgamated.hpp>
#include <cstdio>
#include <ctime>
#include <string>
#include <vector>

#include "built_frames.h"
#include "frame/facts.h"
#include "frame/placing/solve_frame.h"
#include "model/book_model.h"
#include "raising/check.h"
#include "raising/order.h"
#include "raising/search/search.h"
#include "roof/plan/roof_plan.h"
#include "words/raising_words.h"

using namespace bentbook;

namespace {

/// Of this process.
double seconds_since(std::clock_t began) { return static_cast<double>(std::clock() - began) / CLOCKS_PER_SEC; }

/// What holds a post is up until a plate comes over it. How many do.
int braces_stay_for_the_plates(const Frame& frame, const RaisingPlan& plan) {
  const auto step_of = [&](const std::string& mark) {
    for (std::size_t s = 0; s < plan.steps.size(); ++s) {
      const std::vector<std::string> marks = marks_in(plan.steps[s]);
      if (std::find(marks.begin(), marks.end(), mark) != marks.end()) return static_cast<int>(s);
    }
    return -1;
  };
  int held_posts = 0;
  for (const Temporary& temporary : plan.temporaries) {
    const int post = timber_by_mark(frame, temporary.from.mark);
    if (post < 0 || frame.timbers[static_cast<std::size_t>(post)].kind != TimberKind::kPost) continue;
    int plate = 1000, out = -1;
    for (const Joint& joint : frame.joints)
      if (joint.member == post && joint.meeting == Meeting::kPostTop)
        plate = std::min(plate, step_of(frame.timbers[static_cast<std::size_t>(joint.receiver)].mark));
    for (std::size_t s = 0; s < plan.steps.size(); ++s)
      for (const std::string& name : plan.steps[s].take_out)
        if (name == temporary.name) out = static_cast<int>(s);
    CAPTURE(temporary.name, temporary.from.mark);
    if (plate < 1000) CHECK(out >= plate);
    ++held_posts;
  }
  return held_posts;
}

/// The book's order, looked for; nothing: an order is found that is good. Else what is said. `held_posts` is added to.
std::string raise(const Built& one, const Frame& frame, const RaisingPlan& plan, const char* pegs, int& held_posts) {
  const std::clock_t began = std::clock();
  double first = -1;
  const FoundOrder found = search_order(frame, plan, {}, [&](const SearchProgress& progress) {
    if (progress.found && first < 0) first = seconds_since(began);
    return true;
  });
  std::printf("%-27s %-8s %3d timbers, %s, %2d temporaries, %3d steps, first %.1f s, settled %.1f s\n",
              one.name.c_str(), pegs, static_cast<int>(frame.timbers.size()), found.found ? "found" : "none ",
              found.cost.temporaries, static_cast<int>(found.plan.steps.size()), first, seconds_since(began));
  std::fflush(stdout);
  if (!found.found) {
    CHECK_FALSE(found.stuck.empty());
    std::string words;
    for (const Stuck& stuck : found.stuck) words += stuck_text(stuck, found.plan, Language::kEn) + "\n";
    words += stuck_advice(found.stuck, Language::kEn);
    return words;
  }
  const OrderCheck check = check_order(frame, found.plan);
  CHECK(check.good());
  CHECK(check.left_out.empty());
  CHECK((check.steps.empty() || check.steps.back().temporaries_after.empty()));
  CHECK(found.bound.temporaries <= found.cost.temporaries);
  held_posts += braces_stay_for_the_plates(frame, found.plan);
  return {};
}

/// Each is raised, or the words say what to change; of each kind the smaller or the larger one. At least
/// `as_new` of them without a change: where more of them come to want ratings, it is looked at.
void raise_all(std::size_t size, int as_new) {
  int found = 0, rated = 0, none = 0, held_posts = 0;
  const std::vector<Built> all = all_built();
  for (std::size_t i = size; i < all.size(); i += 2) {
    const Built& one = all[i];
    CAPTURE(one.name);
    const Result<Frame> frame = solve_frame(one.book.frame);
    REQUIRE(frame.has_value());
    for (const Finding& finding : frame->findings) CHECK(finding.id != FindingId::kNoRoom);
    std::string words = raise(one, *frame, one.book.raising, "unrated", held_posts);
    if (words.empty()) {
      ++found;
      continue;
    }
    CAPTURE(words);
    if (words.find("Enter what pegs") == std::string::npos) {
      // The only others: feet and girts both on tenons, one of which has to come from above and one from the side.
      CHECK(one.book.frame.sills);
      CHECK(words.find("change the joint") != std::string::npos);
      // It does what they say: girts on knife plates, slid in from the side.
      FramePlan changed = one.book.frame;
      changed.joints[static_cast<std::size_t>(Meeting::kGirtPost)] = plate_for(changed.sections.girt);
      const Result<Frame> open = solve_frame(changed);
      REQUIRE(open.has_value());
      CHECK(raise(one, *open, one.book.raising, "on plates", held_posts).empty());
      ++none;
      continue;
    }
    // What the words ask for: what a peg, pin or screw carries, as a lead enters it.
    RaisingPlan plan = one.book.raising;
    plan.ratings.peg = plan.ratings.pin = plan.ratings.screw = Weight::pounds(1000);
    CHECK(raise(one, *frame, plan, "1000 lb", held_posts).empty());
    ++rated;
  }
  std::printf("%d frames found as a new book has them, %d with what pegs carry, %d not\n", found, rated, none);
  CHECK(none <= 1);
  CHECK(found >= as_new);
  CHECK(held_posts > 0);
}

}  // namespace

TEST_CASE("a hip roof on walls is raised on props, where screws are rated") {
  Book book = new_book("roof", Length::feet(24), Length::feet(24), Length::feet(10), Slope::in_12(Length::inches(8)));
  book.framed = false;
  book.roof = rectangle_roof(Length::feet(12), Length::feet(18), Slope::in_12(Length::inches(8)));
  RaisingPlan plan = book.raising;
  plan.ratings.peg = plan.ratings.pin = plan.ratings.screw = Weight::pounds(500);
  const BookModel model = solve(book);
  REQUIRE(model.frame->has_value());
  int held_posts = 0;
  CHECK(raise({"roof on walls 12 x 18", book}, **model.frame, plan, "500 lb", held_posts).empty());
}

TEST_CASE("small frames as they are built are raised, or the words say what to change") { raise_all(0, 7); }

TEST_CASE("large frames as they are built are raised, or the words say what to change", "[.long]") { raise_all(1, 6); }
