#pragma once
/// An answer that was held: to read it in the other units, to copy it, to hand it to somebody.

#include <string>

#include "screens/app/pages.h"

namespace bentbook::screens {

struct Item;

/// The answer's page.
[[nodiscard]] Page held_page(const Item& answer);

}  // namespace bentbook::screens
