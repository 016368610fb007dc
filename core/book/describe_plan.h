#pragma once
/// Inside the book: the frame plan, its overrides and the timbers entered by hand, in JSON.

#include "book/describe.h"
#include "book/describe_joint.h"
#include "frame/plan.h"

namespace bentbook {

template <class Io>
void describe(Io& io, Species& s) {
  io.text("name", s.name);
  number_within(io, "gravity_green", s.gravity_green, 0.01, 2);
  number_within(io, "gravity_12", s.gravity_12, 0.01, 2);
  number_within(io, "green_moisture", s.green_moisture, 0, 400);
}

template <class Io>
void describe(Io& io, Wood& w) {
  io.object("nominal", w.nominal);
  io.object("design", w.design);
  io.object("actual", w.actual);
  io.flag("top_is_reference", w.top_is_reference);
  io.flag("near_is_reference", w.near_is_reference);
  io.length("bow", w.bow);
}

/// Faces are numbers 1 to 4, as they are written on the wood.
template <class Io>
void describe_face(Io& io, Face& face) {
  int number = static_cast<int>(face);
  io.integer("face", number, 1, 4);
  face = static_cast<Face>(number);
}

template <class Io>
void describe(Io& io, Defect& d) {
  io.choice("kind", d.kind, keys::kDefect);
  describe_face(io, d.face);
  io.length("from", d.from);
  io.length("to", d.to);
}

template <class Io>
void describe(Io& io, Override& o) {
  io.text("mark", o.mark);
  io.flag("removed", o.removed);
  io.flag("has_section", o.has_section);
  io.object("section", o.section);
  io.flag("has_wood", o.has_wood);
  io.object("wood", o.wood);
  io.flag("has_species", o.has_species);
  io.object("species", o.species);
  io.length("pier_level", o.pier_level);
  io.flag("has_joint_a", o.has_joint_a);
  io.object("joint_a", o.joint_a);
  io.flag("has_joint_b", o.has_joint_b);
  io.object("joint_b", o.joint_b);
  io.list("defects", o.defects, 1000);
}

template <class Io>
void describe(Io& io, HandEnd& e) {
  io.angle("angle", e.angle);
  io.angle("tilt", e.tilt);
}

template <class Io>
void describe(Io& io, HandFeature& f) {
  io.choice("kind", f.kind, keys::kFeatureKind);
  describe_face(io, f.face);
  io.length("station", f.station);
  io.length("offset", f.offset);
  io.length("along", f.along);
  io.length("across", f.across);
  io.length("depth", f.depth);
  io.length("diameter", f.diameter);
}

template <class Io>
void describe(Io& io, HandTimber& t) {
  io.text("mark", t.mark);
  io.choice("kind", t.kind, keys::kTimberKind);
  io.object("wood", t.wood);
  io.object("species", t.species);
  io.length("length", t.length);
  io.object("end_a", t.a);
  io.object("end_b", t.b);
  io.list("features", t.features, 1000);
  io.flag("placed", t.placed);
  io.length("x", t.origin[0]);
  io.length("y", t.origin[1]);
  io.length("z", t.origin[2]);
  io.angle("turn", t.turn);
  io.angle("rise", t.rise);
  io.angle("roll", t.roll);
}

template <class Io>
void describe(Io& io, Bay& b) {
  io.length("width", b.width);
  io.integer("label", b.label, 1, 1'000'000);
}

/// A girt line by the height of its top.
template <class Io>
void describe(Io& io, Length& height) {
  io.length("height", height);
}

template <class Io>
void describe(Io& io, PlanSections& s) {
  io.object("sill", s.sill);
  io.object("post", s.post);
  io.object("plate", s.plate);
  io.object("tie", s.tie);
  io.object("girt", s.girt);
  io.object("joist", s.joist);
  io.object("king_post", s.king_post);
  io.object("queen_post", s.queen_post);
  io.object("collar", s.collar);
  io.object("ridge_beam", s.ridge_beam);
  io.object("principal_rafter", s.principal);
  io.object("common_rafter", s.common);
  io.object("purlin", s.purlin);
  io.object("brace", s.brace);
}

template <class Io>
void describe_roof(Io& io, FramePlan& p) {
  io.slope("pitch_left", p.pitch_left);
  io.slope("pitch_right", p.pitch_right);
  io.length("eave_overhang", p.eave_overhang);
  io.length("gable_overhang", p.gable_overhang);
  io.choice("roof", p.roof, keys::kRoofFrame);
  io.length("rafter_spacing", p.rafter_spacing);
  io.length("purlin_spacing", p.purlin_spacing);
  io.choice("peak", p.peak, keys::kPeak);
  io.choice("on_ties", p.on_ties, keys::kOnTies);
  io.length("queen_inset", p.queen_inset);
}

template <class Io>
void describe_walls(Io& io, FramePlan& p) {
  io.flag("ties", p.ties);
  io.length("tie_drop", p.tie_drop);
  io.flag("collars", p.collars);
  io.length("collar_rise", p.collar_rise);
  io.flag("loft", p.loft);
  io.length("joist_spacing", p.joist_spacing);
  io.flag("sills", p.sills);
  io.list("girts", p.girts, 100);
  io.flag("end_girts", p.end_girts);
  io.flag("braces", p.braces);
  io.length("brace_leg_post", p.brace_leg_post);
  io.length("brace_leg_beam", p.brace_leg_beam);
  io.length("stock_most", p.stock_most);
  io.length("stand_off", p.stand_off);
}

template <class Io>
void describe(Io& io, FramePlan& p) {
  io.choice("form", p.form, keys::kRoofForm);
  io.length("span", p.span);
  io.list("bays", p.bays, 1000);
  io.length("plate_left", p.plate_left);
  io.length("plate_right", p.plate_right);
  describe_roof(io, p);
  describe_walls(io, p);
  io.object("sections", p.sections);
  JointsByMeeting joints{p.joints};
  io.object("joints", joints);
  io.object("species", p.species);
  number_within(io, "moisture", p.moisture, 0, 400);
  number_within(io, "load_psf", p.load_psf, 0, 100'000);
  io.list("overrides", p.overrides, 100'000);
  io.list("added", p.added, 100'000);
}

}  // namespace bentbook
