#pragma once
/// How wide a stroke is on paper and how it is dashed, all in black. Inside paper/ only. Source: SOURCES.md, "drawing".

#include <array>

#include "draw/drawing.h"

namespace bentbook::paper {

/// mm. Wide lines are twice as wide as narrow ones; the line to cut is wider still, since paper has no colour for it.
inline constexpr double kWideLine = 0.5, kNarrowLine = 0.25, kCutLine = 0.7;
inline constexpr double kHatchSpacing = 2.25;  ///< mm between the strokes of a hatch
inline constexpr double kShadeGrey = 0.88;     ///< of white: what lands, light enough to read a figure on

struct LineKind {
  double width = kNarrowLine;
  std::array<double, 4> dashes{};  ///< mm: drawn, left, drawn, left
  int dash_count = 0;              ///< 0: continuous
};
[[nodiscard]] constexpr LineKind line_kind(draw::Stroke stroke) {
  switch (stroke) {
    case draw::Stroke::kVisible:
      return {kWideLine, {}, 0};
    case draw::Stroke::kHidden:
      return {kNarrowLine, {3, 0.75}, 2};
    case draw::Stroke::kCentre:
      return {kNarrowLine, {6, 0.75, 0.25, 0.75}, 4};
    case draw::Stroke::kCut:
      return {kCutLine, {}, 0};
    case draw::Stroke::kThin:
    case draw::Stroke::kScale:
      break;
  }
  return {};
}

}  // namespace bentbook::paper
