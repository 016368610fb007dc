#pragma once
/// The folded state kept beside the log, so that a start need not fold all of it. The log has the last word.

#include <span>
#include <string>
#include <string_view>

#include "shop/log/log_file.h"
#include "shop/log/state.h"

namespace bentbook {

/// Canonical bytes of a state; what it has of each device stands in them.
[[nodiscard]] std::string write_snapshot(const ShopState& state);
/// The same state. Errors: kSyntax ("snapshot", `at`), kNewerVersion.
[[nodiscard]] Result<ShopState> read_snapshot(std::string_view bytes);

/// The state goes on with events of which each comes after the one before it; false where one comes before the state's
/// last (events of another phone arrived late: fold the whole log).
[[nodiscard]] bool go_on(ShopState& state, std::span<const Event> events);

}  // namespace bentbook
