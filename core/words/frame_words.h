#pragma once
/// Words of the frame, in the user's language.

#include <string>
#include <string_view>

#include "frame/list/hardware.h"
#include "frame/plan.h"
#include "words/words.h"

namespace bentbook {

[[nodiscard]] std::string_view kind_name(TimberKind kind, Language language);
[[nodiscard]] std::string_view feature_name(FeatureKind kind, Language language);
[[nodiscard]] std::string_view end_cut_name(EndCutName name, Language language);
[[nodiscard]] std::string_view joint_name(JointKind kind, Language language);
/// Of a joint's measure by its path in the file, "peg.diameter"; empty: it is not asked for.
[[nodiscard]] std::string_view joint_measure_name(std::string_view path, Language language);
[[nodiscard]] std::string_view defect_name(DefectKind kind, Language language);

/// How `timber` stands to the other timber of a joint: "bears on P-A1", "carries B-A1.1".
[[nodiscard]] std::string contact_text(const Frame& frame, const Joint& joint, int timber, Language language);

[[nodiscard]] std::string finding_text(const Finding& finding, const Voice& voice);
[[nodiscard]] std::string warning_text(const TimberWarning& warning, const Voice& voice);
/// Stable words for programs: "not_engineered", "share_left", …
[[nodiscard]] std::string_view finding_key(FindingId id);
[[nodiscard]] std::string_view warning_key(WarningId id);

/// Inches as they are said.
[[nodiscard]] std::string say_inches(double inches, const Voice& voice);
/// What a tool is set to, to 1/64 in or 0.1 mm at least: a plate's play is less than a sixteenth.
[[nodiscard]] LengthStyle tool_style(LengthStyle style);
[[nodiscard]] std::string say_tool_inches(double inches, const Voice& voice);
/// "Pegs 1″, through 8″".
[[nodiscard]] std::string hardware_text(const HardwareRow& row, const Voice& voice);
/// "8 x 10", nominal, in the voice's form of inches.
[[nodiscard]] std::string section_text(const Section& section, const Voice& voice);
/// The step by which stock is sold where lengths are said so: facts_of's, totals_of's.
[[nodiscard]] Length stock_step(const Voice& voice);
/// An error of the book, the plan or a list, its field named as the frame names it.
[[nodiscard]] std::string frame_error_text(const Error& error, const Voice& voice);

}  // namespace bentbook
