#include "frame/joints/joint_fields.h"

#include "frame/keys.h"

namespace bentbook {

static void describe(Fields& fields, PinPattern& p) {
  fields.length("diameter", p.diameter);
  fields.integer("count", p.count, 0, 100);
  fields.length("from_shoulder", p.from_shoulder);
  fields.length("spacing", p.spacing);
  fields.length("plug", p.plug);
}

static void describe(Fields& fields, HousedButt& j) { fields.length("housing", j.housing); }

static void describe(Fields& fields, KnifePlate& j) {
  fields.text("name", j.name);
  fields.length("thickness", j.thickness);
  fields.length("reach", j.reach);
  fields.length("width", j.width);
  fields.length("slot_clearance", j.slot_clearance);
  fields.length("depth_clearance", j.depth_clearance);
  fields.choice("open", j.open, keys::kSlotOpen);
  fields.length("relief_leg", j.relief_leg);
  fields.length("root_radius", j.root_radius);
  fields.length("weld_crown", j.weld_crown);
  fields.length("base_thickness", j.base_thickness);
  fields.length("base_width", j.base_width);
  fields.length("base_height", j.base_height);
  fields.flag("let_in", j.let_in);
  fields.object("pins", j.pins);
  fields.integer("temporary_screws", j.temporary_screws, 0, 100);
}

static void describe(Fields& fields, MortiseTenon& j) {
  fields.length("thickness", j.thickness);
  fields.length("length", j.length);
  fields.length("shoulder_top", j.shoulder_top);
  fields.length("shoulder_bottom", j.shoulder_bottom);
  fields.length("housing", j.housing);
  fields.length("depth_clearance", j.depth_clearance);
  fields.integer("pegs", j.pegs, 0, 100);
  fields.object("peg", j.peg);
  fields.length("drawbore", j.drawbore);
}

static void describe(Fields& fields, BirdsMouth& j) { fields.length("seat", j.seat); }

static void describe(Fields& fields, RafterPeak& j) {
  fields.flag("tongue_and_fork", j.tongue_and_fork);
  fields.length("thickness", j.thickness);
  fields.length("clearance", j.clearance);
  fields.object("peg", j.peg);
}

static void describe(Fields& fields, HalfLap& j) {
  fields.integer("pegs", j.pegs, 0, 100);
  fields.object("peg", j.peg);
}

static void describe(Fields& fields, Scarf& j) {
  fields.length("length", j.length);
  fields.length("clearance", j.clearance);
  fields.integer("pegs", j.pegs, 0, 100);
  fields.object("peg", j.peg);
}

JointType joint_of_kind(JointKind kind) {
  switch (kind) {
    case JointKind::kHousedButt:
      return HousedButt{};
    case JointKind::kKnifePlate:
      return KnifePlate{};
    case JointKind::kMortiseTenon:
      return MortiseTenon{};
    case JointKind::kBirdsMouth:
      return BirdsMouth{};
    case JointKind::kRafterPeak:
      return RafterPeak{};
    case JointKind::kHalfLap:
      return HalfLap{};
    case JointKind::kScarf:
      return Scarf{};
  }
  return HousedButt{};
}

void describe(Fields& fields, JointType& type) {
  JointKind kind = kind_of(type);
  fields.choice("type", kind, keys::kJointKind);
  if (kind != kind_of(type)) type = joint_of_kind(kind);
  std::visit([&](auto& joint) { describe(fields, joint); }, type);
}

void describe(Fields& fields, JointsByMeeting& by) {
  for (std::size_t i = 0; i < by.joints.size(); ++i) fields.object(keys::kMeeting[i].data(), by.joints[i]);
}

}  // namespace bentbook
