#pragma once
/// A button that starts long work off the frame, shows how far it is, and can stop it.

#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "screens/app/context.h"

namespace bentbook::screens {

/// Until it is pressed a button with `label`; while the work runs its progress and a way to stop it. `id` names the
/// task to the platform. Returns the result's bytes in the frame in which they arrive; a failure becomes a toast.
[[nodiscard]] std::optional<std::string> task_button(Context&, ItemKey key, std::string_view label, std::string_view id,
                                                     const std::function<std::string()>& request);

}  // namespace bentbook::screens
