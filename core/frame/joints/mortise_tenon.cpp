#include "frame/joints/end_view.h"
#include "measure/fields.h"

namespace bentbook {

void describe(Fields& fields, MortiseTenon& j) {
  constexpr LengthEntry kSize{Length::inches(1, 2), Length::inches(48)};
  constexpr LengthEntry kShoulder{{}, Length::inches(48)};
  fields.length("thickness", j.thickness, kSize);
  fields.length("length", j.length, kSize);
  fields.length("shoulder_top", j.shoulder_top, kShoulder);
  fields.length("shoulder_bottom", j.shoulder_bottom, kShoulder);
  fields.length("housing", j.housing, {{}, Length::inches(12)});
  fields.length("depth_clearance", j.depth_clearance, {{}, Length::inches(4)});
  fields.integer("pegs", j.pegs, 0, kMostPins);
  fields.object("peg", j.peg);
  fields.length("drawbore", j.drawbore, {{}, Length::inches(1, 2)});
}

namespace {

Range tenon_range(const EndView& v, const MortiseTenon& type) {
  const double at_lo = (v.turn > 0 ? type.shoulder_bottom : type.shoulder_top).in() / v.cos;
  const double at_hi = (v.turn > 0 ? type.shoulder_top : type.shoulder_bottom).in() / v.cos;
  const Range tt{v.t_lo + at_lo, v.t_hi - at_hi};
  return tt.hi - tt.lo < 1 ? Range{v.t_lo, v.t_hi} : tt;
}

/// A mortise along the receiver's grain keeps its relish from both of the receiver's ends.
Range clear_of_ends(Work& work, const EndView& v, Range tt) {
  if (!(v.relish > 0)) return tt;
  const Placement& at = work.timber(v.receiver).at;
  const Tips& tips = work.tip(v.receiver);
  const double lo = to_local(at, v.at(tt.lo, 0, 0)).x, hi = to_local(at, v.at(tt.hi, 0, 0)).x;
  if (libm::fabs(libm::fabs(hi - lo) - (tt.hi - tt.lo)) > 1e-9) return tt;
  const double first = tips.a + v.relish, last = tips.b - v.relish;
  const auto inside = [&](double x) { return x < first ? first - x : x > last ? x - last : 0; };
  const Range clear{tt.lo + inside(lo), tt.hi - inside(hi)};
  return clear.hi - clear.lo < 1 ? tt : clear;
}

/// How long an oblique tenon may be, so that its nose is left.
double longest(const EndView& v, Range tt) { return v.square() ? 1e9 : 0.8 * (tt.hi - tt.lo) / v.k; }

/// The member beyond the shoulder: only the tenon stays.
void shape_tenon(Work& work, const EndView& v, Range tt, Range cheeks, double length) {
  Timber& m = work.timber(v.member);
  constexpr double kWide = 1e3;
  const double past = length + kPast;
  Feature f = member_feature(work, v, FeatureKind::kTenon, cheeks, length);
  const double far_lo = v.t_lo - kPast, far_hi = v.t_hi + v.k * past + kPast;
  const std::initializer_list<Tq> all{{far_lo, 0}, {far_hi, 0}, {far_hi, past}, {far_lo, past}};
  add_feature(m, f, member_pocket(work, v, all, {-kWide, cheeks.lo}));
  add_to_feature(m, member_pocket(work, v, all, {cheeks.hi, kWide}));
  if (!v.square() || tt.hi < v.t_hi)
    add_to_feature(m, member_pocket(work, v, {{tt.hi, 0}, {far_hi, 0}, {far_hi, past}, {tt.hi, past}}, cheeks));
  if (tt.lo > v.t_lo)
    add_to_feature(
        m, member_pocket(work, v, {{far_lo, 0}, {tt.lo, 0}, {tt.lo + v.k * past, past}, {far_lo, past}}, cheeks));
  cut_to_shoulder(work, v, length);
  const double sign = v.end == End::kB ? 1 : -1;
  double tip = -1e300;
  for (const Tq& p : {Tq{v.t_lo, 0}, {v.t_hi, 0}, {tt.hi, length}, {tt.lo + v.k * length, length}, {tt.hi, 0}}) {
    const double x = sign * to_local(m.at, v.at(p.t, p.q, 0)).x;
    tip = x > tip ? x : tip;
  }
  set_tip(work, v.member, v.end, sign * tip);
  const double shoulder = f.from < f.to ? (v.end == End::kB ? f.to : f.from) : f.from;
  m.features.back().from = v.end == End::kB ? shoulder : sign * tip;
  m.features.back().to = v.end == End::kB ? sign * tip : shoulder;
}

void cut_mortise(Work& work, const EndView& v, Range tt, Range cheeks, double length, double clearance) {
  const double deep = length + clearance;
  Pocket pocket;
  if (v.proud > 1e-9)
    pocket = receiver_pocket(work, v, {{tt.lo, 0}, {tt.hi, 0}, {tt.hi, deep}, {tt.lo + v.k * deep, deep}}, cheeks);
  else if (v.square())
    pocket = receiver_pocket(work, v, {{tt.lo, -kPast}, {tt.hi, -kPast}, {tt.hi, deep}, {tt.lo, deep}}, cheeks);
  else
    pocket = receiver_pocket(
        work, v, {{tt.lo, -kPast}, {tt.hi, -kPast}, {tt.hi, deep}, {tt.lo + v.k * deep, deep}, {tt.lo, 0}}, cheeks);
  add_feature(work.timber(v.receiver), receiver_feature(work, v, FeatureKind::kMortise, tt, cheeks, v.proud + deep),
              pocket);
}

}  // namespace

void join_tenon(Work& work, const EndMeeting& meeting, const MortiseTenon& type) {
  EndView v;
  if (!begin_end_joint(work, meeting, JointKind::kMortiseTenon, type.housing.in(), v)) return;
  const Range tt = clear_of_ends(work, v, tenon_range(v, type));
  const TenonSize size =
      fit_tenon(work, v, {type.thickness.in(), type.length.in()}, type.depth_clearance.in(), longest(v, tt));
  Joint& joint = work.frame.joints.back();
  if (v.proud > 1e-9) cut_housing(work, v);
  if (size.length < 0.5) {  // no room for one: a butt, and the warning says so
    cut_to_shoulder(work, v, 0);
    shoulder_contact(work, v, {v.t_lo, v.t_hi}, v.wide);
    keep_ways(work, {v.u, -1 * v.n});
    return;
  }
  const Range cheeks{v.middle - size.thickness / 2, v.middle + size.thickness / 2};
  shape_tenon(work, v, tt, cheeks, size.length);
  cut_mortise(work, v, tt, cheeks, size.length, type.depth_clearance.in());
  shoulder_contact(work, v, {v.t_lo, v.t_hi}, {v.wide.lo, cheeks.lo});
  shoulder_contact(work, v, {v.t_lo, v.t_hi}, {cheeks.hi, v.wide.hi});
  add_end_walls(work, v, tt, {0, size.length}, cheeks, true);
  const Tq a{tt.lo, 0}, b{tt.hi, 0}, c{tt.hi, size.length}, d{tt.lo + v.k * size.length, size.length};
  add_cheek(work, v, cheeks.lo, 1, a, b, c, d);
  add_cheek(work, v, cheeks.hi, -1, a, b, c, d);
  bore_pegs(work, v, type.peg, type.pegs, type.drawbore.in(), tt, size.length);
  joint.beyond_shoulder = size.length / v.cos;
  joint.tools.add({ToolSetting::kDepthStop, v.receiver, v.proud + size.length + type.depth_clearance.in(), v.face});
  set_fences(work, v, cheeks);
  keep_ways(work, {v.u, -1 * v.n});
}

}  // namespace bentbook
