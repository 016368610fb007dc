#pragma once
/// The cuts at a corner, each one plane in its timber's own axes (corner_planes.h), from which everything that a hand
/// or a saw needs is read: the line on each face, its marks from the long point, the numbers on a framing square, and
/// (cut/setting.h, pass_on) swing and tilt. Source: SOURCES.md, "roof corners", "plane geometry".

#include <array>

#include "cut/saw.h"
#include "roof/corner/corner_solve.h"

namespace bentbook {

enum class CornerCutName : std::uint8_t {
  kPeakCheek,     ///< of the hip: against the ridge, the last common, of a valley the other ridge
  kFootCheek,     ///< of the hip: over the plates' corner, and the tail along the fascias
  kJack,          ///< of a jack, against the hip
  kPurlinSquare,  ///< of a purlin whose depth stands square to the roof, against the hip
  kPurlinPlumb,   ///< …and plumb
  kFasciaSquare,  ///< of a fascia on square tails, mitred with the other roof's
  kFasciaPlumb,   ///< …on plumb tails
  kBoards,        ///< of sheathing, mitred over the hip
};

struct CornerCut {
  CornerCutName name = CornerCutName::kJack;
  int roof = 0;
  CutPlane plane;   ///< through the origin
  Section section;  ///< of the timber; boards and fascias: 0
};

/// All of them, those of the hip first; of a roof that rises away no jack. `corner`: solve_corner(input).
[[nodiscard]] FixedList<CornerCut, 16> corner_cuts(const CornerInput& input, const RoofCorner& corner);

/// The face on which the cut is laid out first: the top, of a fascia its broad side.
[[nodiscard]] Face first_face(CornerCutName name);

/// A cut's line on a face.
struct CutLine {
  Angle off_square;   ///< size
  Angle from_length;  ///< what makes 90° with it
  Angle tilt;         ///< size: of a blade that rides on that face
};
[[nodiscard]] CutLine cut_line(const CornerCut& cut, Face face);

/// Two numbers on a framing square that give a line: 12 on one leg and `number`, which is no more, on the other.
struct OnSquare {
  Length number;
  bool along_12 = false;  ///< the line runs along the leg that holds 12, else along the other
};
[[nodiscard]] OnSquare on_square(Angle off_square);

/// How far behind the cut's longest point its plane crosses each arris, along the timber: between top and +y side, top
/// and −y side, bottom and −y side, bottom and +y side.
[[nodiscard]] std::array<Length, 4> arris_marks(const CornerCut& cut);

}  // namespace bentbook
