#include "frame/joints/end_view.h"
#include "frame/keys.h"
#include "frame/limits.h"
#include "measure/fields.h"

namespace bentbook {

void describe(Fields& fields, KnifePlate& j) {
  constexpr LengthEntry kSmall{{}, Length::inches(4)};
  constexpr LengthEntry kSize{Length::inches(1), Length::inches(48)};
  fields.text("name", j.name);
  fields.length("thickness", j.thickness, {Length::inches(1, 16), Length::inches(4)});
  fields.length("reach", j.reach, kSize);
  fields.length("width", j.width, kSize);
  fields.length("slot_clearance", j.slot_clearance, {{}, Length::inches(1)});
  fields.length("depth_clearance", j.depth_clearance, kSmall);
  fields.choice("open", j.open, keys::kSlotOpen);
  fields.length("relief_leg", j.relief_leg, kSmall);
  fields.length("root_radius", j.root_radius, kSmall);
  fields.length("weld_crown", j.weld_crown, kSmall);
  fields.length("base_thickness", j.base_thickness, kSmall);
  fields.length("base_width", j.base_width, kSize);
  fields.length("base_height", j.base_height, kSize);
  fields.flag("let_in", j.let_in);
  fields.object("pins", j.pins);
  fields.integer("temporary_screws", j.temporary_screws, 0, kMostPins);
}

namespace {

void warn_pins(Work& work, const EndView& v, const KnifePlate& plate, double middle) {
  const double d = plate.pins.diameter.in(), x = to_local(work.timber(v.member).at, v.o).x;
  if (plate.pins.from_shoulder.in() < limits::kEndDiameters * d - 1e-9)
    warn_joint(work, v.member, WarningId::kEndDistance, x, plate.pins.from_shoulder.in() / d, limits::kEndDiameters);
  const double spread = (plate.pins.count - 1) * plate.pins.spacing.in();
  const double edge = (v.v.hi - middle) - spread / 2;
  if (plate.pins.count > 0 && edge < limits::kEdgeDiameters * d - 1e-9)
    warn_joint(work, v.member, WarningId::kEdgeDistance, x, edge / d, limits::kEdgeDiameters);
  if (spread > limits::kMostPinSpread)
    warn_joint(work, v.member, WarningId::kPinSpread, x, spread, limits::kMostPinSpread);
  const double need = plate.root_radius.in() + 1.41 * plate.weld_crown.in();
  if (plate.relief_leg.in() < need - 1e-9)
    warn_joint(work, v.member, WarningId::kReliefSmall, x, plate.relief_leg.in(), need);
  if (plate.open == SlotOpen::kTop || plate.open == SlotOpen::kBoth)
    warn_joint(work, v.member, WarningId::kOpenTop, x, 0, 0);
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
    work.frame.joints.back().tools.add({ToolSetting::kLetInDepth, v.receiver, v.proud + thick, v.face});
  } else {
    add_feature(work.timber(v.member), member_feature(work, v, FeatureKind::kLetIn, ww, thick),
                member_pocket(work, v, {{tt.lo, -thick}, {tt.hi, -thick}, {tt.hi, kPast}, {tt.lo, kPast}}, ww));
    work.frame.joints.back().tools.add({ToolSetting::kLetInDepth, v.member, thick});
  }
}

void set_knife_tools(Work& work, const EndView& v, const KnifePlate& plate, Range slot, double depth) {
  Joint& joint = work.frame.joints.back();
  const Wood& wood = work.timber(v.member).wood;
  const double design = (v.mw == Axis::kY ? wood.design.breadth : wood.design.depth).in();
  const Gauged at = gauge_member(work, v, slot);
  const double middle = (at.near + at.far) / 2;
  joint.tools.add({ToolSetting::kDepthStop, v.member, depth});
  joint.tools.add({ToolSetting::kFence, v.member, at.near, at.from});
  joint.tools.add({ToolSetting::kSlotWidth, v.member, slot.hi - slot.lo});
  joint.tools.add({ToolSetting::kShimToCentre, v.member, design / 2 - middle, at.from});
  joint.tools.add({ToolSetting::kJigOffset, v.member, middle, at.from});
  if (plate.pins.count > 0 && plate.pins.plug > Length{})
    joint.tools.add({ToolSetting::kPlugDepth, v.member, plate.pins.plug.in(), bored_from(v.mw)});
}

}  // namespace

void join_knife(Work& work, const EndMeeting& meeting, const KnifePlate& plate) {
  EndView v;
  if (!begin_end_joint(work, meeting, JointKind::kKnifePlate, 0, v)) return;
  cut_to_shoulder(work, v, 0);
  const double half = slot_width(plate).in() / 2;
  const Range slot{v.middle - half, v.middle + half};
  const Range height = slot_height(v, plate);
  const double middle = (v.v.lo + v.v.hi) / 2;
  // The base stays within the wood of both; an inch of it is the least that carries a plate.
  const double t_mid = (v.t_lo + v.t_hi) / 2;
  const Range base_t{t_mid - plate.base_height.in() / 2, t_mid + plate.base_height.in() / 2};
  const Range base_w{v.middle - plate.base_width.in() / 2, v.middle + plate.base_width.in() / 2};
  const double floor = base_in_member(plate).in(), depth = slot_depth(plate).in();
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
    bore_hole(work, v.member, v.mw, v.at(p.t, p.q, 0), plate.pins.diameter.in(), HoleUse::kPin);
  }
  const double leg = plate.relief_leg.in();
  const double lo = base_w.lo < slot.lo - leg ? base_w.lo : slot.lo - leg;
  const double hi = base_w.hi > slot.hi + leg ? base_w.hi : slot.hi + leg;
  shoulder_contact(work, v, {v.t_lo, v.t_hi}, {v.wide.lo, lo});
  shoulder_contact(work, v, {v.t_lo, v.t_hi}, {hi, v.wide.hi});
  set_knife_tools(work, v, plate, slot, depth);
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

}  // namespace bentbook
