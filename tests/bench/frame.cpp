/// Milliseconds of processor time to solve a frame, the least of many runs, each plan differing so that nothing can be
/// kept from one call to the next. Prints `NAME TIMBERS MS` for plans of about 40, 500 and 10 000 timbers (`plan40`,
/// …), and for edits of one timber in a book of 500: `override`, `rough`, `note`, `hand`, `listed`.

#include <algorithm>
#include <cstdio>
#include <ctime>

#include "book/book_edit.h"
#include "model/book_model.h"

namespace {

using namespace bentbook;
double ms_since(std::clock_t began) { return static_cast<double>(std::clock() - began) * 1e3 / CLOCKS_PER_SEC; }

Book long_book(int bays) {
  Book book = new_book("Bench", Length::feet(20), Length::feet(24), Length::feet(10), Slope::in_12(Length::inches(8)));
  book.frame.bays.clear();
  for (int i = 0; i < bays; ++i) book.frame.bays.push_back({Length::feet(10), i + 2});
  return book;
}

int timbers_of(const BookModel& model) { return *model.frame ? static_cast<int>((*model.frame)->timbers.size()) : -1; }

void time_plan(const char* name, int bays, int runs) {
  Book book = long_book(bays);
  double least = 1e9;
  int timbers = 0;
  for (int run = 0; run < runs; ++run) {
    book.frame.span = Length::feet(20) + Length::inches(run % 16, 16);
    const auto began = std::clock();
    const BookModel model = solve(book);
    least = std::min(least, ms_since(began));
    timbers = timbers_of(model);
  }
  std::printf("%s %d %.4f\n", name, timbers, least);
}

/// The edit from a model that stands to the one that follows; `edit` is given the run's number.
template <class Edit>
void time_edit(const char* name, const Book& was, Edit edit) {
  const BookModel before = solve(was);
  double least = 1e9;
  for (int run = 0; run < 60; ++run) {
    const Book next = edit(was, run);
    const auto began = std::clock();
    const BookModel model = solve_again(next, was, before);
    least = std::min(least, ms_since(began));
  }
  std::printf("%s %d %.4f\n", name, timbers_of(before), least);
}

Override rough_post(int run) {
  Override o;
  o.mark = "P-A10";
  o.has_wood = true;
  o.wood.actual = {Length::inches(8), Length::inches(8) + Length::inches(run + 1, 128)};
  return o;
}

Override other_species(int run) {
  Override o;
  o.mark = "P-A10";
  o.has_species = true;
  o.species = {"bench", 0.4, 0.45, 40.0 + run};
  return o;
}

HandTimber hand_timber(int number, int run) {
  HandTimber hand;
  hand.mark = "X-" + std::to_string(number);
  hand.length = Length::feet(9) + Length::inches(number + run, 16);
  for (int i = 0; i < 4; ++i) {
    HandFeature f;
    f.kind = i % 2 == 0 ? FeatureKind::kMortise : FeatureKind::kHole;
    f.station = Length::inches(20 + 18 * i);
    f.offset = Length::inches(4);
    f.along = Length::inches(6);
    f.across = Length::inches(2);
    f.depth = Length::inches(4);
    f.diameter = Length::inches(1);
    hand.features.push_back(f);
  }
  return hand;
}

}  // namespace

int main() {
  time_plan("plan40", 1, 400);
  time_plan("plan500", 18, 40);
  time_plan("plan10000", 370, 5);
  const Book book = long_book(18);
  time_edit("override", book, [](const Book& was, int run) { return with_override(was, other_species(run)); });
  time_edit("rough", book, [](const Book& was, int run) { return with_override(was, rough_post(run)); });
  time_edit("note", book, [](const Book& was, int run) { return with_note(was, "P-A10", std::to_string(run)); });
  time_edit("hand", book, [](const Book& was, int run) { return with_added(was, hand_timber(1, run)); });
  Book listed = book;
  listed.framed = false;
  for (int i = 0; i < 500; ++i) listed = with_added(listed, hand_timber(i, 0));
  time_edit("listed", listed, [](const Book& was, int run) { return with_added(was, hand_timber(250, run + 1)); });
  return 0;
}
