#include "words/aloud/aloud.h"

#include <array>
#include <cstddef>
#include <cstdint>
#include <utility>

#include "words/aloud/number_words.h"

namespace bentbook {
namespace {

constexpr std::string_view kFoot = "′", kInch = "″", kSlash = "⁄", kMinus = "−", kDegree = "°";

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_capital(char c) { return c >= 'A' && c <= 'Z'; }
/// A byte of a word in any alphabet. The signs of measures are no letters.
bool is_letter(char c) { return is_capital(c) || (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) == 0xc3; }

/// What was read off the front of a text; size 0: nothing.
struct Said {
  std::size_t size = 0;
  std::string words;
};

struct Number {
  std::string_view whole, decimals;
  std::size_t size = 0;
  /// For the choice between singular and plural.
  [[nodiscard]] std::int64_t count() const {
    if (decimals.find_first_not_of('0') != std::string_view::npos || whole.size() > 2) return 2;
    std::int64_t n = 0;
    for (const char c : whole) n = 10 * n + (c - '0');
    return n;
  }
};

std::size_t digits_at(std::string_view s) {
  std::size_t n = 0;
  while (n < s.size() && is_digit(s[n])) ++n;
  return n;
}

Number number_at(std::string_view s) {
  Number number;
  number.size = digits_at(s);
  number.whole = s.substr(0, number.size);
  if (number.size == 0 || number.size == s.size() || s[number.size] != '.') return number;
  const std::size_t decimals = digits_at(s.substr(number.size + 1));
  number.decimals = s.substr(number.size + 1, decimals);
  if (decimals > 0) number.size += 1 + decimals;
  return number;
}

/// "3⁄8": size 0 where there is none.
struct Part {
  std::string_view over, under;
  std::size_t size = 0;
};

Part part_at(std::string_view s) {
  const std::size_t over = digits_at(s);
  if (over == 0 || !s.substr(over).starts_with(kSlash)) return {};
  const std::string_view rest = s.substr(over + kSlash.size());
  const std::size_t under = digits_at(rest);
  return {s.substr(0, over), rest.substr(0, under), under == 0 ? 0 : over + kSlash.size() + under};
}

/// "three eighths"; empty where no tape has such a part.
std::string part_words(const Part& part, Language language) {
  const auto msg = find_msg("aloud_part_" + std::string(part.under));
  if (!msg) return {};
  return say_count(*msg, language, part.over == "1" ? 1 : 2,
                   {{"count", number_words(part.over, Counts::kFeet, language)}});
}

std::string counted(Msg msg, const Number& number, Counts what, Language language) {
  const std::string count = decimal_words(number.whole, number.decimals, what, language);
  return say_count(msg, language, number.count(), {{"count", count}});
}

/// "3⁄8″"
Said part_of_inch(std::string_view s, Language language) {
  const Part part = part_at(s);
  if (part.size == 0 || !s.substr(part.size).starts_with(kInch)) return {};
  const std::size_t size = part.size + kInch.size();
  if (part.under == "2") return {size, std::string(text(Msg::kAloudHalfInch, language))};
  const std::string words = part_words(part, language);
  if (words.empty()) return {};
  return {size, say(Msg::kAloudPartInch, language, words)};
}

/// "7″", "7 3⁄8″", "3⁄8″", "7.375″"
Said inches_at(std::string_view s, Language language) {
  if (Said part = part_of_inch(s, language); part.size > 0) return part;
  const Number number = number_at(s);
  const std::string_view rest = s.substr(number.size);
  if (number.size == 0) return {};
  if (rest.starts_with(kInch))
    return {number.size + kInch.size(), counted(Msg::kAloudInches, number, Counts::kInches, language)};
  if (!rest.starts_with(' ')) return {};
  const Part part = part_at(rest.substr(1));
  if (part.size == 0 || !rest.substr(1 + part.size).starts_with(kInch)) return {};
  const std::size_t size = number.size + 1 + part.size + kInch.size();
  if (part.under == "2") return {size, counted(Msg::kAloudInchesHalf, number, Counts::kInches, language)};
  const std::string words = part_words(part, language);
  if (words.empty()) return {};
  return {size, say_count(Msg::kAloudInchesPart, language, number.count(),
                          {{"count", number_words(number.whole, Counts::kInches, language)}, {"part", words}})};
}

Said feet_at(std::string_view s, Language language) {
  const Number number = number_at(s);
  if (number.size == 0 || !s.substr(number.size).starts_with(kFoot)) return {};
  Said said{number.size + kFoot.size(), counted(Msg::kAloudFeet, number, Counts::kFeet, language)};
  const std::string_view rest = s.substr(said.size);
  if (!rest.starts_with(' ')) return said;
  const Said inches = inches_at(rest.substr(1), language);
  if (inches.size == 0) return said;
  return {said.size + 1 + inches.size,
          say(Msg::kAloudFeetAndInches, language, {{"feet", said.words}, {"inches", inches.words}})};
}

/// "39.8°", "1403 mm", "3.200 m". Millimetres stay digits.
Said unit_at(std::string_view s, Language language) {
  const Number number = number_at(s);
  const std::string_view rest = s.substr(number.size);
  if (number.size == 0) return {};
  if (rest.starts_with(kDegree))
    return {number.size + kDegree.size(), counted(Msg::kAloudDegrees, number, Counts::kFeet, language)};
  const auto is = [&](std::string_view unit) {
    if (!rest.starts_with(unit)) return false;
    const char next = rest.size() == unit.size() ? ' ' : rest[unit.size()];
    return !is_letter(next) && next != '/' && static_cast<unsigned char>(next) != 0xc2;  // "mm/m", "m²"
  };
  if (is(" mm")) {
    std::string digits(s.substr(0, number.size));
    if (!number.decimals.empty())
      digits = say(Msg::kAloudDecimal, language, {{"whole", number.whole}, {"digits", number.decimals}});
    return {number.size + 3, say_count(Msg::kAloudMm, language, number.count(), {{"count", digits}})};
  }
  if (is(" m")) return {number.size + 2, counted(Msg::kAloudMetres, number, Counts::kFeet, language)};
  return {};
}

Said measure_at(std::string_view s, Language language) {
  if (s.starts_with(kMinus)) {
    Said said = measure_at(s.substr(kMinus.size()), language);
    if (said.size == 0) return {};
    return {said.size + kMinus.size(), say(Msg::kAloudMinus, language, said.words)};
  }
  for (const auto read : {feet_at, inches_at, unit_at})
    if (Said said = read(s, language); said.size > 0) return said;
  return {};
}

/// A number that is no measure: a face's, a count. Dates, times, slopes and parts of an inch without its mark are left
/// to the voice.
Said bare_number_at(std::string_view s, Language language) {
  const Number number = number_at(s);
  if (number.size == 0) return {};
  if (!number.decimals.empty()) return {number.size, std::string(s.substr(0, number.size))};
  Said said;
  for (std::string_view rest = s; !rest.empty(); rest = s.substr(said.size)) {
    const bool slash = rest.starts_with(kSlash);
    if (!slash && !is_digit(rest[0]) && rest[0] != ':' && rest[0] != '-') break;
    said.words += slash ? '/' : rest[0];
    said.size += slash ? kSlash.size() : 1;
  }
  const bool alone = said.size == number.size && (said.size == s.size() || !is_letter(s[said.size]));
  if (alone) said.words = number_words(number.whole, Counts::kNothing, language);
  return said;
}

/// A timber's mark, letter by letter: "P-A2" "P A 2", "B-A1.2" "B A 1, 2".
Said mark_at(std::string_view s) {
  std::size_t size = 0;
  while (size < s.size() && is_capital(s[size])) ++size;
  if (size == 0 || size == s.size() || s[size] != '-') return {};
  const std::size_t hyphen = size++;
  while (size < s.size() && (is_capital(s[size]) || is_digit(s[size]) || s[size] == '.')) ++size;
  while (s[size - 1] == '.') --size;
  if (size <= hyphen + 1) return {};
  std::string words;
  for (std::size_t i = 0; i < size; ++i) {
    if (s[i] == '-') continue;
    const bool goes_on = is_digit(s[i]) && i > 0 && is_digit(s[i - 1]);
    if (s[i] == '.')
      words += ',';
    else
      words += (words.empty() || goes_on ? "" : " ") + std::string(1, s[i]);
  }
  return {size, std::move(words)};
}

Said sign_at(std::string_view s, Language language) {
  constexpr std::array<std::pair<std::string_view, Msg>, 3> kSigns = {
      {{"≈", Msg::kAloudAbout}, {"±", Msg::kAloudPlusOrMinus}, {"×", Msg::kAloudBy}}};
  for (const auto& sign : kSigns)
    if (s.starts_with(sign.first)) return {sign.first.size(), std::string(text(sign.second, language))};
  if (s.starts_with(" · ")) return {std::string_view(" · ").size(), ", "};
  if (s.starts_with(kSlash)) return {kSlash.size(), "/"};
  return {};
}

Said read_at(std::string_view s, bool within_word, Language language) {
  if (!within_word) {
    if (Said said = measure_at(s, language); said.size > 0) return said;
    if (Said said = mark_at(s); said.size > 0) return said;
    if (Said said = bare_number_at(s, language); said.size > 0) return said;
  }
  if (Said said = sign_at(s, language); said.size > 0) return said;
  return {1, std::string(s.substr(0, 1))};
}

}  // namespace

std::string aloud_text(std::string_view shown, Language language) {
  std::string out;
  bool within_word = false;
  while (!shown.empty()) {
    Said said = read_at(shown, within_word, language);
    const char last = shown[said.size - 1];
    // The second byte of an accented letter goes on with its word.
    within_word =
        is_letter(last) || is_digit(last) || (within_word && (static_cast<unsigned char>(last) & 0xc0) == 0x80);
    out += said.words;
    shown.remove_prefix(said.size);
  }
  return out;
}

std::string aloud_sentence(std::string_view name, std::string_view value, Language language) {
  std::string out = aloud_text(name, language);
  if (!out.empty() && !value.empty()) out += ": ";
  out += aloud_text(value, language);
  if (!out.empty() && out.back() != '.' && out.back() != '?' && out.back() != '!') out += '.';
  return out;
}

}  // namespace bentbook
