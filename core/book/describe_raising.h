#pragma once
/// Inside the book: what the lead says of the raising, in JSON.

#include "book/describe.h"
#include "frame/keys.h"
#include "raising/plan.h"

namespace bentbook::json {

/// A mark in a list of marks.
template <class Io>
void describe(Io& io, std::string& mark) {
  io.text("mark", mark);
}

}  // namespace bentbook::json

namespace bentbook {

/// Temporaries, pieces of gear, … of one raising, at most.
inline constexpr unsigned kMostRaisingThings = 10'000;

template <class Io>
void describe_weight(Io& io, const char* key, Weight& weight) {
  io.whole(key, weight.count, 0, Weight::kLimit);
}

template <class Io>
void describe(Io& io, TimberPoint& p) {
  io.text("mark", p.mark);
  io.length("station", p.station);
}

template <class Io>
void describe(Io& io, Temporary& t) {
  io.text("name", t.name);
  io.choice("kind", t.kind, kTemporaryWords);
  io.object("from", t.from);
  io.object("to", t.to);
  io.length("ground_x", t.ground_x);
  io.length("ground_y", t.ground_y);
  io.length("ground_z", t.ground_z);
  io.length("thickness", t.thickness);
  describe_weight(io, "rated", t.rated);
}

template <class Io>
void describe(Io& io, Assembly& a) {
  io.text("name", a.name);
  io.list("marks", a.marks, kMostRaisingThings);
}

template <class Io>
void describe(Io& io, RaisingStep& s) {
  io.list("marks", s.marks, kMostRaisingThings);
  io.list("put_up", s.put_up, kMostRaisingThings);
  io.list("take_out", s.take_out, kMostRaisingThings);
  io.integer("day", s.day, 1, 10'000);
  io.flag("done", s.done);
}

template <class Io>
void describe(Io& io, Wish& w) {
  io.choice("kind", w.kind, kWishWords);
  io.list("marks", w.marks, kMostRaisingThings);
  io.list("others", w.others, kMostRaisingThings);
  io.integer("number", w.number, 1, 1'000'000);
}

template <class Io>
void describe(Io& io, ChartRow& r) {
  io.length("radius", r.radius);
  describe_weight(io, "capacity", r.capacity);
}

template <class Io>
void describe(Io& io, Crane& c) {
  io.flag("present", c.present);
  io.list("chart", c.chart, 1000);
  describe_weight(io, "hook_block", c.hook_block);
  describe_weight(io, "rigging", c.rigging);
  io.length("x", c.x);
  io.length("y", c.y);
}

template <class Io>
void describe(Io& io, LiftingGear& g) {
  io.text("name", g.name);
  io.choice("kind", g.kind, kGearWords);
  io.length("length", g.length);
  describe_weight(io, "rated", g.rated);
  describe_weight(io, "choked", g.choked);
  io.integer("count", g.count, 0, 1000);
}

template <class Io>
void describe(Io& io, Crew& c) {
  io.integer("people", c.people, 1, 1000);
  describe_weight(io, "each", c.each);
}

template <class Io>
void describe(Io& io, HoldChange& h) {
  io.choice("joint", h.joint, keys::kJointKind);
  io.flag("sideways", h.sideways);
  io.flag("uplift", h.uplift);
  io.flag("pulls", h.pulls);
  io.text("reason", h.reason);
}

template <class Io>
void describe(Io& io, RaisingLoads& l) {
  io.integer("wind_mph", l.wind_mph, 0, 200);
  io.integer("push_per_cent", l.push_per_cent, 0, 100);
  describe_weight(io, "person", l.person);
  io.integer("out_of_plumb_per_mille", l.out_of_plumb_per_mille, 0, 100);
  io.integer("wet_per_cent", l.wet_per_cent, 0, 100);
}

template <class Io>
void describe(Io& io, Truck& t) {
  io.length("length", t.length);
  describe_weight(io, "carries", t.carries);
}

template <class Io>
void describe(Io& io, RaisingPlan& p) {
  io.list("steps", p.steps, kMostRaisingThings);
  io.list("temporaries", p.temporaries, kMostRaisingThings);
  io.list("assemblies", p.assemblies, kMostRaisingThings);
  io.list("wishes", p.wishes, kMostRaisingThings);
  io.object("crane", p.crane);
  io.list("gear", p.gear, 1000);
  io.object("crew", p.crew);
  io.object("loads", p.loads);
  io.list("holds", p.holds, 100);
  io.flag("posts_anchored", p.posts_anchored);
  io.object("truck", p.truck);
  io.length("stack_x", p.stack_x);
  io.length("stack_y", p.stack_y);
}

}  // namespace bentbook
