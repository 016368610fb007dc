#include "draw/tape_fit.h"

#include <algorithm>
#include <utility>

namespace bentbook::draw {
namespace {

constexpr double kBreakOver = 88;  // px: a longer gap is broken
constexpr double kLeastWords = 84;
constexpr double kLeastSide = 32, kSideForWords = 48;  // of the piece: before letters, beside words
constexpr double kMostPerInch = 18;
constexpr double kWholeUpTo = 16;  // inches: what is longer may be broken

class TapeFitter {
 public:
  TapeFitter(const TapeStrip& strip, const TapeOptions& options, TapeMeasure measure)
      : strip_(strip), options_(options), measure_(measure) {}

  TapeFit fit() {
    std::pair<bool, std::size_t> best{true, 0};  // words beside the piece before few pages
    double shrunk = 1;
    for (const double shrink : {1.0, 0.86, 0.72}) {
      set_columns(shrink);
      const std::pair now{fit_.columns.numbered, packed(options_.room).size()};
      if (best.second != 0 && now >= best) continue;
      best = now;
      shrunk = shrink;
    }
    set_columns(shrunk);
    fit_.pages = evened(packed(options_.room));
    return std::move(fit_);
  }

 private:
  [[nodiscard]] double width_of(std::string_view text, TapeText size) const { return measure_(text, size).w; }

  void set_columns(double shrink) {
    const double side = std::min(options_.side, strip_.width * kMostPerInch) * shrink;
    double widest = 0;
    for (const TapeBlock& block : strip_.blocks)
      for (const TapeLine& line : block.lines)
        for (const std::string& part : line.parts) widest = std::max(widest, width_of(part, line.size));
    const struct {
      TapeText number;
      double words;
    } tries[] = {{TapeText::kNumber, std::max(widest, kLeastWords)},
                 {TapeText::kStrong, std::max(widest, kLeastWords)},
                 {TapeText::kStrong, widest}};
    for (const auto& t : tries) {
      set_columns(side, t.number);
      if (fit_.columns.words >= t.words) return wrap();
    }
    set_columns(side, TapeText::kStrong);
    if (const double narrow = side - (widest - fit_.columns.words); narrow >= kSideForWords) {
      set_columns(narrow, TapeText::kStrong);
      return wrap();
    }
    // Letters for the words take the column; at last the piece gives way, then the numbers of the tape.
    double label = 0;
    for (std::size_t b = 0; b < strip_.blocks.size(); ++b)
      label = std::max(label, width_of(block_letter(b), TapeText::kStrong));
    for (const TapeText number : {TapeText::kStrong, TapeText::kNote}) {
      set_columns(side, number);
      if (fit_.columns.words < label) set_columns(std::max(kLeastSide, side - (label - fit_.columns.words)), number);
      if (fit_.columns.words >= label) break;
    }
    fit_.columns.numbered = true;
    wrap();
  }

  void set_columns(double side, TapeText number) {
    double numbers = 48;
    for (const TapeRow& row : strip_.rows)
      numbers = std::max({numbers, width_of(row.number, number), width_of(row.tag, TapeText::kNote)});
    TapeColumns& columns = fit_.columns;
    columns = {};
    columns.side = side;
    columns.scale = side / strip_.width;
    columns.right = options_.width - numbers - kTapeToNumbers;
    columns.left = columns.right - side;
    columns.words = columns.left - kTapeToWords;
    columns.number = number;
  }

  void wrap() {
    fit_.words.clear();
    for (std::size_t b = 0; b < strip_.blocks.size(); ++b) {
      if (fit_.columns.numbered)
        fit_.words.push_back({{{block_letter(b), TapeText::kStrong}}, measure_("0", TapeText::kStrong).h});
      else
        fit_.words.push_back(wrap_words(strip_.blocks[b], fit_.columns.words, measure_));
    }
  }

  [[nodiscard]] bool held_together(std::size_t row) const {
    const double a = strip_.rows[row].x, b = strip_.rows[row + 1].x;
    return std::any_of(strip_.whole.begin(), strip_.whole.end(), [&](const TapeSpan& s) {
      return s.to - s.from <= kWholeUpTo && a < s.to - 1e-6 && b > s.from + 1e-6;
    });
  }

  [[nodiscard]] std::vector<TapeIsland> islands() const {
    std::vector<TapeIsland> out{{0, 0}};
    for (std::size_t i = 0; i + 1 < strip_.rows.size(); ++i) {
      const double gap = (strip_.rows[i + 1].x - strip_.rows[i].x) * fit_.columns.scale;
      if (gap > kBreakOver && !held_together(i))
        out.push_back({i + 1, i + 1});
      else
        out.back().last = i + 1;
    }
    return out;
  }

  /// Where a stretch that is higher than a page goes on over the next one: the last row that still has room before a
  /// gap in which nothing is held together; the stretch's own last row where there is no such gap.
  [[nodiscard]] std::size_t last_with_room(std::vector<TapeIsland> all, std::size_t k, double room) const {
    const TapeIsland whole = all[k];
    std::size_t found = whole.last;
    all.insert(all.begin() + static_cast<std::ptrdiff_t>(k), whole);
    for (std::size_t row = whole.first; row < whole.last; ++row) {
      if (held_together(row)) continue;
      all[k].last = row;
      all[k + 1].first = row + 1;
      if (found != whole.last && height_needed(all, k) > room) break;
      found = row;
    }
    return found;
  }

  [[nodiscard]] std::vector<TapeIsland> islands(double room) const {
    std::vector<TapeIsland> all = islands();
    for (std::size_t k = 0; k < all.size(); ++k) {
      if (height_needed(all, k) <= room) continue;
      const std::size_t last = last_with_room(all, k, room);
      if (last == all[k].last) continue;
      all.insert(all.begin() + static_cast<std::ptrdiff_t>(k) + 1, {last + 1, all[k].last});
      all[k].last = last;
    }
    return all;
  }

  [[nodiscard]] double height_needed(const std::vector<TapeIsland>& all, std::size_t k) const {
    const TapeIsland& island = all[k];
    const double from = k == 0 ? -1e9 : strip_.rows[island.first].x - 1e-6;
    const double to = k + 1 < all.size() ? strip_.rows[all[k + 1].first].x - 1e-6 : 1e9;
    const double drawn =
        (strip_.rows[island.last].x - strip_.rows[island.first].x) * fit_.columns.scale + 2 * kTapeLead;
    double numbers = 0, words = 0;
    for (std::size_t r = island.first; r <= island.last; ++r)
      numbers += row_height(strip_.rows[r], fit_.columns.number, measure_) + kTapeRowGap;
    for (const std::size_t b : blocks_between(strip_, from, to)) words += fit_.words[b].height + kTapeBlockGap;
    return std::max({drawn, numbers, words}) + kTapeBreak - 2 * kTapeLead;
  }

  [[nodiscard]] std::vector<std::vector<TapeIsland>> packed(double room) const {
    const std::vector<TapeIsland> all = islands(room);
    std::vector<std::vector<TapeIsland>> out(1);
    double height = 0;
    for (std::size_t k = 0; k < all.size(); ++k) {
      const double needed = height_needed(all, k);
      if (!out.back().empty() && height + needed > room) {
        out.emplace_back();
        height = 0;
      }
      out.back().push_back(all[k]);
      height += needed;
    }
    return out;
  }

  /// As many pages, as even as can be.
  [[nodiscard]] std::vector<std::vector<TapeIsland>> evened(std::vector<std::vector<TapeIsland>> parts) const {
    constexpr double kLess = 12;
    for (double room = options_.room - kLess; parts.size() > 1 && room > 60; room -= kLess) {
      auto tighter = packed(room);
      if (tighter.size() != parts.size()) break;
      parts = std::move(tighter);
    }
    return parts;
  }

  const TapeStrip& strip_;
  const TapeOptions& options_;
  TapeMeasure measure_;
  TapeFit fit_;
};

}  // namespace

TapeWords wrap_words(const TapeBlock& block, double width, TapeMeasure measure) {
  TapeWords out;
  for (const TapeLine& line : block.lines) {
    std::string now;
    for (const std::string& part : line.parts) {
      std::string longer = now.empty() ? part : now + " " + part;
      if (!now.empty() && measure(longer, line.size).w > width) {
        out.lines.emplace_back(std::move(now), line.size);
        now = part;
      } else {
        now = std::move(longer);
      }
    }
    out.lines.emplace_back(std::move(now), line.size);
  }
  for (const auto& line : out.lines) out.height += measure("0", line.second).h + kTapeLineGap;
  out.height -= kTapeLineGap;
  return out;
}

double row_height(const TapeRow& row, TapeText number, TapeMeasure measure) {
  return measure("0", number).h + (row.tag.empty() ? 0 : measure("0", TapeText::kNote).h + 2);
}

std::vector<std::size_t> blocks_between(const TapeStrip& strip, double from, double to) {
  std::vector<std::size_t> out;
  for (std::size_t b = 0; b < strip.blocks.size(); ++b) {
    const double middle = (strip.blocks[b].from + strip.blocks[b].to) / 2;
    if (middle >= from && middle < to) out.push_back(b);
  }
  return out;
}

TapeFit fit_tape(const TapeStrip& strip, const TapeOptions& options, TapeMeasure measure) {
  return TapeFitter(strip, options, measure).fit();
}

std::string block_letter(std::size_t block) {
  std::string out(1, static_cast<char>('a' + block % 26));
  for (block /= 26; block > 0; block = (block - 1) / 26)
    out.insert(out.begin(), static_cast<char>('a' + (block - 1) % 26));
  return out;
}

}  // namespace bentbook::draw
