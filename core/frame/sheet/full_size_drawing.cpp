#include "frame/sheet/full_size_drawing.h"

#include <algorithm>
#include <iterator>
#include <string>
#include <utility>

#include "draw/box.h"
#include "draw/sketch.h"
#include "geometry/outline.h"

namespace bentbook {
namespace {

using draw::Point;

constexpr double kSamePlace = 1.0 / 64;  ///< inches: told once
constexpr double kLeastLine = 0.75;      ///< a shorter cut has no room for its length
constexpr std::size_t kMostRows = 8;     ///< of dimensions on one side

Point at(Vec2 p) { return {p.x, p.y}; }

class Figures {
 public:
  explicit Figures(const FullSizePattern& pattern) : p_(pattern) {}

  PatternDrawing made() {
    shapes();
    collect();
    across_rows();
    along_rows();
    for (const FaceLine& line : p_.lines) askew_line(line);
    for (const FaceHole& hole : p_.holes) note(hole.centre, key(hole.diameter, PatternMeasure::kDiameter));
    for (std::size_t i = 0; i < p_.openings.size(); ++i)
      if (p_.depths[i]) note(floor_of(i), key(*p_.depths[i], PatternMeasure::kDepth));
    return std::move(out_);
  }

 private:
  std::string key(double inches, PatternMeasure measure = PatternMeasure::kLength) {
    out_.figures.push_back({measure, libm::fabs(inches)});
    return std::to_string(out_.figures.size() - 1);
  }

  void told(Vec2 a, Vec2 b, double offset, std::string mine, Point along) {
    out_.drawing.dimensions.push_back({at(a), at(b), offset, along, std::move(mine), draw::Meaning::kFact});
  }

  void note(Vec2 place, std::string mine) {
    out_.drawing.notes.push_back({at(place), std::move(mine), draw::Meaning::kFact, draw::Stands::kAside});
  }

  static draw::Bounds bounds_of(const std::vector<Vec2>& outline) {
    draw::Bounds out;
    for (const Vec2& p : outline) out.add(draw::Point{p.x, p.y});
    return out;
  }

  /// Where an opening's depth is told: in its middle; where another one lies in it there, halfway between its edge and
  /// that one's, on the widest of the four sides.
  [[nodiscard]] Vec2 floor_of(std::size_t opening) const {
    const Vec2 middle = middle_of(p_.openings[opening]);
    const draw::Bounds own = bounds_of(p_.openings[opening]);
    for (std::size_t k = 0; k < p_.openings.size(); ++k) {
      if (k == opening || !inside_outline(p_.openings[k], middle)) continue;
      const draw::Bounds in = bounds_of(p_.openings[k]);
      const double gaps[] = {in.left - own.left, own.right - in.right, in.top - own.top, own.bottom - in.bottom};
      const double* widest = std::max_element(std::begin(gaps), std::end(gaps));
      if (*widest < kSamePlace) continue;  // it is this one that lies in the other
      if (widest == gaps) return {in.left - *widest / 2, middle.y};
      if (widest == gaps + 1) return {in.right + *widest / 2, middle.y};
      if (widest == gaps + 2) return {middle.x, in.top - *widest / 2};
      return {middle.x, in.bottom + *widest / 2};
    }
    return middle;
  }

  void shapes() {
    for (const auto* all : {&p_.outlines, &p_.openings, &p_.hidden})
      for (const auto& outline : *all) {
        draw::Polygon polygon;
        for (const Vec2& corner : outline) polygon.points.push_back(at(corner));
        out_.drawing.polygons.push_back(std::move(polygon));
      }
    for (const FaceLine& line : p_.lines) out_.drawing.lines.push_back({at(line.a), at(line.b)});
    for (const FaceHole& hole : p_.holes) out_.drawing.arcs.push_back({at(hole.centre), hole.diameter / 2, 0, 360});
  }

  /// Places that are measured: ends of lines, corners of what is taken out, middles of holes.
  void collect() {
    for (const FaceLine& line : p_.lines) places_.push_back(line.a), places_.push_back(line.b);
    for (const FaceHole& hole : p_.holes) places_.push_back(hole.centre);
    for (const auto& outline : p_.outlines)
      for (const Vec2& corner : outline)
        if (corner.x > p_.from + kSamePlace && corner.x < p_.to - kSamePlace) places_.push_back(corner);
  }

  /// Stations, below the face, the nearest to zero in the first row.
  void along_rows() {
    std::vector<Vec2> rows;
    std::stable_sort(places_.begin(), places_.end(), [](Vec2 a, Vec2 b) { return a.y < b.y; });
    for (const Vec2& place : places_) {
      const bool known =
          std::any_of(rows.begin(), rows.end(), [&](Vec2 row) { return libm::fabs(row.x - place.x) < kSamePlace; });
      if (!known && libm::fabs(place.x) > kSamePlace) rows.push_back(place);
    }
    std::stable_sort(rows.begin(), rows.end(), [](Vec2 a, Vec2 b) { return libm::fabs(a.x) < libm::fabs(b.x); });
    if (rows.size() > kMostRows) rows.resize(kMostRows);
    double offset = -1;
    for (const Vec2& row : rows) {
      Vec2 zero{0, 0}, to = row;
      if (to.x < zero.x) std::swap(zero, to);
      told(zero, to, offset, key(row.x), {1, 0});
      offset -= 1;
    }
  }

  /// Offsets from the reference edge, beside the end where the wood goes on.
  void across_rows() {
    const double edge = p_.reference_below ? 0 : p_.width;
    const bool right = p_.open_right;
    const double side = right ? p_.to : p_.from;
    std::vector<Vec2> rows;
    std::stable_sort(places_.begin(), places_.end(),
                     [&](Vec2 a, Vec2 b) { return libm::fabs(a.x - side) < libm::fabs(b.x - side); });
    const auto add = [&](Vec2 place) {
      const bool known =
          std::any_of(rows.begin(), rows.end(), [&](Vec2 row) { return libm::fabs(row.y - place.y) < kSamePlace; });
      if (!known && libm::fabs(place.y - edge) > kSamePlace) rows.push_back(place);
    };
    for (const Vec2& place : places_) add(place);
    add({side, p_.width - edge});
    std::stable_sort(rows.begin(), rows.end(),
                     [&](Vec2 a, Vec2 b) { return libm::fabs(a.y - edge) < libm::fabs(b.y - edge); });
    if (rows.size() > kMostRows) rows.resize(kMostRows);
    double offset = 1;
    for (const Vec2& row : rows) {
      Vec2 from{side, edge}, to = row;
      if (to.y < from.y) std::swap(from, to);
      // Upward, left of it is x−: beside the right end the rows stand at its right.
      const PatternMeasure measure = gauged(row.y) ? PatternMeasure::kOffset : PatternMeasure::kLength;
      told(from, to, right ? -offset : offset, key(row.y - edge, measure), {0, 1});
      offset += 1;
    }
  }

  /// A line along the timber or a hole's middle lies there.
  [[nodiscard]] bool gauged(double y) const {
    const auto here = [&](double other) { return libm::fabs(other - y) < kSamePlace; };
    return std::any_of(p_.lines.begin(), p_.lines.end(),
                       [&](const FaceLine& line) { return here(line.a.y) && here(line.b.y); }) ||
           std::any_of(p_.holes.begin(), p_.holes.end(), [&](const FaceHole& hole) { return here(hole.centre.y); });
  }

  void askew_line(const FaceLine& line) {
    const double dx = line.b.x - line.a.x, dy = line.b.y - line.a.y, length = libm::hypot(dx, dy);
    if (length < kLeastLine || libm::fabs(dx) < kSamePlace || libm::fabs(dy) < kSamePlace) return;
    const std::string mine = key(length);
    // At the side where the wood goes away: beyond the nearer end of the stretch, below a notch.
    const double middle = (line.a.x + line.b.x) / 2;
    const bool toward_b = p_.at_b || (!p_.at_a && middle > (p_.from + p_.to) / 2);
    const bool left_is_toward_b = dy < 0;  // left of (dx, dy) is (−dy, dx)
    out_.drawing.dimensions.push_back(
        {at(line.a), at(line.b), left_is_toward_b == toward_b ? 0.6 : -0.6, {}, mine, draw::Meaning::kFact});
  }

  const FullSizePattern& p_;
  std::vector<Vec2> places_;
  PatternDrawing out_;
};

}  // namespace

PatternDrawing pattern_dimensions(const FullSizePattern& pattern) { return Figures(pattern).made(); }

}  // namespace bentbook
