// Random linear programs of which all columns are known: at the end prices and amounts hold each other up (strong
// duality and complementary slackness, theorems of linear programming).

#include <catch_amalgamated.hpp>
#include <random>

#include "numeric/libm.h"
#include "numeric/simplex.h"

using namespace bentbook;
using Catch::Matchers::WithinAbs;

namespace {

struct Program {
  std::vector<double> wanted, bought, cost;
  std::vector<std::vector<RowShare>> columns;
};

Program random_program(unsigned seed) {
  std::mt19937 rng(seed);
  const auto up_to = [&](unsigned n) { return static_cast<double>(rng() % n + 1); };
  Program program;
  const int at_least = static_cast<int>(rng() % 6 + 2), at_most = static_cast<int>(rng() % 3);
  for (int i = 0; i < at_least + at_most; ++i) program.wanted.push_back(i < at_least ? up_to(20) : up_to(9));
  for (int i = 0; i < at_least; ++i) program.bought.push_back(1000 + up_to(40));
  const int columns = static_cast<int>(rng() % 24 + 1);  // a few leave rows to be bought
  for (int c = 0; c < columns; ++c) {
    std::vector<RowShare> shares;
    for (int i = 0; i < at_least; ++i)
      if (rng() % 2 == 0) shares.push_back({i, up_to(4)});
    for (int i = at_least; i < at_least + at_most; ++i)
      if (rng() % 3 == 0) shares.push_back({i, 1});
    program.cost.push_back(up_to(30));
    program.columns.push_back(std::move(shares));
  }
  return program;
}

}  // namespace

TEST_CASE("at the end no column saves anything, rows get what they ask for, and prices pay for all that is taken",
          "[numeric]") {
  constexpr double kHairOff = 1e-9, kNear = 1e-6;
  int bought = 0, with_limits = 0;
  for (unsigned seed = 0; seed < 300; ++seed) {
    CAPTURE(seed);
    const Program program = random_program(seed);
    Simplex simplex(program.wanted, program.bought);
    for (std::size_t c = 0; c < program.columns.size(); ++c) simplex.add(program.cost[c], program.columns[c]);
    simplex.price_afresh();
    for (int column = simplex.entering(kHairOff); column != Simplex::kNone; column = simplex.entering(kHairOff)) {
      REQUIRE(simplex.pivots() < 1000);
      REQUIRE(simplex.pivot(column));
    }
    simplex.price_afresh();
    const std::size_t at_least = program.bought.size();
    std::vector<double> given(program.wanted.size(), 0);
    double paid = 0;
    for (const Simplex::Taken& one : simplex.taken()) {
      CHECK(one.times >= -kNear);
      paid += one.times * program.cost[static_cast<std::size_t>(one.column)];
      for (const RowShare& share : program.columns[static_cast<std::size_t>(one.column)])
        given[static_cast<std::size_t>(share.row)] += one.times * share.count;
    }
    double worth = 0;
    for (std::size_t i = 0; i < program.wanted.size(); ++i) {
      const double price = simplex.price(static_cast<int>(i));
      worth += price * program.wanted[i];
      if (i >= at_least) {
        CHECK(price <= kNear);
        CHECK(given[i] <= program.wanted[i] + kNear);
        continue;
      }
      CHECK(price >= -kNear);
      CHECK(price <= program.bought[i] + kNear);
      // What columns do not give is bought.
      if (given[i] < program.wanted[i] - kNear) {
        paid += (program.wanted[i] - given[i]) * program.bought[i];
        CHECK_THAT(price, WithinAbs(program.bought[i], kNear));
      }
    }
    for (std::size_t c = 0; c < program.columns.size(); ++c) {
      double saves = program.cost[c];
      for (const RowShare& share : program.columns[c]) saves -= share.count * simplex.price(share.row);
      CHECK(saves >= -kNear);
    }
    CHECK_THAT(simplex.value(), WithinAbs(worth, kNear * (1 + worth)));
    CHECK_THAT(paid, WithinAbs(worth, kNear * (1 + worth)));
    bought += simplex.is_bought() ? 1 : 0;
    with_limits += program.wanted.size() > at_least ? 1 : 0;
  }
  CHECK(bought >= 10);
  CHECK(with_limits >= 100);
}
