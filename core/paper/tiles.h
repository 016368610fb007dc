#pragma once
/// A drawing of any size at full size over pages: in rows and columns that lie over each other along their edges, with
/// crosses that fall on each other where two sheets are laid right. A drawing is a Page of its own measures: mm, x
/// right, y down from its left and top.

#include <string>

#include "paper/page.h"

namespace bentbook::paper {

/// mm that two neighbours both show. In its middle one of them is cut off, along a dashed line.
inline constexpr double kTileOverlap = 10;
/// mm along a page's edges that stay free.
inline constexpr double kTileMargin = 12;
/// mm, half of a cross's arms: both neighbours show it whole.
inline constexpr double kCrossArm = 4;

/// mm that each page keeps for words over, left of and under its window.
struct TileFrame {
  double top = 0, left = 0, bottom = 0;
};

/// Which part of the drawing each page shows.
struct TilePlan {
  PageSize size = PageSize::kA4;
  bool lying = false;
  int columns = 1, rows = 1;
  draw::Point corner;            ///< left and top of the window on its page
  double width = 0, height = 0;  ///< of the window
  draw::Point start;             ///< of the drawing: left and top of the first window
  [[nodiscard]] int pages() const { return columns * rows; }
  /// What of the drawing the page shows; column and row from 0.
  [[nodiscard]] Window window(int column, int row) const;
  /// Where the neighbours before and after are joined, in the drawing.
  [[nodiscard]] double join_x(int before) const;
  [[nodiscard]] double join_y(int before) const;
};
/// Upright or lying, whichever takes fewer pages; the drawing in the middle of them.
[[nodiscard]] TilePlan plan_tiles(PageSize size, double width, double height, const TileFrame& frame);

/// Columns by letters, rows by numbers: "A1", "B3".
[[nodiscard]] std::string tile_name(int column, int row);

/// The page: its part of the drawing, and the crosses, dashed lines and neighbours' names where others join it. Words
/// that would stand over a join are moved onto the page that has most of them.
[[nodiscard]] Page tile_page(const Page& drawing, const TilePlan& plan, int column, int row);

/// All pages small, this one filled: as large as `room` lets them be, at its right and top.
void add_tile_map(Page& page, const TilePlan& plan, int column, int row, Window room);

/// Two bars of `side` mm from one corner, one to the right and one up, to be measured: both must be `said` long.
void add_check_bars(Page& page, draw::Point corner, double side, const std::string& said);

}  // namespace bentbook::paper
