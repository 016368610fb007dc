#pragma once
/// Words in every language of assets/strings/languages.tsv. Messages are rows of assets/strings/TAG/*.tsv; the build
/// makes `Msg::kSomeId` of `some_id`, and Language of the tags; the first, English, is Language{}. A row's slots
/// ({name}, {0}) are filled by say(); a message with plural forms is said by say_count().

#include <cstdint>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>

#include "words/strings.gen.h"

namespace bentbook {

/// Its BCP 47 tag: "en", "es".
[[nodiscard]] std::string_view language_tag(Language language);
/// Its own name, as its speakers write it: "English", "Español".
[[nodiscard]] std::string_view language_name(Language language);
/// The language with exactly this tag.
[[nodiscard]] std::optional<Language> find_language(std::string_view tag);
/// The language nearest to a device's BCP 47 tag: this one, else the first of the same language ("es-MX" finds "es"),
/// else English.
[[nodiscard]] Language language_of(std::string_view tag);

/// Whether its words are there. On a phone those of other languages than the first are files that come when they are
/// wanted; without them the first language speaks.
[[nodiscard]] bool has_words(Language language);

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

/// A name as it is shown. What the app itself named (its first saws, species, joints, the demo) is kept in English in
/// every file and shown in the user's language by the rows factory_… of the tables; what a user named stays as typed.
[[nodiscard]] std::string_view shown_name(std::string_view name, Language language);

/// The message of an id that was put together at run time ("error_steep"); nothing if there is none.
[[nodiscard]] std::optional<Msg> find_msg(std::string_view id);

/// The text of a word of keys.h: the message `stem` + `key`; the key itself if there is none.
[[nodiscard]] std::string_view key_text(std::string_view stem, std::string_view key, Language language);

}  // namespace bentbook
