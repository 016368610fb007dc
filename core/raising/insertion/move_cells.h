#pragma once
/// A timber's solid as convex cells that stand in the building, and whether one runs into another on a straight way.
/// World axes, inches. Round holes count as filled: pegs and pins are not in while timbers move, and what moves never
/// passes through a peg's hole.

#include <vector>

#include "frame/timber.h"

namespace bentbook {

/// A convex piece: corners, and the directions that could part it from another one, each once up to its sign.
struct MoveCell {
  std::vector<Vec3> corners, normals, edges;
  Vec3 lo, hi;
};

struct MoveBody {
  MoveCell whole;  ///< blank and end cuts alone
  std::vector<MoveCell> cells;
};

[[nodiscard]] MoveBody move_body_of(const Timber& timber);

/// Turned about an axis (length 1) through `pivot` by `angle` radians, right-handed.
[[nodiscard]] MoveBody turned(const MoveBody& body, Vec3 pivot, Vec3 axis, double angle);

/// Whether `moving`, from `from` (added to where it stands) on along `sweep`, takes room of `still` anywhere on that
/// way by more than `limits::kTouching`. Exact for what the cells say: a convex cell swept along a line is convex.
[[nodiscard]] bool runs_into(const MoveBody& moving, Vec3 from, Vec3 sweep, const MoveBody& still);

}  // namespace bentbook
