#include "roof/corner/corner_planes.h"

namespace bentbook {
namespace {

constexpr Vec3 kUp{0, 0, 1};

Placement axes(Vec3 x, Vec3 z) { return {{}, x, cross(z, x), z}; }

}  // namespace

Vec3 CornerPlanes::toward(int roof) const {
  const Vec3 left = cross(kUp, level);  // over to the other roof, of a hip
  return ((roof == 0) == (kind == CornerKind::kHip) ? -1.0 : 1.0) * left;
}

double CornerPlanes::fall(int roof) const {
  const auto r = static_cast<std::size_t>(roof);
  const double up = tan[r] * dot(inward[r], toward(roof));
  return kind == CornerKind::kHip ? -up : up;
}

CornerPlanes corner_planes(const CornerInput& input) {
  const double eaves = input.eave_angle.rad(), sin = libm::sin(eaves), cos = libm::cos(eaves);
  CornerPlanes p;
  p.kind = input.kind;
  p.eave = {Vec3{1, 0, 0}, Vec3{cos, sin, 0}};
  p.inward = {Vec3{0, 1, 0}, Vec3{sin, -cos, 0}};
  for (const std::size_t i : {0U, 1U}) {
    const Slope& pitch = i == 0 ? input.pitch : input.pitch_other;
    p.tan[i] = pitch.tan(), p.cos[i] = pitch.cos(), p.sin[i] = pitch.sin();
    p.normal[i] = p.cos[i] * kUp - p.sin[i] * p.inward[i];
  }
  p.hip = unit(cross(p.normal[0], p.normal[1]));
  if (p.hip.z < 0) p.hip = -1.0 * p.hip;
  p.level = unit({p.hip.x, p.hip.y, 0});
  return p;
}

Placement hip_axes(const CornerPlanes& planes) { return axes(planes.hip, cross(planes.hip, cross(kUp, planes.level))); }

Placement rafter_axes(const CornerPlanes& planes, int roof) {
  const auto r = static_cast<std::size_t>(roof);
  return axes(planes.cos[r] * planes.inward[r] + planes.sin[r] * kUp, planes.normal[r]);
}

Placement eave_axes(const CornerPlanes& planes, int roof, bool square_to_roof) {
  const auto r = static_cast<std::size_t>(roof);
  const double to_hip = planes.kind == CornerKind::kHip ? -1 : 1;
  return axes(to_hip * planes.eave[r], square_to_roof ? planes.normal[r] : kUp);
}

Vec3 mitre_normal(Vec3 own, Vec3 other) { return unit(own - other); }

}  // namespace bentbook
