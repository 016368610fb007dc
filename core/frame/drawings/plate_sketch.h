#pragma once
/// A knife plate in its slot.

#include "draw/drawing.h"
#include "frame/drawings/joint_wood.h"
#include "frame/joints/knife_plate.h"

namespace bentbook {

/// Cut at the plate. Given: reach, width, depth_clearance, pins.*, let_in; told: slot_depth, plate_top,
/// first_pin.
[[nodiscard]] draw::Drawing plate_from_side(const KnifePlate& plate, const JointWood& wood);
/// Given: thickness, slot_clearance, base_width, base_height, pins.plug, temporary_screws; told: slot_width, gauge.
[[nodiscard]] draw::Drawing plate_from_end(const KnifePlate& plate, const JointWood& wood);
/// Cut across the plate at its base, large. Given: relief_leg, root_radius, weld_crown, base_thickness.
[[nodiscard]] draw::Drawing plate_mouth(const KnifePlate& plate);

}  // namespace bentbook
