#pragma once
/// Timber sheets: what a timber's pages show on the screen, to be nailed to a wall. One face after another with running
/// numbers from end A, what each step of work is set to with a box to tick, what a tape finds at the end. Timbers that
/// are cut alike have one sheet with all their marks; small ones share a page.

#include "printed/printed.h"

namespace bentbook {

/// Errors: the frame's own; kMissing ("mark"); kEmpty ("paper") for a frame without timbers.
[[nodiscard]] Result<paper::Document> print_sheets(const Book& book, const BookModel& model,
                                                   const PrintOptions& options, const Voice& voice);

}  // namespace bentbook
