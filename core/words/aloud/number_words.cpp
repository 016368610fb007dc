#include "words/aloud/number_words.h"

#include <algorithm>

namespace bentbook {
namespace {

/// Cuts the first piece off a list: "one|two" leaves "two".
std::string_view take_piece(std::string_view& list) {
  const std::size_t bar = std::min(list.find('|'), list.size());
  const std::string_view piece = list.substr(0, bar);
  list.remove_prefix(std::min(bar + 1, list.size()));
  return piece;
}

std::string_view plain_words(int number, Language language) {
  std::string_view list = text(Msg::kAloudNumbers, language);
  for (int i = 0; i < number; ++i) (void)take_piece(list);
  return take_piece(list);
}

/// The first rule whose left side ends the word is taken.
std::string bent(std::string_view word, std::string_view rules) {
  while (!rules.empty()) {
    const std::string_view rule = take_piece(rules);
    const std::size_t equals = std::min(rule.find('='), rule.size());
    const std::string_view was = rule.substr(0, equals);
    if (!word.ends_with(was) || equals == rule.size()) continue;
    return std::string(word.substr(0, word.size() - was.size())) + std::string(rule.substr(equals + 1));
  }
  return std::string(word);
}

}  // namespace

std::string number_words(std::string_view digits, Counts what, Language language) {
  if (digits.empty() || digits.size() > 2) return std::string(digits);
  int number = 0;
  for (const char c : digits) number = 10 * number + (c - '0');
  const std::string_view word = plain_words(number, language);
  if (what == Counts::kNothing) return std::string(word);
  return bent(word, text(what == Counts::kFeet ? Msg::kAloudBeforeFeet : Msg::kAloudBeforeInches, language));
}

std::string decimal_words(std::string_view whole, std::string_view decimals, Counts what, Language language) {
  if (decimals.find_first_not_of('0') == std::string_view::npos) return number_words(whole, what, language);
  std::string digits;
  for (std::size_t i = 0; i < decimals.size(); ++i) {
    if (!digits.empty()) digits += ' ';
    digits += number_words(decimals.substr(i, 1), Counts::kNothing, language);
  }
  return say(Msg::kAloudDecimal, language,
             {{"whole", number_words(whole, Counts::kNothing, language)}, {"digits", digits}});
}

}  // namespace bentbook
