#pragma once
/// The common rafter: what the user tells (RafterInput), and everything that is cut, marked, ordered or minded
/// (RafterPair). One call solves both sides; nothing in it allocates when it succeeds.
///
/// Axes of one side: x level, from the wall line (the outer face of the plate) toward the ridge; y plumb, up from the
/// top of that side's plate. With slope θ: bottom edge y = (x − seat) tan θ, top edge y = heel + x tan θ.
/// Exact inputs, solved in double, each answer rounded once to a Length.
/// Source: SOURCES.md, "rafters".

#include <cstdint>

#include "cut/saw.h"
#include "measure/slope.h"
#include "numeric/fixed_list.h"
#include "numeric/result.h"

namespace bentbook {

enum class Side : std::uint8_t { kLeft, kRight };

/// What fixes the plan. Runs are level, wall line to ridge line.
enum class PlanBy : std::uint8_t {
  kSpan,        ///< span, wall line to wall line; the ridge falls where the two sides meet
  kRun,         ///< the left run; the right one falls where the two sides meet
  kSpanAndRun,  ///< span and left run: the ridge stands where the user says
};

/// Left and right unlike: what stays as given. The third follows, on the right side.
enum class Held : std::uint8_t {
  kHeelsAndPlates,  ///< the ridge's place follows (not with kSpanAndRun: kConflict)
  kRidgeAndPlates,  ///< the right heel (and seat) follows; the ridge is in the middle unless kSpanAndRun places it
  kRidgeAndHeels,   ///< the right plate's height follows; the ridge as above
};

enum class PeakKind : std::uint8_t {
  kAgainstEachOther,  ///< plumb cuts meet at the ridge line
  kRidgeBoard,        ///< plumb cuts against a board or beam of a thickness, centred on the ridge line
  kOverBeam,          ///< a second bird's mouth over a beam centred on the ridge line; plumb cuts meet above it
};

enum class TailCut : std::uint8_t { kPlumb, kSquare, kLevelAndPlumb };

/// Which of seat and heel the user gave.
enum class HeelBy : std::uint8_t { kSeat, kHeel };

/// Does anything keep the feet from spreading?
enum class Feet : std::uint8_t {
  kTied,   ///< a tie at or near the plate, or a carried ridge
  kLoose,  ///< neither: the thrust is worked out and said
};

struct RafterSide {
  Slope pitch = Slope::in_12(Length::inches(8));
  HeelBy heel_by = HeelBy::kSeat;
  Length seat = Length::inches(7, 2);  ///< level length of the seat, inward from the wall line; 0: no bird's mouth
  Length heel = Length::inches(6);     ///< plumb, plate top to the rafter's top edge at the wall line
  Length plate_height{};               ///< top of the plate above one common level, any sign
  Length overhang = Length::feet(1);   ///< level, wall line to the tail's farthest point
  /// Measured on the building: this rafter's own rise over its own run (plate or ridge out of level). Used instead of
  /// pitch and run for this side's answers alone when `measured`.
  bool measured = false;
  Length measured_rise = Length::feet(8);
  Length measured_run = Length::feet(12);
  friend bool operator==(const RafterSide&, const RafterSide&) = default;
};

struct RafterInput {
  PlanBy plan_by = PlanBy::kSpan;
  Length span = Length::feet(24);
  Length run = Length::feet(12);  ///< left
  /// The right side is the left one mirrored; `right` and `held` are not looked at.
  bool alike = true;
  RafterSide left, right;
  Held held = Held::kHeelsAndPlates;
  Section section{Length::inches(11, 2), Length::inches(15, 2)};
  Length plate_breadth = Length::inches(7, 2);
  PeakKind peak = PeakKind::kAgainstEachOther;
  Length ridge_thickness = Length::inches(3, 2);  ///< kRidgeBoard
  Length ridge_depth{};                           ///< kRidgeBoard; 0: not given
  Length beam_breadth = Length::inches(15, 2);    ///< kOverBeam
  Length beam_seat = Length::inches(15, 4);       ///< kOverBeam: the left one's seat; at most half the beam
  TailCut tail = TailCut::kPlumb;
  Length tail_plumb = Length::inches(7, 2);  ///< kLevelAndPlumb: height of the plumb cut left above the level cut
  Length sheathing = Length::inches(3, 4);   ///< thickness, square to the slope; 0: none
  Length trim = Length::inches(1);           ///< added to the longest length before the stock is picked
  Feet feet = Feet::kTied;
  double load_psf = 30;  ///< lb per square foot of level plan, dead and snow; for the thrust alone
  Length spacing = Length::feet(2);
  friend bool operator==(const RafterInput&, const RafterInput&) = default;
};

/// What a mark along an edge is.
enum class MarkName : std::uint8_t {
  kBeamPlumb,  ///< plumb line at the ridge beam's near face
  kBeamSeat,   ///< where the beam's seat runs out of the bottom edge
  kSeatEnd,    ///< where the plate's seat runs out of the bottom edge
  kWallLine,   ///< plumb line of the bird's mouth, over the plate's outer face
  kTailLevel,  ///< where the level cut begins
  kTail,       ///< end of the tail: its plumb or square cut
};

/// From the peak cut's own corner on that edge, along the edge. (The bottom corner lies `peak_setback` back from the
/// top corner when squared across.)
struct Mark {
  MarkName name = MarkName::kTail;
  Length from_peak;
};

enum class CutName : std::uint8_t { kPeakPlumb, kBeamSeat, kSeat, kHeelPlumb, kTailPlumb, kTailSquare, kTailLevel };

/// A cut across the side face, off square.
struct CutAngle {
  CutName name = CutName::kPeakPlumb;
  Angle off_square;
};

/// Things to mind. Limits are shown with their value and named; none of them is a verdict.
enum class CautionId : std::uint8_t {
  kNotchPastSixth,    ///< share = notch depth / timber depth, past 1/6 (codes differ on which limit applies where)
  kNotchPastQuarter,  ///< the same, past 1/4
  kSeatPastPlate,     ///< length = how far the seat runs past the plate
  kSteeperThan45,     ///< the plumb cut is past 45° off square: length unused
  kThrust,            ///< nothing ties the feet
  kBeamSeatShort,     ///< the right side's seat over the beam comes out below zero: length = packing needed, plumb
  kBeamSeatLong,      ///< …or past the beam's middle: length = how far
  kRidgeShallow,      ///< the ridge board is shallower than the rafters' plumb cut: length = what it wants
};

struct Caution {
  CautionId id = CautionId::kThrust;
  bool at_beam = false;  ///< the notch over the ridge beam, not the one at the plate
  double share = 0;
  Length length{};
};

/// The corner points of the shape, in inches, axes as at the top of this file.
struct XY {
  double x = 0, y = 0;
};

/// Everything about one side's rafter.
struct Rafter {
  double tan = 0, cos = 1, sin = 0;
  Angle slope;
  Length run, rise;    ///< level, and run · tan θ
  Length line_length;  ///< run / cos θ: along the slope, wall line to ridge line, nothing taken off
  Length
      ridge_deduction;  ///< taken off the line length, along the slope: (thickness / 2) / cos θ; 0 with no ridge board
  Length tip_to_tip;    ///< along the top edge, peak cut to tail
  Length longest;       ///< longest point to longest point, along the timber: what the stock must hold
  Length stock;         ///< next 2 ft that holds `longest` and the trim
  Length peak_setback;  ///< depth · tan θ: bottom corner of the peak cut behind its top corner
  Length seat, heel;    ///< both, whichever was given
  Length plate_height;  ///< as given or as it follows
  Length plumb_depth;   ///< depth / cos θ
  Length birdsmouth_depth;             ///< square to the rafter: seat · sin θ
  double birdsmouth_share = 0;         ///< of the depth
  double share_left = 1;               ///< of the depth, above the bird's mouth
  Length beam_seat, beam_notch_depth;  ///< kOverBeam
  double beam_notch_share = 0;
  Length peak_height;      ///< theoretical peak (top edges prolonged to the ridge line) above this side's plate
  Length rafter_top;       ///< the rafter's own highest point above this side's plate (at the ridge board's face)
  Length ridge_top;        ///< top of the ridge board (flush with the rafters) or beam above this side's plate; 0: none
  Length sheathing_plumb;  ///< sheathing / cos θ
  Length overhang;
  Length tail_along;   ///< overhang / cos θ: wall line to tail along the top edge
  Length step_length;  ///< one step of the square: 12 in of run along the slope
  int steps = 0;       ///< whole steps in the run, peak deduction not taken off
  Length step_odd;     ///< level, what is left of the run
  int tail_steps = 0;
  Length tail_step_odd;
  FixedList<Mark, 6> marks_top, marks_bottom;  ///< from the peak down
  FixedList<CutAngle, 6> cuts;
  FixedList<Caution, 6> cautions;
  /// Outline, counterclockwise from the peak cut's top corner (down the top edge first: top corner, tail, …).
  FixedList<XY, 16> outline;
};

struct RafterPair {
  Rafter left, right;
  bool alike = true;
  Length span;
  Length ridge_off_centre;  ///< ridge line from the middle of the span, positive toward the right
  /// w · span / (2 (tan θ left + tan θ right)), in lb per rafter pair; 0 when the feet are tied.
  /// Alike it is w · span / (4 tan θ). Source: SOURCES.md, "thrust".
  double thrust_lb = 0;
};

/// Errors name the field that gives way, with `limit` where a value would do:
/// kNotPositive / kNegative / kTooLarge (any field), kSteep ("pitch_…"), kSeatTooLong ("seat_…", limit: longest),
/// kHeelTooLarge ("heel_…", limit: largest), kTooSmall ("overhang_…" for the tail cut asked, "span", "run"),
/// kTooLarge ("ridge", "ridge_seat", "tail_plumb"), kConflict ("held"), kImpossible ("held": no ridge place fits).
[[nodiscard]] Result<RafterPair> solve_rafters(const RafterInput& input);

}  // namespace bentbook
