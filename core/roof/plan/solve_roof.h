#pragma once
/// A roof of any plan, solved whole: its planes and lines, every timber in them, where they touch, and what there is to
/// say about it.

#include <cstdint>
#include <vector>

#include "roof/plan/dormer_shape.h"
#include "roof/plan/roof_timber.h"

namespace bentbook {

enum class RoofFindingId : std::uint8_t {
  kNotEngineered,  ///< sections are as given: always said
  kFasciaApart,    ///< the tails of `a` and `b` end at unlike heights; `value`: how much higher b's is. Two cures:
                   ///< b's overhang made `overhang`, or its plate raised to `plate` (common practice)
  kThrust,  ///< nothing ties the feet of a plain gable roof; `value`: lb a rafter pair. Source: SOURCES.md, "thrust"
  kThrustUnknown,  ///< …of one with hips or valleys: what pushes out at its corners is not known, an engineer must say
  kNoSeat,         ///< `timber` stands clear of its plate by `value` inches, packing or a deeper timber
  kNotch,  ///< the bird's mouth takes `value` of the depth of `timber`, past a quarter; of rafters alike the first
  kUnlikePlates,  ///< `timber` crosses a corner of plates that differ by `value`; it is notched over the one met first
  kShallow,       ///< what frames into `timber` hangs `value` inches below it
  kNoBearing,     ///< `timber` touches nothing at its upper end: it stands in a corner of the lines, move it
  kClash,         ///< `timber` and `other` take the same room; `value`: in³
  kDormer,        ///< what carries `dormer` is to be sized by an engineer or the code: said of each
};
struct RoofFinding {
  RoofFindingId id = RoofFindingId::kNotEngineered;
  int a = -1, b = -1;           ///< sides
  int timber = -1, other = -1;  ///< in RoofSolution::timbers
  int dormer = -1;              ///< kDormer
  double value = 0;
  double overhang = 0, plate = 0;  ///< kFasciaApart; an overhang below 0 is none
};

struct RoofSolution {
  RoofShape shape;
  std::vector<DormerShape> dormers;   ///< by dormer of the plan
  std::vector<RoofTimber> timbers;    ///< ridges, hips, valleys, then by side, then what dormers have of their own
  std::vector<RoofContact> contacts;  ///< where end cuts bear
  std::vector<RoofFinding> findings;
};

/// From where commons and jacks are spaced along their walls.
enum class SpacedFrom : std::uint8_t {
  kFirstCorner,  ///< of the first of the sides that run one way
  kMiddle,       ///< of each wall: both halves of a plain hip roof mirror each other
};
/// Errors as solve_shape and solve_dormers.
[[nodiscard]] Result<RoofSolution> solve_roof(const RoofPlan& plan, SpacedFrom spaced = SpacedFrom::kFirstCorner);

}  // namespace bentbook
