#pragma once
/// What one step of work is set to, as the timber's card says it and its sheet on paper, none of its numbers twice.

#include <string>
#include <vector>

#include "cut/saw.h"
#include "frame/sheet/sheet.h"
#include "shop/steps.h"
#include "words/words.h"

namespace bentbook {

enum class StepLineKind : std::uint8_t {
  kWord,    ///< no number: the mark that is written, or with whom it is tried. Read at arm's length as well
  kLarge,   ///< read at arm's length
  kNumber,  ///< a quieter one
  kSquare,  ///< a word in place of angles, with how many faces the saw goes in from where that is more than one
  kPass,    ///< from how many faces: no number
  kBores,   ///< a station, and behind it how far across its bores are
};

/// A number with what it is, and a quieter word behind it.
struct StepLine {
  StepLineKind kind = StepLineKind::kNumber;
  std::string name, value{}, note{};
  StepNumberName number = StepNumberName::kAt;  ///< of kLarge and kNumber
  int time = 1;                                 ///< which of that name, from 1
};
/// In the order in which they are wanted: what is marked or stopped at, the saw's angles as its own scale is set, from
/// how many faces, bores, the rest. Nothing leans, tilts or turns by less than is said. `sheet`: of the step's timber.
[[nodiscard]] std::vector<StepLine> step_lines(const WorkStep& step, const Sheet& sheet, const Saw& saw,
                                               const Voice& voice);

}  // namespace bentbook
