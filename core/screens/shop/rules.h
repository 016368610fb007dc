#pragma once
/// The lead's changes to the steps of a kind of timber: left out, brought back, renamed, moved, added, measured. They
/// are events of the log, and reach every phone with it.

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page shop_rules_page();  ///< the lead's changes to the steps

}  // namespace bentbook::screens
