#pragma once
/// Inside the raising's tasks: what a check, an explained step and a found order are as JSON, between the page and the
/// module that works them out. Both solve the same book, so timbers and joints go by their indices.

#include "book/describe_raising.h"
#include "raising/check.h"
#include "raising/search/search.h"
#include "raising/stability/standing.h"

namespace bentbook::json {

/// A number in a list of numbers.
template <class Io>
void describe(Io& io, int& n) {
  io.integer("n", n, -1, 100'000'000);
}

}  // namespace bentbook::json

namespace bentbook {

inline constexpr unsigned kMostReported = 1'000'000;

template <class Io>
void describe(Io& io, Vec3& v) {
  io.number("x", v.x);
  io.number("y", v.y);
  io.number("z", v.z);
}

template <class Io, class Enum>
void describe_enum(Io& io, const char* key, Enum& value, Enum last) {
  int n = static_cast<int>(value);
  io.integer(key, n, 0, static_cast<int>(last));
  value = static_cast<Enum>(n);
}

template <class Io>
void describe(Io& io, Move& m) {
  describe_enum(io, "kind", m.kind, MoveKind::kSwing);
  io.object("direction", m.direction);
  io.number("distance", m.distance);
  io.object("pivot", m.pivot);
  io.list("who", m.who, kMostReported);
}

template <class Io>
void describe(Io& io, Remedy& r) {
  describe_enum(io, "kind", r.kind, RemedyKind::kMoveApart);
  io.list("timbers", r.timbers, kMostReported);
  io.integer("joint", r.joint, -1, 100'000'000);
}

template <class Io>
void describe(Io& io, Entry& e) {
  io.flag("free", e.free);
  io.list("path", e.path, kMostReported);
  io.list("blockers", e.blockers, kMostReported);
  io.list("blocked", e.blocked, kMostReported);
  io.flag("ground", e.ground);
  io.list("remedies", e.remedies, kMostReported);
}

template <class Io>
void describe(Io& io, StepWarning& w) {
  describe_enum(io, "id", w.id, StepWarningId::kDayGoesBack);
  io.list("marks", w.marks, kMostReported);
  io.number("value", w.value);
}

template <class Io>
void describe(Io& io, TimberMotion& m) {
  io.integer("timber", m.timber, 0, 100'000'000);
  io.object("move", m.move);
  io.object("turn", m.turn);
}

template <class Io>
void describe(Io& io, Mode& m) {
  describe_enum(io, "kind", m.kind, ModeKind::kMoves);
  io.integer("timber", m.timber, -1, 100'000'000);
  io.integer("bent", m.bent, -1, 100'000'000);
  describe_enum(io, "axis", m.axis, WorldAxis::kUp);
  io.flag("at_end_a", m.at_end_a);
  io.list("motions", m.motions, kMostReported);
}

template <class Io>
void describe(Io& io, LoadCase& l) {
  describe_enum(io, "kind", l.kind, LoadKind::kPerson);
  io.flag("heavy", l.heavy);
  io.integer("direction", l.direction, 0, 7);
  io.integer("timber", l.timber, -1, 100'000'000);
  io.object("point", l.point);
}

template <class Io>
void describe(Io& io, StandingWarning& w) {
  describe_enum(io, "id", w.id, StandingWarningId::kLoose);
  io.integer("timber", w.timber, -1, 100'000'000);
  io.integer("joint", w.joint, -1, 100'000'000);
  io.integer("temporary", w.temporary, -1, 100'000'000);
}

template <class Io>
void describe(Io& io, StandingCheck& c) {
  io.integer("mechanisms", c.mechanisms, 0, 100'000'000);
  io.number("least_singular", c.least_singular);
  io.list("modes", c.modes, kMostReported);
  io.flag("forces", c.forces);
  io.number("factor", c.factor);
  io.object("worst", c.worst);
  io.list("warnings", c.warnings, kMostReported);
  io.flag("not_decided", c.not_decided);
}

template <class Io>
void describe(Io& io, StepCheck& s) {
  io.integer("step", s.step, 0, 100'000'000);
  io.list("timbers", s.timbers, kMostReported);
  io.list("stood", s.stood, kMostReported);
  io.object("standing", s.standing);
  io.list("temporaries", s.temporaries, kMostReported);
  io.list("temporaries_after", s.temporaries_after, kMostReported);
  io.object("entry", s.entry);
  io.flag("stands", s.stands);
  io.flag("stands_after", s.stands_after);
  io.flag("lifts", s.lifts);
  io.list("warnings", s.warnings, kMostReported);
  io.flag("good", s.good);
}

template <class Io>
void describe(Io& io, OrderFault& f) {
  describe_enum(io, "id", f.id, OrderFaultId::kTemporaryLoose);
  io.integer("step", f.step, -1, 100'000'000);
  io.list("marks", f.marks, kMostReported);
  io.integer("wish", f.wish, -1, 100'000'000);
  io.number("value", f.value);
  io.number("value2", f.value2);
}

template <class Io>
void describe(Io& io, OrderCheck& c) {
  io.list("steps", c.steps, kMostReported);
  io.list("faults", c.faults, kMostReported);
  io.list("left_out", c.left_out, kMostReported);
  io.integer("first_bad", c.first_bad, -1, 100'000'000);
  io.integer("first_unstable", c.first_unstable, -1, 100'000'000);
}

template <class Io>
void describe(Io& io, OrderCost& c) {
  io.integer("temporaries", c.temporaries, 0, 100'000'000);
  io.integer("moves", c.moves, 0, 100'000'000);
  io.whole("carry", c.carry, 0, std::int64_t{1} << 52);
}

template <class Io>
void describe(Io& io, Stuck& s) {
  io.list("piece", s.piece, kMostReported);
  describe_enum(io, "reason", s.reason, StuckReason::kCantPick);
  io.list("marks", s.marks, kMostReported);
}

template <class Io>
void describe(Io& io, FoundOrder& f) {
  io.flag("found", f.found);
  io.flag("stopped", f.stopped);
  io.flag("proven_optimal", f.proven_optimal);
  io.object("cost", f.cost);
  io.object("bound", f.bound);
  io.integer("tried", f.tried, 0, 2'000'000'000);
  io.object("plan", f.plan);
  io.list("cycle", f.cycle, kMostReported);
  io.list("stuck", f.stuck, kMostReported);
  io.integer("first_unstable", f.first_unstable, -1, 100'000'000);
}

}  // namespace bentbook
