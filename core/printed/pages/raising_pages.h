#pragma once
/// The raising on paper: the lead's brief as a table with what must be minded, a picture of what stands and what comes
/// for each main step, temporary braces, truck loads and stacks. A verdict reads "no collapse found, as assumed", never
/// "safe".

#include "printed/printed.h"

namespace bentbook {

/// Errors: the frame's own; kEmpty ("paper") for a frame without timbers.
[[nodiscard]] Result<paper::Document> print_raising(const Book& book, const BookModel& model,
                                                    const PrintOptions& options, const Voice& voice);

}  // namespace bentbook
