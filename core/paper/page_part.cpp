#include "paper/page_part.h"

#include <iterator>
#include <utility>

#include "draw/box.h"
#include "numeric/libm.h"
#include "paper/letters.h"

namespace bentbook::paper {
namespace {

using draw::Point;

template <class Change>
void for_points(Page& drawing, Change change) {
  for (PagePolygon& polygon : drawing.polygons)
    for (Point& p : polygon.points) change(p);
  for (PageLine& line : drawing.lines) {
    change(line.a);
    change(line.b);
  }
  for (PageArc& arc : drawing.arcs) change(arc.centre);
  for (PageCode& code : drawing.codes) change(code.at);
  for (PageText& text : drawing.texts) change(text.at);
}

template <class T>
void append(std::vector<T>& to, std::vector<T>& from) {
  to.insert(to.end(), std::make_move_iterator(from.begin()), std::make_move_iterator(from.end()));
}

}  // namespace

void put(Page& page, const Page& part, draw::Point at) {
  Page moved = part;
  move_by(moved, at.x, at.y);
  append(page.polygons, moved.polygons);
  append(page.lines, moved.lines);
  append(page.arcs, moved.arcs);
  append(page.codes, moved.codes);
  append(page.texts, moved.texts);
}

Window bounds_of(const PageText& text) {
  const double wide = text_width(text.text, text.size, text.bold);
  const double from = start_of(text.align, wide);
  const double turn = text.turn_deg * libm::kPi / 180;
  const double cos = libm::cos(turn), sin = libm::sin(turn);
  draw::Bounds box;
  for (const double along : {from, from + wide})
    for (const double up : {-0.24 * text.size, 0.76 * text.size})
      box.add(Point{text.at.x + along * cos - up * sin, text.at.y - along * sin - up * cos});
  return {box.left, box.top, box.right, box.bottom};
}

Window bounds_of(const Page& drawing) {
  draw::Bounds box;
  for (const PagePolygon& polygon : drawing.polygons)
    for (const Point& p : polygon.points) box.add(p);
  for (const PageLine& line : drawing.lines) {
    box.add(line.a);
    box.add(line.b);
  }
  for (const PageArc& arc : drawing.arcs) {
    box.add(Point{arc.centre.x - arc.radius, arc.centre.y - arc.radius});
    box.add(Point{arc.centre.x + arc.radius, arc.centre.y + arc.radius});
  }
  for (const PageText& text : drawing.texts) {
    const Window w = bounds_of(text);
    box.add(Point{w.left, w.top});
    box.add(Point{w.right, w.bottom});
  }
  if (box.empty()) return {};
  return {box.left, box.top, box.right, box.bottom};
}

void move_by(Page& drawing, double dx, double dy) {
  for_points(drawing, [&](Point& p) { p = {p.x + dx, p.y + dy}; });
}

Page quarter_turned(Page drawing, double width) {
  for_points(drawing, [&](Point& p) { p = {p.y, width - p.x}; });
  for (PageArc& arc : drawing.arcs) {
    arc.from_deg += 90;
    arc.to_deg += 90;
  }
  for (PageText& text : drawing.texts) text.turn_deg += 90;
  return drawing;
}

draw::Point on_arc(const PageArc& arc, double deg) {
  const double turn = deg * libm::kDegree;
  return {arc.centre.x + arc.radius * libm::cos(turn), arc.centre.y - arc.radius * libm::sin(turn)};
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
