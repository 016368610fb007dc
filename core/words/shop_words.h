#pragma once
/// Words of the shop, in the user's language.

#include <string>
#include <string_view>

#include "book/backup/merge.h"
#include "shop/log/conflicts.h"
#include "shop/log/log_file.h"
#include "shop/progress.h"
#include "words/words.h"

namespace bentbook {

/// The lead's name of a step or its usual one, with its end or mate and which setting of it: "Cut the slot, A", "Cut
/// the tenon, A: shoulder, face 2 up".
[[nodiscard]] std::string step_text(const WorkStep& step, Language language);
/// The same of a step that is known by its id alone, without its setting: "Cut the mortise, G-A1.1"; what a lead named
/// stays as it is.
[[nodiscard]] std::string step_id_text(std::string_view id, Language language);
/// What is done in a step, whichever it is: "Lay out".
[[nodiscard]] std::string_view work_text(StepWork work, Language language);
[[nodiscard]] std::string_view workplace_text(Workplace place, Language language);
[[nodiscard]] std::string_view tick_text(Tick tick, Language language);
[[nodiscard]] std::string_view did_text(EventAction action, Language language);
[[nodiscard]] std::string_view step_number_text(StepNumberName name, Language language);
/// …with the face that it is measured from: "Near side, from face 2".
[[nodiscard]] std::string step_number_from_text(const StepNumber& number, Language language);
/// A number of a step as it is set: a length (of a tool to 1/64), degrees, a face's number.
[[nodiscard]] std::string step_value_text(StepNumberName name, double value, const Voice& voice);
/// …a depth that is all the wood there is said as such: no drill is stopped at it.
[[nodiscard]] std::string step_value_text(const StepNumber& number, const Voice& voice);
/// One bit of WorkCaution.
[[nodiscard]] std::string_view work_caution_text(WorkCaution caution, Language language);
/// The same in a word.
[[nodiscard]] std::string_view work_caution_head(WorkCaution caution, Language language);
/// Stable words of the cautions set.
[[nodiscard]] std::vector<std::string> caution_keys(std::uint8_t cautions);

/// "depth_in=7.7500 fence_in=3.7500" as lengths and angles: what a finished step was worked to.
[[nodiscard]] std::string worked_text(std::string_view kept, const Voice& voice);
/// A moment as "11-25 14:05" by a clock that is so many minutes ahead of UTC.
[[nodiscard]] std::string moment_text(std::int64_t wall_ms, int ahead_minutes);
/// Its day as it is said, "28 Nov", and as it stands in a file's name, "2026-11-28".
[[nodiscard]] std::string day_text(std::int64_t wall_ms, int ahead_minutes, Language language);
[[nodiscard]] std::string date_text(std::int64_t wall_ms, int ahead_minutes);

/// What happens to a book of a copy of everything, in a few words.
[[nodiscard]] std::string coming_text(const ComingBook& book, Language language);
/// "Log of Barn", by the file's own titles.
[[nodiscard]] std::string coming_log_name(const Backup& file, const std::string& identity, Language language);
/// A title that comes from elsewhere, with what does not show made visible.
[[nodiscard]] std::string foreign_title(std::string_view title, Language language);

[[nodiscard]] std::string conflict_text(const Conflict& conflict, const Voice& voice);
[[nodiscard]] std::string flag_text(const StepFlag& flag, const Voice& voice);
[[nodiscard]] std::string log_trouble_text(const LogTrouble& trouble, const Voice& voice);

}  // namespace bentbook
