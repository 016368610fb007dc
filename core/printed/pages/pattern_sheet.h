#pragma once
/// A full-size pattern as a drawing at 1:1, in layers by what a tool does with them.

#include <string>
#include <vector>

#include "frame/sheet/full_size.h"
#include "paper/layers_svg.h"
#include "words/words.h"

namespace bentbook {

/// mm, x right, y down; the layers in the order in which they are painted. The pattern's zero on the lower of the
/// face's two edges stands at `zero`.
struct PatternLayers {
  double width = 0, height = 0;
  draw::Point zero;
  std::vector<paper::Layer> layers;
  /// All layers as one drawing.
  [[nodiscard]] paper::Page whole() const;
};

/// Layers: "waste" hatching; "reference" a heavy line along the reference edge; "wood" closed outlines of what stays;
/// "opening" closed outlines of recesses that do not go through; "cut" lines to cut to; "drill" holes; "mark" zero,
/// middles of holes, what is cut from other faces; "measure" dimensions; "words" whose it is and where end A lies.
/// `marks`: the timbers', as they stand on the pattern itself.
[[nodiscard]] PatternLayers pattern_sheet(const FullSizePattern& pattern, std::string_view marks, const Voice& voice);

}  // namespace bentbook
