#pragma once
/// A pattern as a drawing, in layers by what a tool does with them: at 1:1, or smaller as a detail of a timber's sheet.

#include <string>
#include <string_view>
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

/// How it is drawn.
struct PatternLook {
  double scale = 1;       ///< mm on paper for a mm of wood
  double row = 8;         ///< mm from one line of dimensions to the next
  bool a_up = false;      ///< end A on top, as a face stands on a timber's sheet; else at the left
  bool as_taped = false;  ///< figures as they stand beside the sheet's tape (words/face_words.h)
};

/// Layers: "waste" hatching; "reference" a heavy line along the reference edge; "wood" closed outlines of what stays;
/// "opening" closed outlines of recesses that do not go through; "cut" lines to cut to; "drill" holes; "mark" zero,
/// middles of holes, what is cut from other faces; "measure" dimensions; "words" whose it is and where end A lies.
/// `marks`: the timbers', as they stand on the pattern itself; with none there are no "words".
[[nodiscard]] PatternLayers pattern_sheet(const FullSizePattern& pattern, std::string_view marks, const Voice& voice,
                                          const PatternLook& look = {});

/// Adds what is cut there, each word once.
void add_work_names(std::vector<std::string_view>& names, const Timber& timber,
                    const std::vector<FullSizePattern::Work>& work, Language language);
/// "Tenon, Peg hole".
[[nodiscard]] std::string names_text(const std::vector<std::string_view>& names);
/// Of which face a pattern is, or of two that mirror each other, and from where it is measured: end A's tip, end B's,
/// or a zero line between them.
struct PatternSpot {
  Face face = Face::kTop;
  bool turned = false, at_a = false, at_b = false;
  friend bool operator==(const PatternSpot&, const PatternSpot&) = default;
};
/// "Face 2, zero line 7′ 2″ from end A", with as many places as are told; "Face 1, 3, from the tip of end B".
[[nodiscard]] std::string pattern_where_text(const PatternSpot& spot, std::string_view at, Language language);

}  // namespace bentbook
