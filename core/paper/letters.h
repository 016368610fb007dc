#pragma once
/// How wide printed words are: the advance widths of the app's own letters, which every writer sets them with.

#include <string_view>

namespace bentbook::paper {

/// mm that `text` takes in a line whose em is `size` mm. Words of every language that the app speaks, figures, and the
/// small figures of fractions, which stand as on the screen (7⁄8 is one narrow sign).
[[nodiscard]] double text_width(std::string_view text, double size, bool bold);

}  // namespace bentbook::paper
