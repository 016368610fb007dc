#include "ui/fonts.h"

#include "render/renderer.h"
#include "ui/fonts.gen.h"

namespace bentbook::screens {
namespace {

struct Face {
  ImFont* Fonts::*member;
  float css_px;
  bool bold;
  const unsigned short* glyphs;
};

// The big sizes get few glyphs: baking is most of a cold start's own work.
constexpr Face kFaces[] = {
    {&Fonts::body, 17, false, kTypedGlyphs},           {&Fonts::note, 15, false, kTypedGlyphs},
    {&Fonts::strong, 17, true, kTextGlyphs},           {&Fonts::measure, 24, false, kTextGlyphs},
    {&Fonts::measure_strong, 24, true, kFigureGlyphs}, {&Fonts::answer, 40, true, kFigureGlyphs},
};

}  // namespace

Fonts build_fonts(ImFontAtlas& atlas, float text_scale, float density) {
  // Baked lines are one texel a CSS px and blur on a dense display; lines are drawn as polygons instead.
  atlas.Flags |= ImFontAtlasFlags_NoMouseCursors | ImFontAtlasFlags_NoBakedLines | ImFontAtlasFlags_NoPowerOfTwoHeight;
  Fonts fonts;
  for (const Face& face : kFaces) {
    ImFontConfig config;
    config.FontDataOwnedByAtlas = false;
    config.OversampleH = density < 1.5F ? 2 : 1;
    config.OversampleV = 1;
    config.RasterizerDensity = density;
    // ImGui wants the data as non-const; with FontDataOwnedByAtlas off it only reads it.
    void* data = const_cast<unsigned char*>(face.bold ? kBoldFont : kRegularFont);
    const int size = static_cast<int>(face.bold ? sizeof kBoldFont : sizeof kRegularFont);
    fonts.*face.member =
        atlas.AddFontFromMemoryTTF(data, size, face.css_px * kLineHeight * text_scale, &config, face.glyphs);
  }
  render::bake(atlas);
  return fonts;
}

std::string_view regular_font_file() { return {reinterpret_cast<const char*>(kRegularFont), sizeof kRegularFont}; }
std::string_view bold_font_file() { return {reinterpret_cast<const char*>(kBoldFont), sizeof kBoldFont}; }

}  // namespace bentbook::screens
