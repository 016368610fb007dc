#pragma once
/// Timbers as comma-separated values, for spreadsheets and for lists copied off a drawing.
///
/// The first line names the columns, in any order; the separator is the comma, semicolon or tab that stands there. A
/// line with an empty `feature` is a timber; a line with a `feature` belongs to the timber of its `mark`, which stands
/// above it, and its timber columns are not looked at.
///
///   mark            needed; no other timber of the list has it
///   kind            words of keys.h; empty: other
///   breadth depth   needed; nominal section, also the design and actual one where these are empty:
///   design_breadth design_depth actual_breadth actual_depth
///   length          needed; tip to tip
///   a_angle a_tilt b_angle b_tilt    end cuts in degrees off square: angle seen from the side, positive where the top
///                   is longer; tilt seen from the top, positive where the far face is longer
///   bow             crown up positive
///   top_reference side_reference     1 or 3, 2 or 4; empty: 1 and 2
///   species         a name that the book knows; empty: the first
///   x y z turn rise roll             where end A's tip stands and how the timber lies; x, y and z empty: nowhere
///   feature         slot, mortise, housing, hole, tenon, lap (hand_timber.h says what the measures mean)
///   face            1 to 4
///   station offset along across feature_depth diameter
///
/// Lengths as they are typed (parse.h), bare numbers in the unit given. Columns of other names are passed over.

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "frame/plan.h"
#include "measure/parse.h"

namespace bentbook {

/// One bad line: its number in the file (from 1), the column, and what is wrong there (`at`: byte in the cell).
struct CsvTrouble {
  int line = 1;
  std::string column;
  Error error;
};

/// The good timbers, each with all of its features: a timber of which any line is bad is left out whole.
struct CsvTimbers {
  std::vector<HandTimber> timbers;
  std::vector<int> lines;            ///< the line of each timber
  std::vector<CsvTrouble> troubles;  ///< in the order of lines
};

/// Never fails: a file without a readable first line is one trouble and no timbers. Reasons besides those of parse.h
/// and solve_hand_timber: kMissing (needed column or cell; feature without its timber), kConflict (mark twice; unknown
/// word in "kind", "species", "feature", "face"), kSyntax (quotes that do not close; more cells than columns).
[[nodiscard]] CsvTimbers read_timbers_csv(std::string_view bytes, BareUnit bare, std::span<const Species> species);

}  // namespace bentbook
