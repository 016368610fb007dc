#pragma once
/// The shelf: which books there are, new ones, and what comes in as a file.

#include <cstdint>

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page books_page();
[[nodiscard]] Page books_import_page();  ///< the file that was opened last: a book, or a list of timbers

/// Books that are not deleted.
[[nodiscard]] std::int64_t books_on_shelf(const Shelf& shelf);

}  // namespace bentbook::screens
