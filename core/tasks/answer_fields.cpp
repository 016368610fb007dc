#include "tasks/answer_fields.h"

#include <limits>

#include "raising/plan_fields.h"
#include "tasks/frame_fields.h"

namespace bentbook {

constexpr unsigned kMostReported = 1'000'000;

/// A number in a list of numbers.
static void describe(Fields& fields, int& n) { fields.integer("n", n, -1, 100'000'000); }

static void describe(Fields& fields, Move& m) {
  describe_enum(fields, "kind", m.kind, MoveKind::kSwing);
  fields.object("direction", m.direction);
  fields.number("distance", m.distance);
  fields.object("pivot", m.pivot);
  fields.list("who", m.who, kMostReported);
}

static void describe(Fields& fields, Remedy& r) {
  describe_enum(fields, "kind", r.kind, RemedyKind::kMoveApart);
  fields.list("timbers", r.timbers, kMostReported);
  fields.integer("joint", r.joint, -1, 100'000'000);
}

static void describe(Fields& fields, Entry& e) {
  fields.flag("free", e.free);
  fields.list("path", e.path, kMostReported);
  fields.list("blockers", e.blockers, kMostReported);
  fields.list("blocked", e.blocked, kMostReported);
  fields.flag("ground", e.ground);
  fields.list("remedies", e.remedies, kMostReported);
}

static void describe(Fields& fields, TimberMotion& m) {
  fields.integer("timber", m.timber, 0, 100'000'000);
  fields.object("move", m.move);
  fields.object("turn", m.turn);
}

static void describe(Fields& fields, Mode& m) {
  describe_enum(fields, "kind", m.kind, ModeKind::kMoves);
  fields.integer("timber", m.timber, -1, 100'000'000);
  fields.integer("bent", m.bent, -1, 100'000'000);
  describe_enum(fields, "axis", m.axis, WorldAxis::kUp);
  fields.flag("at_end_a", m.at_end_a);
  fields.list("motions", m.motions, kMostReported);
}

static void describe(Fields& fields, LoadCase& l) {
  describe_enum(fields, "kind", l.kind, LoadKind::kPerson);
  fields.flag("heavy", l.heavy);
  fields.integer("direction", l.direction, 0, 7);
  fields.integer("timber", l.timber, -1, 100'000'000);
  fields.object("point", l.point);
}

static void describe(Fields& fields, StandingWarning& w) {
  describe_enum(fields, "id", w.id, StandingWarningId::kLoose);
  fields.integer("timber", w.timber, -1, 100'000'000);
  fields.integer("joint", w.joint, -1, 100'000'000);
  fields.integer("temporary", w.temporary, -1, 100'000'000);
}

static void describe(Fields& fields, StandingCheck& c) {
  fields.integer("mechanisms", c.mechanisms, 0, 100'000'000);
  fields.number("least_singular", c.least_singular);
  fields.list("modes", c.modes, kMostReported);
  fields.flag("forces", c.forces);
  fields.number("factor", c.factor);
  fields.object("worst", c.worst);
  fields.list("warnings", c.warnings, kMostReported);
  fields.flag("not_decided", c.not_decided);
}

static void describe(Fields& fields, SetCheck& s) {
  fields.integer("timber", s.timber, 0, 100'000'000);
  fields.choice("by", s.by, kHeldWords);
  fields.integer("hands", s.hands, 0, 1'000'000);
  fields.number("lb", s.lb);
  fields.object("entry", s.entry);
}

static void describe(Fields& fields, StepCheck& s) {
  fields.integer("step", s.step, 0, 100'000'000);
  fields.list("set", s.set, kMostReported);
  fields.list("main", s.main, kMostReported);
  fields.list("timbers", s.timbers, kMostReported);
  fields.list("stood", s.stood, kMostReported);
  fields.object("standing", s.standing);
  fields.list("temporaries_before", s.temporaries_before, kMostReported);
  fields.list("temporaries", s.temporaries, kMostReported);
  fields.list("temporaries_after", s.temporaries_after, kMostReported);
  fields.object("entry", s.entry);
  fields.flag("bears", s.bears);
  fields.flag("stands", s.stands);
  fields.flag("stands_after", s.stands_after);
  fields.flag("bare", s.bare);
  fields.integer("hangs_on", s.hangs_on, -1, 100'000'000);
  fields.flag("lifts", s.lifts);
  fields.flag("day_goes_back", s.day_goes_back);
  fields.flag("good", s.good);
}

static void describe(Fields& fields, OrderFault& f) {
  describe_enum(fields, "id", f.id, OrderFaultId::kWholeFalls);
  fields.integer("step", f.step, -1, 100'000'000);
  fields.list("marks", f.marks, kMostReported);
  fields.integer("wish", f.wish, -1, 100'000'000);
  fields.number("value", f.value);
  fields.number("value2", f.value2);
  describe_enum(fields, "note", f.note, PickNoteId::kNotTipped);
}

void describe(Fields& fields, OrderCheck& c) {
  fields.list("steps", c.steps, kMostReported);
  fields.list("faults", c.faults, kMostReported);
  fields.list("left_out", c.left_out, kMostReported);
  fields.integer("first_bad", c.first_bad, -1, 100'000'000);
  fields.integer("first_unstable", c.first_unstable, -1, 100'000'000);
}

static void describe(Fields& fields, OrderCost& c) {
  fields.integer("temporaries", c.temporaries, 0, 100'000'000);
  fields.integer("moves", c.moves, 0, 100'000'000);
  fields.whole("carry", c.carry, 0, std::int64_t{1} << 52);
}

static void describe(Fields& fields, Stuck& s) {
  fields.list("piece", s.piece, kMostReported);
  describe_enum(fields, "reason", s.reason, StuckReason::kWholeFalls);
  fields.list("marks", s.marks, kMostReported);
}

void describe(Fields& fields, FoundOrder& f) {
  fields.flag("found", f.found);
  fields.flag("stopped", f.stopped);
  fields.flag("proven_optimal", f.proven_optimal);
  fields.object("cost", f.cost);
  fields.object("bound", f.bound);
  fields.integer("tried", f.tried, 0, 2'000'000'000);
  fields.object("plan", f.plan);
  fields.list("cycle", f.cycle, kMostReported);
  fields.list("stuck", f.stuck, kMostReported);
  fields.integer("first_unstable", f.first_unstable, -1, 100'000'000);
}

void describe(Fields& fields, StepExplained& e) {
  fields.integer("step", e.step, 0, 100'000'000);
  fields.object("standing", e.standing);
  fields.list("braces", e.braces, kMostRaisingThings);
}

void describe(Fields& fields, PatternSheet& p) { fields.text("svg", p.svg); }

void describe(Fields& fields, Error& e) {
  describe_enum(fields, "code", e.code, ErrorCode::kUnknownOption);
  fields.text("where", e.where);
  fields.whole("at", e.at, -1, std::numeric_limits<std::int64_t>::max());
  fields.whole("limit", e.limit, std::numeric_limits<std::int64_t>::min(), std::numeric_limits<std::int64_t>::max());
}

}  // namespace bentbook
