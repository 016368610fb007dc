#pragma once
/// One measure among the tokens of an entry: 12' 7-3/8", 7 3/8, 12-7, 3.2 m. Part of the expression reader.

#include <vector>

#include "measure/expression.h"
#include "measure/tokens.h"

namespace bentbook {

/// Reads the longest quantity that starts at tokens[pos] and moves pos behind it. `after_slash`: a divisor glued to
/// its slash (24/3/8 divides twice), which is a plain number even where a fraction could be read.
[[nodiscard]] Result<Value> read_quantity(const std::vector<Token>& tokens, std::size_t& pos, BareUnit bare,
                                          bool after_slash);

/// Counts in one bare unit.
[[nodiscard]] std::int64_t counts_per(BareUnit bare);

}  // namespace bentbook
