#include "screens/shop/step_set.h"

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cut/setting.h"
#include "numeric/libm.h"
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

/// From how many faces, where the blade does not get through from one.
void passes(ShownWork& s, const WorkStep& step, const Sheet& sheet) {
  for (const int index : step.saw_cuts) {
    const SawCut& cut = sheet.saw_cuts[static_cast<std::size_t>(index)];
    if (cut.along || cut.pass.faces == Faces::kOne) continue;
    return body(s.context.ui, "shop.step.pass", pass_text(cut.pass, saw_of(s.frame.book), s.voice));
  }
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

}  // namespace

void step_set(ShownWork& s, const WorkStep& step, const Sheet& sheet) {
  large(s, step);
  angles(s, step, sheet);
  passes(s, step, sheet);
  facts(s, step);
}

}  // namespace bentbook::screens
