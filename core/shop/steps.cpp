#include "shop/steps.h"

#include <algorithm>
#include <map>
#include <utility>

#include "frame/keys.h"
#include "numeric/libm.h"
#include "shop/limits.h"
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

/// A hand saw neither kicks nor has a cord.
std::uint8_t cautions_of(StepWork work, SawKind saw) {
  switch (place_of(work)) {
    case Workplace::kSaw:
      return saw == SawKind::kHand ? kEyesEars | kWorkHeld : kKickback | kEyesEars | kCords | kWorkHeld;
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
    case StepWork::kLabel:
      return 0;
    case StepWork::kFit:
    case StepWork::kJig:
      return kWorkHeld;
    case StepWork::kHole:
    case StepWork::kPegHole:
    case StepWork::kSpotPlate:
    case StepWork::kDrillThrough:
    case StepWork::kFinish:
      return kEyesEars | kWorkHeld;  // a bit, no blade
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
    count_bores();
    WorkStep& layout = add(StepWork::kLayout, {});
    layout.numbers.push_back({StepNumberName::kOverall, sheet_.check.overall});
    is_rafter(timber_.kind) ? cut_rafter() : cut_ends();
    for (const BenchStep& step : sheet_.steps)
      if (step.work == WorkOn::kFeature && !(is_rafter(timber_.kind) && is_mouth(step))) joinery(step);
    for (const int joint : plated_) plate(joint);
    fits();
    add(StepWork::kLabel, {}).says = timber_.mark;
    add(StepWork::kFinish, {});
    name_steps();
    return std::move(steps_);
  }

 private:
  [[nodiscard]] const Feature& feature(int index) const { return timber_.features[static_cast<std::size_t>(index)]; }
  [[nodiscard]] bool is_mouth(const BenchStep& step) const {
    return step.work == WorkOn::kFeature && feature(step.index).kind == FeatureKind::kBirdsMouth;
  }

  WorkStep& add(StepWork work, std::string_view what) {
    WorkStep& step = steps_.emplace_back();
    joints_.push_back(static_cast<int>(steps_.size()));
    step.work = work;
    step.word = step.of = kStepWorkWords[static_cast<std::size_t>(work)];
    if (!what.empty()) (step.of += '/') += what;
    step.place = place_of(work);
    step.tick = tick_of(work);
    step.cautions = cautions_of(work, sheet_.saw);
    return step;
  }

  WorkStep& add_at(StepWork work, End end) {
    WorkStep& step = add(work, keys::word(keys::kEnd, end));
    step.end = end;
    return step;
  }

  static void set(WorkStep& step, StepSetting setting) {
    step.part = setting.part;
    step.setup = setting.setup;
    step.saw_cuts = std::move(setting.saw_cuts);
    step.numbers = std::move(setting.numbers);
  }

  void cut(const BenchStep& from, StepWork work) {
    const EndCut& end = timber_.cuts[static_cast<std::size_t>(from.index)];
    WorkStep& step = add_at(work, end.end);
    step.on = WorkOn::kEndCut;
    step.index = from.index;
    set(step, end_cut_setting(sheet_, timber_, from));
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

  /// The tail first: what the peak and the bird's mouth are stopped at is taped from it.
  void cut_rafter() {
    cut_end(End::kA, StepWork::kTail);
    cut_end(End::kB, StepWork::kPeak);
    if (std::any_of(sheet_.steps.begin(), sheet_.steps.end(), [&](const BenchStep& s) { return is_mouth(s); })) {
      WorkStep& check = add(StepWork::kPatternCheck, {});
      check.numbers.push_back({StepNumberName::kOverall, sheet_.check.overall});
    }
    for (const BenchStep& step : sheet_.steps)
      if (is_mouth(step)) joinery(step);
  }

  [[nodiscard]] std::string mark_of_mate(const Feature& f) const {
    const int mate = mate_of(frame_, sheet_.timber, f);
    return mate < 0 ? std::string{} : frame_.timbers[static_cast<std::size_t>(mate)].mark;
  }

  /// The end of the joint that the feature stands at, where it is this timber's own.
  [[nodiscard]] std::optional<End> end_of(const Feature& f) const {
    if (f.at_end) return f.end;
    if (f.joint < 0) return std::nullopt;
    const Joint& joint = frame_.joints[static_cast<std::size_t>(f.joint)];
    return joint.member == sheet_.timber && !joint.crossing ? std::optional(joint.end) : std::nullopt;
  }

  /// In words what a feature's work is on.
  [[nodiscard]] std::string what_of(const Feature& f, StepWork work) const {
    if (const auto end = end_of(f)) return std::string(keys::word(keys::kEnd, *end));
    if (work == StepWork::kBirdsMouth && f.joint >= 0)
      return std::string(keys::word(keys::kMeeting, frame_.joints[static_cast<std::size_t>(f.joint)].meeting));
    const std::string mate = mark_of_mate(f);
    return mate.empty() ? "face" + std::string(keys::word(keys::kFace, f.face)) : mate;
  }

  void joinery(const BenchStep& from) {
    const Feature& f = feature(from.index);
    if (f.kind == FeatureKind::kHole) return bore(from.index);
    const StepWork work = work_of(f.kind);
    const int joint = static_cast<int>(steps_.size()) + 1;
    for (StepSetting& setting : feature_settings(frame_, sheet_, from)) {
      WorkStep& step = add(work, what_of(f, work));
      joints_.back() = joint;
      step.end = setting.end ? setting.end : end_of(f);
      step.mate = mark_of_mate(f);
      step.on = WorkOn::kFeature;
      step.index = from.index;
      set(step, std::move(setting));
    }
    if (f.kind == FeatureKind::kSlot && f.joint >= 0) plated_.push_back(f.joint);
  }

  /// Bored with its plate, or past the timber's end.
  [[nodiscard]] bool has_no_step(const Feature& f) const {
    return (f.use == HoleUse::kPin && f.joint >= 0) || f.to <= 0 || f.from >= timber_.length;
  }

  /// Which bores are one setting, and by which ids older logs know them: all pegs of a joint were one step.
  void count_bores() {
    std::map<std::string, int> twins;
    std::map<int, std::string> of_joint;
    for (const BenchStep& from : sheet_.steps) {
      if (from.work != WorkOn::kFeature || feature(from.index).kind != FeatureKind::kHole) continue;
      const Feature& f = feature(from.index);
      if (has_no_step(f)) continue;
      const StepWork work = bore_work(f);
      std::string old = std::string(kStepWorkWords[static_cast<std::size_t>(work)]) + '/' + what_of(f, work);
      const auto known = work == StepWork::kPegHole && f.joint >= 0 ? of_joint.find(f.joint) : of_joint.end();
      if (known != of_joint.end()) {
        old = known->second;
      } else {
        if (const int n = ++twins[old]; n > 1) (old += '#') += std::to_string(n);
        if (work == StepWork::kPegHole && f.joint >= 0) of_joint.emplace(f.joint, old);
      }
      add_bore(f, old);
    }
  }

  static StepWork bore_work(const Feature& f) { return f.use == HoleUse::kPeg ? StepWork::kPegHole : StepWork::kHole; }

  struct Bores {
    BoreSetting setting;
    std::vector<const Feature*> holes;
    std::vector<std::string> was;
  };

  void add_bore(const Feature& f, const std::string& old) {
    const BoreSetting setting = bore_setting(frame_, sheet_.timber, f);
    auto it =
        std::find_if(bores_.begin(), bores_.end(), [&](const Bores& b) { return same_setting(b.setting, setting); });
    if (it == bores_.end()) it = bores_.insert(it, {setting, {}, {}});
    it->holes.push_back(&f);
    if (std::find(it->was.begin(), it->was.end(), old) == it->was.end()) it->was.push_back(old);
  }

  /// With the first bore of its setting all are made.
  void bore(int index) {
    const Feature& f = feature(index);
    const auto it = std::find_if(bores_.begin(), bores_.end(), [&](const Bores& b) { return b.holes.front() == &f; });
    if (has_no_step(f) || it == bores_.end()) return;
    WorkStep& step = add(bore_work(f), "from_face" + std::string(keys::word(keys::kFace, f.face)));
    if (it->holes.size() == 1) {
      step.end = end_of(f);
      step.mate = mark_of_mate(f);
    }
    step.on = WorkOn::kFeature;
    step.index = index;
    step.was = it->was;
    step.numbers = bore_numbers(timber_, it->setting, it->holes);
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
      if (i > 0 && joints_[i] == joints_[i - 1]) continue;  // another setting of the same joint
      const std::string what = steps_[i].of.substr(steps_[i].of.find('/') + 1), mate = steps_[i].mate;
      const int index = steps_[i].index;
      const std::optional<End> end = steps_[i].end;
      WorkStep& step = add(StepWork::kFit, what);
      step.end = end;
      step.mate = step.says = mate;
      step.on = WorkOn::kFeature;
      step.index = index;
      if (const int joint = feature(index).joint; joint >= 0)
        step.joint = frame_.joints[static_cast<std::size_t>(joint)].kind;
    }
  }

  /// Joints of the same words are told apart, then the settings of each.
  void name_steps() {
    std::map<std::string, int> twins;
    for (std::size_t i = 0; i < steps_.size();) {
      std::size_t end = i + 1;
      while (end < steps_.size() && joints_[end] == joints_[i]) ++end;
      std::string of = steps_[i].of;
      if (const int n = ++twins[of]; n > 1) (of += '#') += std::to_string(n);
      for (std::size_t k = i; k < end; ++k) {
        steps_[k].id = steps_[k].of = of;
        if (end - i == 1) continue;
        (steps_[k].id += '.') += std::to_string(k - i + 1);
        steps_[k].was = {of};
      }
      i = end;
    }
  }

  const Frame& frame_;
  const Sheet& sheet_;
  const Timber& timber_;
  std::vector<WorkStep> steps_;
  std::vector<int> joints_;  ///< by step: settings of one joint have one number
  std::vector<Bores> bores_;
  std::vector<int> plated_;  ///< joints with a plate in this timber's end
};

}  // namespace

bool is_tool_setting(StepNumberName name) {
  switch (name) {
    case StepNumberName::kDepth:
    case StepNumberName::kStart:
    case StepNumberName::kFence:
    case StepNumberName::kFar:
    case StepNumberName::kWidth:
    case StepNumberName::kAcross:
    case StepNumberName::kBegins:
    case StepNumberName::kEnds:
    case StepNumberName::kShim:
    case StepNumberName::kJigOffset:
    case StepNumberName::kDiameter:
    case StepNumberName::kOff:
    case StepNumberName::kDrawbore:
    case StepNumberName::kFall:
    case StepNumberName::kWedge:
      return true;
    default:
      return false;
  }
}

bool is_metric_bit(double diameter) {
  constexpr double kHair = 1e-6;  // inches
  const double steps = diameter / limits::kBitStepMetric;
  return libm::fabs(steps - libm::floor(steps + 0.5)) * limits::kBitStepMetric < kHair;
}

std::optional<Face> WorkStep::face_up() const {
  for (const StepNumber& n : numbers)
    if (n.name == StepNumberName::kFaceUp) return static_cast<Face>(static_cast<int>(n.value));
  return std::nullopt;
}

const WorkStep* plate_step(std::span<const WorkStep> steps, const WorkStep& step) {
  if (step.work < StepWork::kSeatPlate || step.work > StepWork::kDrillThrough) return nullptr;
  for (const WorkStep& s : steps)
    if (s.work == StepWork::kSeatPlate && s.end == step.end && s.mate == step.mate) return &s;
  return nullptr;
}

std::vector<WorkStep> work_steps(const Frame& frame, const Sheet& sheet) { return StepMaker(frame, sheet).make(); }

}  // namespace bentbook
