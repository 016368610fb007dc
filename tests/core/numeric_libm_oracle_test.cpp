// The one libm against another implementation: the host C library's in 80-bit long double, whose error is far below one
// ulp of a double. Only natively on x86: under WebAssembly the C library is musl itself.
#if defined(__x86_64__) && defined(__GLIBC__)

#include <catch_amalgamated.hpp>
#include <cmath>

#include "numeric/libm.h"
#include "random.h"

using namespace bentbook;

namespace {

constexpr int kCases = 20'000;

long double ulps_off(double ours, long double theirs) {
  const double size = std::fabs(ours);
  const long double ulp = std::nextafter(size, INFINITY) - size;
  return std::fabs(static_cast<long double>(ours) - theirs) / ulp;
}

using One = double (*)(double);
using OneLong = long double (*)(long double);

long double worst_of(One ours, OneLong theirs, double least, double most) {
  Random random(2);
  long double worst = 0;
  for (int i = 0; i < kCases; ++i) {
    const double x = random.real(least, most);
    worst = std::fmax(worst, ulps_off(ours(x), theirs(static_cast<long double>(x))));
  }
  return worst;
}

}  // namespace

TEST_CASE("functions of one number are within one ulp of the host's long double", "[libm]") {
  CHECK(worst_of(libm::sin, sinl, -7, 7) < 1);
  CHECK(worst_of(libm::cos, cosl, -7, 7) < 1);
  CHECK(worst_of(libm::tan, tanl, -7, 7) < 1);
  CHECK(worst_of(libm::sin, sinl, -1e9, 1e9) < 1);
  CHECK(worst_of(libm::asin, asinl, -1, 1) < 1);
  CHECK(worst_of(libm::acos, acosl, -1, 1) < 1);
  CHECK(worst_of(libm::atan, atanl, -20, 20) < 1);
  CHECK(worst_of(libm::sqrt, sqrtl, 0, 1e12) <= 0.5L);
}

TEST_CASE("atan2 and hypot are within one ulp of the host's long double", "[libm]") {
  Random random(3);
  long double worst = 0;
  for (int i = 0; i < kCases; ++i) {
    const double y = random.real(-1000, 1000);
    const double x = random.real(-1000, 1000);
    worst = std::fmax(worst, ulps_off(libm::atan2(y, x), atan2l(y, x)));
    worst = std::fmax(worst, ulps_off(libm::hypot(y, x), hypotl(y, x)));
  }
  CHECK(worst < 1);
}

TEST_CASE("whole-number rounding is the host's exactly", "[libm]") {
  Random random(4);
  for (int i = 0; i < kCases; ++i) {
    const double x = random.real(-1e6, 1e6);
    REQUIRE(libm::floor(x) == std::floor(x));
    REQUIRE(libm::ceil(x) == std::ceil(x));
    REQUIRE(libm::fabs(x) == std::fabs(x));
  }
}

#endif
