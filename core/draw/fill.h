#pragma once
/// What fills a polygon on a drawing: strokes, or triangles.

#include <cstdint>
#include <span>
#include <vector>

#include "draw/drawing.h"

namespace bentbook::draw {

/// The parallel strokes at 45° that fill a polygon (px), `spacing` apart; `down` = true falls to the right.
struct Segment {
  Point a, b;
};
[[nodiscard]] std::vector<Segment> hatch(std::span<const Point> polygon, double spacing, bool down);
/// Triangles (index triples) of a simple polygon, either sense of rotation.
[[nodiscard]] std::vector<std::uint16_t> triangles(std::span<const Point> polygon);

}  // namespace bentbook::draw
