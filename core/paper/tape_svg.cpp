#include "paper/tape_svg.h"

#include <algorithm>

#include "draw/fill.h"
#include "measure/print.h"
#include "paper/svg_stroke.h"
#include "text/utf8.h"
#include "text/xml_text.h"

namespace bentbook {
namespace {

using draw::Point;

constexpr double kMmPerPx = 0.25;
constexpr double kHead = 64, kSide = 24;  // px: over the columns; around and between them
constexpr double kHatch = 9;

double letter_height(draw::TapeText size) {
  switch (size) {
    case draw::TapeText::kNumber:
      return 24;
    case draw::TapeText::kStrong:
      return 17;
    case draw::TapeText::kNote:
      break;
  }
  return 15;
}

class TapeSvg {
 public:
  void column(const TapeColumn& column, double x, double width) {
    x_ = x;
    text({0, 0}, 20, true, column.head, "start");
    text({0, 26}, 15, false, column.note, "start");
    y_ = kSide + kHead;
    for (const draw::Polygon& area : column.page.areas) polygon(area);
    for (const draw::PlacedLine& line : column.page.lines) stroke(line);
    for (const draw::PlacedArc& arc : column.page.arcs)
      body_ += "<circle class=\"cut\" cx=\"" + number(x_ + arc.centre.x) + "\" cy=\"" + number(y_ + arc.centre.y) +
               "\" r=\"" + number(arc.radius) + "\"/>\n";
    for (const draw::TapePlaced& t : column.page.texts) {
      // Words at the left end at the piece, whatever width the reader's letters have.
      const bool ends = t.block >= 0 && t.at.x + t.extent.w < column.page.left;
      text({ends ? t.at.x + t.extent.w : t.at.x, t.at.y}, letter_height(t.size), t.size != draw::TapeText::kNote,
           t.text, ends ? "end" : "start");
    }
    y_ = kSide;
    wide_ = x + width + kSide;
    high_ = std::max(high_, kSide + kHead + column.page.height + kSide);
  }

  [[nodiscard]] std::string file(std::string_view title, std::string_view language) const {
    const std::string size = "width=\"" + number(wide_ * kMmPerPx) + "mm\" height=\"" + number(high_ * kMmPerPx) +
                             "mm\" viewBox=\"0 0 " + number(wide_) + " " + number(high_) + "\"";
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" " + size + " xml:lang=\"" + std::string(language) +
           "\">\n<title>" + xml_text(title) +
           "</title>\n<style>path,circle{fill:none;stroke:#111;stroke-width:1}.visible{stroke-width:2}"
           ".hidden{stroke-dasharray:8 4}.cut{stroke:#C4311B;stroke-width:3}.ink{fill:#111;stroke:none}"
           ".shade{fill:#e8e8e8}text{font-family:'Noto Sans',sans-serif;fill:#111}.strong{font-weight:700}</style>\n"
           "<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n" +
           body_ + "</svg>\n";
  }

 private:
  static std::string number(double v) { return without_trailing_zeros(print_fixed(v, 2)); }
  [[nodiscard]] std::string pair(Point p) const { return number(x_ + p.x) + " " + number(y_ + p.y); }

  void stroke(const draw::PlacedLine& line) {
    body_ += "<path class=\"" + std::string(stroke_class(line.stroke)) + "\" d=\"M" + pair(line.a) + "L" +
             pair(line.b) + "\"/>\n";
  }

  void polygon(const draw::Polygon& area) {
    std::string d = "M";
    for (std::size_t i = 0; i < area.points.size(); ++i) d += (i == 0 ? "" : "L") + pair(area.points[i]);
    const bool filled = area.fill == draw::Fill::kInk || area.fill == draw::Fill::kShade;
    if (filled)
      body_ +=
          "<path class=\"" + std::string(area.fill == draw::Fill::kInk ? "ink" : "shade") + "\" d=\"" + d + "Z\"/>\n";
    else if (area.outlined)
      body_ += "<path class=\"" + std::string(stroke_class(area.stroke)) + "\" d=\"" + d + "Z\"/>\n";
    if (area.fill != draw::Fill::kSection && area.fill != draw::Fill::kWaste) return;
    for (const draw::Segment& s : draw::hatch(area.points, kHatch, false))
      body_ += "<path class=\"thin\" d=\"M" + pair(s.a) + "L" + pair(s.b) + "\"/>\n";
  }

  void text(Point at, double height, bool strong, std::string_view said, std::string_view anchor) {
    body_ += "<text" + std::string(strong ? " class=\"strong\"" : "") + " x=\"" + number(x_ + at.x) + "\" y=\"" +
             number(y_ + at.y + height * 0.8) + "\" font-size=\"" + number(height) + "\" text-anchor=\"" +
             std::string(anchor) + "\">" + xml_text(said) + "</text>\n";
  }

  double x_ = 0, y_ = kSide, wide_ = 0, high_ = 0;
  std::string body_;
};

}  // namespace

draw::Size tape_size_on_paper(std::string_view text, draw::TapeText size) {
  const double height = letter_height(size);
  const double each = size == draw::TapeText::kNote ? 0.56 : 0.62;  // of the height, on the average
  return {static_cast<double>(count_characters(text)) * each * height, height};
}

std::string write_tape_svg(std::span<const TapeColumn> columns, double width, std::string_view title,
                           std::string_view language) {
  TapeSvg svg;
  double x = kSide;
  for (const TapeColumn& column : columns) {
    svg.column(column, x, width);
    x += width + kSide;
  }
  return svg.file(title, language);
}

}  // namespace bentbook
