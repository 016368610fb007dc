#include "measure/length.h"

#include "measure/round.h"

namespace bentbook {

Length Length::from_inches(double inches) { return {nearest_count(inches * static_cast<double>(kPerInch), kLimit)}; }

}  // namespace bentbook
