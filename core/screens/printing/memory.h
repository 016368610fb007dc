#pragma once
/// What printing remembers between frames. Nothing of it is stored.

#include <optional>
#include <string>

#include "printed/printed.h"
#include "screens/desks/asked.h"

namespace bentbook::screens {

struct PrintingMemory {
  PrintedKind what = PrintedKind::kSheets;
  std::optional<paper::PageSize> page;  ///< none: as the book's unit has it
  bool all = false;                     ///< where a timber was come from: all of them all the same
  Asked<PaperFile> file;                ///< on its way to be shared
  std::string name;                     ///< under which it is
};

}  // namespace bentbook::screens
