// Words beside a piece on its page: their leaders.

#include "draw/tape_page.h"

#include <algorithm>
#include <catch_amalgamated.hpp>
#include <cmath>
#include <utility>
#include <vector>

#include "book/book.h"
#include "frame/placing/solve_frame.h"
#include "frame/sheet/face_marks.h"
#include "words/face_words.h"

using namespace bentbook;

namespace {

constexpr auto letters = [](std::string_view text, draw::TapeText size) -> draw::Size {
  const double high = size == draw::TapeText::kNumber ? 20 : size == draw::TapeText::kStrong ? 15 : 13;
  const auto wide = std::count_if(text.begin(), text.end(), [](char c) { return (c & 0xC0) != 0x80; });  // of UTF-8
  return {static_cast<double>(wide) * high / 2, high};
};

using Leader = std::pair<draw::Point, draw::Point>;

/// From brackets to words: what runs on to the left from where brackets stand.
std::vector<Leader> leaders_of(const draw::TapePage& page) {
  std::vector<Leader> found;
  for (const draw::PlacedLine& line : page.lines)
    if (!line.ordinary && line.a.x < page.left - 8 && line.b.x < line.a.x) found.emplace_back(line.a, line.b);
  return found;
}

int crossings(const std::vector<Leader>& leaders) {
  int count = 0;
  for (std::size_t i = 0; i < leaders.size(); ++i)
    for (std::size_t k = 0; k < i; ++k) {
      const auto& [a, b] = leaders[i];
      const auto& [c, d] = leaders[k];
      count += (a.y - c.y) * (b.y - d.y) < -1e-9 ? 1 : 0;  // all begin at one x and end at one
    }
  return count;
}

}  // namespace

TEST_CASE("words that had to give way keep a straight leader where their bracket reaches beside them", "[draw]") {
  draw::TapeStrip strip;
  strip.length = 12;
  strip.width = 8;
  strip.rows = {{0, 0, "0", {}}, {12, 0, "12", {}}};
  strip.whole = {{0, 12}};
  const draw::TapeLine word{{"word"}, draw::TapeText::kStrong};
  strip.blocks = {{0, 12, {word, word, word, word}}, {5, 7, {word, word, word, word}}};
  draw::TapeOptions options;
  options.width = 358;
  options.room = 1000;
  const std::vector<draw::TapePage> pages = draw::lay_out_tape(strip, options, letters);
  int straight = 0, slanted = 0;
  for (const draw::TapePage& page : pages) {
    CHECK(crossings(leaders_of(page)) == 0);
    for (const auto& [from, to] : leaders_of(page)) (std::abs(from.y - to.y) < 1e-9 ? straight : slanted)++;
  }
  CHECK(straight == 1);  // the long one's; the short one's words stand off its bracket
  CHECK(slanted == 1);
}

TEST_CASE("on a narrow page the piece gives way to the words before they become letters", "[draw]") {
  draw::TapeStrip strip;
  strip.length = 12;
  strip.width = 8;
  strip.rows = {{0, 0, "10 11 15/16", {}}, {12, 0, "11 11 15/16", {}}};
  strip.blocks = {{0, 12, {{{"Housing"}, draw::TapeText::kNote}, {{"B-A1.12"}, draw::TapeText::kStrong}}}};
  draw::TapeOptions options;
  options.room = 1000;
  options.side = 76;
  const auto words = [&](double width) {
    options.width = width;
    std::vector<std::string> said;
    const auto pages = draw::lay_out_tape(strip, options, letters);
    for (const draw::TapePlaced& text : pages.front().texts)
      if (text.block >= 0) said.push_back(text.text);
    return said;
  };
  const std::vector<std::string> whole{"Housing", "B-A1.12"};
  CHECK(words(288) == whole);  // 288 − 38 − 82.5 of numbers − 16 − 76: 75 px are left of 52.5
  CHECK(words(245) == whole);  // the piece is 55 px wide
  CHECK(words(200).front() == "a");
}

TEST_CASE("no two leaders of words cross on any face of a frame, on any phone", "[draw][faces]") {
  const Book book =
      new_book("Barn", Length::feet(24), Length::feet(36), Length::feet(10), Slope::in_12(Length::inches(9)));
  const auto frame = solve_frame(book.frame);
  REQUIRE(frame);
  int leaders = 0, crossed = 0;
  double slant = 0, most = 0;
  for (int t = 0; t < static_cast<int>(frame->timbers.size()); ++t) {
    const Timber& timber = frame->timbers[static_cast<std::size_t>(t)];
    const Sheet sheet = solve_sheet(*frame, t, saw_of(book));
    for (const Face face : kFaces)
      for (const double width : {288.0, 358.0}) {
        draw::TapeOptions options;
        options.width = width;
        options.room = width > 300 ? 500 : 240;
        options.side = width * 0.31;
        const draw::TapeStrip strip = face_strip(*frame, timber, face_marks(timber, sheet, face), {});
        for (const draw::TapePage& page : draw::lay_out_tape(strip, options, letters)) {
          const std::vector<Leader> on_page = leaders_of(page);
          leaders += static_cast<int>(on_page.size());
          const int here = crossings(on_page);
          if (here > 0) UNSCOPED_INFO(timber.mark << " face " << static_cast<int>(face) << ": " << here);
          crossed += here;
          for (const auto& [from, to] : on_page) {
            slant += std::abs(from.y - to.y);
            most = std::max(most, std::abs(from.y - to.y));
          }
        }
      }
  }
  INFO(leaders << " leaders, off level by " << slant / leaders << " px each, " << most << " at most");
  CHECK(leaders > 500);
  CHECK(crossed == 0);
  // Less than a line of words, at most a few: each stands beside what it is of, and leaders are told apart.
  CHECK(slant / leaders < 6);
  CHECK(most < 45);
}
