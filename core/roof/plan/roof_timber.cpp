#include "roof/plan/roof_timber.h"

#include <algorithm>
#include <utility>

#include "geometry/cell.h"
#include "numeric/index.h"

namespace bentbook {
namespace {

Plane plane_in_world(const Placement& at, const Plane& plane) {
  const Vec3 normal = to_world_direction(at, plane.normal);
  return {normal, plane.offset + dot(normal, at.origin)};
}

/// The body as half-spaces, without the notch.
std::vector<Plane> sides_of(const RoofTimber& t) {
  const double y = t.section.breadth.in() / 2, z = t.section.depth.in() / 2;
  std::vector<Plane> planes{{{-1, 0, 0}, 0}, {{1, 0, 0}, t.length}, {{0, -1, 0}, y},
                            {{0, 1, 0}, y},  {{0, 0, -1}, z},       {{0, 0, 1}, z}};
  planes.reserve(planes.size() + t.cuts.size() + t.backing.size());
  for (const RoofEndCut& cut : t.cuts) planes.push_back({cut.plane.normal, cut.plane.offset});
  for (const CutPlane& bevel : t.backing) planes.push_back({bevel.normal, bevel.offset});
  return planes;
}

/// The body's face on one of its end cuts, in world axes, counterclockwise seen from outside.
std::vector<Vec3> face_on(const RoofTimber& timber, const std::vector<Plane>& sides, const CutPlane& cut) {
  const Vec3 n = cut.normal;
  const Vec3 u = unit(libm::fabs(n.x) < 0.9 ? cross({1, 0, 0}, n) : cross({0, 1, 0}, n)), v = cross(n, u);
  const double reach = timber.length + timber.section.breadth.in() + timber.section.depth.in();
  const Vec3 middle = Vec3{timber.length / 2, 0, 0};
  const Vec3 on = middle + (cut.offset - dot(n, middle)) * n;
  std::vector<Vec3> face{on + reach * (-1 * u - v), on + reach * (u - v), on + reach * (u + v), on + reach * (v - u)};
  std::vector<Vec3> outside, inside;
  for (const Plane& side : sides) {
    if (dot(side.normal, n) > 1 - 1e-12) {
      if (side.offset < cut.offset - 1e-9) return {};
      continue;
    }
    split(face, side, outside, inside);
    face.swap(inside);
    if (face.size() < 3) return {};
  }
  for (Vec3& p : face) p = to_world(timber.at, p);
  return face;
}

double area_in_space(const std::vector<Vec3>& polygon) {
  Vec3 twice{};
  for (std::size_t i = 2; i < polygon.size(); ++i)
    twice = twice + cross(polygon[i - 1] - polygon[0], polygon[i] - polygon[0]);
  return norm(twice) / 2;
}

/// Where a notch takes of the patch, its largest flat part that lies clear of it.
void keep_clear_of_seat(std::vector<Vec3>& patch, const RoofTimber& timber) {
  if (!timber.seat.cut) return;
  std::vector<Vec3> inside = patch, outside, rest, largest;
  for (const Plane& local : planes_of(timber.seat.pocket)) {
    const Plane plane = plane_in_world(timber.at, local);
    split(inside, plane, outside, rest);
    inside.swap(rest);
    if (inside.size() < 3) return;
    split(patch, plane, outside, rest);
    if (outside.size() > 2 && area_in_space(outside) > area_in_space(largest)) largest = outside;
  }
  patch = std::move(largest);
}

}  // namespace

Solid solid_of(const RoofTimber& timber) {
  Solid solid;
  const double y = timber.section.breadth.in() / 2, z = timber.section.depth.in() / 2;
  solid.blank = {{0, -y, -z}, {timber.length, y, z}};
  for (const RoofEndCut& cut : timber.cuts) solid.cuts.push_back({cut.plane.normal, cut.plane.offset});
  for (const CutPlane& bevel : timber.backing) solid.cuts.push_back({bevel.normal, bevel.offset});
  if (timber.seat.cut) solid.pockets.push_back(timber.seat.pocket);
  return solid;
}

void cut_seat(RoofTimber& timber, Vec3 corner, Vec3 seat_end, Vec3 heel_end) {
  constexpr double kPastWood = 1.0, kPastEnd = 1.5;  // the notch is open there
  const double half = timber.section.breadth.in() / 2 + kPastWood;
  const Vec3 points[] = {corner, corner + kPastEnd * (heel_end - corner), corner + kPastEnd * (seat_end - corner)};
  Vec2 outline[3];
  for (int i = 0; i < 3; ++i) {
    const Vec3 local = to_local(timber.at, points[i]);
    outline[i] = {local.x, local.z};
  }
  if (area_of(outline) < 0) std::swap(outline[1], outline[2]);
  RoofSeat& seat = timber.seat;
  seat.cut = true;
  seat.pocket = {};
  seat.pocket.sweep = Axis::kY;
  seat.pocket.from = -half;
  seat.pocket.to = half;
  for (const Vec2& p : outline) seat.pocket.outline.add(p);
  seat.along = to_local(timber.at, corner).x;
  const Vec3 level = seat_end - corner;
  seat.length = libm::sqrt(level.x * level.x + level.y * level.y);
  seat.depth = seat.length * libm::fabs(timber.at.x.z);
}

void add_contacts(const std::vector<RoofTimber>& timbers, int member, std::vector<RoofContact>& contacts) {
  const RoofTimber& own = timbers[at(member)];
  const std::vector<Plane> sides = sides_of(own);
  for (const RoofEndCut& cut : own.cuts) {
    if (cut.against < 0) continue;
    const RoofTimber& other = timbers[at(cut.against)];
    std::vector<Vec3> patch = face_on(own, sides, cut.plane), outside, inside;
    const Vec3 out = to_world_direction(own.at, cut.plane.normal);
    bool touches = false;
    for (const Plane& local : sides_of(other)) {
      if (patch.size() < 3) break;
      const Plane plane = plane_in_world(other.at, local);
      if (dot(plane.normal, out) < -1 + 1e-9) {
        touches = touches || libm::fabs(above(plane, patch[0])) < 1e-6;
        continue;
      }
      split(patch, plane, outside, inside);
      patch.swap(inside);
    }
    keep_clear_of_seat(patch, own);
    keep_clear_of_seat(patch, other);
    if (!touches || patch.size() < 3 || area_in_space(patch) < 1e-3) continue;
    // Seen from the member's side the receiver's face looks at us.
    std::reverse(patch.begin(), patch.end());
    contacts.push_back({member, cut.against, cut.at_b, -1 * out, std::move(patch)});
  }
}

bool settle_timber(RoofTimber& timber, double least_top) {
  const Cell body = body_of(solid_of(timber));
  if (body.empty()) return false;
  double from = 1e300, to = -1e300, top_from = 1e300, top_to = -1e300;
  const double top = timber.section.depth.in() / 2;
  for (const Vec3& p : body.corners) {
    from = std::min(from, p.x);
    to = std::max(to, p.x);
    if (p.z < top - 1e-6 && timber.backing.empty()) continue;
    top_from = std::min(top_from, p.x);
    top_to = std::max(top_to, p.x);
  }
  if (!(top_to - top_from > least_top)) return false;
  timber.length = to - from;
  timber.at.origin = timber.at.origin + from * timber.at.x;
  for (RoofEndCut& cut : timber.cuts) cut.plane.offset -= cut.plane.normal.x * from;
  if (timber.seat.cut) {
    timber.seat.along -= from;
    for (int i = 0; i < timber.seat.pocket.outline.count; ++i) timber.seat.pocket.outline[i].x -= from;
  }
  std::stable_partition(timber.cuts.begin(), timber.cuts.end(), [](const RoofEndCut& cut) { return !cut.at_b; });
  return true;
}

}  // namespace bentbook
