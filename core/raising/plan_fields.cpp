#include "raising/plan_fields.h"

#include "frame/joints/joint_table.h"

namespace bentbook {

void describe(Fields& fields, std::string& mark) { fields.text("mark", mark); }

static void describe(Fields& fields, TimberPoint& p) {
  fields.text("mark", p.mark);
  fields.length("station", p.station, kOnBuilding);
}

void describe(Fields& fields, Temporary& t) {
  fields.text("name", t.name);
  fields.choice("kind", t.kind, kTemporaryWords);
  fields.object("from", t.from);
  fields.object("to", t.to);
  fields.length("ground_x", t.ground_x, kOnSite);
  fields.length("ground_y", t.ground_y, kOnSite);
  fields.length("ground_z", t.ground_z, kOnSite);
  fields.length("thickness", t.thickness);
  fields.weight("rated", t.rated);
}

static void describe(Fields& fields, Assembly& a) {
  fields.text("name", a.name);
  fields.list("marks", a.marks, kMostRaisingThings);
}

static void describe(Fields& fields, SetPiece& s) {
  fields.text("mark", s.mark);
  fields.choice("held_by", s.by, kHeldWords);
}

static void describe(Fields& fields, RaisingStep& s) {
  fields.list("set_first", s.set_first, kMostRaisingThings);
  fields.list("marks", s.marks, kMostRaisingThings);
  fields.list("put_up", s.put_up, kMostRaisingThings);
  fields.list("take_out", s.take_out, kMostRaisingThings);
  fields.integer("day", s.day, 1, 10'000);
  fields.flag("done", s.done);
  fields.choice("by", s.by, kLiftByWords);
}

static void describe(Fields& fields, Wish& w) {
  fields.choice("kind", w.kind, kWishWords);
  fields.list("marks", w.marks, kMostRaisingThings);
  fields.list("others", w.others, kMostRaisingThings);
  fields.integer("number", w.number, 1, 1'000'000);
}

static void describe(Fields& fields, ChartRow& r) {
  fields.length("radius", r.radius, kOnBuilding);
  fields.weight("capacity", r.capacity);
}

static void describe(Fields& fields, Crane& c) {
  fields.flag("present", c.present);
  fields.list("chart", c.chart, 1000);
  fields.weight("hook_block", c.hook_block);
  fields.weight("rigging", c.rigging);
  fields.length("x", c.x, kOnSite);
  fields.length("y", c.y, kOnSite);
}

static void describe(Fields& fields, GinPole& g) {
  fields.flag("present", g.present);
  fields.weight("rated", g.rated);
  fields.text("rated_by", g.rated_by);
}

static void describe(Fields& fields, LiftingGear& g) {
  fields.text("name", g.name);
  fields.choice("kind", g.kind, kGearWords);
  fields.length("length", g.length, kOnBuilding);
  fields.weight("rated", g.rated);
  fields.weight("choked", g.choked);
  fields.integer("count", g.count, 0, 1000);
}

static void describe(Fields& fields, Crew& c) {
  fields.integer("people", c.people, 1, 1000);
  fields.weight("each", c.each);
  fields.flag("entered", c.entered);
  fields.text("on_lines", c.on_lines);
  fields.text("on_poles", c.on_poles);
}

static void describe(Fields& fields, HoldChange& h) {
  fields.choice("joint", h.joint, joint_words());
  fields.flag("sideways", h.sideways);
  fields.flag("uplift", h.uplift);
  fields.flag("pulls", h.pulls);
  fields.text("reason", h.reason);
}

static void describe(Fields& fields, JointName& j) {
  fields.text("one", j.one);
  fields.text("other", j.other);
}

static void describe(Fields& fields, RaisingLoads& l) {
  fields.integer("wind_mph", l.wind_mph, 0, 200);
  fields.integer("push_per_cent", l.push_per_cent, 0, 100);
  fields.weight("person", l.person);
  fields.integer("out_of_plumb_per_mille", l.out_of_plumb_per_mille, 0, 100);
  fields.integer("wet_per_cent", l.wet_per_cent, 0, 100);
}

static void describe(Fields& fields, FastenerRatings& r) {
  fields.weight("peg", r.peg);
  fields.weight("pin", r.pin);
  fields.weight("screw", r.screw);
  fields.weight("nailed_brace", r.nailed_brace);
  fields.text("source", r.source);
}

static void describe(Fields& fields, Truck& t) {
  fields.length("length", t.length, kOnBuilding);
  fields.weight("carries", t.carries);
}

void describe(Fields& fields, RaisingPlan& p) {
  fields.list("steps", p.steps, kMostRaisingThings);
  fields.list("temporaries", p.temporaries, kMostRaisingThings);
  fields.list("assemblies", p.assemblies, kMostRaisingThings);
  fields.list("wishes", p.wishes, kMostRaisingThings);
  fields.object("crane", p.crane);
  fields.object("crane_two", p.crane_two);
  fields.object("telehandler", p.telehandler);
  fields.object("gin_pole", p.gin_pole);
  fields.flag("poles", p.poles);
  fields.choice("bents", p.bents, kBentsWords);
  fields.list("gear", p.gear, 1000);
  fields.object("crew", p.crew);
  fields.object("loads", p.loads);
  fields.list("holds", p.holds, 100);
  fields.choice("fasten", p.fasten, kFastenWords);
  fields.list("later", p.later, kMostRaisingThings);
  fields.object("ratings", p.ratings);
  fields.flag("spare", p.spare);
  fields.choice("kings", p.kings, kKingWords);
  fields.flag("posts_anchored", p.posts_anchored);
  fields.object("truck", p.truck);
  fields.length("stack_x", p.stack_x, kOnSite);
  fields.length("stack_y", p.stack_y, kOnSite);
}

}  // namespace bentbook
