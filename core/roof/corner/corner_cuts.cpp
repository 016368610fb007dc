#include "roof/corner/corner_cuts.h"

#include <algorithm>

namespace bentbook {
namespace {

/// A plane through the origin whose waste lies where the world's normal points.
CutPlane turned(const Placement& at, Vec3 normal) { return {unit(to_local_direction(at, normal)), 0}; }

/// …or, of a mitre, past end B.
CutPlane mitred(const Placement& at, Vec3 normal) {
  const CutPlane plane = turned(at, normal);
  return plane.normal.x < 0 ? CutPlane{-1.0 * plane.normal, 0} : plane;
}

void add_roof_cuts(FixedList<CornerCut, 16>& out, const CornerInput& input, const RoofCorner& corner,
                   const CornerPlanes& p, int roof) {
  const auto i = static_cast<std::size_t>(roof), j = static_cast<std::size_t>(1 - roof);
  const Section timber{input.jack_breadth, input.jack_depth};
  const Vec3 past_hip = p.toward(1 - roof), up{0, 0, 1};
  if (corner.roofs[i].meets) out.add({CornerCutName::kJack, roof, turned(rafter_axes(p, roof), past_hip), timber});
  const Placement square = eave_axes(p, roof, true), plumb = eave_axes(p, roof, false);
  out.add({CornerCutName::kPurlinSquare, roof, turned(square, past_hip), timber});
  out.add({CornerCutName::kPurlinPlumb, roof, turned(plumb, past_hip), timber});
  const auto down = [&](std::size_t r) { return -1.0 * (p.cos[r] * p.inward[r] + p.sin[r] * up); };
  out.add({CornerCutName::kFasciaSquare, roof, mitred(square, mitre_normal(down(i), down(j))), {{}, {}}});
  out.add({CornerCutName::kFasciaPlumb, roof, mitred(plumb, mitre_normal(p.inward[j], p.inward[i])), {{}, {}}});
  out.add({CornerCutName::kBoards, roof, mitred(square, mitre_normal(p.normal[i], p.normal[j])), {{}, {}}});
}

}  // namespace

FixedList<CornerCut, 16> corner_cuts(const CornerInput& input, const RoofCorner& corner) {
  const CornerPlanes planes = corner_planes(input);
  const Section hip{input.hip_breadth, input.hip_depth};
  FixedList<CornerCut, 16> out;
  for (const Cheek& cheek : peak_cheeks(input, planes))
    out.add({CornerCutName::kPeakCheek, cheek.roof, turned(hip_axes(planes), cheek.plane.normal), hip});
  for (const Cheek& cheek : foot_cheeks(input, planes))
    out.add({CornerCutName::kFootCheek, cheek.roof, turned(hip_axes(planes), cheek.plane.normal), hip});
  for (const int roof : {0, 1}) add_roof_cuts(out, input, corner, planes, roof);
  return out;
}

Face first_face(CornerCutName name) {
  return name == CornerCutName::kFasciaSquare || name == CornerCutName::kFasciaPlumb ? Face::kNear : Face::kTop;
}

CutLine cut_line(const CornerCut& cut, Face face) {
  const BladeAngles blade = blade_angles(cut.plane, face);
  CutLine line;
  line.off_square = Angle::from_radians(libm::fabs(blade.swing));
  line.from_length = Angle::degrees(90) - line.off_square;
  line.tilt = Angle::from_radians(libm::fabs(blade.tilt));
  return line;
}

OnSquare on_square(Angle off_square) {
  const bool along_12 = off_square > Angle::degrees(45);
  const Angle small = along_12 ? Angle::degrees(90) - off_square : off_square;
  return {Length::from_inches(12 * libm::tan(small.rad())), along_12};
}

std::array<Length, 4> arris_marks(const CornerCut& cut) {
  const double y = cut.section.breadth.in() / 2, z = cut.section.depth.in() / 2;
  const Vec3 n = cut.plane.normal;
  const std::array<Vec2, 4> arrises{Vec2{y, z}, {-y, z}, {-y, -z}, {y, -z}};
  std::array<double, 4> x{};
  double longest = -1e300;
  for (std::size_t i = 0; i < 4; ++i) {
    x[i] = -(n.y * arrises[i].x + n.z * arrises[i].y) / libm::fabs(n.x);
    longest = std::max(longest, x[i]);
  }
  std::array<Length, 4> out;
  for (std::size_t i = 0; i < 4; ++i) out[i] = Length::from_inches(longest - x[i]);
  return out;
}

}  // namespace bentbook
