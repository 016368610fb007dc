// What a cut across an end is called: by how it lies in the frame, as carpenters have it (common practice): plumb
// against what stands, level under or on what lies, a side cut where it is plumb and askew in plan, a mitre between the
// plates of a corner.

#include <catch_amalgamated.hpp>
#include <set>

#include "book/book.h"
#include "frame/placing/solve_frame.h"

using namespace bentbook;

namespace {

std::set<EndCutName> names_at(const Frame& frame, TimberKind kind, End end) {
  std::set<EndCutName> out;
  for (const Timber& timber : frame.timbers)
    for (const EndCut& cut : timber.cuts)
      if (timber.kind == kind && cut.end == end) out.insert(cut.name);
  return out;
}
bool none_mitred(const Frame& frame) {
  for (const Timber& timber : frame.timbers)
    for (const EndCut& cut : timber.cuts)
      if (cut.name == EndCutName::kMitre && timber.kind != TimberKind::kPlate) return false;
  return true;
}

}  // namespace

TEST_CASE("a rafter's end at the ridge beam is a plumb cut; a brace has one at the post and a level one at the beam",
          "[frame][names]") {
  const auto frame = solve_frame(demo_book().frame);
  REQUIRE(frame);
  CHECK(names_at(*frame, TimberKind::kCommonRafter, End::kA) == std::set{EndCutName::kPlumb});
  CHECK(names_at(*frame, TimberKind::kCommonRafter, End::kB) == std::set{EndCutName::kPlumb});
  std::set<EndCutName> of_braces;
  for (const Timber& timber : frame->timbers) {
    if (timber.kind != TimberKind::kBrace || timber.cuts.size() != 2) continue;
    CHECK(timber.cuts[0].name != timber.cuts[1].name);
    for (const EndCut& cut : timber.cuts) of_braces.insert(cut.name);
  }
  CHECK(of_braces == std::set{EndCutName::kPlumb, EndCutName::kLevel});
  CHECK(names_at(*frame, TimberKind::kTie, End::kB) == std::set{EndCutName::kSquare});
  CHECK(none_mitred(*frame));
}

TEST_CASE("hips have side cuts; of a hip-ended frame plates alone are mitred", "[frame][names][hipframe]") {
  const auto frame = solve_frame(default_hip_plan(Length::feet(24), Length::feet(36), Length::feet(10),
                                                  Slope::in_12(Length::inches(9)), SizedBy::kInches, std::nullopt));
  REQUIRE(frame);
  CHECK(names_at(*frame, TimberKind::kHipRafter, End::kB).contains(EndCutName::kSide));
  CHECK(none_mitred(*frame));
}
