#include <utility>

#include "frame/joints/end_view.h"
#include "frame/limits.h"

namespace bentbook {
namespace {

/// Up enough to carry.
constexpr double kUp = 0.3;

Bearing bearing_of(Meeting meeting) {
  switch (meeting) {
    case Meeting::kBraceEnd:
      return Bearing::kBraces;
    case Meeting::kRafterPeak:
    case Meeting::kCollarRafter:
    case Meeting::kGirtPost:
      return Bearing::kButts;
    case Meeting::kTiePost:
    case Meeting::kPurlinRafter:
    case Meeting::kJoistTie:
    case Meeting::kRafterRidge:
      return Bearing::kHangsFrom;
    default:
      return Bearing::kBearsOn;
  }
}

bool receiver_is_carried(Meeting meeting) {
  return meeting == Meeting::kPostTop || meeting == Meeting::kKingTop || meeting == Meeting::kQueenTop;
}

void add_quad(Work& work, const EndView& v, bool bearing, Vec3 normal, Tq a, Tq b, Range ww) {
  add_contact(work, bearing, normal,
              {v.at(a.t, a.q, ww.lo), v.at(b.t, b.q, ww.lo), v.at(b.t, b.q, ww.hi), v.at(a.t, a.q, ww.hi)});
}

/// A wall in w: part of the (t, q) plane.
void add_cheek(Work& work, const EndView& v, double w, double side, Tq a, Tq b, Tq c, Tq d) {
  add_contact(work, dot(side * v.w, Vec3{0, 0, 1}) > kUp, side * v.w,
              {v.at(a.t, a.q, w), v.at(b.t, b.q, w), v.at(c.t, c.q, w), v.at(d.t, d.q, w)});
}

/// Walls that run along the member's edges at both ends of a mortise or housing, from q = a to q = b.
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

/// Let in by the housing: the receiver loses the member's whole footprint down to the shoulder plane.
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

Range tenon_range(const EndView& v, const MortiseTenon& type) {
  const double at_lo = (v.turn > 0 ? type.shoulder_bottom : type.shoulder_top).in() / v.cos;
  const double at_hi = (v.turn > 0 ? type.shoulder_top : type.shoulder_bottom).in() / v.cos;
  const Range tt{v.t_lo + at_lo, v.t_hi - at_hi};
  return tt.hi - tt.lo < 1 ? Range{v.t_lo, v.t_hi} : tt;
}

struct TenonSize {
  double thickness = 0, length = 0;
};
TenonSize tenon_size(Work& work, const EndView& v, const MortiseTenon& type, Range tt) {
  const double x = to_local(work.timber(v.member).at, v.o).x;
  TenonSize size{type.thickness.in(), type.length.in()};
  if (size.thickness > limits::kMostTenonShare * v.common) {
    size.thickness = v.common / limits::kTenonParts;
    warn_joint(work, v.member, WarningId::kTenonThin, x, size.thickness, type.thickness.in());
  }
  double most = (v.opposed ? v.behind / 2 - 0.125 : v.behind - 0.75) - type.depth_clearance.in();
  if (v.opposed && v.proud > 0) most -= v.proud / 2;
  most = most < v.most ? most : v.most;
  if (!v.square() && most > 0.8 * (tt.hi - tt.lo) / v.k) most = 0.8 * (tt.hi - tt.lo) / v.k;
  if (size.length > most) {
    size.length = most;
    warn_joint(work, v.member, WarningId::kTenonShort, x, most, type.length.in());
  }
  return size;
}

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

/// Pegs through the receiver's cheeks; the hole in the tenon stands nearer to its shoulder by the drawbore.
void bore_pegs(Work& work, const EndView& v, const MortiseTenon& type, Range tt, double length) {
  if (!v.rw.aligned || v.rw.axis == Axis::kX) return;
  const double d = type.peg.diameter.in();
  double q = type.peg.from_shoulder.in();
  if (q > length - d || q < d / 2 + type.drawbore.in()) q = length / 2 + type.drawbore.in() / 2;
  for (int i = 0; i < type.pegs; ++i) {
    const double off = (i - (type.pegs - 1) / 2.0) * type.peg.spacing.in();
    const auto centre = [&](double depth) { return v.at((tt.lo + v.k * depth + tt.hi) / 2 + off, depth, 0); };
    bore_hole(work, v.receiver, v.rw.axis, centre(q), sides_along(work.timber(v.receiver), v.rw.axis), d,
              HoleUse::kPeg);
    bore_hole(work, v.member, v.mw, centre(q) + type.drawbore.in() * v.n, v.wide, d, HoleUse::kPeg);
  }
  work.frame.joints.back().drawbore = type.pegs > 0 ? type.drawbore.in() : 0;
}

void join_tenon(Work& work, const EndView& v, const MortiseTenon& type) {
  const Range tt = tenon_range(v, type);
  const TenonSize size = tenon_size(work, v, type, tt);
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
  bore_pegs(work, v, type, tt, size.length);
  joint.beyond_shoulder = size.length / v.cos;
  joint.tools.add({ToolSetting::kDepthStop, v.receiver, v.proud + size.length + type.depth_clearance.in()});
  joint.tools.add({ToolSetting::kFence, v.member, cheeks.lo - v.wide.lo});
  if (v.rw.aligned && v.rw.axis != Axis::kX)
    joint.tools.add({ToolSetting::kFence, v.receiver, cheeks.lo - v.rw_wood.lo});
  keep_ways(work, {v.u, -1 * v.n});
}

void join_butt(Work& work, const EndView& v) {
  if (v.proud > 1e-9) {
    cut_housing(work, v);
    work.frame.joints.back().tools.add({ToolSetting::kDepthStop, v.receiver, v.proud});
  }
  cut_to_shoulder(work, v, 0);
  shoulder_contact(work, v, {v.t_lo, v.t_hi}, v.wide);
  keep_ways(work, {v.u, -1 * v.n, v.t, -1 * v.t, v.w, -1 * v.w});
}

double housing_of(const JointType& type) {
  if (const auto* butt = std::get_if<HousedButt>(&type)) return butt->housing.in();
  if (const auto* tenon = std::get_if<MortiseTenon>(&type)) return tenon->housing.in();
  return 0;
}

/// The plan's joint for the meeting, or what was chosen for this end; one that cannot be had there is not used.
const JointType& joint_for(Work& work, const EndMeeting& meeting) {
  const JointType& planned = work.plan.joints[static_cast<std::size_t>(meeting.meeting)];
  const int index = work.override_of[static_cast<std::size_t>(meeting.member)];
  if (index < 0) return planned;
  const Override& o = work.plan.overrides[static_cast<std::size_t>(index)];
  const bool a = meeting.end == End::kA;
  if (!(a ? o.has_joint_a : o.has_joint_b)) return planned;
  Timber& timber = work.timber(meeting.member);
  const JointType& chosen = a ? o.joint_a : o.joint_b;
  if (!fits(meeting.meeting, kind_of(chosen)) || kind_of(chosen) == JointKind::kBirdsMouth) {
    work.add_finding(FindingId::kJointUnfit, timber.mark, work.timber(meeting.receiver).mark);
    return planned;
  }
  (a ? timber.overridden.joint_a : timber.overridden.joint_b) = true;
  return chosen;
}

}  // namespace

void join_end(Work& work, const EndMeeting& meeting) {
  if (meeting.member < 0 || meeting.receiver < 0) return;
  const JointType plain = HousedButt{Length{}};
  const JointType& type = meeting.plain ? plain : joint_for(work, meeting);
  if (const auto* lap = std::get_if<HalfLap>(&type)) return join_lap(work, meeting, *lap);
  EndView view;
  if (!see_end(work, meeting, housing_of(type), view)) {
    work.add_finding(FindingId::kJointUnfit, work.timber(meeting.member).mark, work.timber(meeting.receiver).mark);
    return;
  }
  Joint& joint = begin_joint(work, meeting.meeting, kind_of(type), meeting.member, meeting.receiver);
  joint.bearing = bearing_of(meeting.meeting);
  joint.end = meeting.end;
  joint.where = view.o;
  joint.past_face = view.proud;
  if (receiver_is_carried(meeting.meeting)) std::swap(joint.carried, joint.carrier);
  if (const auto* tenon = std::get_if<MortiseTenon>(&type))
    join_tenon(work, view, *tenon);
  else if (const auto* plate = std::get_if<KnifePlate>(&type))
    join_knife(work, view, *plate);
  else
    join_butt(work, view);
  if (meeting.plain)
    warn_joint(work, meeting.member, WarningId::kMadePlain, to_local(work.timber(meeting.member).at, view.o).x, 0, 0);
}

}  // namespace bentbook
