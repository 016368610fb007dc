// What can go in, against what any framer knows of tenons (common practice); the solids themselves are checked against
// an outside modeller by tests/run blocking.

#include <algorithm>
#include <catch_amalgamated.hpp>
#include <string>

#include "frame/facts.h"
#include "frame/placing/solve_frame.h"
#include "raising/insertion/assemblies.h"
#include "raising/insertion/blocking.h"

using namespace bentbook;

namespace {

Frame two_bays() {
  return solve_frame(
             default_plan(Length::feet(20), Length::feet(24), Length::feet(10), Slope::in_12(Length::inches(8))))
      .value();
}

std::vector<int> by_marks(const Frame& frame, const std::vector<std::string>& marks) {
  std::vector<int> found;
  for (const std::string& mark : marks) {
    found.push_back(timber_by_mark(frame, mark));
    REQUIRE(found.back() >= 0);
  }
  return found;
}

Entry entry_of(const Frame& frame, const std::vector<std::string>& coming, const std::vector<std::string>& standing) {
  Blocking blocking(frame);
  return blocking.entry(by_marks(frame, coming), by_marks(frame, standing));
}

bool has(const Entry& entry, RemedyKind kind) {
  return std::any_of(entry.remedies.begin(), entry.remedies.end(), [&](const Remedy& r) { return r.kind == kind; });
}

}  // namespace

TEST_CASE("a tie with tenons at both ends can't go between two standing posts") {
  const Frame frame = two_bays();
  const Entry entry = entry_of(frame, {"T-1"}, {"P-A1", "P-E1"});
  CHECK_FALSE(entry.free);
  REQUIRE(entry.blockers.size() == 1);
  CHECK((frame.timbers[static_cast<std::size_t>(entry.blockers[0])].kind == TimberKind::kPost));
  CHECK(has(entry, RemedyKind::kWithBent));
  CHECK(has(entry, RemedyKind::kLeaveLoose));
  CHECK(has(entry, RemedyKind::kChangeJoint));
}

TEST_CASE("a tie goes onto one post, the other post onto the tie") {
  const Frame frame = two_bays();
  const Entry tie = entry_of(frame, {"T-1"}, {"P-A1"});
  REQUIRE(tie.free);
  REQUIRE(tie.path.size() == 2);
  CHECK(tie.path[0].kind == MoveKind::kLower);
  CHECK(tie.path[1].kind == MoveKind::kSlide);
  CHECK(tie.path[1].direction.x < -0.99);
  const Entry post = entry_of(frame, {"P-E1"}, {"P-A1", "T-1"});
  REQUIRE(post.free);
  CHECK(post.path.back().direction.x < -0.99);
}

TEST_CASE("a plate is lowered onto posts and braces; a brace can't follow it") {
  const Frame frame = two_bays();
  const Entry plate = entry_of(frame, {"L-A1"}, {"P-A1", "P-A2", "B-A1.3", "B-A2.2"});
  REQUIRE(plate.free);
  REQUIRE(plate.path.size() == 1);
  CHECK(plate.path[0].kind == MoveKind::kLower);
  const Entry brace = entry_of(frame, {"B-A1.3"}, {"P-A1", "P-A2", "L-A1"});
  CHECK_FALSE(brace.free);
  CHECK_FALSE(brace.blockers.empty());
}

TEST_CASE("a girt with a tenon at both ends waits for the next bent, which slides onto it") {
  const Frame frame = two_bays();
  const std::vector<std::string> first = {"P-A1", "P-E1", "T-1", "B-A1.1", "B-E1.1"};
  const std::vector<std::string> second = {"P-A2", "P-E2", "T-2", "B-A2.1", "B-E2.1"};
  CHECK(entry_of(frame, {"G-A1.1"}, first).free);
  std::vector<std::string> with_girt = first;
  with_girt.push_back("G-A1.1");
  const Entry bent = entry_of(frame, second, with_girt);
  REQUIRE(bent.free);
  CHECK(bent.path.back().direction.y < -0.99);
}

TEST_CASE("a tie that no post carries is not rolled aside for a joist") {
  FramePlan plan = default_plan(Length::feet(20), Length::feet(24), Length::feet(12), Slope::in_12(Length::inches(10)));
  plan.loft = true;
  plan.tie_drop = Length::inches(36);
  plan.sections.tie = {Length::inches(8), Length::inches(12)};
  plan.joints[static_cast<std::size_t>(Meeting::kJoistTie)] = MortiseTenon{};
  const Frame frame = solve_frame(plan).value();
  const Entry ties = entry_of(frame, {"J-1.2"}, {"T-1", "T-2"});
  CHECK_FALSE(ties.free);
}

TEST_CASE("loose posts are spread for a girt, posts held by a plate are not") {
  const Frame frame = two_bays();
  const Entry loose = entry_of(frame, {"G-A1.1"}, {"P-A1", "P-A2"});
  REQUIRE(loose.free);
  REQUIRE(loose.path.size() == 3);
  CHECK(loose.path[0].kind == MoveKind::kSpread);
  CHECK(loose.path[0].who.size() == 1);
  CHECK(loose.path[0].distance <= EntryLimits{}.spread_most);
  CHECK_FALSE(entry_of(frame, {"G-A1.1"}, {"P-A1", "P-A2", "L-A1"}).free);
  Blocking blocking(frame);
  EntryLimits stiff;
  stiff.springing = false;
  CHECK_FALSE(blocking.entry(by_marks(frame, {"G-A1.1"}), by_marks(frame, {"P-A1", "P-A2"}), stiff).free);
}

TEST_CASE("bents and walls are proposed, and can be put together") {
  const Frame frame = two_bays();
  Blocking blocking(frame);
  const std::vector<Assembly> bents = propose_assemblies(frame, blocking);
  REQUIRE(bents.size() == 3);
  CHECK(bents[0].marks == std::vector<std::string>{"P-A1", "P-E1", "T-1", "K-C1", "B-A1.1", "B-E1.1"});
  const std::vector<Assembly> walls = propose_assemblies(frame, blocking, AssemblyStyle::kWalls);
  REQUIRE(walls.size() == 2);
  CHECK(walls[0].marks.size() == 11);
  // Two posts, a tie between them and a brace under it: the tie's brace goes on before the post.
  const AssemblySequence together = blocking.assemble(by_marks(frame, {"P-A1", "P-E1", "T-1", "B-A1.1"}));
  REQUIRE(together.possible);
  CHECK(together.order.size() == 4);
}

TEST_CASE("rafters that hold each other are a pair") {
  FramePlan plan = default_plan(Length::feet(16), Length::feet(12), Length::feet(8), Slope::in_12(Length::inches(9)));
  plan.peak = Peak::kPair;
  plan.collars = true;
  const Frame frame = solve_frame(plan).value();
  Blocking blocking(frame);
  int pairs = 0;
  for (const Assembly& a : propose_assemblies(frame, blocking))
    if (a.name[0] == 'R') {
      ++pairs;
      CHECK(a.marks.size() == 3);
    }
  CHECK(pairs > 0);
}

TEST_CASE("nonsense in, nothing out") {
  const Frame frame = two_bays();
  Blocking blocking(frame);
  const int odd[] = {-1, 100'000, 0, 0};
  const int all[] = {0};
  CHECK(blocking.entry(odd, all).free);
  CHECK(blocking.entry({}, {}).free);
  CHECK(blocking.assemble({}).possible);
  const Frame none;
  Blocking empty(none);
  CHECK(empty.entry(odd, all).free);
  CHECK(propose_assemblies(none, empty).empty());
}
