#pragma once
/// The text field of the desktop: drawn over the field of the screens, typed into with the real keyboard.

#include "desktop.h"
#include "render/renderer.h"
#include "ui/theme.h"

namespace bentbook::desktop {

/// Takes an event if a text is being edited: characters, Backspace, paste, Enter, Escape, a press elsewhere. True if
/// the screens must not see it.
bool text_takes(Desktop& desktop, const SDL_Event& event, float scale);

/// Draws it, between the screens' painting and the swap.
void paint_text(const Desktop& desktop, render::Renderer& renderer, const screens::Theme& theme);

}  // namespace bentbook::desktop
