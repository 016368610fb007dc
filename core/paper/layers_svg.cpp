#include "paper/layers_svg.h"

#include "draw/fill.h"
#include "measure/print.h"
#include "paper/letters.h"
#include "paper/line_kind.h"
#include "paper/page_part.h"
#include "text/xml_text.h"

namespace bentbook::paper {
namespace {

using draw::Point;

/// Ten-thousandths of a millimetre: far below what any machine shows.
std::string mm(double v) { return without_trailing_zeros(print_fixed(v, 4)); }
std::string pair_of(Point p) { return mm(p.x) + " " + mm(p.y); }

std::string pen_of(draw::Stroke stroke, double width) {
  const LineKind kind = line_kind(stroke);
  std::string out = " fill=\"none\" stroke=\"";
  out += stroke == draw::Stroke::kCut ? "#C4311B" : "#111";
  out += "\" stroke-width=\"" + mm(width > 0 ? width : kind.width) + "\"";
  if (kind.dash_count == 0) return out;
  out += " stroke-dasharray=\"";
  for (int i = 0; i < kind.dash_count; ++i) out += mm(kind.dashes[static_cast<std::size_t>(i)]) + " ";
  out.back() = '"';
  return out;
}

std::string_view paint_of(draw::Fill fill) {
  if (fill == draw::Fill::kInk) return "#111";
  return fill == draw::Fill::kShade ? "#e8e8e8" : "#fff";
}

class LayersSvg {
 public:
  void add(const Page& page) {
    for (const PagePolygon& polygon : page.polygons) add(polygon);
    for (const PageLine& line : page.lines)
      path("M" + pair_of(line.a) + "L" + pair_of(line.b), line.stroke, line.width);
    for (const PageArc& arc : page.arcs) add(arc);
    for (const PageText& text : page.texts) add(text);
  }

  void begin_group(std::string_view name) { body_ += "<g id=\"" + xml_text(name) + "\">\n"; }
  void end_group() { body_ += "</g>\n"; }

  [[nodiscard]] std::string file(PageMeasure measure, std::string_view title, std::string_view language) const {
    const std::string w = mm(measure.width), h = mm(measure.height);
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + w + "mm\" height=\"" + h + "mm\" viewBox=\"0 0 " + w +
           " " + h + "\" xml:lang=\"" + xml_text(language) + "\">\n<title>" + xml_text(title) + "</title>\n" + body_ +
           "</svg>\n";
  }

 private:
  void path(const std::string& d, draw::Stroke stroke, double width) {
    body_ += "<path d=\"" + d + "\"" + pen_of(stroke, width) + "/>\n";
  }

  void add(const PagePolygon& polygon) {
    if (polygon.points.size() < 2) return;
    std::string d;
    for (const Point& p : polygon.points) d += (d.empty() ? "M" : "L") + pair_of(p);
    d += "Z";
    if (polygon.fill == draw::Fill::kSection || polygon.fill == draw::Fill::kWaste) {
      for (const bool down : {false, true}) {
        if (down && polygon.fill == draw::Fill::kSection) break;
        for (const draw::Segment& s : draw::hatch(polygon.points, kHatchSpacing, down))
          path("M" + pair_of(s.a) + "L" + pair_of(s.b), draw::Stroke::kThin, 0.18);
      }
    } else if (polygon.fill != draw::Fill::kNone) {
      body_ += "<path d=\"" + d + "\" fill=\"" + std::string(paint_of(polygon.fill)) + "\"/>\n";
    }
    if (polygon.outlined) path(d, polygon.stroke, 0);
  }

  void add(const PageArc& arc) {
    const double sweep = arc.to_deg - arc.from_deg;
    if (sweep >= 360 - 1e-9) {
      body_ += "<circle cx=\"" + mm(arc.centre.x) + "\" cy=\"" + mm(arc.centre.y) + "\" r=\"" + mm(arc.radius) + "\"" +
               pen_of(arc.stroke, 0) + "/>\n";
      return;
    }
    const std::string r = mm(arc.radius);
    path("M" + pair_of(on_arc(arc, arc.from_deg)) + "A" + r + " " + r + " 0 " + (sweep > 180 ? "1" : "0") + " 0 " +
             pair_of(on_arc(arc, arc.to_deg)),
         arc.stroke, 0);
  }

  void add(const PageText& text) {
    const double wide = text_width(text.text, text.size, text.bold);
    double x = start_of(text.align, wide);
    body_ += "<text font-family=\"'Noto Sans',sans-serif\"";
    if (set_bold(text.text, text.bold)) body_ += " font-weight=\"700\"";
    body_ += " fill=\"#111\" xml:space=\"preserve\" transform=\"translate(" + pair_of(text.at) + ")";
    if (text.turn_deg != 0) body_ += " rotate(" + mm(-text.turn_deg) + ")";
    body_ += "\">";
    for (const LetterRun& run : letter_runs(text.text, text.size, text.bold)) {
      body_ += "<tspan x=\"" + mm(x) + "\" y=\"" + mm(-run.rise) + "\" font-size=\"" + mm(run.size) + "\">" +
               xml_text(run.text) + "</tspan>";
      x += run.width;
    }
    body_ += "</text>\n";
  }

  std::string body_;
};

}  // namespace

std::string layers_svg(std::span<const Layer> layers, PageMeasure measure, std::string_view title,
                       std::string_view language) {
  LayersSvg svg;
  for (const Layer& layer : layers) {
    svg.begin_group(layer.name);
    svg.add(layer.page);
    svg.end_group();
  }
  return svg.file(measure, title, language);
}

}  // namespace bentbook::paper
