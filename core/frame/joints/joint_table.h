#pragma once
/// The joints of the house, a row each: all that is said of a joint besides its measures and its cuts, which stand in
/// its own file. Who asks about joints walks this table.

#include <span>
#include <string_view>

#include "frame/joints/joint.h"

namespace bentbook {

class Fields;
struct EndMeeting;
struct Work;

/// What keeps a joint together once it is closed.
enum class Fasteners : std::uint8_t {
  kPins,   ///< steel, counted as soon as they are in: before that the joint holds nothing
  kLoose,  ///< pegs, screws: not counted while raising, unless the lead says so
};

/// By what a joint holds while the frame goes up (raising/stability/standing.h says how each is counted).
enum class HoldBy : std::uint8_t {
  kPress,  ///< faces that press
  kPlate,  ///< a point both ways, and no turning about the member's own axis
  kTenon,  ///< its shoulder presses, cheeks and edges hold across
  kSeat,   ///< seat and heel press
  kPeak,   ///< plumb faces press; a tongue's cheeks hold sideways
  kLap,    ///< faces press; the notch's sides hold the member
  kScarf,  ///< faces press; pegs hold sideways
};
/// Conservative, *common practice*; the lead may change the three for all joints of a kind (HoldChange).
struct JointHold {
  HoldBy by = HoldBy::kPress;
  bool sideways = false;  ///< level, across
  bool uplift = false;    ///< the carried piece is held down
  bool pulls = false;     ///< the member's end is held in, along its axis
};

struct JointRow {
  std::string_view word;       ///< in files and on the command line; never changes
  std::uint32_t meetings = 0;  ///< that can take it, a bit each
  JointHold holds;
  Fasteners fasteners = Fasteners::kLoose;
  JointType (*usual)() = nullptr;  ///< with its default measures
  /// Makes it at a member's end. nullptr: it is made where timbers pass or lie in one line, and is one for the whole
  /// meeting: their timbers are laid out together.
  void (*at_end)(Work& work, const EndMeeting& meeting, const JointType& type) = nullptr;
};

/// By JointKind.
[[nodiscard]] std::span<const JointRow, kJointKinds> joint_table();
[[nodiscard]] inline const JointRow& row_of(JointKind kind) { return joint_table()[static_cast<std::size_t>(kind)]; }
/// The words alone, in the same order.
[[nodiscard]] std::span<const std::string_view, kJointKinds> joint_words();
/// As files have it: `type`, its word, says which measures follow.
void describe(Fields& fields, JointType& type);
/// Whether a meeting can take it.
[[nodiscard]] bool fits(Meeting meeting, JointKind kind);

}  // namespace bentbook
