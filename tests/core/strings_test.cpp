#include "words/strings.h"

#include <catch_amalgamated.hpp>

#include "book/book.h"
#include "book/kit.h"
#include "words/strings_table.h"

using namespace bentbook;

TEST_CASE("every message has its text in every language", "[strings]") {
  REQUIRE(strings::row_count() > 0);
  for (std::size_t i = 0; i < strings::row_count(); ++i) {
    const auto msg = static_cast<Msg>(i);
    CAPTURE(strings::id_of(i));
    for (std::size_t k = 0; k < kLanguageCount; ++k) REQUIRE_FALSE(text(msg, static_cast<Language>(k)).empty());
    REQUIRE(find_msg(strings::id_of(i)) == msg);
  }
}

TEST_CASE("an id that is in no table is not found", "[strings]") {
  REQUIRE(find_msg("app_name") == Msg::kAppName);
  REQUIRE_FALSE(find_msg("").has_value());
  REQUIRE_FALSE(find_msg("zzz_nothing").has_value());
  REQUIRE_FALSE(find_msg("app_nam").has_value());
}

TEST_CASE("slots are filled by name, and by nothing else", "[strings]") {
  // The slots of a message that has none stay out of it.
  REQUIRE(say(Msg::kAppName, Language::kEn, {{"0", "x"}}) == text(Msg::kAppName, Language::kEn));
  for (std::size_t i = 0; i < strings::row_count(); ++i) {
    const std::string_view pattern = text(static_cast<Msg>(i), Language::kEn);
    const std::size_t open = pattern.find('{'), close = pattern.find('}');
    if (open == std::string_view::npos) continue;
    const std::string name(pattern.substr(open + 1, close - open - 1));
    const std::string said = say(static_cast<Msg>(i), Language::kEn, {{name, "{value}"}});
    CAPTURE(pattern, said);
    REQUIRE(said.substr(open, 7) == "{value}");
  }
}

TEST_CASE("languages by their tags", "[strings]") {
  REQUIRE(language_of("es") == Language::kEs);
  REQUIRE(language_of("es-MX") == Language::kEs);
  REQUIRE(language_of("est") == Language::kEn);
  REQUIRE(language_of("de") == Language::kEn);
  REQUIRE(language_tag(Language::kEs) == "es");
  REQUIRE(language_name(Language::kEs) == "Español");
  REQUIRE_FALSE(find_language("es-MX").has_value());
  for (std::size_t k = 0; k < kLanguageCount; ++k) {
    const auto language = static_cast<Language>(k);
    REQUIRE(find_language(language_tag(language)) == language);
    REQUIRE(language_of(language_tag(language)) == language);
  }
}

TEST_CASE("what the app itself named is shown in every language, what a user named as typed", "[strings]") {
  const Book demo = demo_book();
  std::vector<std::string> names{demo.title, demo.notes};
  for (const Saw& saw : first_kit().saws) names.push_back(saw.name);
  for (const Species& species : demo.species) names.push_back(species.name);
  for (const NamedJoint& joint : demo.joints) names.push_back(joint.name);
  for (const std::string& name : names) {
    CAPTURE(name);
    CHECK(shown_name(name, Language::kEn) == name);
    for (std::size_t k = 1; k < kLanguageCount; ++k) CHECK(shown_name(name, static_cast<Language>(k)) != name);
    CHECK(shown_name(name + " 2", Language::kEs) == name + " 2");
  }
}
