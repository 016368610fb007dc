#pragma once
/// What must hold of any printed page: words off each other and on the paper, nothing too small to be read off a wall,
/// no letter that its face lacks; words off lines too where the drawing may leave out a piece of a line.

#include <algorithm>
#include <catch_amalgamated.hpp>
#include <cstdint>
#include <string>
#include <vector>

#include "draw/box.h"
#include "numeric/libm.h"
#include "paper/letters.h"
#include "paper/page_part.h"

namespace bentbook {

/// The box around a text's letters from `up` over its line to `down` under it, in ems.
inline draw::Box letters_of(const paper::PageText& text, double up, double down) {
  const double width = paper::text_width(text.text, text.size, text.bold);
  const double middle = paper::start_of(text.align, width) + width / 2;
  const double rise = (up - down) / 2 * text.size, turn = text.turn_deg * libm::kDegree;
  const double c = libm::cos(turn), s = libm::sin(turn);
  return {
      {text.at.x + middle * c - rise * s, text.at.y - middle * s - rise * c}, width, (up + down) * text.size, -turn};
}

/// The ink of a text: capitals and what hangs below the line.
inline draw::Box ink_of(const paper::PageText& text) { return letters_of(text, 0.76, 0.22); }

/// A full-size pattern's lines are whole: it is laid on the wood, pages are joined along them.
enum class Lines : std::uint8_t { kOffWords, kWhole };

/// Faults of a page in words, empty where there are none.
inline std::vector<std::string> faults_of(const paper::Document& document, Lines lines = Lines::kOffWords) {
  constexpr double kLeastMargin = 5, kLeastCapital = 2.4;  // mm
  std::vector<std::string> faults;
  int number = 0;
  for (const paper::Page& page : document.pages) {
    ++number;
    const auto fault = [&](const std::string& what) {
      faults.push_back("page " + std::to_string(number) + ": " + what);
    };
    const paper::PageMeasure measure = paper::measure_of(document.size, page.lying);
    const auto on_paper = [&](draw::Point p) {
      return p.x >= kLeastMargin && p.y >= kLeastMargin && p.x <= measure.width - kLeastMargin &&
             p.y <= measure.height - kLeastMargin;
    };
    std::vector<draw::Box> boxes;
    boxes.reserve(page.texts.size());
    for (const paper::PageText& text : page.texts) {
      if (text.size * paper::kCapital < kLeastCapital) fault("too small: " + text.text);
      if (text.text.empty()) fault("an empty text");
      if (!paper::has_letters(text.text, text.bold)) fault("letters that are not in the face: " + text.text);
      const draw::Box box = ink_of(text);
      for (const draw::Point& corner : draw::corners(box))
        if (!on_paper(corner)) {
          fault("off the page: " + text.text);
          break;
        }
      for (std::size_t i = 0; i < boxes.size(); ++i)
        if (draw::overlap(draw::grown(box, -0.05), draw::grown(boxes[i], -0.05)))
          fault("overprinted: " + page.texts[i].text + " | " + text.text);
      boxes.push_back(box);
    }
    for (const paper::PageLine& line : page.lines)
      if (!on_paper(line.a) || !on_paper(line.b)) fault("a line off the page");
    // Lines are painted over what lies under a word to keep it clear.
    for (const paper::PageText& text : page.texts) {
      const draw::Box capitals = draw::grown(letters_of(text, paper::kCapital, 0), -0.1);
      if (lines == Lines::kOffWords &&
          std::any_of(page.lines.begin(), page.lines.end(),
                      [&](const paper::PageLine& line) { return draw::crosses(capitals, line.a, line.b); }))
        fault("struck: " + text.text);
    }
    for (const paper::PagePolygon& polygon : page.polygons)
      for (const draw::Point& p : polygon.points)
        if (!on_paper(p)) fault("a shape off the page");
  }
  return faults;
}

/// All of them, a line each.
inline std::string said(const std::vector<std::string>& faults) {
  std::string out;
  for (const std::string& fault : faults) out += fault + "\n";
  return out;
}

}  // namespace bentbook
