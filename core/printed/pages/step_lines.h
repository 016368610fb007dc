#pragma once
/// What one step of work is set to, as it is said on paper: the numbers of the timber's own card on the screen, none of
/// them twice.

#include <string>
#include <vector>

#include "book/book.h"
#include "shop/steps.h"
#include "words/words.h"

namespace bentbook {

/// A number with what it is, and a quieter word behind it.
struct StepLine {
  std::string name, value, note;
  bool large = false;  ///< read at arm's length
};
/// In the order in which they are wanted: what is marked or stopped at, the saw's angles as its own scale is set, from
/// how many faces, bores, the rest. Nothing leans, tilts or turns by less than is said.
[[nodiscard]] std::vector<StepLine> step_lines(const WorkStep& step, const Sheet& sheet, const Saw& saw,
                                               const Voice& voice);

}  // namespace bentbook
