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

}  // namespace bentbook
