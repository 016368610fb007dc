#pragma once
/// Any timber by its mark, put together from its parts with a gloved finger: P, A, 2.

#include "screens/app/pages.h"

namespace bentbook::screens {

/// Leads to the timber's steps in the Shop, to its sheet elsewhere.
[[nodiscard]] Page go_to_mark_page();

}  // namespace bentbook::screens
