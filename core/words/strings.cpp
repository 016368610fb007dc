#include "words/strings.h"

#include <algorithm>
#include <vector>

#include "words/strings_table.h"

namespace bentbook {
namespace {

/// Where each text of a blob begins; one more at the end.
std::vector<std::uint32_t> starts_of(const char* blob, std::size_t count) {
  std::vector<std::uint32_t> starts(count + 1);
  std::uint32_t at = 0;
  for (std::size_t i = 0; i < count; ++i) {
    starts[i] = at;
    while (blob[at++] != 0) {
    }
  }
  starts[count] = at;
  return starts;
}

std::string_view nth(const char* blob, const std::vector<std::uint32_t>& starts, std::size_t i) {
  return {blob + starts[i], starts[i + 1] - starts[i] - 1};
}

/// Found once, at the first text asked for (50 KB read through a language).
struct Starts {
  std::vector<std::uint32_t> ids;
  std::vector<std::uint32_t> all[kLanguageCount], ones[kLanguageCount];
  Starts() : ids(starts_of(strings::kIds, strings::row_count())) {
    for (std::size_t i = 0; i < kLanguageCount; ++i)
      if (strings::texts()[i].all != nullptr) find(i);
  }
  void find(std::size_t language) {
    all[language] = starts_of(strings::texts()[language].all, strings::row_count());
    ones[language] = starts_of(strings::texts()[language].ones, strings::counted_count());
  }
};

Starts& starts() {
  static Starts found;
  return found;
}

/// The language that speaks for this one.
std::size_t speaker(Language language) { return has_words(language) ? static_cast<std::size_t>(language) : 0; }

/// The singular where the message has one, else its only text.
std::string_view singular(Msg msg, Language language) {
  const std::uint16_t* first = strings::counted();
  const std::uint16_t* last = first + strings::counted_count();
  const std::uint16_t* at = std::lower_bound(first, last, static_cast<std::uint16_t>(msg));
  if (at == last || *at != static_cast<std::uint16_t>(msg)) return text(msg, language);
  const std::size_t l = speaker(language);
  return nth(strings::texts()[l].ones, starts().ones[l], static_cast<std::size_t>(at - first));
}

const strings::LanguageLine& line_of(Language language) {
  return strings::languages()[static_cast<std::size_t>(language)];
}

bool takes_singular(std::int64_t n, Language language) {
  return n >= 0 && n < 64 && (line_of(language).singular >> n & 1) != 0;
}

/// Place of the first row whose id is not before `id`.
std::size_t first_not_before(std::string_view id) {
  std::size_t low = 0, high = strings::row_count();
  while (low < high) {
    const std::size_t middle = (low + high) / 2;
    if (strings::id_of(middle) < id)
      low = middle + 1;
    else
      high = middle;
  }
  return low;
}

const Slot* find_slot(const Slot* slots, std::size_t count, std::string_view name) {
  for (std::size_t i = 0; i < count; ++i)
    if (slots[i].name == name) return &slots[i];
  return nullptr;
}

std::string fill(std::string_view pattern, const Slot* slots, std::size_t count) {
  std::string out;
  out.reserve(pattern.size() + 32);
  for (std::size_t at = 0; at < pattern.size();) {
    const std::size_t open = pattern.find('{', at);
    const std::size_t close = open == std::string_view::npos ? open : pattern.find('}', open);
    if (close == std::string_view::npos) {
      out.append(pattern.substr(at));
      break;
    }
    out.append(pattern.substr(at, open - at));
    const Slot* slot = find_slot(slots, count, pattern.substr(open + 1, close - open - 1));
    out.append(slot ? slot->value : pattern.substr(open, close - open + 1));
    at = close + 1;
  }
  return out;
}

}  // namespace

std::string_view language_tag(Language language) { return line_of(language).tag; }

std::string_view language_name(Language language) { return line_of(language).name; }

std::optional<Language> find_language(std::string_view tag) {
  for (std::size_t i = 0; i < kLanguageCount; ++i)
    if (strings::languages()[i].tag == tag) return static_cast<Language>(i);
  return std::nullopt;
}

Language language_of(std::string_view tag) {
  if (const auto same = find_language(tag)) return *same;
  // Another country's form of the language is better than a strange one.
  const std::string_view first = tag.substr(0, tag.find('-'));
  for (std::size_t i = 0; i < kLanguageCount; ++i) {
    const std::string_view known = strings::languages()[i].tag;
    if (known.substr(0, known.find('-')) == first) return static_cast<Language>(i);
  }
  return Language{};
}

bool has_words(Language language) { return strings::texts()[static_cast<std::size_t>(language)].all != nullptr; }

void strings::read_again(Language language) { starts().find(static_cast<std::size_t>(language)); }

std::string_view strings::id_of(std::size_t row) { return nth(kIds, starts().ids, row); }

std::string_view text(Msg msg, Language language) {
  const std::size_t l = speaker(language);
  return nth(strings::texts()[l].all, starts().all[l], static_cast<std::size_t>(msg));
}

std::string say(Msg msg, Language language, std::initializer_list<Slot> slots) {
  return fill(text(msg, language), slots.begin(), slots.size());
}

std::string say(Msg msg, Language language, std::string_view value) { return say(msg, language, {{"0", value}}); }

std::string say_count(Msg msg, Language language, std::int64_t n, std::initializer_list<Slot> slots) {
  const std::string count = std::to_string(n);
  std::vector<Slot> all(slots);
  all.push_back({"n", count});
  return fill(takes_singular(n, language) ? singular(msg, language) : text(msg, language), all.data(), all.size());
}

std::string_view shown_name(std::string_view name, Language language) {
  constexpr std::string_view kFactory = "factory_";
  for (std::size_t i = first_not_before(kFactory); i < strings::row_count(); ++i) {
    const auto msg = static_cast<Msg>(i);
    if (!strings::id_of(i).starts_with(kFactory)) break;
    if (text(msg, Language{}) == name) return text(msg, language);
  }
  return name;
}

std::optional<Msg> find_msg(std::string_view id) {
  const std::size_t at = first_not_before(id);
  if (at == strings::row_count() || strings::id_of(at) != id) return std::nullopt;
  return static_cast<Msg>(at);
}

std::string_view key_text(std::string_view stem, std::string_view key, Language language) {
  const auto msg = find_msg(std::string(stem) + std::string(key));
  return msg ? text(*msg, language) : key;
}

}  // namespace bentbook
