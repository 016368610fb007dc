#pragma once
/// Inside the command line: what `bentbook rafter` answers, as JSON and as text.

#include "words/words.h"

namespace bentbook {

[[nodiscard]] std::string rafter_json(const RafterInput& input, const RafterPair& pair, const Voice& voice);
[[nodiscard]] std::string rafter_text(const RafterInput& input, const RafterPair& pair, const Voice& voice);

}  // namespace bentbook
