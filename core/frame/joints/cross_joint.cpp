/// Joints in which timbers pass or overlap: bird's mouth, half lap, scarf, peak.

#include <utility>

#include "frame/placing/work.h"
#include "roof/limits.h"

namespace bentbook {
namespace {

int this_joint(const Work& work) { return static_cast<int>(work.frame.joints.size()) - 1; }

/// Where the line from `p` along `d` meets a plane.
Vec3 meet(Vec3 p, Vec3 d, Vec3 normal, double offset) { return p + ((offset - dot(normal, p)) / dot(normal, d)) * d; }

Feature span_feature(const Timber& timber, FeatureKind kind, Face face, const Pocket& pocket, int joint) {
  Feature f;
  f.kind = kind;
  f.face = face;
  f.joint = joint;
  const Box box = bounds_of(pocket);
  f.from = box.lo.x;
  f.to = box.hi.x;
  const bool across_is_y = face == Face::kTop || face == Face::kBottom;
  const Range wood = sides_along(timber, across_is_y ? Axis::kY : Axis::kZ);
  const double lo = across_is_y ? box.lo.y : box.lo.z, hi = across_is_y ? box.hi.y : box.hi.z;
  f.across_lo = lo > wood.lo ? lo : wood.lo;
  f.across_hi = hi < wood.hi ? hi : wood.hi;
  const Range deep = sides_along(timber, across_is_y ? Axis::kZ : Axis::kY);
  const double in_lo = across_is_y ? box.lo.z : box.lo.y, in_hi = across_is_y ? box.hi.z : box.hi.y;
  f.depth = face == Face::kTop || face == Face::kFar ? deep.hi - in_lo : in_hi - deep.lo;
  return f;
}

Feature with_shoulder(Feature f, const Timber& timber, End end, Plane world) {
  f.at_end = true;
  f.end = end;
  f.shoulder = {to_local_direction(timber.at, world.normal), world.offset - dot(world.normal, timber.at.origin)};
  return f;
}

void bore(Work& work, int i, Axis sweep, Vec3 centre, double diameter, int joint) {
  Timber& timber = work.timber(i);
  const Vec3 p = to_local(timber.at, centre);
  const Range wood = sides_along(timber, sweep);
  const double across = sweep == Axis::kY ? p.z : p.y;
  Feature f;
  f.face = sweep == Axis::kY ? Face::kNear : Face::kTop;
  f.from = p.x - diameter / 2;
  f.to = p.x + diameter / 2;
  f.across_lo = across - diameter / 2;
  f.across_hi = across + diameter / 2;
  f.depth = wood.hi - wood.lo;
  f.diameter = diameter;
  f.use = HoleUse::kPeg;
  f.joint = joint;
  add_feature(timber, f, hole_pocket(sweep, {p.x, across}, diameter, wood.lo - kPast, wood.hi + kPast));
}

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

void join_lap(Work& work, const EndMeeting& meeting, const HalfLap& lap) {
  Timber &m = work.timber(meeting.member), &r = work.timber(meeting.receiver);
  const Vec3 w = unit(cross(m.at.x, r.at.x));
  const Face near = face_toward(r, meeting.facing);
  const Vec3 n = face_normal(r, near), u = meeting.end == End::kB ? m.at.x : -1 * m.at.x;
  AxisOf mw = axis_of(m.at, w), rw = axis_of(r.at, w);
  if (!mw.aligned || !rw.aligned || !(-dot(u, n) > 0.05)) {
    work.add_finding(FindingId::kJointUnfit, m.mark, r.mark);
    return;
  }
  // Up, or in a plumb plane toward the far end of the building: the member keeps that half.
  const double keep = w.z > 0.5 || (libm::fabs(w.z) <= 0.5 && w.y + w.x > 0) ? 1 : -1;
  const Vec3 k = keep * w;
  mw.sign *= keep;
  rw.sign *= keep;
  const Face back = near == Face::kTop      ? Face::kBottom
                    : near == Face::kBottom ? Face::kTop
                    : near == Face::kNear   ? Face::kFar
                                            : Face::kNear;
  const double face = face_offset(r, near), far = -face_offset(r, back);  // along n: near face, far face
  const double m_k = dot(k, m.at.origin), r_k = dot(k, r.at.origin);
  const Range rs = sides_along(r, rw.axis), ms = sides_along(m, mw.axis);
  const double middle = (r_k + m_k) / 2;  // of the two design sections, along k
  Joint& joint = begin_joint(work, meeting.meeting, JointKind::kHalfLap, meeting.member, meeting.receiver);
  joint.bearing = k.z > 0.5 ? Bearing::kBearsOn : Bearing::kButts;
  joint.end = meeting.end;
  const auto on = [&](Vec3 line, double offset) { return meet(line, u, n, offset); };
  const Axis mv = mw.axis == Axis::kY ? Axis::kZ : Axis::kY;
  const Vec3 v = mv == Axis::kY ? m.at.y : m.at.z;
  const Range vs = sides_along(m, mv);
  const Vec3 lo = m.at.origin + vs.lo * v, hi = m.at.origin + vs.hi * v;
  joint.where = on(m.at.origin, (face + far) / 2);
  // The member loses its lower half from the receiver's face on, the receiver its upper half over the member's width.
  const Vec3 out = kPast * u;
  const Vec3 mine[] = {on(lo - kPast * v, face), on(hi + kPast * v, face), on(hi + kPast * v, far) + out,
                       on(lo - kPast * v, far) + out};
  const double m_mid = mw.sign * (middle - m_k);
  const Range m_cut = mw.sign > 0 ? Range{ms.lo - kPast, m_mid} : Range{m_mid, ms.hi + kPast};
  const Pocket m_pocket = pocket_from(m.at, mw.axis, mine, 4, m_cut.lo, m_cut.hi);
  const Face m_face = face_toward(m, -1 * k), r_face = face_toward(r, k);
  add_feature(m,
              with_shoulder(span_feature(m, FeatureKind::kLap, m_face, m_pocket, this_joint(work)), m, meeting.end,
                            {-1 * n, -face}),
              m_pocket);
  const Vec3 theirs[] = {on(lo, face) - out, on(hi, face) - out, on(hi, far) + out, on(lo, far) + out};
  const double r_mid = rw.sign * (middle - r_k);
  const Range r_cut = rw.sign > 0 ? Range{r_mid, rs.hi + kPast} : Range{rs.lo - kPast, r_mid};
  const Pocket r_pocket = pocket_from(r.at, rw.axis, theirs, 4, r_cut.lo, r_cut.hi);
  add_feature(r, span_feature(r, FeatureKind::kLap, r_face, r_pocket, this_joint(work)), r_pocket);
  cut_end(work, meeting.member, meeting.end,
          libm::fabs(-dot(u, n)) > 1 - 1e-12 ? EndCutName::kSquare : EndCutName::kMitre, {-1 * n, -far});
  const double a = to_local(m.at, on(lo, far)).x, b = to_local(m.at, on(hi, far)).x;
  set_tip(work, meeting.member, meeting.end, (meeting.end == End::kB) == (a > b) ? a : b);
  if (lap.pegs > 0) {
    bore(work, meeting.member, mw.axis, joint.where, lap.peg.diameter.in(), this_joint(work));
    bore(work, meeting.receiver, rw.axis, joint.where, lap.peg.diameter.in(), this_joint(work));
  }
  const auto level = [&](Vec3 p) { return p + (middle - dot(k, p)) * k; };
  add_contact(work, true, k, {level(on(lo, face)), level(on(hi, face)), level(on(hi, far)), level(on(lo, far))});
  const double m_low = m_k + (mw.sign > 0 ? ms.lo : -ms.hi);
  const auto lower = [&](Vec3 p) { return p + (m_low - dot(k, p)) * k; };
  add_contact(work, true, n, {level(on(lo, face)), level(on(hi, face)), lower(on(hi, face)), lower(on(lo, face))});
  work.frame.joints.back().tools.add({ToolSetting::kDepthStop, meeting.member, m_cut.hi - m_cut.lo - kPast});
  work.frame.joints.back().tools.add({ToolSetting::kDepthStop, meeting.receiver, r_cut.hi - r_cut.lo - kPast});
  keep_ways(work, {-1 * k, u});
}

void join_scarf(Work& work, Meeting meeting, int member, int receiver, double at, const Scarf& scarf) {
  if (member < 0 || receiver < 0) return;
  Timber &m = work.timber(member), &r = work.timber(receiver);
  const double half = scarf.length.in() / 2;
  const double m_at = to_local(m.at, at * m.at.x).x, r_at = to_local(r.at, at * r.at.x).x;
  Joint& joint = begin_joint(work, meeting, JointKind::kScarf, member, receiver);
  std::swap(joint.carried, joint.carrier);
  joint.bearing = Bearing::kBearsOn;
  joint.where = m.at.origin + m_at * m.at.x;
  const auto cut = [&](int i, Timber& it, End end, double centre, double z_lo, double z_hi) {
    const double out = end == End::kB ? kPast : -kPast, sign = end == End::kB ? 1 : -1;
    const double a = centre - sign * half, b = centre + sign * half;
    const Pocket pocket = box_pocket(Axis::kY, {a < b ? a : b + out, it.sides.y_lo - kPast, z_lo},
                                     {a < b ? b + out : a, it.sides.y_hi + kPast, z_hi});
    const Vec3 waste = sign * it.at.x;
    const Face face = z_lo < it.sides.z_lo ? Face::kBottom : Face::kTop;
    add_feature(it,
                with_shoulder(span_feature(it, FeatureKind::kScarf, face, pocket, this_joint(work)), it, end,
                              {waste, dot(waste, it.at.origin + a * it.at.x)}),
                pocket);
    cut_end(work, i, end, EndCutName::kSquare, {waste, dot(waste, it.at.origin + b * it.at.x)});
    set_tip(work, i, end, b);
  };
  cut(member, m, End::kB, m_at, 0, m.sides.z_hi + kPast);
  cut(receiver, r, End::kA, r_at, r.sides.z_lo - kPast, 0);
  for (int i = 0; i < scarf.pegs; ++i) {
    // Evenly between the rows that stand their distance from either butt.
    const double row = half - scarf.peg.from_shoulder.in();
    const double off = scarf.pegs < 2 || row <= 0 ? 0 : row * (2.0 * i / (scarf.pegs - 1) - 1);
    const Vec3 centre = joint.where + off * m.at.x;
    bore(work, member, Axis::kZ, centre, scarf.peg.diameter.in(), this_joint(work));
    bore(work, receiver, Axis::kZ, centre, scarf.peg.diameter.in(), this_joint(work));
  }
  const Vec3 o = joint.where, x = m.at.x, y = m.at.y, z = m.at.z;
  const Range ys = sides_along(m, Axis::kY);
  const auto point = [&](double dx, double dy, double dz) { return o + dx * x + dy * y + dz * z; };
  // The upper piece (receiver) rests on the lower one: normal out of the receiver, down.
  add_contact(work, true, -1 * z,
              {point(-half, ys.lo, 0), point(half, ys.lo, 0), point(half, ys.hi, 0), point(-half, ys.hi, 0)});
  add_contact(work, true, -1 * x,
              {point(-half, ys.lo, 0), point(-half, ys.hi, 0), point(-half, ys.hi, m.sides.z_hi),
               point(-half, ys.lo, m.sides.z_hi)});
  add_contact(work, true, -1 * x,
              {point(half, ys.lo, 0), point(half, ys.hi, 0), point(half, ys.hi, r.sides.z_lo),
               point(half, ys.lo, r.sides.z_lo)});
  work.frame.joints.back().tools.add({ToolSetting::kDepthStop, member, m.sides.z_hi});
  work.frame.joints.back().tools.add({ToolSetting::kDepthStop, receiver, -r.sides.z_lo});
  keep_ways(work, {z, x});
}

namespace {

void plain_peak(Work& work, int i, double x, double side) {
  Timber& it = work.timber(i);
  const Vec3 waste{side, 0, 0};
  cut_end(work, i, End::kB, EndCutName::kPlumb, {waste, side * x});
  const Vec3 top = meet(it.at.origin + it.sides.z_hi * it.at.z, it.at.x, waste, side * x);
  const Vec3 bottom = meet(it.at.origin + it.sides.z_lo * it.at.z, it.at.x, waste, side * x);
  const double a = to_local(it.at, top).x, b = to_local(it.at, bottom).x;
  set_tip(work, i, End::kB, a > b ? a : b);
}

Vec3 on_plumb(const Timber& it, double z, double x) {
  return meet(it.at.origin + z * it.at.z, it.at.x, Vec3{1, 0, 0}, x);
}

}  // namespace

void join_peak(Work& work, int left, int right, double x) {
  if (left < 0 || right < 0) {
    if (left >= 0) plain_peak(work, left, x, 1);
    if (right >= 0) plain_peak(work, right, x, -1);
    return;
  }
  RafterPeak type;
  if (const auto* given = std::get_if<RafterPeak>(&work.plan.joints[static_cast<std::size_t>(Meeting::kRafterPeak)]))
    type = *given;
  Timber &l = work.timber(left), &r = work.timber(right);
  Joint& joint = begin_joint(work, Meeting::kRafterPeak, JointKind::kRafterPeak, left, right);
  joint.bearing = Bearing::kButts;
  joint.end = End::kB;
  const Range ys = sides_along(l, Axis::kY);
  const Vec3 y = l.at.y;
  const double thin = type.thickness.in();
  const bool tongue = type.tongue_and_fork && thin > 0 && thin < 0.6 * (ys.hi - ys.lo);
  plain_peak(work, right, x, -1);
  const Vec3 peak_l = on_plumb(l, l.sides.z_hi, x), low_l = on_plumb(l, l.sides.z_lo, x);
  const Vec3 peak_r = on_plumb(r, r.sides.z_hi, x), low_r = on_plumb(r, r.sides.z_lo, x);
  joint.where = 0.5 * (peak_l + low_l);
  const Vec3 high = peak_l.z < peak_r.z ? peak_l : peak_r, low = low_l.z > low_r.z ? low_l : low_r;
  const auto face = [&](double a, double b) {
    if (high.z > low.z + 1e-6)
      add_contact(work, true, {-1, 0, 0}, {high + a * y, high + b * y, low + b * y, low + a * y});
  };
  if (!tongue) {
    plain_peak(work, left, x, 1);
    face(ys.lo, ys.hi);
    keep_ways(work, {Vec3{1, 0, 0}, Vec3{0, 0, -1}, Vec3{0, 0, 1}});
    return;
  }
  const Range t{-thin / 2, thin / 2};
  // The tongue ends at the right rafter's top; its floor is the left one's bottom edge.
  const Vec3 tip = meet(low_l, l.at.x, r.at.z, face_offset(r, Face::kTop));
  cut_end(work, left, End::kB, EndCutName::kMitre, {r.at.z, face_offset(r, Face::kTop)});
  const double tip_x = to_local(l.at, tip).x, peak_x = to_local(l.at, peak_l).x;
  set_tip(work, left, End::kB, tip_x > peak_x ? tip_x : peak_x);
  const Vec3 corner = low_l - kPast * Vec3{0, 0, 1};
  const Vec3 far{tip.x + 2 * (peak_l.z - low_l.z) + kPast, corner.y, corner.z};
  const Vec3 all[] = {
      corner, far, {far.x, corner.y, peak_l.z + far.x - corner.x}, {corner.x, corner.y, peak_l.z + far.x - corner.x}};
  const Pocket cheek = pocket_from(l.at, Axis::kY, all, 4, -1e3, t.lo);
  Feature f = with_shoulder(span_feature(l, FeatureKind::kTongue, Face::kTop, cheek, this_joint(work)), l, End::kB,
                            {{1, 0, 0}, x});
  f.across_lo = t.lo;
  f.across_hi = t.hi;
  f.to = work.tip(left).b;
  f.depth = tip_x - to_local(l.at, low_l).x;
  add_feature(l, f, cheek);
  add_to_feature(l, pocket_from(l.at, Axis::kY, all, 4, t.hi, 1e3));
  // The fork: everything above its floor, between the cheeks.
  const Vec3 floor = low_l - (type.clearance.in() / l.at.x.x) * Vec3{0, 0, 1};
  const Vec3 floor_tip = meet(floor, l.at.x, r.at.z, face_offset(r, Face::kTop));
  const Vec3 b = floor + 1.5 * (floor_tip - floor), c = floor + 1.5 * (peak_r - floor);
  const Vec3 back = kPast * l.at.x;
  const Vec3 slot[] = {floor - back, b, c, c - back};
  const AxisOf ry = axis_of(r.at, y);
  const Pocket fork = pocket_from(r.at, Axis::kY, slot, 4, ry.sign * t.lo, ry.sign * t.hi);
  Feature g = with_shoulder(span_feature(r, FeatureKind::kFork, Face::kTop, fork, this_joint(work)), r, End::kB,
                            {{-1, 0, 0}, -x});
  g.from = to_local(r.at, floor_tip).x;
  g.to = work.tip(right).b;
  g.across_lo = t.lo;
  g.across_hi = t.hi;
  g.depth = g.to - g.from;
  add_feature(r, g, fork);
  const Vec3 middle = (1.0 / 3) * (low_l + tip + (peak_r.z < peak_l.z ? peak_r : peak_l));
  bore(work, left, Axis::kY, middle, type.peg.diameter.in(), this_joint(work));
  bore(work, right, Axis::kY, middle, type.peg.diameter.in(), this_joint(work));
  face(ys.lo, t.lo);
  face(t.hi, ys.hi);
  joint.beyond_shoulder = tip_x - peak_x;
  joint.tools.add({ToolSetting::kFence, left, t.lo - ys.lo});
  joint.tools.add({ToolSetting::kFence, right, t.lo - r.sides.y_lo});
  keep_ways(work, {Vec3{1, 0, 0}, Vec3{0, 0, -1}, l.at.x});
}

}  // namespace bentbook
