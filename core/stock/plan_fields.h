#pragma once
/// What is said about stock, as files have it.

#include "measure/fields.h"
#include "stock/plan.h"

namespace bentbook {

void describe(Fields&, StockPlan&);

}  // namespace bentbook
