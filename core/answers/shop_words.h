#pragma once
/// Words of the shop, in the user's language.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "answers/words.h"
#include "shop/state.h"
#include "shop/steps.h"

namespace bentbook {

[[nodiscard]] std::string_view tick_name(Tick tick, Language language);
[[nodiscard]] std::string_view workplace_name(Workplace place, Language language);
/// "Cut the slot, end B · P-A1": the lead's own name where the step has one.
[[nodiscard]] std::string step_title(const WorkStep& step, Language language);
[[nodiscard]] std::string_view step_number_name(StepNumberName name, Language language);
/// An angle in degrees, else a length.
[[nodiscard]] std::string step_number_value(const StepNumber& number, const Voice& voice);
/// "7 3/4 in · 39.8°": the numbers of a finished step, as read_numbers gives them.
[[nodiscard]] std::string step_numbers_value(std::string_view kept, const Voice& voice);
/// What to mind at a step, one sentence each.
[[nodiscard]] std::vector<std::string_view> step_cautions(std::uint8_t cautions, Language language);
[[nodiscard]] std::string conflict_text(const Conflict& conflict, const Voice& voice);
/// A moment as "11-25 14:05", UTC plus `offset_minutes`.
[[nodiscard]] std::string moment_text(std::int64_t wall_ms);

}  // namespace bentbook
