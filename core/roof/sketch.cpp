#include "roof/sketch.h"

#include <algorithm>

#include "numeric/libm.h"

namespace bentbook {

void Sketch::area(const std::vector<XY>& points, draw::Fill fill, draw::Stroke stroke, bool outlined) {
  draw::Polygon polygon{{}, stroke, fill, outlined};
  for (const XY& p : points) polygon.points.push_back(at(p));
  drawing.polygons.push_back(std::move(polygon));
}

void Sketch::dimension_along(XY a, XY b, XY along, double offset, std::string key, draw::Meaning meaning) {
  const draw::Point direction{right_ ? -along.x : along.x, along.y};
  drawing.dimensions.push_back({at(a), at(b), right_ ? -offset : offset, direction, std::move(key), meaning});
}

void Sketch::angle(XY vertex, double from_deg, double to_deg, double row, std::string key, draw::Meaning meaning) {
  const double from = right_ ? 180 - to_deg : from_deg, to = right_ ? 180 - from_deg : to_deg;
  drawing.angles.push_back({at(vertex), from, to, row, std::move(key), meaning});
}

void Sketch::timber(const std::vector<XY>& outline, const Rafter& rafter, draw::Stroke ends,
                    std::initializer_list<double> broken_at) {
  const auto at = [](double x, double there) { return libm::fabs(x - there) < 1e-6; };
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const XY a = outline[i], b = outline[(i + 1) % outline.size()];
    const double along = (b.x - a.x) * rafter.cos + (b.y - a.y) * rafter.sin;
    const double across = (b.y - a.y) * rafter.cos - (b.x - a.x) * rafter.sin;
    const bool edge = libm::fabs(across) < 1e-6 * (1 + libm::fabs(along));
    bool broken = false;
    for (const double x : broken_at) broken = broken || (at(a.x, x) && at(b.x, x));
    line(a, b, broken ? draw::Stroke::kThin : edge ? draw::Stroke::kVisible : ends);
  }
}

std::vector<XY> outline_of(const Rafter& rafter) { return {rafter.outline.begin(), rafter.outline.end()}; }

std::vector<XY> clipped(const std::vector<XY>& polygon, XY normal, double limit) {
  std::vector<XY> out;
  const auto past = [&](XY p) { return p.x * normal.x + p.y * normal.y - limit; };
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const XY a = polygon[i], b = polygon[(i + 1) % polygon.size()];
    const double pa = past(a), pb = past(b);
    if (pa <= 0) out.push_back(a);
    if ((pa < 0 && pb > 0) || (pa > 0 && pb < 0)) {
      const double t = pa / (pa - pb);
      out.push_back({a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)});
    }
  }
  return out;
}

std::string with_side(const char* stem, Side side) {
  return std::string(stem) + (side == Side::kLeft ? "_left" : "_right");
}

}  // namespace bentbook
