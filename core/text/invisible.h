#pragma once
/// Characters that show as nothing, or turn the order of what stands about them: two names that look alike can differ
/// by one. No name or mark that is typed may hold one, and where one comes in from a file it is made to be seen.
/// Source: SOURCES.md, "invisible characters".

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace bentbook {

/// The first of them in the text.
[[nodiscard]] std::optional<std::uint32_t> invisible_in(std::string_view text);
/// "U+202E".
[[nodiscard]] std::string code_name(std::uint32_t code);
/// Each of them as "<U+202E>".
[[nodiscard]] std::string made_visible(std::string_view text);

}  // namespace bentbook
