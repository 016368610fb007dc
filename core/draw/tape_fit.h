#pragma once
/// How a strip is fitted to pages before it is drawn: the page's columns, words wrapped to theirs, and which stretches
/// stand on which page. Inside draw/ only; tape_page.h is what others use.

#include <string>
#include <utility>
#include <vector>

#include "draw/tape_page.h"

namespace bentbook::draw {

// px
inline constexpr double kTapeBreak = 40;      ///< height of a break
inline constexpr double kTapeLead = 14;       ///< of the piece that is kept at each side of a break
inline constexpr double kTapeRowGap = 5;      ///< between two numbers
inline constexpr double kTapeBlockGap = 14;   ///< between the words of two blocks
inline constexpr double kTapeLineGap = 3;     ///< between two lines of words
inline constexpr double kTapeToNumbers = 38;  ///< from the piece to the numbers: tape, then the leader's slant
inline constexpr double kTapeToWords = 16;    ///< from the words to the piece

/// The page's columns: words, piece, tape, numbers.
struct TapeColumns {
  double side = 0, scale = 0;  ///< of the piece; px per inch
  double left = 0, right = 0;  ///< its edges
  double words = 0;            ///< width of the words' column
  TapeText number = TapeText::kNumber;
  bool numbered = false;  ///< the words stand below, their numbers here
};

struct TapeWords {
  std::vector<std::pair<std::string, TapeText>> lines;
  double height = 0;
};

/// Stations first to last (in TapeStrip::rows), drawn without a break.
struct TapeIsland {
  std::size_t first = 0, last = 0;
};

struct TapeFit {
  TapeColumns columns;
  std::vector<TapeWords> words;  ///< of each block
  std::vector<std::vector<TapeIsland>> pages;
};

[[nodiscard]] TapeFit fit_tape(const TapeStrip& strip, const TapeOptions& options, TapeMeasure measure);

/// A block's lines, none wider than `width` where a line can be broken.
[[nodiscard]] TapeWords wrap_words(const TapeBlock& block, double width, TapeMeasure measure);
/// Height of a station's number with its tag.
[[nodiscard]] double row_height(const TapeRow& row, TapeText number, TapeMeasure measure);
/// Blocks whose middle lies in [from, to).
[[nodiscard]] std::vector<std::size_t> blocks_between(const TapeStrip& strip, double from, double to);

/// What stands for a block's words where they stand below the piece: letters, since faces have numbers. "a" to "z",
/// then "aa".
[[nodiscard]] std::string block_letter(std::size_t block);

}  // namespace bentbook::draw
