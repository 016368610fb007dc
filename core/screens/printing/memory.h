#pragma once
/// What printing remembers between frames. Nothing of it is stored.

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "printed/pages/patterns.h"
#include "screens/desks/asked.h"

namespace bentbook::screens {

struct PrintingMemory {
  PrintedKind what = PrintedKind::kSheets;
  std::optional<paper::PageSize> page;  ///< none: as the book's unit has it
  int labels = 0;                       ///< index in label_sheets() of that page size, 0 being plain paper
  bool all = false;                     ///< where a timber was come from: all of them all the same
  Asked<PaperFile> file;                ///< on its way to be shared
  std::string name;                     ///< under which it is
  /// What one timber's patterns are called as files, for one frame. They are written at the tap, in the unit of then.
  struct Files {
    std::shared_ptr<const Result<Frame>> of;
    std::string mark;
    std::vector<std::string> stems;  ///< names without their kind
  } files;
};

}  // namespace bentbook::screens
