#pragma once
/// The class by which a stroke's line type stands in an SVG file's style. Inside paper/ only.

#include <string_view>

#include "draw/drawing.h"

namespace bentbook {

[[nodiscard]] inline std::string_view stroke_class(draw::Stroke stroke) {
  switch (stroke) {
    case draw::Stroke::kVisible:
      return "visible";
    case draw::Stroke::kHidden:
      return "hidden";
    case draw::Stroke::kCentre:
      return "centre";
    case draw::Stroke::kCut:
      return "cut";
    case draw::Stroke::kThin:
    case draw::Stroke::kScale:
      break;
  }
  return "thin";
}

}  // namespace bentbook
