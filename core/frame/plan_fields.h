#pragma once
/// The frame plan, what is set apart from it and the timbers entered by hand, as files have them.

#include "frame/plan.h"
#include "measure/fields.h"

namespace bentbook {

void describe(Fields&, Species&);
/// One timber set apart.
void describe(Fields&, Override&);
void describe(Fields&, FramePlan&);

}  // namespace bentbook
