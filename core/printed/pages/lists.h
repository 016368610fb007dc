#pragma once
/// Lists on paper: what is cut, what is ordered, what comes out of which stick, what is driven, and what each workplace
/// is set to, a box for each cut.

#include "printed/printed.h"

namespace bentbook {

/// Those that options.lists names, in their order of work. Errors: the frame's own; kEmpty ("paper").
[[nodiscard]] Result<paper::Document> print_lists(const Book& book, const BookModel& model, const PrintOptions& options,
                                                  const Voice& voice);
}  // namespace bentbook
