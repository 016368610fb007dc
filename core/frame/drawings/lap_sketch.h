#pragma once
/// Joints where timbers pass, lie in one line, or meet at the roof: half lap, scarf, bird's mouth, peak.

#include "draw/drawing.h"
#include "frame/drawings/joint_wood.h"
#include "frame/joints/birds_mouth.h"
#include "frame/joints/half_lap.h"
#include "frame/joints/rafter_peak.h"
#include "frame/joints/scarf.h"

namespace bentbook {

/// The receiver seen at its end. Given: pegs, peg.diameter; told: lap_depth.
[[nodiscard]] draw::Drawing lap_from_side(const HalfLap& lap, const JointWood& wood);
/// Given: length, pegs, peg.diameter, peg.from_shoulder.
[[nodiscard]] draw::Drawing scarf_from_side(const Scarf& scarf, const JointWood& wood);
/// The rafter rises to the right. Given: seat; told: heel, stand (plumb, plate to the rafter's top), mouth_depth,
/// slope.
[[nodiscard]] draw::Drawing mouth_from_side(const BirdsMouth& mouth, const JointWood& wood);
/// Given: peg.diameter and clearance of a tongue in its fork.
[[nodiscard]] draw::Drawing peak_from_side(const RafterPeak& peak, const JointWood& wood);
/// The plumb cut of the rafter with the tongue. Given: thickness.
[[nodiscard]] draw::Drawing peak_from_end(const RafterPeak& peak, const JointWood& wood);

}  // namespace bentbook
