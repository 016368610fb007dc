#include "frame/placing/work.h"
#include "measure/fields.h"
#include "roof/limits.h"

namespace bentbook {

void describe(Fields& fields, BirdsMouth& j) {
  fields.length("seat", j.seat, {Length::inches(1, 4), Length::inches(48)});
}

namespace {

Vec3 farthest(const Timber& timber, Face face, Vec3 from, Vec3 along_line) {
  return meet(from, along_line, face_normal(timber, face), face_offset(timber, face));
}

}  // namespace

void join_birdsmouth(Work& work, Meeting meeting, int member, int receiver) {
  if (member < 0 || receiver < 0) return;
  Timber& m = work.timber(member);
  const Timber& r = work.timber(receiver);
  const Vec3 up{0, 0, 1};
  const Vec3 level = unit(Vec3{m.at.x.x, m.at.x.y, 0});  // uphill, level
  const Face heel = face_toward(r, -1 * level);
  const double top = face_offset(r, Face::kTop), out = face_offset(r, heel);
  // The corner over the receiver's downhill arris, in the rafter's middle plane.
  Vec3 corner = m.at.origin;
  corner = corner + (-out - dot(level, corner)) * level;
  corner.z = top;
  const Vec3 seat_end = farthest(m, Face::kBottom, corner, level);
  const Vec3 heel_end = farthest(m, Face::kBottom, corner, -1 * up);
  const double seat = dot(seat_end - corner, level);
  if (!(seat > 0.05)) {
    work.add_finding(FindingId::kNoRoom, m.mark, r.mark, seat);
    return;
  }
  const Vec3 points[] = {corner, corner + 1.5 * (seat_end - corner), corner + 1.5 * (heel_end - corner)};
  const AxisOf across = axis_of(m.at, cross(up, level));
  const Range wood = sides_along(m, across.axis);
  Joint& joint = begin_joint(work, meeting, JointKind::kBirdsMouth, member, receiver);
  joint.bearing = Bearing::kBearsOn;
  joint.crossing = true;
  joint.where = corner + 0.5 * (seat_end - corner);
  const Pocket pocket = pocket_from(m.at, across.axis, points, 3, wood.lo - kPast, wood.hi + kPast);
  Feature f = span_feature(m, FeatureKind::kBirdsMouth, Face::kNear, pocket, this_joint(work));
  const double depth = dot(corner - heel_end, m.at.z);
  const double a = to_local(m.at, seat_end).x, b = to_local(m.at, heel_end).x;
  f.from = a < b ? a : b;
  f.to = a < b ? b : a;
  f.across_lo = sides_along(m, Axis::kZ).lo;
  f.across_hi = f.across_lo + depth;
  f.depth = wood.hi - wood.lo;
  add_feature(m, f, pocket);
  const double share = depth / (m.sides.z_hi - m.sides.z_lo);
  if (share > limits::kNotchAway)
    m.warnings.push_back({WarningId::kNotchShare, this_joint(work), to_local(m.at, corner).x, share,
                          share > limits::kNotchAtSupport ? limits::kNotchAtSupport : limits::kNotchAway});
  const auto* asked = std::get_if<BirdsMouth>(&work.plan.joints[static_cast<std::size_t>(meeting)]);
  if (asked != nullptr && seat < asked->seat.in() - 1e-3)
    m.warnings.push_back({WarningId::kSeatShort, this_joint(work), to_local(m.at, corner).x, seat, asked->seat.in()});
  const Vec3 w = across.axis == Axis::kY ? m.at.y : m.at.z;
  const auto quad = [&](Vec3 p, Vec3 q, Vec3 normal) {
    add_contact(work, true, normal, {p + wood.lo * w, q + wood.lo * w, q + wood.hi * w, p + wood.hi * w});
  };
  quad(corner, seat_end, up);
  quad(corner, heel_end, -1 * level);
  keep_ways(work, {-1 * up, level, -1 * m.at.z, m.at.x});
}

}  // namespace bentbook
