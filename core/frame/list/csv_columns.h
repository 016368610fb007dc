#pragma once
/// Inside csv: the columns of a list of timbers, in the order in which they are written.

#include <array>
#include <string_view>

namespace bentbook::csv {

enum class Column {
  kMark,
  kKind,
  kBreadth,
  kDepth,
  kDesignBreadth,
  kDesignDepth,
  kActualBreadth,
  kActualDepth,
  kLength,
  kAngleA,
  kTiltA,
  kAngleB,
  kTiltB,
  kBow,
  kTopReference,
  kSideReference,
  kSpecies,
  kX,
  kY,
  kZ,
  kTurn,
  kRise,
  kRoll,
  kFeature,
  kFace,
  kStation,
  kOffset,
  kAlong,
  kAcross,
  kFeatureDepth,
  kDiameter,
};
inline constexpr std::array<std::string_view, 31> kColumns = {
    "mark",    "kind",    "breadth", "depth",   "design_breadth", "design_depth",  "actual_breadth", "actual_depth",
    "length",  "a_angle", "a_tilt",  "b_angle", "b_tilt",         "bow",           "top_reference",  "side_reference",
    "species", "x",       "y",       "z",       "turn",           "rise",          "roll",           "feature",
    "face",    "station", "offset",  "along",   "across",         "feature_depth", "diameter"};

constexpr std::string_view name_of(Column column) { return kColumns[static_cast<std::size_t>(column)]; }

}  // namespace bentbook::csv
