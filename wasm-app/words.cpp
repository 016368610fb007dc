/// Words of the module that page and Worker run: the first language is in it, the texts of another come as a file when
/// it is wanted (web/language.js). This texts() stands before the core's own with every language, which is then not
/// linked.

#include <emscripten.h>

#include <algorithm>
#include <string>
#include <string_view>

#include "words/strings.h"
#include "words/strings_table.h"

namespace bentbook {
namespace {
strings::Texts words[kLanguageCount] = {{strings::kFirstTexts, strings::kFirstOnes}};
std::string files[kLanguageCount];  ///< what the others of `words` point into
std::string inbox;

/// A file is whole when it has a zero byte for each text.
bool whole(std::string_view file) {
  const std::size_t texts = strings::row_count() + strings::counted_count();
  return file.ends_with('\0') && static_cast<std::size_t>(std::count(file.begin(), file.end(), '\0')) == texts;
}

/// The file lies in the inbox behind the language's tag.
bool take_words(std::size_t tag_size) {
  const auto language = find_language(std::string_view(inbox).substr(0, tag_size));
  if (!language || !whole(std::string_view(inbox).substr(tag_size))) return false;
  if (has_words(*language)) return true;
  std::string& file = files[static_cast<std::size_t>(*language)];
  file = inbox.substr(tag_size);
  const char* ones = file.data();
  for (std::size_t i = 0; i < strings::row_count(); ++i) ones += std::string_view(ones).size() + 1;
  words[static_cast<std::size_t>(*language)] = {file.data(), ones};
  strings::read_again(*language);
  return true;
}
}  // namespace

const strings::Texts* strings::texts() { return words; }

}  // namespace bentbook

extern "C" {

EMSCRIPTEN_KEEPALIVE char* bb_words_buffer(int size) {
  bentbook::inbox.resize(static_cast<std::size_t>(size));
  return bentbook::inbox.data();
}

/// False where the language is unknown or the file is not whole.
EMSCRIPTEN_KEEPALIVE bool bb_words(int tag_size) { return bentbook::take_words(static_cast<std::size_t>(tag_size)); }

}  // extern "C"
