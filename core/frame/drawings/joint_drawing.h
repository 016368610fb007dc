#pragma once
/// A joint drawn with its measures: what one taps to change them. Coordinates are inches.
///
/// Keys of figures: a measure's path in its joint ("reach", "pins.spacing"), given, or an answer: "slot_depth",
/// "slot_width", "gauge", "plate_top", "first_pin" (a knife plate), "fence", "first_peg" (a tenon), "lap_depth" (a half
/// lap), "heel", "stand", "mouth_depth", all in inches, and "slope" in degrees (a bird's mouth).

#include <optional>
#include <string_view>
#include <vector>

#include "draw/drawing.h"
#include "frame/drawings/joint_wood.h"

namespace bentbook {

enum class JointView : std::uint8_t {
  kSide,   ///< both timbers, in the plane in which they meet
  kEnd,    ///< the member's end, seen from its shoulder
  kMouth,  ///< of a slot, where the plate stands on its base
};
struct JointDrawing {
  JointView view = JointView::kSide;
  draw::Drawing drawing;
};
[[nodiscard]] std::vector<JointDrawing> joint_drawings(const JointType& type, const JointWood& wood);

/// An answer on these drawings, by its key; nothing: it is none.
[[nodiscard]] std::optional<double> joint_answer(const JointType& type, const JointWood& wood, std::string_view key);
/// Whether this joint's cuts depend on the measure: a lap's peg stands in its middle whatever a peg's row is.
[[nodiscard]] bool is_used(const JointType& type, std::string_view measure);

}  // namespace bentbook
