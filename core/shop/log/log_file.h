#pragma once
/// The log as a file. Formats in README.md. Any bytes end in a value or an Error; nothing is taken of a file that is
/// not whole.

#include <string>
#include <string_view>
#include <vector>

#include "shop/log/event.h"
#include "shop/log/explained.h"

namespace bentbook {

inline constexpr int kLogVersion = 1;

/// One event and a line feed: what a file of events is made of, and what is stored for each event.
[[nodiscard]] std::string write_event(const Event& event);
/// The line with or without its line feed. kSyntax ("event", or the member), or check_event's error.
[[nodiscard]] Result<Event> read_event(std::string_view line);

[[nodiscard]] std::string write_log(const Log& log);
/// Whole or not at all. Errors: kSyntax ("log": not such a file, cut short or changed; "event": `at` is the line's
/// offset, `limit` its number), kNewerVersion, kTooLarge ("events"; "event.explained": a number that no log explains,
/// explained.h).
[[nodiscard]] Result<Log> read_log(std::string_view bytes);
/// A look at a damaged file: each line that is no event, by number; what is left. Never taken without the user's word.
struct LogTrouble {
  int line = 0;
  Error error;
};
struct LogScan {
  Log log;
  std::vector<LogTrouble> troubles;
};
[[nodiscard]] LogScan scan_log(std::string_view bytes);

}  // namespace bentbook
