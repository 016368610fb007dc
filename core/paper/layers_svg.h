#pragma once
/// A drawing of any size as an SVG file in layers: one user unit is 1 mm, width and height are in mm, so that a print
/// or a plot at 100 % measures right. Words stay words, each run of letters where the app's own widths put it.

#include <span>
#include <string>
#include <string_view>

#include "paper/page.h"

namespace bentbook::paper {

/// What stands together in a file for a plotter, router or laser, under a name.
struct Layer {
  std::string_view name;
  Page page;
};

/// Groups whose ids are the layers' names, painted in their order. `measure`: of the drawing. Codes are not drawn.
[[nodiscard]] std::string layers_svg(std::span<const Layer> layers, PageMeasure measure, std::string_view title,
                                     std::string_view language);

}  // namespace bentbook::paper
