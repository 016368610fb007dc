// bentbook roof: a book with a roof of any plan is written, read again and told, in every language.

#include <catch_amalgamated.hpp>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "book/book_file.h"
#include "command/roofs/roof.h"

using namespace bentbook;
using Catch::Matchers::ContainsSubstring;

namespace {

/// A disk of one's own.
struct Disk {
  std::map<std::string, std::string, std::less<>> bytes;
  Files files() {
    return {[this](std::string_view path) -> std::optional<std::string> {
              const auto it = bytes.find(path);
              return it == bytes.end() ? std::nullopt : std::optional(it->second);
            },
            [this](std::string_view path, std::string_view text) {
              bytes.insert_or_assign(std::string(path), std::string(text));
              return true;
            }};
  }
  CommandOutput run(const std::vector<std::string_view>& args) { return roof_command(args, files()); }
};

}  // namespace

TEST_CASE("A roof of each shape is written into a book and told", "[roofplan]") {
  for (const std::string_view shape : {"rectangle", "l", "t", "u", "bay"}) {
    Disk disk;
    REQUIRE(disk.run({"new", "a.book", "--shape", shape}).exit_code == 0);
    const CommandOutput told = disk.run({"a.book"});
    CHECK(told.exit_code == 0);
    CHECK_THAT(told.out, ContainsSubstring("HR-1") && ContainsSubstring("Side A"));
    const CommandOutput json = disk.run({"a.book", "--json"});
    CHECK_THAT(json.out, ContainsSubstring("\"hip_jack\"") && ContainsSubstring("\"not_engineered\""));
    CHECK_THAT(disk.run({"a.book", "--lang", "es"}).out, ContainsSubstring("Lima tesa"));
    CHECK_THAT(disk.run({"a.book", "--lang", "fr-CA"}).out, ContainsSubstring("Arêtier"));
  }
}

TEST_CASE("A book keeps its roof, and one without a roof is written as before", "[roofplan]") {
  Disk disk;
  REQUIRE(disk.run({"new", "a.book", "--shape", "t", "--tops", "backed", "--pitch", "10:12"}).exit_code == 0);
  auto book = read_book(disk.bytes["a.book"]);
  REQUIRE(book);
  CHECK(book->roof.sides.size() == 8);
  CHECK(book->roof.hip_top == HipTop::kBacked);
  CHECK(write_book(*book) == disk.bytes["a.book"]);
  CHECK(write_book(demo_book()).find("roof_plan") == std::string::npos);
  // A roof that is taken out stays out.
  book->roof.sides.clear();
  const auto again = read_book(write_book(*book));
  REQUIRE(again);
  CHECK(again->roof.sides.empty());
}

TEST_CASE("What cannot be told is refused in a sentence that names the side", "[roofplan]") {
  Disk disk;
  CHECK(disk.run({"none.book"}).exit_code == 2);
  disk.bytes["plain.book"] = write_book(demo_book());
  CHECK_THAT(disk.run({"plain.book"}).err, ContainsSubstring("no roof"));
  CHECK_THAT(disk.run({"new", "a.book", "--pitch", "0"}).err, ContainsSubstring("Side A"));
  REQUIRE(disk.run({"new", "a.book"}).exit_code == 0);
  CHECK(disk.run({"new", "a.book"}).exit_code == 2);
  auto book = read_book(disk.bytes["a.book"]);
  REQUIRE(book);
  for (PlanSide& side : book->roof.sides) side.kind = SideKind::kGable;
  disk.bytes["a.book"] = write_book(*book);
  CHECK_THAT(disk.run({"a.book"}).err, ContainsSubstring("gable"));
}
