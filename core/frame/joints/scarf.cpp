#include <utility>

#include "frame/placing/work.h"
#include "measure/fields.h"

namespace bentbook {

void describe(Fields& fields, Scarf& j) {
  fields.length("length", j.length, {Length::inches(4), Length::feet(6)});
  fields.length("clearance", j.clearance);
  fields.integer("pegs", j.pegs, 0, kMostPins);
  fields.object("peg", j.peg);
}

double peg_from_middle(const Scarf& scarf, int i) {
  const double row = scarf.length.in() / 2 - scarf.peg.from_shoulder.in();
  return scarf.pegs < 2 || row <= 0 ? 0 : row * (2.0 * i / (scarf.pegs - 1) - 1);
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
    const Vec3 centre = joint.where + peg_from_middle(scarf, i) * m.at.x;
    bore_hole(work, member, Axis::kZ, centre, scarf.peg.diameter.in(), HoleUse::kPeg);
    bore_hole(work, receiver, Axis::kZ, centre, scarf.peg.diameter.in(), HoleUse::kPeg);
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
  work.frame.joints.back().tools.add({ToolSetting::kDepthStop, member, m.sides.z_hi, Face::kTop});
  work.frame.joints.back().tools.add({ToolSetting::kDepthStop, receiver, -r.sides.z_lo, Face::kBottom});
  keep_ways(work, {z, x});
}

}  // namespace bentbook
