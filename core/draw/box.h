#pragma once
/// Boxes that stand on a sheet, turned or not. Coordinates are px, x right, y down; angles in radians, clockwise on
/// screen.

#include <array>
#include <optional>
#include <span>

#include "draw/drawing.h"

namespace bentbook::draw {

/// `by` times `direction` farther.
constexpr Point moved(Point p, Point direction, double by) { return {p.x + direction.x * by, p.y + direction.y * by}; }

/// Neither coordinate is infinite or no number.
constexpr bool finite(Point p) { return p.x - p.x == 0 && p.y - p.y == 0; }

struct Size {
  double w = 0, h = 0;
};

/// Rectangle with its centre at `centre`, its sides w and h, turned by `angle`.
struct Box {
  Point centre;
  double w = 0, h = 0;
  double angle = 0;
};

/// Upright bounds; empty as made.
struct Bounds {
  double left = 1e300, top = 1e300, right = -1e300, bottom = -1e300;
  void add(Point p);
  void add(const Box& box);
  [[nodiscard]] bool empty() const { return left > right; }
  [[nodiscard]] double width() const { return right - left; }
  [[nodiscard]] double height() const { return bottom - top; }
};

[[nodiscard]] std::array<Point, 4> corners(const Box& box);
/// The upright box around it.
[[nodiscard]] Box upright(const Box& box);
/// True if the two have a point in common that is inside both (touching edges do not count).
/// Method: separating axes of the two boxes' sides.
[[nodiscard]] bool overlap(const Box& a, const Box& b);
/// Shares of the way along a segment.
struct Stretch {
  double from = 0, to = 1;
};
/// What of the segment a–b lies inside the box; nothing where it has no point inside.
[[nodiscard]] std::optional<Stretch> stretch_inside(const Box& box, Point a, Point b);
/// True if the segment a–b has a point inside the box.
[[nodiscard]] bool crosses(const Box& box, Point a, Point b);
/// A box of that size for a word about what lies at `at`: the nearest within `sheet` that overlaps none of `keep`;
/// nothing where none within `farthest` does.
[[nodiscard]] std::optional<Box> box_beside(Point at, Size size, const Bounds& sheet, std::span<const Box> keep,
                                            double farthest);
/// The box with `by` added on every side.
[[nodiscard]] Box grown(const Box& box, double by);

}  // namespace bentbook::draw
