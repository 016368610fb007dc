#include "words/raise_text.h"

#include <algorithm>
#include <map>

#include "frame/facts.h"
#include "numeric/function_ref.h"
#include "numeric/index.h"
#include "numeric/libm.h"
#include "raising/holding.h"
#include "raising/lifting/hand_raise.h"
#include "raising/lifting/pick.h"
#include "raising/lists.h"
#include "raising/order.h"
#include "text/utf8.h"
#include "words/frame_words.h"
#include "words/raising_words.h"
#include "words/step_words.h"

namespace bentbook {
namespace {

constexpr std::size_t kColumns = 80;

std::string padded(std::string_view s, std::size_t columns) {
  std::string out(s);
  for (std::size_t n = count_characters(s); n < columns; ++n) out += ' ';
  return out;
}

const std::string& mark_at(const Frame& frame, int timber) {
  return frame.timbers[static_cast<std::size_t>(timber)].mark;
}

class Page {
 public:
  Page(const Book& book, const Frame& frame, const Voice& voice)
      : book_(book), frame_(frame), voice_(voice), bodies_(pick_bodies(frame, book.raising)) {}

  std::string whole(const OrderCheck* check) {
    const RaisingPlan& plan = book_.raising;
    plain(book_.title.empty() ? std::string(text(Msg::kRaiseTitlePlain, language()))
                              : say(Msg::kRaiseTitle, language(), shown_name(book_.title, language())));
    if (!plan.steps.empty()) verdict(check);
    plain(text(Msg::kRaisingCaution, language()));
    plain(say(Msg::kRaiseStopWind, language(), say_kept(plan.loads.wind_mph, KeptIn::kMph, voice_)));
    if (!plan.steps.empty())
      for (const std::string& words : whole_raising_texts(plan, voice_)) plain(words);
    if (check != nullptr && any_tipped()) plain(text(Msg::kStepTipped, language()));
    if (!plan.steps.empty()) plain(text(Msg::kStandingNotForNight, language()));
    if (plan.steps.empty()) plain(text(Msg::kRaiseNoSteps, language()));
    if (check != nullptr) {
      for (const OrderFault& fault : check->faults)
        if (fault.step < 0) labelled(Msg::kRaiseFault, order_fault_text(fault, voice_));
      if (!check->left_out.empty() && !plan.steps.empty())
        plain(say(Msg::kRaiseLeftOut, language(), marks_text(frame_, check->left_out)));
    }
    for (std::size_t s = 0; s < plan.steps.size(); ++s) step(s, check);
    return std::move(out_);
  }

  std::string lists() {
    if (book_.raising.steps.empty()) return {};
    loads();
    stacks();
    return std::move(out_);
  }

 private:
  [[nodiscard]] Language language() const { return voice_.language; }
  void plain(std::string_view text) { out_ += wrapped("", text); }
  void labelled(Msg label, std::string_view text) {
    if (!text.empty()) out_ += wrapped("  " + padded(bentbook::text(label, language()), 11) + " ", text);
  }

  [[nodiscard]] std::string weight_of(const std::vector<int>& timbers) const {
    std::vector<double> parts;
    parts.reserve(timbers.size());
    for (const int t : timbers) parts.push_back(bodies_[static_cast<std::size_t>(t)].weight_lb);
    return say_wet(parts, voice_);
  }

  void verdict(const OrderCheck* check) {
    if (check == nullptr || check->good() || check->first_bad < 0) return plain(checked_text(check, language()));
    plain(say(Msg::kRaiseNotGood, language(), std::to_string(check->first_bad + 1)));
  }

  void step(std::size_t s, const OrderCheck* check) {
    const RaisingStep& step = book_.raising.steps[s];
    const std::string number = std::to_string(s + 1), day = std::to_string(step.day);
    out_ += "\n";
    plain(say(step.done ? Msg::kRaiseStepDone : Msg::kRaiseStep, language(),
              {{"step", number}, {"day", day}, {"name", step_name(step, frame_, language())}}));
    labelled(Msg::kRaiseSetFirst, held_text(step, frame_, book_.raising, voice_));
    labelled(step.set_first.empty() ? Msg::kRaiseTimbers : Msg::kRaiseCloses, marks_text(step.marks));
    const StepCheck* checked = check != nullptr && s < check->steps.size() ? &check->steps[s] : nullptr;
    if (const Pick picked = pick_of_step(frame_, book_.raising, bodies_, step); !picked.timbers.empty()) {
      pick(step, picked, checked);
      together(picked, s);
    }
    for (const std::string& name : step.put_up) temporary(Msg::kRaisePutUp, name);
    labelled(Msg::kRaiseDrive, driven_text(driven_in(frame_, book_.raising, s), voice_));
    for (const std::string& name : step.take_out) temporary(Msg::kRaiseTakeOut, name);
    if (checked != nullptr) judged(*checked, *check);
  }

  void pick(const RaisingStep& step, const Pick& pick, const StepCheck* checked) {
    labelled(Msg::kRaiseWeight,
             say(Msg::kRaiseWeightSaid, language(),
                 {{"weight", weight_of(pick.timbers)}, {"wet", std::to_string(book_.raising.loads.wet_per_cent)}}));
    if (checked != nullptr) labelled(Msg::kRaiseWay, way_text(checked->entry, step, pick.by, frame_, voice_));
    labelled(Msg::kRaiseUp, goes_up(pick));
    slung(pick);
    // What refuses it stands among the step's faults, once it is checked.
    for (const PickNote& note : pick.notes)
      if (checked == nullptr || !refuses(note.id))
        labelled(refuses(note.id) ? Msg::kRaiseFault : Msg::kRaiseCaution, pick_note_text(note, voice_));
  }

  [[nodiscard]] bool any_tipped() const {
    const std::vector<RaisingStep>& steps = book_.raising.steps;
    return std::any_of(steps.begin(), steps.end(), [&](const RaisingStep& step) {
      return pick_of_step(frame_, book_.raising, bodies_, step).by == LiftBy::kTipUp;
    });
  }

  /// By what, by whom, and what is left where that is rated.
  [[nodiscard]] std::string goes_up(const Pick& pick) const {
    const std::string by(lift_by_text(pick.by, language()));
    if (!hangs(pick.by)) return by_people(pick, by);
    if (!pick.rated) return say(Msg::kRaiseUpUnrated, language(), {{"by", by}});
    const std::string left = say_weight(pick.margin_lb(), voice_);
    if (pick.by == LiftBy::kGinPole)
      return say(Msg::kRaiseUpRated, language(),
                 {{"by", by},
                  {"rated", say_weight(book_.raising.gin_pole.rated.lb(), voice_)},
                  {"who", book_.raising.gin_pole.rated_by},
                  {"left", left}});
    return say(Msg::kRaiseUpChart, language(),
               {{"by", by},
                {"pick", say_inches(pick.crane.radius_stack, voice_)},
                {"set", say_inches(pick.crane.radius_place, voice_)},
                {"net", say_weight(std::min(pick.crane.at_stack->net_lb, pick.crane.at_place->net_lb), voice_)},
                {"left", left}});
  }
  [[nodiscard]] std::string by_people(const Pick& pick, const std::string& by) const {
    if (pick.beyond_hands()) return std::string(text(Msg::kBriefOpenHigh, language()));
    std::string out = say_count(Msg::kRaiseUpPeople, language(), pick.people,
                                {{"by", by}, {"each", say_weight(book_.raising.crew.each.lb(), voice_)}});
    if (pick.lines > 0) out += say(Msg::kRaiseUpLines, language(), std::to_string(pick.lines));
    if (pick.busy > 0) out += say(Msg::kRaiseUpHolding, language(), std::to_string(pick.busy));
    if (pick.open) out += text(Msg::kRaiseUpOpen, language());
    return out;
  }

  void slung(const Pick& pick) {
    for (const PickLeg& leg : pick.legs)
      labelled(Msg::kRaiseSling, say(Msg::kRaiseLeg, language(),
                                     {{"mark", mark_at(frame_, leg.timber)},
                                      {"at", say_inches(leg.station, voice_)},
                                      {"length", say_inches(leg.length, voice_)},
                                      {"angle", print_fixed(leg.from_level, 0)},
                                      {"pull", say_weight(leg.tension, voice_)}}));
    gear(pick);
  }

  /// What goes up together: as it lies, and what tipping it up takes.
  void together(const Pick& pick, std::size_t step) {
    if (pick.timbers.size() < 2) return;
    const auto ground = lay_on_ground(frame_, pick.timbers);
    if (!ground) return;
    lying(*ground, pick.timbers, step);
    if (pick.by != LiftBy::kTipUp) return;
    const HandRaise raise = raise_by_hand(frame_, book_.raising, bodies_, pick.timbers);
    labelled(Msg::kRaiseByHand,
             say(Msg::kRaiseHandLift, language(),
                 {{"push", say_weight(raise.most_lb, voice_)}, {"height", say_inches(raise.lift_height, voice_)}}));
    labelled(Msg::kRaiseByHand, say(Msg::kRaiseHandPoles, language(),
                                    {{"hands", print_fixed(libm::floor(raise.hands_until), 0)},
                                     {"balance", print_fixed(libm::floor(raise.balance), 0)}}));
  }

  /// As it lies on the ground; what lies as in a step before, timber for timber, says that step.
  void lying(const OnTheGround& ground, const std::vector<int>& timbers, std::size_t step) {
    const auto numbered = [&](int t) {
      return std::to_string(std::find(timbers.begin(), timbers.end(), t) - timbers.begin());
    };
    const auto [first, is_new] =
        lain_.try_emplace(lying_lines(ground, numbered), step);  // by number: what each timber is among them
    if (!is_new)
      return labelled(Msg::kRaiseGround, say(Msg::kRaiseGroundAs, language(), std::to_string(first->second + 1)));
    for (const std::string& line : lying_lines(ground, [&](int t) { return mark_at(frame_, t); }))
      labelled(Msg::kRaiseGround, line);
  }
  std::vector<std::string> lying_lines(const OnTheGround& ground, FunctionRef<std::string(int)> name) const {
    std::vector<std::string> lines{say(Msg::kRaiseGroundDown, language(),
                                       {{"toward", toward_text(ground.down, language())},
                                        {"height", say_near(Length::from_inches(ground.block_height), voice_)}})};
    for (const Diagonal& d : ground.diagonals)
      lines.push_back(say(Msg::kRaiseDiagonal, language(),
                          {{"from", name(d.from)}, {"to", name(d.to)}, {"length", say_inches(d.length, voice_)}}));
    std::vector<std::string> feet;
    feet.reserve(ground.toe_stops.size());
    for (const int t : ground.toe_stops) feet.push_back(name(t));
    if (!feet.empty()) lines.push_back(say(Msg::kRaiseToe, language(), marks_text(feet)));
    for (const Slender& slender : ground.strongbacks)
      lines.push_back(say(Msg::kRaiseStrongback, language(), name(slender.timber)));
    return lines;
  }

  void gear(const Pick& pick) {
    const auto name = [&](int g) { return book_.raising.gear[static_cast<std::size_t>(g)].name; };
    if (pick.sling >= 0)
      labelled(Msg::kRaiseGear, say(Msg::kRaiseGearSling, language(),
                                    {{"name", name(pick.sling)}, {"carries", say_weight(pick.sling_carries, voice_)}}));
    for (const int g : {pick.shackle, pick.spreader})
      if (g >= 0) labelled(Msg::kRaiseGear, name(g));
  }

  void temporary(Msg label, const std::string& name) {
    for (const Temporary& t : book_.raising.temporaries)
      if (t.name == name) return labelled(label, temporary_text(t, frame_, voice_));
    labelled(label, name);
  }

  /// That nothing is left for the night stands at the top; that a temporary has no rating, where it is put up.
  [[nodiscard]] bool said_before(const StandingWarning& w, const RaisingStep& step) const {
    if (w.id == StandingWarningId::kNotForNight) return true;
    if (w.id != StandingWarningId::kNoRating || w.temporary < 0) return false;
    const std::string& name = book_.raising.temporaries[at(w.temporary)].name;
    return std::find(step.put_up.begin(), step.put_up.end(), name) == step.put_up.end();
  }

  void judged(const StepCheck& checked, const OrderCheck& check) {
    const StandingCheck& standing = checked.standing;
    if (!checked.stands) {
      labelled(Msg::kRaiseStands, text(Msg::kRaiseFalls, language()));
      for (const Mode& mode : standing.modes) labelled(Msg::kRaiseCaution, mode_text(mode, frame_, language()));
    } else if (!checked.stands_after) {
      labelled(Msg::kRaiseStands, text(Msg::kRaiseFallsAfter, language()));
    } else if (standing.factor > 1 && margin_is_rated(standing.warnings, book_.raising.ratings)) {
      labelled(Msg::kRaiseStands, say(Msg::kRaiseStandsFactor, language(), print_fixed(standing.factor, 2)));
    } else {
      labelled(Msg::kRaiseStands, text(Msg::kRaiseStandsSo, language()));
    }
    std::vector<StandingWarning> here = standing.warnings;
    std::erase_if(here,
                  [&](const StandingWarning& w) { return said_before(w, book_.raising.steps[at(checked.step)]); });
    for (const std::string& warning : standing_warning_texts(here, frame_, book_.raising.temporaries, language()))
      labelled(Msg::kRaiseCaution, warning);
    if (checked.day_goes_back) labelled(Msg::kRaiseCaution, text(Msg::kStepDayBack, language()));
    for (const OrderFault& fault : check.faults)
      if (fault.step == checked.step) labelled(Msg::kRaiseFault, order_fault_text(fault, voice_));
    for (const Remedy& remedy : checked.entry.remedies)
      labelled(Msg::kRaiseCaution, remedy_text(remedy, frame_, language()));
  }

  void timber(const LoadedTimber& t) {
    std::string line = "  " + padded(mark_at(frame_, t.timber), 12) + " " + padded(say_inches(t.length, voice_), 16);
    line += " " + padded(say_wet(t.weight_lb, voice_), 12) + " ";
    line += t.step < 0 ? std::string(text(Msg::kRaiseNoStep, language()))
                       : say(Msg::kRaiseOfStep, language(), std::to_string(t.step + 1));
    out_ += line + "\n";
    if (t.too_long) labelled(Msg::kRaiseCaution, text(Msg::kRaiseTooLong, language()));
    if (t.too_heavy) labelled(Msg::kRaiseCaution, text(Msg::kRaiseTooHeavy, language()));
  }

  void loads() {
    plain(text(Msg::kRaiseLoads, language()));
    int number = 0;
    for (const TruckLoad& load : truck_loads(frame_, book_.raising)) {
      plain(say(Msg::kRaiseLoad, language(),
                {{"number", std::to_string(++number)},
                 {"weight", say_wet(weights_of(load.timbers), voice_)},
                 {"longest", say_inches(load.longest, voice_)}}));
      for (const LoadedTimber& t : load.timbers) timber(t);
    }
  }

  void stacks() {
    out_ += "\n";
    plain(text(Msg::kRaiseStacks, language()));
    for (const LayDownStack& stack : lay_down(frame_, book_.raising)) {
      const std::string weight = say_wet(weights_of(stack.timbers), voice_), day = std::to_string(stack.day);
      plain(stack.day > 0 ? say(Msg::kRaiseStack, language(), {{"day", day}, {"weight", weight}})
                          : say(Msg::kRaiseStackRest, language(), {{"weight", weight}}));
      for (const LoadedTimber& t : stack.timbers) timber(t);
    }
  }

  const Book& book_;
  const Frame& frame_;
  const Voice& voice_;
  std::vector<PickBody> bodies_;
  std::map<std::vector<std::string>, std::size_t> lain_;  ///< how what goes up together lies, and the first such step
  std::string out_;
};

}  // namespace

std::string wrapped(std::string_view lead, std::string_view text) {
  std::string out, line(lead);
  const std::string indent(count_characters(lead), ' ');
  bool first = true;
  while (!text.empty()) {
    const std::size_t blank = text.find_first_of(" \n");
    const std::string_view word = text.substr(0, blank);
    text = blank == std::string_view::npos ? std::string_view{} : text.substr(blank + 1);
    if (word.empty()) continue;
    if (!first && count_characters(line) + 1 + count_characters(word) > kColumns) {
      out += line + "\n";
      line = indent;
      first = true;
    }
    if (!first) line += ' ';
    line += word;
    first = false;
  }
  return out + line + "\n";
}

std::string raising_text(const Book& book, const Frame& frame, const Voice& voice, const OrderCheck* check) {
  return Page(book, frame, voice).whole(check) + "\n" + raising_lists_text(book, frame, voice);
}

std::string raising_lists_text(const Book& book, const Frame& frame, const Voice& voice) {
  return Page(book, frame, voice).lists();
}

std::string cant_pick_text(const FoundOrder& found, const Stuck& stuck, const Frame& frame, const Voice& voice) {
  const Pick pick = solve_pick(frame, found.plan, timbers_of(frame, stuck.piece));
  std::string out = wrapped("    ", say_wet(pick.weight_lb, voice));
  for (const PickNote& note : pick.notes)
    if (refuses(note.id)) out += wrapped("    ", pick_note_text(note, voice));
  return out;
}

std::string found_order_text(const FoundOrder& found, const Frame& frame, const Voice& voice) {
  const Language language = voice.language;
  std::string out;
  if (found.found) {
    const std::string temporaries = std::to_string(found.cost.temporaries), moves = std::to_string(found.cost.moves);
    const std::string carry = say_inches(static_cast<double>(found.cost.carry), voice);
    out += wrapped("",
                   say(Msg::kRaiseFound, language, {{"temporaries", temporaries}, {"moves", moves}, {"carry", carry}}));
    if (found.proven_optimal) out += wrapped("", text(Msg::kRaiseProven, language));
  } else {
    out += wrapped("", text(Msg::kRaiseNotFound, language));
    if (!found.plan.steps.empty()) out += wrapped("", text(Msg::kRaiseAsFar, language));
  }
  if (found.stopped) out += wrapped("", text(Msg::kRaiseStopped, language));
  if (!found.cycle.empty()) out += wrapped("", say(Msg::kRaiseCycle, language, marks_text(found.cycle)));
  if (!found.found && found.first_unstable >= 0)
    out += wrapped("", say(Msg::kRaiseFirstUnstable, language, std::to_string(found.first_unstable + 1)));
  for (const Stuck& stuck : found.stuck) {
    out += wrapped("! ", stuck_text(stuck, found.plan, language));
    if (stuck.reason == StuckReason::kCantPick) out += cant_pick_text(found, stuck, frame, voice);
  }
  if (const std::string_view advice = stuck_advice(found.stuck, language); !advice.empty())
    out += wrapped("! ", advice);
  return out;
}

}  // namespace bentbook
