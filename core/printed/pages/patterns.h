#pragma once
/// Full-size patterns on paper: at 1:1 over joined pages, and as files for a plotter, a router or a laser cutter.

#include <string>
#include <vector>

#include "frame/sheet/full_size.h"
#include "printed/pages/pattern_sheet.h"
#include "printed/printed.h"

namespace bentbook {

/// Where a pattern is laid on. `station`: of its zero, inches from end A's tip.
struct PatternPlace {
  int timber = 0;  ///< in Frame::timbers
  Face face = Face::kTop;
  double station = 0;
  std::vector<FullSizePattern::Work> work;  ///< of that timber
};
/// One sheet of paper and all the places that it serves, in the frame's order.
struct PatternGroup {
  FullSizePattern pattern;
  std::vector<PatternPlace> places;
};
/// Of the timbers that `options` names, or of all. Errors as print().
[[nodiscard]] Result<std::vector<PatternGroup>> pattern_groups(const Book& book, const BookModel& model,
                                                               const PrintOptions& options);

/// Each pattern over as many pages as it takes, each page with two bars to measure. Errors as print().
[[nodiscard]] Result<paper::Document> print_patterns(const Book& book, const BookModel& model,
                                                     const PrintOptions& options, const Voice& voice);

enum class PatternForm : std::uint8_t { kDxf, kSvg };
struct PatternFile {
  std::string name, bytes;
};
/// One file a pattern, at 1:1, in the book's unit. Layers as pattern_sheet.h has them, hatching left out; then "check",
/// two bars to measure, and "notes", the words that stand over a pattern's pages.
[[nodiscard]] Result<std::vector<PatternFile>> pattern_files(const Book& book, const BookModel& model,
                                                             const PrintOptions& options, PatternForm form,
                                                             const Voice& voice);

}  // namespace bentbook
