#pragma once
/// What lifts: its chart, tag and place in the yard, drawn.

#include "screens/app/pages.h"

namespace bentbook::screens {

/// Rows that lead to them.
void lifter_rows(Context&);
/// By its name in the raising: "crane", "crane_two", "telehandler".
[[nodiscard]] Page raising_machine_page(std::string_view name);
[[nodiscard]] Page raising_gin_pole_page();

}  // namespace bentbook::screens
