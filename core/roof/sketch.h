#pragma once
/// Inside the rafter's drawings: a Drawing that is filled in a side's own axes and lands where that side stands, the
/// right side mirrored.

#include <initializer_list>
#include <string>
#include <utility>
#include <vector>

#include "draw/drawing.h"
#include "roof/rafter.h"

namespace bentbook {

class Sketch {
 public:
  /// x' = origin.x ± x (− on the right), y' = origin.y + y.
  Sketch(Side side, draw::Point origin) : right_(side == Side::kRight), origin_(origin) {}

  void stand(Side side, draw::Point origin) {
    right_ = side == Side::kRight;
    origin_ = origin;
  }
  [[nodiscard]] draw::Point at(double x, double y) const { return {origin_.x + (right_ ? -x : x), origin_.y + y}; }
  [[nodiscard]] draw::Point at(XY p) const { return at(p.x, p.y); }

  void line(XY a, XY b, draw::Stroke stroke) { drawing.lines.push_back({at(a), at(b), stroke}); }
  void area(const std::vector<XY>& points, draw::Fill fill, draw::Stroke stroke = draw::Stroke::kVisible,
            bool outlined = true);
  void box(double x0, double y0, double x1, double y1, draw::Fill fill) {
    area({{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}, fill);
  }
  /// `offset` as on the left side: mirrored, left of a→b becomes right of it.
  void dimension(XY a, XY b, double offset, std::string key, draw::Meaning meaning) {
    drawing.dimensions.push_back({at(a), at(b), right_ ? -offset : offset, {}, std::move(key), meaning});
  }
  /// Level or plumb size between two points that do not lie so.
  void dimension_along(XY a, XY b, XY along, double offset, std::string key, draw::Meaning meaning);
  void angle(XY vertex, double from_deg, double to_deg, double row, std::string key, draw::Meaning meaning);
  void note(XY where, std::string key, draw::Meaning meaning) {
    drawing.notes.push_back({at(where), std::move(key), meaning});
  }
  /// A rafter's outline: its two edges visible, its ends and notches by `ends`; where it was clipped upright at an x of
  /// `broken_at`, a thin line.
  void timber(const std::vector<XY>& outline, const Rafter& rafter, draw::Stroke ends,
              std::initializer_list<double> broken_at = {});

  draw::Drawing drawing;

 private:
  bool right_;
  draw::Point origin_;
};

[[nodiscard]] std::vector<XY> outline_of(const Rafter& rafter);
/// The part of a simple polygon with dot(p, normal) <= limit.
[[nodiscard]] std::vector<XY> clipped(const std::vector<XY>& polygon, XY normal, double limit);
[[nodiscard]] std::string with_side(const char* stem, Side side);

}  // namespace bentbook
