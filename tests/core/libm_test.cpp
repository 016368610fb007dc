#include "numeric/libm.h"

#include <catch_amalgamated.hpp>

using namespace bentbook;

// Values by arbitrary-precision arithmetic (mpmath 1.3, 50 digits), rounded to the nearest double.
TEST_CASE("the libm agrees with arbitrary-precision arithmetic to the last place", "[libm]") {
  CHECK(libm::sin(1.0) == 0x1.aed548f090ceep-1);
  CHECK(libm::cos(1.0) == 0x1.14a280fb5068cp-1);
  CHECK(libm::tan(1.0) == 0x1.8eb245cbee3a6p+0);
  CHECK(libm::asin(0.375) == 0x1.899f4edc962d3p-2);
  CHECK(libm::acos(0.375) == 0x1.2fb7e18d1d464p+0);
  CHECK(libm::atan(0.5) == 0x1.dac670561bb4fp-2);
  CHECK(libm::atan2(1.0, 3.0) == 0x1.4978fa3269ee1p-2);
  CHECK(libm::sqrt(2.0) == 0x1.6a09e667f3bcdp+0);
  CHECK(libm::hypot(3.0, 4.0) == 5.0);
  CHECK(bbm_exp(1.0) == 0x1.5bf0a8b145769p+1);
  CHECK(bbm_log(10.0) == 0x1.26bb1bbb55516p+1);
  CHECK(bbm_cbrt(10.0) == 0x1.13c484138704fp+1);
}
