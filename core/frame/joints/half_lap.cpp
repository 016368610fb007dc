#include "frame/joints/end_joint.h"
#include "frame/placing/work.h"
#include "measure/fields.h"

namespace bentbook {

void describe(Fields& fields, HalfLap& j) {
  fields.integer("pegs", j.pegs, 0, kMostPins);
  fields.object("peg", j.peg);
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
  cut_end(work, meeting.member, meeting.end, {-1 * n, -far});
  const double a = to_local(m.at, on(lo, far)).x, b = to_local(m.at, on(hi, far)).x;
  set_tip(work, meeting.member, meeting.end, (meeting.end == End::kB) == (a > b) ? a : b);
  if (lap.pegs > 0) {
    bore_hole(work, meeting.member, mw.axis, joint.where, lap.peg.diameter.in(), HoleUse::kPeg);
    bore_hole(work, meeting.receiver, rw.axis, joint.where, lap.peg.diameter.in(), HoleUse::kPeg);
  }
  const auto level = [&](Vec3 p) { return p + (middle - dot(k, p)) * k; };
  add_contact(work, true, k, {level(on(lo, face)), level(on(hi, face)), level(on(hi, far)), level(on(lo, far))});
  const double m_low = m_k + (mw.sign > 0 ? ms.lo : -ms.hi);
  const auto lower = [&](Vec3 p) { return p + (m_low - dot(k, p)) * k; };
  add_contact(work, true, n, {level(on(lo, face)), level(on(hi, face)), lower(on(hi, face)), lower(on(lo, face))});
  work.frame.joints.back().tools.add({ToolSetting::kDepthStop, meeting.member, m_cut.hi - m_cut.lo - kPast, m_face});
  work.frame.joints.back().tools.add({ToolSetting::kDepthStop, meeting.receiver, r_cut.hi - r_cut.lo - kPast, r_face});
  keep_ways(work, {-1 * k, u});
}

}  // namespace bentbook
