#pragma once
/// One drawing list for screen and paper. Coordinates are inches in the drawing's own plane, x right, y up; the canvas
/// or the paper writer places and scales it (Source: SOURCES.md, "drawing"). Line types follow ISO 128, dimensions ISO
/// 129 (slash ends, as on timber drawings).

#include <cstdint>
#include <string>
#include <vector>

namespace bentbook::draw {

struct Point {
  double x = 0, y = 0;
  friend constexpr bool operator==(const Point&, const Point&) = default;
};

enum class Stroke : std::uint8_t {
  kVisible,  ///< thick continuous
  kHidden,   ///< dashed
  kCentre,   ///< long dash dot
  kThin,     ///< thin continuous (construction, extension lines)
  kCut,      ///< the one cut line
  kScale,    ///< graduations of a saw or a tape
};
enum class Fill : std::uint8_t {
  kNone,
  kSection,  ///< hatch at 45°
  kWaste,    ///< crossed hatch
  kPaper,
  kShade,  ///< a light tint: where something lands
  kInk,    ///< solid: a reference edge
};

struct Line {
  Point a, b;
  Stroke stroke = Stroke::kVisible;
};
struct Arc {
  Point centre;
  double radius = 0, from_deg = 0, to_deg = 0;
  Stroke stroke = Stroke::kThin;
};
struct Polygon {
  std::vector<Point> points;
  Stroke stroke = Stroke::kVisible;
  Fill fill = Fill::kNone;
  bool outlined = true;
};

/// What a figure on the drawing is for: a value the user gave (can be tapped) or an answer, or a quiet fact.
enum class Meaning : std::uint8_t { kGiven, kAnswer, kFact };

/// A linear dimension between a and b, its line set off by `offset` to the left of a→b (inches of the sheet are scaled;
/// offset is in steps of the canvas' dimension spacing: 1 = first row, 2 = second, negative = right side).
/// `along` (unit vector) measures the projection on that direction; {0,0} measures a→b itself.
struct Dimension {
  Point a, b;
  double offset = 1;
  Point along;
  std::string key;
  Meaning meaning = Meaning::kFact;
  bool bare = false;  ///< the line alone, without end strokes: a leg of a triangle
};
/// An angle at `vertex` from ray `from_deg` to `to_deg`, drawn as an arc; radius in dimension rows.
struct AngleDimension {
  Point vertex;
  double from_deg = 0, to_deg = 0;
  double row = 2;
  std::string key;
  Meaning meaning = Meaning::kFact;
};
enum class Stands : std::uint8_t {
  kAt,     ///< on its point
  kAside,  ///< clear of what is drawn, joined to its point by a leader that ends there in a dot (ISO 128)
};
/// A figure for a point.
struct Note {
  Point at;
  std::string key;
  Meaning meaning = Meaning::kFact;
  Stands stands = Stands::kAt;
};

/// `key` in dimensions and notes names the figure; the screen gives its text, name and, for kGiven, its editor.
struct Drawing {
  std::vector<Polygon> polygons;
  std::vector<Line> lines;
  std::vector<Arc> arcs;
  std::vector<Dimension> dimensions;
  std::vector<AngleDimension> angles;
  std::vector<Note> notes;
};

}  // namespace bentbook::draw
