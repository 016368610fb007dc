#pragma once
/// One timber of a roof of any plan, cut. Axes of a timber as everywhere: x from end A (its lower end) to end B, y
/// across the breadth, z up through the depth, origin on the axis at end A's tip; inches.

#include <cstdint>
#include <string>
#include <vector>

#include "cut/saw.h"
#include "geometry/cut_plane.h"
#include "geometry/solid.h"
#include "roof/plan/roof_shape.h"

namespace bentbook {

enum class RoofTimberKind : std::uint8_t {
  kRidge,
  kHip,
  kValley,
  kCommon,      ///< plate to ridge
  kHipJack,     ///< plate to hip
  kValleyJack,  ///< valley to ridge
  kCripple,     ///< valley to hip
  kPurlin,      ///< along a break, where a plane goes on in another pitch
  // Where a dormer stands.
  kTrimmer,    ///< a common or jack beside its opening
  kCutCommon,  ///< a common or jack that ends at a header
  kHeader,     ///< level, between trimmers
  kPost,       ///< at a corner of its face, on a trimmer
  kPlate,      ///< on top of its walls
};
inline constexpr int kRoofTimberKinds = 13;

enum class RoofCutName : std::uint8_t {
  kPlumb,   ///< square across the timber
  kCheek,   ///< upright, at an angle to the timber: a compound cut
  kTail,    ///< along the fascia
  kOnRoof,  ///< along the roof under a dormer's post or plate
};
struct RoofEndCut {
  bool at_b = false;
  RoofCutName name = RoofCutName::kPlumb;
  CutPlane plane;    ///< timber axes
  int against = -1;  ///< the timber that it fits to, −1: none
};

/// A notch over the plate, as if the plate ran square across: the heel stands plumb where the timber first meets the
/// plate's outer face.
struct RoofSeat {
  bool cut = false;
  Pocket pocket;
  double along = 0;   ///< of the notch's corner, from end A's tip along x
  double length = 0;  ///< level
  double depth = 0;   ///< square to the timber
  double heel = 0;    ///< plumb, plate to the top of the timber at the corner
};

struct RoofTimber {
  RoofTimberKind kind = RoofTimberKind::kCommon;
  std::string mark;
  Section section;
  Placement at;
  double length = 0;              ///< tip to tip: what the stock must hold
  std::vector<RoofEndCut> cuts;   ///< end A's first
  std::vector<CutPlane> backing;  ///< along the top of a backed hip; normals square to x
  RoofSeat seat;
  int left = -1, right = -1;   ///< planes beside it seen from A to B; a rafter in a plane has it in both
  int line = -1;               ///< in RoofShape::lines; commons, jacks, headers, a dormer's posts and plates: −1
  int dormer = -1;             ///< whose timber it is; trimmers and what a dormer cuts are the roof's
  double slope = 0;            ///< radians
  double line_length = 0;      ///< along the slope, from the wall line (or foot's line) to the theoretical line above
  double run = 0;              ///< the same, level
  double shortening = 0;       ///< taken off the line length at the top, in the middle of the timber
  double drop = 0, shift = 0;  ///< a hip's, plumb; and level toward its left
};

/// Blank, end cuts, backing and notch in timber axes.
[[nodiscard]] Solid solid_of(const RoofTimber& timber);

/// Notches a timber over a plate: from the corner level to where the seat runs out of the bottom edge, and plumb down
/// to where the heel does. World points in the timber's middle plane.
void cut_seat(RoofTimber& timber, Vec3 corner, Vec3 seat_end, Vec3 heel_end);

/// A patch over which two timbers touch. World axes.
struct RoofContact {
  int member = -1, receiver = -1;
  bool at_b = false;          ///< which end of the member
  Vec3 normal;                ///< out of the receiver
  std::vector<Vec3> corners;  ///< counterclockwise seen from the member's side
};
/// Where `member`'s cuts that fit to another timber meet its wood.
void add_contacts(const std::vector<RoofTimber>& timbers, int member, std::vector<RoofContact>& contacts);

/// Sets the length and moves the origin to end A's tip. False where the cuts leave no wood, or none along the top for
/// `least_top` inches.
[[nodiscard]] bool settle_timber(RoofTimber& timber, double least_top);

}  // namespace bentbook
