// Pieces for QR codes, labels, codes. What an outside reader makes of the codes: tests/suites/codes.sh.

#include <algorithm>
#include <catch_amalgamated.hpp>
#include <set>

#include "paper/code.h"
#include "random.h"
#include "shop/log/chunk.h"

using namespace bentbook;

namespace {

std::string random_bytes(Random& random, std::size_t size) {
  std::string bytes;
  for (std::size_t i = 0; i < size; ++i) bytes += static_cast<char>(random.whole(-128, 127));
  return bytes;
}

}  // namespace

TEST_CASE("Base45 as RFC 9285 has it", "[shop]") {
  // RFC 9285, sections 4.3 and 4.4.
  CHECK(base45("AB") == "BB8");
  CHECK(base45("Hello!!") == "%69 VD92EX0");
  CHECK(base45("base-45") == "UJCLQE7W581");
  CHECK(*read_base45("QED8WEX0") == "ietf!");
  CHECK(!read_base45("GGW"));              // section 4.4: 65536 is refused
  CHECK(read_base45("FGW")->size() == 2);  // 65535
  CHECK(!read_base45(":::"));
  CHECK(!read_base45("A"));
  CHECK(!read_base45("BBa"));
  CHECK(read_base45("")->empty());
}

TEST_CASE("pieces come together in any order, twice or broken off", "[shop]") {
  Random random(430);
  const std::string bytes = random_bytes(random, 2345);
  std::vector<std::string> texts = *make_chunks(bytes, 300);
  REQUIRE(texts.size() == 8);
  for (std::size_t i = texts.size(); i > 1; --i)
    std::swap(texts[i - 1], texts[static_cast<std::size_t>(random.whole(0, static_cast<std::int64_t>(i) - 1))]);
  Chunks chunks;
  for (std::size_t i = 0; i < 5; ++i) CHECK(*take_chunk(chunks, texts[i]) == Taken::kNew);
  CHECK(*take_chunk(chunks, texts[2]) == Taken::kKnown);
  CHECK(joined(chunks).error().code == ErrorCode::kMissing);
  Chunks later;  // another day
  for (const std::string& text : chunk_texts(chunks)) CHECK(take_chunk(later, text));
  CHECK(later.count() == 5);
  for (std::size_t i = 5; i < 8; ++i) CHECK(take_chunk(later, texts[i]));
  CHECK(later.complete());
  CHECK(*joined(later) == bytes);
  // A piece of another set changes nothing.
  const std::vector<std::string> others = *make_chunks(bytes + "x", 300);
  CHECK(take_chunk(later, others[0]).error().code == ErrorCode::kConflict);
  CHECK(*joined(later) == bytes);
}

TEST_CASE("pieces of several sets that come mixed each go to their own", "[shop]") {
  Random random(431);
  std::vector<std::string> whole;
  std::vector<std::vector<std::string>> texts;
  whole.reserve(4);
  texts.reserve(4);
  for (int i = 0; i < 4; ++i) {
    whole.push_back(random_bytes(random, 900 + static_cast<std::size_t>(i)));
    texts.push_back(*make_chunks(whole.back(), 300));
  }
  std::vector<Chunks> sets;
  for (std::size_t n = 0; n < 3; ++n)
    for (std::size_t i = 0; i < 4; ++i)
      if (i != 3 || n == 0) CHECK(take_chunk(sets, texts[i][n]));
  CHECK_FALSE(take_chunk(sets, "https://example.org/"));
  CHECK_FALSE(take_chunk(sets, ""));
  REQUIRE(sets.size() == kMostSets);
  for (const std::string& text : texts[2]) CHECK(*take_chunk(sets, text) == &sets[2]);
  CHECK((sets[2].count() == 4 && *joined(sets[2]) == whole[2]));
  // One more: the set with the fewest pieces goes, the others are as they were.
  CHECK(take_chunk(sets, make_chunks("one more", 300)->front()));
  REQUIRE(sets.size() == kMostSets);
  CHECK((sets[0].count() == 3 && sets[1].count() == 3 && sets[2].count() == 4));
  CHECK(*joined(sets[3]) == "one more");
}

TEST_CASE("a piece with any sign changed is refused", "[shop]") {
  const std::string text = (*make_chunks("a short log", 200))[0];
  for (std::size_t i = 0; i < text.size(); ++i)
    for (const char c : {'0', 'A', '/', ' ', 'a'}) {
      if (text[i] == c) continue;
      std::string changed = text;
      changed[i] = c;
      Chunks chunks;
      CHECK(!take_chunk(chunks, changed));
      CHECK(chunks.total == 0);
    }
  for (std::size_t n = 0; n < text.size(); ++n) {
    Chunks chunks;
    CHECK(!take_chunk(chunks, std::string_view(text).substr(0, n)));
  }
}

TEST_CASE("sizes of pieces", "[shop]") {
  CHECK(make_chunks("").error().code == ErrorCode::kEmpty);
  CHECK(make_chunks(std::string(16 * 999, 'x'), 16)->size() == 999);
  CHECK(make_chunks(std::string(16 * 999 + 1, 'x'), 16).error().code == ErrorCode::kTooLarge);
}

TEST_CASE("a label names book and timber", "[shop]") {
  const TimberLabel label{"b1", "P-A1.2"};
  CHECK(label_text(label) == "BB1T/B1/P-A1.2");
  for (const TimberLabel& each : {label, TimberLabel{"", "Ñandú 1/2"}, TimberLabel{"x9", "a%b"}})
    CHECK(*read_label(label_text(each)) == each);
  for (const char* bad : {"", "BB1T/", "BB1T/B1/", "BB1T/b1/P", "BB1T/B1/p", "BB1T/B1/%4", "BB1T/B1/%41", "BB1T/B1/%0A",
                          "BB1T/B 1/P", "BB1L/B1/P", "BB1T/B1"})
    CHECK(!read_label(bad));
}

TEST_CASE("a code's size is what the standard says", "[shop]") {
  // ISO/IEC 18004, version capacities: 25 signs of the alphanumeric mode are the most at 1-L (21 modules), 47 at 2-L
  // (25 modules); 4296 at 40-L (177 modules).
  const auto size = [](std::size_t n) { return make_code(std::string(n, 'A'), CodeLevel::kLow)->size; };
  CHECK(size(25) == 21);
  CHECK(size(26) == 25);
  CHECK(size(47) == 25);
  CHECK(size(4296) == 177);
  CHECK(make_code(std::string(4297, 'A'), CodeLevel::kLow).error().code == ErrorCode::kTooLarge);
  CHECK(make_code("", CodeLevel::kLow).error().code == ErrorCode::kEmpty);
  CHECK(make_code((*make_chunks(std::string(kChunkBytes, 'x')))[0], CodeLevel::kLow)->size == 81);
  // The finder at the top left: dark ring, light ring, dark middle.
  const Code code = *make_code("BB1T/B1/P-A1", CodeLevel::kHigh);
  CHECK((code.at(0, 0) && !code.at(1, 1) && code.at(3, 3) && !code.at(7, 7)));
}
