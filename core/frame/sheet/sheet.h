#pragma once
/// The sheet of one timber: what is marked, how the saw is set, in which order, and what a tape must find at the end.

#include <optional>
#include <vector>

#include "cut/setting.h"
#include "frame/plan.h"
#include "frame/sheet/layout_marks.h"
#include "frame/sheet/rough.h"

namespace bentbook {

enum class WorkOn : std::uint8_t { kEndCut, kFeature };

/// One pass of the saw. Of end cuts each; of tenons, tongues, laps, scarfs and bird's mouths each side that a saw
/// makes.
struct SawCut {
  WorkOn work = WorkOn::kEndCut;
  int index = 0;   ///< in Timber::cuts or Timber::features
  CutPlane plane;  ///< waste on the positive side
  /// A cheek: it runs along the timber and has no angle across it; `face` is the one it is gauged on and sawn from,
  /// pass.needed how deep it goes there and pass.faces from how many; `blade` and the graduations are not meant.
  bool along = false;
  Face face = Face::kNear;  ///< the saw rides on it
  bool on_reference = true;
  BladeAngles blade;
  Pass pass;                           ///< pass.travel: length of the cut on the face; pass.needed: reach of the blade
  std::optional<Graduations> swing;    ///< across the face ridden; nothing where the saw has no such setting
  std::optional<Graduations> tilt;     ///< through the wood
  double from = 0, to = 0;             ///< stations of its line on the face ridden, at the low arris side and the high
  bool at_low = true, at_high = true;  ///< its line reaches the low arris, the high one
  double depth = 0;                    ///< how deep it goes under the face, square to it
  bool through = true;                 ///< right through the wood
};

/// One step at the bench. End cuts come first (end A, then B), then what an end wants (let-in, tenon, slot, relief),
/// then notches and housings, mortises, holes last: each is measured from what the ones before it left.
struct BenchStep {
  WorkOn work = WorkOn::kEndCut;
  int index = 0;
  std::vector<int> saw_cuts;  ///< in Sheet::saw_cuts
};

/// Where another timber lands on a face without a recess of its own.
struct MateOutline {
  Face face = Face::kTop;
  int mate = 0;   ///< in Frame::timbers
  int joint = 0;  ///< in Frame::joints
  std::vector<Vec2> outline;
};

enum class Hand : std::uint8_t { kNone, kLeft, kRight };

struct Sheet {
  int timber = 0;
  SawKind saw = SawKind::kCircular;  ///< with which it is cut
  LayoutMarks marks;
  CheckMeasures check;
  std::vector<SawCut> saw_cuts;
  std::vector<BenchStep> steps;
  std::vector<MateOutline> mates;
  std::vector<FloatingFace> floating;
  Hand hand = Hand::kNone;    ///< the left hand is the one of the timber that comes first in the frame (toward line A)
  std::vector<int> mirrored;  ///< its other hand, in Frame::timbers
  std::vector<int> alike;     ///< cut just like this one
  std::vector<TimberWarning> warnings;
};

/// `timber`: index in frame.timbers. The saw must pass check_saw().
[[nodiscard]] Sheet solve_sheet(const Frame& frame, int timber, const Saw& saw);

/// The other timber of the feature's joint, in Frame::timbers; −1: entered by hand.
[[nodiscard]] int mate_of(const Frame& frame, int timber, const Feature& feature);

/// Of the same sheet what steps of work are made of, a good deal sooner: timber, check, saw_cuts, steps.
[[nodiscard]] Sheet solve_sawing(const Frame& frame, int timber, const Saw& saw);

}  // namespace bentbook
