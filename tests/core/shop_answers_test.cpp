// bentbook log, bentbook steps, with files in memory; words of the shop.

#include <rapidjson/document.h>

#include <algorithm>
#include <catch_amalgamated.hpp>
#include <map>

#include "book/book.h"
#include "book/book_file.h"
#include "command/log.h"
#include "histories.h"
#include "hostile.h"
#include "shop/log/conflicts.h"
#include "words/shop_words.h"

using namespace bentbook;

namespace {

struct Desk {
  std::map<std::string, std::string, std::less<>> files{};
  Files hands() {
    return {[this](std::string_view path) -> std::optional<std::string> {
              const auto it = files.find(path);
              return it == files.end() ? std::nullopt : std::optional(it->second);
            },
            [this](std::string_view path, std::string_view bytes) {
              files[std::string(path)] = bytes;
              return true;
            }};
  }
  CommandOutput log(std::initializer_list<std::string_view> words) {
    return log_command(std::vector<std::string_view>(words), hands());
  }
  CommandOutput steps(std::initializer_list<std::string_view> words) {
    return steps_command(std::vector<std::string_view>(words), hands());
  }
};

Desk three_phones() {
  Random random(450);
  const auto phones = histories::random_phones(random, 3, 40);
  Desk desk;
  for (std::size_t i = 0; i < 3; ++i) desk.files["p" + std::to_string(i)] = write_log(phones[i]);
  return desk;
}

}  // namespace

TEST_CASE("log merge takes any number of logs, in any order", "[shop]") {
  Desk desk = three_phones();
  CHECK(desk.log({"merge", "p0", "p1", "p2", "-o", "a"}).exit_code == 0);
  CHECK(desk.log({"merge", "p2", "p1", "--out", "b"}).exit_code == 0);
  CHECK(desk.log({"merge", "b", "p0", "-o", "c"}).exit_code == 0);
  CHECK(desk.files["a"] == desk.files["c"]);
  CHECK(desk.log({"merge", "p0", "p1"}).exit_code == 2);
  CHECK(desk.log({"merge", "p0", "-o", "d"}).exit_code == 2);
  CHECK(desk.log({"merge", "p0", "none", "-o", "d"}).exit_code == 2);
  CHECK(desk.files.count("d") == 0);
}

TEST_CASE("log show is whole JSON, and text in every language", "[shop]") {
  Desk desk = three_phones();
  REQUIRE(desk.log({"merge", "p0", "p1", "p2", "-o", "a"}).exit_code == 0);
  const CommandOutput out = desk.log({"show", "a", "--json"});
  rapidjson::Document json;
  json.Parse(out.out.data(), out.out.size());
  REQUIRE(!json.HasParseError());
  CHECK(json["events"].Size() == read_log(desk.files["a"])->events.size());
  CHECK(json["conflicts"].Size() == conflicts_of(fold(*read_log(desk.files["a"]))).size());
  CHECK(desk.log({"show", "a"}).out.find("Done") != std::string::npos);
  CHECK(desk.log({"show", "a", "--lang", "es"}).out.find("Hecho") != std::string::npos);
}

TEST_CASE("steps of a timber that is not there, and with a damaged log", "[shop]") {
  Desk desk = three_phones();
  desk.files["demo"] = write_book(demo_book());
  CHECK(desk.steps({"demo", "P-A1", "--json"}).exit_code == 0);
  CHECK(desk.steps({"demo", "P-A1"}).out.find("Kickback") != std::string::npos);
  CHECK(desk.steps({"demo", "Z-9"}).exit_code == 2);
  CHECK(desk.steps({"none", "P-A1"}).exit_code == 2);
  desk.files["p0"][40] ^= 1;
  CHECK(desk.steps({"demo", "P-A1", "--log", "p0"}).exit_code == 2);
}

TEST_CASE("every word of the shop stands in the table in every language", "[shop]") {
  for (std::size_t l = 0; l < kLanguageCount; ++l) {
    const auto language = static_cast<Language>(l);
    const auto is_said = [](std::string_view said, std::string_view key) { return !said.empty() && said != key; };
    for (std::size_t i = 0; i < kStepWorkWords.size(); ++i) {
      WorkStep step;
      step.work = static_cast<StepWork>(i);
      CHECK(is_said(step_text(step, language), kStepWorkWords[i]));
    }
    for (std::size_t i = 0; i < kWorkplaceWords.size(); ++i)
      CHECK(is_said(workplace_text(static_cast<Workplace>(i), language), kWorkplaceWords[i]));
    for (std::size_t i = 0; i < kTickWords.size(); ++i)
      CHECK(is_said(tick_text(static_cast<Tick>(i), language), kTickWords[i]));
    for (std::size_t i = 0; i < kActionWords.size(); ++i)
      CHECK(is_said(did_text(static_cast<EventAction>(i), language), kActionWords[i]));
    for (std::size_t i = 0; i < kStepNumberWords.size(); ++i)
      CHECK(is_said(step_number_text(static_cast<StepNumberName>(i), language), kStepNumberWords[i]));
    for (const WorkCaution caution : {kKickback, kEyesEars, kCords, kWorkHeld})
      CHECK(work_caution_text(caution, language).size() > 10);
    for (std::size_t i = 0; i < kConflictWords.size(); ++i) {
      Conflict conflict;
      conflict.kind = static_cast<ConflictKind>(i);
      conflict.timber = "P-A1", conflict.step = "seat_plate/b";
      conflict.other_timber = "P-A2", conflict.other_step = "mortise/G-A1.1#2";
      const std::string said = conflict_text(conflict, Voice{language, {}, Marks::kScreen});
      CHECK_FALSE(said.empty());
      CHECK(said.find_first_of("/_#") == std::string::npos);
    }
  }
}

TEST_CASE("whose events a log holds, and the log without one name's", "[answers]") {
  Desk desk;
  Log log = hostile::log_of({"done", EventAction::kDone, true}, 2000);
  Event own;
  own.device = 3;
  own.logical = 2001;
  own.who = "A\u202ena";
  own.timber = "P-A1";
  own.step = "slot/a";
  log.events.push_back(own);
  desk.files["a"] = write_log(log);
  const CommandOutput writers = desk.log({"writers", "a"});
  CHECK(writers.out.find("Mallet: Phones: 2000. Events: 2000") != std::string::npos);
  CHECK(writers.out.find("A<U+202E>na") != std::string::npos);
  const CommandOutput out = desk.log({"writers", "a", "--json"});
  rapidjson::Document json;
  json.Parse(out.out.data(), out.out.size());
  REQUIRE(json.IsObject());
  CHECK(json["writers"].Size() == 2);
  // All that 2 000 phones say of one step is a line.
  const CommandOutput shown = desk.log({"show", "a"});
  CHECK(std::count(shown.out.begin(), shown.out.end(), '!') == 1);
  CHECK(shown.out.size() < 200 * log.events.size());
  CHECK(desk.log({"without", "a", "--who", "Mallet", "-o", "b"}).exit_code == 0);
  CHECK(read_log(desk.files["b"])->events == std::vector{own});
  CHECK(desk.log({"without", "a", "0000000000000003", "-o", "c"}).exit_code == 0);
  CHECK(read_log(desk.files["c"])->events.size() == 2000);
  CHECK(desk.log({"without", "a", "3", "-o", "d"}).exit_code == 2);
}
