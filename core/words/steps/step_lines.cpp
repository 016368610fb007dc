#include "words/steps/step_lines.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <utility>

#include "cut/setting.h"
#include "numeric/index.h"
#include "numeric/libm.h"
#include "words/frame_words.h"
#include "words/shop_words.h"
#include "words/steps/saw_scale.h"

namespace bentbook {
namespace {

using Name = StepNumberName;

constexpr Name kReadFirst[] = {Name::kOverall, Name::kStop, Name::kShoulder, Name::kFrom, Name::kDiameter};

const StepNumber* number_of(const WorkStep& step, Name name) {
  const auto it =
      std::find_if(step.numbers.begin(), step.numbers.end(), [&](const StepNumber& n) { return n.name == name; });
  return it == step.numbers.end() ? nullptr : &*it;
}

class StepLines {
 public:
  StepLines(const WorkStep& step, const Sheet& sheet, const Saw& saw, const Voice& voice)
      : step_(step), sheet_(sheet), saw_(saw), voice_(voice) {}

  std::vector<StepLine> all() {
    word();
    if (step_.numbers.empty()) return std::move(lines_);
    first();
    angles();
    passes();
    bores();
    rest();
    return std::move(lines_);
  }

 private:
  [[nodiscard]] std::string value(const StepNumber& n) const { return step_value_text(n, voice_); }
  [[nodiscard]] std::string name(const StepNumber& n) const { return step_number_from_text(n, voice_.language); }
  [[nodiscard]] std::string named(Name name) const { return std::string(step_number_text(name, voice_.language)); }

  void word() {
    if (step_.says.empty()) return;
    const std::string_view name =
        step_.joint ? joint_name(*step_.joint, voice_.language) : text(Msg::kStepWrite, voice_.language);
    lines_.push_back({StepLineKind::kWord, std::string(name), step_.says});
  }

  /// The number that is marked or stopped at; how far it goes behind it.
  void first() {
    for (const Name name : kReadFirst)
      if (first_ = number_of(step_, name); first_ != nullptr) break;
    if (first_ == nullptr) first_ = &step_.numbers.front();
    if (first_->name == Name::kFaceUp || first_->name == Name::kAt || is_degrees(first_->name)) {
      first_ = nullptr;  // it is said in its own place
      return;
    }
    StepLine line{StepLineKind::kLarge, name(*first_), value(*first_), {}, first_->name, 1};
    if (const StepNumber* to = number_of(step_, Name::kTo); to != nullptr && first_->name == Name::kFrom) {
      line.note = named(to->name) + " " + value(*to);
      to_said_ = true;
    }
    lines_.push_back(std::move(line));
  }

  [[nodiscard]] std::string angle_name(Name name) const {
    return name == Name::kTable ? std::string(text(swing_name(saw_.kind), voice_.language)) : named(name);
  }

  /// As the saw's own scale is set, with what that costs, or as it is where the saw has no such marks. Which way it
  /// leans is drawn: a scale has no sign.
  void angle(const StepNumber& n, const std::optional<Graduations>& marks) {
    const std::string exact = step_value_text(n.name, libm::fabs(n.value), voice_);
    StepLine line{StepLineKind::kLarge, angle_name(n.name), exact, {}, n.name, 1};
    if (marks) {
      const Graduation& best = marks->best();
      line.value = say_reading(best.reads, voice_);
      if (!marks->on_mark)
        line.note =
            say_missed(best, voice_) + ". " +
            say(Msg::kSawExactly, voice_.language, say_angle(Angle::from_degrees(libm::fabs(n.value)), voice_, 2));
    }
    lines_.push_back(std::move(line));
  }

  void angles() {
    const StepNumber* table = number_of(step_, Name::kTable);
    const StepNumber* tilt = number_of(step_, Name::kTilt);
    if (table == nullptr && tilt == nullptr) return;
    if (saw_.kind == SawKind::kHand) {  // it has no scale
      lines_.push_back({StepLineKind::kPass, std::string(text(Msg::kStepFollowLines, voice_.language))});
      reach_said_ = true;
      return;
    }
    const auto square = [](const StepNumber* n) { return n == nullptr || libm::fabs(n->value) < kSquareWithin; };
    if (square(table) && square(tilt)) {
      lines_.push_back({StepLineKind::kSquare, std::string(text(Msg::kCardSquare, voice_.language))});
      return;
    }
    const SawCut* cut = step_.saw_cuts.empty() ? nullptr : &sheet_.saw_cuts[at(step_.saw_cuts[0])];
    if (!square(table)) angle(*table, cut != nullptr ? cut->swing : std::nullopt);
    if (!square(tilt)) angle(*tilt, cut != nullptr ? cut->tilt : std::nullopt);
  }

  void passes() {
    if (saw_.kind == SawKind::kHand) {  // it reaches as far as there is wood
      reach_said_ = true;
      return;
    }
    for (const int index : step_.saw_cuts) {
      const SawCut& cut = sheet_.saw_cuts[at(index)];
      if (cut.pass.faces == Faces::kOne) continue;
      // The rest of a sentence: "Square, blade upright, from two faces: …". It says how far the blade must reach.
      std::string said = pass_text(cut.pass, saw_, voice_);
      if (cut.pass.faces == Faces::kCannot) said = say(Msg::kStepCannot, voice_.language, said);
      if (!lines_.empty() && lines_.back().kind == StepLineKind::kSquare)
        lines_.back().name += ", " + said;
      else
        lines_.push_back({StepLineKind::kPass, std::move(said)});
      reach_said_ = true;
      return;
    }
  }

  /// By their stations: "Station 3′ 9″: 1 1⁄2″, 6 1⁄2″ from face 2".
  void bores() {
    std::string station;
    for (const StepNumber& n : step_.numbers) {
      if (n.name == Name::kAt && (station.empty() || value(n) != station)) {
        station = value(n);
        lines_.push_back({StepLineKind::kBores, named(Name::kAt), station});
      }
      if (n.name != Name::kOff || station.empty()) continue;
      std::string& note = lines_.back().note;
      const std::string from =
          n.from ? " " + say(Msg::kStepFromFace, voice_.language, std::to_string(static_cast<int>(*n.from)))
                 : std::string{};
      if (note.ends_with(from)) note.resize(note.size() - from.size());
      note += (note.empty() ? "" : ", ") + value(n) + from;
    }
  }

  void rest() {
    constexpr Name kSaid[] = {Name::kFaceUp, Name::kAt, Name::kOff, Name::kTable, Name::kTilt};
    std::array<int, kStepNumberWords.size()> times{};
    for (const StepNumber& n : step_.numbers) {
      const int time = ++times[static_cast<std::size_t>(n.name)];
      const bool said = &n == first_ || (n.name == Name::kReach && reach_said_) || (n.name == Name::kTo && to_said_) ||
                        std::count(std::begin(kSaid), std::end(kSaid), n.name) > 0;
      const bool upright = is_degrees(n.name) && libm::fabs(n.value) < kSquareWithin;
      if (!said && !upright) lines_.push_back({StepLineKind::kNumber, name(n), value(n), {}, n.name, time});
    }
  }

  const WorkStep& step_;
  const Sheet& sheet_;
  const Saw& saw_;
  const Voice& voice_;
  const StepNumber* first_ = nullptr;
  bool to_said_ = false, reach_said_ = false;
  std::vector<StepLine> lines_;
};

}  // namespace

std::vector<StepLine> step_lines(const WorkStep& step, const Sheet& sheet, const Saw& saw, const Voice& voice) {
  return StepLines(step, sheet, saw, voice).all();
}

}  // namespace bentbook
