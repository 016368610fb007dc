#pragma once
/// Temporary braces, each drawn where it is nailed.

#include <string>
#include <string_view>

#include "raising/plan.h"
#include "raising/temporary_line.h"
#include "screens/app/pages.h"
#include "words/figures.h"

namespace bentbook::screens {

[[nodiscard]] Page raising_temporaries_page();  ///< temporary braces
[[nodiscard]] Page raising_temporary_page(std::string name);

/// What stands on its drawing. Keys: raising/drawings/temporary_drawing.h.
[[nodiscard]] bentbook::FigureText temporary_figure(std::string_view key, const Temporary& temporary,
                                                    const TemporaryLine& line, const Voice& voice);

}  // namespace bentbook::screens
