#pragma once
/// What is asked, as it crosses to the Worker: without its frame, which goes apart.

#include "measure/fields.h"
#include "tasks/task.h"

namespace bentbook {

void describe(Fields&, PatternRequest&);
void describe(Fields&, CheckRequest&);
void describe(Fields&, ExplainRequest&);
void describe(Fields&, SearchRequest&);

}  // namespace bentbook
