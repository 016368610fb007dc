#pragma once
/// The folded state kept beside the log, so that a start need not fold all of it. Two generations are kept; a damaged
/// one is passed over, and the log has the last word.

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

enum class OpenedFrom : std::uint8_t { kNewer, kOlder, kLog };
struct OpenedShop {
  ShopState state;
  OpenedFrom from = OpenedFrom::kLog;
  bool newer_damaged = false, older_damaged = false;  ///< told to the user; empty bytes are none
};
/// The state of the log, always the same as fold(log): from the newer snapshot if it is whole and the log begins with
/// just the events that it was folded from, else from the older one, else from the log alone.
[[nodiscard]] OpenedShop open_shop(std::string_view newer, std::string_view older, const Log& log);

}  // namespace bentbook
