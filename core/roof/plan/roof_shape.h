#pragma once
/// The planes of a roof and the lines in which they meet. Inches, world axes (roof_plan.h).

#include <cstdint>
#include <vector>

#include "numeric/result.h"
#include "roof/plan/flat.h"
#include "roof/plan/roof_plan.h"

namespace bentbook {

/// A side as solved: with plane, the height of the rafters' tops over a place in plan.
struct RoofPlane {
  bool gable = false;
  Vec2 from, to;      ///< wall corners
  Vec2 along, in;     ///< direction of the side, and level into the building, length 1
  double length = 0;  ///< at the wall
  double tan = 0, cos = 1, sin = 0;
  double plate = 0;  ///< top of the plate
  double seat = 0;   ///< of a common rafter's bird's mouth, level
  double base = 0;   ///< rafters' tops over the wall line: plate and heel
  double overhang = 0;
  double eave_z = 0;  ///< rafters' tops at the tail

  /// Level, inward from the wall line.
  [[nodiscard]] double depth(Vec2 p) const { return dot(in, p - from); }
  [[nodiscard]] double height(Vec2 p) const { return base + tan * depth(p); }
  /// How much lower the plane is for each inch in a direction.
  [[nodiscard]] double fall(Vec2 direction) const { return -tan * dot(in, direction); }
};

enum class RoofLineKind : std::uint8_t {
  kRidge,   ///< level, both planes fall away
  kHip,     ///< sloping, both planes fall away
  kValley,  ///< both planes drain into it
  kRake,    ///< a plane's end in a gable
  kEave,    ///< at the tails
  kTop,     ///< level, a plane's upper end against a wall or in the air (a lean-to's)
  kBreak,   ///< a plane goes on in another pitch
  kFlush,   ///< two sides' planes that are one: nothing is seen
};

/// From its lower end. Planes by index of their side; −1: none.
struct RoofLine {
  RoofLineKind kind = RoofLineKind::kRidge;
  Vec3 a, b;
  int node_a = -1, node_b = -1;  ///< in RoofShape::nodes; −1: at the eaves' outline
  int left = -1, right = -1;     ///< planes seen from a to b
  int dormer = -1;               ///< whose line it is
};

/// One plane as far as it reaches, tails and all.
struct RoofFace {
  Polygon2 outline;             ///< in plan; empty: a gable
  std::vector<Polygon2> holes;  ///< that dormers' walls take of it, counterclockwise; not in the areas
  double plan_area = 0;         ///< in², level
  double slope_area = 0;        ///< in², along the slope
};

struct RoofShape {
  int sides = 0;                  ///< of the plan
  std::vector<RoofPlane> planes;  ///< by side, then those of the dormers
  std::vector<RoofFace> faces;    ///< by plane
  std::vector<RoofLine> lines;    ///< ridges first, then hips, valleys, the others, then those of the dormers
  std::vector<Vec3> nodes;
  Polygon2 eaves;        ///< outline of the tails in plan
  bool lined_up = true;  ///< all fascias lie in the planes' own corners
};

/// Along the slopes, in².
[[nodiscard]] double roof_area(const RoofShape& shape);
/// Where planes meet highest, inches.
[[nodiscard]] double highest_point(const RoofShape& shape);

/// Errors as check_roof_plan, and kImpossible: "roof" (what the eaves carry never closes: too many gables),
/// "sides.2.plane" (at the level where its neighbours begin this plane has no length left), "sides.2.eave" (nothing of
/// the plane is seen). Without the dormers (dormer_shape.h).
[[nodiscard]] Result<RoofShape> solve_shape(const RoofPlan& plan);

}  // namespace bentbook
