#pragma once
/// A saw as the user describes it, and how its scale is read.

#include <cstdint>
#include <string>

#include "measure/slope.h"
#include "numeric/result.h"

namespace bentbook {

class Fields;

enum class SawKind : std::uint8_t {
  kCircular,     ///< a blade below a shoe; the shoe rides on the timber
  kChainsawBar,  ///< a bar that stands on a swinging table or carriage and must reach through
  kHand,         ///< a hand saw: follows pencil lines on the faces, reaches any depth, has no scale
};

/// What the scale reads when the cut is square.
enum class SquareReads : std::uint8_t { kZero, kNinety };

struct Saw {
  std::string name;
  SawKind kind = SawKind::kCircular;
  SquareReads square_reads = SquareReads::kZero;
  /// Finest division of the scale that can be set. More than zero, at most 45°.
  Angle step = Angle::degrees(1);
  /// How deep the blade or bar cuts at square, from the face it rides on. Not used for a hand saw.
  Length reach = Length::inches(2, 1);
  /// How far off square the table (or the guide) swings, and how far the blade tilts. 0: not at all.
  Angle max_swing = Angle::degrees(60);
  Angle max_tilt = Angle::degrees(45);
  /// What the saw cuts more than its scale says, off square (negative: less). From the flip test (flip_test.h).
  Angle scale_error{};

  friend bool operator==(const Saw&, const Saw&) = default;
};

/// The timber's section. Depth is the side face (where a plumb cut is drawn), breadth the top.
struct Section {
  Length breadth = Length::inches(1, 1);
  Length depth = Length::inches(1, 1);
  friend constexpr bool operator==(const Section&, const Section&) = default;
};

/// An angle off square in the saw's own scale: itself, or 90° less it. Its own inverse.
[[nodiscard]] Angle in_scale(SquareReads square_reads, Angle off_square_or_reading);

/// As files have them (measure/fields.h); a saw that is read is checked.
void describe(Fields&, Saw&);
void describe(Fields&, Section&);

/// Errors: kNotPositive / kTooLarge with `where` = "step", "reach", "max_swing", "max_tilt", "scale_error".
[[nodiscard]] Result<void> check_saw(const Saw& saw);

}  // namespace bentbook
