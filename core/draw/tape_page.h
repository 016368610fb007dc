#pragma once
/// One face of a long piece laid out for a narrow page, down the page: its start at the top, a tape with running
/// numbers beside it at the right, what is to be done in words at the left. Where nothing is, a break. Pure: a function
/// of the strip, the sizes of its texts and the page. Numbers and words keep the order of what they tell of, so that no
/// leader crosses another; nothing stands on a text and no text on the piece.
///
/// Placing of the numbers: nearest to where they belong by least squares, kept apart: isotonic regression by pooling
/// adjacent violators (Ayer and others, 1955). Source: SOURCES.md, "running dimensions".

#include <string>
#include <vector>

#include "draw/box.h"
#include "draw/drawing.h"
#include "draw/layout.h"
#include "numeric/function_ref.h"

namespace bentbook::draw {

enum class TapeText : std::uint8_t { kNumber, kStrong, kNote };

/// Parts are not broken; a line is wrapped between them.
struct TapeLine {
  std::vector<std::string> parts;
  TapeText size = TapeText::kNote;
};

/// A station of the tape. y: the mark nearest to the tape, where the number's line starts.
struct TapeRow {
  double x = 0, y = 0;
  std::string number;
  std::string tag;  ///< a quiet word under it, "" for none
};

/// What is done between two stations.
struct TapeBlock {
  double from = 0, to = 0;
  std::vector<TapeLine> lines;
};

struct TapeSpan {
  double from = 0, to = 0;
};

/// Inches; x along the piece, y across the page from the piece's left edge.
struct TapeStrip {
  double length = 0, width = 0;
  bool gauge_left = true;         ///< on which side the heavy line of the reference edge stands
  std::vector<TapeRow> rows;      ///< rising in x; the ends among them
  std::vector<TapeBlock> blocks;  ///< rising in their middles
  std::vector<TapeSpan> whole;    ///< no break in these
  std::vector<Polygon> areas;
  std::vector<Line> lines;
  std::vector<Arc> holes;  ///< full circles
};

struct TapeOptions {
  double width = 0, room = 0;  ///< of the page, px; a page is higher where what is held together needs it
  double side = 112;           ///< width of the piece on the page, at most
  double tick = 1;             ///< inches between the tape's ticks
  int long_tick = 12;          ///< of so many ticks one is longer
};

struct TapePlaced {
  std::string text;
  TapeText size = TapeText::kNote;
  Point at;  ///< left and top of its box
  Size extent;
  int row = -1, block = -1;  ///< whose it is
};

/// A page in px, x right, y down.
struct TapePage {
  std::vector<Polygon> areas;
  std::vector<PlacedLine> lines;
  std::vector<PlacedArc> arcs;
  std::vector<TapePlaced> texts;
  double left = 0, right = 0;  ///< the piece's edges
  double numbers = 0;          ///< left edge of the numbers
  double height = 0;
  bool starts = false, ends = false;  ///< the piece's start, its end are on this page
};

using TapeMeasure = FunctionRef<Size(std::string_view text, TapeText size)>;

/// As few pages as can be, at the largest of three scales that needs no more. Where the words at the left have no room
/// beside the piece, which gives way to them by a good part, they stand below it, numbered.
[[nodiscard]] std::vector<TapePage> lay_out_tape(const TapeStrip& strip, const TapeOptions& options,
                                                 TapeMeasure measure);

/// Centres of boxes in order, `gap` apart at least, as near as can be to where they are wanted, none above `top`.
[[nodiscard]] std::vector<double> spread(const std::vector<double>& wanted, const std::vector<double>& heights,
                                         double top, double gap);

}  // namespace bentbook::draw
