#pragma once
/// Units of numbers that are neither lengths nor weights. What such a number is kept in stands at the end of its key
/// ("load_psf", "wind_mph"); it is entered and shown in the unit that goes with the user's lengths: loads on an area in
/// lb/ft² or kPa (1 lb/ft² = 47.880 259 Pa), wind in miles an hour or metres a second (1 mph = 0.447 04 m/s; km/h would
/// be finer than the whole mph that are kept, so that an entry would not come back as it was typed).
/// Source: SOURCES.md, "inch and pound", "standard gravity".

#include <cstdint>
#include <string>
#include <string_view>

#include "measure/print.h"

namespace bentbook {

enum class KeptIn : std::uint8_t { kPlain, kPsf, kMph };
/// From the end of a field's key or path.
[[nodiscard]] KeptIn kept_in(std::string_view key);

/// The smallest step in which a number is entered and shown.
struct EntryStep {
  double size = 1;   ///< of it, in the unit that the number is kept in
  int decimals = 0;  ///< with which it is entered: 2 where a step is a hundredth
};
[[nodiscard]] EntryStep entry_step(KeptIn, LengthForm);
/// The nearest number of steps, half up (of the magnitude).
[[nodiscard]] std::int64_t steps_of(double kept, EntryStep);
/// What is kept for an entry; steps_of gives the entry back, also where the number is rounded to a whole one before
/// it is kept (mph).
[[nodiscard]] constexpr double kept_of(std::int64_t steps, EntryStep step) {
  return static_cast<double>(steps) * step.size;
}
/// 150 steps of two decimals: "1.5".
[[nodiscard]] std::string steps_text(std::int64_t steps, EntryStep step);

inline constexpr double kKmhPerMph = 1.609344;                      ///< exact
inline constexpr double kCubicMetresPerBoardFoot = 0.002359737216;  ///< exact: 1/12 ft³

}  // namespace bentbook
