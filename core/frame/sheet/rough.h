#pragma once
/// Rough timber: what a sheet must say when the wood is not what the plan counts on. Features are cut to the design
/// planes (joints meet there whatever the wood measures); only what a rule finds on the real wood moves.

#include <optional>
#include <vector>

#include "frame/sheet/layout_marks.h"

namespace bentbook {

/// How far the wood stands above the line snapped from end to end, at a station: 4 c x (L − x) / L², crown up
/// positive. The parabola through both ends and the greatest departure c in the middle.
/// Source: SOURCES.md, "bow".
[[nodiscard]] double bow_offset(double bow, double length, double station);

/// A face that is no reference: how far it stands proud of its design plane (negative: short of it).
struct FloatingFace {
  Face face = Face::kBottom;
  double over = 0;
};
/// The two faces that float, those that stand in their design plane left out.
[[nodiscard]] std::vector<FloatingFace> floating_faces(const Timber& timber);
[[nodiscard]] bool is_reference(const Wood& wood, Face face);

/// A recess's depth under the real face at its middle, the bow taken in: on top the crown adds to it, on the bottom it
/// takes away; the sides do not feel it. Through recesses stay what they are.
[[nodiscard]] double depth_here(const Timber& timber, const RecessOnFace& recess);
/// A relief's leg: how far it goes in from its end, square to that.
[[nodiscard]] double relief_leg(const Feature& relief);
/// The same as it is told to whoever cuts there: nothing where it goes through, or where it has no floor along the
/// face: beside a tenon that is askew how deep the deepest corner lies is nobody's measure. Of a relief its leg: how
/// far its slot goes is the slot's. `on`: one of the recess's faces.
[[nodiscard]] std::optional<double> told_depth(const Timber& timber, const RecessMarks& recess, const RecessOnFace& on);
/// One kDefect warning for each defect and feature (or end cut) that come on the same stretch of a face.
/// `station`: where they meet; `joint`: the feature's; value: DefectKind.
[[nodiscard]] std::vector<TimberWarning> defect_warnings(const Timber& timber, const LayoutMarks& marks);

}  // namespace bentbook
