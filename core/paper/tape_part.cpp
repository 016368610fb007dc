#include "paper/tape_part.h"

#include <utility>

#include "numeric/libm.h"
#include "paper/letters.h"
#include "paper/page_part.h"

namespace bentbook::paper {
namespace {

Letters tape_letters(draw::TapeText size) {
  switch (size) {
    case draw::TapeText::kNumber:
      return {6, true};
    case draw::TapeText::kStrong:
      return {4.25, true};
    case draw::TapeText::kNote:
      break;
  }
  return {3.75, false};
}

draw::Point on_paper(draw::Point px) { return {px.x * kTapePx, px.y * kTapePx}; }

}  // namespace

draw::Size tape_text_size(std::string_view text, draw::TapeText size) {
  const Letters letters = tape_letters(size);
  return {text_width(text, letters.size, letters.bold) / kTapePx, letters.size / kTapePx};
}

Page tape_part(const draw::TapePage& tape) {
  Page part;
  for (const draw::Polygon& area : tape.areas) {
    PagePolygon polygon{{}, area.fill, area.outlined, area.stroke};
    polygon.points.reserve(area.points.size());
    for (const draw::Point& p : area.points) polygon.points.push_back(on_paper(p));
    part.polygons.push_back(std::move(polygon));
  }
  for (const draw::PlacedLine& line : tape.lines)
    part.lines.push_back({on_paper(line.a), on_paper(line.b), line.stroke, 0});
  for (const draw::PlacedArc& arc : tape.arcs)
    part.arcs.push_back(
        {on_paper(arc.centre), arc.radius * kTapePx, -arc.to / libm::kDegree, -arc.from / libm::kDegree, arc.stroke});
  for (const draw::TapePlaced& text : tape.texts)
    put_words(part, on_paper(text.at), text.text, tape_letters(text.size));
  return part;
}

}  // namespace bentbook::paper
