#pragma once
/// The faces that the screens write with, baked into ImGui's atlas at the sizes that are used and with the glyphs that
/// each size needs. Layout is in CSS px; glyphs are rasterised for the display's density.

#include <imgui.h>

#include <string_view>

namespace bentbook::screens {

/// A font's FontSize is its line height: kLineHeight × the size in CSS px. Capitals and figures stand in the middle of
/// the line, so a text centred by its line is centred by eye.
inline constexpr float kLineHeight = 1.3F;

struct Fonts {
  ImFont* answer = nullptr;          ///< 40 bold: figures, marks and units only
  ImFont* measure = nullptr;         ///< 24: headings, given measures
  ImFont* measure_strong = nullptr;  ///< 24 bold: figures, marks and units only (lesser answers)
  ImFont* body = nullptr;            ///< 17
  ImFont* strong = nullptr;          ///< 17 bold: keys, answers on drawings
  ImFont* note = nullptr;            ///< 15
};

/// Adds all faces to an empty atlas. `text_scale` 1 to 2 is the user's text size, `density` device pixels per CSS px.
/// Call atlas.Clear() before building again.
[[nodiscard]] Fonts build_fonts(ImFontAtlas& atlas, float text_scale, float density);

/// The files that they are made of: TrueType. What is printed is set with the same.
[[nodiscard]] std::string_view regular_font_file();
[[nodiscard]] std::string_view bold_font_file();

}  // namespace bentbook::screens
