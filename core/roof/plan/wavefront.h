#pragma once
/// Where roof planes meet: the level lines of a roof, followed upward. At each height the planes' level lines bound
/// what of the plan lies higher; they move inward as the height grows, each by its own pitch, until nothing is left.
/// The ways of the corners are hips and valleys, what vanishes between two lines at once is a ridge. (The straight
/// skeleton of the plan, weighted where pitches differ: Aichholzer and others, 1995.)
///
/// Whatever happens at one height happens at once: corners and lines that touch are made one point, lines that lie on
/// each other cancel out, and what is left is joined to closed loops anew. So a plan that is symmetric in every way
/// needs no case of its own. Source: SOURCES.md, "straight skeleton".

#include <vector>

#include "numeric/result.h"
#include "roof/plan/flat.h"

namespace bentbook {

/// A plane as its level line: at height z the points p with dot(in, p) = offset + speed · z; higher points lie inward.
struct LevelLine {
  Vec2 along;         ///< direction, length 1; the roof lies on its left
  Vec2 in;            ///< left_of(along)
  double offset = 0;  ///< at height 0
  double speed = 0;   ///< level inches for each inch of height: 1 / tangent of the pitch; 0: upright, a gable
};

struct RoofNode {
  Vec2 at;
  double z = 0;
};
/// From one node to another, never downward; one plane on its left, the other on its right.
struct RoofEdge {
  int low = 0, high = 0;
  int left = 0, right = 0;
};
struct Wavefronts {
  std::vector<RoofNode> nodes;
  std::vector<RoofEdge> edges;
  std::vector<std::vector<int>> faces;  ///< by line: its nodes counterclockwise, from the start of its lowest line
};

/// Nearer than this (inches) is one place.
inline constexpr double kOnePlace = 1e-6;

/// The lines in their order counterclockwise; neighbours are not parallel. `bottom`: the height to begin at. The area
/// that they bound there must not cross itself (see RoofPlan's check). Where one line runs into another of the same
/// direction the flatter plane goes on above both.
/// Errors: kImpossible, where = "roof" (what is left never closes: too many upright sides), or the index of a line that
/// has no length at the bottom in `limit`, where = "plane".
[[nodiscard]] Result<Wavefronts> follow_up(const std::vector<LevelLine>& lines, double bottom);

}  // namespace bentbook
