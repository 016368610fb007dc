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

TEST_CASE("a zero with an exponent, or without end, is refused where it stands", "[book]") {
  const auto x = [](const std::string& value) { return read_kit(R"({"file":"kit","version":1,"x":)" + value + "}"); };
  for (const char* zero : {"0e120", "-0E61", "0.000e-9", "0.0000000000000000000000000"}) {
    INFO(zero);
    REQUIRE(x(zero).error().code == ErrorCode::kSyntax);
  }
  CHECK(x("0e120").error().at == 31);
  CHECK(x("0.0000000000000000000000000\"x\"").error().code == ErrorCode::kSyntax);
  for (const char* fine :
       {"10e5", "0.5e3", "0.0000000000000000000000001", "0", "0.0", "true", R"("0e120")", R"("\"0e120")"}) {
    INFO(fine);
    CHECK(x(fine));
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
