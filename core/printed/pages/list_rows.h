#pragma once
/// Inside the lists: what stands on them, before it is a page or a file.

#include <string>
#include <vector>

#include "book/book.h"
#include "model/book_model.h"
#include "shop/workplace.h"
#include "words/words.h"

namespace bentbook {

/// Timbers that are cut alike, as the frame has them.
struct CutRow {
  int timber = 0;            ///< the first of them
  std::vector<int> timbers;  ///< all
};
[[nodiscard]] std::vector<CutRow> cut_rows(const Frame& frame);

/// One setting at a workplace, and what is done with it.
struct SettingRow {
  Workplace place = Workplace::kSaw;
  SawGroup saw;      ///< at the saw: its setting
  std::string said;  ///< elsewhere: the work and the tool, "Bore for the pegs, 1″"
  std::vector<WaitingCut> cuts;
};
/// As if nothing were done yet, in the order of the workplaces; the saw's in an order with few changes. What is neither
/// sawn, bored nor slotted has no setting.
[[nodiscard]] std::vector<SettingRow> setting_rows(std::span<const TimberWork> work, const Voice& voice);

/// scale_words() in one: "33.5° (Exactly 33.69°)".
[[nodiscard]] std::string scale_text(const Saw& saw, std::int64_t hundredths, const Voice& voice);

}  // namespace bentbook
