#include "tasks/frame_fields.h"

namespace bentbook {

constexpr unsigned kMostInFrame = 1'000'000;
constexpr int kMostIndex = 1'000'000;

void describe(Fields& fields, Vec3& v) {
  fields.number("x", v.x);
  fields.number("y", v.y);
  fields.number("z", v.z);
}

static void describe(Fields& fields, Vec2& v) {
  fields.number("x", v.x);
  fields.number("y", v.y);
}

template <class T, int N>
static void describe(Fields& fields, FixedList<T, N>& list) {
  fields.integer("count", list.count, 0, N);
  for (int i = 0; i < list.count; ++i) describe(fields, list[i]);
}

static void describe(Fields& fields, Placement& at) {
  describe(fields, at.origin);
  describe(fields, at.x);
  describe(fields, at.y);
  describe(fields, at.z);
}

static void describe(Fields& fields, EndCut& cut) {
  describe_enum(fields, "end", cut.end, End::kB);
  describe_enum(fields, "name", cut.name, EndCutName::kAngle);
  describe(fields, cut.plane.normal);
  fields.number("offset", cut.plane.offset);
}

static void describe(Fields& fields, Pocket& p) {
  describe_enum(fields, "sweep", p.sweep, Axis::kZ);
  fields.number("from", p.from);
  fields.number("to", p.to);
  fields.number("radius", p.radius);
  describe(fields, p.outline);
}

static void describe(Fields& fields, GridPlace& place) {
  fields.integer("bent", place.bent, -1, kMostIndex);
  fields.integer("bay", place.bay, -1, kMostIndex);
  int line = static_cast<unsigned char>(place.line);  // a letter
  fields.integer("line", line, 0, 127);
  place.line = static_cast<char>(line);
  fields.integer("number", place.number, -kMostIndex, kMostIndex);
}

static void describe(Fields& fields, Sides& s) {
  fields.number("y_lo", s.y_lo);
  fields.number("y_hi", s.y_hi);
  fields.number("z_lo", s.z_lo);
  fields.number("z_hi", s.z_hi);
}

/// As far as a joint's fasteners are counted.
static void describe(Fields& fields, Feature& f) {
  describe_enum(fields, "kind", f.kind, FeatureKind::kFork);
  fields.integer("joint", f.joint, -1, kMostIndex);
  fields.number("diameter", f.diameter);
}

static void describe(Fields& fields, Timber& t) {
  fields.text("mark", t.mark);
  describe_enum(fields, "kind", t.kind, TimberKind::kOther);
  describe(fields, t.place);
  fields.flag("near_is_reference", t.wood.near_is_reference);
  describe(fields, t.sides);
  fields.number("gravity_green", t.species.gravity_green);
  fields.number("gravity_12", t.species.gravity_12);
  fields.number("green_moisture", t.species.green_moisture);
  fields.number("moisture", t.moisture);
  fields.number("length", t.length);
  describe(fields, t.at);
  fields.list("cuts", t.cuts, kMostInFrame);
  fields.list("pockets", t.pockets, kMostInFrame);
  fields.list("features", t.features, kMostInFrame);
  fields.flag("placed", t.placed);
}

static void describe(Fields& fields, Joint& j) {
  describe_enum(fields, "meeting", j.meeting, Meeting::kBraceEnd);
  describe_enum(fields, "kind", j.kind, static_cast<JointKind>(kJointKinds - 1));
  describe_enum(fields, "bearing", j.bearing, Bearing::kButts);
  for (int* timber : {&j.member, &j.receiver, &j.carried, &j.carrier}) fields.integer("timber", *timber, 0, kMostIndex);
  describe_enum(fields, "end", j.end, End::kB);
  fields.flag("crossing", j.crossing);
  describe(fields, j.where);
  fields.number("beyond_shoulder", j.beyond_shoulder);
  fields.number("past_face", j.past_face);
  fields.number("drawbore", j.drawbore);
  describe(fields, j.ways);
  fields.integer("first_contact", j.first_contact, 0, kMostIndex);
  fields.integer("contacts", j.contacts, 0, kMostIndex);
}

static void describe(Fields& fields, ContactFace& c) {
  fields.integer("joint", c.joint, 0, kMostIndex);
  describe(fields, c.normal);
  describe(fields, c.corners);
}

void describe(Fields& fields, Frame& frame) {
  fields.list("timbers", frame.timbers, kMostInFrame);
  fields.list("joints", frame.joints, kMostInFrame);
  fields.list("contacts", frame.contacts, kMostInFrame);
}

}  // namespace bentbook
