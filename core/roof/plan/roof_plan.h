#pragma once
/// A roof of any plan: what the user tells. From the sides of the building and a pitch for each follow ridges, hips and
/// valleys (roof_shape.h) and every rafter in them (solve_roof.h).
///
/// World axes: X and Y level, Z up; plates' tops and heights above one common level, the floor's top in a frame.

#include <cstdint>
#include <string>
#include <vector>

#include "cut/saw.h"
#include "measure/slope.h"
#include "numeric/result.h"
#include "roof/rafter.h"

namespace bentbook {

class Fields;

/// kEave: a roof plane rises from the side. kGable: the wall goes up to the roof planes beside it.
enum class SideKind : std::uint8_t { kEave, kGable };

/// From its corner to the next side's, at the wall line: the outer face of the plate. Sides run counterclockwise seen
/// from above, the building on their left.
struct PlanSide {
  Length x, y;
  SideKind kind = SideKind::kEave;
  Slope pitch = Slope::in_12(Length::inches(8));  ///< kEave
  Length plate_height{};                          ///< top of the plate, any sign; kEave
  Length overhang = Length::feet(1);              ///< level, past the wall line, square to it
  friend bool operator==(const PlanSide&, const PlanSide&) = default;
};

/// How the top of a hip rafter comes into both roof planes.
enum class HipTop : std::uint8_t {
  kDropped,  ///< square: set lower until its arrises lie in the planes; unlike pitches: shifted toward the shallower
             ///< too
  kBacked,   ///< on the line, its top bevelled to both planes
};

/// Plumb, or square to the common rafters; hips follow the planes' own cuts.
enum class TailEnd : std::uint8_t { kPlumb, kSquare };

/// kGable: two planes to a ridge of its own, which runs level into the roof; two valleys. kShed: one plane, flatter
/// than the roof's, up to a header in it.
enum class DormerKind : std::uint8_t { kGable, kShed };

/// A dormer over an eave. Its walls stand on trimmers, the common rafters beside the opening that it makes in the roof.
struct Dormer {
  DormerKind kind = DormerKind::kGable;
  int side = 0;                           ///< the eave that it stands over
  Length centre{};                        ///< of it, along that side's wall from its corner
  Length width = Length::feet(6);         ///< outside of its side walls
  Length face{};                          ///< level, outside of its face from the side's wall line; 0: flush with it
  Length plate_height = Length::feet(4);  ///< top of its plates over the top of the side's
  Slope pitch = Slope::in_12(Length::inches(8));
  Length overhang = Length::inches(6);  ///< level; of its eaves, and of a gable's front
  bool doubled = true;                  ///< trimmers in pairs (common practice)
  friend bool operator==(const Dormer&, const Dormer&) = default;
};

struct RoofPlan {
  std::vector<PlanSide> sides;
  std::vector<Dormer> dormers;
  /// Which of seat and heel is given for all sides. With one heel hips stand over the building's corners.
  HeelBy heel_by = HeelBy::kHeel;
  Length seat = Length::inches(7, 2);
  Length heel = Length::inches(23, 4);
  HipTop hip_top = HipTop::kDropped;
  TailEnd tail = TailEnd::kPlumb;
  Length spacing = Length::feet(2);                      ///< of commons and jacks, middle to middle along the wall
  Section common{Length::inches(4), Length::inches(6)};  ///< commons and jacks
  Section hip{Length::inches(4), Length::inches(8)};
  Section valley{Length::inches(4), Length::inches(8)};
  Section ridge{Length::inches(2), Length::inches(10)};       ///< board or beam; its top is flush with the rafters
  Section header{Length::inches(4), Length::inches(10)};      ///< between a dormer's trimmers
  Section dormer_post{Length::inches(4), Length::inches(4)};  ///< corner posts and plates of dormers
  Feet feet = Feet::kTied;
  double load_psf = 30;  ///< lb per square foot of level plan, dead and snow; for the thrust alone
  friend bool operator==(const RoofPlan&, const RoofPlan&) = default;
};

/// Plans to begin with. Lengths are those of the walls; all sides eaves of one pitch at one plate height.
[[nodiscard]] RoofPlan rectangle_roof(Length along, Length across, Slope pitch);
/// A main part along X with a wing toward +Y at its right end: `wing` wide, out to `out` past the main part.
[[nodiscard]] RoofPlan l_roof(Length along, Length across, Length wing, Length out, Slope pitch);
/// …with the wing in the middle.
[[nodiscard]] RoofPlan t_roof(Length along, Length across, Length wing, Length out, Slope pitch);
/// …with a wing at either end.
[[nodiscard]] RoofPlan u_roof(Length along, Length across, Length wing, Length out, Slope pitch);
/// A rectangle with a bay in the middle of its lower side: `bay` wide at the wall, half of an octagon's sides cut it.
[[nodiscard]] RoofPlan bay_roof(Length along, Length across, Length bay, Length out, Slope pitch);

/// A side as it is called: A, B … Z, AA, AB …
[[nodiscard]] std::string side_letters(int side);
/// A dormer in marks: DM1, DM2 … (no side is called so: plans have fewer).
[[nodiscard]] std::string dormer_letters(int dormer);

/// As files have it.
void describe(Fields&, RoofPlan&);

/// Errors by the path of the field that gives way ("sides.2.pitch", counted from 0): kMissing / kTooLarge ("sides"),
/// kTooSmall / kTooLarge / kSteep (any measure, `limit` where it is a length), kConflict ("sides.2.corner": its side
/// and the one before run along each other; "outline": the sides run clockwise), kImpossible ("outline": it crosses
/// itself). A dormer's: kConflict ("dormers.0.side": it is no eave of the plan), and pitch and overhang as a side's;
/// whether it has room is found where the roof is solved (dormer_shape.h).
[[nodiscard]] Result<void> check_roof_plan(const RoofPlan& plan);

}  // namespace bentbook
