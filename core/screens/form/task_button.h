#pragma once
/// A button that starts long work off the frame, shows how far it is, and can stop it.

#include <optional>
#include <string_view>

#include "screens/app/context.h"

namespace bentbook::screens {

enum class TaskPressed : std::uint8_t { kNothing, kStart, kStop };

/// While nothing runs a button with `label`; else how far the work is and a way to stop it.
[[nodiscard]] TaskPressed task_button(Context&, ItemKey key, std::string_view label, std::optional<int> per_mille);

/// Why the work came to nothing.
[[nodiscard]] std::string task_error_text(const Context&, const Error&);

}  // namespace bentbook::screens
