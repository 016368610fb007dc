#include <catch_amalgamated.hpp>

#include "answers/raise_task.h"
#include "book/book.h"

using namespace bentbook;

namespace {

/// Two posts, so that the search is soon through.
Book small_book() {
  Book book = new_book("posts", Length::feet(12), Length::feet(10), Length::feet(8), Slope::in_12(Length::inches(8)));
  book.framed = false;
  for (int i = 0; i < 2; ++i) {
    HandTimber post;
    post.mark = "X-" + std::to_string(i + 1);
    post.kind = TimberKind::kPost;
    post.placed = true;
    post.origin[0] = Length::feet(10 * i);
    post.rise = Angle::degrees(90);
    book.frame.added.push_back(post);
  }
  return book;
}

}  // namespace

TEST_CASE("the search runs as a task, and its answer is read back", "[raise]") {
  const Book book = small_book();
  int calls = 0, last = 0;
  const auto bytes = run_task(raise_request(write_book(book), 3, 200), [&](int per_mille) {
    ++calls;
    CHECK(per_mille >= last);
    last = per_mille;
    return true;
  });
  REQUIRE(bytes);
  CHECK(calls > 0);
  const auto found = read_found_order(*bytes);
  REQUIRE(found);
  CHECK(found->found);
  CHECK(!found->plan.steps.empty());
  CHECK(write_found_order(*found) == *bytes);
  CHECK(*run_task(raise_request(write_book(book), 3, 200), {}) == *bytes);
}

TEST_CASE("a raise task says what is wrong with it", "[raise]") {
  const auto where = [](std::string_view request) {
    const auto done = run_task(request, {});
    return done ? std::string("done") : done.error().where;
  };
  CHECK(where(R"({"task":"raise"})") == "book");
  CHECK(where(R"({"task":"raise","seed":-1,"book":{}})") == "seed");
  CHECK(where(R"({"task":"raise","steps":0,"book":{}})") == "steps");
  CHECK(where(R"({"task":"raise","book":{}})") == "file");
  const auto stopped = run_task(raise_request(write_book(small_book()), 1, 200), [](int) { return false; });
  CHECK((stopped || stopped.error().where == "cancelled"));
  CHECK(read_found_order("{}").error().where == "file");
  CHECK(read_found_order(R"({"file":"found_order","version":1,"raising":{"steps":3}})").error().where ==
        "raising.steps");
}
