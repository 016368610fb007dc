#include "printed/page_head.h"

#include <algorithm>
#include <utility>

#include "book/book_file.h"
#include "frame/facts.h"
#include "paper/letters.h"
#include "paper/page_part.h"
#include "text/crc32.h"
#include "text/hex.h"

namespace bentbook {
namespace {

constexpr double kFootLine = 7;  // mm off the lower edge
constexpr double kFootGap = 5;

}  // namespace

PageRoom room_of(paper::PageSize size, bool lying) {
  const paper::PageMeasure measure = paper::measure_of(size, lying);
  return {kPageMargin, kPageMargin, measure.width - kPageMargin, measure.height - kPageMargin};
}

PagePart caution_foot(std::initializer_list<Msg> cautions, Language language, double width) {
  std::string said;
  for (const Msg caution : cautions) {
    if (!said.empty()) said += ' ';
    said += text(caution, language);
  }
  PagePart part;
  constexpr double kOver = 2, kUnder = 1.5;
  part.drawn.lines.push_back({{0, kUnder}, {width, kUnder}, draw::Stroke::kThin, 0});
  part.height = kUnder + kOver;
  part.height += paper::put_lines(part.drawn, {0, part.height}, said, {kSmallLetters, false}, width);
  return part;
}

Result<std::vector<int>> timbers_asked(const Frame& frame, const PrintOptions& options) {
  std::vector<int> asked;
  asked.reserve(options.marks.size());
  for (const std::string& mark : options.marks) {
    const int timber = timber_by_mark(frame, mark);
    if (timber < 0) return fail(ErrorCode::kMissing, "mark");
    asked.push_back(timber);
  }
  std::sort(asked.begin(), asked.end());
  asked.erase(std::unique(asked.begin(), asked.end()), asked.end());
  if (!asked.empty()) return asked;
  if (frame.timbers.empty()) return fail(ErrorCode::kEmpty, "paper");
  asked.reserve(frame.timbers.size());
  for (std::size_t i = 0; i < frame.timbers.size(); ++i) asked.push_back(static_cast<int>(i));
  return asked;
}

std::string book_digest(const Book& book) {
  std::string out;
  put_hex(out, crc32(write_book(book)), 8);
  return out;
}

void finish_pages(paper::Document& document, const Book& book, const PrintOptions& options, const Voice& voice) {
  const std::string title(shown_name(book.title, voice.language)), digest = book_digest(book);
  if (document.title.empty()) document.title = title;
  document.language = language_tag(voice.language);
  int number = 0;
  for (paper::Page& page : document.pages) {
    const PageRoom room = room_of(document.size, page.lying);
    const double line = room.bottom + kPageMargin - kFootLine;
    const std::string right = digest + "   " + std::to_string(++number) + " / " + std::to_string(document.pages.size());
    const double taken = paper::text_width(right, kSmallLetters, false) + kFootGap;
    page.texts.push_back({{room.right, line}, kSmallLetters, false, paper::Align::kRight, 0, right});
    std::string left = options.day;
    const double day = paper::text_width(left, kSmallLetters, false) + kFootGap;
    const std::string name = paper::shortened(title, kSmallLetters, false, room.width() - taken - day);
    if (!name.empty()) left = name + (left.empty() ? "" : " · ") + left;
    if (left.empty()) continue;
    page.texts.push_back({{room.left, line}, kSmallLetters, false, paper::Align::kLeft, 0, std::move(left)});
  }
}

}  // namespace bentbook
