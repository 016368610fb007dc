#include <catch_amalgamated.hpp>

#include "raising/order_csv.h"

using namespace bentbook;

namespace {
std::string troubles(const OrderCsv& order) {
  std::string out;
  for (const OrderCsvTrouble& t : order.troubles)
    out += std::to_string(t.line) + " " + t.column + " " + std::to_string(static_cast<int>(t.error.code)) + "; ";
  return out;
}
std::string trouble(int line, std::string_view column, ErrorCode code) {
  return std::to_string(line) + " " + std::string(column) + " " + std::to_string(static_cast<int>(code)) + "; ";
}
}  // namespace

TEST_CASE("someone else's order is read from a spreadsheet's file", "[order_csv]") {
  const OrderCsv order = read_order_csv(
      "Step;Day;Marks;note;put_up;take_out\r\n"
      "20;2;L-A1;;;T1\r\n"
      "10;1;P-A1 + P-E1;both at once;T1 + T2;\r\n"
      ";;;;;\r\n"
      "10;;\"T-1\";;;\r\n");
  CHECK(troubles(order).empty());
  REQUIRE(order.steps.size() == 2);
  CHECK(order.steps[0].marks == std::vector<std::string>{"P-A1", "P-E1", "T-1"});
  CHECK(order.steps[0].put_up == std::vector<std::string>{"T1", "T2"});
  CHECK(order.steps[1].take_out == std::vector<std::string>{"T1"});
  CHECK(order.steps[1].day == 2);
  CHECK(order.lines == std::vector{3, 2});
  const OrderCsv again = read_order_csv(write_order_csv(order.steps));
  CHECK(again.steps == order.steps);
}

TEST_CASE("without numbers each line is a step", "[order_csv]") {
  const OrderCsv order = read_order_csv("mark\nP-A1\nP-E1\n\nT-1");
  REQUIRE(order.steps.size() == 3);
  CHECK(order.steps[2].marks == std::vector<std::string>{"T-1"});
}

TEST_CASE("by what a step goes up is read and written", "[order_csv]") {
  const OrderCsv order = read_order_csv("step,mark,by\n1,P-A1,Gin_Pole\n1,P-E1,\n2,T-1,\n");
  CHECK(troubles(order).empty());
  REQUIRE(order.steps.size() == 2);
  CHECK(order.steps[0].by == LiftBy::kGinPole);
  CHECK(order.steps[1].by == LiftBy::kAsTheYard);
  CHECK(read_order_csv(write_order_csv(order.steps)).steps == order.steps);
  CHECK(troubles(read_order_csv("step,mark,by\n1,P-A1,crane\n1,P-E1,poles\n2,T-1,horse\n")) ==
        trouble(3, "by", ErrorCode::kConflict) + trouble(4, "by", ErrorCode::kUnexpected));
}

TEST_CASE("joints that are fastened later are read and written with the step that brings them", "[order_csv]") {
  const OrderCsv order = read_order_csv("step,mark,later\n1,P-A1,\n2,T-1,\n3,P-E1,\n2,,T-1 + P-A1\n3,, P-E1+T-1\n");
  CHECK(troubles(order).empty());
  CHECK(order.steps.size() == 3);
  const std::vector<JointName> later = {{"T-1", "P-A1"}, {"P-E1", "T-1"}};
  CHECK(order.later == later);
  const std::string bytes = write_order_csv(order.steps, later);
  CHECK(bytes.find("\r\n2,,1,,,,,,T-1+P-A1\r\n") != std::string::npos);
  const OrderCsv again = read_order_csv(bytes);
  CHECK(again.steps == order.steps);
  CHECK(again.later == later);
  CHECK_FALSE(read_order_csv("mark\nP-A1\n").later);
  CHECK(troubles(read_order_csv("mark,later\nP-A1,T-1\n,T-1+\n,T-1+T-1\n,A+B+C\n")) ==
        trouble(2, "later", ErrorCode::kSyntax) + trouble(3, "later", ErrorCode::kSyntax) +
            trouble(4, "later", ErrorCode::kSyntax) + trouble(5, "later", ErrorCode::kSyntax));
  CHECK(read_order_csv("mark,later\nP-A1,T-1+P-A1\n,P-A1+T-1\n").later->size() == 1);
}

TEST_CASE("bad lines of an order are told by number and column", "[order_csv]") {
  CHECK(troubles(read_order_csv("")) == trouble(1, "mark", ErrorCode::kMissing));
  CHECK(troubles(read_order_csv("step,day\n1,1\n")) == trouble(1, "mark", ErrorCode::kMissing));
  CHECK(troubles(read_order_csv("mark,marks\nP\n")) == trouble(1, "mark", ErrorCode::kConflict));
  CHECK(troubles(read_order_csv("step,mark\nx,P-A1\n,P-A2\n1,\n")) == trouble(2, "step", ErrorCode::kUnexpected) +
                                                                          trouble(3, "step", ErrorCode::kMissing) +
                                                                          trouble(4, "mark", ErrorCode::kMissing));
  CHECK(troubles(read_order_csv("step,mark,day\n1,P-A1,1\n1,P-A2,2\n2,P-A3,0\n")) ==
        trouble(3, "day", ErrorCode::kConflict) + trouble(4, "day", ErrorCode::kTooSmall));
  CHECK(troubles(read_order_csv("mark\nP-A1,P-A2\n\"P-A3\n")) ==
        trouble(2, "mark", ErrorCode::kSyntax) + trouble(3, "mark", ErrorCode::kSyntax));
  CHECK(troubles(read_order_csv("mark\nP\xff\n")) == trouble(2, "mark", ErrorCode::kSyntax));
}

TEST_CASE("names that a spreadsheet would work out come back as they were", "[raising]") {
  RaisingStep step;
  step.marks = {"=1+1", "+x", "-x", "@x", "'=x", "'x"};
  step.put_up = {"=cmd"};
  const std::string bytes = write_order_csv(std::vector{step});
  const OrderCsv read = read_order_csv(bytes);
  REQUIRE(read.troubles.empty());
  REQUIRE(read.steps.size() == 1);
  CHECK(read.steps[0].marks == step.marks);
  CHECK(read.steps[0].put_up == step.put_up);
  CHECK(bytes.find(",=") == std::string::npos);
  CHECK_FALSE(read_order_csv("step,mark\n1,P\u202e1\n").troubles.empty());
}
