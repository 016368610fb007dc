#pragma once
/// A hip or valley between two roofs, with its jacks: everything that is measured on it. One call solves it; nothing in
/// it allocates when it succeeds. Exact inputs, solved in double, each answer rounded once.
///
/// Lengths along the hip are measured on its top on the line of the two roof planes, which lies `shift` off the middle
/// of an unbacked timber; 0 is the corner of the eaves. Source: SOURCES.md, "roof corners".

#include <array>

#include "numeric/fixed_list.h"
#include "roof/corner/corner_planes.h"

namespace bentbook {

enum class CornerCautionId : std::uint8_t {
  kRisesAway,         ///< `roof` runs away from the hip: no rafter of it comes up to the hip, nor stands on the valley
  kHipShallow,        ///< jacks' plumb cuts reach below the hip: length = the depth that it wants
  kHipHigh,           ///< the hip's lower edge stands over the plates' corner: length = packing, plumb
  kNotchPastQuarter,  ///< its seat takes `share` of its depth, past a quarter (limits.h)
};
struct CornerCaution {
  CornerCautionId id = CornerCautionId::kRisesAway;
  int roof = 0;
  Length length{};
  double share = 0;
};

/// What holds for one of the two roofs.
struct CornerRoof {
  Angle slope, plan;  ///< of its rafters; in plan, between its eave and the hip
  bool meets = true;  ///< its rafters come to the hip: plan below 90°
  Length run, overhang, seat;
  double fall = 0;  ///< CornerPlanes::fall
  /// Across the hip's top, from level: what its backing planes off on this side (of a valley, how its trough leans).
  /// Below 0 where this roof rises away from the hip.
  Angle backing;
  /// A jack's cut on its top face, from the timber's length; the same cut made as a plumb cut tilts the blade by
  /// `jack_tilt`.
  Angle jack_side, jack_tilt;
  /// Along the slope: what a spacing adds to a jack, and what half the hip's thickness takes off each. 0 where no jack
  /// comes to the hip (a plan angle of 90°); below 0 where the roof rises away.
  Length jack_difference, jack_shortening;
  Length jack_long_point;  ///< along its top, from the cut at the middle of a jack to its long point
  int jacks = 0;           ///< how many stand between the corner and the last common
};

/// A jack of one roof, along the middle of its top from the wall line (hip) or from its plumb cut at the ridge
/// (valley).
struct Jack {
  Length line;    ///< to the hip's line, nothing taken off
  Length length;  ///< shortened by half the hip, and in a valley by half the ridge
};

struct RoofCorner {
  double tan = 0, cos = 1, sin = 0;  ///< of the hip
  Angle slope;
  Length run, rise, length;  ///< of its line: level, plumb, along it, wall corner to the peak
  Length per_foot;           ///< along it, for a foot of the first roof's run
  Length square_run;        ///< what the framing square's body holds while its tongue holds the first roof's rise in 12
  Length drop;              ///< plumb, of an unbacked hip
  Length shift;             ///< level, square to it, of an unbacked hip, toward `shift_to`; before it is dropped
  int shift_to = 0;         ///< the shallower roof
  Length shortening_level;  ///< of its line at the peak, level
  Length shortening, to_cut;  ///< along it: what is taken off; what is left from the wall corner to the peak cut
  Length tail;                ///< along it, wall corner to the tail's point
  Length heel, seat;          ///< plumb over the wall corner; level along its middle
  Length plumb_depth, notch;  ///< depth over the cosine; the seat's depth square to the timber
  Length longest;             ///< along the timber, longest point to longest point
  double notch_share = 0;     ///< notch over depth
  std::array<CornerRoof, 2> roofs;
  FixedList<CornerCaution, 5> cautions;

  [[nodiscard]] const CornerRoof& roof(int i) const { return roofs[static_cast<std::size_t>(i)]; }
};

/// Errors: those of check_corner; kSeatTooLong, kHeelTooLarge and kTooSmall ("seat", "heel", with the limit: some of
/// the dropped hip must stand over the plates); kTooLarge ("hip_breadth": it is dropped below the plates whatever the
/// seat; "run": the hip would be longer than any length); kImpossible ("peak": between commons where one of the roofs
/// has none beside the hip), ("pitch_other": one pitch is so much the steeper that the hip lies along an eave).
[[nodiscard]] Result<RoofCorner> solve_corner(const CornerInput& input);

/// Jack `number` (from 1 to roof.jacks) of a roof, counted from the corner.
[[nodiscard]] Jack jack_of(const CornerInput& input, const RoofCorner& corner, int roof, int number);

/// A cheek of the hip's ends: the waste lies where dot(normal, p) > offset, in the corner's axes.
struct Cheek {
  int roof = 0;  ///< whose ridge, common or eave it stands along
  Plane plane;
};
[[nodiscard]] FixedList<Cheek, 2> peak_cheeks(const CornerInput& input, const CornerPlanes& planes);
[[nodiscard]] FixedList<Cheek, 2> foot_cheeks(const CornerInput& input, const CornerPlanes& planes);

}  // namespace bentbook
