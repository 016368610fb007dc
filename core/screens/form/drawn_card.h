#pragma once
/// One of a few things, each drawn.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "draw/drawing.h"
#include "screens/app/context.h"

namespace bentbook::screens {

struct DrawnOption {
  std::string key;
  std::string_view name;
  draw::Drawing drawing;  ///< its figures are left out
};

/// Cards side by side, as many as there is room for; the index of the one that was pressed. `chosen` −1: none is.
[[nodiscard]] std::optional<int> drawn_choice(Context&, std::string_view group, std::vector<DrawnOption> options,
                                              int chosen);

}  // namespace bentbook::screens
