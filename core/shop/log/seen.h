#pragma once
/// What one phone has against another's, and only what the other lacks. Format in README.md.

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "shop/log/event.h"

namespace bentbook {

/// What a phone has of one device's events: all from 1 to `upto`, and a digest over them, which shows where two phones
/// hold unlike events under one number.
struct Seen {
  std::uint64_t device = 0, upto = 0, digest = 0;
  friend bool operator==(const Seen&, const Seen&) = default;
};
/// Ascending by device.
[[nodiscard]] std::vector<Seen> seen_of(const Log& log);
/// Every event that `other` lacks; of a device whose digests differ all of them.
[[nodiscard]] Log events_beyond(const Log& log, std::span<const Seen> other);

/// To be shown to the one who sends.
[[nodiscard]] std::string write_seen(std::string_view book, std::span<const Seen> seen);
struct SeenFile {
  std::string book;
  std::vector<Seen> seen;
};
/// kSyntax ("seen"), kNewerVersion.
[[nodiscard]] Result<SeenFile> read_seen(std::string_view bytes);

}  // namespace bentbook
