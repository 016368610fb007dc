#include "ui/drawing/canvas.h"

#include <algorithm>

#include "numeric/libm.h"
#include "ui/drawing/line_pen.h"
#include "ui/measure_text.h"

namespace bentbook::screens {
namespace {

using draw::Meaning;
using draw::Point;

void paint_figure(ImDrawList& list, const Theme& theme, const LinePen& pen, const draw::PlacedFigure& placed,
                  ImFont& font, std::string_view text) {
  const ImVec2 centre = pen.at(placed.box.centre);
  const float half = static_cast<float>(placed.box.w) / 2, down = font.FontSize * 0.36F;
  draw_text(list, font, {centre.x - half, centre.y - font.FontSize / 2},
            placed.meaning == Meaning::kGiven ? theme.edit : theme.ink, text);
  if (placed.meaning != Meaning::kGiven) return;
  // The dotted underline that says: this can be changed.
  for (float x = 1 - half; x <= half; x += 4) list.AddCircleFilled({centre.x + x, centre.y + down}, 1, theme.edit, 8);
}

/// Ground under a figure, so that a line that runs behind it does not run through it.
void paint_ground(ImDrawList& list, const Theme& theme, const LinePen& pen, const draw::Box& box) {
  const auto corner = draw::corners(draw::grown(box, 1));
  ImVec2 points[4];
  for (std::size_t i = 0; i < 4; ++i) points[i] = pen.at(corner[i]);
  list.AddConvexPolyFilled(points, 4, theme.ground);
}

ImFont& font_of(const Fonts& fonts, Meaning meaning) {
  switch (meaning) {
    case Meaning::kAnswer:
      return *fonts.strong;
    case Meaning::kGiven:
      return *fonts.body;
    case Meaning::kFact:
      break;
  }
  return *fonts.note;
}

void put(std::string& out, const void* value, std::size_t bytes) { out.append(static_cast<const char*>(value), bytes); }
void put(std::string& out, double value) { put(out, &value, sizeof value); }
void put(std::string& out, Point p) {
  put(out, p.x);
  put(out, p.y);
}

/// All that a layout depends on, as bytes.
std::string fingerprint_of(const draw::Drawing& drawing, const std::vector<draw::Size>& sizes,
                           const draw::LayoutOptions& options) {
  std::string out;
  for (const double v : {options.rect.w, options.rect.h, options.row, options.target, options.max_scale,
                         options.view.zoom, options.view.dx, options.view.dy})
    put(out, v);
  for (const draw::Size& size : sizes) {
    put(out, size.w);
    put(out, size.h);
  }
  for (const draw::Polygon& polygon : drawing.polygons) {
    put(out, static_cast<double>(polygon.points.size() * 16 + static_cast<std::size_t>(polygon.stroke) * 2 +
                                 (polygon.outlined ? 1 : 0)));
    for (const Point& p : polygon.points) put(out, p);
  }
  put(out, static_cast<double>(drawing.lines.size()));
  for (const draw::Line& line : drawing.lines) {
    put(out, line.a);
    put(out, line.b);
    put(out, static_cast<double>(line.stroke));
  }
  put(out, static_cast<double>(drawing.arcs.size()));
  for (const draw::Arc& arc : drawing.arcs) {
    put(out, arc.centre);
    for (const double v : {arc.radius, arc.from_deg, arc.to_deg, static_cast<double>(arc.stroke)}) put(out, v);
  }
  put(out, static_cast<double>(drawing.dimensions.size()));
  for (const draw::Dimension& d : drawing.dimensions) {
    for (const Point& p : {d.a, d.b, d.along}) put(out, p);
    put(out, d.offset);
    put(out, static_cast<double>(d.meaning) * 2 + (d.bare ? 1 : 0));
    out += d.key;
    out += '\0';
  }
  put(out, static_cast<double>(drawing.angles.size()));
  for (const draw::AngleDimension& a : drawing.angles) {
    put(out, a.vertex);
    for (const double v : {a.from_deg, a.to_deg, a.row, static_cast<double>(a.meaning)}) put(out, v);
    out += a.key;
    out += '\0';
  }
  for (const draw::Note& note : drawing.notes) {
    put(out, note.at);
    put(out, static_cast<double>(note.meaning));
    put(out, static_cast<double>(note.stands));
    out += note.key;
    out += '\0';
  }
  return out;
}

struct Texts {
  std::vector<std::string> texts;
  std::vector<draw::Size> sizes;
};

Texts texts_of(const draw::Drawing& drawing, const Fonts& fonts, const FigureText& text) {
  Texts out;
  const auto add = [&](std::string_view key, Meaning meaning) {
    out.texts.push_back(text(key, meaning));
    const std::string& t = out.texts.back();
    ImFont& font = font_of(fonts, meaning);
    // The line of a font is higher than figures are.
    out.sizes.push_back(t.empty() ? draw::Size{} : draw::Size{text_size(font, t).x + 2, font.FontSize * 0.78});
  };
  for (const draw::Dimension& d : drawing.dimensions) add(d.key, d.meaning);
  for (const draw::AngleDimension& a : drawing.angles) add(a.key, a.meaning);
  for (const draw::Note& n : drawing.notes) add(n.key, n.meaning);
  return out;
}

Rect to_rect(const draw::Box& box, const Rect& canvas) {
  const draw::Box u = draw::upright(box);
  return {canvas.x + static_cast<float>(u.centre.x - u.w / 2), canvas.y + static_cast<float>(u.centre.y - u.h / 2),
          static_cast<float>(u.w), static_cast<float>(u.h)};
}

void paint_thing(LinePen& pen, const draw::Layout& layout, const draw::Drawing& drawing) {
  for (const draw::Polygon& polygon : drawing.polygons) {
    std::vector<Point> px;
    px.reserve(polygon.points.size());
    for (const Point& p : polygon.points) px.push_back(layout.to_px(p));
    pen.polygon(px, polygon);
  }
  for (const draw::Line& line : drawing.lines)
    pen.path({pen.at(layout.to_px(line.a)), pen.at(layout.to_px(line.b))}, line.stroke, false);
  for (const draw::PlacedArc& arc : layout.arcs) pen.arc(arc);
  for (const draw::PlacedLine& line : layout.lines)
    if (!line.ordinary) pen.path({pen.at(line.a), pen.at(line.b)}, line.stroke, false);
}

}  // namespace

float Canvas::set(const Theme& theme, const Fonts& fonts, const draw::Drawing& drawing, draw::Size room,
                  const FigureText& text, const CanvasView& view) {
  Texts texts = texts_of(drawing, fonts, text);
  draw::LayoutOptions options;
  options.rect = room;
  options.row = std::max(28.0, fonts.body->FontSize * 1.25);
  options.target = theme.target;
  options.view = view;
  if (std::string made_of = fingerprint_of(drawing, texts.sizes, options); made_of != fingerprint_) {
    fingerprint_ = std::move(made_of);
    layout_ = draw::lay_out(drawing, texts.sizes, options);
  }
  texts_ = std::move(texts.texts);
  return static_cast<float>(layout_.size.h);
}

draw::Point Canvas::point_at(const Rect& rect, float x, float y) const {
  const float top = rect.y + (rect.h - static_cast<float>(layout_.size.h)) / 2;
  return {(static_cast<double>(x - rect.x) - layout_.origin.x) / layout_.scale,
          (layout_.origin.y - static_cast<double>(y - top)) / layout_.scale};
}

void Canvas::paint(ImDrawList& list, const Theme& theme, const Fonts& fonts, const draw::Drawing& drawing,
                   const Rect& rect) {
  const auto needed = static_cast<float>(layout_.size.h);
  const Rect part{rect.x, rect.y + (rect.h - needed) / 2, rect.w, needed};
  crisp(list);
  list.PushClipRect({rect.x, rect.y}, {rect.x + rect.w, rect.y + rect.h}, true);
  LinePen pen(list, theme, part);
  paint_thing(pen, layout_, drawing);
  figures_.clear();
  for (const draw::PlacedFigure& placed : layout_.figures) {
    if (!placed.visible) continue;
    paint_ground(list, theme, pen, placed.box);
    paint_figure(list, theme, pen, placed, font_of(fonts, placed.meaning), texts_[placed.index]);
    figures_.push_back(
        {placed.key, placed.meaning, texts_[placed.index], to_rect(placed.box, part), to_rect(placed.target, part)});
  }
  list.PopClipRect();
}

}  // namespace bentbook::screens
