#include "printed/pages/labels.h"

#include <algorithm>
#include <utility>

#include "numeric/index.h"
#include "paper/letters.h"
#include "printed/page_head.h"
#include "shop/log/chunk.h"
#include "words/frame_words.h"

namespace bentbook {
namespace {

using draw::Point;
using draw::Stroke;
using paper::Align;

constexpr double kInch = 25.4;
constexpr double kLabelPadding = 2.5;             // mm: sheets lie a little off in a printer
constexpr double kMostModule = 1.3;               // mm of a code's module
constexpr double kMostMark = 24, kLeastMark = 4;  // ems in mm
constexpr double kMostLine = 4.5;
constexpr double kLabelLead = 1.3;
constexpr double kLabelArrow = 9;

constexpr LabelSheet kLabelSheets[] = {
    {"", paper::PageSize::kA4, 2, 5, 93, 54, 0, true},
    {"", paper::PageSize::kLetter, 2, 5, 3.75 * kInch, 2 * kInch, 0, true},
    {"2x4", paper::PageSize::kA4, 2, 4, 99.1, 67.7, 2.5, false},
    {"3x8", paper::PageSize::kA4, 3, 8, 70, 33.8, 0, false},
    {"2x5", paper::PageSize::kLetter, 2, 5, 4 * kInch, 2 * kInch, 0.1875 * kInch, false},
    {"3x10", paper::PageSize::kLetter, 3, 10, 2.625 * kInch, 1 * kInch, 0.125 * kInch, false},
};

class LabelMaker {
 public:
  LabelMaker(paper::Page& page, const Book& book, const Voice& voice) : page_(page), book_(book), voice_(voice) {}

  void add(const Timber& timber, const LabelSheet& sheet, Point corner) {
    const double left = corner.x + kLabelPadding, top = corner.y + kLabelPadding;
    const double right = corner.x + sheet.width - kLabelPadding, bottom = corner.y + sheet.height - kLabelPadding;
    const double code_side = std::min(bottom - top, (right - left) * 0.42);
    code(timber, {right - code_side, top + (bottom - top - code_side) / 2}, code_side);
    const double room = right - code_side - 1 - left;
    const std::string lines[] = {
        std::string(kind_name(timber.kind, voice_.language)),
        section_text(timber.wood.nominal, voice_) + " · " + say_inches(timber.length, voice_),
        say_weight(facts_of(timber).weight_lb, voice_),
    };
    // The lines at the foot, the mark as large as what is left over them.
    double size = std::min(kMostLine, (bottom - top) * 0.55 / (3 * kLabelLead));
    for (const std::string& line : lines) size = std::min(size, fitting(line, size, false, room));
    double mark = std::min(kMostMark, (bottom - top - 3 * size * kLabelLead) / (paper::kCapital + 0.15));
    mark = std::max(std::min(mark, fitting(timber.mark, mark, true, room)), kLeastMark);
    page_.texts.push_back({{left, top + mark * paper::kCapital},
                           mark,
                           true,
                           Align::kLeft,
                           0,
                           paper::shortened(timber.mark, mark, true, room)});
    double y = bottom - 0.24 * size;
    for (const std::string& line : {lines[2], lines[1], lines[0]}) {
      page_.texts.push_back({{left, y}, size, false, Align::kLeft, 0, line});
      y -= size * kLabelLead;
    }
    const double weight_ends = left + paper::text_width(lines[2], size, false);
    arrow({left + room, bottom - 0.24 * size - size * paper::kCapital / 2}, size, weight_ends + 2);
  }

 private:
  /// The em, `size` at most, at which the text goes into `room`.
  static double fitting(const std::string& text, double size, bool bold, double room) {
    const double wide = paper::text_width(text, size, bold);
    return wide > room ? size * room / wide : size;
  }

  /// "A ←": toward the timber's end A.
  void arrow(Point right, double size, double from) {
    const double letter = paper::text_width("A", size, true);
    const double tail = right.x, head = std::max(tail - kLabelArrow, from + letter + 1.5);
    if (tail - head < 3) return;
    page_.lines.push_back({{head + 1, right.y}, {tail, right.y}, Stroke::kVisible, 0.5});
    page_.polygons.push_back({{{head, right.y}, {head + 2, right.y - 1.1}, {head + 2, right.y + 1.1}},
                              draw::Fill::kInk,
                              false,
                              Stroke::kVisible});
    page_.texts.push_back({{head - 1, right.y + size * paper::kCapital / 2}, size, true, Align::kRight, 0, "A"});
  }

  void code(const Timber& timber, Point corner, double side) {
    if (book_.identity.empty()) return no_code(corner, side);
    Result<Code> made = make_code(label_text({book_.identity, timber.mark}), CodeLevel::kHigh);
    if (!made) return;
    const double module = std::min(kMostModule, side / (made->size + 2 * kQuietModules));
    const double inset = (side - module * made->size) / 2;
    page_.codes.push_back({{corner.x + inset, corner.y + inset}, module, std::move(*made)});
  }

  void no_code(Point corner, double side) {
    constexpr double kSize = 2.4;
    double y = corner.y + kSize;
    for (const std::string& line :
         paper::wrapped_lines(text(Msg::kPrintedNoCode, voice_.language), kSize, false, side)) {
      page_.texts.push_back({{corner.x, y}, kSize, false, Align::kLeft, 0, line});
      y += kSize * kLabelLead;
    }
  }

  paper::Page& page_;
  const Book& book_;
  const Voice& voice_;
};

/// From edge to edge of what the labels take.
void cut_lines(paper::Page& page, const LabelSheet& sheet) {
  const Point low = sheet.corner(0, 0), high = sheet.corner(sheet.columns, sheet.rows);
  for (int c = 0; c <= sheet.columns; ++c) {
    const double x = sheet.corner(c, 0).x;
    page.lines.push_back({{x, low.y}, {x, high.y}, Stroke::kHidden, 0.18});
  }
  for (int r = 0; r <= sheet.rows; ++r) {
    const double y = sheet.corner(0, r).y;
    page.lines.push_back({{low.x, y}, {high.x, y}, Stroke::kHidden, 0.18});
  }
}

}  // namespace

Point LabelSheet::corner(int column, int row) const {
  const paper::PageMeasure measure = paper::measure_of(page);
  const double wide = columns * width + (columns - 1) * gap, high = rows * height;
  return {(measure.width - wide) / 2 + column * (width + gap), (measure.height - high) / 2 + row * height};
}

std::span<const LabelSheet> label_sheets() { return kLabelSheets; }

const LabelSheet* find_label_sheet(std::string_view key, paper::PageSize page) {
  const auto* found = std::find_if(std::begin(kLabelSheets), std::end(kLabelSheets), [&](const LabelSheet& sheet) {
    return sheet.key == key && (!sheet.cut || sheet.page == page);
  });
  return found == std::end(kLabelSheets) ? nullptr : found;
}

Result<paper::Document> print_labels(const Book& book, const BookModel& model, const PrintOptions& options,
                                     const Voice& voice) {
  const Result<Frame>& frame = *model.frame;
  if (!frame) return tl::unexpected(frame.error());
  const LabelSheet* sheet = find_label_sheet(options.label_sheet, options.page);
  if (sheet == nullptr) return fail(ErrorCode::kUnknownOption, "labels");
  const Result<std::vector<int>> timbers = timbers_asked(*frame, options);
  if (!timbers) return tl::unexpected(timbers.error());
  paper::Document document;
  document.size = sheet->page;
  int count = 0;
  const int each = sheet->columns * sheet->rows;
  for (const int timber : *timbers) {
    if (count % each == 0) {
      document.pages.emplace_back();
      if (sheet->cut) cut_lines(document.pages.back(), *sheet);
    }
    const int place = count++ % each;
    LabelMaker(document.pages.back(), book, voice)
        .add(frame->timbers[at(timber)], *sheet, sheet->corner(place % sheet->columns, place / sheet->columns));
  }
  return document;
}

}  // namespace bentbook
