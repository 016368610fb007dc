#pragma once
/// Inside the command line: what a command hands back.

#include <utility>

#include "command/command.h"
#include "words/frame_words.h"

namespace bentbook {

inline CommandOutput said(std::string text) { return {0, std::move(text), {}}; }
inline CommandOutput refused(std::string_view why) { return {2, {}, "bentbook: " + std::string(why) + "\n"}; }
inline CommandOutput refused(const Error& error, const Voice& voice) { return refused(frame_error_text(error, voice)); }

}  // namespace bentbook
