#pragma once
/// A drawing as a DXF file of release 12 (AC1009), which every program that reads DXF reads: LINE, CIRCLE, ARC,
/// POLYLINE and TEXT on layers of our names, at 1:1. That release has no word for the unit; the drawing says it.
/// Source: SOURCES.md, "DXF".

#include <span>
#include <string>
#include <string_view>

#include "paper/layers_svg.h"

namespace bentbook::paper {

/// What one unit of the file is.
enum class DxfUnit : std::uint8_t { kMm, kInch };

/// Layers as in layers_svg; `zero`: what of the drawing (mm, y down) is the file's 0, 0; its y runs up. Outlines of
/// polygons are closed polylines, filled ones too; hatching is left out, codes are not drawn. `note`: a comment at the
/// head of the file.
[[nodiscard]] std::string write_dxf(std::span<const Layer> layers, draw::Point zero, DxfUnit unit,
                                    std::string_view note);

}  // namespace bentbook::paper
