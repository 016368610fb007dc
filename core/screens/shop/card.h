#pragma once
/// A step of work on a card: what, where, what the saw or tool is set to, drawn; done on the card is the shop's tick.

#include <string>

#include "screens/app/pages.h"

namespace bentbook::screens {

/// `step`: its id; empty: the first one that is not done and cuts something.
[[nodiscard]] Page shop_card_page(const std::string& mark, const std::string& step);

}  // namespace bentbook::screens
