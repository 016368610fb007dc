#pragma once
/// bentbook paper: what goes on paper from a book, as a file.

#include <functional>
#include <string>

#include "command/book.h"
#include "numeric/result.h"
#include "paper/page.h"

namespace bentbook {

/// What the shell lends for printing: it has the letters, and it knows the day.
struct Printer {
  std::function<Result<std::string>(const paper::Document& document)> pdf;
  std::string day;  ///< "2026-11-28"
};

/// `args`: the words after "paper". What each takes stands in native-app/README.md.
[[nodiscard]] CommandOutput paper_command(std::span<const std::string_view> args, const Files& files,
                                          const Printer& printer);

}  // namespace bentbook
