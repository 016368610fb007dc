#pragma once
/// The steps of work on one timber, from its cuts and features, in the order of the trade; the numbers that a machine
/// or a mark is set to at each; what to mind. At a knife-plate end: square the end, slot, relieve the mouth, seat
/// the plate and screw it, witness marks, jig, drill until the plate is spotted, plate out and drilled on the press,
/// plate back on its marks, block behind the far face, drill through. End A before all that is taped from it, then end
/// B. Rafters: tail, peak, pattern check, bird's mouth.
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
/// What holds wherever a tool is at work: said once for a timber, not again with each of its steps.
inline constexpr std::uint8_t kAtEveryTool = kEyesEars | kWorkHeld;

/// What a number is; inches, or degrees where it says so. Stations run from end A's tip.
enum class StepNumberName : std::uint8_t {
  kTable,     ///< degrees off square across the face ridden (BladeAngles::swing)
  kTilt,      ///< degrees off square into the wood
  kStop,      ///< station of the cut on the face ridden; `from`: the face whose edge it is at
  kReach,     ///< of the blade, to go through at once
  kDepth,     ///< under the face `from`; a slot: from the end, along the timber
  kStart,     ///< how deep under the face it begins: on a housing’s floor
  kFrom,      ///< station where it begins
  kLeanFrom,  ///< that wall off square, positive toward end B as it goes in
  kTo,        ///< station
  kLeanTo,
  kShoulder,  ///< station where a cheek or a floor ends; `from`: at the edge of that face, where it is not square there
  kFence,     ///< reference face to the near side, or to the near gauge line
  kLeanNear,  ///< that side off square, positive away from the reference face as it goes in
  kFar,       ///< reference face to the far side, or to the far gauge line
  kLeanFar,
  kWidth,   ///< of a slot, mortise, housing
  kAcross,  ///< thickness of a tenon
  kBegins,  ///< the other way: reference face to where a slot begins that does not run through
  kEnds,
  kBottom,     ///< station of the bottom at the edge of the face `from`, where it is not square across
  kShim,       ///< between the face and a tool set to the middle; may be negative
  kJigOffset,  ///< reference face to the jig’s line
  kDiameter,
  kAt,        ///< a bore’s station; the next kOff is of the same bore
  kOff,       ///< reference face to the middle of a bore
  kDrawbore,  ///< hole in the tenon nearer to the shoulder by this
  kOverall,   ///< tip to tip
  kFall,      ///< of a dovetailed edge, from the shoulder to the tip, toward the face `from`
  kWedge,     ///< thickness of the wedges over the tenon
  kFaceUp,    ///< number of the face that the work is done from
};
inline constexpr std::array<std::string_view, 30> kStepNumberWords = {
    "table_deg",     "tilt_deg",      "stop_in",      "reach_in",    "depth_in",    "start_in",
    "from_in",       "lean_from_deg", "to_in",        "lean_to_deg", "shoulder_in", "fence_in",
    "lean_near_deg", "far_in",        "lean_far_deg", "width_in",    "across_in",   "begins_in",
    "ends_in",       "bottom_in",     "shim_in",      "jig_in",      "diameter_in", "at_in",
    "off_in",        "drawbore_in",   "overall_in",   "fall_in",     "wedge_in",    "face"};
static_assert(kStepNumberWords.size() == static_cast<std::size_t>(StepNumberName::kFaceUp) + 1);
[[nodiscard]] constexpr bool is_degrees(StepNumberName name) {
  return kStepNumberWords[static_cast<std::size_t>(name)].ends_with("_deg");
}
/// What a tool is set to: said finer than a station is marked.
[[nodiscard]] bool is_tool_setting(StepNumberName name);
/// Inches; whether such a bit is sold by the millimetre: a whole or a half one.
[[nodiscard]] bool is_metric_bit(double diameter);

struct StepNumber {
  StepNumberName name = StepNumberName::kDepth;
  double value = 0;
  std::optional<Face> from{};  ///< the face that it is measured from
  bool through = false;        ///< a depth that is all the wood there: nothing is set to it
  bool follows = false;        ///< from the others, said for the hand: not kept with the finished step
};

/// What a saw is set to. Angles to a hundredth of a degree, the stop to 1/64 in; 0 where there is no stop.
struct SawSetup {
  std::int64_t table = 0, tilt = 0;  ///< hundredths of a degree, signed as BladeAngles
  std::int64_t stop = 0;             ///< 64ths of an inch
  friend auto operator<=>(const SawSetup&, const SawSetup&) = default;  // NOLINT(modernize-use-nullptr)
};

/// Which of the settings that one joint wants.
enum class StepPart : std::uint8_t {
  kWhole,
  kShoulder,
  kNose,    ///< an oblique tenon's end cut across
  kWall,    ///< of a lap on the way
  kSeat,    ///< of a bird's mouth
  kPlumb,   ///< of a bird's mouth
  kCheeks,  ///< both gauge lines
  kEdges,   ///< a tenon's narrow sides
  kFloor,   ///< of a lap or scarf
};
inline constexpr std::array<std::string_view, 9> kStepPartWords = {"whole", "shoulder", "nose",  "wall", "seat",
                                                                   "plumb", "cheeks",   "edges", "floor"};
static_assert(kStepPartWords.size() == static_cast<std::size_t>(StepPart::kFloor) + 1);

/// One setting of a saw or tool: one tick clears one cut.
struct WorkStep {
  /// What it works on, in words: "slot/a", "mortise/B-A1.2", "birds_mouth/rafter_plate". It stays while the plan's
  /// numbers change, and the crew's ticks with it. A second one of the same words has "#2" behind it. Where one joint
  /// wants several settings each has its number behind: "tenon/a.1", "tenon/a.2". Bores of one bit from one face to one
  /// depth: "peg_hole/from_face2".
  std::string id;
  std::string of;  ///< the id without that number
  /// Ids by which older logs know the work: the step is done when all of these are.
  std::vector<std::string> was;
  std::string word;  ///< by which rules name it: its work's word, or its own id
  StepWork work = StepWork::kLayout;
  StepPart part = StepPart::kWhole;
  Workplace place = Workplace::kLayout;
  Tick tick = Tick::kCut;
  std::uint8_t cautions = 0;  ///< WorkCaution, added up
  std::optional<End> end;
  std::string mate;                 ///< mark of the other timber
  std::string says;                 ///< a mark that is read large: the mate it is tried with, its own to be written
  std::optional<JointKind> joint;   ///< of a trial: what is tried
  WorkOn on = WorkOn::kEndCut;      ///< with index: what of the timber is drawn large
  int index = -1;                   ///< in Timber::cuts or Timber::features; −1: the whole
  std::vector<StepNumber> numbers;  ///< the one that is wanted first comes first
  std::vector<int> saw_cuts;        ///< in Sheet::saw_cuts
  std::optional<SawSetup> setup;    ///< of a cut across the timber
  std::string name;                 ///< the lead's; empty: the usual one
  std::optional<Length> tolerance;  ///< a measure is asked for, within this
  Length wanted;                    ///< what it should be: the first number that is a length
  [[nodiscard]] std::optional<Face> face_up() const;
};

/// As the trade goes.
[[nodiscard]] std::vector<WorkStep> work_steps(const Frame& frame, const Sheet& sheet);
/// The step in which the plate was seated that `step` is about (the same end, the same mate): by its id plate numbers
/// are recorded. nullptr: `step` has to do with no plate.
[[nodiscard]] const WorkStep* plate_step(std::span<const WorkStep> steps, const WorkStep& step);

/// "face=1.0000 depth_in=7.7500 fence_in=3.7500@2": what is kept with a finished step; a number behind "@" is the face
/// that it is measured from. As much as an event's value holds.
[[nodiscard]] std::string numbers_text(std::span<const StepNumber> numbers);
/// What can be read of such a text, in its order; what cannot is left out.
[[nodiscard]] std::vector<StepNumber> read_numbers(std::string_view text);

}  // namespace bentbook
