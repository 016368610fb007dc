#pragma once
/// How wide a stroke is and how it is dashed on paper, mm: line types of ISO 128. Source: SOURCES.md, "drawing".

#include <span>

#include "draw/drawing.h"

namespace bentbook::paper {

struct StrokeStyle {
  double width = 0.25;
  std::span<const double> dashes;  ///< drawn and left out by turns; empty: continuous
};

inline constexpr double kHiddenDashes[] = {4, 1.5}, kCentreDashes[] = {9, 1.5, 0.5, 1.5};

[[nodiscard]] constexpr StrokeStyle style_of(draw::Stroke stroke) {
  switch (stroke) {
    case draw::Stroke::kVisible:
    case draw::Stroke::kCut:
      return {0.5, {}};
    case draw::Stroke::kHidden:
      return {0.25, kHiddenDashes};
    case draw::Stroke::kCentre:
      return {0.18, kCentreDashes};
    case draw::Stroke::kThin:
    case draw::Stroke::kScale:
      break;
  }
  return {0.25, {}};
}

}  // namespace bentbook::paper
