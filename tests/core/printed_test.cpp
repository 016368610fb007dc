#include "printed/printed.h"

#include <catch_amalgamated.hpp>

#include "page_judge.h"
#include "paper/letters.h"
#include "plans.h"
#include "printed/page_head.h"
#include "printed/pages/raising_picture.h"
#include "tasks/document_fields.h"

using namespace bentbook;

namespace {

RaisingStep step_of(std::string mark) {
  RaisingStep step;
  step.marks.push_back(std::move(mark));
  return step;
}

}  // namespace

TEST_CASE("every page bears the book's name, the day, its digest and its number", "[printed]") {
  Book book = demo_book();
  book.title = "A barn with a name that is longer than any foot of a page can take";
  book.title += ", upright or lying, whatever is written on it, and then some more of the same, to be sure of it";
  paper::Document document;
  document.pages.resize(12);
  document.pages[1].lying = true;
  PrintOptions options;
  options.day = "2026-11-28";
  finish_pages(document, book, options, {});
  for (std::size_t i = 0; i < 12; ++i) {
    const auto& texts = document.pages[i].texts;
    REQUIRE(texts.size() == 2);
    CHECK(texts[0].text.ends_with("   " + std::to_string(i + 1) + " / 12"));
    CHECK(texts[0].text.starts_with(book_digest(book)));
    CHECK(texts[1].text.starts_with("A barn with"));
    CHECK(texts[1].text.ends_with("… · 2026-11-28"));
    const double left = paper::text_width(texts[1].text, texts[1].size, false);
    const double right = paper::text_width(texts[0].text, texts[0].size, false);
    CHECK(texts[1].at.x + left < texts[0].at.x - right);
    CHECK(texts[0].at.y == (i == 1 ? 203 : 290));
  }
  CHECK(document.title == book.title);
  Book other = book;
  other.frame.span = other.frame.span + Length::inches(1, 16);
  CHECK(book_digest(other) != book_digest(book));
}

TEST_CASE("nothing that is printed is overprinted, cut off or too small", "[printed]") {
  Random random(11);
  int timbers = 0;
  for (int i = 0; timbers < 1000; ++i) {
    Book book = demo_book();
    book.frame = random_plan(random);
    Voice voice{static_cast<Language>(i % 3), {}, Marks::kScreen};
    if (i % 2 == 1) voice.lengths = {LengthForm::kMm, 16, 1};
    const BookModel model = solve(book);
    if (!*model.frame) continue;
    const Frame& frame = **model.frame;
    timbers += static_cast<int>(frame.timbers.size());
    for (std::size_t t = 0; t < frame.timbers.size(); t += 2)
      book.raising.steps.push_back(step_of(frame.timbers[t].mark));
    PrintOptions options;
    options.page = static_cast<paper::PageSize>(i / 2 % 2);
    for (const PrintedKind what : {PrintedKind::kSheets, PrintedKind::kLists, PrintedKind::kRaising}) {
      options.what = what;
      const auto document = print(book, model, options, voice);
      REQUIRE(document);
      const std::vector<std::string> faults = faults_of(*document);
      INFO(said(faults));
      CHECK(faults.empty());
    }
  }
}

TEST_CASE("a list of timbers without a plan is printed too, and an empty one says that there is nothing", "[printed]") {
  Book book = demo_book();
  book.framed = false;
  PrintOptions options;
  for (const PrintedKind what : {PrintedKind::kSheets, PrintedKind::kLists, PrintedKind::kRaising}) {
    options.what = what;
    const auto none = print(book, solve(book), options, {});
    REQUIRE_FALSE(none);
    CHECK((none.error().code == ErrorCode::kEmpty && none.error().where == "paper"));
  }
  HandTimber timber;
  timber.mark = "X-1";
  book.frame.added.push_back(timber);
  for (const PrintedKind what : {PrintedKind::kSheets, PrintedKind::kLists, PrintedKind::kRaising}) {
    options.what = what;
    const auto document = print(book, solve(book), options, {});
    REQUIRE(document);
    CHECK(said(faults_of(*document)).empty());
  }
  options.marks = {"X-2"};
  options.what = PrintedKind::kSheets;
  CHECK(print(book, solve(book), options, {}).error().code == ErrorCode::kMissing);
}

TEST_CASE("steps that bring one kind of small timbers share a picture", "[printed]") {
  const Book book = demo_book();
  const BookModel model = solve(book);
  const Frame& frame = **model.frame;
  RaisingPlan plan;
  for (const char* mark : {"P-A1", "B-A1.1", "B-A1.3", "C-A1", "C-A2", "T-1", "C-A3"})
    plan.steps.push_back(step_of(mark));
  const auto pictures = pictured_steps(frame, plan);
  std::string spans;
  for (const PicturedSteps& p : pictures) spans += std::to_string(p.first) + "-" + std::to_string(p.last) + " ";
  CHECK(spans == "0-0 1-2 3-4 5-5 6-6 ");
}

TEST_CASE("pages go over the Worker's border and come back as they were", "[printed]") {
  const Book book = demo_book();
  PrintOptions options;
  options.day = "28 Nov";
  auto document = print(book, solve(book), options, {});
  REQUIRE(document);
  document->pages.resize(3);
  document->pages[1].lying = true;
  const auto code = make_code("P-A1", CodeLevel::kHigh);
  REQUIRE(code);
  document->pages[2].codes.push_back({{20, 30}, 0.7, *code});
  const std::string bytes = write_document(*document);
  const auto back = read_document(bytes);
  REQUIRE(back);
  CHECK(write_document(*back) == bytes);
  REQUIRE(back->pages.size() == 3);
  CHECK(back->title == "Wash house");
  CHECK(back->pages[1].lying);
  CHECK(back->pages[2].codes[0].code.dark == code->dark);
  CHECK(back->pages[0].texts.back().text == document->pages[0].texts.back().text);
  CHECK(back->pages[0].texts.back().at == document->pages[0].texts.back().at);
  CHECK_FALSE(read_document(bytes.substr(0, bytes.size() / 2)));
  CHECK_FALSE(read_document("[7]"));
}

TEST_CASE("a place that no paper reaches is not taken for one: writers would add and turn it", "[printed]") {
  paper::Document document;
  document.pages.resize(1);
  document.pages[0].lines.push_back({{10, 10}, {20, 10}, draw::Stroke::kThin, 0});
  CHECK(read_document(write_document(document)));
  document.pages[0].lines[0].b.x = 1e308;
  CHECK_FALSE(read_document(write_document(document)));
  document.pages[0].lines[0].b.x = 20;
  document.pages[0].arcs.push_back({{10, 10}, -1e9, 0, 360, draw::Stroke::kThin});
  CHECK_FALSE(read_document(write_document(document)));
}
