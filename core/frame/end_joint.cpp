#include <utility>

#include "frame/end_view.h"

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

void shoulder_contact(Work& work, const EndView& v, Range tt, Range ww) {
  if (tt.hi - tt.lo < 1e-6 || ww.hi - ww.lo < 1e-6) return;
  add_quad(work, v, true, v.n, {tt.lo, 0}, {tt.hi, 0}, ww);
}

Range tenon_range(const EndView& v, const MortiseTenon& type) {
  const double at_lo = (v.turn > 0 ? type.shoulder_bottom : type.shoulder_top).in() / v.cos;
  const double at_hi = (v.turn > 0 ? type.shoulder_top : type.shoulder_bottom).in() / v.cos;
  const Range tt{v.t_lo + at_lo, v.t_hi - at_hi};
  return tt.hi - tt.lo < 1 ? Range{v.t_lo, v.t_hi} : tt;
}

void warn(Work& work, int timber, WarningId id, double station, double value, double value2) {
  work.timber(timber).warnings.push_back({id, static_cast<int>(work.frame.joints.size()) - 1, station, value, value2});
}

struct TenonSize {
  double thickness = 0, length = 0;
};
TenonSize tenon_size(Work& work, const EndView& v, const MortiseTenon& type, Range tt) {
  const double x = to_local(work.timber(v.member).at, v.o).x;
  TenonSize size{type.thickness.in(), type.length.in()};
  if (size.thickness > 0.6 * v.common) {
    size.thickness = v.common / 3;
    warn(work, v.member, WarningId::kTenonThin, x, size.thickness, type.thickness.in());
  }
  double most = (v.opposed ? v.behind / 2 - 0.125 : v.behind - 0.75) - type.depth_clearance.in();
  if (v.opposed && v.proud > 0) most -= v.proud / 2;
  most = most < v.most ? most : v.most;
  if (!v.square() && most > 0.8 * (tt.hi - tt.lo) / v.k) most = 0.8 * (tt.hi - tt.lo) / v.k;
  if (size.length > most) {
    size.length = most;
    warn(work, v.member, WarningId::kTenonShort, x, most, type.length.in());
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

void add_hole(Work& work, int timber, Axis sweep, Vec3 centre, Range through, double diameter, HoleUse use) {
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

/// Pegs through the receiver's cheeks; the hole in the tenon stands nearer to its shoulder by the drawbore.
void bore_pegs(Work& work, const EndView& v, const MortiseTenon& type, Range tt, double length) {
  if (!v.rw.aligned || v.rw.axis == Axis::kX) return;
  const double d = type.peg.diameter.in();
  double q = type.peg.from_shoulder.in();
  if (q > length - d || q < d / 2 + type.drawbore.in()) q = length / 2 + type.drawbore.in() / 2;
  for (int i = 0; i < type.pegs; ++i) {
    const double off = (i - (type.pegs - 1) / 2.0) * type.peg.spacing.in();
    const auto centre = [&](double depth) { return v.at((tt.lo + v.k * depth + tt.hi) / 2 + off, depth, 0); };
    add_hole(work, v.receiver, v.rw.axis, centre(q), sides_along(work.timber(v.receiver), v.rw.axis), d, HoleUse::kPeg);
    add_hole(work, v.member, v.mw, centre(q) + type.drawbore.in() * v.n, v.wide, d, HoleUse::kPeg);
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

void warn_pins(Work& work, const EndView& v, const KnifePlate& plate, double middle) {
  const double d = plate.pins.diameter.in(), x = to_local(work.timber(v.member).at, v.o).x;
  // End and edge distances of 7 and 4 diameters, shrinkage room past 5 in of spread: from memory, the engineer decides.
  if (plate.pins.from_shoulder.in() < 7 * d - 1e-9)
    warn(work, v.member, WarningId::kEndDistance, x, plate.pins.from_shoulder.in() / d, 7);
  const double spread = (plate.pins.count - 1) * plate.pins.spacing.in();
  const double edge = (v.v.hi - middle) - spread / 2;
  if (plate.pins.count > 0 && edge < 4 * d - 1e-9) warn(work, v.member, WarningId::kEdgeDistance, x, edge / d, 4);
  if (spread > 5) warn(work, v.member, WarningId::kPinSpread, x, spread, 5);
  const double need = plate.root_radius.in() + 1.41 * plate.weld_crown.in();
  if (plate.relief_leg.in() < need - 1e-9)
    warn(work, v.member, WarningId::kReliefSmall, x, plate.relief_leg.in(), need);
  if (plate.open == SlotOpen::kTop || plate.open == SlotOpen::kBoth) warn(work, v.member, WarningId::kOpenTop, x, 0, 0);
}

/// Height of the slot across the member, open sides reaching past.
Range slot_height(const EndView& v, const KnifePlate& plate) {
  const double middle = (v.v.lo + v.v.hi) / 2, half = plate.width.in() / 2 + plate.depth_clearance.in();
  Range height{middle - half, middle + half};
  if (plate.open == SlotOpen::kBoth || plate.open == SlotOpen::kTop) height.hi = v.v.hi + kPast;
  if (plate.open == SlotOpen::kBoth || plate.open == SlotOpen::kBottom) height.lo = v.v.lo - kPast;
  return height;
}

Tq on_line(const EndView& v, double height, double q) { return {v.turn * height / v.cos + v.k * q, q}; }

/// 45° at a square end; at an oblique one a rebate of the same leg, since the mouth runs off the timber's axes.
void cut_relief(Work& work, const EndView& v, const KnifePlate& plate, Range height, Range slot, double floor) {
  const double leg = plate.relief_leg.in();
  Timber& m = work.timber(v.member);
  const Feature f = member_feature(work, v, FeatureKind::kRelief, {slot.lo - leg, slot.hi + leg}, floor + leg);
  if (!v.square()) {
    const double q = -(floor + leg);
    add_feature(m, f,
                member_pocket(work, v,
                              {on_line(v, height.lo, q), on_line(v, height.hi, q), on_line(v, height.hi, kPast),
                               on_line(v, height.lo, kPast)},
                              {slot.lo - leg, slot.hi + leg}));
    return;
  }
  const double out = leg + floor + kPast;
  bool first = true;
  for (const double side : {-1.0, 1.0}) {
    const double wall = side < 0 ? slot.lo : slot.hi;
    const Vec3 points[] = {v.at(0, -(floor + leg), wall), v.at(0, kPast, wall), v.at(0, kPast, wall + side * out)};
    const Pocket pocket = pocket_from(m.at, v.mv, points, 3, height.lo, height.hi);
    if (first)
      add_feature(m, f, pocket);
    else
      add_to_feature(m, pocket);
    first = false;
  }
}

void cut_base(Work& work, const EndView& v, const KnifePlate& plate, Range tt, Range ww) {
  const double thick = plate.base_thickness.in();
  if (!(thick > 0)) return;
  if (plate.let_in) {
    const double out = v.proud + kPast;
    add_feature(work.timber(v.receiver), receiver_feature(work, v, FeatureKind::kLetIn, tt, ww, v.proud + thick),
                receiver_pocket(work, v, {{tt.lo, -out}, {tt.hi, -out}, {tt.hi, thick}, {tt.lo, thick}}, ww));
    work.frame.joints.back().tools.add({ToolSetting::kDepthStop, v.receiver, v.proud + thick});
  } else {
    add_feature(work.timber(v.member), member_feature(work, v, FeatureKind::kLetIn, ww, thick),
                member_pocket(work, v, {{tt.lo, -thick}, {tt.hi, -thick}, {tt.hi, kPast}, {tt.lo, kPast}}, ww));
    work.frame.joints.back().tools.add({ToolSetting::kDepthStop, v.member, thick});
  }
}

void set_knife_tools(Work& work, const EndView& v, const KnifePlate& plate, double slot_lo, double depth) {
  Joint& joint = work.frame.joints.back();
  const Timber& m = work.timber(v.member);
  const bool y = v.mw == Axis::kY;
  const double design = (y ? m.wood.design.breadth : m.wood.design.depth).in();
  joint.tools.add({ToolSetting::kDepthStop, v.member, depth});
  joint.tools.add({ToolSetting::kFence, v.member, slot_lo - v.wide.lo});
  joint.tools.add({ToolSetting::kShimToCentre, v.member, (design - (v.wide.hi - v.wide.lo)) / 2});
  joint.tools.add({ToolSetting::kJigOffset, v.member, v.middle - v.wide.lo});
  joint.tools.add({ToolSetting::kDepthStop, v.receiver, plate.pins.plug.in()});
}

void join_knife(Work& work, const EndView& v, const KnifePlate& plate) {
  cut_to_shoulder(work, v, 0);
  const double half = (plate.thickness.in() + plate.slot_clearance.in()) / 2;
  const Range slot{v.middle - half, v.middle + half};
  const Range height = slot_height(v, plate);
  const double middle = (v.v.lo + v.v.hi) / 2;
  // The base stays within the wood of both; an inch of it is the least that carries a plate.
  const double t_mid = (v.t_lo + v.t_hi) / 2;
  const Range base_t{t_mid - plate.base_height.in() / 2, t_mid + plate.base_height.in() / 2};
  const Range base_w{v.middle - plate.base_width.in() / 2, v.middle + plate.base_width.in() / 2};
  const double floor = plate.let_in ? 0 : plate.base_thickness.in();
  const double depth = floor + plate.reach.in() + plate.depth_clearance.in();
  const double q = -depth * v.cos;
  Feature f = member_feature(work, v, FeatureKind::kSlot, slot, depth);
  f.open = plate.open;
  add_feature(work.timber(v.member), f,
              member_pocket(work, v,
                            {on_line(v, height.lo, q), on_line(v, height.hi, q), on_line(v, height.hi, kPast),
                             on_line(v, height.lo, kPast)},
                            slot));
  if (plate.relief_leg.in() > 0) cut_relief(work, v, plate, height, slot, floor);
  cut_base(work, v, plate, base_t, base_w);
  for (int i = 0; i < plate.pins.count; ++i) {
    const double at = middle + (i - (plate.pins.count - 1) / 2.0) * plate.pins.spacing.in();
    const Tq p = on_line(v, at, -(floor + plate.pins.from_shoulder.in()) * v.cos);
    add_hole(work, v.member, v.mw, v.at(p.t, p.q, 0), v.wide, plate.pins.diameter.in(), HoleUse::kPin);
  }
  const double leg = plate.relief_leg.in();
  const double lo = base_w.lo < slot.lo - leg ? base_w.lo : slot.lo - leg;
  const double hi = base_w.hi > slot.hi + leg ? base_w.hi : slot.hi + leg;
  shoulder_contact(work, v, {v.t_lo, v.t_hi}, {v.wide.lo, lo});
  shoulder_contact(work, v, {v.t_lo, v.t_hi}, {hi, v.wide.hi});
  set_knife_tools(work, v, plate, slot.lo, depth);
  warn_pins(work, v, plate, middle);
  const Vec3 up = v.turn * v.t;
  const bool down_in = plate.open == SlotOpen::kBottom || plate.open == SlotOpen::kBoth;
  const bool up_in = plate.open == SlotOpen::kTop || plate.open == SlotOpen::kBoth;
  if (down_in && up_in)
    keep_ways(work, {v.u, -1 * v.n, -1 * up, up});
  else if (down_in)
    keep_ways(work, {v.u, -1 * v.n, -1 * up});
  else if (up_in)
    keep_ways(work, {v.u, -1 * v.n, up});
  else
    keep_ways(work, {v.u, -1 * v.n});
}

double housing_of(const JointType& type) {
  if (const auto* butt = std::get_if<HousedButt>(&type)) return butt->housing.in();
  if (const auto* tenon = std::get_if<MortiseTenon>(&type)) return tenon->housing.in();
  return 0;
}

}  // namespace

void join_end(Work& work, const EndMeeting& meeting) {
  if (meeting.member < 0 || meeting.receiver < 0) return;
  const JointType plain = HousedButt{Length{}};
  const JointType& type = meeting.plain ? plain : work.plan.joints[static_cast<std::size_t>(meeting.meeting)];
  if (const auto* lap = std::get_if<HalfLap>(&type)) return join_lap(work, meeting, *lap);
  EndView view;
  if (!see_end(work, meeting, housing_of(type), view)) {
    work.find(FindingId::kJointUnfit, work.timber(meeting.member).mark, work.timber(meeting.receiver).mark);
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
    warn(work, meeting.member, WarningId::kMadePlain, to_local(work.timber(meeting.member).at, view.o).x, 0, 0);
}

}  // namespace bentbook
