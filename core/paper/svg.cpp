#include "paper/svg.h"

#include <algorithm>
#include <utility>
#include <vector>

#include "measure/print.h"
#include "numeric/libm.h"
#include "paper/svg_stroke.h"
#include "text/xml_text.h"

namespace bentbook {
namespace {

using draw::Point;

constexpr double kMmPerInch = 25.4;
constexpr double kRow = 14;        // mm between rows of dimensions
constexpr double kText = 5;        // mm, height of figures (ISO 3098)
constexpr double kSlash = 2;       // mm, half an end stroke
constexpr double kMargin = 15;     // mm
constexpr double kCheckBar = 100;  // mm, to prove a print with a rule

/// A growing sheet in mm, y up; turned over when it is written.
class Sheet {
 public:
  explicit Sheet(double scale) : scale_(scale * kMmPerInch) {}

  [[nodiscard]] Point mm(Point inches) const { return {inches.x * scale_, inches.y * scale_}; }
  [[nodiscard]] Point low() const { return low_; }
  [[nodiscard]] Point high() const { return high_; }
  [[nodiscard]] const std::string& body() const { return body_; }

  void line(Point a, Point b, std::string_view style) {
    reach(a), reach(b);
    body_ += "<path class=\"" + std::string(style) + "\" d=\"M" + pair(a) + "L" + pair(b) + "\"/>\n";
  }
  void path(const std::vector<Point>& points, std::string_view style) {
    std::string d = "M";
    for (std::size_t i = 0; i < points.size(); ++i) {
      reach(points[i]);
      d += (i ? "L" : "") + pair(points[i]);
    }
    body_ += "<path class=\"" + std::string(style) + "\" d=\"" + d + "Z\"/>\n";
  }
  /// Counterclockwise from `from` to `to`, degrees.
  void arc(Point centre, double radius, double from, double to, std::string_view style) {
    const Point a = polar(centre, radius, from), b = polar(centre, radius, to);
    reach(a), reach(b);
    body_ += "<path class=\"" + std::string(style) + "\" d=\"M" + pair(a) + "A" + number(radius) + " " +
             number(radius) + " 0 " + (to - from > 180 ? "1" : "0") + " 0 " + pair(b) + "\"/>\n";
  }
  /// Centred over `at`, its foot on the line of that direction (degrees).
  void words(Point at, double deg, std::string_view text, std::string_view style) {
    const double half = kText * 0.32 * static_cast<double>(text.size()) + kText;
    reach({at.x - half, at.y - half}), reach({at.x + half, at.y + half});
    body_ += "<text class=\"" + std::string(style) + "\" transform=\"translate(" + pair(at) + ") rotate(" +
             number(-deg) + ")\">" + xml_text(text) + "</text>\n";
  }
  static Point polar(Point from, double radius, double deg) {
    const double rad = deg * libm::kPi / 180;
    return {from.x + radius * libm::cos(rad), from.y + radius * libm::sin(rad)};
  }
  static std::string number(double v) { return without_trailing_zeros(print_fixed(v, 3)); }

 private:
  static std::string pair(Point p) { return number(p.x) + " " + number(-p.y); }
  void reach(Point p) {
    if (!reached_) low_ = high_ = p;
    reached_ = true;
    low_ = {std::min(low_.x, p.x), std::min(low_.y, p.y)};
    high_ = {std::max(high_.x, p.x), std::max(high_.y, p.y)};
  }
  double scale_;
  Point low_, high_;
  bool reached_ = false;
  std::string body_;
};

std::string_view fill_of(draw::Fill fill) {
  if (fill == draw::Fill::kSection) return "section";
  return fill == draw::Fill::kWaste ? "waste" : "paper";
}

std::string_view figure_style(draw::Meaning meaning) { return meaning == draw::Meaning::kAnswer ? "answer" : "fact"; }

/// Turned so that it is read from the bottom or from the right.
double readable(double deg) {
  while (deg > 90.001) deg -= 180;
  while (deg <= -89.999) deg += 180;
  return deg;
}

void add_dimension(Sheet& sheet, const draw::Dimension& dim, const std::string& text) {
  const Point a = sheet.mm(dim.a), b = sheet.mm(dim.b);
  const bool along = dim.along.x != 0 || dim.along.y != 0;
  Point d = along ? dim.along : Point{b.x - a.x, b.y - a.y};
  const double size = libm::hypot(d.x, d.y);
  if (size == 0) return;
  d = {d.x / size, d.y / size};
  if ((b.x - a.x) * d.x + (b.y - a.y) * d.y < 0) d = {-d.x, -d.y};
  const Point n{-d.y, d.x};
  const double an = a.x * n.x + a.y * n.y, bn = b.x * n.x + b.y * n.y;
  const double level = (dim.offset >= 0 ? std::max(an, bn) : std::min(an, bn)) + dim.offset * kRow;
  const auto onto = [&](Point p, double pn, double past) {
    return Point{p.x + (level - pn + past) * n.x, p.y + (level - pn + past) * n.y};
  };
  const double past = dim.offset == 0 ? 0 : dim.offset > 0 ? kSlash : -kSlash;
  sheet.line(a, onto(a, an, past), "thin");
  sheet.line(b, onto(b, bn, past), "thin");
  const Point from = onto(a, an, 0), to = onto(b, bn, 0);
  sheet.line(from, to, "thin");
  for (const Point& end : {from, to}) {
    const Point s{(d.x + n.x) * kSlash * 0.7, (d.y + n.y) * kSlash * 0.7};
    sheet.line({end.x - s.x, end.y - s.y}, {end.x + s.x, end.y + s.y}, "slash");
  }
  const double deg = readable(libm::atan2(d.y, d.x) * 180 / libm::kPi);
  const Point up = Sheet::polar({0, 0}, 1.5, deg + 90);
  sheet.words({(from.x + to.x) / 2 + up.x, (from.y + to.y) / 2 + up.y}, deg, text, figure_style(dim.meaning));
}

void add_angle(Sheet& sheet, const draw::AngleDimension& angle, const std::string& text) {
  const Point vertex = sheet.mm(angle.vertex);
  const double radius = angle.row * kRow;
  sheet.arc(vertex, radius, angle.from_deg, angle.to_deg, "thin");
  for (const double deg : {angle.from_deg, angle.to_deg})
    sheet.line(vertex, Sheet::polar(vertex, radius + kSlash, deg), "thin");
  sheet.words(Sheet::polar(vertex, radius + kText * 1.5, (angle.from_deg + angle.to_deg) / 2), 0, text,
              figure_style(angle.meaning));
}

constexpr std::string_view kStyle = R"svg(<style>
path{fill:none;stroke:#111;stroke-linejoin:round}
.visible{stroke-width:.7}.hidden{stroke-width:.35;stroke-dasharray:6 1.5}.thin{stroke-width:.25}
.centre{stroke-width:.35;stroke-dasharray:12 1.5 .4 1.5}.slash{stroke-width:.5}.cut{stroke:#C4311B;stroke-width:.7}
.section{fill:url(#section);stroke:none}.waste{fill:url(#waste);stroke:none}.paper{fill:#fff;stroke:none}
text{font-family:sans-serif;font-size:5px;text-anchor:middle;fill:#111}.answer{font-weight:bold}
</style>
<defs>
<pattern id="section" width="4" height="4" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)"><path
 d="M0 0H4" stroke-width=".25"/></pattern>
<pattern id="waste" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path
 d="M0 0H5M0 0V5" stroke-width=".25"/></pattern>
</defs>
)svg";

/// A bar of 100 mm below everything: a print that measures it wrong was scaled.
void add_check_bar(Sheet& sheet) {
  const double y = sheet.low().y - kRow, x = std::max(sheet.low().x, 0.0);
  sheet.line({x, y}, {x + kCheckBar, y}, "visible");
  sheet.line({x, y - kSlash}, {x, y + kSlash}, "visible");
  sheet.line({x + kCheckBar, y - kSlash}, {x + kCheckBar, y + kSlash}, "visible");
  sheet.words({x + kCheckBar / 2, y + 1.5}, 0, "100 mm", "fact");
}

std::string finished(const Sheet& sheet, const SvgSheet& options) {
  using S = Sheet;
  const double x = sheet.low().x - kMargin, y = -sheet.high().y - kMargin;
  const double w = sheet.high().x - sheet.low().x + 2 * kMargin, h = sheet.high().y - sheet.low().y + 2 * kMargin;
  std::string out = "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + S::number(w) + "mm\" height=\"" +
                    S::number(h) + "mm\" viewBox=\"" + S::number(x) + " " + S::number(y) + " " + S::number(w) + " " +
                    S::number(h) + "\" lang=\"" + xml_text(options.language) + "\">\n";
  out += "<title>" + xml_text(options.title) + "</title>\n";
  out += kStyle;
  return out + sheet.body() + "</svg>\n";
}

}  // namespace

std::string write_svg(const draw::Drawing& drawing, const SvgSheet& options,
                      FunctionRef<std::string(std::string_view key)> figure, FunctionRef<bool(int)> progress) {
  Sheet sheet(options.scale);
  const std::size_t all = drawing.polygons.size() + drawing.lines.size() + drawing.arcs.size() +
                          drawing.dimensions.size() + drawing.angles.size() + drawing.notes.size();
  std::size_t done = 0;
  const auto go_on = [&] { return progress(static_cast<int>(1000 * done++ / (all + 1))); };
  for (const draw::Polygon& p : drawing.polygons) {
    if (!go_on()) return {};
    std::vector<Point> points;
    for (const Point& at : p.points) points.push_back(sheet.mm(at));
    if (p.fill != draw::Fill::kNone) sheet.path(points, fill_of(p.fill));
    if (p.outlined) sheet.path(points, stroke_class(p.stroke));
  }
  for (const draw::Line& l : drawing.lines) {
    if (!go_on()) return {};
    sheet.line(sheet.mm(l.a), sheet.mm(l.b), stroke_class(l.stroke));
  }
  for (const draw::Arc& a : drawing.arcs) {
    if (!go_on()) return {};
    sheet.arc(sheet.mm(a.centre), sheet.mm({a.radius, 0}).x, a.from_deg, a.to_deg, stroke_class(a.stroke));
  }
  for (const draw::Dimension& d : drawing.dimensions) {
    if (!go_on()) return {};
    add_dimension(sheet, d, figure(d.key));
  }
  for (const draw::AngleDimension& a : drawing.angles) {
    if (!go_on()) return {};
    add_angle(sheet, a, figure(a.key));
  }
  for (const draw::Note& n : drawing.notes) {
    if (!go_on()) return {};
    sheet.words(sheet.mm(n.at), 0, figure(n.key), figure_style(n.meaning));
  }
  add_check_bar(sheet);
  if (!progress(1000)) return {};
  return finished(sheet, options);
}

}  // namespace bentbook
