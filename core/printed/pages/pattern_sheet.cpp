#include "printed/pages/pattern_sheet.h"

#include <algorithm>
#include <span>
#include <utility>

#include "draw/layout.h"
#include "draw/sketch.h"
#include "frame/sheet/full_size_drawing.h"
#include "numeric/sorting.h"
#include "paper/letters.h"
#include "paper/page_part.h"
#include "words/face_words.h"
#include "words/frame_words.h"

namespace bentbook {
namespace {

using draw::Point;
using draw::Stroke;
using paper::Page;

constexpr double kPerMm = 4;                // the layout's px
constexpr double kPerInch = 25.4 * kPerMm;  // at 1:1
constexpr double kFigureSize = 3.5;         // mm of an em
constexpr double kBorder = 2;               // mm around everything
constexpr double kHeavy = 1.2;              // mm: the reference edge's line, all of it outside of the wood
constexpr double kCutWidth = 0.5;  // mm: the place is in its middle; no other line is as wide, since paper is black
constexpr double kArrowWidth = 0.35;
constexpr double kNumber = 8;  // mm of an em: the face's number
constexpr double kArrow = 13;  // mm

std::string figure_text(const PatternFigure& figure, const PatternLook& look, const Voice& voice) {
  const std::string said = !look.as_taped                              ? say_inches(figure.inches, voice)
                           : figure.measure == PatternMeasure::kOffset ? tape_gauge_text(figure.inches, voice)
                           : figure.measure == PatternMeasure::kDepth  ? tape_depth_text(figure.inches, voice)
                                                                       : tape_number_text(figure.inches, voice);
  if (figure.measure == PatternMeasure::kDiameter) return say(Msg::kPatternHole, voice.language, said);
  return figure.measure == PatternMeasure::kDepth ? say(Msg::kPatternDeep, voice.language, said) : said;
}

std::string_view short_feature_name(FeatureKind kind, Language language) {
  if (kind == FeatureKind::kRelief) return text(Msg::kFaceRelief, language);
  if (kind == FeatureKind::kLetIn) return text(Msg::kFaceLetIn, language);
  return feature_name(kind, language);
}

/// Lines that stop short of figures (ISO 129): what of each is outside of all the boxes.
std::vector<paper::PageLine> off_figures(const std::vector<paper::PageLine>& lines, std::span<const draw::Box> boxes) {
  constexpr double kLeast = 0.5;  // mm: a shorter piece would be a dot
  std::vector<paper::PageLine> out;
  out.reserve(lines.size());
  for (const paper::PageLine& line : lines) {
    std::vector<draw::Stretch> hidden;
    for (const draw::Box& box : boxes)
      if (const auto in = draw::stretch_inside(box, line.a, line.b)) hidden.push_back(*in);
    if (hidden.empty()) {
      out.push_back(line);
      continue;
    }
    sort_by(hidden, [](const draw::Stretch& a, const draw::Stretch& b) { return a.from < b.from; });
    hidden.push_back({1, 1});
    const Point way{line.b.x - line.a.x, line.b.y - line.a.y};
    const double length = libm::hypot(way.x, way.y);
    double from = 0;
    for (const draw::Stretch& in : hidden) {
      if ((in.from - from) * length > kLeast)
        out.push_back({draw::moved(line.a, way, from), draw::moved(line.a, way, in.from), line.stroke, line.width});
      from = std::max(from, in.to);
    }
  }
  return out;
}

class SheetMaker {
 public:
  SheetMaker(const FullSizePattern& pattern, std::string_view marks, const Voice& voice, const PatternLook& look)
      : p_(pattern), marks_(marks), voice_(voice), look_(look) {}

  PatternLayers made() {
    measures();
    const auto add = [&](std::string_view name, Page page) { out_.layers.push_back({name, std::move(page)}); };
    add("waste", waste());
    add("reference", reference());
    add("wood", closed(p_.outlines, Stroke::kThin));
    add("opening", closed(p_.openings, Stroke::kThin));
    Page mark = marked();
    if (look_.as_taped)
      for (Page* page : {&mark, &measure_}) page->lines = off_figures(page->lines, figures_);
    add("mark", std::move(mark));
    add("cut", cuts());
    add("drill", holes());
    add("measure", std::move(measure_));
    if (!marks_.empty()) add("words", words());
    const paper::Window all = paper::bounds_of(out_.whole());
    const double border = look_.as_taped ? kBorder / 2 : kBorder;
    for (paper::Layer& layer : out_.layers) paper::move_by(layer.page, border - all.left, border - all.top);
    const Point zero = mm({0, 0});
    out_.zero = {zero.x + border - all.left, zero.y + border - all.top};
    out_.width = all.right - all.left + 2 * border;
    out_.height = all.bottom - all.top + 2 * border;
    return std::move(out_);
  }

 private:
  [[nodiscard]] Point mm(Vec2 p) const {
    const Point px = layout_.to_px(look_.a_up ? Point{p.y, -p.x} : Point{p.x, p.y});
    return {px.x / kPerMm, px.y / kPerMm};
  }
  static Point from_px(Point px) { return {px.x / kPerMm, px.y / kPerMm}; }

  /// Lays the drawing out at its scale and keeps what is not the wood's own.
  void measures() {
    PatternDrawing drawing = pattern_dimensions(p_);
    if (look_.a_up) draw::turn_quarters(drawing.drawing, 3);
    std::vector<draw::Size> sizes;
    std::vector<std::string> texts;
    const auto size = [&](const std::string& key) {
      texts.push_back(figure_text(drawing.figures[static_cast<std::size_t>(std::stoi(key))], look_, voice_));
      sizes.push_back({(paper::text_width(texts.back(), kFigureSize, false) + 1) * kPerMm, kFigureSize * kPerMm});
    };
    for (const draw::Dimension& d : drawing.drawing.dimensions) size(d.key);
    for (const draw::Note& n : drawing.drawing.notes) size(n.key);
    draw::LayoutOptions options;
    options.max_scale = kPerInch * look_.scale;
    options.row = look_.row * kPerMm;
    options.target = kFigureSize * kPerMm;
    options.padding = 0;
    // Room enough for every row and word at this scale, or it would be drawn smaller.
    constexpr double kAround = 600 * kPerMm;
    options.rect = {(p_.to - p_.from) * options.max_scale + 2 * kAround, p_.width * options.max_scale + 2 * kAround};
    if (look_.a_up) std::swap(options.rect.w, options.rect.h);
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
      if (look_.as_taped) {
        // mm less than its box all around: capitals are lower, its own line is beside it.
        constexpr double kClear = 0.25;
        measure_.polygons.push_back(under(figure.box));
        figures_.push_back(
            draw::grown({middle, figure.box.w / kPerMm, figure.box.h / kPerMm, figure.box.angle}, -kClear));
      }
      const double turn = figure.box.angle, down = kFigureSize * paper::kCapital / 2;
      measure_.texts.push_back({{middle.x - down * libm::sin(turn), middle.y + down * libm::cos(turn)},
                                kFigureSize,
                                false,
                                paper::Align::kMiddle,
                                -turn * 180 / libm::kPi,
                                texts[figure.index]});
    }
  }

  /// Blank paper, so that a figure is read on hatching.
  static paper::PagePolygon under(const draw::Box& box) {
    paper::PagePolygon out{{}, draw::Fill::kPaper, false, Stroke::kThin};
    for (const Point& corner : draw::corners(box)) out.points.push_back(from_px(corner));
    return out;
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
    const double edge = p_.reference_below ? 0 : p_.width,
                 out = (p_.reference_below ? -1 : 1) * kHeavy / 25.4 / look_.scale;
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
      page.arcs.push_back({mm(hole.centre), hole.diameter / 2 * 25.4 * look_.scale, 0, 360, Stroke::kVisible});
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
  const PatternLook& look_;
  draw::Layout layout_;
  Page measure_;
  std::vector<draw::Box> figures_;  // mm, where lines are interrupted
  PatternLayers out_;
};

}  // namespace

paper::Page PatternLayers::whole() const {
  Page all;
  for (const paper::Layer& layer : layers) paper::put(all, layer.page, {});
  return all;
}

PatternLayers pattern_sheet(const FullSizePattern& pattern, std::string_view marks, const Voice& voice,
                            const PatternLook& look) {
  return SheetMaker(pattern, marks, voice, look).made();
}

void add_work_names(std::vector<std::string_view>& names, const Timber& timber,
                    const std::vector<FullSizePattern::Work>& work, Language language) {
  for (const FullSizePattern::Work& one : work) {
    const auto i = static_cast<std::size_t>(one.index);
    const std::string_view name = one.on == WorkOn::kEndCut ? end_cut_name(timber.cuts[i].name, language)
                                                            : short_feature_name(timber.features[i].kind, language);
    if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
  }
}

std::string names_text(const std::vector<std::string_view>& names) {
  std::string out;
  for (const std::string_view name : names) (out += out.empty() ? "" : ", ") += name;
  return out;
}

std::string pattern_where_text(const PatternSpot& spot, std::string_view at, Language language) {
  std::string faces = std::to_string(static_cast<int>(spot.face));
  if (spot.turned) faces += ", " + std::to_string(static_cast<int>(rolled(rolled(spot.face))));
  if (spot.at_a || spot.at_b) return say(spot.at_a ? Msg::kPatternAtA : Msg::kPatternAtB, language, faces);
  return say(Msg::kPatternAt, language, {{"face", faces}, {"at", std::string(at)}});
}

}  // namespace bentbook
