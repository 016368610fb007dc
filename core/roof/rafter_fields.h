#pragma once
/// The inputs of a rafter by their stable keys: one list for drawings, screens, files and the command line.
///
/// Lengths: span run depth breadth plate ridge ridge_beam ridge_seat tail_plumb sheathing trim spacing, and with
/// _left or _right: seat heel plate_height overhang measured_rise measured_run. Slopes: pitch_left pitch_right.
/// While the sides are alike, a _right key reads and sets the left one.

#include <span>
#include <string_view>

#include "measure/fields.h"
#include "roof/rafter.h"

namespace bentbook {

/// As files have it.
void describe(Fields&, RafterInput&);

/// Where a key stands in it: "seat_right" is "right.seat", or "left.seat" while the sides are alike.
[[nodiscard]] std::string rafter_path(const RafterInput& input, std::string_view key);

/// All length keys, in the order of a survey.
[[nodiscard]] std::span<const std::string_view> rafter_length_keys();
[[nodiscard]] bool is_rafter_length(std::string_view key);

/// The value of a key. An unknown key gives 0.
[[nodiscard]] Length rafter_length(const RafterInput& input, std::string_view key);
/// Sets it, and says what it was given by: a seat makes the seat given (not the heel), a span or run fixes the plan,
/// a ridge or ridge beam picks that peak, a measured rise or run makes that side measured. False: unknown key.
bool set_rafter_length(RafterInput& input, std::string_view key, Length value);

[[nodiscard]] Slope rafter_pitch(const RafterInput& input, Side side);
void set_rafter_pitch(RafterInput& input, Side side, Slope pitch);

}  // namespace bentbook
