#pragma once
/// Layout marks: every line that is drawn on a timber's four faces before it is cut, derived from its cut planes and
/// pockets alone. Timber axes, inches and radians; stations run from end A's tip (x = 0), wherever on the section the
/// tip lies.
///
/// Arrises count as the faces do, clockwise seen from end A: arris 1 between faces 4 and 1, arris 2 between 1 and 2,
/// arris 3 between 2 and 3, arris 4 between 3 and 4.

#include <array>
#include <vector>

#include "frame/timber.h"

namespace bentbook {

/// Axis along which a face is crossed and the face's place on the other one.
struct FaceFrame {
  bool flat = true;       ///< top and bottom: across is y; near and far: across is z
  double lo = 0, hi = 0;  ///< the face's own width, in its across coordinate
  double at = 0;          ///< where the face lies (z of top and bottom, y of near and far)
  double outward = 1;     ///< sign of its normal
  double thickness = 0;   ///< of the wood behind it
  /// Station and across coordinate to a point of the timber.
  [[nodiscard]] Vec3 point(Vec2 p) const { return flat ? Vec3{p.x, p.y, at} : Vec3{p.x, at, p.y}; }
  /// How deep a point lies under the face.
  [[nodiscard]] double under(Vec3 p) const { return outward * (at - (flat ? p.z : p.y)); }
};
inline constexpr Face kFaces[] = {Face::kTop, Face::kNear, Face::kBottom, Face::kFar};
[[nodiscard]] FaceFrame frame_of(Face face, const Sides& sides);

/// The arris's y and z. number: 1 to 4.
[[nodiscard]] Vec2 arris_at(int number, const Sides& sides);

/// On which side of its line the wood is waste; that side is marked X and the kerf lies in it.
enum class Waste : std::uint8_t { kTowardA, kTowardB, kTowardLow, kTowardHigh };

/// A pencil line on a face. x: station; y: across coordinate of the face (FaceFrame).
struct LineMark {
  Face face = Face::kTop;
  Vec2 a, b;              ///< a.y <= b.y; along the timber: a.x < b.x
  double off_square = 0;  ///< off the line square across the face; positive where it runs toward end B as y grows
  Waste waste = Waste::kTowardA;
};

/// One end cut as it is laid out.
struct CutMarks {
  int cut = 0;  ///< index in Timber::cuts
  Waste waste = Waste::kTowardA;
  /// Station on each arris; meaningful where `on_wood`: elsewhere another cut or a tenon's shoulder takes
  /// that arris away first.
  std::array<double, 4> stations{};
  std::array<bool, 4> on_wood{};
  /// Face 1's first; what the other cuts leave of them. They may run past the tips, onto the stock: there a tenon's
  /// shoulder takes the wood.
  std::vector<LineMark> lines;
};

/// Where a pocket breaks through a face: its outline there, and the lines that are drawn (edges along the face's own
/// boundary or an end cut are none).
struct RecessOnFace {
  Face face = Face::kTop;
  std::vector<Vec2> outline;  ///< station and across, counterclockwise in them
  std::vector<LineMark> lines;
  double depth = 0;  ///< from the real face to the pocket's deepest point
  double under = 0;  ///< how deep under the real face the lines lie: on the floor of a housing
  bool through = false;
};

/// One pocket as it is laid out: its outline on the face square to its sweep (or on the end), and how deep it goes.
/// These say all of the pocket.
struct RecessMarks {
  int pocket = 0;       ///< index in Timber::pockets
  int feature = -1;     ///< index in Timber::features
  bool on_end = false;  ///< swept along the timber: the outline is drawn on the end grain, y and z
  Face face = Face::kTop;
  std::vector<Vec2> outline;   ///< station and across from the face's low arris; on_end: from arris 3 along y and z
  double diameter = 0;         ///< of a round hole, `outline` has its centre alone
  double start = 0, stop = 0;  ///< under the face; on_end: stations. start below 0: open at the face
  std::vector<RecessOnFace> faces;
};

struct LayoutMarks {
  std::vector<CutMarks> cuts;
  std::vector<RecessMarks> recesses;  ///< in the order of Timber::pockets
};
[[nodiscard]] LayoutMarks layout_marks(const Timber& timber);

/// The wood that is left of one face after the end cuts: station and across, counterclockwise in them.
[[nodiscard]] std::vector<Vec2> kept_face(const Timber& timber, Face face);

/// What the end cuts take off one face, up to a square line at either tip: one polygon for each cut that takes
/// something.
[[nodiscard]] std::vector<std::vector<Vec2>> waste_on_face(const Timber& timber, Face face);
/// A polygon of station and across, clipped to a stretch of the timber.
[[nodiscard]] std::vector<Vec2> clipped_to(const std::vector<Vec2>& polygon, double from, double to);

/// Stations between which an arris is left after the end cuts and what begins at an end (shoulders of tenons and
/// scarfs); from >= to: it is cut away.
struct Reach {
  double from = 0, to = 0;
};
[[nodiscard]] Reach arris_reach(const Timber& timber, int number);

/// What a tape finds when the timber is cut right.
struct CheckMeasures {
  double overall = 0;               ///< tip to tip, square to the timber's length
  std::array<double, 4> arrises{};  ///< along each arris, cut to cut or shoulder to shoulder
  std::array<double, 4> rising{};   ///< by face: from end A at the low arris to end B at the high one
  std::array<double, 4> falling{};  ///< by face: from end A at the high arris to end B at the low one
};
[[nodiscard]] CheckMeasures check_measures(const Timber& timber);

}  // namespace bentbook
