#include "printed/pages/pattern_sheet.h"

#include <algorithm>
#include <utility>

#include "draw/layout.h"
#include "frame/sheet/full_size_drawing.h"
#include "paper/letters.h"
#include "paper/page_part.h"
#include "words/frame_words.h"

namespace bentbook {
namespace {

using draw::Point;
using draw::Stroke;
using paper::Page;

constexpr double kPerMm = 4;  // the layout's px
constexpr double kPerInch = 25.4 * kPerMm;
constexpr double kFigureSize = 3.5;  // mm of an em
constexpr double kBorder = 2;        // mm around everything
constexpr double kHeavy = 1.2;       // mm: the reference edge's line, all of it outside of the wood
constexpr double kCutWidth = 0.5;    // mm: the place is in its middle; no other line is as wide, since paper is black
constexpr double kArrowWidth = 0.35;
constexpr double kNumber = 8;  // mm of an em: the face's number
constexpr double kArrow = 13;  // mm

std::string figure_text(const PatternFigure& figure, const Voice& voice) {
  const std::string said = say_inches(figure.inches, voice);
  if (figure.measure == PatternMeasure::kDiameter) return say(Msg::kPatternHole, voice.language, said);
  return figure.measure == PatternMeasure::kDepth ? say(Msg::kPatternDeep, voice.language, said) : said;
}

class SheetMaker {
 public:
  SheetMaker(const FullSizePattern& pattern, std::string_view marks, const Voice& voice)
      : p_(pattern), marks_(marks), voice_(voice) {}

  PatternLayers made() {
    measures();
    const auto add = [&](std::string_view name, Page page) { out_.layers.push_back({name, std::move(page)}); };
    add("waste", waste());
    add("reference", reference());
    add("wood", closed(p_.outlines, Stroke::kThin));
    add("opening", closed(p_.openings, Stroke::kThin));
    add("mark", marked());
    add("cut", cuts());
    add("drill", holes());
    add("measure", std::move(measure_));
    add("words", words());
    const paper::Window all = paper::bounds_of(out_.whole());
    for (paper::Layer& layer : out_.layers) paper::move_by(layer.page, kBorder - all.left, kBorder - all.top);
    const Point zero = mm({0, 0});
    out_.zero = {zero.x + kBorder - all.left, zero.y + kBorder - all.top};
    out_.width = all.right - all.left + 2 * kBorder;
    out_.height = all.bottom - all.top + 2 * kBorder;
    return std::move(out_);
  }

 private:
  [[nodiscard]] Point mm(Vec2 p) const {
    const Point px = layout_.to_px({p.x, p.y});
    return {px.x / kPerMm, px.y / kPerMm};
  }
  static Point from_px(Point px) { return {px.x / kPerMm, px.y / kPerMm}; }

  /// Lays the drawing out at 1:1 and keeps what is not the wood's own.
  void measures() {
    const PatternDrawing drawing = pattern_dimensions(p_);
    std::vector<draw::Size> sizes;
    std::vector<std::string> texts;
    const auto size = [&](const std::string& key) {
      texts.push_back(figure_text(drawing.figures[static_cast<std::size_t>(std::stoi(key))], voice_));
      sizes.push_back({(paper::text_width(texts.back(), kFigureSize, false) + 1) * kPerMm, kFigureSize * kPerMm});
    };
    for (const draw::Dimension& d : drawing.drawing.dimensions) size(d.key);
    for (const draw::Note& n : drawing.drawing.notes) size(n.key);
    draw::LayoutOptions options;
    options.max_scale = kPerInch;
    options.target = kFigureSize * kPerMm;
    options.padding = 0;
    // Room enough for every row and word at this scale, or it would be drawn smaller.
    constexpr double kAround = 600 * kPerMm;
    options.rect = {(p_.to - p_.from) * kPerInch + 2 * kAround, p_.width * kPerInch + 2 * kAround};
    layout_ = draw::lay_out(drawing.drawing, sizes, options);
    for (const draw::PlacedLine& line : layout_.lines) {
      if (line.ordinary) continue;
      measure_.lines.push_back({from_px(line.a), from_px(line.b), Stroke::kThin, line.oblique ? 0.35 : 0.18});
    }
    for (const draw::PlacedArc& arc : layout_.arcs) {
      if (arc.ordinary) continue;
      const auto deg = [](double rad) { return -rad * 180 / libm::kPi; };
      measure_.arcs.push_back({from_px(arc.centre), arc.radius / kPerMm, deg(arc.to), deg(arc.from), Stroke::kThin});
    }
    for (const draw::PlacedFigure& figure : layout_.figures) {
      const Point middle = from_px(figure.box.centre);
      const double turn = figure.box.angle, down = kFigureSize * paper::kCapital / 2;
      measure_.texts.push_back({{middle.x - down * libm::sin(turn), middle.y + down * libm::cos(turn)},
                                kFigureSize,
                                false,
                                paper::Align::kMiddle,
                                -turn * 180 / libm::kPi,
                                texts[figure.index]});
    }
  }

  [[nodiscard]] paper::PagePolygon polygon(const std::vector<Vec2>& outline, draw::Fill fill, Stroke stroke) const {
    paper::PagePolygon out{{}, fill, fill == draw::Fill::kNone, stroke};
    out.points.reserve(outline.size());
    for (const Vec2& p : outline) out.points.push_back(mm(p));
    return out;
  }

  [[nodiscard]] Page closed(const std::vector<std::vector<Vec2>>& outlines, Stroke stroke) const {
    Page page;
    page.polygons.reserve(outlines.size());
    for (const auto& outline : outlines) page.polygons.push_back(polygon(outline, draw::Fill::kNone, stroke));
    return page;
  }

  [[nodiscard]] Page waste() const {
    Page page;
    page.polygons.reserve(p_.waste.size());
    for (const auto& outline : p_.waste) page.polygons.push_back(polygon(outline, draw::Fill::kSection, Stroke::kThin));
    return page;
  }

  /// Where the wood's outline runs along the reference edge.
  [[nodiscard]] Page reference() const {
    Page page;
    const double edge = p_.reference_below ? 0 : p_.width, out = (p_.reference_below ? -1 : 1) * kHeavy / 25.4;
    const auto on_edge = [&](Vec2 p) { return libm::fabs(p.y - edge) < 1e-6; };
    for (const auto& outline : p_.outlines)
      for (std::size_t i = 0; i < outline.size(); ++i) {
        const Vec2 a = outline[i], b = outline[i + 1 == outline.size() ? 0 : i + 1];
        if (on_edge(a) && on_edge(b))
          page.polygons.push_back(
              polygon({a, b, {b.x, b.y + out}, {a.x, a.y + out}}, draw::Fill::kInk, Stroke::kVisible));
      }
    return page;
  }

  [[nodiscard]] Page cuts() const {
    Page page;
    page.lines.reserve(p_.lines.size());
    for (const FaceLine& line : p_.lines) page.lines.push_back({mm(line.a), mm(line.b), Stroke::kCut, kCutWidth});
    return page;
  }

  [[nodiscard]] Page holes() const {
    Page page;
    page.arcs.reserve(p_.holes.size());
    for (const FaceHole& hole : p_.holes)
      page.arcs.push_back({mm(hole.centre), hole.diameter / 2 * 25.4, 0, 360, Stroke::kVisible});
    return page;
  }

  [[nodiscard]] Page marked() const {
    Page page = closed(p_.hidden, Stroke::kHidden);
    if (!p_.at_a && !p_.at_b)
      page.lines.push_back({mm(Vec2{0, -0.3}), mm(Vec2{0, p_.width + 0.3}), Stroke::kCentre, 0});
    for (const FaceHole& hole : p_.holes) {
      const double arm = hole.diameter / 2 + 0.15;
      const Vec2 c = hole.centre;
      page.lines.push_back({mm(Vec2{c.x - arm, c.y}), mm(Vec2{c.x + arm, c.y}), Stroke::kThin, 0.18});
      page.lines.push_back({mm(Vec2{c.x, c.y - arm}), mm(Vec2{c.x, c.y + arm}), Stroke::kThin, 0.18});
    }
    return page;
  }

  /// In the wood beside the end that goes on: an arrow toward end A, the face's number, the marks.
  [[nodiscard]] Page words() const {
    Page page;
    constexpr double kIn = 3;  // mm
    const Point open = mm(Vec2{p_.open_right ? p_.to : p_.from, p_.width / 2});
    const double right = p_.open_right ? open.x - kIn : open.x + kIn + 10 + kArrow + 8;
    const double y = open.y;
    page.texts.push_back({{right, y + kNumber * 0.36},
                          kNumber,
                          true,
                          paper::Align::kRight,
                          0,
                          std::to_string(static_cast<int>(p_.face))});
    const double tail = right - 8, head = tail - kArrow;
    page.lines.push_back({{tail, y}, {head, y}, Stroke::kVisible, kArrowWidth});
    page.polygons.push_back(
        {{{head - 3, y}, {head + 2, y - 1.6}, {head + 2, y + 1.6}}, draw::Fill::kInk, false, Stroke::kVisible});
    page.texts.push_back({{head - 4.5, y + 5 * 0.36}, 5, true, paper::Align::kRight, 0, "A"});
    const std::string said = paper::shortened(marks_, kFigureSize, true, kArrow + 22);
    page.texts.push_back({{right, y - kNumber * 0.6}, kFigureSize, true, paper::Align::kRight, 0, said});
    return page;
  }

  const FullSizePattern& p_;
  std::string_view marks_;
  const Voice& voice_;
  draw::Layout layout_;
  Page measure_;
  PatternLayers out_;
};

}  // namespace

paper::Page PatternLayers::whole() const {
  Page all;
  for (const paper::Layer& layer : layers) paper::put(all, layer.page, {});
  return all;
}

PatternLayers pattern_sheet(const FullSizePattern& pattern, std::string_view marks, const Voice& voice) {
  return SheetMaker(pattern, marks, voice).made();
}

}  // namespace bentbook
