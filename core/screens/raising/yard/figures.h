#pragma once
/// What stands on drawings of the yard, and what it is called. Keys: raising/drawings.

#include "book/book.h"
#include "raising/drawings/crane_drawing.h"
#include "raising/drawings/site_drawing.h"
#include "words/figures.h"

namespace bentbook::screens {

/// How a chart of that many rows is drawn on a column, px: rows as far apart as fingers want, capacities in a column
/// right of the longest radius. `text`: its size, 1 is usual.
struct ChartSize {
  ChartRoom room;
  float height = 0;  ///< at most
};
[[nodiscard]] ChartSize chart_size(float width, float target, float text, std::size_t rows);

/// What lifts, by its name in the raising: "crane", "crane_two", "telehandler", "gin_pole".
[[nodiscard]] bentbook::FigureText lifter_figure(std::string_view key, const Book& book, std::string_view lifter,
                                                 const Voice& voice);
[[nodiscard]] bentbook::FigureText site_figure(std::string_view key, const Book& book, InYard shown,
                                               const Voice& voice);
/// A piece of gear, by its place in the list.
[[nodiscard]] bentbook::FigureText gear_figure(std::string_view key, const Book& book, std::size_t piece,
                                               const Voice& voice);
/// `longest`: timber of the frame, inches.
[[nodiscard]] bentbook::FigureText truck_figure(std::string_view key, const Book& book, double longest,
                                                const Voice& voice);

}  // namespace bentbook::screens
