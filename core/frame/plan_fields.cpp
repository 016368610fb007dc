#include "frame/plan_fields.h"

#include "frame/joints/joint_table.h"
#include "frame/keys.h"

namespace bentbook {

void describe(Fields& fields, Species& s) {
  fields.text("name", s.name);
  fields.number("gravity_green", s.gravity_green, 0.01, 2);
  fields.number("gravity_12", s.gravity_12, 0.01, 2);
  fields.number("green_moisture", s.green_moisture, 0, 400);
}

static void describe(Fields& fields, Wood& w) {
  fields.object("nominal", w.nominal);
  fields.object("design", w.design);
  fields.object("actual", w.actual);
  fields.flag("top_is_reference", w.top_is_reference);
  fields.flag("near_is_reference", w.near_is_reference);
  fields.length("bow", w.bow, {Length::inches(-6), Length::inches(6)});
}

/// Faces are numbers 1 to 4, as they are written on the wood.
static void describe_face(Fields& fields, Face& face) {
  int number = static_cast<int>(face);
  fields.integer("face", number, 1, 4);
  face = static_cast<Face>(number);
}

static void describe(Fields& fields, Defect& d) {
  fields.choice("kind", d.kind, keys::kDefect);
  describe_face(fields, d.face);
  fields.length("from", d.from);
  fields.length("to", d.to);
}

void describe(Fields& fields, Override& o) {
  fields.text("mark", o.mark);
  fields.flag("removed", o.removed);
  fields.flag("has_section", o.has_section);
  fields.object("section", o.section);
  fields.flag("has_wood", o.has_wood);
  fields.object("wood", o.wood);
  fields.flag("has_species", o.has_species);
  fields.object("species", o.species);
  fields.length("pier_level", o.pier_level, {Length::feet(-20), Length::feet(20)});
  fields.flag("has_joint_a", o.has_joint_a);
  fields.object("joint_a", o.joint_a);
  fields.flag("has_joint_b", o.has_joint_b);
  fields.object("joint_b", o.joint_b);
  fields.list("defects", o.defects, 1000);
}

static void describe(Fields& fields, HandEnd& e) {
  fields.angle("angle", e.angle);
  fields.angle("tilt", e.tilt);
}

static void describe(Fields& fields, HandFeature& f) {
  fields.choice("kind", f.kind, keys::kFeatureKind);
  describe_face(fields, f.face);
  fields.length("station", f.station);
  fields.length("offset", f.offset);
  fields.length("along", f.along);
  fields.length("across", f.across);
  fields.length("depth", f.depth);
  fields.length("diameter", f.diameter);
}

static void describe(Fields& fields, HandTimber& t) {
  fields.text("mark", t.mark);
  fields.choice("kind", t.kind, keys::kTimberKind);
  fields.object("wood", t.wood);
  fields.object("species", t.species);
  fields.length("length", t.length, kOnBuilding);
  fields.object("end_a", t.a);
  fields.object("end_b", t.b);
  fields.list("features", t.features, 1000);
  fields.flag("placed", t.placed);
  fields.length("x", t.origin[0], kOnSite);
  fields.length("y", t.origin[1], kOnSite);
  fields.length("z", t.origin[2], kOnSite);
  fields.angle("turn", t.turn);
  fields.angle("rise", t.rise);
  fields.angle("roll", t.roll);
}

static void describe(Fields& fields, Bay& b) {
  fields.length("width", b.width, kOnBuilding);
  fields.integer("label", b.label, 1, 1'000'000);
}

/// A girt line by the height of its top.
static void describe(Fields& fields, Length& height) { fields.length("height", height, kOnBuilding); }

static void describe(Fields& fields, PlanSections& s) {
  fields.object("sill", s.sill);
  fields.object("post", s.post);
  fields.object("plate", s.plate);
  fields.object("tie", s.tie);
  fields.object("girt", s.girt);
  fields.object("joist", s.joist);
  fields.object("king_post", s.king_post);
  fields.object("queen_post", s.queen_post);
  fields.object("collar", s.collar);
  fields.object("ridge_beam", s.ridge_beam);
  fields.object("principal_rafter", s.principal);
  fields.object("common_rafter", s.common);
  fields.object("purlin", s.purlin);
  fields.object("brace", s.brace);
}

static void describe(Fields& fields, HipEnds& h) {
  fields.slope("pitch", h.pitch);
  fields.object("hip_rafter", h.hip);
  fields.flag("end_posts", h.end_posts);
  fields.flag("dragon_ties", h.dragon_ties);
  fields.length("dragon_leg", h.dragon_leg);
  fields.object("dragon_tie", h.dragon_tie);
}

static void describe_roof(Fields& fields, FramePlan& p) {
  fields.slope("pitch_left", p.pitch_left);
  fields.slope("pitch_right", p.pitch_right);
  fields.length("eave_overhang", p.eave_overhang);
  fields.length("gable_overhang", p.gable_overhang);
  fields.choice("roof", p.roof, keys::kRoofFrame);
  fields.length("rafter_spacing", p.rafter_spacing);
  fields.length("purlin_spacing", p.purlin_spacing);
  fields.choice("peak", p.peak, keys::kPeak);
  fields.choice("on_ties", p.on_ties, keys::kOnTies);
  fields.length("queen_inset", p.queen_inset);
}

static void describe_walls(Fields& fields, FramePlan& p) {
  fields.flag("ties", p.ties);
  fields.length("tie_drop", p.tie_drop);
  fields.flag("collars", p.collars);
  fields.length("collar_rise", p.collar_rise, kOnBuilding);
  fields.flag("loft", p.loft);
  fields.length("joist_spacing", p.joist_spacing);
  fields.flag("sills", p.sills);
  fields.list("girts", p.girts, 100);
  fields.flag("end_girts", p.end_girts);
  fields.flag("braces", p.braces);
  fields.length("brace_leg_post", p.brace_leg_post);
  fields.length("brace_leg_beam", p.brace_leg_beam);
  fields.length("stock_most", p.stock_most, kOnBuilding);
  fields.length("stand_off", p.stand_off);
}

/// Members by meeting.
struct JointsByMeeting {
  std::array<JointType, kMeetings>& joints;
};
static void describe(Fields& fields, JointsByMeeting& by) {
  for (std::size_t i = 0; i < by.joints.size(); ++i) fields.object(keys::kMeeting[i].data(), by.joints[i]);
}

void describe(Fields& fields, FramePlan& p) {
  fields.choice("form", p.form, keys::kRoofForm);
  fields.length("span", p.span, kOnBuilding);
  fields.list("bays", p.bays, 1000);
  fields.length("plate_left", p.plate_left, kOnBuilding);
  fields.length("plate_right", p.plate_right, kOnBuilding);
  describe_roof(fields, p);
  describe_walls(fields, p);
  fields.object("sections", p.sections);
  JointsByMeeting joints{p.joints};
  fields.object("joints", joints);
  fields.object("species", p.species);
  fields.number("moisture", p.moisture, 0, 400, 300);
  fields.number("load_psf", p.load_psf, 0, 100'000, 1000);
  fields.list("overrides", p.overrides, 100'000);
  fields.list("added", p.added, 100'000);
  if (fields.reads() || p.form == RoofForm::kHip || !(p.hips == HipEnds{})) fields.object("hips", p.hips);
}

}  // namespace bentbook
