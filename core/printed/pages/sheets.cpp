#include "printed/pages/sheets.h"

#include <algorithm>
#include <utility>

#include "frame/facts.h"
#include "numeric/index.h"
#include "paper/page_part.h"
#include "printed/page_head.h"
#include "printed/pages/details.h"
#include "printed/pages/sheet_parts.h"

namespace bentbook {
namespace {

constexpr double kColumnGap = 4, kPartGap = 1.5, kTimberGap = 6;  // mm

/// A timber's sheet in columns of one width, one way to set it: faces, the steps right behind them, then
/// the details that a column is wide enough for.
struct SheetColumns {
  int columns = 2;
  double width = 0;  ///< mm, of one
  std::vector<PagePart> parts;
  std::vector<PagePart> below;  ///< across all of the page
};
/// Where a sheet ends: on how many pages after the one that it began on, and how low.
struct SheetEnd {
  int turns = 0;
  double y = 0;
};

/// Sheets one after another, several to a page where they are short.
class SheetPages {
 public:
  SheetPages(const Book& book, const Frame& frame, const PrintOptions& options, const Voice& voice)
      : book_(book), frame_(frame), voice_(voice), room_(room_of(options.page)) {
    out_.size = options.page;
    foot_ = caution_foot({Msg::kFindingNotEngineered, Msg::kHelpCautionHurt}, voice.language, room_.width());
    room_.bottom -= foot_.height;
  }

  void add(int timber) {
    const Sheet sheet = solve_sheet(frame_, timber, saw_of(book_));
    const SheetSubject subject{book_, frame_, sheet, voice_};
    head_ = sheet_head(subject, room_.width());
    again_ = sheet_head_again(subject, room_.width());
    if (out_.pages.empty()) turn();
    const double below = y_ > room_.top ? y_ + kTimberGap : y_;
    const SheetColumns best = best_of(ways(subject), below);
    if (y_ > room_.top && flowed(best, below, false).turns > 0)
      turn();
    else
      y_ = below;
    y_ = flowed(best, y_, true).y;
  }

  paper::Document finished() { return std::move(out_); }

 private:
  /// The largest and plainest first; none of which a part is higher than a page, but for the first.
  [[nodiscard]] std::vector<SheetColumns> ways(const SheetSubject& subject) const {
    constexpr double kSides[] = {22, 19, 16, 13};  // mm, of the piece
    const std::vector<DrawnDetail> details = drawn_details(subject, room_.width());
    const std::vector<PagePart> rows = detail_rows(details, room_.width());
    std::vector<SheetColumns> all;
    for (const int columns : {2, 3}) {
      const double width = (room_.width() - kColumnGap * (columns - 1)) / columns;
      const std::vector<PagePart> work = work_parts(subject, width);
      std::vector<PagePart> narrow;
      std::vector<DrawnDetail> wider;
      for (const DrawnDetail& detail : details) {
        if (detail.drawn.width > width)
          wider.push_back(detail);
        else
          narrow.push_back(detail_part(detail, width));
      }
      const std::vector<PagePart> wider_rows = detail_rows(wider, room_.width());
      for (const double side : kSides) {
        const auto faces = face_parts(subject, width, room_.height() - head_.height, side);
        SheetColumns one{columns, width, {}, rows};
        for (const auto& face : faces) one.parts.insert(one.parts.end(), face.begin(), face.end());
        one.parts.insert(one.parts.end(), work.begin(), work.end());
        if (on_pages(one) || all.empty()) all.push_back(one);
        if (columns == 2) continue;
        one.parts.insert(one.parts.end(), narrow.begin(), narrow.end());
        one.below = wider_rows;
        if (on_pages(one)) all.push_back(std::move(one));
      }
    }
    return all;
  }
  [[nodiscard]] bool on_pages(const SheetColumns& one) const {
    return std::all_of(one.parts.begin(), one.parts.end(),
                       [&](const PagePart& part) { return part.height <= room_.height() - again_.height; });
  }

  /// The first that ends below what stands on this page; else the first that takes the fewest pages; on one page one
  /// that is not much higher than another, so that more has room beside it.
  SheetColumns best_of(std::vector<SheetColumns> all, double below) {
    constexpr double kMuch = 1.15;
    std::size_t best = 0;
    SheetEnd least;
    for (std::size_t i = 0; i < all.size(); ++i) {
      if (below > room_.top && flowed(all[i], below, false).turns == 0) return std::move(all[i]);
      const SheetEnd end = flowed(all[i], room_.top, false);
      const bool fewer = end.turns < least.turns || (end.turns == 0 && least.turns == 0 && end.y * kMuch < least.y);
      if (i > 0 && !fewer) continue;
      least = end;
      best = i;
    }
    return std::move(all[best]);
  }

  /// One after another down the columns, over as many pages as they take; on the last one the columns end level, and
  /// what is wider stands below them. `drawn`: on paper; else it is only measured.
  SheetEnd flowed(const SheetColumns& sheet, double y, bool drawn) {
    SheetEnd end{0, y};
    const auto next = [&] {
      if (drawn) turn();
      ++end.turns;
      end.y = room_.top;
      put_over(again_, end, drawn);
    };
    put_over(head_, end, drawn);
    for (std::span<const PagePart> parts = sheet.parts; !parts.empty();) {
      const double left = room_.bottom - end.y;
      if (parts.front().height > left && end.y > room_.top + again_.height + 0.01) {
        next();
        continue;
      }
      const bool last = fits(parts, sheet.columns, left);
      const double high = last ? least_height(parts, sheet.columns, kPartGap, left) : left;
      const ColumnsFilled filled = fill_columns(parts, sheet.columns, high, sheet.width + kColumnGap, kPartGap,
                                                {room_.left, end.y}, drawn ? &out_.pages.back() : nullptr);
      end.y += filled.height;
      parts = parts.subspan(filled.parts);
      if (!parts.empty()) next();
    }
    // A row that has no room lets a lower one stand before it.
    std::vector<const PagePart*> waiting;
    waiting.reserve(sheet.below.size());
    for (const PagePart& part : sheet.below) waiting.push_back(&part);
    bool turned = false;
    while (!waiting.empty()) {
      const double left = room_.bottom - end.y - kPartGap;
      auto row =
          std::find_if(waiting.begin(), waiting.end(), [&](const PagePart* part) { return part->height <= left; });
      if (row == waiting.end() && !turned) {
        next();
        turned = true;
        continue;
      }
      if (row == waiting.end()) row = waiting.begin();
      end.y += kPartGap;
      put_over(**row, end, drawn);
      waiting.erase(row);
      turned = false;
    }
    return end;
  }

  void put_over(const PagePart& part, SheetEnd& end, bool drawn) {
    if (drawn) paper::put(out_.pages.back(), part.drawn, {room_.left, end.y});
    end.y += part.height;
  }

  void turn() {
    paper::Page page;
    paper::put(page, foot_.drawn, {room_.left, room_.bottom});
    out_.pages.push_back(std::move(page));
    y_ = room_.top;
  }

  static bool fits(std::span<const PagePart> parts, int columns, double height) {
    const ColumnsFilled filled = fill_columns(parts, columns, height, 0, kPartGap, {}, nullptr);
    return filled.parts == parts.size() && filled.height <= height;
  }

  const Book& book_;
  const Frame& frame_;
  const Voice& voice_;
  PageRoom room_;
  PagePart foot_;
  PagePart head_, again_;  ///< of the timber that is added
  double y_ = 0;
  paper::Document out_;
};

}  // namespace

Result<paper::Document> print_sheets(const Book& book, const BookModel& model, const PrintOptions& options,
                                     const Voice& voice) {
  if (!*model.frame) return tl::unexpected(model.frame->error());
  const Frame& frame = **model.frame;
  const auto timbers = timbers_asked(frame, options);
  if (!timbers) return tl::unexpected(timbers.error());
  SheetPages pages(book, frame, options, voice);
  std::vector<int> said;  // groups of timbers that are cut alike
  for (const int timber : *timbers) {
    const int alike = frame.timbers[at(timber)].alike;
    if (alike >= 0 && std::count(said.begin(), said.end(), alike) > 0) continue;
    if (alike >= 0) said.push_back(alike);
    pages.add(timber);
  }
  return pages.finished();
}

}  // namespace bentbook
