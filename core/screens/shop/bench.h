#pragma once
/// At the bench, with no book: slot, gauge, depth and pins of a knife plate from section and plate alone.

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page shop_bench_page();

}  // namespace bentbook::screens
