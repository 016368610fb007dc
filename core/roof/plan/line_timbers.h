#pragma once
/// Ridge pieces, hip and valley rafters, purlins along breaks: a timber along each line of the roof, and how they end
/// where they meet.

#include <vector>

#include "roof/plan/roof_timber.h"

namespace bentbook {

/// The room that a line's timber takes in plan: its sides run along the line, `left` and `right` of it.
struct LineRoom {
  int line = -1, timber = -1;
  Vec2 from, along;   ///< the line's lower end, and its level direction
  double length = 0;  ///< level
  double left = 0, right = 0;
  Polygon2 taken;  ///< what of it the timber's cuts leave
};

/// A cut by an upright plane through a point in plan; the waste lies where `waste` points.
[[nodiscard]] RoofEndCut upright_cut(const Placement& at, Vec2 waste, Vec2 through, RoofCutName name, int against);
/// The tail's cut along a side's fascia.
[[nodiscard]] RoofEndCut tail_cut(const Placement& at, const RoofPlane& plane, TailEnd tail);

/// Fills `taken` from the timbers' cuts.
void take_room(const std::vector<RoofTimber>& timbers, std::vector<LineRoom>& rooms);

/// Appends a timber, uncut along its length for now (settle_timber), for each ridge, hip, valley and break, its room to
/// `rooms`.
void place_line_timbers(const RoofPlan& plan, const RoofShape& shape, std::vector<RoofTimber>& timbers,
                        std::vector<LineRoom>& rooms);

}  // namespace bentbook
