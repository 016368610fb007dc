#pragma once
/// The knife-plate end: slot, mouth relief, base let in, pins, set-up numbers.

#include <string>

#include "frame/joints/pins.h"
#include "frame/timber.h"

namespace bentbook {

class Fields;
struct EndMeeting;
struct Work;

/// Member cut to the receiver's face, a plate in a slot, fixed to the receiver.
struct KnifePlate {
  std::string name;
  Length thickness = Length::inches(3, 8);
  Length reach = Length::inches(15, 2);  ///< of the plate, into the member from its shoulder
  Length width = Length::inches(6);      ///< of the plate across the member; a slot blind or open at one side
  Length slot_clearance = Length::inches(1, 16);
  Length depth_clearance = Length::inches(1, 4);
  SlotOpen open = SlotOpen::kBottom;
  Length relief_leg = Length::inches(3, 8);   ///< 45° chamfer at the mouth; 0: none
  Length root_radius = Length::inches(1, 4);  ///< of the fillet at the plate's root
  Length weld_crown{};                        ///< welds: relief leg at least root + 1.41 crown
  Length base_thickness = Length::inches(1, 2);
  Length base_width = Length::inches(5);   ///< across the slot
  Length base_height = Length::inches(7);  ///< along the slot
  bool let_in = true;                      ///< base let into the receiver flush, else into the member's shoulder
  PinPattern pins;
  int temporary_screws = 2;
  friend bool operator==(const KnifePlate&, const KnifePlate&) = default;
};
void describe(Fields& fields, KnifePlate& joint);
/// Of the slot: the plate and its play.
[[nodiscard]] constexpr Length slot_width(const KnifePlate& plate) { return plate.thickness + plate.slot_clearance; }
/// From either side of a member this broad to the slot's near side; the slot stands in its middle.
[[nodiscard]] constexpr Length slot_gauge(const KnifePlate& plate, Length breadth) {
  return {(breadth - slot_width(plate)).count / 2};
}
/// What of the base stands in the member, from its shoulder.
[[nodiscard]] constexpr Length base_in_member(const KnifePlate& plate) {
  return plate.let_in ? Length{} : plate.base_thickness;
}
/// Of the slot, from the member's shoulder.
[[nodiscard]] constexpr Length slot_depth(const KnifePlate& plate) {
  return base_in_member(plate) + plate.reach + plate.depth_clearance;
}

void join_knife(Work& work, const EndMeeting& meeting, const KnifePlate& type);

}  // namespace bentbook
