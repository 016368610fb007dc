#pragma once
/// Marks: what is written on a timber and said out loud, and its stable id.
///   kind letters - grid line and bent or bay - number      P-A1   T-2   C-E1.3   G-AC2.1
///   kind letters - grid line V gable                       C-AV1  C-EV2
/// Lines across the building, whether or not something stands there: A left eave, B left inner, C middle, D right
/// inner, E right eave. Braces are numbered by where they lean from their post: .1 across the building, .2 toward the
/// lower bent, .3 toward the higher one. What stands past the end bents, at the verge, names its gable (V1 below the
/// first bent, V2 past the last) and no bent. Bents keep their label when bays are put in between or taken out
/// (plan.h), so that a mark stays with its timber.

#include <string>
#include <string_view>

#include "frame/timber.h"

namespace bentbook {

/// S sill, P post, L plate, T tie, G girt, J joist, K king post, Q queen post, H collar, R ridge beam, PR principal
/// rafter, C common rafter, U purlin, B brace, X entered by hand, HR hip, VR valley, JR jack rafter, DT dragon tie.
[[nodiscard]] std::string_view kind_letters(TimberKind kind);

/// In place of a number: at the verge past the first bent or the last one.
inline constexpr int kFirstVerge = -1, kLastVerge = -2;

/// `line` 0: none. `bent` is its label; `number` 0: none; with a verge it is not looked at.
[[nodiscard]] std::string make_mark(TimberKind kind, char line, int bent, int number = 0);

/// As marks are said: letters, then numbers by their value ("P-A2" before "P-A10").
[[nodiscard]] bool mark_before(std::string_view a, std::string_view b);

}  // namespace bentbook
