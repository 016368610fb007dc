#include "shop/steps.h"

#include <algorithm>

#include "frame/keys.h"
#include "shop/step_numbers.h"

namespace bentbook {
namespace {

bool is_rafter(TimberKind kind) { return kind == TimberKind::kCommonRafter || kind == TimberKind::kPrincipalRafter; }

StepWork work_of(FeatureKind kind) {
  switch (kind) {
    case FeatureKind::kSlot:
      return StepWork::kSlot;
    case FeatureKind::kRelief:
      return StepWork::kRelief;
    case FeatureKind::kLetIn:
      return StepWork::kLetIn;
    case FeatureKind::kMortise:
      return StepWork::kMortise;
    case FeatureKind::kHousing:
      return StepWork::kHousing;
    case FeatureKind::kTenon:
      return StepWork::kTenon;
    case FeatureKind::kHole:
      return StepWork::kHole;
    case FeatureKind::kBirdsMouth:
      return StepWork::kBirdsMouth;
    case FeatureKind::kLap:
      return StepWork::kLap;
    case FeatureKind::kScarf:
      return StepWork::kScarf;
    case FeatureKind::kTongue:
      return StepWork::kTongue;
    case FeatureKind::kFork:
      return StepWork::kFork;
  }
  return StepWork::kHole;
}

Workplace place_of(StepWork work) {
  switch (work) {
    case StepWork::kLayout:
    case StepWork::kPatternCheck:
    case StepWork::kLabel:
      return Workplace::kLayout;
    case StepWork::kEndCut:
    case StepWork::kPeak:
    case StepWork::kTail:
    case StepWork::kBirdsMouth:
    case StepWork::kTenon:
    case StepWork::kTongue:
    case StepWork::kLap:
    case StepWork::kScarf:
      return Workplace::kSaw;
    case StepWork::kSlot:
    case StepWork::kFork:
    case StepWork::kMortise:
      return Workplace::kSlotter;
    case StepWork::kDrillPlate:
      return Workplace::kDrillPress;
    default:
      return Workplace::kBench;
  }
}

Tick tick_of(StepWork work) {
  if (work <= StepWork::kTail) return Tick::kCut;
  if (work <= StepWork::kPegHole) return Tick::kJoined;
  if (work <= StepWork::kFit) return Tick::kFitted;
  return Tick::kReady;
}

std::uint8_t cautions_of(StepWork work) {
  switch (place_of(work)) {
    case Workplace::kSaw:
      return kKickback | kEyesEars | kCords | kWorkHeld;
    case Workplace::kSlotter:
      return kEyesEars | kCords | kWorkHeld;
    case Workplace::kDrillPress:
      return kEyesEars | kWorkHeld;
    case Workplace::kLayout:
      return 0;
    case Workplace::kBench:
      break;
  }
  switch (work) {
    case StepWork::kSeatPlate:
    case StepWork::kWitness:
    case StepWork::kReturnPlate:
      return 0;
    case StepWork::kFit:
    case StepWork::kJig:
      return kWorkHeld;
    default:
      return kEyesEars | kCords | kWorkHeld;
  }
}

bool wants_fit(StepWork work) {
  return work == StepWork::kTenon || work == StepWork::kTongue || work == StepWork::kFork || work == StepWork::kLap ||
         work == StepWork::kScarf;
}

class StepMaker {
 public:
  StepMaker(const Frame& frame, const Sheet& sheet)
      : frame_(frame), sheet_(sheet), timber_(frame.timbers[static_cast<std::size_t>(sheet.timber)]) {}

  std::vector<WorkStep> make() {
    WorkStep& layout = add(StepWork::kLayout, {});
    layout.numbers.push_back({StepNumberName::kOverall, sheet_.check.overall});
    is_rafter(timber_.kind) ? cut_rafter() : cut_ends();
    for (const BenchStep& step : sheet_.steps)
      if (step.work == WorkOn::kFeature && !(is_rafter(timber_.kind) && is_mouth(step))) joinery(step);
    for (const int joint : plated_) plate(joint);
    fits();
    add(StepWork::kLabel, {});
    add(StepWork::kFinish, {});
    count_twins();
    return std::move(steps_);
  }

 private:
  [[nodiscard]] const Feature& feature(int index) const { return timber_.features[static_cast<std::size_t>(index)]; }
  [[nodiscard]] bool is_mouth(const BenchStep& step) const {
    return step.work == WorkOn::kFeature && feature(step.index).kind == FeatureKind::kBirdsMouth;
  }

  WorkStep& add(StepWork work, std::string_view what) {
    WorkStep& step = steps_.emplace_back();
    step.work = work;
    step.word = step.id = kStepWorkWords[static_cast<std::size_t>(work)];
    if (!what.empty()) (step.id += '/') += what;
    step.place = place_of(work);
    step.tick = tick_of(work);
    step.cautions = cautions_of(work);
    return step;
  }

  WorkStep& add_at(StepWork work, End end) {
    WorkStep& step = add(work, keys::word(keys::kEnd, end));
    step.end = end;
    return step;
  }

  void cut(const BenchStep& from, StepWork work) {
    const EndCut& end = timber_.cuts[static_cast<std::size_t>(from.index)];
    WorkStep& step = add_at(work, end.end);
    step.on = WorkOn::kEndCut;
    step.index = from.index;
    step.saw_cuts = from.saw_cuts;
    step.setups = setups_of(sheet_, from, end.end == End::kA);
    step.numbers = end_cut_numbers(sheet_, from, end.end);
  }

  void cut_ends() {
    for (const BenchStep& step : sheet_.steps)
      if (step.work == WorkOn::kEndCut) cut(step, StepWork::kEndCut);
  }

  void cut_end(End end, StepWork work) {
    for (const BenchStep& step : sheet_.steps)
      if (step.work == WorkOn::kEndCut && timber_.cuts[static_cast<std::size_t>(step.index)].end == end)
        cut(step, work);
  }

  void cut_rafter() {
    cut_end(End::kB, StepWork::kPeak);
    if (std::any_of(sheet_.steps.begin(), sheet_.steps.end(), [&](const BenchStep& s) { return is_mouth(s); })) {
      WorkStep& check = add(StepWork::kPatternCheck, {});
      check.numbers.push_back({StepNumberName::kOverall, sheet_.check.overall});
    }
    for (const BenchStep& step : sheet_.steps)
      if (is_mouth(step)) joinery(step);
    cut_end(End::kA, StepWork::kTail);
  }

  [[nodiscard]] std::string mate_of(const Feature& f) const {
    if (f.joint < 0) return {};
    const Joint& joint = frame_.joints[static_cast<std::size_t>(f.joint)];
    const int other = joint.member == sheet_.timber ? joint.receiver : joint.member;
    return frame_.timbers[static_cast<std::size_t>(other)].mark;
  }

  /// The end of the joint that the feature stands at, where it is this timber's own.
  [[nodiscard]] std::optional<End> end_of(const Feature& f) const {
    if (f.at_end) return f.end;
    if (f.joint < 0) return std::nullopt;
    const Joint& joint = frame_.joints[static_cast<std::size_t>(f.joint)];
    return joint.member == sheet_.timber && !joint.crossing ? std::optional(joint.end) : std::nullopt;
  }

  void joinery(const BenchStep& from) {
    const Feature& f = feature(from.index);
    if (f.kind == FeatureKind::kHole && f.use == HoleUse::kPin && f.joint >= 0) return;  // with their plate
    const StepWork work = f.kind == FeatureKind::kHole && f.use == HoleUse::kPeg ? StepWork::kPegHole : work_of(f.kind);
    const std::optional<End> end = end_of(f);
    const std::string mate = mate_of(f);
    std::string what = "face" + std::string(keys::word(keys::kFace, f.face));
    if (end)
      what = keys::word(keys::kEnd, *end);
    else if (work == StepWork::kBirdsMouth && f.joint >= 0)
      what = keys::word(keys::kMeeting, frame_.joints[static_cast<std::size_t>(f.joint)].meeting);
    else if (!mate.empty())
      what = mate;
    // All pegs of one joint are bored in one step.
    if (work == StepWork::kPegHole && f.joint >= 0 && known(work, f.joint)) return;
    WorkStep& step = add(work, what);
    step.end = end;
    step.mate = mate;
    step.on = WorkOn::kFeature;
    step.index = from.index;
    step.saw_cuts = from.saw_cuts;
    step.setups = setups_of(sheet_, from, false);
    step.numbers = feature_numbers(frame_, sheet_, from);
    if (f.kind == FeatureKind::kSlot && f.joint >= 0) plated_.push_back(f.joint);
  }

  [[nodiscard]] bool known(StepWork work, int joint) const {
    return std::any_of(steps_.begin(), steps_.end(), [&](const WorkStep& s) {
      return s.work == work && s.index >= 0 && feature(s.index).joint == joint;
    });
  }

  void plate(int index) {
    const Joint& joint = frame_.joints[static_cast<std::size_t>(index)];
    const StepWork works[] = {StepWork::kSeatPlate,   StepWork::kWitness,    StepWork::kJig,
                              StepWork::kSpotPlate,   StepWork::kDrillPlate, StepWork::kReturnPlate,
                              StepWork::kDrillThrough};
    const bool pinned = std::any_of(timber_.features.begin(), timber_.features.end(),
                                    [&](const Feature& f) { return f.joint == index && f.kind == FeatureKind::kHole; });
    for (const StepWork work : works) {
      if (!pinned && work > StepWork::kWitness) break;
      WorkStep& step = add_at(work, joint.end);
      step.mate = frame_.timbers[static_cast<std::size_t>(joint.receiver)].mark;
      step.on = WorkOn::kFeature;
      step.index = plate_feature(index, work);
      step.numbers = plate_numbers(frame_, sheet_.timber, index, work);
    }
  }

  /// The slot, or the first pin from the jig on.
  [[nodiscard]] int plate_feature(int joint, StepWork work) const {
    const FeatureKind wanted = work >= StepWork::kJig ? FeatureKind::kHole : FeatureKind::kSlot;
    for (int i = 0; i < static_cast<int>(timber_.features.size()); ++i)
      if (feature(i).joint == joint && feature(i).kind == wanted) return i;
    return -1;
  }

  void fits() {
    const std::size_t count = steps_.size();
    for (std::size_t i = 0; i < count; ++i) {
      if (!wants_fit(steps_[i].work) || steps_[i].mate.empty()) continue;
      const std::string what = steps_[i].id.substr(steps_[i].id.find('/') + 1), mate = steps_[i].mate;
      const int index = steps_[i].index;
      const std::optional<End> end = steps_[i].end;
      WorkStep& step = add(StepWork::kFit, what);
      step.end = end;
      step.mate = mate;
      step.on = WorkOn::kFeature;
      step.index = index;
    }
  }

  void count_twins() {
    for (std::size_t i = 0; i < steps_.size(); ++i) {
      int n = 1;
      const std::string base = steps_[i].id;
      for (std::size_t k = i + 1; k < steps_.size(); ++k)
        if (steps_[k].id == base) (steps_[k].id += '#') += std::to_string(++n);
    }
  }

  const Frame& frame_;
  const Sheet& sheet_;
  const Timber& timber_;
  std::vector<WorkStep> steps_;
  std::vector<int> plated_;  ///< joints with a plate in this timber's end
};

}  // namespace

const WorkStep* plate_step(std::span<const WorkStep> steps, const WorkStep& step) {
  if (step.work < StepWork::kSeatPlate || step.work > StepWork::kDrillThrough) return nullptr;
  for (const WorkStep& s : steps)
    if (s.work == StepWork::kSeatPlate && s.end == step.end && s.mate == step.mate) return &s;
  return nullptr;
}

std::vector<WorkStep> work_steps(const Frame& frame, const Sheet& sheet) { return StepMaker(frame, sheet).make(); }

}  // namespace bentbook
