#include "paper/page_part.h"

#include <utility>

#include "paper/letters.h"

namespace bentbook::paper {
namespace {

draw::Point beyond(draw::Point p, draw::Point by) { return {p.x + by.x, p.y + by.y}; }

}  // namespace

void put(Page& page, const Page& part, draw::Point at) {
  for (PagePolygon polygon : part.polygons) {
    for (draw::Point& p : polygon.points) p = beyond(p, at);
    page.polygons.push_back(std::move(polygon));
  }
  for (PageLine line : part.lines) {
    line.a = beyond(line.a, at);
    line.b = beyond(line.b, at);
    page.lines.push_back(line);
  }
  for (PageArc arc : part.arcs) {
    arc.centre = beyond(arc.centre, at);
    page.arcs.push_back(arc);
  }
  for (PageCode code : part.codes) {
    code.at = beyond(code.at, at);
    page.codes.push_back(std::move(code));
  }
  for (PageText text : part.texts) {
    text.at = beyond(text.at, at);
    page.texts.push_back(std::move(text));
  }
}

double put_words(Page& page, draw::Point at, std::string_view words, Letters letters, Align align) {
  if (words.empty()) return 0;
  page.texts.push_back(
      {{at.x, at.y + kOverLine * letters.size}, letters.size, letters.bold, align, 0, std::string(words)});
  return text_width(words, letters.size, letters.bold);
}

double put_lines(Page& page, draw::Point at, std::string_view words, Letters letters, double width) {
  if (words.empty()) return 0;
  double y = 0;
  for (const std::string& line : wrapped_lines(words, letters.size, letters.bold, width)) {
    put_words(page, {at.x, at.y + y}, line, letters);
    y += kLineStep * letters.size;
  }
  return y;
}

}  // namespace bentbook::paper
