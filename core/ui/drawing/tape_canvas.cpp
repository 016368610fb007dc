#include "ui/drawing/tape_canvas.h"

#include "ui/drawing/line_pen.h"
#include "ui/measure_text.h"

namespace bentbook::screens {
namespace {

ImFont& tape_font(const Fonts& fonts, draw::TapeText size) {
  switch (size) {
    case draw::TapeText::kNumber:
      return *fonts.measure_strong;
    case draw::TapeText::kStrong:
      return *fonts.strong;
    case draw::TapeText::kNote:
      break;
  }
  return *fonts.note;
}

}  // namespace

draw::Size tape_text_size(const Fonts& fonts, std::string_view text, draw::TapeText size) {
  ImFont& font = tape_font(fonts, size);
  // A font's line is higher than its letters.
  return {text_size(font, text).x + 1, font.FontSize * 0.8};
}

void paint_tape(ImDrawList& list, const Theme& theme, const Fonts& fonts, const draw::TapePage& page,
                const Rect& rect) {
  crisp(list);
  LinePen pen(list, theme, rect);
  for (const draw::Polygon& area : page.areas) pen.polygon(area.points, area);
  for (const draw::PlacedLine& line : page.lines)
    if (line.stroke != draw::Stroke::kCut) pen.path({pen.at(line.a), pen.at(line.b)}, line.stroke, false);
  // What is cut lies over what is only seen.
  for (const draw::PlacedLine& line : page.lines)
    if (line.stroke == draw::Stroke::kCut) pen.path({pen.at(line.a), pen.at(line.b)}, line.stroke, false);
  for (const draw::PlacedArc& arc : page.arcs) pen.arc(arc);
  for (const draw::TapePlaced& placed : page.texts) {
    ImFont& font = tape_font(fonts, placed.size);
    const ImVec2 at = pen.at(placed.at);
    const float above = (font.FontSize - static_cast<float>(placed.extent.h)) / 2;
    draw_text(list, font, {at.x, at.y - above}, theme.ink, placed.text);
  }
}

}  // namespace bentbook::screens
