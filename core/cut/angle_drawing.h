#pragma once
/// Drawings of the Angles place. Figure keys are the input's or answer's own names, so that a tap can edit them.

#include "cut/mitre.h"
#include "cut/setting.h"
#include "cut/triangle.h"
#include "draw/drawing.h"

namespace bentbook {

/// The slope triangle. Dimensions: "rise", "run", "slope_length", angle "slope"; kGiven where `input` gives it, else
/// kAnswer.
[[nodiscard]] draw::Drawing triangle_drawing(const TriangleInput& input, const Triangle& triangle);

/// The side face of a timber with the cut drawn on it, waste hatched. Keys: "depth" (given), "breadth" (given, note),
/// "travel" (fact), angle "set_to" (answer) between the square line and the cut.
[[nodiscard]] draw::Drawing cut_on_timber_drawing(const Setting& setting, const Section& section);

/// The scale of the saw with its blade at the graduation: an arc from square to 60° off it (further where the cut is),
/// a tick every 10°, shorter ones between where they are not too close; the blade as the cut line, square as a centre
/// line. Notes "scale_<reading>" at some of the long ticks, in the scale's own figures.
[[nodiscard]] draw::Drawing scale_drawing(const Saw& saw, const Graduation& set);

/// Which face the saw rides on.
enum class Ride : std::uint8_t {
  kSide,  ///< along the slanting line, blade square
  kTop,   ///< along a square line, blade tilted
};
/// A length of the timber seen from its side and above, the cut's line on the face ridden on, its waste hatched. No
/// figures.
[[nodiscard]] draw::Drawing ride_drawing(const Setting& setting, const Section& section, Ride ride);

/// Two members and their mitre. Keys: angle "between" (given), "depth_a", "depth_b" (given), angles "off_square_a",
/// "off_square_b" (answers), "line" (fact).
[[nodiscard]] draw::Drawing mitre_drawing(Angle between, Length depth_a, Length depth_b, const Mitre& mitre);

/// The flip test, the gap drawn larger than life. Keys: "flip_gap" (given), "flip_depth" (given), angle "scale_error"
/// (answer).
[[nodiscard]] draw::Drawing flip_drawing(Length gap, Length depth, Angle error);

}  // namespace bentbook
