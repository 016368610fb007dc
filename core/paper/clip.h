#pragma once
/// What of a drawing lies in an upright window. Coordinates as on a page: mm, x right, y down. Inside paper/ only.

#include <optional>
#include <vector>

#include "paper/page.h"

namespace bentbook::paper {

/// The part of a–b that lies in it. Source: SOURCES.md, "clipping" (Liang and Barsky).
[[nodiscard]] std::optional<PageLine> clipped_line(const PageLine& line, const Window& window);
/// The parts of an arc that lie in it, in order; a circle that lies in it whole stays one piece.
[[nodiscard]] std::vector<PageArc> clipped_arc(const PageArc& arc, const Window& window);
/// Its area in the window; edges along the window are new ones. Source: SOURCES.md, "clipping" (Sutherland and
/// Hodgman).
[[nodiscard]] std::vector<draw::Point> clipped_area(std::vector<draw::Point> polygon, const Window& window);

}  // namespace bentbook::paper
