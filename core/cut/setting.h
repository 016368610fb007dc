#pragma once
/// From an exact cut to what is set on the saw, what the nearest graduations cost, and whether the saw gets through.
/// Pure arithmetic on plain values; nothing here allocates.

#include <cstdint>

#include "cut/saw.h"
#include "geometry/cut_plane.h"

namespace bentbook {

/// One graduation of the scale and what cutting to it costs. Costs are sizes, never negative.
/// s = angle off square that this graduation really cuts (scale error taken in), θ = the exact angle:
///   arris = depth · |tan s − tan θ|            how far the mark is missed along the far arris
///   gap   = (depth / cos s) · sin|s − θ|       how far one joint gapes, square to the cut
///   gap_mated = 2 · gap                        both mating members cut to the same graduation
/// `depth` is the face that the line crosses. 10 in 12, 7 1/2 in, 40°: 0.043, 0.033, 0.066 in.
/// Source: SOURCES.md, "graduations".
struct Graduation {
  Angle reads;       ///< in the saw's own scale
  Angle off_square;  ///< what it cuts, off square
  Length arris, gap, gap_mated;
  bool past = false;  ///< cuts more than the exact angle (false: less, or just right)
};

/// The graduations on either side of the exact setting: below.off_square <= exact <= above.off_square.
/// Where a graduation hits it exactly, `on_mark` is true and both are that one.
struct Graduations {
  Graduation below, above;
  bool on_mark = false;
  /// The cheaper of the two (below where they cost alike).
  [[nodiscard]] const Graduation& best() const { return above.gap < below.gap ? above : below; }
};

/// Which limit of the saw stops the cut.
enum class Bite : std::uint8_t { kNone, kSwing, kTilt, kReach };

/// From how many faces the cut is made.
enum class Faces : std::uint8_t {
  kOne,     ///< one pass goes through
  kTwo,     ///< cut, flip, cut from the opposite face
  kByHand,  ///< two faces leave a web in the middle: finish by hand
  kCannot,  ///< swing or tilt is past the saw: lay it out and cut by hand, or ride on the other face
};

/// The cut made riding on one face.
struct Pass {
  Angle swing;    ///< off square, size
  Angle tilt;     ///< off square, size
  Length travel;  ///< length of the line across the face ridden on: face width / cos swing
  Length needed;  ///< how deep the blade must reach to go through at once: thickness / cos tilt
  Length left;    ///< web left in the middle after two faces (0: none), measured along the blade
  Faces faces = Faces::kOne;
  Bite bite = Bite::kNone;
};

/// Everything for one cut off square by `exact` on the side face (a plumb cut, a seat cut, …).
struct Setting {
  Angle exact;   ///< off square
  Angle set_to;  ///< exact setting in the saw's own scale, corrected for its known error
  Graduations graduations;
  Length travel;  ///< through the side face: depth / cos exact
  Pass on_side;   ///< riding on the side face: the table swings by the angle, blade square
  Pass on_top;    ///< riding on the top face: the line is square, the blade tilts by the angle
};

/// `off_square`: 0° to below 90°. Section positive. The saw must pass check_saw().
/// Errors: kNegative, kSteep ("angle"), kNotPositive ("depth", "breadth"), those of check_saw.
[[nodiscard]] Result<Setting> saw_setting(const Saw& saw, const Section& section, Angle off_square);

/// Only the graduations: for an exact angle across a face of this depth. Same errors.
[[nodiscard]] Result<Graduations> graduations(const Saw& saw, Length depth, Angle off_square);

/// One pass of any plane cut, riding on `face` (compound cuts too). Inputs as checked by saw_setting.
[[nodiscard]] Pass pass_on(const Saw& saw, const Section& section, const CutPlane& cut, Face face);

}  // namespace bentbook
