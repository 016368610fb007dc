#include "frame/joints/end_view.h"

#include "frame/limits.h"

namespace bentbook {
namespace {

constexpr double kSquare = 1e-9;
/// Up enough to carry.
constexpr double kUp = 0.3;

/// Which of the member's sides is w. At an oblique end the one in the face; at a square end the one across the
/// receiver's grain, so that a mortise runs with it.
bool choose_sides(const Timber& m, const Timber& r, EndView& v) {
  const bool y_flat = libm::fabs(dot(v.n, m.at.y)) < kSquare, z_flat = libm::fabs(dot(v.n, m.at.z)) < kSquare;
  if (!y_flat && !z_flat) return false;
  bool w_is_y = y_flat;
  if (y_flat && z_flat && v.stands == TenonStands::kPlumb)
    w_is_y = libm::fabs(m.at.y.z) <= libm::fabs(m.at.z.z);
  else if (y_flat && z_flat)
    w_is_y = libm::fabs(dot(m.at.y, r.at.x)) <= libm::fabs(dot(m.at.z, r.at.x));
  v.mw = w_is_y ? Axis::kY : Axis::kZ;
  v.mv = w_is_y ? Axis::kZ : Axis::kY;
  v.w = w_is_y ? m.at.y : m.at.z;
  return true;
}

void see_receiver(const Timber& m, const Timber& r, EndView& v) {
  v.rn = axis_of(r.at, v.n);
  v.rw = axis_of(r.at, v.w);
  const double half = (v.mw == Axis::kY ? m.wood.design.breadth : m.wood.design.depth).in() / 2;
  v.rw_wood = {-1e6, 1e6};
  Range design{-1e6, 1e6};
  if (v.rw.aligned && v.rw.axis != Axis::kX) {
    v.rw_at = along(v.rw.axis, to_local(r.at, v.o));
    const Range wood = sides_along(r, v.rw.axis);
    const double r_half = (v.rw.axis == Axis::kY ? r.wood.design.breadth : r.wood.design.depth).in() / 2;
    const auto to_w = [&v](double local) { return v.rw.sign * (local - v.rw_at); };
    const double a = to_w(wood.lo), b = to_w(wood.hi), c = to_w(-r_half), d = to_w(r_half);
    v.rw_wood = a < b ? Range{a, b} : Range{b, a};
    design = c < d ? Range{c, d} : Range{d, c};
  } else if (v.rw.aligned) {
    v.rw_at = to_local(r.at, v.o).x;
  }
  const double lo = design.lo > -half ? design.lo : -half, hi = design.hi < half ? design.hi : half;
  v.middle = (lo + hi) / 2;
  v.common = hi - lo;
}

}  // namespace

bool see_end(Work& work, const EndMeeting& meeting, double housing, EndView& v) {
  const Timber &m = work.timber(meeting.member), &r = work.timber(meeting.receiver);
  v.member = meeting.member;
  v.receiver = meeting.receiver;
  v.end = meeting.end;
  v.opposed = meeting.opposed;
  v.most = meeting.most;
  v.relish = meeting.relish;
  v.face = face_toward(r, meeting.facing);
  v.n = face_normal(r, v.face);
  v.u = meeting.end == End::kB ? m.at.x : -1 * m.at.x;
  v.cos = -dot(v.u, v.n);
  if (!(v.cos > 0.05) || !choose_sides(m, r, v)) return false;
  const double real = face_offset(r, v.face);
  double plane = real;
  if (housing > 0) {
    plane = design_face_offset(r, v.face) - housing;
    if (plane > real) {
      work.add_finding(FindingId::kWoodThin, r.mark, m.mark, plane - real);
      plane = real;
    }
  }
  v.proud = real - plane;
  const Face back = v.face == Face::kTop      ? Face::kBottom
                    : v.face == Face::kBottom ? Face::kTop
                    : v.face == Face::kNear   ? Face::kFar
                                              : Face::kNear;
  v.behind = plane + face_offset(r, back);
  v.o = m.at.origin + ((dot(v.n, m.at.origin) - plane) / v.cos) * v.u;
  const Vec3 mv = v.mv == Axis::kY ? m.at.y : m.at.z;
  const double slant = dot(v.n, mv);
  if (libm::fabs(slant) < kSquare) {
    v.cos = 1;
    v.t = mv;
  } else {
    const double sin = libm::fabs(slant);
    v.k = sin / v.cos;
    v.turn = slant > 0 ? 1 : -1;
    v.t = (1 / sin) * (v.u + v.cos * v.n);
  }
  v.v = sides_along(m, v.mv);
  v.wide = sides_along(m, v.mw);
  const double a = v.turn * v.v.lo / v.cos, b = v.turn * v.v.hi / v.cos;
  v.t_lo = a < b ? a : b;
  v.t_hi = a < b ? b : a;
  see_receiver(m, r, v);
  return true;
}

namespace {

void add_quad(Work& work, const EndView& v, bool bearing, Vec3 normal, Tq a, Tq b, Range ww) {
  add_contact(work, bearing, normal,
              {v.at(a.t, a.q, ww.lo), v.at(b.t, b.q, ww.lo), v.at(b.t, b.q, ww.hi), v.at(a.t, a.q, ww.hi)});
}

}  // namespace

Pocket member_pocket(Work& work, const EndView& view, std::initializer_list<Tq> outline, Range ww) {
  FixedList<Vec3, 8> points;
  for (const Tq& p : outline) points.add(view.at(p.t, p.q, 0));
  return pocket_from(work.timber(view.member).at, view.mw, points.begin(), points.count, ww.lo, ww.hi);
}

Pocket receiver_pocket(Work& work, const EndView& view, std::initializer_list<Tq> outline, Range ww) {
  const Timber& r = work.timber(view.receiver);
  FixedList<Vec3, 8> points;
  if (view.rw.aligned) {
    for (const Tq& p : outline) points.add(view.at(p.t, p.q, 0));
    return pocket_from(r.at, view.rw.axis, points.begin(), points.count, view.rw_at + view.rw.sign * ww.lo,
                       view.rw_at + view.rw.sign * ww.hi);
  }
  // Turned on the face: a rectangle, swept square into it.
  double t_lo = 1e300, t_hi = -1e300, q_lo = 1e300, q_hi = -1e300;
  for (const Tq& p : outline) {
    t_lo = p.t < t_lo ? p.t : t_lo;
    t_hi = p.t > t_hi ? p.t : t_hi;
    q_lo = p.q < q_lo ? p.q : q_lo;
    q_hi = p.q > q_hi ? p.q : q_hi;
  }
  for (const auto& [tt, w] : {Vec2{t_lo, ww.lo}, {t_hi, ww.lo}, {t_hi, ww.hi}, {t_lo, ww.hi}})
    points.add(view.at(tt, 0, w));
  const double at = along(view.rn.axis, to_local(r.at, view.o));
  return pocket_from(r.at, view.rn.axis, points.begin(), points.count, at - view.rn.sign * q_lo,
                     at - view.rn.sign * q_hi);
}

Feature receiver_feature(Work& work, const EndView& view, FeatureKind kind, Range tt, Range ww, double depth) {
  const Timber& r = work.timber(view.receiver);
  Feature f;
  f.kind = kind;
  f.face = view.face;
  f.depth = depth;
  f.joint = this_joint(work);
  const bool across_is_y = view.face == Face::kTop || view.face == Face::kBottom;
  f.from = f.across_lo = 1e300;
  f.to = f.across_hi = -1e300;
  for (const auto& [t, w] : {Vec2{tt.lo, ww.lo}, {tt.hi, ww.lo}, {tt.hi, ww.hi}, {tt.lo, ww.hi}}) {
    const Vec3 p = to_local(r.at, view.at(t, 0, w));
    const double across = across_is_y ? p.y : p.z;
    f.from = p.x < f.from ? p.x : f.from;
    f.to = p.x > f.to ? p.x : f.to;
    f.across_lo = across < f.across_lo ? across : f.across_lo;
    f.across_hi = across > f.across_hi ? across : f.across_hi;
  }
  const Range wood = sides_along(r, across_is_y ? Axis::kY : Axis::kZ);
  f.across_lo = f.across_lo < wood.lo ? wood.lo : f.across_lo;
  f.across_hi = f.across_hi > wood.hi ? wood.hi : f.across_hi;
  return f;
}

Feature member_feature(Work& work, const EndView& view, FeatureKind kind, Range ww, double depth) {
  const Timber& m = work.timber(view.member);
  Feature f;
  f.kind = kind;
  f.face = view.mw == Axis::kY ? Face::kTop : Face::kNear;
  f.at_end = true;
  f.end = view.end;
  f.across_lo = ww.lo < view.wide.lo ? view.wide.lo : ww.lo;
  f.across_hi = ww.hi > view.wide.hi ? view.wide.hi : ww.hi;
  f.depth = depth;
  f.joint = this_joint(work);
  const Vec3 waste = -1 * view.n;
  f.shoulder = {to_local_direction(m.at, waste), dot(waste, view.o) - dot(waste, m.at.origin)};
  const double x = to_local(m.at, view.o).x;
  f.from = view.end == End::kB ? x - depth : x;
  f.to = view.end == End::kB ? x : x + depth;
  return f;
}

Gauged gauge_member(Work& work, const EndView& view, Range ww) {
  const Timber& m = work.timber(view.member);
  return gauged(m.wood, m.sides, view.mw, ww.lo, ww.hi);
}

Gauged gauge_receiver(Work& work, const EndView& view, Range ww) {
  const Timber& r = work.timber(view.receiver);
  return gauged(r.wood, r.sides, view.rw.axis, view.rw_at + view.rw.sign * ww.lo, view.rw_at + view.rw.sign * ww.hi);
}

void set_fences(Work& work, const EndView& view, Range cheeks) {
  Joint& joint = work.frame.joints.back();
  const Gauged tenon = gauge_member(work, view, cheeks);
  joint.tools.add({ToolSetting::kFence, view.member, tenon.near, tenon.from});
  if (!gauges_receiver(view)) return;
  const Gauged mortise = gauge_receiver(work, view, cheeks);
  joint.tools.add({ToolSetting::kFence, view.receiver, mortise.near, mortise.from});
}

void cut_to_shoulder(Work& work, const EndView& view, double beyond) {
  const Vec3 waste = -1 * view.n;
  const Vec3 on_plane = view.at(0, beyond, 0);
  cut_end(work, view.member, view.end, {waste, dot(waste, on_plane)});
  const Timber& m = work.timber(view.member);
  const double sign = view.end == End::kB ? 1 : -1;
  double tip = -1e300;
  for (const double v : {view.v.lo, view.v.hi}) {
    const double x = sign * to_local(m.at, view.on_edge(v, beyond, 0)).x;
    tip = x > tip ? x : tip;
  }
  set_tip(work, view.member, view.end, sign * tip);
}

void shoulder_contact(Work& work, const EndView& v, Range tt, Range ww) {
  if (tt.hi - tt.lo < 1e-6 || ww.hi - ww.lo < 1e-6) return;
  add_contact(work, true, v.n,
              {v.at(tt.lo, 0, ww.lo), v.at(tt.hi, 0, ww.lo), v.at(tt.hi, 0, ww.hi), v.at(tt.lo, 0, ww.hi)});
}

void add_cheek(Work& work, const EndView& v, double w, double side, Tq a, Tq b, Tq c, Tq d) {
  add_contact(work, dot(side * v.w, Vec3{0, 0, 1}) > kUp, side * v.w,
              {v.at(a.t, a.q, w), v.at(b.t, b.q, w), v.at(c.t, c.q, w), v.at(d.t, d.q, w)});
}

void add_end_walls(Work& work, const EndView& v, Range tt, Range q, Range ww, bool nosed) {
  const double long_side = libm::sqrt(1 + v.k * v.k);
  const Vec3 inward = (1 / long_side) * (v.t + v.k * v.n);
  const bool braces = !v.square();
  add_quad(work, v, dot(inward, Vec3{0, 0, 1}) > kUp && !braces, inward, {tt.lo + v.k * q.lo, q.lo},
           {tt.lo + v.k * q.hi, q.hi}, ww);
  if (nosed)
    add_quad(work, v, braces || -v.t.z > kUp, -1 * v.t, {tt.hi, q.lo}, {tt.hi, q.hi}, ww);
  else
    add_quad(work, v, dot(inward, Vec3{0, 0, 1}) < -kUp && !braces, -1 * inward, {tt.hi + v.k * q.lo, q.lo},
             {tt.hi + v.k * q.hi, q.hi}, ww);
}

void cut_housing(Work& work, const EndView& v) {
  const double out = v.proud + kPast;
  const Pocket pocket = receiver_pocket(
      work, v, {{v.t_lo - v.k * out, -out}, {v.t_hi - v.k * out, -out}, {v.t_hi, 0}, {v.t_lo, 0}}, v.wide);
  add_feature(work.timber(v.receiver),
              receiver_feature(work, v, FeatureKind::kHousing, {v.t_lo - v.k * v.proud, v.t_hi}, v.wide, v.proud),
              pocket);
  add_end_walls(work, v, {v.t_lo, v.t_hi}, {-v.proud, 0}, v.wide, false);
  const Tq a{v.t_lo - v.k * v.proud, -v.proud}, b{v.t_hi - v.k * v.proud, -v.proud}, c{v.t_hi, 0}, d{v.t_lo, 0};
  if (v.wide.lo > v.rw_wood.lo + 1e-6) add_cheek(work, v, v.wide.lo, 1, a, b, c, d);
  if (v.wide.hi < v.rw_wood.hi - 1e-6) add_cheek(work, v, v.wide.hi, -1, a, b, c, d);
}

TenonSize fit_tenon(Work& work, const EndView& v, TenonSize asked, double clearance, double longest) {
  const double x = to_local(work.timber(v.member).at, v.o).x;
  TenonSize size = asked;
  if (size.thickness > limits::kMostTenonShare * v.common) {
    size.thickness = v.common / limits::kTenonParts;
    warn_joint(work, v.member, WarningId::kTenonThin, x, size.thickness, asked.thickness);
  }
  double most = (v.opposed ? v.behind / 2 - 0.125 : v.behind - 0.75) - clearance;
  if (v.opposed && v.proud > 0) most -= v.proud / 2;
  most = most < v.most ? most : v.most;
  most = most < longest ? most : longest;
  if (size.length > most) {
    size.length = most;
    warn_joint(work, v.member, WarningId::kTenonShort, x, most, asked.length);
  }
  return size;
}

void bore_pegs(Work& work, const EndView& v, const PinPattern& peg, int pegs, double drawbore, Range tt,
               double length) {
  if (!v.rw.aligned || v.rw.axis == Axis::kX) return;
  const double d = peg.diameter.in();
  const double q = peg_row(peg, length, drawbore);
  for (int i = 0; i < pegs; ++i) {
    const double off = (i - (pegs - 1) / 2.0) * peg.spacing.in();
    const auto centre = [&](double depth) { return v.at((tt.lo + v.k * depth + tt.hi) / 2 + off, depth, 0); };
    bore_hole(work, v.receiver, v.rw.axis, centre(q), d, HoleUse::kPeg);
    bore_hole(work, v.member, v.mw, centre(q) + drawbore * v.n, d, HoleUse::kPeg);
  }
  work.frame.joints.back().drawbore = pegs > 0 ? drawbore : 0;
}

}  // namespace bentbook
