#include <algorithm>
#include <catch_amalgamated.hpp>

#include "page_judge.h"
#include "paper/dxf.h"
#include "paper/letters.h"
#include "paper/tiles.h"
#include "plans.h"
#include "printed/pages/labels.h"
#include "printed/pages/patterns.h"
#include "printed/printed.h"
#include "random.h"
#include "shop/log/chunk.h"

using namespace bentbook;

namespace {

Book small_book() {
  Book book =
      new_book("Patterns", Length::feet(24), Length::feet(24), Length::feet(10), Slope::in_12(Length::inches(9)));
  book.identity = "7fa31c";
  return book;
}

/// Pages whose words say something with `part` in it.
std::size_t pages_saying(const paper::Document& document, std::string_view part) {
  return static_cast<std::size_t>(
      std::count_if(document.pages.begin(), document.pages.end(), [&](const paper::Page& page) {
        return std::any_of(page.texts.begin(), page.texts.end(),
                           [&](const paper::PageText& text) { return text.text.find(part) != std::string::npos; });
      }));
}

}  // namespace

TEST_CASE("alike ends of alike timbers are one pattern that names them all", "[printed-patterns]") {
  const Book book = small_book();
  const BookModel model = solve(book);
  PrintOptions options;
  const auto groups = pattern_groups(book, model, options);
  REQUIRE(groups);
  std::size_t rafters = 0;
  for (const Timber& timber : (*model.frame)->timbers) rafters += timber.kind == TimberKind::kCommonRafter ? 1U : 0U;
  REQUIRE(rafters > 10);
  std::size_t served = 0;
  for (const PatternGroup& group : *groups) {
    const auto& timber = (*model.frame)->timbers[static_cast<std::size_t>(group.places.front().timber)];
    if (timber.kind == TimberKind::kCommonRafter && group.pattern.at_b) served += group.places.size();
  }
  CHECK(served == rafters);
  const auto document = print_patterns(book, model, options, Voice{});
  REQUIRE(document);
  // Every page says what to measure before cutting.
  CHECK(pages_saying(*document, "measure the two bars: each must be 4″") == document->pages.size());
}

TEST_CASE("patterns of a metric book are measured against 100 mm, in each language", "[printed-patterns]") {
  Book book = small_book();
  book.lengths.form = LengthForm::kMm;
  const BookModel model = solve(book);
  PrintOptions options;
  options.marks = {"C-A1"};
  for (const char* tag : {"en", "fr-CA", "es"}) {
    Voice voice;
    voice.language = *find_language(tag);
    voice.lengths = book.lengths;
    const auto document = print_patterns(book, model, options, voice);
    REQUIRE(document);
    CHECK(pages_saying(*document, "100 mm") == document->pages.size());
    for (const paper::Page& page : document->pages)
      for (const paper::PageText& text : page.texts) {
        const paper::Window box = paper::bounds_of(text);
        const paper::PageMeasure measure = paper::measure_of(document->size, page.lying);
        INFO(text.text);
        CHECK(box.left > 5);
        CHECK(box.right < measure.width - 5);
        CHECK(box.top > 5);
        CHECK(box.bottom < measure.height - 5);
      }
  }
}

TEST_CASE("a mark that no timber has, and nothing to print, are said", "[printed-patterns]") {
  const Book book = small_book();
  const BookModel model = solve(book);
  PrintOptions options;
  options.marks = {"C-A1", "Z-9"};
  const auto patterns = print_patterns(book, model, options, Voice{});
  REQUIRE(!patterns);
  CHECK(patterns.error().code == ErrorCode::kMissing);
  const auto labels = print_labels(book, model, options, Voice{});
  REQUIRE(!labels);
  CHECK(labels.error().where == "mark");
  Book empty = book;
  empty.framed = false;
  empty.frame.added.clear();
  empty.roof.sides.clear();
  const BookModel none = solve(empty);
  options.marks.clear();
  const auto nothing = print_patterns(empty, none, options, Voice{});
  REQUIRE(!nothing);
}

TEST_CASE("every timber has a label, on any sheet, and nothing of it leaves its label", "[labels]") {
  const Book book = small_book();
  const BookModel model = solve(book);
  const std::size_t timbers = (*model.frame)->timbers.size();
  for (const LabelSheet& sheet : label_sheets()) {
    // The labels lie on the page.
    const paper::PageMeasure measure = paper::measure_of(sheet.page);
    const draw::Point low = sheet.corner(0, 0), high = sheet.corner(sheet.columns - 1, sheet.rows - 1);
    CHECK(low.x >= 0);
    CHECK(low.y >= 0);
    CHECK(high.x + sheet.width <= measure.width + 1e-9);
    CHECK(high.y + sheet.height <= measure.height + 1e-9);
    PrintOptions options;
    options.label_sheet = sheet.key;
    options.page = sheet.page;
    const auto document = print_labels(book, model, options, Voice{});
    REQUIRE(document);
    std::size_t codes = 0;
    for (const paper::Page& page : document->pages) {
      codes += page.codes.size();
      for (const paper::PageCode& code : page.codes) {
        const double side = code.module * code.code.size, quiet = code.module * kQuietModules;
        bool inside = false;
        for (int r = 0; r < sheet.rows; ++r)
          for (int c = 0; c < sheet.columns; ++c) {
            const draw::Point at = sheet.corner(c, r);
            inside = inside || (code.at.x - quiet >= at.x && code.at.y - quiet >= at.y &&
                                code.at.x + side + quiet <= at.x + sheet.width &&
                                code.at.y + side + quiet <= at.y + sheet.height);
          }
        CHECK(inside);
        CHECK(code.module > 0.4);
        // No word stands in the code's quiet zone.
        for (const paper::PageText& text : page.texts) {
          const paper::Window box = paper::bounds_of(text);
          const bool apart = box.right <= code.at.x - quiet || box.left >= code.at.x + side + quiet ||
                             box.bottom <= code.at.y - quiet || box.top >= code.at.y + side + quiet;
          CHECK(apart);
        }
      }
    }
    CHECK(codes == timbers);
  }
  PrintOptions unknown;
  unknown.label_sheet = "9x9";
  const auto refused = print_labels(book, model, unknown, Voice{});
  REQUIRE(!refused);
  CHECK(refused.error().code == ErrorCode::kUnknownOption);
}

TEST_CASE("a book without an identity has labels without codes that say so", "[labels]") {
  Book book = small_book();
  book.identity.clear();
  const auto document = print_labels(book, solve(book), {}, Voice{});
  REQUIRE(document);
  CHECK(document->pages.front().codes.empty());
  CHECK(pages_saying(*document, "No code") == document->pages.size());
}

TEST_CASE("a DXF file says letters outside of ASCII by their numbers and turns y over", "[dxf]") {
  paper::Page page;
  page.lines.push_back({{10, 20}, {35.4, 20}, draw::Stroke::kCut, 0});
  page.texts.push_back({{10, 20}, 3.5, false, paper::Align::kLeft, 0, "7′ é\n\U0001F528"});  // four figures alone
  const paper::Layer layer{"cut", page};
  const std::string file = paper::write_dxf({&layer, 1}, {10, 30}, paper::DxfUnit::kInch, "a note");
  CHECK(file.starts_with("999\na note\n0\nSECTION\n"));
  CHECK(file.ends_with("0\nEOF\n"));
  CHECK(file.find("0\nLINE\n8\nCUT\n10\n0\n20\n0.39370079\n30\n0\n11\n1\n21\n0.39370079\n") != std::string::npos);
  CHECK(file.find("1\n7\\U+2032 \\U+00E9 ?\n") != std::string::npos);
}

TEST_CASE("on pages of random frames' patterns every word is on the paper and off the others", "[printed-patterns]") {
  Random random(2026);
  int rounds = 0;
  while (rounds < 3) {
    Book book = small_book();
    book.frame = random_plan(random);
    if (rounds == 1) book.lengths.form = LengthForm::kMm;
    const BookModel model = solve(book);
    if (!*model.frame) continue;
    PrintOptions options;
    options.what = PrintedKind::kPatterns;
    options.page = rounds == 2 ? paper::PageSize::kLetter : paper::PageSize::kA4;
    Voice voice;
    voice.lengths = book.lengths;
    const auto document = print(book, model, options, voice);
    REQUIRE(document);
    ++rounds;
    const std::vector<std::string> faults = faults_of(*document, Lines::kWhole);
    INFO(said(faults));
    CHECK(faults.empty());
  }
}
