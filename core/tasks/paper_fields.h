#pragma once
/// What is asked of the Worker that writes PDF, the letters that it sets pages with, and the file that comes back.

#include <optional>
#include <string>
#include <string_view>

#include "measure/fields.h"
#include "tasks/task.h"

namespace bentbook {

void describe(Fields&, PaperRequest&);
/// The file's bytes as hexadecimal digits: what crosses is text.
void describe(Fields&, PaperFile&);

/// Two font files as one run of bytes.
[[nodiscard]] std::string write_fonts(std::string_view regular, std::string_view bold);
struct FontBytes {
  std::string_view regular, bold;  ///< of what was read
};
/// Nothing: these bytes are not of write_fonts().
[[nodiscard]] std::optional<FontBytes> read_fonts(std::string_view bytes);

}  // namespace bentbook
