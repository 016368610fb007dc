#include "measure/fields.h"

namespace bentbook {
namespace {

constexpr std::string_view kSlopeForms[] = {"ratio", "angle", "percent", "mm_per_m"};
constexpr std::string_view kLengthForms[] = {"feet_inches", "inch_fraction", "decimal_inch", "mm", "metre"};

}  // namespace

void describe(Fields& fields, Slope& s) {
  fields.choice("form", s.form, kSlopeForms);
  fields.length("rise", s.rise);
  fields.length("run", s.run);
  fields.angle("angle", s.angle);
}

void describe(Fields& fields, LengthStyle& s) {
  fields.choice("length_form", s.form, kLengthForms);
  fields.integer("division", s.denominator, 8, 64);
  fields.integer("decimals", s.decimals, 0, 6);
  const int d = s.denominator;
  if (fields.reads() && d != 8 && d != 16 && d != 32 && d != 64) fields.fail(ErrorCode::kSyntax, "division");
}

}  // namespace bentbook
