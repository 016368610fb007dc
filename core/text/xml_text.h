#pragma once
/// Text inside XML. Source: SOURCES.md, "XML text".

#include <string>
#include <string_view>

namespace bentbook {

/// What XML takes for its own (& < ") as references, for an element's text and for a value in double quotes.
[[nodiscard]] std::string xml_text(std::string_view text);

}  // namespace bentbook
