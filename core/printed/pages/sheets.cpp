#include "printed/pages/sheets.h"

#include <algorithm>
#include <utility>

#include "frame/facts.h"
#include "numeric/index.h"
#include "paper/page_part.h"
#include "printed/page_head.h"
#include "printed/pages/sheet_parts.h"

namespace bentbook {
namespace {

constexpr int kColumns = 2;
constexpr double kColumnGap = 5, kPartGap = 3, kTimberGap = 6;  // mm

/// Sheets one after another, several to a page where they are short.
class SheetPages {
 public:
  SheetPages(const Book& book, const Frame& frame, const PrintOptions& options, const Voice& voice)
      : book_(book), frame_(frame), voice_(voice), room_(room_of(options.page)) {
    out_.size = options.page;
    foot_ = caution_foot({Msg::kFindingNotEngineered, Msg::kHelpCautionHurt}, voice.language, room_.width());
    room_.bottom -= foot_.height;
    column_ = (room_.width() - kColumnGap * (kColumns - 1)) / kColumns;
  }

  void add(int timber) {
    const Sheet sheet = solve_sheet(frame_, timber, saw_of(book_));
    const SheetSubject subject{book_, frame_, sheet, voice_};
    PagePart head = sheet_head(subject, room_.width());
    const PagePart again = sheet_head_again(subject, room_.width());
    const std::vector<PagePart> faces = laid_out(subject, room_.height() - head.height);
    place(head, again, faces, work_parts(subject, column_));
  }

  paper::Document finished() { return std::move(out_); }

 private:
  /// The faces as large as all of them have room on one page, down the columns or by twos across them; else as large
  /// as any.
  [[nodiscard]] std::vector<PagePart> laid_out(const SheetSubject& subject, double height) const {
    constexpr double kSides[] = {22, 19, 16};                           // mm, of the piece
    constexpr std::size_t kOrders[][4] = {{0, 1, 2, 3}, {0, 2, 1, 3}};  // 3 below 1, 4 below 2
    std::vector<PagePart> largest;
    for (const double side : kSides) {
      const std::vector<std::vector<PagePart>> faces = face_parts(subject, column_, height, side);
      for (const auto& order : kOrders) {
        std::vector<PagePart> parts;
        for (const std::size_t face : order) parts.insert(parts.end(), faces[face].begin(), faces[face].end());
        if (order[1] == 2) parts[faces[0].size() + faces[2].size()].begins = true;
        if (fits(parts, height)) return parts;
        if (largest.empty()) largest = std::move(parts);
      }
    }
    return largest;
  }

  void turn() {
    paper::Page page;
    paper::put(page, foot_.drawn, {room_.left, room_.bottom});
    out_.pages.push_back(std::move(page));
    y_ = room_.top;
  }

  void place(const PagePart& head, const PagePart& again, std::span<const PagePart> faces,
             std::span<const PagePart> work) {
    if (out_.pages.empty()) turn();
    if (y_ > room_.top) {
      const double left = room_.bottom - y_ - kTimberGap - head.height;
      if (fits(faces, left) && fits(work, left) && whole(faces, left) + kPartGap + whole(work, left) <= left)
        y_ += kTimberGap;
      else
        turn();
    }
    put_over(head);
    flow(faces, again);
    y_ += kPartGap;
    flow(work, again);
  }

  void put_over(const PagePart& part) {
    paper::put(out_.pages.back(), part.drawn, {room_.left, y_});
    y_ += part.height;
  }

  /// Down both columns of what is left of the page, and of pages that go on with it.
  void flow(std::span<const PagePart> parts, const PagePart& again) {
    while (!parts.empty()) {
      const double left = room_.bottom - y_, all = whole(parts, left);
      if (all > left && parts.front().height > left && parts.front().height < room_.height() - again.height) {
        turn();
        put_over(again);
        continue;
      }
      const ColumnsFilled filled = fill_columns(parts, kColumns, std::min(all, left), column_ + kColumnGap, kPartGap,
                                                {room_.left, y_}, &out_.pages.back());
      y_ += filled.height;
      parts = parts.subspan(filled.parts);
      if (parts.empty()) return;
      turn();
      put_over(again);
    }
  }
  /// The height that all of them take side by side; more than `left` where they do not fit into it.
  static double whole(std::span<const PagePart> parts, double left) {
    return fits(parts, left) ? least_height(parts, kColumns, kPartGap, left) : left + 1;
  }
  static bool fits(std::span<const PagePart> parts, double height) {
    const ColumnsFilled filled = fill_columns(parts, kColumns, height, 0, kPartGap, {}, nullptr);
    return filled.parts == parts.size() && filled.height <= height;
  }

  const Book& book_;
  const Frame& frame_;
  const Voice& voice_;
  PageRoom room_;
  PagePart foot_;
  double column_ = 0, y_ = 0;
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
