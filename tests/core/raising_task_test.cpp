// The raising's long work as bytes in and bytes out.
#include "tasks/raising_task.h"

#include <catch_amalgamated.hpp>

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

TEST_CASE("the search runs as a task, and its order checks well", "[raising]") {
  RaisingTasks tasks;
  Book book = small_book();
  int calls = 0;
  const std::string request = raise_search_request(book, 3, 200);
  REQUIRE(RaisingTasks::takes(request));
  const auto bytes = tasks.run(request, [&](int per_mille) {
    ++calls;
    CHECK(per_mille <= 1000);
    return true;
  });
  REQUIRE(bytes);
  CHECK(calls > 0);
  const auto found = read_found_order(*bytes);
  REQUIRE(found);
  REQUIRE(found->found);
  CHECK(*tasks.run(request, {}) == *bytes);
  book.raising = found->plan;
  const auto check = read_order_check(tasks.run(raise_check_request(book), {}).value());
  REQUIRE(check);
  CHECK(check->good());
  const auto explained = read_step_explained(tasks.run(raise_explain_request(book, 0), {}).value());
  REQUIRE(explained);
  CHECK(explained->standing.stands());
}

TEST_CASE("what one check has found out does not change the next answer", "[raising]") {
  RaisingTasks one;
  Book book = demo_book();
  for (const char* mark : {"P-A1", "P-E1", "T-1", "P-A2", "P-E2", "T-2"})
    book.raising.steps.push_back({{mark}, {}, {}, 1, false});
  const auto first = one.run(raise_check_request(book), {});
  std::swap(book.raising.steps[1], book.raising.steps[4]);
  book.raising.loads.wind_mph = 10;
  const auto again = one.run(raise_check_request(book), {});
  RaisingTasks fresh;
  CHECK(*again == *fresh.run(raise_check_request(book), {}));
  CHECK(*again != *first);
  book.raising.crane.present = true;
  book.raising.crane.chart = {{Length::feet(30), Weight::pounds(4000)}};
  book.raising.gear = {{"sling", GearKind::kSling, Length::feet(20), Weight::pounds(3000), Weight::pounds(3000), 4}};
  const auto near_by = read_order_check(one.run(raise_check_request(book), {}).value()).value();
  CHECK(near_by.steps[0].lifts);
  book.raising.stack_x = Length::feet(-200);  // past the chart
  const auto far_off = read_order_check(one.run(raise_check_request(book), {}).value()).value();
  CHECK_FALSE(far_off.steps[0].lifts);
  book.frame.span = Length::feet(15);
  RaisingTasks other;
  CHECK(*one.run(raise_check_request(book), {}) == *other.run(raise_check_request(book), {}));
}

TEST_CASE("a raising task says what is wrong with it", "[raising]") {
  RaisingTasks tasks;
  const auto where = [&](std::string_view request) {
    const auto done = tasks.run(request, {});
    return done ? std::string("done") : done.error().where;
  };
  CHECK(where(R"({"task":"raise_check"})") == "book");
  CHECK(where(R"({"task":"raise_search","seed":-1,"book":{}})") == "seed");
  CHECK(where(R"({"task":"raise_search","tries":0,"book":{}})") == "tries");
  CHECK(where(R"({"task":"raise_check","book":{}})") == "file");
  CHECK(where(R"({"task":"raise_dance","book":{"file":"book","version":1}})") == "task");
  CHECK(where(R"({"task":"raise_explain","step":4,"book":{"file":"book","version":1}})") == "step");
  CHECK(where("[") == "task");
  CHECK(read_found_order("[]").error().where == "answer");
  CHECK(read_order_check(R"({"steps":3})").error().where == "answer");
  CHECK(read_step_explained(R"({"standing":{"modes":[{"kind":99}]}})").error().where == "answer");
}
