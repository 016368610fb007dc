#include "paper/letters.h"

#include <catch_amalgamated.hpp>

#include "page_judge.h"

using namespace bentbook;

// The advances are those of Noto Sans as its own table has them (fontTools, hmtx): 572 for a figure, 260 for a blank,
// in thousandths of an em.
TEST_CASE("printed words are as wide as their letters", "[paper]") {
  CHECK(paper::text_width("0123456789", 10, false) == Catch::Approx(10 * 5.72));
  CHECK(paper::text_width("1 1", 10, false) == Catch::Approx(10 * 1.404));
  CHECK(paper::text_width("", 10, true) == 0);
  CHECK(paper::text_width("Ñandú", 4, false) > paper::text_width("Ñand", 4, false));
  CHECK(paper::text_width("Sill", 4, true) > paper::text_width("Sill", 4, false));
}

TEST_CASE("figures of a fraction are small, one raised and one lowered", "[paper]") {
  const auto runs = paper::letter_runs("12′ 7 3⁄8″", 10, false);
  REQUIRE(runs.size() == 6);
  CHECK(runs[0].text == "12′ 7");
  CHECK((runs[1].text == " " && runs[1].size == 5));
  CHECK((runs[2].text == "3" && runs[2].size == 7 && runs[2].rise > 2));
  CHECK((runs[3].text == "⁄" && runs[3].rise == 0));
  CHECK((runs[4].text == "8" && runs[4].size == 7 && runs[4].rise < 0));
  CHECK(runs[5].text == "″");
  double width = 0;
  for (const auto& run : runs) width += run.width;
  CHECK(width == Catch::Approx(paper::text_width("12′ 7 3⁄8″", 10, false)));
}

TEST_CASE("a measure is never broken over two lines", "[paper]") {
  const auto lines = paper::wrapped_lines("Mark 12′ 7 3⁄8″ from the peak of 240 mm", 5, false, 30);
  std::string all;
  for (const std::string& line : lines) {
    all += line + "|";
    CHECK(paper::text_width(line, 5, false) <= 30);
  }
  CHECK(all == "Mark|12′ 7 3⁄8″|from the|peak of|240 mm|");
  CHECK(paper::wrapped_lines("Along the edge ≈ 7 3⁄8″", 5, false, paper::text_width("Along the edge ≈ 7", 5, false)) ==
        std::vector<std::string>{"Along the edge", "≈ 7 3⁄8″"});
  CHECK(paper::wrapped_lines("a\nb", 5, false, 100).size() == 2);
}

TEST_CASE("what is too wide ends in three dots", "[paper]") {
  CHECK(paper::shortened("Barn", 5, false, 100) == "Barn");
  const std::string cut = paper::shortened("A barn with a very long name", 5, false, 30);
  CHECK(cut.ends_with("…"));
  CHECK(paper::text_width(cut, 5, false) <= 30);
}

TEST_CASE("a text that the bold face cannot set stands in the regular one", "[paper]") {
  CHECK(paper::set_bold("Sill 7⁄8", true));
  CHECK_FALSE(paper::set_bold("Þ", true));
  CHECK(paper::text_width("Þa", 5, true) == paper::text_width("Þa", 5, false));
}

// Of the letters that Noto Sans itself has (fontTools, cmap) the app carries those of its languages; U+2300 it has not.
TEST_CASE("a letter that the face lacks is found, on a page too", "[paper]") {
  CHECK(paper::has_letters("Ñandú 7 3⁄8″", false));
  CHECK(paper::has_letters("Ñandú 7 3⁄8″", true));
  CHECK(paper::has_letters("Þ", true));  // in the regular one
  CHECK_FALSE(paper::has_letters("⌀ 1″", false));
  CHECK_FALSE(paper::has_letters("⌀ 1″", true));
  paper::Document document;
  document.pages.emplace_back();
  document.pages.back().texts.push_back({{50, 50}, 4, false, paper::Align::kLeft, 0, "⌀ 1″"});
  REQUIRE(faults_of(document).size() == 1);
  CHECK(faults_of(document).front().ends_with("letters that are not in the face: ⌀ 1″"));
}
