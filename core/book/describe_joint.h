#pragma once
/// Inside the book: joints in JSON. `type` says which measures follow.

#include "book/json_io.h"
#include "frame/joints/joint.h"
#include "frame/keys.h"

namespace bentbook {

template <class Io>
void describe(Io& io, PinPattern& p) {
  io.length("diameter", p.diameter);
  io.integer("count", p.count, 0, 100);
  io.length("from_shoulder", p.from_shoulder);
  io.length("spacing", p.spacing);
  io.length("plug", p.plug);
}

template <class Io>
void describe(Io& io, HousedButt& j) {
  io.length("housing", j.housing);
}

template <class Io>
void describe(Io& io, KnifePlate& j) {
  io.text("name", j.name);
  io.length("thickness", j.thickness);
  io.length("reach", j.reach);
  io.length("width", j.width);
  io.length("slot_clearance", j.slot_clearance);
  io.length("depth_clearance", j.depth_clearance);
  io.choice("open", j.open, keys::kSlotOpen);
  io.length("relief_leg", j.relief_leg);
  io.length("root_radius", j.root_radius);
  io.length("weld_crown", j.weld_crown);
  io.length("base_thickness", j.base_thickness);
  io.length("base_width", j.base_width);
  io.length("base_height", j.base_height);
  io.flag("let_in", j.let_in);
  io.object("pins", j.pins);
  io.integer("temporary_screws", j.temporary_screws, 0, 100);
}

template <class Io>
void describe(Io& io, MortiseTenon& j) {
  io.length("thickness", j.thickness);
  io.length("length", j.length);
  io.length("shoulder_top", j.shoulder_top);
  io.length("shoulder_bottom", j.shoulder_bottom);
  io.length("housing", j.housing);
  io.length("depth_clearance", j.depth_clearance);
  io.integer("pegs", j.pegs, 0, 100);
  io.object("peg", j.peg);
  io.length("drawbore", j.drawbore);
}

template <class Io>
void describe(Io& io, BirdsMouth& j) {
  io.length("seat", j.seat);
}

template <class Io>
void describe(Io& io, RafterPeak& j) {
  io.flag("tongue_and_fork", j.tongue_and_fork);
  io.length("thickness", j.thickness);
  io.length("clearance", j.clearance);
  io.object("peg", j.peg);
}

template <class Io>
void describe(Io& io, HalfLap& j) {
  io.integer("pegs", j.pegs, 0, 100);
  io.object("peg", j.peg);
}

template <class Io>
void describe(Io& io, Scarf& j) {
  io.length("length", j.length);
  io.length("clearance", j.clearance);
  io.integer("pegs", j.pegs, 0, 100);
  io.object("peg", j.peg);
}

/// With its default measures.
inline JointType joint_of_kind(JointKind kind) {
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

template <class Io>
void describe(Io& io, JointType& type) {
  JointKind kind = kind_of(type);
  io.choice("type", kind, keys::kJointKind);
  if (kind != kind_of(type)) type = joint_of_kind(kind);
  std::visit([&](auto& joint) { describe(io, joint); }, type);
}

/// Members by meeting.
struct JointsByMeeting {
  std::array<JointType, kMeetings>& joints;
};
template <class Io>
void describe(Io& io, JointsByMeeting& by) {
  for (std::size_t i = 0; i < by.joints.size(); ++i) io.object(keys::kMeeting[i].data(), by.joints[i]);
}

}  // namespace bentbook
