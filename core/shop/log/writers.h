#pragma once
/// Whose events a log holds, and which of them are left out: not folded on this phone, while they stay in the log and
/// go on to others.

#include <cstdint>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "shop/log/event.h"

namespace bentbook {

/// The phones that signed with one name last; "" signed with none.
struct Writer {
  std::string who;
  std::vector<std::uint64_t> devices;
  std::size_t events = 0;
  std::int64_t from = 0, to = 0;  ///< wall times of the earliest and the latest event
};
/// The one who wrote last comes first.
[[nodiscard]] std::vector<Writer> writers_of(const Log& log);

using Devices = std::set<std::uint64_t>;
/// The log without what these wrote.
[[nodiscard]] Log without(const Log& log, const Devices& left_out);

/// Format in README.md.
[[nodiscard]] std::string write_left_out(const Devices& devices);
/// kSyntax ("left_out"), kNewerVersion.
[[nodiscard]] Result<Devices> read_left_out(std::string_view bytes);

}  // namespace bentbook
