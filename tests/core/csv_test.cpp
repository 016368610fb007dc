// Lists of timbers. The form of lines, quotes and line ends: RFC 4180.

#include "frame/list/csv.h"

#include <catch_amalgamated.hpp>

#include "book/book.h"
#include "frame/list/csv_write.h"
#include "text/invisible.h"
#include "words/frame_words.h"

using namespace bentbook;

namespace {

CsvTimbers read(std::string_view bytes, BareUnit bare = BareUnit::kInch) {
  return read_timbers_csv(bytes, bare, common_species());
}

constexpr std::string_view kHead = "mark,breadth,depth,length,feature,face,station,offset,along,across,feature_depth\n";

std::string list(std::string_view lines) { return std::string(kHead) + std::string(lines); }

}  // namespace

TEST_CASE("a list copied off a drawing: timbers with their features", "[csv]") {
  const auto got = read(
      "mark,kind,breadth,depth,length,a_angle,b_angle,species,feature,face,station,offset,along,across,"
      "feature_depth,diameter\r\n"
      "P1,post,8,8\",\"9' 7-1/4\"\"\",,,White oak,,,,,,,,\r\n"
      "P1,,,,,,,,mortise,3,5' 6,4,8-1/2,2,3-1/8,\r\n"
      "P1,,,,,,,,hole,2,5' 9-1/2,5,,,,3/4\r\n"
      "B1,brace,4,6,46.6875,-45,45,,,,,,,,,\r\n");
  REQUIRE(got.troubles.empty());
  REQUIRE(got.timbers.size() == 2);
  const HandTimber& post = got.timbers[0];
  CHECK(post.kind == TimberKind::kPost);
  CHECK(post.length == Length::inches(461, 4));
  CHECK(post.species.name == "White oak");
  CHECK(post.species.gravity_12 == .68);
  REQUIRE(post.features.size() == 2);
  CHECK(post.features[0].kind == FeatureKind::kMortise);
  CHECK(post.features[0].station == Length::inches(66));
  CHECK(post.features[1].diameter == Length::inches(3, 4));
  CHECK(got.timbers[1].b.angle == Angle::degrees(45));
  CHECK(got.lines == std::vector<int>{2, 5});
}

TEST_CASE("a bad line is told by its number and reason, the good timbers are offered", "[csv]") {
  const auto got =
      read(list("A,8,8,10',,,,,,,\n"
                "B,8,eight,10',,,,,,,\n"
                "C,8,8,10',,,,,,,\n"
                "C,,,,mortise,5,5',4,8,2,3\n"
                "D,8,8,,,,,,,,\n"
                "E,8,8,10',,,,,,,\n"
                "E,,,,mortise,3,50',4,8,2,3\n"));
  REQUIRE(got.timbers.size() == 1);
  CHECK(got.timbers[0].mark == "A");
  REQUIRE(got.troubles.size() == 4);
  CHECK(got.troubles[0].line == 3);
  CHECK(got.troubles[0].column == "depth");
  CHECK(got.troubles[0].error.at == 0);
  CHECK(got.troubles[1].line == 5);
  CHECK(got.troubles[1].column == "face");
  CHECK(got.troubles[2].line == 6);
  CHECK(got.troubles[2].error.code == ErrorCode::kMissing);
  // A feature that misses its timber takes the whole timber out of the offer, at its own line.
  CHECK(got.troubles[3].line == 8);
  CHECK(got.troubles[3].column == "station");
}

TEST_CASE("marks twice, features without a timber, a head without what is needed", "[csv]") {
  const auto twice = read(list("A,8,8,10',,,,,,,\nA,8,8,12',,,,,,,\nA,,,,hole,1,5',4,,,\n"));
  REQUIRE(twice.timbers.size() == 1);
  CHECK(twice.timbers[0].length == Length::feet(10));
  CHECK(twice.timbers[0].features.empty());
  CHECK(twice.troubles.at(0).line == 3);
  const auto orphan = read(list("Z,,,,hole,1,5',4,,,\n"));
  CHECK(orphan.troubles.at(0).error.code == ErrorCode::kMissing);
  CHECK(orphan.troubles.at(0).column == "mark");
  const auto head = read("mark,breadth,depth\nA,8,8\n");
  CHECK(head.timbers.empty());
  CHECK(head.troubles.at(0).column == "length");
  CHECK(read("").troubles.at(0).error.code == ErrorCode::kEmpty);
}

TEST_CASE("semicolons with decimal commas, tabs, a byte order mark, columns of other names", "[csv]") {
  const auto semicolons =
      read("\xEF\xBB\xBFmark;remark;breadth;depth;length\nA;\"ours; old\";200;200;3200,5\n", BareUnit::kMm);
  REQUIRE(semicolons.timbers.size() == 1);
  CHECK(semicolons.timbers[0].length.count == 32005 * (Length::kPerMm / 10));
  const auto tabs = read("mark\tbreadth\tdepth\tlength\nA\t8\t8\t10'\n");
  CHECK(tabs.timbers.size() == 1);
}

TEST_CASE("a quote that never closes and bytes that are no text are told", "[csv]") {
  CHECK(read("mark,breadth,depth,length\n\"A,8,8,10'\n").troubles.at(0).error.code == ErrorCode::kSyntax);
  CHECK(read("mark,breadth,depth,length\nA\xff,8,8,10'\n").troubles.at(0).error.code == ErrorCode::kSyntax);
  CHECK(read("mark,breadth,depth,length\nA,8,8,10',9\n").troubles.at(0).error.code == ErrorCode::kSyntax);
}

TEST_CASE("what is written is read back whole", "[csv]") {
  HandTimber t;
  t.mark = "North, \"old\" sill";
  t.kind = TimberKind::kSill;
  t.wood.nominal = {Length::inches(8), Length::inches(10)};
  t.wood.design = {Length::mm(200), Length::inches(10)};
  t.wood.actual = {Length{1'640'000'123}, Length::inches(641, 64)};
  t.wood.near_is_reference = false;
  t.wood.bow = Length::inches(-3, 8);
  t.species = common_species()[2];
  t.length = Length::inches(12345, 100);
  t.a = {Angle::from_degrees(12.345678901), Angle::degrees(-3)};
  t.placed = true;
  t.origin[1] = Length::feet(-3);
  t.turn = Angle::degrees(90);
  t.features = {
      {FeatureKind::kSlot, Face::kTop, {}, Length::inches(4), Length::inches(6), Length::inches(7, 16), {}, {}}};
  const std::string bytes = write_timbers_csv(std::span(&t, 1));
  const auto got = read(bytes);
  REQUIRE(got.troubles.empty());
  REQUIRE(got.timbers.size() == 1);
  CHECK(got.timbers[0] == t);
  CHECK(write_timbers_csv(got.timbers) == bytes);
}

TEST_CASE("no cell of words is a formula to a spreadsheet, and our reader gets the same words back", "[csv]") {
  const std::string odd[] = {"=1+1",   "+1",  "-1", "@SUM(A1)",          "'=1",  "''=1",   "'x", "-A", "=\"a\"",
                             "=a,b;c", "'-'", "=",  "=HYPERLINK(\"x\")", "-3.5", "P-A1 =x"};
  std::vector<HandTimber> timbers;
  for (const std::string& mark : odd) {
    HandTimber timber = read("mark,breadth,depth,length\nx,8,8,12'\n").timbers.at(0);
    timber.mark = mark;
    timber.origin[0] = Length::inches(-7, 2);
    timber.placed = true;
    timbers.push_back(timber);
  }
  const std::string bytes = write_timbers_csv(timbers);
  const auto again = read(bytes);
  CHECK(again.troubles.empty());
  CHECK(again.timbers == timbers);
  // Of our own cells a minus begins numbers alone, and they stay numbers.
  CHECK(bytes.find("-3-1/2") != std::string::npos);
  for (std::size_t at = 0; (at = bytes.find("\r\n", at)) != std::string::npos; at += 2) {
    if (at + 2 == bytes.size()) break;
    const std::size_t first = bytes.find_first_not_of('"', at + 2);
    CHECK(std::string_view("=+-@").find(bytes[first]) == std::string_view::npos);
  }
}

TEST_CASE("a mark that does not show what it is made of is refused, the character named", "[csv]") {
  for (const char* mark : {"P\u202eA", "P\u200b1", "\u2066P1", "P1\ufe0f", "P\u00ad1"}) {
    const auto got = read(std::string("mark,breadth,depth,length\n") + mark + ",8,8,12'\n");
    INFO(mark);
    REQUIRE(got.troubles.size() == 1);
    CHECK(got.troubles[0].column == "mark");
    CHECK(got.troubles[0].error.limit == static_cast<std::int64_t>(invisible_in(mark).value()));
    CHECK(frame_error_text(got.troubles[0].error, Voice{Language::kEn, {}, Marks::kScreen})
              .find(code_name(*invisible_in(mark))) != std::string::npos);
  }
  CHECK(read("mark,breadth,depth,length\n\u00d1and\u00fa 7\u2032,8,8,12'\n").troubles.empty());
}
