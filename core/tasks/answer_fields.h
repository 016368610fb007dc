#pragma once
/// What comes back, as it crosses from the Worker. Timbers and joints go by their indices in the frame that was asked
/// about.

#include "measure/fields.h"
#include "tasks/task.h"

namespace bentbook {

void describe(Fields&, PatternSheet&);
void describe(Fields&, OrderCheck&);
void describe(Fields&, StepExplained&);
void describe(Fields&, FoundOrder&);
void describe(Fields&, Error&);

}  // namespace bentbook
