#pragma once
/// Text with lengths in it, set as a framer writes it: fractions as fractions (small raised and lowered figures), real
/// ′ ″ °, and a length never broken over two lines. Everything that shows a length draws its text through here; input
/// is what print_length(…, Marks::kScreen) and the string table give ("12′ 7 3⁄8″").

#include <imgui.h>

#include <string>
#include <string_view>
#include <vector>

namespace bentbook::screens {

/// The text as it is handed to ImGui: the figures of n⁄d become the font's small figures (private code points), blanks
/// inside a measure become blanks that do not break. Setting a set text changes nothing.
[[nodiscard]] std::string set_text(std::string_view text);

/// Whether the font has a glyph for each character; the sizes for figures have few letters.
[[nodiscard]] bool has_glyphs(ImFont& font, std::string_view text);

/// Width and line height of one line. `text` may be set or not.
[[nodiscard]] ImVec2 text_size(ImFont& font, std::string_view text);

/// One line with its top left at `at`. `share`: of the font's size.
void draw_text(ImDrawList& list, ImFont& font, ImVec2 at, ImU32 colour, std::string_view text, float share = 1);

/// The text's lines, set, none wider than `width` where a blank lets it break (never inside a measure). A word wider
/// than `width` stands alone. '\n' breaks too.
[[nodiscard]] std::vector<std::string> wrap_text(ImFont& font, std::string_view text, float width);

/// Draws wrapped text; returns its height (lines × line height).
float draw_wrapped(ImDrawList& list, ImFont& font, ImVec2 at, ImU32 colour, std::string_view text, float width);

/// Longest head of the text that fits, with "…" where something was cut.
[[nodiscard]] std::string fit_text(ImFont& font, std::string_view text, float width);

}  // namespace bentbook::screens
