#include "frame/joints/half_dovetail.h"

#include "frame/joints/end_view.h"
#include "measure/fields.h"

namespace bentbook {
namespace {

/// Wood over the wedges and under the tenon's tip (common practice).
constexpr double kOverWedge = 1;

/// In the plane of t and q (end_view.h), t up.
struct DovetailShape {
  double length = 0, fall = 0;
  double lo = 0, hi = 0;  ///< the tenon's lower edge at its tip, its upper edge
  double top = 0;         ///< the mortise's upper side
  double deep = 0;        ///< how far the mortise goes from the shoulder
  bool closed = true;     ///< there is wood over the wedges
  Range cheeks;
  /// The tenon's lower edge, which is the mortise's lower side.
  [[nodiscard]] double edge(double q) const { return lo + fall * (1 - q / length); }
};

/// The receiver's wood up and down, without what its own end joints take.
Range plumb_reach(Work& work, const EndView& v) {
  const Timber& r = work.timber(v.receiver);
  const AxisOf up = axis_of(r.at, v.t);
  Range wood = up.axis == Axis::kX ? Range{work.tip(v.receiver).a, work.tip(v.receiver).b} : sides_along(r, up.axis);
  for (const Feature& f : r.features) {
    if (up.axis != Axis::kX || f.kind != FeatureKind::kTenon) continue;
    if (f.end == End::kB && f.from < wood.hi) wood.hi = f.from;
    if (f.end == End::kA && f.to > wood.lo) wood.lo = f.to;
  }
  const double at = along(up.axis, to_local(r.at, v.o));
  const double a = up.sign * (wood.lo - at), b = up.sign * (wood.hi - at);
  return a < b ? Range{a, b} : Range{b, a};
}

DovetailShape dovetail_of(Work& work, const EndView& v, const HalfDovetail& type) {
  const bool through = type.through && !v.opposed;
  const double clearance = type.depth_clearance.in();
  const TenonSize size = fit_tenon(work, v, {type.thickness.in(), through ? 0 : type.length.in()}, clearance, 1e9);
  const Range wood = plumb_reach(work, v);
  DovetailShape s;
  s.length = through ? v.behind : size.length;
  s.fall = s.length / type.one_in;
  s.lo = v.t_lo > wood.lo + kOverWedge ? v.t_lo : wood.lo + kOverWedge;
  s.hi = v.t_hi;
  s.top = s.hi + s.fall + type.play.in();
  s.closed = s.top + kOverWedge <= wood.hi;
  if (!s.closed) s.top = (s.hi > wood.hi ? s.hi : wood.hi) + kPast;
  s.deep = s.length + (through ? kPast : clearance);
  s.cheeks = {v.middle - size.thickness / 2, v.middle + size.thickness / 2};
  return s;
}

/// The member beyond the shoulder: only the tenon stays.
void shape_dovetail(Work& work, const EndView& v, const DovetailShape& s) {
  constexpr double kWide = 1e3;
  Timber& m = work.timber(v.member);
  Feature f = member_feature(work, v, FeatureKind::kTenon, s.cheeks, s.length);
  const double shoulder = to_local(m.at, v.o).x, tip = to_local(m.at, v.at(0, s.length, 0)).x;
  f.from = shoulder < tip ? shoulder : tip;
  f.to = shoulder < tip ? tip : shoulder;
  const double past = s.length + kPast, far_lo = v.t_lo - kPast, far_hi = v.t_hi + kPast;
  const std::initializer_list<Tq> all{{far_lo, 0}, {far_hi, 0}, {far_hi, past}, {far_lo, past}};
  add_feature(m, f, member_pocket(work, v, all, {-kWide, s.cheeks.lo}));
  add_to_feature(m, member_pocket(work, v, all, {s.cheeks.hi, kWide}));
  add_to_feature(m,
                 member_pocket(work, v, {{far_lo, 0}, {s.edge(0), 0}, {s.edge(past), past}, {far_lo, past}}, s.cheeks));
  cut_to_shoulder(work, v, s.length);
}

void cut_dovetail_mortise(Work& work, const EndView& v, const DovetailShape& s) {
  const double out = v.proud + kPast;
  const double depth = v.proud + (s.deep < v.behind ? s.deep : v.behind);
  add_feature(work.timber(v.receiver),
              receiver_feature(work, v, FeatureKind::kMortise, {s.edge(0), s.top}, s.cheeks, depth),
              receiver_pocket(work, v, {{s.edge(-out), -out}, {s.top, -out}, {s.top, s.deep}, {s.edge(s.deep), s.deep}},
                              s.cheeks));
}

/// Higher than the member by what it comes down on its way in.
void cut_high_housing(Work& work, const EndView& v, const DovetailShape& s) {
  const double out = v.proud + kPast;
  const Range tt{v.t_lo, v.t_hi + s.fall / s.length * v.proud};
  add_feature(work.timber(v.receiver), receiver_feature(work, v, FeatureKind::kHousing, tt, v.wide, v.proud),
              receiver_pocket(work, v, {{tt.lo, -out}, {tt.hi, -out}, {tt.hi, 0}, {tt.lo, 0}}, v.wide));
  add_contact(work, true, v.t,
              {v.at(tt.lo, -v.proud, v.wide.lo), v.at(tt.lo, 0, v.wide.lo), v.at(tt.lo, 0, v.wide.hi),
               v.at(tt.lo, -v.proud, v.wide.hi)});
  const Tq a{tt.lo, -v.proud}, b{tt.hi, -v.proud}, c{tt.hi, 0}, d{tt.lo, 0};
  if (v.wide.lo > v.rw_wood.lo + 1e-6) add_cheek(work, v, v.wide.lo, 1, a, b, c, d);
  if (v.wide.hi < v.rw_wood.hi - 1e-6) add_cheek(work, v, v.wide.hi, -1, a, b, c, d);
}

void touch_dovetail(Work& work, const EndView& v, const DovetailShape& s) {
  shoulder_contact(work, v, {v.t_lo, v.t_hi}, {v.wide.lo, s.cheeks.lo});
  shoulder_contact(work, v, {v.t_lo, v.t_hi}, {s.cheeks.hi, v.wide.hi});
  shoulder_contact(work, v, {v.t_lo, s.edge(0)}, s.cheeks);
  const Tq a{s.edge(0), 0}, b{s.hi, 0}, c{s.hi, s.length}, d{s.lo, s.length};
  add_contact(work, true, unit(s.length * v.t - s.fall * v.n),
              {v.at(a.t, a.q, s.cheeks.lo), v.at(d.t, d.q, s.cheeks.lo), v.at(d.t, d.q, s.cheeks.hi),
               v.at(a.t, a.q, s.cheeks.hi)});
  add_cheek(work, v, s.cheeks.lo, 1, a, b, c, d);
  add_cheek(work, v, s.cheeks.hi, -1, a, b, c, d);
}

void set_dovetail_tools(Work& work, const EndView& v, const DovetailShape& s) {
  Joint& joint = work.frame.joints.back();
  if (s.deep < v.behind) joint.tools.add({ToolSetting::kDepthStop, v.receiver, v.proud + s.deep, v.face});
  set_fences(work, v, s.cheeks);
  joint.tools.add({ToolSetting::kFall, v.member, s.fall});
  joint.tools.add({ToolSetting::kFall, v.receiver, s.fall});
  if (s.closed) joint.tools.add({ToolSetting::kWedge, v.receiver, s.top - s.hi});
}

}  // namespace

void describe(Fields& fields, HalfDovetail& j) {
  constexpr LengthEntry kSize{Length::inches(1, 2), Length::inches(48)};
  fields.flag("through", j.through);
  fields.length("length", j.length, kSize);
  fields.length("thickness", j.thickness, kSize);
  fields.integer("one_in", j.one_in, 4, 20);
  fields.length("play", j.play, {{}, Length::inches(1)});
  fields.length("housing", j.housing, {{}, Length::inches(12)});
  fields.length("depth_clearance", j.depth_clearance, {{}, Length::inches(4)});
  fields.integer("pegs", j.pegs, 0, kMostPins);
  fields.object("peg", j.peg);
}

void join_half_dovetail(Work& work, const EndMeeting& meeting, const HalfDovetail& type) {
  EndView v;
  v.stands = TenonStands::kPlumb;
  if (!begin_end_joint(work, meeting, JointKind::kHalfDovetail, type.housing.in(), v)) return;
  const bool plumb = v.square() && v.t.z > 1 - 1e-9 && v.rw.aligned && axis_of(work.timber(v.receiver).at, v.t).aligned;
  const DovetailShape s = plumb ? dovetail_of(work, v, type) : DovetailShape{};
  if (s.length < 0.5 || s.hi - s.edge(0) < 1) {  // no room for one: a butt, and the warning says so
    warn_joint(work, v.member, WarningId::kTenonShort, to_local(work.timber(v.member).at, v.o).x, 0, type.length.in());
    return cut_butt(work, v);
  }
  if (v.proud > 1e-9) cut_high_housing(work, v, s);
  shape_dovetail(work, v, s);
  cut_dovetail_mortise(work, v, s);
  touch_dovetail(work, v, s);
  bore_pegs(work, v, type.peg, type.pegs, 0, {s.edge(0), s.hi}, s.length);
  set_dovetail_tools(work, v, s);
  work.frame.joints.back().beyond_shoulder = s.length;
  const Vec3 down_the_slope = unit(-s.length * v.n - s.fall * v.t);
  if (s.closed)
    keep_ways(work, {down_the_slope});
  else
    keep_ways(work, {-1 * v.t, down_the_slope});
}

}  // namespace bentbook
