#include "frame/roofs/roof_timbers.h"

#include <algorithm>
#include <utility>

#include "frame/limits.h"
#include "geometry/cell.h"
#include "numeric/index.h"
#include "roof/limits.h"

namespace bentbook {
namespace {

Plane out_of(const Placement& at, const CutPlane& plane) {
  const Vec3 normal = to_world_direction(at, plane.normal);
  return {normal, plane.offset + dot(normal, at.origin)};
}

Vec3 notch_corner(const RoofTimber& t, int i) {
  constexpr double kPastEnd = 1.5;  // as cut_seat has it
  const Vec2 corner = t.seat.pocket.outline[0], p = t.seat.pocket.outline[i];
  const Vec2 end = i == 0 ? corner : corner + (1 / kPastEnd) * (p - corner);
  return to_world(t.at, {end.x, 0, end.y});
}

/// What of a patch lies within.
std::vector<Vec3> kept_within(std::vector<Vec3> patch, std::span<const Plane> within) {
  std::vector<Vec3> outside, inside;
  for (const Plane& plane : within) {
    if (patch.size() < 3) break;
    split(patch, plane, outside, inside);
    patch.swap(inside);
  }
  return patch;
}

double area_of_patch(const std::vector<Vec3>& patch) {
  Vec3 twice{};
  for (std::size_t i = 2; i < patch.size(); ++i) twice = twice + cross(patch[i - 1] - patch[0], patch[i] - patch[0]);
  return norm(twice) / 2;
}

void add_patch(Work& work, Vec3 normal, const std::vector<Vec3>& patch) {
  ContactFace face;
  face.joint = this_joint(work);
  face.normal = normal;
  for (const Vec3& p : patch)
    if (face.corners.count < 8) face.corners.add(p);
  work.frame.contacts.push_back(face);
  ++work.frame.joints.back().contacts;
}

/// Whether only a tail is weakened by the notch of a hip or valley, and no more than it may be: such a timber crosses
/// its plates where all of its notch bears.
bool spares_tail(const RoofTimber& t) {
  if (t.line < 0 || t.section.depth.in() - t.seat.depth < limits::kLeastTail) return false;
  const Vec3 corner = notch_corner(t, 0), level = unit(Vec3{t.at.x.x, t.at.x.y, 0});
  double reach = 0;
  for (const Vec3& p : body_of(solid_of(t)).corners) reach = std::max(reach, dot(level, corner - to_world(t.at, p)));
  return reach <= limits::kFarthestTail + 1e-6;
}

void cut_notch(Work& work, const RoofTimber& t, int timber, Vec3 seat_end, Vec3 heel_end) {
  Timber& member = work.timber(timber);
  Feature f = span_feature(member, FeatureKind::kBirdsMouth, Face::kNear, t.seat.pocket, this_joint(work));
  const double a = to_local(member.at, seat_end).x, b = to_local(member.at, heel_end).x;
  const Range wood = sides_along(member, Axis::kY);
  f.from = std::min(a, b);
  f.to = std::max(a, b);
  f.across_lo = sides_along(member, Axis::kZ).lo;
  f.across_hi = f.across_lo + t.seat.depth;
  f.depth = wood.hi - wood.lo;
  add_feature(member, f, t.seat.pocket);
  const double share = t.seat.depth / (member.sides.z_hi - member.sides.z_lo);
  if (share > limits::kNotchAway && !spares_tail(t))
    warn_joint(work, timber, WarningId::kNotchShare, t.seat.along, share,
               share > limits::kNotchAtSupport ? limits::kNotchAtSupport : limits::kNotchAway);
}

}  // namespace

TimberKind frame_kind(RoofTimberKind kind) {
  switch (kind) {
    case RoofTimberKind::kRidge:
      return TimberKind::kRidgeBeam;
    case RoofTimberKind::kHip:
      return TimberKind::kHipRafter;
    case RoofTimberKind::kValley:
      return TimberKind::kValleyRafter;
    case RoofTimberKind::kCommon:
    case RoofTimberKind::kTrimmer:
      return TimberKind::kCommonRafter;
    case RoofTimberKind::kPurlin:
      return TimberKind::kPurlin;
    case RoofTimberKind::kHeader:
      return TimberKind::kHeader;
    case RoofTimberKind::kPost:
      return TimberKind::kPost;
    case RoofTimberKind::kPlate:
      return TimberKind::kPlate;
    default:
      return TimberKind::kJackRafter;
  }
}

int place_roof_timber(Work& work, const RoofTimber& t, const std::string& mark, GridPlace place, int leave_open) {
  Placing p;
  p.kind = frame_kind(t.kind);
  p.mark = mark;
  p.place = place;
  p.section = t.section;
  p.through = t.at.origin;
  p.x = t.at.x;
  p.z = t.at.z;
  p.a = 0;
  p.b = t.length;
  const int timber = place_timber(work, p);
  if (timber < 0) return -1;
  bool open = false;
  for (const RoofEndCut& cut : t.cuts) {
    if (cut.at_b && leave_open >= 0 && cut.against == leave_open) {
      open = true;
      continue;
    }
    cut_end(work, timber, cut.at_b ? End::kB : End::kA, out_of(t.at, cut.plane));
  }
  work.tip(timber).a_cut = true;
  work.tip(timber).b_cut = !open;
  return timber;
}

double seat_height(const RoofTimber& t) { return notch_corner(t, 0).z; }

bool seat_on_plate(Work& work, const RoofSeating& s) {
  const RoofTimber& t = s.rafter;
  const Timber& member = work.timber(s.timber);
  const Vec3 corner = notch_corner(t, 0);
  Vec3 seat_end = notch_corner(t, 1), heel_end = notch_corner(t, 2);
  if (seat_end.z < heel_end.z) std::swap(seat_end, heel_end);
  const Range wood = sides_along(member, Axis::kY);
  const Vec3 y = member.at.y;
  const auto quad = [&](Vec3 p, Vec3 q, Vec3 normal) {
    std::vector<Vec3> patch{p + wood.lo * y, q + wood.lo * y, q + wood.hi * y, p + wood.hi * y};
    if (dot(cross(patch[1] - patch[0], patch[2] - patch[0]), normal) < 0) std::reverse(patch.begin(), patch.end());
    return kept_within(std::move(patch), s.within);
  };
  const std::vector<Vec3> seat = quad(corner, seat_end, kZ);
  constexpr double kLeastArea = 1e-3;
  if (seat.size() < 3 || area_of_patch(seat) < kLeastArea) return false;
  Joint& joint = begin_joint(work, Meeting::kRafterPlate, JointKind::kBirdsMouth, s.timber, s.plate);
  joint.bearing = Bearing::kBearsOn;
  joint.crossing = true;
  joint.where = corner + 0.5 * (seat_end - corner);
  if (s.first) cut_notch(work, t, s.timber, seat_end, heel_end);
  add_patch(work, kZ, seat);
  const Vec3 level = unit(Vec3{t.at.x.x, t.at.x.y, 0});
  if (dot(s.outward, level) < -1 + 1e-9)
    if (const std::vector<Vec3> heel = quad(corner, heel_end, -1 * level); heel.size() > 2)
      add_patch(work, -1 * level, heel);
  keep_ways(work, {-1 * kZ, level, -1 * member.at.z, member.at.x});
  return true;
}

void join_roof_contact(Work& work, const RoofSolution& roof, const RoofContact& c, const std::vector<int>& placed) {
  const int member = placed[at(c.member)], receiver = placed[at(c.receiver)];
  if (member < 0 || receiver < 0) return;
  const bool both = roof.timbers[at(c.member)].line >= 0 && roof.timbers[at(c.receiver)].line >= 0;
  // A cheek against a cheek is one joint, not two.
  if (both)
    for (const Joint& joint : work.frame.joints)
      if (joint.member == receiver && joint.receiver == member) return;
  const RoofTimber& own = roof.timbers[at(c.member)];
  const bool post = own.kind == RoofTimberKind::kPost, on_roof = c.normal.z > 0.1;
  const Meeting meeting = post && c.at_b                       ? Meeting::kPostTop
                          : post                               ? Meeting::kPostFoot
                          : own.kind == RoofTimberKind::kPlate ? Meeting::kPlateScarf
                                                               : Meeting::kRafterRidge;
  Joint& joint = begin_joint(work, meeting, JointKind::kHousedButt, member, receiver);
  joint.bearing = both ? Bearing::kButts : post || on_roof ? Bearing::kBearsOn : Bearing::kHangsFrom;
  if (meeting == Meeting::kPostTop) std::swap(joint.carried, joint.carrier);
  joint.end = c.at_b ? End::kB : End::kA;
  Vec3 middle{};
  const auto count = std::min<std::size_t>(c.corners.size(), 8);
  for (std::size_t i = 0; i < count; ++i) middle = middle + c.corners[i];
  joint.where = (1.0 / static_cast<double>(count)) * middle;
  add_patch(work, c.normal, c.corners);
  const Vec3 x = work.timber(member).at.x;
  keep_ways(work, {-1 * kZ, kZ, c.at_b ? x : -1 * x, -1 * c.normal});
}

}  // namespace bentbook
