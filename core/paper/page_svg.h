#pragma once
/// A page, or a drawing of any size, as an SVG file: one user unit is 1 mm, width and height are in mm, so that a print
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

/// `measure`: width and height as the page lies.
[[nodiscard]] std::string page_svg(const Page& page, PageMeasure measure, std::string_view title,
                                   std::string_view language);
/// Groups whose ids are the layers' names, painted in their order.
[[nodiscard]] std::string layers_svg(std::span<const Layer> layers, PageMeasure measure, std::string_view title,
                                     std::string_view language);
/// Width and height of a document's page as it lies.
[[nodiscard]] constexpr PageMeasure measure_of(PageSize size, const Page& page) {
  const PageMeasure upright = measure_of(size);
  return page.lying ? PageMeasure{upright.height, upright.width} : upright;
}

}  // namespace bentbook::paper
