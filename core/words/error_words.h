#pragma once
/// What is wrong, in a sentence.

#include <string>
#include <string_view>

#include "numeric/result.h"
#include "words/words.h"

namespace bentbook {

/// One sentence: what is wrong, where, and what would work.
[[nodiscard]] std::string error_text(const Error& error, const Voice& voice);
/// …with its limit as its asker says it: an error knows no units.
[[nodiscard]] std::string error_text(const Error& error, std::string_view limit, const Voice& voice);

}  // namespace bentbook
