#include "command/json/raise_json.h"

#include <algorithm>
#include <array>

#include "command/json/json_out.h"
#include "frame/keys.h"
#include "raising/holding.h"
#include "raising/lifting/pick.h"
#include "raising/lists.h"
#include "words/raise_text.h"
#include "words/raising_words.h"
#include "words/step_words.h"

namespace bentbook {
namespace {

void point(JsonOut& out, std::string_view key, Vec3 p, int decimals = 4) {
  const std::array<double, 3> numbers = {p.x, p.y, p.z};
  out.numbers(key, numbers, decimals);
}

std::vector<std::string> marks_of(const Frame& frame, const std::vector<int>& timbers) {
  std::vector<std::string> marks;
  marks.reserve(timbers.size());
  for (const int t : timbers) marks.push_back(frame.timbers[static_cast<std::size_t>(t)].mark);
  return marks;
}

/// Out of the place and back along the first straight move: where it comes from, as one looks for it.
void from_direction(JsonOut& out, const Entry& entry) {
  for (const Move& move : entry.path)
    if (move.kind == MoveKind::kLower || move.kind == MoveKind::kSlide)
      return point(out, "from_direction", -1 * move.direction, 6);
}

class Order {
 public:
  Order(JsonOut& out, const Book& book, const Frame& frame, const OrderCheck& check)
      : out_(out), book_(book), frame_(frame), check_(check), bodies_(pick_bodies(frame, book.raising)) {}

  void all() {
    out_.flag("good", check_.good());
    if (check_.first_bad >= 0) out_.count("first_bad", check_.first_bad + 1);
    if (check_.first_unstable >= 0) out_.count("first_unstable", check_.first_unstable + 1);
    out_.flag("lifting_entered", lifting_entered(book_.raising));
    out_.texts("left_out", marks_of(frame_, check_.left_out));
    out_.open_list("fastened_later");
    for (const JointName& joint : book_.raising.later) {
      out_.open_item();
      const std::string timbers[] = {joint.one, joint.other};
      out_.texts("timbers", timbers);
      out_.close();
    }
    out_.close_list();
    faults(-1);
    out_.open_list("steps");
    for (const StepCheck& step : check_.steps) one(step);
    out_.close_list();
    temporaries();
    loads();
  }

 private:
  void faults(int step) {
    out_.open_list("faults");
    for (const OrderFault& fault : check_.faults) {
      if (fault.step != step) continue;
      out_.open_item();
      out_.texts("marks", fault.marks);
      out_.text("text", order_fault_text(fault, out_.voice()));
      out_.close();
    }
    out_.close_list();
  }

  void one(const StepCheck& step) {
    const RaisingStep& asked = book_.raising.steps[static_cast<std::size_t>(step.step)];
    const Pick pick = pick_of_step(frame_, book_.raising, bodies_, asked);
    out_.open_item();
    out_.count("step", step.step + 1);
    out_.count("day", asked.day);
    out_.text("name", step_name(asked, frame_, out_.voice().language));
    out_.flag("good", step.good);
    set_first(step);
    out_.texts("timbers", asked.marks);
    if (pick.by != LiftBy::kTipUp) from_direction(out_, step.entry);
    if (step.entry.free) out_.text("way", way_text(step.entry, asked, pick.by, frame_, out_.voice()));
    out_.texts("blockers", marks_of(frame_, step.entry.blockers));
    out_.texts("temporary_braces", asked.put_up);
    out_.texts("take_out", asked.take_out);
    fasten(static_cast<std::size_t>(step.step));
    out_.number("weight_lb", pick.weight_lb, 3);
    point(out_, "cg", pick.cg);
    goes_up(pick);
    slings(pick);
    out_.flag("lifts", step.lifts);
    out_.count("mechanisms", step.standing.mechanisms);
    out_.number("load_factor", step.standing.factor, 3);
    out_.flag("stands", step.stands);
    out_.flag("stands_after", step.stands_after);
    faults(step.step);
    out_.texts("warnings", warnings(step, pick));
    out_.close();
  }

  void set_first(const StepCheck& step) {
    out_.open_list("set_first");
    for (const SetCheck& piece : step.set) {
      out_.open_item();
      out_.text("timber", frame_.timbers[static_cast<std::size_t>(piece.timber)].mark);
      out_.text("held_by", keys::word(kHeldWords, piece.by));
      out_.count("hands", piece.hands);
      out_.number("held_lb", piece.lb, 3);
      out_.close();
    }
    out_.close_list();
  }
  void fasten(std::size_t step) {
    out_.open_list("fasten");
    for (const Driven& driven : driven_in(frame_, book_.raising, step)) {
      out_.open_item();
      const bool pins = driven.kind == Fasteners::kPins;
      out_.text("kind", driven.diameter <= 0 ? "screws" : pins ? "pins" : "pegs");
      out_.count("count", driven.count);
      out_.number("diameter_in", driven.diameter, 4);
      out_.close();
    }
    out_.close_list();
  }

  void goes_up(const Pick& pick) {
    if (pick.timbers.empty()) return;
    out_.text("by", keys::word(kLiftByWords, pick.by));
    out_.text("goes_up", goes_up_text(pick, out_.voice()));
    out_.flag("open", pick.open);
    out_.flag("rated", pick.rated);
    out_.number("carries_lb", pick.carries_lb, 3);
    out_.count("people", pick.people);
    out_.count("on_lines", pick.lines);
    out_.count("holding", pick.busy);
    if (hangs(pick.by) && pick.by != LiftBy::kGinPole) crane(pick);
  }

  void slings(const Pick& pick) {
    out_.open_list("slings");
    for (const PickLeg& leg : pick.legs) {
      out_.open_item();
      out_.text("timber", frame_.timbers[static_cast<std::size_t>(leg.timber)].mark);
      out_.number("station_in", leg.station, 4);
      point(out_, "at", leg.at);
      out_.number("leg_in", leg.length, 4);
      out_.number("from_level_deg", leg.from_level, 4);
      out_.number("tension_lb", leg.tension, 3);
      if (pick.sling >= 0) out_.text("gear", book_.raising.gear[static_cast<std::size_t>(pick.sling)].name);
      out_.close();
    }
    out_.close_list();
  }

  void crane(const Pick& pick) {
    out_.open("crane");
    out_.number("radius_stack_in", pick.crane.radius_stack, 4);
    out_.number("radius_place_in", pick.crane.radius_place, 4);
    out_.flag("within", pick.crane.within);
    if (pick.crane.at_stack && pick.crane.at_place) {
      out_.number("net_lb", std::min(pick.crane.at_stack->net_lb, pick.crane.at_place->net_lb), 3);
      out_.number("margin_lb", pick.crane.margin_lb, 3);
    }
    out_.close();
  }

  [[nodiscard]] std::vector<std::string> warnings(const StepCheck& step, const Pick& pick) const {
    const Voice& voice = out_.voice();
    std::vector<std::string> said;
    for (const Mode& mode : step.standing.modes) said.push_back(mode_text(mode, frame_, voice.language));
    for (std::string& warning :
         standing_warning_texts(step.standing.warnings, frame_, book_.raising.temporaries, voice.language))
      said.push_back(std::move(warning));
    if (step.day_goes_back) said.emplace_back(text(Msg::kStepDayBack, voice.language));
    for (const PickNote& note : pick.notes)
      if (!refuses(note.id)) said.push_back(pick_note_text(note, voice));
    for (const Remedy& remedy : step.entry.remedies) said.push_back(remedy_text(remedy, frame_, voice.language));
    return said;
  }

  void temporaries() {
    out_.open_list("temporaries");
    for (const Temporary& t : book_.raising.temporaries) {
      out_.open_item();
      out_.text("name", t.name);
      out_.text("kind", keys::word(kTemporaryWords, t.kind));
      out_.text("from", t.from.mark);
      out_.number("from_station_in", t.from.station.in(), 4);
      out_.text("to", t.to.mark);
      if (t.to.mark.empty())
        point(out_, "ground", {t.ground_x.in(), t.ground_y.in(), t.ground_z.in()});
      else
        out_.number("to_station_in", t.to.station.in(), 4);
      out_.number("rated_lb", t.rated.lb(), 3);
      out_.close();
    }
    out_.close_list();
  }

  void loads() {
    out_.open_list("loads");
    for (const TruckLoad& load : truck_loads(frame_, book_.raising)) {
      std::vector<std::string> marks, over;
      for (const LoadedTimber& t : load.timbers) {
        marks.push_back(frame_.timbers[static_cast<std::size_t>(t.timber)].mark);
        if (t.too_long || t.too_heavy) over.push_back(marks.back());
      }
      out_.open_item();
      out_.texts("bottom_first", marks);
      out_.number("weight_lb", load.weight_lb, 3);
      out_.number("longest_in", load.longest, 4);
      out_.texts("over", over);
      out_.close();
    }
    out_.close_list();
  }

  JsonOut& out_;
  const Book& book_;
  const Frame& frame_;
  const OrderCheck& check_;
  std::vector<PickBody> bodies_;
};

void cost(JsonOut& out, std::string_view key, const OrderCost& c) {
  out.open(key);
  out.count("temporaries", c.temporaries);
  out.count("moves", c.moves);
  out.count("carry_in", c.carry);
  out.close();
}

}  // namespace

std::string order_json(const Book& book, const Frame& frame, const OrderCheck& check, const Voice& voice) {
  JsonOut out(voice);
  Order(out, book, frame, check).all();
  return out.finish();
}

std::string found_json(const FoundOrder& found, const Book& book, const Frame& frame, const OrderCheck& check,
                       const Voice& voice) {
  JsonOut out(voice);
  out.flag("found", found.found);
  out.flag("stopped", found.stopped);
  out.flag("proven_optimal", found.proven_optimal);
  cost(out, "cost", found.cost);
  cost(out, "bound", found.bound);
  out.texts("cycle", found.cycle);
  out.open_list("stuck");
  for (const Stuck& stuck : found.stuck) {
    out.open_item();
    out.texts("piece", stuck.piece);
    out.text("text", stuck_text(stuck, found.plan, voice.language));
    if (stuck.reason == StuckReason::kCantPick) out.text("figures", cant_pick_text(found, stuck, frame, voice));
    out.close();
  }
  out.close_list();
  if (const std::string_view advice = stuck_advice(found.stuck, voice.language); !advice.empty())
    out.text("advice", advice);
  Order(out, book, frame, check).all();
  return out.finish();
}

}  // namespace bentbook
