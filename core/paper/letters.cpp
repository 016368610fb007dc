#include "paper/letters.h"

#include <algorithm>
#include <cstdint>
#include <iterator>

#include "paper/letters.gen.h"
#include "text/utf8.h"

namespace bentbook::paper {
namespace {

constexpr std::string_view kStroke = "\u2044", kFoot = "\u2032", kAbout = "\u2248", kDots = "\u2026";
constexpr std::string_view kUnitWords[] = {"mm", "cm", "m", "kg", "lb", "lbs", "%"};
constexpr double kRaised = kCapital * (1 - kSmallFigure + 0.03), kLowered = -kCapital * 0.06;  // as on the screen
constexpr double kNarrow = 0.5;  // of a blank, before a fraction
constexpr int kUnknown = 600;    // the advance of the sign for a letter that no face has

bool figure_at(std::string_view text, std::size_t i) { return i < text.size() && text[i] >= '0' && text[i] <= '9'; }

std::size_t past_figures(std::string_view text, std::size_t i) {
  while (figure_at(text, i)) ++i;
  return i;
}

/// Where the fraction at `i` has its stroke; npos where none starts there.
std::size_t stroke_of(std::string_view text, std::size_t i) {
  const std::size_t stroke = past_figures(text, i);
  const bool fraction =
      stroke > i && text.substr(stroke, kStroke.size()) == kStroke && figure_at(text, stroke + kStroke.size());
  return fraction ? stroke : std::string_view::npos;
}

const Letter* letter_of(std::string_view character) {
  const std::uint32_t code = code_point(character);
  const auto* found = std::lower_bound(std::begin(kLetters), std::end(kLetters), code,
                                       [](const Letter& letter, std::uint32_t c) { return letter.code < c; });
  return found != std::end(kLetters) && found->code == code ? found : nullptr;
}

int advance(std::string_view character, bool bold) {
  const Letter* letter = letter_of(character);
  if (!letter) return kUnknown;
  return bold && letter->bold > 0 ? letter->bold : letter->regular;
}

double advances(std::string_view text, bool bold) {
  int sum = 0;
  for (std::size_t i = 0, end = 0; i < text.size(); i = end) {
    end = end_of_character(text, i);
    sum += advance(text.substr(i, end - i), bold);
  }
  return sum / 1000.0;
}

/// Whether the blank at `i` stands inside a measure: between feet, inches and fraction, before its unit, or behind the
/// sign that it is rounded.
bool inside_measure(std::string_view text, std::size_t i) {
  const std::string_view before = text.substr(0, i), after = text.substr(i + 1);
  if (before.ends_with(kAbout)) return true;
  if (before.ends_with(kFoot)) return figure_at(after, 0);
  if (before.empty() || !figure_at(before, i - 1)) return false;
  if (stroke_of(after, 0) != std::string_view::npos) return true;
  return std::any_of(std::begin(kUnitWords), std::end(kUnitWords), [&](std::string_view unit) {
    return after.starts_with(unit) && (after.size() == unit.size() ||
                                       std::string_view(" .,;:)").find(after[unit.size()]) != std::string_view::npos);
  });
}

}  // namespace

bool set_bold(std::string_view text, bool bold) {
  for (std::size_t i = 0, end = 0; bold && i < text.size(); i = end) {
    end = end_of_character(text, i);
    const Letter* letter = letter_of(text.substr(i, end - i));
    bold = !letter || letter->bold > 0;
  }
  return bold;
}

bool has_letters(std::string_view text, bool bold) {
  bold = set_bold(text, bold);
  for (std::size_t i = 0, end = 0; i < text.size(); i = end) {
    end = end_of_character(text, i);
    const Letter* letter = letter_of(text.substr(i, end - i));
    if (letter == nullptr || (bold && letter->bold == 0)) return false;
  }
  return true;
}

std::vector<LetterRun> letter_runs(std::string_view text, double size, bool bold) {
  std::vector<LetterRun> runs;
  if (!is_utf8(text)) return runs;
  bold = set_bold(text, bold);
  const auto add = [&](std::string_view part, double share, double rise) {
    if (!part.empty()) runs.push_back({part, size * share, size * rise, size * share * advances(part, bold)});
  };
  std::size_t from = 0;
  for (std::size_t i = 0; i < text.size();) {
    const bool starts = figure_at(text, i) && (i == 0 || !figure_at(text, i - 1));
    const std::size_t stroke = starts ? stroke_of(text, i) : std::string_view::npos;
    if (stroke == std::string_view::npos) {
      ++i;
      continue;
    }
    const bool narrow = i >= from + 2 && text[i - 1] == ' ' && figure_at(text, i - 2);
    add(text.substr(from, i - from - (narrow ? 1 : 0)), 1, 0);
    if (narrow) add(text.substr(i - 1, 1), kNarrow, 0);
    const std::size_t low = stroke + kStroke.size(), end = past_figures(text, low);
    add(text.substr(i, stroke - i), kSmallFigure, kRaised);
    add(text.substr(stroke, kStroke.size()), 1, 0);
    add(text.substr(low, end - low), kSmallFigure, kLowered);
    from = i = end;
  }
  add(text.substr(from), 1, 0);
  return runs;
}

double text_width(std::string_view text, double size, bool bold) {
  double width = 0;
  for (const LetterRun& run : letter_runs(text, size, bold)) width += run.width;
  return width;
}

std::vector<std::string> wrapped_lines(std::string_view text, double size, bool bold, double width) {
  std::vector<std::string> lines;
  std::string line;
  for (std::size_t i = 0; i <= text.size();) {
    std::size_t end = i;
    while (end < text.size() && text[end] != '\n' && (text[end] != ' ' || inside_measure(text, end))) ++end;
    const std::string_view word = text.substr(i, end - i);
    std::string longer = line;
    if (!longer.empty()) longer += ' ';
    longer += word;
    if (!line.empty() && text_width(longer, size, bold) > width) {
      lines.push_back(std::move(line));
      line = word;
    } else {
      line = std::move(longer);
    }
    if (end == text.size() || text[end] == '\n') {
      lines.push_back(std::move(line));
      line.clear();
    }
    i = end + 1;
  }
  return lines;
}

std::string shortened(std::string_view text, double size, bool bold, double width) {
  std::string all(text);
  if (text_width(all, size, bold) <= width) return all;
  while (!all.empty()) {
    drop_last_character(all);
    std::string dotted = all + std::string(kDots);
    if (text_width(dotted, size, bold) <= width) return dotted;
  }
  return all;
}

}  // namespace bentbook::paper
