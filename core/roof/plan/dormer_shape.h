#pragma once
/// Dormers as solved: where they stand in the roof's plane, and the planes and lines that they bring. Inches; u along
/// the wall of their side from its corner, v level from its wall line into the building, z as the roof has it.
///
/// A gable dormer's ridge runs level until its top meets the roof's plane, at v = `meets`; its valleys run from there
/// down to its eaves. A shed dormer's plane meets the roof's in a level line at v = `meets`. The upper header's lower
/// face stands there, between the inner faces of the trimmers.

#include <vector>

#include "roof/plan/roof_shape.h"

namespace bentbook {

struct DormerShape {
  int dormer = 0;  ///< in RoofPlan::dormers
  int side = 0;
  bool gable = true;
  bool flush = false;                ///< its face stands over the wall: the eave is cut below it
  double middle = 0, half = 0;       ///< of its width: u, and to the outside of its walls
  double inner = 0;                  ///< half of its opening: to the inner faces of its trimmers
  double face = 0;                   ///< outside of its face, v
  double overhang = 0;               ///< level
  double plate = 0;                  ///< top of its plates, z
  double base = 0;                   ///< its rafters' tops over its wall line, z
  double seat = 0;                   ///< of its rafters' bird's mouths, level
  double tan = 0, cos = 1, sin = 0;  ///< of its pitch
  double top = 0;                    ///< its planes' tops at `meets`, z
  double meets = 0;                  ///< v, see above
  double past = 0;                   ///< upper face of the upper header, v
  double plate_end = 0;              ///< where the tops of its side plates meet the roof, v; gable
  double wall_end = 0;               ///< where its planes do at the outside of its walls, v; gable
  double trimmer_end = 0;            ///< …at the trimmers' inner faces, v: the valleys' feet; gable
  double eave_end = 0;               ///< …at its eaves, v; gable
  int plane = -1;                    ///< its first in RoofShape::planes; a gable's right one follows
  int line = -1;                     ///< its first in RoofShape::lines: ridge, left and right valley; a shed's top
};

/// Errors, in "dormers.0.": kTooLarge "pitch" (a shed's as steep as its roof's), kTooSmall "width" (no room for ridge
/// and headers), "plate_height" (posts or tails come too near to the roof), "face" (neither 0 nor far enough from the
/// wall for the rafters below to bear); kTooLarge "plate_height" (it meets the roof at or over its ridge), "width", and
/// kConflict "centre" (it runs into a hip, a valley, a gable or another dormer), each with what would be accepted in
/// `limit`; kImpossible "room" (none of these alone would do), "meet" (it never meets the roof).
[[nodiscard]] Result<std::vector<DormerShape>> solve_dormers(const RoofPlan& plan, const RoofShape& roof);

/// Appends their planes, faces, lines and nodes, and takes what they cover out of the faces that they stand in.
void add_dormers(std::vector<DormerShape>& dormers, RoofShape& roof);

/// Length of the opening along the roof's slope: from the face, or the tails' end where that is flush, to the upper
/// header.
[[nodiscard]] double opening_length(const DormerShape& dormer, const RoofPlane& side);
/// Of a gable's ridge, from its front to the header.
[[nodiscard]] double ridge_length(const DormerShape& dormer);

}  // namespace bentbook
