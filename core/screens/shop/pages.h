#pragma once
/// Pages pushed from the Shop place.

#include <string>

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page shop_bent_page(std::string label);   ///< timbers of one bent; "all": of every one
[[nodiscard]] Page shop_place_page(std::string place);  ///< what waits at a workplace, by its word
[[nodiscard]] Page shop_timber_page(std::string mark);
[[nodiscard]] Page shop_step_page(const std::string& mark, const std::string& step);
[[nodiscard]] Page shop_rules_page();  ///< the lead's changes to the steps
[[nodiscard]] Page shop_conflicts_page();
[[nodiscard]] Page shop_pass_page();     ///< passing the log on
[[nodiscard]] Page shop_receive_page();  ///< a log that was opened as a file
[[nodiscard]] Page shop_label_page(std::string mark);
[[nodiscard]] Page shop_codes_page();  ///< the log as a row of codes

}  // namespace bentbook::screens
