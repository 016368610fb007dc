// The kit and the places as files.

#include <catch_amalgamated.hpp>
#include <string>

#include "book/demo.h"
#include "book/history.h"
#include "book/kit.h"

using namespace bentbook;

namespace {

std::string with(std::string bytes, std::string_view what, std::string_view by) {
  const std::size_t at = bytes.find(what);
  REQUIRE(at != std::string::npos);
  return bytes.replace(at, what.size(), by);
}

}  // namespace

TEST_CASE("kit and places come back as they were", "[book]") {
  Kit kit = first_kit();
  kit.saws[1].name = "Sierra \"grande\" \\ ½";
  kit.saws[1].scale_error = Angle::from_degrees(-0.25);
  kit.settings.lengths = {LengthForm::kMm, 64, 1};
  kit.settings.language = "es";
  kit.settings.text_percent = 150;
  auto kit_again = read_kit(write_kit(kit));
  REQUIRE(kit_again);
  kit_again->kept.clear();
  CHECK(*kit_again == kit);

  Places places = demo_places();
  places.rafter.left.pitch = Slope::of_angle(Angle::from_degrees(39.8));
  places.rafter.load_psf = 0.1;
  auto places_again = read_places(write_places(places));
  REQUIRE(places_again);
  places_again->kept.clear();
  CHECK(*places_again == places);

  const auto rafter = read_rafter(write_rafter(places.rafter));
  REQUIRE(rafter);
  CHECK(*rafter == places.rafter);
}

TEST_CASE("members of a later edition are written back, at every depth", "[book]") {
  std::string bytes = write_kit(first_kit());
  bytes = with(bytes, "{\"file\"", "{\"later\":[1,{\"deep\":null}],\"file\"");
  bytes = with(bytes, "\"kind\":\"hand\"", "\"kerf\":7,\"kind\":\"hand\"");
  bytes = with(bytes, "\"theme\"", "\"colour\":\"ink\",\"theme\"");
  auto kit = read_kit(bytes);
  REQUIRE(kit);
  kit->saws.erase(kit->saws.begin());
  const std::string again = write_kit(*kit);
  CHECK(again.find("\"later\":[1,{\"deep\":null}]") != std::string::npos);
  CHECK(again.find("\"kerf\":7") != std::string::npos);
  CHECK(again.find("\"colour\":\"ink\"") != std::string::npos);
  CHECK(again.find("Circular") == std::string::npos);  // deleted stays deleted
}

TEST_CASE("a newer version, another file and damage are refused", "[book]") {
  const std::string good = write_kit(first_kit());
  CHECK(read_kit(with(good, "\"version\":1", "\"version\":2")).error().code == ErrorCode::kNewerVersion);
  CHECK(read_places(good).error().where == "file");
  const auto cut = read_kit(std::string_view(good).substr(0, 40));
  CHECK(cut.error().code == ErrorCode::kSyntax);
  CHECK(cut.error().at >= 0);
  CHECK(read_kit(with(good, "\"glove\":false", "\"glove\":3")).error().where == "glove");
  CHECK(read_kit(with(good, "\"division\":16", "\"division\":17")).error().where == "division");
  CHECK(read_kit(with(good, "\"step\":1000000000", "\"step\":0")).error().where == "step");
  CHECK(read_kit(with(good, "\"hand\"", "\"laser\"")).error().where == "kind");
  CHECK(read_kit("").error().code == ErrorCode::kSyntax);
  CHECK(read_kit("{\"file\":\"kit\",\"version\":1,\"x\":\"\xff\"}").error().code == ErrorCode::kSyntax);
}

TEST_CASE("nesting without end is refused, not followed", "[book]") {
  const std::string deep(100'000, '[');
  const auto kit = read_kit("{\"file\":\"kit\",\"version\":1,\"x\":" + deep);
  CHECK(kit.error().code == ErrorCode::kTooDeep);
}

TEST_CASE("a number of any spelling is read or refused, never followed out of a table", "[book]") {
  const auto x = [](const std::string& value) { return read_kit(R"({"file":"kit","version":1,"x":)" + value + "}"); };
  const std::string zeros(90, '0');
  for (const std::string& fine :
       {std::string("0e120"), std::string("-0E61"), "0." + zeros, "0." + zeros + "1", std::string("1e-400"),
        std::string("10e5"), std::string("18446744073709551616"), "1" + zeros}) {
    INFO(fine);
    CHECK(x(fine));
  }
  for (const std::string& bad : {std::string("1e400"), "0." + zeros + "..", "1" + zeros + "e280", std::string("0x1")}) {
    INFO(bad);
    REQUIRE_FALSE(x(bad));
    CHECK(x(bad).error().code == ErrorCode::kSyntax);
  }
}

TEST_CASE("an escape for half of a surrogate pair is refused, a whole pair is read", "[book]") {
  const auto x = [](const std::string& inside) {
    return read_kit(R"({"file":"kit","version":1,"x":{"k)" + inside + R"(":")" + inside + R"("}})");
  };
  CHECK(x(R"(\ud83d\ude00)"));
  CHECK(x(R"(\ud7ff\ue000)"));
  for (const char* half : {R"(\udccc)", R"(\udccc\udccc)"}) {
    REQUIRE_FALSE(x(half));
    CHECK(x(half).error().code == ErrorCode::kSyntax);
  }
}

TEST_CASE("missing members keep their defaults", "[book]") {
  const auto places = read_places(R"({"file":"places","version":1})");
  REQUIRE(places);
  CHECK(places->rafter == RafterInput{});
}

TEST_CASE("saws are found by name and named apart", "[book]") {
  const Kit kit = first_kit();
  CHECK(find_saw(kit, "Hand saw").kind == SawKind::kHand);
  CHECK(find_saw(kit, "gone").name == kit.saws.front().name);
  CHECK(find_saw(Kit{}, "any").kind == SawKind::kHand);
  CHECK(free_saw_name(kit, "Hand saw") == "Hand saw 2");
  CHECK(free_saw_name(kit, "Bow saw") == "Bow saw");
}

TEST_CASE("undo goes back by whole values", "[book]") {
  History<int> history(1);
  history.commit(2);
  history.commit(2);
  history.commit(3);
  history.undo();
  CHECK(history.now() == 2);
  history.redo();
  CHECK(history.now() == 3);
  history.undo();
  history.undo();
  CHECK_FALSE(history.can_undo());
  history.commit(7);
  CHECK_FALSE(history.can_redo());
}

TEST_CASE("the demo roof can be built and warns of nothing", "[book]") {
  const auto pair = solve_rafters(demo_places().rafter);
  REQUIRE(pair);
  CHECK(pair->left.birdsmouth_share < 0.25);
  for (const Caution& c : pair->left.cautions) CHECK(c.id == CautionId::kNotchPastSixth);
}
