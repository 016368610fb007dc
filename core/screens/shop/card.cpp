#include "screens/shop/card.h"

#include <algorithm>

#include "cut/setting.h"
#include "screens/app/aloud.h"
#include "screens/form/foot.h"
#include "screens/shop/work_shown.h"
#include "screens/timber/face_parts.h"
#include "screens/timber/sheet.h"
#include "screens/timber/tape_picture.h"
#include "shop/step_marks.h"
#include "words/face_words.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

using Name = StepNumberName;

constexpr double kSquareWithin = 0.05;  // degrees: said to a tenth

const StepNumber* number_of(const WorkStep& step, Name name) {
  const auto it =
      std::find_if(step.numbers.begin(), step.numbers.end(), [&](const StepNumber& n) { return n.name == name; });
  return it == step.numbers.end() ? nullptr : &*it;
}

/// What is read at arm's length, in this order; the rest are facts below.
constexpr Name kLarge[] = {Name::kOverall, Name::kStop, Name::kFrom, Name::kDiameter};

bool is_large(const WorkStep& step, const StepNumber& n) {
  for (const Name name : kLarge)
    if (const StepNumber* first = number_of(step, name)) return first == &n;
  return &step.numbers.front() == &n;
}

std::string value_text(const ShownWork& s, const StepNumber& n) { return step_value_text(n.name, n.value, s.voice); }

std::string key_of(const StepNumber& n, int time) {
  std::string key = "shop.step.number." + std::string(kStepNumberWords[static_cast<std::size_t>(n.name)]);
  if (time > 1) key += "." + std::to_string(time);
  return key;
}

void head(ShownWork& s, const WorkStep& step) {
  Ui& ui = s.context.ui;
  const float side = 48, icon = 30;
  const auto up = step.face_up();
  const Column whole = ui.column;
  if (up) {
    face_box(ui, {whole.x, whole.y, side, side}, *up, is_reference(s.timber.wood, *up));
    const float around = section_margin(ui);
    paint_section(ui, s.timber, *up, {whole.x + whole.width - icon - around - 2, whole.y + around - 4, icon, icon});
    ui.column.x += side + 12;
    ui.column.width -= side + 12 + icon + 2 * around + 8;
  }
  body(ui, "shop.step.title", step_text(step, ui.language));
  int number = 1;
  for (const WorkStep& other : s.work.steps) {
    if (&other == &step) break;
    ++number;
  }
  std::string where =
      s.timber.mark + " · " +
      say(Msg::kFacePart, ui.language, {{"n", std::to_string(number)}, {"all", std::to_string(s.work.steps.size())}}) +
      " · " + std::string(workplace_text(step.place, ui.language));
  note(ui, "shop.step.place", where);
  const float foot = ui.column.y;
  ui.column = whole;
  ui.column.y = std::max(foot, up ? whole.y + side + kGap : foot);
}

/// An angle as the saw's own scale is set, with what that costs, or as it is where the saw has no such marks.
void angle(ShownWork& s, const StepNumber& n, const std::optional<Graduations>& marks) {
  Ui& ui = s.context.ui;
  const std::string_view name = step_number_text(n.name, ui.language);
  // Which way it leans is drawn; the scale has no sign.
  const std::string exact = step_value_text(n.name, libm::fabs(n.value), s.voice);
  if (!marks) return answer(ui, key_of(n, 1), name, exact);
  const Graduation& best = marks->best();
  const std::string reading = say_reading(best.reads, s.voice);
  answer(
      ui, key_of(n, 1), name, reading,
      marks->on_mark ? std::string{} : say_missed(best, s.voice) + " · " + say(Msg::kSawExactly, ui.language, exact));
}

/// Table and tilt: a word where both are square.
void angles(ShownWork& s, const WorkStep& step, const Sheet& sheet) {
  const StepNumber* table = number_of(step, Name::kTable);
  const StepNumber* tilt = number_of(step, Name::kTilt);
  if (table == nullptr && tilt == nullptr) return;
  const auto square = [](const StepNumber* n) { return n == nullptr || libm::fabs(n->value) < kSquareWithin; };
  if (square(table) && square(tilt)) return body(s.context.ui, "shop.step.square", s.context.say(Msg::kCardSquare));
  const SawCut* cut = step.saw_cuts.empty() ? nullptr : &sheet.saw_cuts[static_cast<std::size_t>(step.saw_cuts[0])];
  if (!square(table)) angle(s, *table, cut != nullptr ? cut->swing : std::nullopt);
  if (!square(tilt)) angle(s, *tilt, cut != nullptr ? cut->tilt : std::nullopt);
}

/// The number that is marked or stopped at, as large as can be; how far it goes below it.
void large(ShownWork& s, const WorkStep& step) {
  if (step.numbers.empty()) return;
  Ui& ui = s.context.ui;
  for (const StepNumber& n : step.numbers) {
    if (!is_large(step, n) || n.name == Name::kFaceUp || is_degrees(n.name)) continue;
    const StepNumber* to = n.name == Name::kFrom ? number_of(step, Name::kTo) : nullptr;
    const std::string name = step_number_from_text(n, ui.language);
    const std::string far =
        to == nullptr ? std::string{} : std::string(step_number_text(to->name, ui.language)) + " " + value_text(s, *to);
    return answer(ui, key_of(n, 1), name, value_text(s, n), far);
  }
}

/// Bores by their stations: "3′ 9″", "1 1⁄2″, 6 1⁄2″ from face 2".
void bores(ShownWork& s, const WorkStep& step) {
  struct Station {
    std::string at, across;
    const StepNumber* off = nullptr;
  };
  std::vector<Station> stations;
  for (const StepNumber& n : step.numbers) {
    if (n.name == Name::kAt) {
      std::string at = value_text(s, n);
      if (stations.empty() || stations.back().at != at) stations.push_back({std::move(at), {}, nullptr});
    }
    if (n.name != Name::kOff || stations.empty()) continue;
    Station& last = stations.back();
    if (last.off != nullptr) last.across += ", ";
    last.across += value_text(s, n);
    last.off = &n;
  }
  int count = 0;
  for (const Station& station : stations) {
    const std::string from =
        station.off != nullptr && station.off->from
            ? " " + say(Msg::kStepFromFace, s.voice.language, std::to_string(static_cast<int>(*station.off->from)))
            : std::string{};
    fact(s.context.ui, "shop.step.bore." + std::to_string(count++),
         std::string(step_number_text(Name::kAt, s.voice.language)) + " " + station.at, station.across + from);
  }
}

void facts(ShownWork& s, const WorkStep& step) {
  Ui& ui = s.context.ui;
  bores(s, step);
  std::vector<int> times(kStepNumberWords.size());
  for (const StepNumber& n : step.numbers) {
    const int time = ++times[static_cast<std::size_t>(n.name)];
    const bool said = n.name == Name::kFaceUp || n.name == Name::kAt || n.name == Name::kOff ||
                      n.name == Name::kTable || n.name == Name::kTilt || is_large(step, n) ||
                      (n.name == Name::kTo && number_of(step, Name::kFrom) != nullptr);
    if (said) continue;
    // A wall that goes in square is not a number to set.
    const bool leans = is_degrees(n.name);
    if (leans && libm::fabs(n.value) < kSquareWithin) continue;
    fact(ui, key_of(n, time), step_number_from_text(n, ui.language), value_text(s, n));
  }
}

void picture_part(ShownWork& s, const WorkStep& step, const Sheet& sheet) {
  TapeMemory& kept = s.context.shop_memory.picture;
  std::string key = tape_key(s.context, s.timber.mark + '|' + step.id + '|' + saw_of(s.frame.book).name);
  if (kept.of != s.frame.solved || kept.key != key) {
    kept = {s.frame.solved, std::move(key), step_marks(s.timber, sheet, step), {}, {}};
    if (kept.marks) {
      constexpr double kOnePage = 1e6;
      kept.strip = step_strip(*s.frame.frame(), s.timber, *kept.marks, s.voice);
      lay_out(s.context, kept, static_cast<double>(s.context.ui.column.width) * 0.4, kOnePage);
    }
  }
  if (kept.marks) show_tape(s.context, "shop.step", kept, 0);
}

constexpr int kMostClaims = 20;  // of a made-up log there may be thousands

/// Finished steps with who and when, and how to take one back.
void claims_part(ShownWork& s, const WorkStep& step) {
  Ui& ui = s.context.ui;
  const std::string title = step_text(step, ui.language);
  int n = 0;
  const std::vector<StepClaim> finishes = finishes_of(step, s.state);
  for (const StepClaim& finish : finishes) {
    if (n == kMostClaims) {
      note(ui, "shop.step.claims_more",
           say(Msg::kFrameMoreFindings, ui.language, std::to_string(finishes.size() - kMostClaims)));
      break;
    }
    const std::string key = "shop.step.claim." + std::to_string(n++);
    fact(ui, key, worked_text(finish.claim->value, s.voice), claim_text(s.context, *finish.claim));
    if (!hold_row(s.context, key + ".back", say(Msg::kShopHoldAgain, ui.language, title))) continue;
    if (tell(s.context, event_of(s, EventAction::kTakenBack, finish.step, id_text(finish.claim->id))))
      s.context.toast(say(Msg::kShopTakenBack, s.voice.language, title), false);
  }
  const bool flagged = std::any_of(s.work.progress.flags.begin(), s.work.progress.flags.end(),
                                   [&](const StepFlag& f) { return f.step == step.id; });
  if (n > 0 && flagged && hold_row(s.context, "shop.step.anew", say(Msg::kShopHoldAnew, ui.language, title)))
    tick_step(s, step);
}

/// What the keys at the foot do.
struct Foot {
  bool there = false, done = false, held = false, stopped = false;
  std::string mark, before, after;  ///< ids of the steps beside it
  std::string open;                 ///< the next one that is not done, "" for none
  Event tick;
};

Foot foot_of(const ShownWork& s, std::size_t index) {
  const auto& steps = s.work.steps;
  Foot foot;
  foot.there = true;
  foot.done = s.work.progress.done[index];
  foot.held = hold_of(s).claim != nullptr;
  foot.stopped = plate_trouble(s.context.shop.shop(), s.timber.mark, steps, steps[index]).has_value();
  foot.mark = s.timber.mark;
  if (index > 0) foot.before = steps[index - 1].id;
  if (index + 1 < steps.size()) foot.after = steps[index + 1].id;
  for (std::size_t i = steps.size() - 1; i > 0; --i)
    if (const std::size_t at = (index + i) % steps.size(); !s.work.progress.done[at]) foot.open = steps[at].id;
  foot.tick = event_of(s, EventAction::kDone, steps[index].id, numbers_text(steps[index].numbers));
  return foot;
}

void turn_to(Context& context, const std::string& mark, const std::string& step) {
  if (step.empty()) return context.pages.pop();
  context.pages.turn_to(shop_card_page(mark, step));
}

/// The tick, always in reach, between the card before and the one after; ticked, the next card that is not done comes
/// up, and after the last one the timber.
void card_foot(Context& context, const Foot& foot, const Rect& box) {
  Ui& ui = context.ui;
  foot_ground(ui, box);
  const float side = ui.theme.target;
  const Rect back{box.x + kMargin, box.y + kGap, side, side};
  const Rect on{box.x + box.w - kMargin - side, back.y, side, side};
  const Rect middle{back.x + side + kGap, back.y, on.x - back.x - side - 2 * kGap, side};
  if (icon_button(ui, "shop.step.before", back, Icon::kBack, context.say(Msg::kCardBefore), !foot.before.empty()))
    return turn_to(context, foot.mark, foot.before);
  if (icon_button(ui, "shop.step.after", on, Icon::kForward, context.say(Msg::kCardAfter), !foot.after.empty()))
    return turn_to(context, foot.mark, foot.after);
  if (foot.done) {
    if (button_in(ui, "shop.step.on", middle, context.say(Msg::kCardOn), Weight::kPrimary))
      turn_to(context, foot.mark, foot.open);
    return;
  }
  if (foot.held || foot.stopped) {
    const Msg why = foot.held ? Msg::kShopIsHeld : Msg::kPlateStopped;
    (void)button_in(ui, "shop.step.stopped", middle, context.say(why), Weight::kQuiet, false);
    return;
  }
  if (!hold_button(ui, "shop.step.tick", middle, context.say(Msg::kCardDone), kHoldMs, Icon::kTick) || ui.read_only)
    return;
  if (tell(context, foot.tick)) turn_to(context, foot.mark, foot.open);
}

void card_content(ShownWork& s, const WorkStep& step) {
  const Sheet& sheet = *sheet_shown(s.context, s.frame, s.work.timber).sheet;
  head(s, step);
  aloud_row(s.context, "shop.step.aloud",
            {"shop.step.title", "shop.step.place", "shop.hold", "shop.plate_stops", "shop.flag", "shop.step.number",
             "shop.step.square", "shop.step.bore", "shop.step.caution"});
  first_card_cautions(s, step);
  hold_part(s);
  (void)plate_stops(s, step);
  flags_part(s, step.id);
  // The picture stands beside the numbers where there is room for both.
  side_by_side(
      s.context.ui, 24, 300,
      [&](Ui&) {
        large(s, step);
        angles(s, step, sheet);
        facts(s, step);
      },
      [&](Ui&) { picture_part(s, step, sheet); });
  measure_part(s, step);
  claims_part(s, step);
  cautions_part(s, step, "shop.step");
  pairing_part(s, step);
  stop_part(s, step.id);
}

/// The first step that is not done and cuts something; the first one where all are.
std::vector<WorkStep>::const_iterator first_open(const ShownWork& s) {
  const auto& steps = s.work.steps;
  for (std::size_t i = 0; i < steps.size(); ++i)
    if (!s.work.progress.done[i] && steps[i].index >= 0) return steps.begin() + static_cast<std::ptrdiff_t>(i);
  return steps.begin();
}

void card_screen(Context& context) {
  const std::size_t bar = context.subject.find('|');
  const std::string mark = context.subject.substr(0, bar), id = context.subject.substr(bar + 1);
  Foot foot;
  const Rect strip = above_foot(context, keys_height(context.ui), [&] {
    timber_page(context, "shop.step.page", mark, [&](ShownWork s) {
      const auto found = id.empty() ? first_open(s)
                                    : std::find_if(s.work.steps.begin(), s.work.steps.end(),
                                                   [&](const WorkStep& w) { return w.id == id; });
      if (found == s.work.steps.end())
        return body(context.ui, "shop.step.gone", say(Msg::kShopStepGone, context.ui.language, id));
      card_content(s, *found);
      if (!context.keypad.is_open()) foot = foot_of(s, static_cast<std::size_t>(found - s.work.steps.begin()));
    });
  });
  if (foot.there) card_foot(context, foot, strip);
}

}  // namespace

Page shop_card_page(const std::string& mark, const std::string& step) {
  return {"shop.step", Msg::kShopStep, card_screen, mark + '|' + step};
}

}  // namespace bentbook::screens
