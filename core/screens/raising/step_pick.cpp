// What comes in with a step, and how it is picked or raised by hand.

#include "screens/raising/step_pick.h"

#include <string>

#include "screens/shop/form.h"
#include "words/frame_words.h"
#include "words/shop_words.h"

namespace bentbook::screens {
namespace {

/// Plate numbers and witness marks of a timber, as the shop wrote them down.
void pairs_part(Context& context, const std::string& mark, const TimberState& state) {
  for (const StepState& told : state.steps)
    for (const EventAction action : {EventAction::kPlate, EventAction::kWitness})
      if (const Claim* claim = told.find(action))
        fact(context.ui, "step.pair." + mark + "." + told.step + std::to_string(static_cast<int>(action)),
             did_text(action, context.ui.language), claim->value);
}

/// A bent: how it lies, and what raising it by hand takes.
void ground_part(Context& context, const Frame& frame, const RaisingMemory::Picked& picked) {
  if (!picked.ground) return;
  Ui& ui = context.ui;
  const Voice voice = voice_of(context);
  const OnTheGround& lying = *picked.ground;
  heading(ui, "step.ground", context.say(Msg::kStepGround), 3);
  fact(ui, "step.ground.down", context.say(Msg::kGroundDown), toward_text(lying.down, ui.language));
  fact(ui, "step.ground.blocks", context.say(Msg::kGroundBlocks),
       say_near(Length::from_inches(lying.block_height), voice));
  const auto mark = [&](int t) { return frame.timbers[static_cast<std::size_t>(t)].mark; };
  int n = 0;
  for (const Diagonal& d : lying.diagonals)
    fact(ui, "step.ground.diagonal." + std::to_string(n++),
         say(Msg::kGroundDiagonal, ui.language, {{"from", mark(d.from)}, {"to", mark(d.to)}}),
         say_inches(d.length, voice));
  if (!lying.toe_stops.empty())
    fact(ui, "step.ground.stops", context.say(Msg::kGroundStops), marks_text(frame, lying.toe_stops));
  n = 0;
  for (const Slender& slender : lying.strongbacks)
    note(ui, "step.ground.strongback." + std::to_string(n++),
         say(Msg::kGroundStrongback, ui.language, mark(slender.timber)));
  if (!picked.hand) return;
  fact(ui, "step.hand.push", context.say(Msg::kHandPush), say_weight(picked.hand->most_lb, voice));
  if (picked.hand->hands_until < picked.hand->balance)
    fact(ui, "step.hand.until", context.say(Msg::kHandUntil), print_fixed(picked.hand->hands_until, 0) + "°");
  fact(ui, "step.hand.balance", context.say(Msg::kHandBalance), print_fixed(picked.hand->balance, 0) + "°");
}

/// Slings and what they pull, where it hangs; and what is to be said of the pick.
void slings_part(Context& context, const Frame& frame, const Pick& pick) {
  Ui& ui = context.ui;
  const Voice voice = voice_of(context);
  int n = 0;
  for (const PickLeg& leg : pick.legs)
    fact(ui, "step.leg." + std::to_string(n++),
         say(Msg::kTemporaryPoint, ui.language,
             {{"mark", frame.timbers[static_cast<std::size_t>(leg.timber)].mark},
              {"at", say_inches(leg.station, voice)}}),
         say_weight(leg.tension, voice) + " · " + print_fixed(leg.from_level, 0) + "°");
  if (pick.sling >= 0)
    fact(ui, "step.sling", context.desk.book().raising.gear[static_cast<std::size_t>(pick.sling)].name,
         say_weight(pick.sling_carries, voice));
  if (pick.crane.radius_place > 0)
    fact(ui, "step.radius", context.say(Msg::kGearRadius), say_inches(pick.crane.radius_place, voice));
  n = 0;
  for (const PickNote& said : pick.notes) {
    if (said.id == PickNoteId::kUpHigh) continue;  // said on the step's page
    const std::string key = "step.pick.note." + std::to_string(n++), words = pick_note_text(said, voice);
    if (refuses(said.id))
      caution(ui, key, words);
    else
      note(ui, key, words);
  }
}

}  // namespace

void step_timbers(Context& context, const ShownFrame& shown, const RaisingMemory::Picked& picked) {
  if (picked.coming.empty()) return;
  Ui& ui = context.ui;
  const Frame& frame = *shown.frame();
  context.shop.open(context.desk.book().identity);
  // A shop that nobody has ticked anything in says nothing of what is ready.
  const bool log = context.shop.state() == ShopDesk::State::kOpen && context.shop.shop().events > 0;
  heading(ui, "step.comes", context.say(Msg::kStepEach));
  std::vector<std::string> unready;
  for (std::size_t i = 0; i < picked.coming.size(); ++i) {
    const Timber& timber = frame.timbers[static_cast<std::size_t>(picked.coming[i])];
    fact(ui, "step.timber." + timber.mark, timber.mark + " · " + std::string(kind_name(timber.kind, ui.language)),
         say_wet(picked.weights_lb[i], voice_of(context)));
    const TimberWork* work = log ? find_work(shop_work_of(context, shown), frame, timber.mark) : nullptr;
    if (work == nullptr) continue;
    if (work->progress.held)
      caution(ui, "step.held." + timber.mark, say(Msg::kStepHeld, ui.language, timber.mark));
    else if (!work->progress.has(Tick::kReady))
      unready.push_back(timber.mark);
    if (const TimberState* state = context.shop.shop().find(timber.mark)) pairs_part(context, timber.mark, *state);
  }
  if (!unready.empty()) note(ui, "step.unready", say(Msg::kStepUnready, ui.language, marks_text(unready)));
}

void step_lifting(Context& context, const ShownFrame& shown, const RaisingMemory::Picked& picked) {
  if (picked.coming.empty()) return;
  const Frame& frame = *shown.frame();
  if (!picked.pick.notes.empty() || hangs(picked.pick.by)) {
    heading(context.ui, "step.pick", context.say(Msg::kStepPick));
    slings_part(context, frame, picked.pick);
  }
  ground_part(context, frame, picked);
}

}  // namespace bentbook::screens
