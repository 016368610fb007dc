#include "frame/placing/work.h"
#include "measure/fields.h"

namespace bentbook {

void describe(Fields& fields, RafterPeak& j) {
  fields.flag("tongue_and_fork", j.tongue_and_fork);
  fields.length("thickness", j.thickness, {{}, Length::inches(48)});
  fields.length("clearance", j.clearance, {{}, Length::inches(1)});
  fields.object("peg", j.peg);
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
  cut_end(work, left, End::kB, EndCutName::kAngle, {r.at.z, face_offset(r, Face::kTop)});
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
  bore_hole(work, left, Axis::kY, middle, type.peg.diameter.in(), HoleUse::kPeg);
  bore_hole(work, right, Axis::kY, middle, type.peg.diameter.in(), HoleUse::kPeg);
  face(ys.lo, t.lo);
  face(t.hi, ys.hi);
  joint.beyond_shoulder = tip_x - peak_x;
  for (const int i : {left, right}) {
    const Timber& it = work.timber(i);
    const Gauged cheeks = gauged(it.wood, it.sides, Axis::kY, t.lo, t.hi);
    joint.tools.add({ToolSetting::kFence, i, cheeks.near, cheeks.from});
  }
  keep_ways(work, {Vec3{1, 0, 0}, Vec3{0, 0, -1}, l.at.x});
}

}  // namespace bentbook
