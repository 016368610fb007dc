// bentbook book …, with files in memory.

#include <rapidjson/document.h>

#include <algorithm>
#include <catch_amalgamated.hpp>
#include <cstdio>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "book/book.h"
#include "book/book_file.h"
#include "command/book.h"
#include "model/book_model.h"
#include "numeric/libm.h"
#include "words/frame_text.h"
#include "words/frame_words.h"

using namespace bentbook;

namespace {

struct Desk {
  std::map<std::string, std::string, std::less<>> files;
  CommandOutput run(std::initializer_list<std::string_view> words) {
    const std::vector<std::string_view> args(words);
    return book_command(args, {[this](std::string_view path) -> std::optional<std::string> {
                                 const auto it = files.find(path);
                                 if (it == files.end()) return std::nullopt;
                                 return it->second;
                               },
                               [this](std::string_view path, std::string_view bytes) {
                                 files[std::string(path)] = bytes;
                                 return true;
                               }});
  }
};

Desk with_book() {
  Desk desk;
  REQUIRE(
      desk.run({"new", "a.book", "--span", "20'", "--length", "24'", "--height", "10'", "--pitch", "8:12"}).exit_code ==
      0);
  return desk;
}

rapidjson::Document parsed(const CommandOutput& output) {
  INFO(output.err);
  REQUIRE(output.exit_code == 0);
  rapidjson::Document document;
  document.Parse(output.out.data(), output.out.size());
  REQUIRE(!document.HasParseError());
  return document;
}

}  // namespace

TEST_CASE("members: each timber with what the frame knows of it", "[answers]") {
  Desk desk = with_book();
  const auto json = parsed(desk.run({"members", "a.book", "--json"}));
  const auto& members = json["members"];
  REQUIRE(members.Size() > 40);
  double weight = 0;
  for (const auto& m : members.GetArray()) {
    for (const char* key :
         {"mark", "kind", "section", "length_in", "volume_in3", "weight_lb", "cg_in", "cuts", "features", "contacts"})
      CHECK(m.HasMember(key));
    CHECK(m["cuts"].Size() >= 2);
    CHECK(m["contacts"].Size() >= 1);
    CHECK(m["cg_in"].Size() == 3);
    weight += m["weight_lb"].GetDouble();
  }
  CHECK(json["weight_lb"].GetDouble() == Catch::Approx(weight));
  const auto& post = members[0];
  CHECK(std::string(post["mark"].GetString()) == "P-A1");
  CHECK(std::string(post["kind"].GetString()) == "post");
  CHECK(std::string(post["section"].GetString()) == "8x8");
}

// Eight pieces 1 x 4 x 14 ft are 37 1/3 board feet (US Army subcourse EN5155); green white oak weighs 63 lb/ft³
// (computed from USDA FIA REF_SPECIES), so that four cubic feet weigh 252 lb.
TEST_CASE("board feet and weight of a list", "[answers]") {
  Desk desk;
  REQUIRE(desk.run({"new", "l.book", "--list"}).exit_code == 0);
  std::string list = "mark,breadth,depth,length,species\n";
  for (int i = 0; i < 8; ++i) list += "B" + std::to_string(i) + ",1,4,13' 10,\n";
  desk.files["boards.csv"] = list;
  REQUIRE(desk.run({"import", "l.book", "boards.csv"}).exit_code == 0);
  CHECK(parsed(desk.run({"members", "l.book", "--json"}))["board_feet"].GetDouble() ==
        Catch::Approx(37.333).margin(0.001));

  Book book = *read_book(desk.files["l.book"]);
  book.frame.added.resize(1);
  book.frame.moisture = 68.27;
  HandTimber& oak = book.frame.added[0];
  oak.wood.nominal = oak.wood.design = oak.wood.actual = {Length::inches(8), Length::inches(8)};
  oak.length = Length::feet(9);
  oak.species = common_species()[2];
  desk.files["oak.book"] = write_book(book);
  const auto json = parsed(desk.run({"members", "oak.book", "--json"}));
  CHECK(json["members"][0]["volume_in3"].GetDouble() == Catch::Approx(4 * 1728));
  CHECK(json["members"][0]["weight_lb"].GetDouble() == Catch::Approx(252).margin(0.5));
}

// A closed mesh has each edge once in each direction; its volume is the sum of a·(b × c)/6 (divergence theorem).
TEST_CASE("the mesh file holds one closed mesh a timber, of the volume that is told", "[answers]") {
  Desk desk = with_book();
  const CommandOutput obj = desk.run({"export", "a.book", "--format", "obj"});
  REQUIRE(obj.exit_code == 0);
  std::vector<Vec3> corners;
  std::map<std::string, double> volumes;
  std::map<std::pair<int, int>, int> edges;
  std::string mark;
  for (std::size_t at = 0; at < obj.out.size();) {
    const std::size_t end = obj.out.find('\n', at);
    const std::string line = obj.out.substr(at, end - at);
    at = end + 1;
    char* rest = const_cast<char*>(line.c_str()) + 1;
    if (line[0] == 'o') mark = line.substr(2);
    if (line[0] == 'v') {
      const double x = std::strtod(rest, &rest), y = std::strtod(rest, &rest), z = std::strtod(rest, &rest);
      corners.push_back({x, y, z});
    }
    if (line[0] != 'f') continue;
    int c[3];
    for (int& corner : c) corner = static_cast<int>(std::strtol(rest, &rest, 10)) - 1;
    for (int k = 0; k < 3; ++k) ++edges[{c[k], c[(k + 1) % 3]}];
    const auto p = [&](int i) { return corners.at(static_cast<std::size_t>(c[i])); };
    volumes[mark] += dot(p(0), cross(p(1), p(2))) / 6;
  }
  bool closed = true;
  for (const auto& [edge, count] : edges) {
    const auto back = edges.find({edge.second, edge.first});
    closed = closed && count == 1 && back != edges.end() && back->second == 1;
  }
  CHECK(closed);
  const auto json = parsed(desk.run({"members", "a.book", "--json"}));
  for (const auto& m : json["members"].GetArray()) {
    INFO(m["mark"].GetString());
    CHECK(volumes[m["mark"].GetString()] == Catch::Approx(m["volume_in3"].GetDouble()).epsilon(1e-6));
  }
  CHECK(volumes.size() == json["members"].Size());
}

TEST_CASE("a sheet by mark, as text in both languages and as JSON", "[answers]") {
  Desk desk = with_book();
  const auto json = parsed(desk.run({"sheet", "a.book", "C-A1", "--json"}));
  CHECK(json["steps"].Size() >= 3);
  // 8 in 12 is 33.690 degrees (NAVEDTRA 14044's tables of pitch; atan(8/12)).
  CHECK(json["steps"][0]["saw"][0]["table_deg"].GetDouble() == Catch::Approx(33.690).margin(0.001));
  CHECK(json["cuts"][0]["arrises"].Size() == 4);
  CHECK(json["recesses"].Size() == 1);
  CHECK(desk.run({"sheet", "a.book", "C-A1"}).out.find("Bird’s mouth") != std::string::npos);
  CHECK(desk.run({"sheet", "a.book", "C-A1", "--lang", "es"}).out.find("Boca de pájaro") != std::string::npos);
  CHECK(desk.run({"export", "a.book", "--format", "svg", "--mark", "P-A1"}).out.find("<svg") != std::string::npos);
  CHECK(desk.run({"sheet", "a.book", "Z-9"}).exit_code == 2);
  CHECK(desk.run({"sheet", "a.book", "C-A1", "--saw", "none"}).exit_code == 2);
  CHECK(desk.run({"sheet", "a.book", "C-A1", "--saw", "Bar on a table"}).exit_code == 0);
}

TEST_CASE("books are left alone by what is refused", "[answers]") {
  Desk desk = with_book();
  const std::string before = desk.files["a.book"];
  CHECK(desk.run({"new", "a.book"}).exit_code == 2);
  desk.files["bad.csv"] = "mark,breadth,depth,length\nA,8,8,10'\nB,8,x,10'\n";
  const CommandOutput refused = desk.run({"import", "a.book", "bad.csv"});
  CHECK(refused.exit_code == 2);
  CHECK(refused.err.find("Line 3, depth") != std::string::npos);
  CHECK(desk.files["a.book"] == before);
  CHECK(desk.run({"import", "a.book", "bad.csv", "--good"}).exit_code == 0);
  CHECK(read_book(desk.files["a.book"])->frame.added.size() == 1);
  CHECK(desk.run({"check", "none.book"}).exit_code == 2);
  desk.files["newer.book"] = R"({"file":"book","version":9})";
  const CommandOutput newer = desk.run({"check", "newer.book"});
  CHECK(newer.exit_code == 2);
  CHECK(newer.err.find("newer version") != std::string::npos);
  CHECK(desk.run({"new", "b.book", "--span", "-4'"}).exit_code == 2);
  CHECK(desk.files.count("b.book") == 0);
  CHECK(desk.run({}).exit_code == 2);
  CHECK(desk.run({"paint", "a.book"}).exit_code == 2);
}

TEST_CASE("a book begins with hipped ends, of another pitch and with dragon ties by choice", "[answers][hipframe]") {
  Desk desk;
  REQUIRE(desk.run({"new", "h.book", "--roof", "hip", "--span", "24'", "--length", "48'", "--height", "10'", "--pitch",
                    "9:12"})
              .exit_code == 0);
  const Book book = *read_book(desk.files["h.book"]);
  CHECK(book.frame.form == RoofForm::kHip);
  CHECK(book.frame.hips.pitch == book.frame.pitch_left);
  CHECK(book.frame.bays.front().width == Length::feet(12));
  REQUIRE(desk.run({"new", "o.book", "--roof", "hip", "--span", "24'", "--length", "48'", "--end-pitch", "10:12",
                    "--dragon-ties"})
              .exit_code == 0);
  const Book other = *read_book(desk.files["o.book"]);
  CHECK(other.frame.hips.pitch == Slope::in_12(Length::inches(10)));
  CHECK(other.frame.hips.dragon_ties);
  const auto json = parsed(desk.run({"check", "o.book", "--json"}));
  CHECK(json["findings"].GetArray().Size() == 1);
  REQUIRE(desk.run({"new", "l.book", "--roof", "lean_to"}).exit_code == 0);
  CHECK(read_book(desk.files["l.book"])->frame.form == RoofForm::kLeanTo);
  // Shorter than its hips: told, with what would do.
  const CommandOutput shorter = desk.run({"new", "s.book", "--roof", "hip", "--span", "24'", "--length", "16'"});
  CHECK(shorter.exit_code == 2);
  CHECK(shorter.err.find("Bays") != std::string::npos);
  CHECK(desk.files.count("s.book") == 0);
  CHECK(desk.run({"new", "m.book", "--roof", "mansard"}).exit_code == 2);
  // What is asked of hipped ends alone is not dropped where there are none.
  const auto stray = [&](std::initializer_list<std::string_view> words, std::string_view name) {
    const CommandOutput refused = desk.run(words);
    CHECK(refused.exit_code == 2);
    CHECK(refused.err.find(name) != std::string::npos);
    CHECK(desk.files.count("g.book") == 0);
  };
  stray({"new", "g.book", "--end-pitch", "10:12"}, "--end-pitch");
  stray({"new", "g.book", "--roof", "gable", "--dragon-ties"}, "--dragon-ties");
  stray({"new", "g.book", "--roof", "lean_to", "--end-pitch", "10:12"}, "--end-pitch");
}

TEST_CASE("check says that nothing is engineered, and the thrust of a roof that nothing ties", "[answers]") {
  Desk desk = with_book();
  CHECK(desk.run({"check", "a.book"}).out.find("not engineered") != std::string::npos);
  Book book = *read_book(desk.files["a.book"]);
  book.frame.ties = false;
  book.frame.peak = Peak::kPair;
  desk.files["loose.book"] = write_book(book);
  const auto json = parsed(desk.run({"check", "loose.book", "--json"}));
  bool thrust = false;
  for (const auto& f : json["findings"].GetArray()) thrust = thrust || std::string(f["id"].GetString()) == "thrust";
  CHECK(thrust);
}

TEST_CASE("the list of timbers by hand goes out and comes back", "[answers]") {
  Desk desk;
  REQUIRE(desk.run({"new", "l.book", "--list"}).exit_code == 0);
  desk.files["in.csv"] = "mark,breadth,depth,length,b_angle\nA,8,8,10',30\n";
  REQUIRE(desk.run({"import", "l.book", "in.csv"}).exit_code == 0);
  REQUIRE(desk.run({"export", "l.book", "--format", "csv", "--out", "out.csv"}).exit_code == 0);
  REQUIRE(desk.run({"new", "m.book", "--list"}).exit_code == 0);
  REQUIRE(desk.run({"import", "m.book", "out.csv"}).exit_code == 0);
  CHECK(read_book(desk.files["l.book"])->frame.added == read_book(desk.files["m.book"])->frame.added);
}

namespace {

void keys_of(const rapidjson::Value& value, std::set<std::string>& found) {
  if (value.IsArray())
    for (const auto& item : value.GetArray()) keys_of(item, found);
  if (!value.IsObject()) return;
  for (const auto& member : value.GetObject()) {
    found.insert(member.name.GetString());
    keys_of(member.value, found);
  }
}

}  // namespace

TEST_CASE("the command line's README names each key of the book's answers", "[answers]") {
  Desk desk = with_book();
  std::set<std::string> keys;
  keys_of(parsed(desk.run({"members", "a.book", "--json"})), keys);
  keys_of(parsed(desk.run({"check", "a.book", "--json"})), keys);
  for (const char* mark : {"P-A2", "C-A1", "B-A1.1", "T-2"})
    keys_of(parsed(desk.run({"sheet", "a.book", mark, "--json"})), keys);
  // From the project's root, where the suites run.
  std::FILE* file = std::fopen("native-app/README.md", "rb");
  REQUIRE(file != nullptr);
  std::string readme(200'000, '\0');
  readme.resize(std::fread(readme.data(), 1, readme.size(), file));
  std::fclose(file);
  const std::string section = readme.substr(readme.find("## bentbook book"));
  for (const std::string& key : keys) {
    const bool twin = key.ends_with("_text") && keys.count(key.substr(0, key.size() - 5) + "_in") != 0;
    INFO(key);
    CHECK((twin || section.find("`" + key + "`") != std::string::npos));
  }
  CHECK(keys.size() > 60);
}

TEST_CASE("every kind, feature, joint, finding and warning has its words in both languages", "[answers]") {
  const auto said = [](std::string_view key) {
    const auto msg = find_msg(key);
    INFO(key);
    CHECK(msg.has_value());
  };
  for (int i = 0; i < kTimberKinds; ++i)
    CHECK(kind_name(static_cast<TimberKind>(i), Language::kEs) != kind_name(static_cast<TimberKind>(i), Language::kEn));
  for (int i = 0; i <= static_cast<int>(FindingId::kMiddleUncarried); ++i)
    said("finding_" + std::string(finding_key(static_cast<FindingId>(i))));
  for (int i = 0; i <= static_cast<int>(WarningId::kFeaturesMeet); ++i)
    said("warning_" + std::string(warning_key(static_cast<WarningId>(i))));
}

TEST_CASE("a new frame of any usual size warns of nothing but that nobody engineered it", "[frame]") {
  for (const int span : {12, 16, 24, 30, 40})
    for (const int pitch : {3, 4, 6, 9, 12, 16})
      for (const int height : {8, 9, 10, 14}) {
        CAPTURE(span, pitch, height);
        const Book book = new_book("", Length::feet(span), Length::feet(36), Length::feet(height),
                                   Slope::in_12(Length::inches(pitch)));
        const BookModel model = solve(book);
        REQUIRE(*model.frame);
        const std::string said = check_text(book, **model.frame, {});
        CHECK(said == finding_text({FindingId::kNotEngineered, {}, {}, 0}, {}) + "\n");
        // Every rafter still bears on its plate. Source: IRC R802.6, 1 1/2 in on wood.
        CHECK(std::get<BirdsMouth>(book.frame.joints[static_cast<std::size_t>(Meeting::kRafterPlate)]).seat >=
              Length::inches(3, 2));
      }
}

TEST_CASE("what is said of many timbers alike is said once, with their marks in short", "[frame]") {
  Book book = new_book("", Length::feet(24), Length::feet(36), Length::feet(10), Slope::in_12(Length::inches(9)));
  std::get<BirdsMouth>(book.frame.joints[static_cast<std::size_t>(Meeting::kRafterPlate)]).seat = Length::inches(7, 2);
  const BookModel model = solve(book);
  REQUIRE(*model.frame);
  const std::string said = check_text(book, **model.frame, {});
  CHECK(std::count(said.begin(), said.end(), '\n') == 2);
  CHECK(said.find("C-A1, C-E1, C-A1.1, C-E1.1 and 38 more: The notch takes 35 %") != std::string::npos);
}

TEST_CASE("an identity that is none is said at every command, and gone when the book is written", "[answers]") {
  Desk desk = with_book();
  Book book = *read_book(desk.files["a.book"]);
  book.identity = "../../x";
  desk.files["a.book"] = write_book(book);
  const CommandOutput check = desk.run({"check", "a.book"});
  CHECK(check.err.find("identity") != std::string::npos);
  CHECK(check.out.find("identity") == std::string::npos);
  desk.files["l.csv"] = "mark,breadth,depth,length\nS-1,8,8,12'\n";
  CHECK(desk.run({"import", "a.book", "l.csv"}).exit_code == 0);
  CHECK(desk.files["a.book"].find("../x") == std::string::npos);
  CHECK(desk.run({"check", "a.book"}).err.empty());
}
