#pragma once
/// The steps of work on one timber, from its cuts and features, in the order of the trade; the numbers that a machine
/// or a mark is set to at each; what to mind. At a knife-plate end: square the end, slot, relieve the mouth, seat
/// the plate and screw it, witness marks, jig, drill until the plate is spotted, plate out and drilled on the press,
/// plate back on its marks, block behind the far face, drill through. Rafters: peak, pattern check, bird's mouth, tail.
/// Source: SOURCES.md, "order of work".

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "frame/sheet/sheet.h"
#include "shop/log/rules.h"
#include "shop/log/state.h"

namespace bentbook {

enum class StepWork : std::uint8_t {
  kLayout,
  kEndCut,
  kPeak,          ///< a rafter's upper end
  kPatternCheck,  ///< the pattern laid on before the bird's mouth is cut
  kBirdsMouth,
  kTail,  ///< a rafter's lower end
  kTenon,
  kTongue,
  kFork,
  kLap,
  kScarf,
  kSlot,
  kRelief,
  kLetIn,
  kHousing,
  kMortise,
  kHole,
  kPegHole,
  kSeatPlate,     ///< plate seated and screwed
  kWitness,       ///< witness marks across plate and timber
  kJig,           ///< the drilling jig set
  kSpotPlate,     ///< drilled until the plate is spotted
  kDrillPlate,    ///< plate out, drilled on the press
  kReturnPlate,   ///< plate back on its marks
  kDrillThrough,  ///< a block behind the far face
  kFit,           ///< tried with its mate
  kLabel,
  kFinish,
  kOwn,  ///< added by the lead
};
inline constexpr std::array<std::string_view, 29> kStepWorkWords = {
    "layout",        "end_cut", "peak",    "pattern_check", "birds_mouth", "tail",
    "tenon",         "tongue",  "fork",    "lap",           "scarf",       "slot",
    "relief",        "let_in",  "housing", "mortise",       "hole",        "peg_hole",
    "seat_plate",    "witness", "jig",     "spot_plate",    "drill_plate", "return_plate",
    "drill_through", "fit",     "label",   "finish",        "own"};
static_assert(kStepWorkWords.size() == static_cast<std::size_t>(StepWork::kOwn) + 1);

/// What to mind, shown with the step.
enum WorkCaution : std::uint8_t {
  kKickback = 1,  ///< stand out of the blade's line, let nothing pinch it
  kEyesEars = 2,  ///< covered
  kCords = 4,     ///< clear of the blade
  kWorkHeld = 8,  ///< clamped or wedged
};

/// What a number is; inches, or degrees where it says so. Stations run from end A's tip.
enum class StepNumberName : std::uint8_t {
  kTable,      ///< degrees off square across the face ridden (BladeAngles::swing)
  kTilt,       ///< degrees off square into the wood
  kStop,       ///< station of the cut on the face ridden
  kReach,      ///< of the blade, to go through at once
  kDepth,      ///< under the face; a slot: from the shoulder
  kFrom,       ///< station
  kTo,         ///< station
  kAcross,     ///< thickness of tenon or slot, width of a mortise
  kFence,      ///< reference face to the near side
  kShim,       ///< under a tool that centres; may be negative
  kJigOffset,  ///< reference face to the jig's line
  kDiameter,
  kDrawbore,  ///< hole in the tenon nearer to the shoulder by this
  kOverall,   ///< tip to tip
  kFall,      ///< of a dovetailed edge, from the shoulder to the tip
  kWedge,     ///< thickness of the wedges over the tenon
};
inline constexpr std::array<std::string_view, 16> kStepNumberWords = {
    "table_deg", "tilt_deg", "stop_in", "reach_in",    "depth_in",    "from_in",    "to_in",   "across_in",
    "fence_in",  "shim_in",  "jig_in",  "diameter_in", "drawbore_in", "overall_in", "fall_in", "wedge_in"};
static_assert(kStepNumberWords.size() == static_cast<std::size_t>(StepNumberName::kWedge) + 1);
[[nodiscard]] constexpr bool is_degrees(StepNumberName name) { return name <= StepNumberName::kTilt; }

struct StepNumber {
  StepNumberName name = StepNumberName::kDepth;
  double value = 0;
};

/// What a saw is set to. Angles to a hundredth of a degree, the stop to 1/64 in; 0 where there is no stop.
struct SawSetup {
  std::int64_t table = 0, tilt = 0;  ///< hundredths of a degree, signed as BladeAngles
  std::int64_t stop = 0;             ///< 64ths of an inch
  friend auto operator<=>(const SawSetup&, const SawSetup&) = default;  // NOLINT(modernize-use-nullptr)
};

struct WorkStep {
  /// What it works on, in words: "slot/a", "mortise/B-A1.2", "birds_mouth/rafter_plate". It stays while the plan's
  /// numbers change, and the crew's ticks with it. A second one of the same words has "#2" behind it.
  std::string id;
  std::string word;  ///< by which rules name it: its work's word, or its own id
  StepWork work = StepWork::kLayout;
  Workplace place = Workplace::kLayout;
  Tick tick = Tick::kCut;
  std::uint8_t cautions = 0;  ///< WorkCaution, added up
  std::optional<End> end;
  std::string mate;                 ///< mark of the other timber
  WorkOn on = WorkOn::kEndCut;      ///< with index: what of the timber is drawn large
  int index = -1;                   ///< in Timber::cuts or Timber::features; −1: the whole
  std::vector<StepNumber> numbers;  ///< the one that is wanted first comes first
  std::vector<int> saw_cuts;        ///< in Sheet::saw_cuts
  std::vector<SawSetup> setups;     ///< of those across the timber, each once
  std::string name;                 ///< the lead's; empty: the usual one
  std::optional<Length> tolerance;  ///< a measure is asked for, within this
  Length wanted;                    ///< what it should be: the first number that is a length
};

/// As the trade goes.
[[nodiscard]] std::vector<WorkStep> work_steps(const Frame& frame, const Sheet& sheet);
/// The step in which the plate was seated that `step` is about (the same end, the same mate): by its id plate numbers
/// are recorded. nullptr: `step` has to do with no plate.
[[nodiscard]] const WorkStep* plate_step(std::span<const WorkStep> steps, const WorkStep& step);

/// "depth_in=7.7500 fence_in=3.7500": what is kept with a finished step.
[[nodiscard]] std::string numbers_text(std::span<const StepNumber> numbers);
/// What can be read of such a text, in its order; what cannot is left out.
[[nodiscard]] std::vector<StepNumber> read_numbers(std::string_view text);

}  // namespace bentbook
