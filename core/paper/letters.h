#pragma once
/// How wide printed words are: the advance widths of the app's own letters, which every writer sets them with. A text
/// with a letter that the bold face lacks is set in the regular one.

#include <string>
#include <string_view>
#include <vector>

namespace bentbook::paper {

/// mm that `text` takes in a line whose em is `size` mm. Words of every language that the app speaks, figures, and the
/// small figures of fractions, which stand as on the screen (7⁄8 is one narrow sign).
[[nodiscard]] double text_width(std::string_view text, double size, bool bold);

/// mm that a capital stands over its line.
inline constexpr double kCapital = 0.714;  // of an em, the face's own measure

/// What of a text is set alike, left to right: the figures of a fraction are small, raised before the stroke and
/// lowered behind it; the blank before a fraction is narrow. Empty for a text that is not UTF-8.
struct LetterRun {
  std::string_view text;
  double size = 0;   ///< mm of an em
  double rise = 0;   ///< mm over the line
  double width = 0;  ///< mm
};
/// Their widths add up to text_width().
[[nodiscard]] std::vector<LetterRun> letter_runs(std::string_view text, double size, bool bold);

/// Whether a text is set in the bold face where bold is asked for.
[[nodiscard]] bool set_bold(std::string_view text, bool bold);
/// Whether the face that a text is set in has all of its letters; one that it lacks is printed as an empty sign.
[[nodiscard]] bool has_letters(std::string_view text, bool bold);

/// The text in lines of at most `width` mm, broken at blanks and at its line ends; never inside a measure
/// (12′ 7 3⁄8″). A word that is wider stands alone.
[[nodiscard]] std::vector<std::string> wrapped_lines(std::string_view text, double size, bool bold, double width);
/// The text, or as much of its beginning as goes into `width` mm with three dots behind it.
[[nodiscard]] std::string shortened(std::string_view text, double size, bool bold, double width);

}  // namespace bentbook::paper
