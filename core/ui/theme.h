#pragma once
/// Colours and sizes of the two themes. Sizes are CSS px on an 8 px grid. Every text colour has a contrast of at least
/// 7:1 with the ground it is meant for, every graphic at least 3:1 (tests/core/canvas_theme.cpp).

#include <imgui.h>

namespace bentbook::screens {

inline constexpr float kGrid = 8;     ///< everything sits on multiples of this
inline constexpr float kMargin = 16;  ///< side margins
inline constexpr float kGap = 8;      ///< between targets

struct Theme {
  bool dark = false;
  float target = 48;  ///< least side of what a finger presses

  ImU32 ground = 0;          ///< the sheet
  ImU32 panel = 0;           ///< bars, keypad: set off from the ground
  ImU32 ink = 0;             ///< text, visible edges
  ImU32 quiet = 0;           ///< notes, hints
  ImU32 rule = 0;            ///< borders of buttons and fields, separators (graphics)
  ImU32 edit = 0;            ///< what can be changed
  ImU32 on_edit = 0;         ///< text on a fill of `edit`
  ImU32 pressed = 0;         ///< ground of a row or key under the finger
  ImU32 cut = 0;             ///< the one cut line (graphics)
  ImU32 caution = 0;         ///< text of a caution
  ImU32 caution_ground = 0;  ///< its ground
};

/// Sun (white sheet) or night; glove mode makes targets 64.
[[nodiscard]] Theme make_theme(bool dark, bool glove);

/// Sets ImGui's style from the theme: no rounding, no borders of its own, grid spacing. Sizes are not scaled: layout is
/// in CSS px.
void apply_theme(const Theme& theme, ImGuiStyle& style);

/// Contrast ratio of two opaque colours, 1 to 21. Source: SOURCES.md, "contrast".
[[nodiscard]] double contrast(ImU32 a, ImU32 b);

/// `over` laid on `under` with the given opacity, as an opaque colour.
[[nodiscard]] ImU32 mix(ImU32 under, ImU32 over, float opacity);

/// Soft edges of what is drawn next are one device pixel wide, not one CSS px. ImGui forgets it with the frame: call it
/// for each list that draws lines or shapes.
void crisp(ImDrawList& list);

}  // namespace bentbook::screens
