#pragma once
/// Words of a roof of any plan, in the user's language.

#include <string>
#include <string_view>

#include "roof/plan/solve_roof.h"
#include "words/words.h"

namespace bentbook {

[[nodiscard]] std::string_view roof_timber_name(RoofTimberKind kind, Language language);
[[nodiscard]] std::string_view roof_line_name(RoofLineKind kind, Language language);
/// Stable words for programs: "hip_jack", "valley", "fascia_apart", "cheek", …
[[nodiscard]] std::string_view roof_timber_key(RoofTimberKind kind);
[[nodiscard]] std::string_view roof_line_key(RoofLineKind kind);
[[nodiscard]] std::string_view roof_finding_key(RoofFindingId id);
[[nodiscard]] std::string_view roof_cut_key(RoofCutName name);

[[nodiscard]] std::string roof_finding_text(const RoofFinding& finding, const RoofSolution& roof, const Voice& voice);
/// What of a plan cannot be a roof, its side by its letters.
[[nodiscard]] std::string roof_error_text(const Error& error, const Voice& voice);

/// The whole roof as lines of text; timbers that are cut alike share one entry.
[[nodiscard]] std::string roof_text(const RoofPlan& plan, const RoofSolution& roof, const Voice& voice);

}  // namespace bentbook
