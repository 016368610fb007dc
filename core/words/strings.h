#pragma once
/// Words in two languages. Messages are rows of assets/strings/*.tsv; the build makes `Msg::kSomeId` of `some_id`.
/// A row's slots ({name}, {0}) are filled by say(); a message with plural forms is said by say_count().

#include <cstdint>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>

#include "words/strings.gen.h"

namespace bentbook {

enum class Language : std::uint8_t { kEn, kEs };

/// "en", "es": the BCP 47 tag.
[[nodiscard]] std::string_view language_tag(Language language);
/// The language of a BCP 47 tag ("es", "es-MX"); anything not known is English.
[[nodiscard]] Language language_of(std::string_view tag);

/// The message as it stands in the table (its `other` form), slots unfilled.
[[nodiscard]] std::string_view text(Msg msg, Language language);

struct Slot {
  std::string_view name;
  std::string_view value;
};

/// The message with its slots filled. A slot that is not given stays as it stands in the table.
[[nodiscard]] std::string say(Msg msg, Language language, std::initializer_list<Slot> slots);
/// The same for one slot, {0}.
[[nodiscard]] std::string say(Msg msg, Language language, std::string_view value);

/// The form that the language wants for `n`; the slot {n} is filled with it.
[[nodiscard]] std::string say_count(Msg msg, Language language, std::int64_t n, std::initializer_list<Slot> slots = {});

/// The message of an id that was put together at run time ("error_steep"); nothing if there is none.
[[nodiscard]] std::optional<Msg> find_msg(std::string_view id);

}  // namespace bentbook
