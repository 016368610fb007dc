#include "ui/drawing/canvas.h"

#include <catch_amalgamated.hpp>

#include "letters.h"
#include "ui/measure_text.h"
#include "ui/theme.h"

using namespace bentbook;
using namespace bentbook::screens;

namespace {

ImU32 rgb(unsigned r, unsigned g, unsigned b) { return IM_COL32(r, g, b, 255); }

}  // namespace

TEST_CASE("contrast as WCAG 2.1 defines it", "[theme]") {
  // WCAG 2.1, relative luminance: black on white is 21:1, a colour on itself 1:1. Of #767676, worked by hand:
  // 118 / 255 = 0.4627, ((0.4627 + 0.055) / 1.055)^2.4 = 0.1812, (1 + 0.05) / (0.1812 + 0.05) = 4.54.
  REQUIRE(contrast(rgb(0, 0, 0), rgb(255, 255, 255)) == Catch::Approx(21));
  REQUIRE(contrast(rgb(12, 200, 30), rgb(12, 200, 30)) == Catch::Approx(1));
  REQUIRE(contrast(rgb(0x76, 0x76, 0x76), rgb(255, 255, 255)) == Catch::Approx(4.54).margin(0.01));
}

TEST_CASE("text stands out 7:1, graphics 3:1, in both themes", "[theme]") {
  for (const bool dark : {false, true}) {
    const Theme t = make_theme(dark, false);
    CAPTURE(dark);
    for (const ImU32 ground : {t.ground, t.panel}) {
      REQUIRE(contrast(t.ink, ground) >= 7);
      REQUIRE(contrast(t.quiet, ground) >= 7);
      REQUIRE(contrast(t.edit, ground) >= 7);
      REQUIRE(contrast(t.rule, ground) >= 3);
      REQUIRE(contrast(t.cut, ground) >= 3);
    }
    REQUIRE(contrast(t.on_edit, t.edit) >= 7);
    REQUIRE(contrast(t.ink, t.pressed) >= 7);
    REQUIRE(contrast(t.caution, t.caution_ground) >= 7);
  }
}

TEST_CASE("targets grow in glove mode", "[theme]") {
  REQUIRE(make_theme(false, false).target == 48);
  REQUIRE(make_theme(false, true).target == 64);
}

TEST_CASE("fractions are set as fractions", "[text]") {
  // U+E000 + digit is the raised figure, U+E010 + digit the lowered one, U+2044 between.
  REQUIRE(set_text("7 3\u20448\u2033") == "7\u2009\uE003\u2044\uE018\u2033");
  REQUIRE(set_text("11\u204416") == "\uE001\uE001\u2044\uE011\uE016");
  REQUIRE(set_text("12\u2032 7 3\u20448\u2033") == "12\u2032\u00A07\u2009\uE003\u2044\uE018\u2033");
  REQUIRE(set_text("a / b, 1/2") == "a / b, 1/2");
  const std::string once = set_text("Mark 4\u2032 7 3\u20448\u2033 from the peak");
  REQUIRE(set_text(once) == once);
}

TEST_CASE("a measure is never broken over two lines", "[text]") {
  const Letters sheet(1);
  const std::string text = "Mark 12\u2032 7 3\u20448\u2033 from the peak, then 833 mm/m, 39.8\u00B0, 3200 mm, 6 in.";
  for (float width = 20; width < 400; width += 7) {
    const std::vector<std::string> lines = wrap_text(*sheet.fonts.body, text, width);
    std::string joined;
    for (const std::string& line : lines) {
      joined += (joined.empty() ? "" : " ") + line;
      const bool one_word = line.find(' ') == std::string::npos;
      REQUIRE((one_word || text_size(*sheet.fonts.body, line).x <= width));
    }
    REQUIRE(joined == set_text(text));
    const auto has = [&](const std::string& measure) {
      return std::any_of(lines.begin(), lines.end(),
                         [&](const std::string& line) { return line.find(measure) != std::string::npos; });
    };
    for (const char* measure : {"12\u2032 7 3\u20448\u2033", "833 mm/m", "39.8\u00B0", "3200 mm", "6 in."})
      REQUIRE(has(set_text(measure)));
  }
}

TEST_CASE("a name too long is cut at a whole character", "[text]") {
  const Letters sheet(1);
  const std::string name = "\u00C1guila \u00F1and\u00FA \u00E1\u00E9\u00ED\u00F3\u00FA";
  for (float width = 10; width < 300; width += 3) {
    const std::string fitted = fit_text(*sheet.fonts.body, name, width);
    REQUIRE((fitted == "\u2026" || text_size(*sheet.fonts.body, fitted).x <= width));
    REQUIRE(fitted.find('\xC3') != fitted.size() - 1);
  }
  REQUIRE(fit_text(*sheet.fonts.body, name, 1000) == name);
}

TEST_CASE("every size has the glyphs of figures", "[fonts]") {
  const Letters sheet(2);
  const Fonts& f = sheet.fonts;
  for (ImFont* font : {f.answer, f.measure, f.measure_strong, f.body, f.strong, f.note})
    for (const int code : {0x30, 0x39, 0x2032, 0x2033, 0x2044, 0x00B0, 0x2212, 0x2248, 0xE000, 0xE009, 0xE010, 0xE019})
      REQUIRE(font->FindGlyphNoFallback(static_cast<ImWchar>(code)) != nullptr);
  // The largest sizes have no small letters: what has some is set in another (answer).
  CHECK(has_glyphs(*f.answer, "955 lb"));
  CHECK_FALSE(has_glyphs(*f.answer, "955 lb wet"));
  CHECK(has_glyphs(*f.strong, "955 lb h\u00famedo"));
  CHECK(has_glyphs(*f.body, "10 \u2030"));
  // Tabular: all figures are equally wide.
  for (ImWchar c = '1'; c <= '9'; ++c) REQUIRE(f.body->GetCharAdvance(c) == f.body->GetCharAdvance('0'));
  REQUIRE(f.body->FontSize == Catch::Approx(17 * kLineHeight * 2).margin(1));
}

TEST_CASE("figures on the canvas: targets for what is given, none for an empty text", "[canvas]") {
  const Letters sheet(1);
  draw::Drawing drawing;
  drawing.polygons.push_back({{{0, 0}, {100, 0}, {100, 40}}, draw::Stroke::kVisible, draw::Fill::kSection, true});
  drawing.dimensions.push_back({{0, 0}, {100, 0}, -1, {}, "span", draw::Meaning::kGiven});
  drawing.dimensions.push_back({{100, 0}, {100, 40}, -1, {}, "rise", draw::Meaning::kAnswer});
  drawing.notes.push_back({{50, 30}, "silent", draw::Meaning::kFact});
  Canvas canvas;
  const Rect rect{10, 20, 300, 200};
  int asked = 0;
  const auto text = [&](std::string_view key, draw::Meaning) -> std::string {
    ++asked;
    return key == "silent" ? "" : "24\u2032 3 1\u20442\u2033";
  };
  const Theme theme = make_theme(false, false);
  CHECK(canvas.set(theme, sheet.fonts, drawing, {rect.w, rect.h}, text) <= rect.h);
  canvas.paint(*ImGui::GetBackgroundDrawList(), theme, sheet.fonts, drawing, rect);
  REQUIRE(asked == 3);
  REQUIRE(canvas.figures().size() == 2);
  for (const CanvasFigure& figure : canvas.figures()) {
    REQUIRE(figure.target.w >= 48);
    REQUIRE(figure.target.h >= 48);
    REQUIRE(figure.target.x >= rect.x);
    REQUIRE(figure.target.y >= rect.y);
    REQUIRE(figure.target.x + figure.target.w <= rect.x + rect.w + 0.01F);
    REQUIRE(figure.target.y + figure.target.h <= rect.y + rect.h + 0.01F);
  }
  REQUIRE(canvas.figures()[0].key == "span");
  REQUIRE(ImGui::GetBackgroundDrawList()->VtxBuffer.Size > 100);
}
