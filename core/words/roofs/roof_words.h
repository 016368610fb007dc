#pragma once
/// Words of a roof of any plan, in the user's language.

#include <array>
#include <string>
#include <string_view>
#include <vector>

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

/// "A", and of a dormer's planes "DM1", a gable's "DM1L" and "DM1R".
[[nodiscard]] std::string plane_letters(const RoofSolution& roof, int plane);

/// In square feet or metres.
[[nodiscard]] std::string roof_area_text(double square_inches, const Voice& voice);
[[nodiscard]] std::string roof_finding_text(const RoofFinding& finding, const RoofSolution& roof, const Voice& voice);
/// Those that say the same of several timbers as one, the worst of them with all their marks.
struct SaidRoofFinding {
  RoofFinding worst;
  std::string text;
};
[[nodiscard]] std::vector<SaidRoofFinding> gathered_findings(const RoofSolution& roof, const Voice& voice);
/// What of a plan cannot be a roof, its side by its letters.
[[nodiscard]] std::string roof_error_text(const Error& error, const Voice& voice);

/// "Hip rafter, 4″ × 8″".
[[nodiscard]] std::string roof_timber_title(const RoofTimber& timber, const Voice& voice);
/// What else is said of it, a line each: line length, cuts, seat, drop or backing.
[[nodiscard]] std::vector<std::string> roof_timber_rows(const RoofTimber& timber, const Voice& voice);

/// Timbers of which the same is said; those whose cheeks lean the other way apart.
struct AlikeRoofTimbers {
  std::array<std::vector<int>, 2> by_hand;  ///< indices in RoofSolution::timbers
  [[nodiscard]] int first() const { return by_hand[0].empty() ? by_hand[1].front() : by_hand[0].front(); }
};
[[nodiscard]] std::vector<AlikeRoofTimbers> alike_timbers(const RoofSolution& roof, const Voice& voice);
/// Their marks with commas between them.
[[nodiscard]] std::string roof_marks(const RoofSolution& roof, const std::vector<int>& timbers);

/// The whole roof as lines of text; timbers that are cut alike share one entry.
[[nodiscard]] std::string roof_text(const RoofPlan& plan, const RoofSolution& roof, const Voice& voice);

}  // namespace bentbook
