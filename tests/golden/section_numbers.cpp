#include "measure/print.h"
#include "numeric/libm.h"
#include "random.h"
#include "rows.h"

using namespace bentbook;

namespace golden {
namespace {

struct Function {
  const char* name;
  double (*of)(double);
  double least;
  double most;
};

constexpr Function kFunctions[] = {
    {"sin", libm::sin, -7, 7},       {"cos", libm::cos, -7, 7},       {"tan", libm::tan, -7, 7},
    {"sin", libm::sin, -1e12, 1e12}, {"asin", libm::asin, -1, 1},     {"acos", libm::acos, -1, 1},
    {"atan", libm::atan, -30, 30},   {"sqrt", libm::sqrt, 0, 1e15},   {"floor", libm::floor, -1e6, 1e6},
    {"ceil", libm::ceil, -1e6, 1e6}, {"fabs", libm::fabs, -1e6, 1e6},
};

constexpr double kCorners[] = {0.0, -0.0, 0.5, -0.5, 1.0, -1.0, 1e-300, 5e-324, libm::kPi / 2, libm::kPi / 4, 1e300};

}  // namespace

void libm_rows(Rows& rows) {
  Random random(101);
  for (const Function& function : kFunctions) {
    for (double x : kCorners) {
      // NaN is the one result whose bits the standard leaves open; its sign differs between processors.
      const double y = function.of(x);
      if (y == y) rows.word(function.name).bits(x).bits(y).end();
    }
    for (int i = 0; i < 1000; ++i) {
      const double x = random.real(function.least, function.most);
      rows.word(function.name).bits(x).bits(function.of(x)).end();
    }
  }
  for (int i = 0; i < 1000; ++i) {
    const double y = random.real(-1e4, 1e4);
    const double x = random.real(-1e4, 1e4);
    rows.word("atan2").bits(y).bits(x).bits(libm::atan2(y, x)).end();
    rows.word("hypot").bits(y).bits(x).bits(libm::hypot(y, x)).end();
  }
}

void fixed_rows(Rows& rows) {
  Random random(102);
  for (int i = 0; i < 2000; ++i) {
    const double x = i % 2 == 0 ? random.real(-1000, 1000) : static_cast<double>(random.whole(-99'999, 99'999)) / 64;
    const int decimals = static_cast<int>(random.whole(0, 9));
    rows.bits(x).whole(decimals).word(print_fixed(x, decimals)).end();
  }
  for (double x : kCorners) rows.bits(x).word(print_fixed(x, 17)).end();
}

}  // namespace golden
