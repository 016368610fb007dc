#pragma once
/// On paper: what is printed of the open book, as a PDF to share or to print.

#include <string>

#include "screens/app/pages.h"

namespace bentbook::screens {

/// `mark`: of the timber that it is come from, "" for none.
[[nodiscard]] Page printing_page(std::string mark = {});

}  // namespace bentbook::screens
