#pragma once
/// A face's marks with their tape, drawn over the column.

#include <string>
#include <string_view>

#include "screens/app/context.h"
#include "screens/timber/tape_memory.h"

namespace bentbook::screens {

/// `what` is drawn, with all else that a layout depends on besides the frame: column, text size, words, form of
/// lengths.
[[nodiscard]] std::string tape_key(const Context& context, std::string_view what);

/// As wide as the column. `side`: width of the piece, at most; `room`: height of a page, px.
void lay_out(const Context& context, TapeMemory& kept, double side, double room);

/// What stands over a tape's page, the page itself, and every number and word of it for who cannot see it.
void show_tape(Context& context, const std::string& prefix, const TapeMemory& kept, std::size_t page);
/// The pages of a part, side by side.
void show_part(Context& context, const std::string& prefix, const TapeMemory& kept, std::size_t part);
/// Width of each of so many columns side by side.
[[nodiscard]] float tape_column(float width, std::size_t columns);
/// Height of what stands over it.
[[nodiscard]] float tape_head_height(const Ui& ui);

}  // namespace bentbook::screens
