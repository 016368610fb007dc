#pragma once
/// The sheet of one timber: its length, its four faces in small, which lead to a page each, how the tape checks it,
/// what it weighs, what it joins, what was said of it.

#include <string>

#include "screens/app/pages.h"
#include "screens/frame/form.h"

namespace bentbook::screens {

[[nodiscard]] Page frame_sheet_page(std::string mark);

/// Its sheet and its faces, worked out anew only when the frame, the timber or the saw changed.
[[nodiscard]] const FrameMemory::Shown& sheet_shown(Context& context, const ShownFrame& shown, int timber);

/// To the first cut of that timber that is not done yet.
void to_the_cuts(Context& context, const std::string& mark);

}  // namespace bentbook::screens
