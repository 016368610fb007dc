#pragma once
/// How a frame is joined throughout, as two drawn cards.

#include <optional>

#include "frame/joinery.h"
#include "screens/app/context.h"

namespace bentbook::screens {

/// The one that was pressed. `now`: nothing, where both are used.
[[nodiscard]] std::optional<Joinery> joinery_choice(Context&, std::optional<Joinery> now);

}  // namespace bentbook::screens
