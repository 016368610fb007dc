#pragma once
/// A measure that was printed, said in the units of the other half of the world.

#include <optional>
#include <string>
#include <string_view>

namespace bentbook {

/// Of a length as print_length() gives it, feet and inches (to a sixteenth) for one in metric, millimetres for any
/// other: 4′ 7 3⁄8″ is 1406.5 mm. Of an angle in degrees, its rise in 12 (to a sixteenth): 36.9° is 9 in 12, as
/// "9:12". The about sign goes with what was about, and stands where the other form had to be rounded. Nothing: it is
/// neither, or the angle is upright or more.
[[nodiscard]] std::optional<std::string> in_other_units(std::string_view printed);

}  // namespace bentbook
