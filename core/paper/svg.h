#pragma once
/// A drawing as an SVG file, true to the millimetre: one user unit is 1 mm, width and height are in mm, so that a print
/// at 100 % measures right. Line types by ISO 128, dimensions by ISO 129 with slash ends.

#include <string>
#include <string_view>

#include "draw/drawing.h"
#include "numeric/function_ref.h"

namespace bentbook {

struct SvgSheet {
  double scale = 1;  ///< paper over timber: 1 is full size
  std::string title;
  std::string_view language = "en";
};

/// `figure` gives the text of each key. False from `progress` (per mille) stops: an empty string is returned.
[[nodiscard]] std::string write_svg(const draw::Drawing& drawing, const SvgSheet& sheet,
                                    FunctionRef<std::string(std::string_view key)> figure,
                                    FunctionRef<bool(int)> progress);

}  // namespace bentbook
