#pragma once
/// What is wrong, in a sentence.

#include <string>

#include "numeric/result.h"
#include "words/words.h"

namespace bentbook {

/// One sentence: what is wrong, where, and what would work.
[[nodiscard]] std::string error_text(const Error& error, const Voice& voice);

}  // namespace bentbook
