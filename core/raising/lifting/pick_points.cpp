#include "raising/lifting/pick_points.h"

#include <algorithm>

#include "raising/limits.h"

namespace bentbook {
namespace {

constexpr double kShares[] = {0.5, 0.45, 0.4, 0.35, 0.3, 0.25, 0.2, 0.15, 0.1};
constexpr double kLeastSquare = 6;  ///< four points: inches to either side

const Timber& timber_of(const PickPoints& p, int t) { return p.frame->timbers[static_cast<std::size_t>(t)]; }

/// On a timber's upper face (as it hangs), at a station.
PickSpot own_spot(const PickPoints& p, double station) {
  const Timber& timber = timber_of(p, p.timbers[0]);
  PickSpot spot;
  spot.timber = p.timbers[0];
  spot.station = station;
  const double top = p.up.z >= 0 ? timber.sides.z_hi : timber.sides.z_lo;
  spot.point = {station, p.cg.y, p.upright ? p.cg.z : top};
  spot.world = to_world(timber.at, spot.point);
  return spot;
}

/// What is topmost at `along` from the centre of gravity; `side`: on that side of it only (0: either).
std::optional<PickSpot> top_spot(const PickPoints& p, double along, int side) {
  std::optional<PickSpot> best;
  double best_off = 0;
  for (const int t : p.timbers) {
    const Timber& timber = timber_of(p, t);
    if (libm::fabs(timber.at.x.z) >= limits::kUprightSine) continue;
    const double step = dot(timber.at.x, p.along);
    const double first = dot(timber.at.origin - p.cg, p.along);
    if (libm::fabs(step) < 0.2) continue;  // nearly square to the way along: points cannot be set apart on it
    const double station = (along - first) / step;
    if (!(station >= 0 && station <= timber.length)) continue;
    const double z = timber.at.z.z >= 0 ? timber.sides.z_hi : timber.sides.z_lo;
    const Vec3 world = to_world(timber.at, {station, (timber.sides.y_lo + timber.sides.y_hi) / 2, z});
    const double off = dot(world - p.cg, p.square);
    if (side != 0 && off * side < kLeastSquare) continue;
    const bool higher = !best || world.z > best->point.z + 1e-6;
    const bool nearer = best && world.z > best->point.z - 1e-6 && libm::fabs(off) < best_off - 1e-6;
    if (!higher && !nearer) continue;
    best = PickSpot{t, station, world, world};
    best_off = libm::fabs(off);
  }
  return best;
}

std::optional<PickWay> together_at(const PickPoints& p, double half) {
  PickWay way;
  for (const int end : {-1, 1})
    for (const int side : {-1, 1}) {
      if (!p.four && side > 0) continue;
      const auto spot = top_spot(p, end * half, p.four ? side : 0);
      if (!spot) return std::nullopt;
      way.spots.push_back(*spot);
    }
  return way;
}

/// The longer way of what hangs, in plan, and how far it goes to either side.
void plan_axes(PickPoints& p) {
  double xx = 0, xy = 0, yy = 0;
  std::vector<Vec3> ends;
  for (const int t : p.timbers) {
    const Timber& timber = timber_of(p, t);
    for (const double x : {0.0, timber.length}) ends.push_back(to_world(timber.at, {x, 0, 0}) - p.cg);
  }
  for (const Vec3 e : ends) xx += e.x * e.x, xy += e.x * e.y, yy += e.y * e.y;
  const double angle = libm::atan2(2 * xy, xx - yy) / 2;
  p.along = {libm::cos(angle), libm::sin(angle), 0};
  p.square = {-p.along.y, p.along.x, 0};
  double less = 0, more = 0, left = 0, right = 0;
  for (const Vec3 e : ends) {
    less = std::min(less, dot(e, p.along)), more = std::max(more, dot(e, p.along));
    left = std::min(left, dot(e, p.square)), right = std::max(right, dot(e, p.square));
  }
  p.reach = std::min(-less, more);
  p.four = std::min(-left, right) > limits::kFlat;
}

void one_timber(PickPoints& p, Vec3 cg_world, Attitude attitude) {
  const Timber& timber = timber_of(p, p.timbers[0]);
  p.cg = to_local(timber.at, cg_world);
  const double rise = std::clamp(timber.at.x.z, -1.0, 1.0);
  p.upright = attitude == Attitude::kAsPlaced && libm::fabs(rise) >= limits::kUprightSine;
  p.up = attitude == Attitude::kAsPlaced ? to_local_direction(timber.at, {0, 0, 1}) : Vec3{0, 0, 1};
  if (!timber.placed) p.up = {0, 0, 1}, p.upright = false;
  p.hang_degrees = libm::asin(std::clamp(p.up.x, -1.0, 1.0)) / libm::kDegree;
  p.reach = std::min(p.cg.x, timber.length - p.cg.x);
  if (!p.upright) return;
  // Plumb: the point straight over the centre of gravity, well above it.
  p.up = {p.up.x > 0 ? 1.0 : -1.0, 0, 0};
  p.hang_degrees = p.up.x * 90;
  const double end = p.up.x > 0 ? timber.length : 0;
  const double station = p.cg.x + 0.7 * (end - p.cg.x);
  p.ways.push_back({{own_spot(p, station)}});
  p.clear = libm::fabs(end - station) + 12;
}

}  // namespace

std::optional<PickWay> PickPoints::way_at(double half) const {
  if (timbers.size() > 1) return together_at(*this, half);
  if (upright || half > reach) return std::nullopt;
  return PickWay{{own_spot(*this, cg.x - half), own_spot(*this, cg.x + half)}};
}

PickPoints pick_points(const Frame& frame, std::span<const int> timbers, Vec3 cg_world, Attitude attitude) {
  PickPoints p;
  p.frame = &frame;
  p.timbers.assign(timbers.begin(), timbers.end());
  if (p.timbers.empty()) return p;
  p.cg = cg_world;
  p.up = {0, 0, 1};
  if (p.timbers.size() == 1)
    one_timber(p, cg_world, attitude);
  else
    plan_axes(p);
  if (p.upright) return p;
  for (const double share : kShares) {
    auto way = p.way_at(share * p.reach);
    if (way) p.ways.push_back(*std::move(way));
  }
  if (!p.ways.empty() || !p.four) return p;
  // Nothing to grip at four corners: two points.
  p.four = false;
  for (const double share : kShares)
    if (auto way = p.way_at(share * p.reach)) p.ways.push_back(*std::move(way));
  return p;
}

}  // namespace bentbook
