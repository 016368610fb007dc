#pragma once
/// What a frame is held together with: knife plates, pins, pegs and screws, how many of which size, bent by bent.

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "frame/plan.h"

namespace bentbook {

enum class Hardware : std::uint8_t { kKnifePlate, kPin, kPeg, kScrew };
inline constexpr std::array<std::string_view, 4> kHardwareWords = {"knife_plate", "pin", "peg", "screw"};

struct HardwareRow {
  int bent = -1;  ///< label of the bent that the joint's member stands in, or of its bay's lower bent; −1: of none
  Hardware what = Hardware::kPeg;
  double diameter = 0;  ///< inches; 0: plates
  double through = 0;   ///< inches of wood that it passes, the deepest hole of its joint; 0: plates
  int count = 0;
  friend bool operator==(const HardwareRow&, const HardwareRow&) = default;
};

/// Ascending by bent, then plates, pins, pegs, screws, the thickest and longest first. Counted from what is drilled: a
/// peg is a hole in a joint's member.
[[nodiscard]] std::vector<HardwareRow> hardware_of(const Frame& frame);
/// The same of the whole frame: `bent` is −1.
[[nodiscard]] std::vector<HardwareRow> hardware_in_all(const std::vector<HardwareRow>& by_bent);

/// bent,what,diameter,through,count: lines end in CR LF, lengths to 1/64 in.
[[nodiscard]] std::string write_hardware_csv(const std::vector<HardwareRow>& rows);

}  // namespace bentbook
