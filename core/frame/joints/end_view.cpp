#include "frame/joints/end_view.h"

namespace bentbook {
namespace {

constexpr double kSquare = 1e-9;

/// Which of the member's sides is w. At an oblique end the one in the face; at a square end the one across the
/// receiver's grain, so that a mortise runs with it.
bool choose_sides(const Timber& m, const Timber& r, EndView& v) {
  const bool y_flat = libm::fabs(dot(v.n, m.at.y)) < kSquare, z_flat = libm::fabs(dot(v.n, m.at.z)) < kSquare;
  if (!y_flat && !z_flat) return false;
  bool w_is_y = y_flat;
  if (y_flat && z_flat) w_is_y = libm::fabs(dot(m.at.y, r.at.x)) <= libm::fabs(dot(m.at.z, r.at.x));
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
  f.joint = static_cast<int>(work.frame.joints.size()) - 1;
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
  f.joint = static_cast<int>(work.frame.joints.size()) - 1;
  const Vec3 waste = -1 * view.n;
  f.shoulder = {to_local_direction(m.at, waste), dot(waste, view.o) - dot(waste, m.at.origin)};
  const double x = to_local(m.at, view.o).x;
  f.from = view.end == End::kB ? x - depth : x;
  f.to = view.end == End::kB ? x : x + depth;
  return f;
}

void cut_to_shoulder(Work& work, const EndView& view, double beyond) {
  const Vec3 waste = -1 * view.n;
  const Vec3 on_plane = view.at(0, beyond, 0);
  cut_end(work, view.member, view.end, view.square() ? EndCutName::kSquare : EndCutName::kMitre,
          {waste, dot(waste, on_plane)});
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

void warn_joint(Work& work, int timber, WarningId id, double station, double value, double value2) {
  work.timber(timber).warnings.push_back({id, static_cast<int>(work.frame.joints.size()) - 1, station, value, value2});
}

void bore_hole(Work& work, int timber, Axis sweep, Vec3 centre, Range through, double diameter, HoleUse use) {
  Timber& it = work.timber(timber);
  const Vec3 p = to_local(it.at, centre);
  Feature f;
  f.kind = FeatureKind::kHole;
  f.face = sweep == Axis::kY ? Face::kNear : Face::kTop;
  f.from = p.x - diameter / 2;
  f.to = p.x + diameter / 2;
  const double across = sweep == Axis::kY ? p.z : p.y;
  f.across_lo = across - diameter / 2;
  f.across_hi = across + diameter / 2;
  f.diameter = diameter;
  f.use = use;
  f.joint = static_cast<int>(work.frame.joints.size()) - 1;
  const Range wood = sides_along(it, sweep);
  f.depth = wood.hi - wood.lo;
  add_feature(it, f,
              hole_pocket(sweep, sweep == Axis::kY ? Vec2{p.x, p.z} : Vec2{p.x, p.y}, diameter, through.lo - kPast,
                          through.hi + kPast));
}

}  // namespace bentbook
