#include "frame/joints/pins.h"

#include "measure/fields.h"

namespace bentbook {

void describe(Fields& fields, PinPattern& p) {
  constexpr LengthEntry kFar{{}, Length::inches(48)};
  fields.length("diameter", p.diameter, {Length::inches(1, 8), Length::inches(4)});
  fields.integer("count", p.count, 0, kMostPins);
  fields.length("from_shoulder", p.from_shoulder, kFar);
  fields.length("spacing", p.spacing, kFar);
  fields.length("plug", p.plug, kFar);
}

Length first_of_row(const PinPattern& row, int count, Length across) {
  return {(across - row.spacing * (count > 0 ? count - 1 : 0)).count / 2};
}

double peg_row(const PinPattern& peg, double tenon_length, double drawbore) {
  const double d = peg.diameter.in(), row = peg.from_shoulder.in();
  return row > tenon_length - d || row < d / 2 + drawbore ? tenon_length / 2 + drawbore / 2 : row;
}

}  // namespace bentbook
