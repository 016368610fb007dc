#include "printed/flow.h"

#include <algorithm>
#include <utility>

#include "paper/letters.h"
#include "paper/page_part.h"

namespace bentbook {
namespace {

using paper::Letters;

constexpr Letters kCell{kBodyLetters, false}, kStrongCell{kBodyLetters, true}, kHeadCell{kSmallLetters, false};
constexpr double kCellGap = 4, kRowPad = 0.55;  // mm

/// Widths and left edges of a table's columns.
struct TableMeasure {
  std::vector<double> left, width;
};

double widest_word(std::string_view words, Letters letters) {
  double widest = 0;
  for (const std::string& word : paper::wrapped_lines(words, letters.size, letters.bold, 0))
    widest = std::max(widest, paper::text_width(word, letters.size, letters.bold));
  return widest;
}

/// As wide as the cells are, heads broken between their words; where the wide column would be left with too little,
/// words in the others are broken too, the widest first.
TableMeasure measured(const std::vector<TableColumn>& columns, const std::vector<TableRow>& rows, double width) {
  constexpr double kLeastShare = 0.38;  // of the width, for the wide column
  const double least_wide = kLeastShare * width;
  TableMeasure measure;
  std::vector<double> least;
  double spare = width - kCellGap * static_cast<double>(columns.size() - 1);
  std::size_t wide = columns.size();
  for (std::size_t c = 0; c < columns.size(); ++c) {
    const Letters cells = columns[c].strong ? kStrongCell : kCell;
    double own = widest_word(columns[c].head, kHeadCell), needs = own;
    for (const TableRow& row : rows) {
      for (const std::string& line : paper::wrapped_lines(row[c], cells.size, cells.bold, 1e9))
        own = std::max(own, paper::text_width(line, cells.size, cells.bold));
      needs = std::max(needs, widest_word(row[c], cells));
    }
    if (columns[c].wide) wide = c;
    if (c != wide) spare -= own;
    measure.width.push_back(own);
    least.push_back(needs);
  }
  while (wide < columns.size() && spare < least_wide) {
    std::size_t widest = wide;
    for (std::size_t c = 0; c < columns.size(); ++c)
      if (c != wide && measure.width[c] > least[c] && (widest == wide || measure.width[c] > measure.width[widest]))
        widest = c;
    if (widest == wide) break;
    const double cut = std::max(least[widest], measure.width[widest] - std::max(1.0, least_wide - spare));
    spare += measure.width[widest] - cut;
    measure.width[widest] = cut;
  }
  if (wide < columns.size()) measure.width[wide] = std::max(spare, least[wide]);
  double x = 0;
  for (const double own : measure.width) {
    measure.left.push_back(x);
    x += own + kCellGap;
  }
  return measure;
}

/// One row, a thin line under it.
PagePart row_part(const std::vector<TableColumn>& columns, const TableMeasure& measure, const TableRow& row,
                  bool head) {
  PagePart part;
  double high = 0;
  for (std::size_t c = 0; c < columns.size(); ++c) {
    const Letters letters = head ? kHeadCell : columns[c].strong ? kStrongCell : kCell;
    const double at = columns[c].align == paper::Align::kRight    ? measure.left[c] + measure.width[c]
                      : columns[c].align == paper::Align::kMiddle ? measure.left[c] + measure.width[c] / 2
                                                                  : measure.left[c];
    double y = kRowPad;
    for (const std::string& line : paper::wrapped_lines(row[c], letters.size, letters.bold, measure.width[c] + 0.01)) {
      paper::put_words(part.drawn, {at, y}, line, letters, columns[c].align);
      y += letters.size * paper::kLineStep;
    }
    high = std::max(high, y);
  }
  part.height = high + 0.2;
  const double end = measure.left.back() + measure.width.back();
  part.drawn.lines.push_back(
      {{0, part.height}, {end, part.height}, head ? draw::Stroke::kVisible : draw::Stroke::kThin, 0});
  part.kept = head;
  return part;
}

PagePart words_part(std::string_view said, Letters letters, double width, double over, double under, bool kept) {
  PagePart part;
  part.height = over + paper::put_lines(part.drawn, {0, over}, said, letters, width) + under;
  part.kept = kept;
  return part;
}

}  // namespace

PageFlow::PageFlow(const PrintOptions& options, PagePart foot) : room_(room_of(options.page)), foot_(std::move(foot)) {
  out_.size = options.page;
  room_.bottom -= foot_.height;
}

double PageFlow::left() const { return out_.pages.empty() ? room_.height() : room_.bottom - y_; }

void PageFlow::turn() {
  paper::Page page;
  paper::put(page, foot_.drawn, {room_.left, room_.bottom});
  out_.pages.push_back(std::move(page));
  y_ = room_.top;
}

void PageFlow::add(PagePart part) {
  if (part.kept) return kept_.push_back(std::move(part));
  double high = part.height;
  for (const PagePart& before : kept_) high += before.height;
  if (out_.pages.empty() || (y_ + high > room_.bottom && y_ > room_.top)) turn();
  kept_.push_back(std::move(part));
  for (const PagePart& one : kept_) {
    paper::put(out_.pages.back(), one.drawn, {room_.left, y_});
    y_ += one.height;
  }
  kept_.clear();
}

void PageFlow::title(std::string_view words) {
  PagePart part = words_part(words, {kAnswerLetters, true}, width(), 0, 1, true);
  part.drawn.lines.push_back({{0, part.height}, {width(), part.height}, draw::Stroke::kVisible, 0});
  part.height += 2;
  add(std::move(part));
}

void PageFlow::heading(std::string_view words) {
  const double over = kept_.empty() && y_ > room_.top ? 5 : 1;
  add(words_part(words, {kStrongLetters, true}, width(), over, 0.5, true));
}

void PageFlow::words(std::string_view said, bool strong) {
  if (!said.empty()) add(words_part(said, {kBodyLetters, strong}, width(), 0.6, 0.6, false));
}

void PageFlow::gap(double mm) {
  if (!out_.pages.empty() && y_ > room_.top) y_ += mm;
}

void PageFlow::table(const std::vector<TableColumn>& columns, const std::vector<TableRow>& rows) {
  if (rows.empty()) return;
  const TableMeasure measure = measured(columns, rows, width());
  TableRow heads;
  heads.reserve(columns.size());
  for (const TableColumn& column : columns) heads.push_back(column.head);
  const PagePart head = row_part(columns, measure, heads, true);
  add(head);
  for (const TableRow& row : rows) {
    PagePart part = row_part(columns, measure, row, false);
    if (kept_.empty() && part.height > left()) {
      turn();
      add(head);
    }
    add(std::move(part));
  }
}

paper::Document PageFlow::finished() {
  if (!kept_.empty()) {
    PagePart last = std::move(kept_.back());
    kept_.pop_back();
    last.kept = false;
    add(std::move(last));
  }
  return std::move(out_);
}

}  // namespace bentbook
