#pragma once
/// Printed pages as plain values: what stands where, in millimetres from the page's left and top edges, x right, y
/// down. Writers (PDF, SVG) put the same list on paper; they place nothing. Line types and widths by ISO 128.

#include <cstdint>
#include <string>
#include <vector>

#include "draw/drawing.h"
#include "paper/code.h"

namespace bentbook::paper {

enum class PageSize : std::uint8_t { kA4, kLetter };
/// Width and height in mm, upright. Source: SOURCES.md, "paper sizes".
struct PageMeasure {
  double width = 210, height = 297;
};
/// `lying`: landscape, width and height change places.
[[nodiscard]] constexpr PageMeasure measure_of(PageSize size, bool lying = false) {
  const PageMeasure upright = size == PageSize::kA4 ? PageMeasure{210, 297} : PageMeasure{215.9, 279.4};
  return lying ? PageMeasure{upright.height, upright.width} : upright;
}
/// An upright part of a page.
struct Window {
  double left = 0, top = 0, right = 0, bottom = 0;
  [[nodiscard]] bool holds(draw::Point p) const { return p.x >= left && p.x <= right && p.y >= top && p.y <= bottom; }
};

enum class Align : std::uint8_t { kLeft, kMiddle, kRight };

/// One line of words. `at`: on its baseline, at the end or middle that `align` says; `size`: mm of an em, of which
/// capitals take 0.71; turned about `at`, anticlockwise.
struct PageText {
  draw::Point at;
  double size = 3.5;
  bool bold = false;
  Align align = Align::kLeft;
  double turn_deg = 0;
  std::string text;
};
/// Dashed and as wide as its type is, unless a width (mm) is given.
struct PageLine {
  draw::Point a, b;
  draw::Stroke stroke = draw::Stroke::kVisible;
  double width = 0;
};
struct PageArc {
  draw::Point centre;
  double radius = 0, from_deg = 0, to_deg = 360;  ///< anticlockwise as seen
  draw::Stroke stroke = draw::Stroke::kVisible;
};
struct PagePolygon {
  std::vector<draw::Point> points;
  draw::Fill fill = draw::Fill::kNone;
  bool outlined = true;
  draw::Stroke stroke = draw::Stroke::kVisible;
};
/// A QR code, its quiet zone left free by whoever places it.
struct PageCode {
  draw::Point at;  ///< left and top of its first module
  double module = 0.5;
  Code code;
};

/// Painted in this order: polygons, lines, arcs, codes, texts.
struct Page {
  bool lying = false;  ///< landscape: see measure_of()
  std::vector<PagePolygon> polygons;
  std::vector<PageLine> lines;
  std::vector<PageArc> arcs;
  std::vector<PageCode> codes;
  std::vector<PageText> texts;
};

/// Pages of one file. `title` and `language` are for the file's own records.
struct Document {
  PageSize size = PageSize::kA4;
  std::string title, language = "en";
  std::vector<Page> pages;
};

}  // namespace bentbook::paper
