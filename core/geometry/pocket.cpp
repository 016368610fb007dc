#include "geometry/pocket.h"

namespace bentbook {
namespace {

/// Outline coordinates and sweep back into timber axes.
Vec3 lift(Axis sweep, Vec2 p, double along) {
  switch (sweep) {
    case Axis::kX:
      return {along, p.x, p.y};
    case Axis::kY:
      return {p.x, along, p.y};
    default:
      return {p.x, p.y, along};
  }
}

/// Of a hole of radius 1. Area of the regular polygon: n/2 · R² · sin(2π/n) = π r².
FixedList<Vec2, kHoleSides> round_corners() {
  constexpr double kTurn = 2 * libm::kPi / kHoleSides;
  const double radius = libm::sqrt(kTurn / libm::sin(kTurn));
  FixedList<Vec2, kHoleSides> corners;
  for (int i = 0; i < kHoleSides; ++i) corners.add({radius * libm::cos(kTurn * i), radius * libm::sin(kTurn * i)});
  return corners;
}

}  // namespace

FixedList<Vec2, kHoleSides> corners_of(const Pocket& pocket) {
  FixedList<Vec2, kHoleSides> corners;
  if (pocket.radius <= 0) {
    for (const Vec2& p : pocket.outline) corners.add(p);
    return corners;
  }
  static const FixedList<Vec2, kHoleSides> kRound = round_corners();
  for (const Vec2& p : kRound)
    corners.add({pocket.outline[0].x + pocket.radius * p.x, pocket.outline[0].y + pocket.radius * p.y});
  return corners;
}

FixedList<Plane, kHoleSides + 2> planes_of(const Pocket& pocket) {
  FixedList<Plane, kHoleSides + 2> planes;
  const auto corners = corners_of(pocket);
  for (int i = 0; i < corners.count; ++i) {
    const Vec2 a = corners[i], b = corners[i + 1 == corners.count ? 0 : i + 1];
    const double dx = b.x - a.x, dy = b.y - a.y;
    const double length = libm::sqrt(dx * dx + dy * dy);
    const Vec2 out{dy / length, -dx / length};
    planes.add({lift(pocket.sweep, out, 0), out.x * a.x + out.y * a.y});
  }
  planes.add({lift(pocket.sweep, {}, 1), pocket.to});
  planes.add({lift(pocket.sweep, {}, -1), -pocket.from});
  return planes;
}

Box bounds_of(const Pocket& pocket) {
  Vec2 lo = pocket.outline[0], hi = lo;
  if (pocket.radius > 0) {
    const double reach = corners_of(pocket)[0].x - lo.x;  // sides come in fours: corners on both axes
    lo = {lo.x - reach, lo.y - reach};
    hi = {hi.x + reach, hi.y + reach};
  }
  for (const Vec2& p : pocket.outline) {
    lo = {p.x < lo.x ? p.x : lo.x, p.y < lo.y ? p.y : lo.y};
    hi = {p.x > hi.x ? p.x : hi.x, p.y > hi.y ? p.y : hi.y};
  }
  return {lift(pocket.sweep, lo, pocket.from), lift(pocket.sweep, hi, pocket.to)};
}

Pocket box_pocket(Axis sweep, Vec3 lo, Vec3 hi) {
  Pocket p;
  p.sweep = sweep;
  const Vec2 a = sweep == Axis::kX ? Vec2{lo.y, lo.z} : sweep == Axis::kY ? Vec2{lo.x, lo.z} : Vec2{lo.x, lo.y};
  const Vec2 b = sweep == Axis::kX ? Vec2{hi.y, hi.z} : sweep == Axis::kY ? Vec2{hi.x, hi.z} : Vec2{hi.x, hi.y};
  p.from = sweep == Axis::kX ? lo.x : sweep == Axis::kY ? lo.y : lo.z;
  p.to = sweep == Axis::kX ? hi.x : sweep == Axis::kY ? hi.y : hi.z;
  p.outline.add(a);
  p.outline.add({b.x, a.y});
  p.outline.add(b);
  p.outline.add({a.x, b.y});
  return p;
}

Pocket hole_pocket(Axis sweep, Vec2 centre, double diameter, double from, double to) {
  Pocket p;
  p.sweep = sweep;
  p.from = from;
  p.to = to;
  p.radius = diameter / 2;
  p.outline.add(centre);
  return p;
}

}  // namespace bentbook
