// Long work: as values, across the Worker's border, and by fingerprint.
#include "tasks/raising_task.h"

#include <catch_amalgamated.hpp>

#include "book/demo.h"
#include "frame/placing/solve_frame.h"
#include "model/book_model.h"
#include "tasks/border.h"
#include "tasks/worker_answer.h"
#include "tasks/worker_raising.h"

using namespace bentbook;

namespace {

/// Two sills, so that the search is soon through.
Book small_book() {
  Book book = new_book("sills", Length::feet(12), Length::feet(10), Length::feet(8), Slope::in_12(Length::inches(8)));
  book.framed = false;
  for (int i = 0; i < 2; ++i) {
    HandTimber sill;
    sill.mark = "X-" + std::to_string(i + 1);
    sill.kind = TimberKind::kSill;
    sill.placed = true;
    sill.origin[0] = Length::feet(10 * i);
    book.frame.added.push_back(sill);
  }
  return book;
}

RaisingCase case_of(const Book& book) {
  return {std::make_shared<const Frame>(solve(book).frame->value()), book.raising};
}

/// Through the Worker's border and back.
Result<TaskAnswer> crossed(RaisingWorker& worker, TaskKind kind, const TaskRequest& request) {
  return read_answer(kind, worker.answer(write_request(request), write_frame(*frame_of(request)), {}));
}

bool same(const OrderCheck& a, const OrderCheck& b) {
  return write_answer<OrderCheck>(a) == write_answer<OrderCheck>(b);
}

Book demo_with_steps() {
  Book book = demo_book();
  for (const char* mark : {"P-A1", "P-E1", "T-1", "P-A2", "P-E2", "T-2"})
    book.raising.steps.push_back({{mark}, {}, {}, 1, false, {}});
  return book;
}

}  // namespace

TEST_CASE("the search runs as a task, and its order checks well", "[raising]") {
  RaisingTasks tasks;
  Book book = small_book();
  int calls = 0;
  const SearchRequest request{case_of(book), 3, 200, false};
  const FoundOrder found = tasks.search(request, [&](int per_mille) {
    ++calls;
    CHECK(per_mille <= 1000);
    return true;
  });
  CHECK(calls > 0);
  REQUIRE(found.found);
  CHECK(tasks.search(request, {}).plan == found.plan);
  book.raising = found.plan;
  CHECK(tasks.check({case_of(book)}).good());
  const auto explained = tasks.explain({case_of(book), 0});
  REQUIRE(explained);
  CHECK(explained->standing.stands());
  CHECK(tasks.explain({case_of(book), 4}).error().where == "step");
}

TEST_CASE("what one check has found out does not change the next answer", "[raising]") {
  RaisingTasks one;
  Book book = demo_with_steps();
  const OrderCheck first = one.check({case_of(book)});
  std::swap(book.raising.steps[1], book.raising.steps[4]);
  book.raising.loads.wind_mph = 10;
  const OrderCheck again = one.check({case_of(book)});
  CHECK(same(again, RaisingTasks().check({case_of(book)})));
  CHECK_FALSE(same(again, first));
  book.raising.crew.people = 1;
  book.raising.crane.present = true;
  book.raising.crane.chart = {{Length::feet(30), Weight::pounds(4000)}};
  book.raising.gear = {{"sling", GearKind::kSling, Length::feet(20), Weight::pounds(3000), Weight::pounds(3000), 4}};
  CHECK(one.check({case_of(book)}).steps[0].lifts);
  book.raising.stack_x = Length::feet(-200);  // past the chart
  CHECK_FALSE(one.check({case_of(book)}).steps[0].lifts);
  book.frame.span = Length::feet(15);
  CHECK(same(one.check({case_of(book)}), RaisingTasks().check({case_of(book)})));
}

TEST_CASE("a task answers across the border as it does without one", "[raising][border]") {
  Book book = demo_with_steps();
  book.raising.temporaries.push_back(
      {"T1", TemporaryKind::kDiagonal, {"P-A1", Length::feet(6)}, {}, {}, {}, {}, {}, {}});
  book.raising.steps[0].put_up = {"T1"};
  const RaisingCase of = case_of(book);
  RaisingTasks tasks;
  RaisingWorker worker;
  const auto check = crossed(worker, TaskKind::kCheck, CheckRequest{of});
  REQUIRE(check);
  CHECK(same(std::get<OrderCheck>(*check), tasks.check({of})));
  const auto explained = crossed(worker, TaskKind::kExplain, ExplainRequest{of, 2});
  REQUIRE(explained);
  const StepExplained here = tasks.explain({of, 2}).value(), there = std::get<StepExplained>(*explained);
  CHECK(there.step == 2);
  CHECK(there.braces == here.braces);
  CHECK(there.standing.factor == here.standing.factor);
  CHECK(there.standing.warnings == here.standing.warnings);
  REQUIRE(there.standing.modes.size() == here.standing.modes.size());
  for (std::size_t i = 0; i < here.standing.modes.size(); ++i)
    CHECK(there.standing.modes[i].motions.size() == here.standing.modes[i].motions.size());
  CHECK(crossed(worker, TaskKind::kExplain, ExplainRequest{of, 9}).error().where == "step");

  const RaisingCase small = case_of(small_book());
  const auto found = crossed(worker, TaskKind::kSearch, SearchRequest{small, 3, 200, false});
  REQUIRE(found);
  CHECK(std::get<FoundOrder>(*found).plan == tasks.search({small, 3, 200, false}, {}).plan);
}

TEST_CASE("what the raising looks at in a frame crosses the border bit by bit", "[raising][border]") {
  const Frame frame = solve(demo_book()).frame->value();
  const auto back = read_frame(write_frame(frame));
  REQUIRE(back);
  CHECK(back->contacts == frame.contacts);
  REQUIRE(back->timbers.size() == frame.timbers.size());
  for (std::size_t i = 0; i < frame.timbers.size(); ++i) {
    const Timber &a = frame.timbers[i], &b = back->timbers[i];
    CHECK((a.mark == b.mark && a.kind == b.kind && a.place == b.place && a.sides == b.sides && a.at == b.at &&
           a.cuts == b.cuts && a.pockets == b.pockets && a.length == b.length && a.placed == b.placed));
  }
  REQUIRE(back->joints.size() == frame.joints.size());
  for (std::size_t i = 0; i < frame.joints.size(); ++i) {
    Joint without_tools = frame.joints[i];
    without_tools.tools = {};
    CHECK(back->joints[i] == without_tools);
  }
  CHECK(write_frame(*back) == write_frame(frame));
  // What holds there holds here, with as many pegs.
  RaisingPlan plan;
  plan.fasten = FastenWhen::kWithStep;
  const StandingModel here = make_standing_model(frame, plan), there = make_standing_model(*back, plan);
  REQUIRE(here.rows.size() == there.rows.size());
  for (std::size_t i = 0; i < here.rows.size(); ++i) CHECK(here.rows[i].limit == there.rows[i].limit);
}

TEST_CASE("bytes that are no task, frame or answer are an error", "[raising][border]") {
  RaisingWorker worker;
  const Book book = demo_book();
  const std::string frame = write_frame(*case_of(book).frame), check = write_request(CheckRequest{case_of(book)});
  const auto where = [&](std::string_view request, std::string_view told) {
    return read_answer(TaskKind::kCheck, worker.answer(request, told, {})).error().where;
  };
  CHECK(where("[", frame) == "task");
  CHECK(where(R"({"values":[1,7]})", frame) == "task");
  CHECK(where(write_request(PatternRequest{}), frame) == "task");
  CHECK(where(check.substr(0, check.size() - 1) + " ", frame) == "task");
  CHECK(where(check, "{}") == "frame");
  CHECK(where(check, frame.substr(0, frame.size() / 2)) == "frame");
  Frame loose = *case_of(book).frame;
  loose.joints[0].member = static_cast<int>(loose.timbers.size());
  CHECK(where(check, write_frame(loose)) == "frame");
  for (const TaskKind kind : {TaskKind::kPattern, TaskKind::kCheck, TaskKind::kExplain, TaskKind::kSearch})
    for (const std::string_view bytes :
         {"", "[]", R"({"values":[]})", R"({"values":[true,99]})", R"({"values":[false]})"})
      CHECK(read_answer(kind, bytes).error().where == "answer");
}

TEST_CASE("a task's name comes back as it went", "[border]") {
  for (const TaskId id : {TaskId{TaskKind::kPattern, 0}, TaskId{TaskKind::kSearch, ~Fingerprint{0}}})
    CHECK(read_task_name(task_name(id)) == id);
  for (const std::string_view name : {"", "check", "check ", "dance 1f", "check 1g", "check 11112222333344445"})
    CHECK_FALSE(read_task_name(name));
}

TEST_CASE("a fingerprint tells apart what a task hangs on, and nothing else", "[raising][fingerprint]") {
  const Book book = demo_with_steps();
  const Fingerprint before = fingerprint_of(book);
  const auto after = [&](auto edit) {
    Book next = book;
    edit(next);
    return fingerprint_of(next);
  };
  CHECK(after([](Book& b) { b.title = "another"; }) == before);
  CHECK(after([](Book& b) { b.rafter.span = Length::feet(5); }) == before);
  CHECK(after([](Book& b) { b.framed = false; }) != before);
  CHECK(after([](Book& b) { b.frame.span = b.frame.span + Length{1}; }) != before);
  CHECK(after([](Book& b) { b.frame.moisture += 1e-9; }) != before);
  CHECK(after([](Book& b) { b.raising.steps.pop_back(); }) != before);
  CHECK(after([](Book& b) { std::swap(b.raising.steps[0], b.raising.steps[1]); }) != before);
  CHECK(after([](Book& b) { b.raising.steps[0].marks = {"P-A", "1"}; }) != before);
  CHECK(after([](Book& b) { b.raising.loads.wind_mph = 26; }) != before);
  CHECK(after([](Book& b) { b.raising.posts_anchored = false; }) != before);
  CHECK(fingerprint_of_step(before, 0) != fingerprint_of_step(before, 1));
  PatternRequest left, right;
  right.side = Side::kRight;
  CHECK(fingerprint_of(left) != fingerprint_of(right));
}
