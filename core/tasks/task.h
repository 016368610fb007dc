#pragma once
/// Long work off the frame: bytes in, bytes out, in a worker or a thread.

#include <functional>
#include <string>
#include <string_view>

#include "numeric/result.h"

namespace bentbook {

/// Called with per mille done, now and then; false stops the work.
using Progress = std::function<bool(int per_mille)>;

/// `request`: one JSON object, `{"task": "pattern", "side": "left"|"right", "language": "en", "denominator": 16,
/// "rafter": {…as in the places file…}}`. Answer: an SVG file, millimetre-true, of the rafter's pattern.
/// Errors: kSyntax, kUnknownOption ("task"), those of read_rafter and solve_rafters, and kEmpty ("cancelled") when
/// `progress` said stop.
[[nodiscard]] Result<std::string> run_task(std::string_view request, const Progress& progress);

/// The request for the pattern of one side.
[[nodiscard]] std::string pattern_request(std::string_view rafter_json, bool right, std::string_view language_tag,
                                          int denominator);

}  // namespace bentbook
