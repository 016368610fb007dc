#pragma once
/// Pins of a knife plate, pegs of a wooden joint: the pattern in which they are bored.

#include "measure/length.h"

namespace bentbook {

class Fields;

/// Pins, pegs or screws of one joint.
inline constexpr int kMostPins = 20;

/// Pins of a knife plate or pegs of a tenon, through the member (and the receiver's cheeks) square to the slot.
struct PinPattern {
  Length diameter = Length::inches(3, 4);
  int count = 2;                                 ///< in one row across the member
  Length from_shoulder = Length::inches(21, 4);  ///< row to shoulder, along the member
  Length spacing = Length::inches(3);            ///< axis to axis across the member
  Length plug = Length::inches(1);               ///< kept free at each face for a wooden plug; knife plates alone
  friend bool operator==(const PinPattern&, const PinPattern&) = default;
};
void describe(Fields& fields, PinPattern& pins);
/// From an edge to the first axis of a row that stands in the middle of `across`.
[[nodiscard]] Length first_of_row(const PinPattern& row, int count, Length across);
/// Inches from the shoulder to the row of a tenon's pegs: as asked, or in the tenon's middle where it has no room
/// there.
[[nodiscard]] double peg_row(const PinPattern& peg, double tenon_length, double drawbore);

}  // namespace bentbook
