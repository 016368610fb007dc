#pragma once
/// Paints a page of draw/tape_page.h.

#include <imgui.h>

#include "draw/tape_page.h"
#include "ui/fonts.h"
#include "ui/input.h"
#include "ui/theme.h"

namespace bentbook::screens {

/// Size of a text on such a page: as wide as it is drawn, as high as its capitals and what hangs below the line.
[[nodiscard]] draw::Size tape_text_size(const Fonts& fonts, std::string_view text, draw::TapeText size);

/// The page with its top left at that of `rect`.
void paint_tape(ImDrawList& list, const Theme& theme, const Fonts& fonts, const draw::TapePage& page, const Rect& rect);

}  // namespace bentbook::screens
