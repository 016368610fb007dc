#include <catch_amalgamated.hpp>

#include "numeric/rational.h"

using namespace bentbook;

namespace {

bool same(const std::optional<Rational>& r, Int128 num, Int128 den) { return r && r->num == num && r->den == den; }

constexpr Int128 kHuge = Int128{1} << 125;

}  // namespace

TEST_CASE("fractions are kept in lowest terms with the sign above", "[rational]") {
  CHECK(same(make_rational(6, 16), 3, 8));
  CHECK(same(make_rational(6, -16), -3, 8));
  CHECK(same(make_rational(0, 5), 0, 1));
  CHECK(same(add({3, 8}, {5, 16}), 11, 16));
  CHECK(same(multiply({3, 8}, {2, 3}), 1, 4));
  CHECK(same(divide({3, 8}, {-3, 4}), -1, 2));
}

TEST_CASE("what does not fit 126 bits has no value", "[rational]") {
  CHECK_FALSE(make_rational(1, 0));
  CHECK_FALSE(divide({1, 2}, {0, 1}));
  CHECK_FALSE(multiply({kHuge, 1}, {3, 1}));
  CHECK_FALSE(add({kHuge, 1}, {kHuge, 1}));
  CHECK_FALSE(add({1, kHuge}, {1, 3}));
  CHECK(same(multiply({kHuge, 3}, {3, kHuge}), 1, 1));
}

TEST_CASE("half and more goes up, of the magnitude", "[rational]") {
  CHECK(divide_half_up(5, 2) == 3);
  CHECK(divide_half_up(-5, 2) == -3);
  CHECK(divide_half_up(7, 3) == 2);
  CHECK(divide_half_up(-7, 3) == -2);
  CHECK(divide_half_up(1, 3) == 0);
  CHECK(divide_half_up(2, 3) == 1);
  CHECK(divide_half_up(Int128{1} << 125, Int128{1} << 124) == 2);
}
