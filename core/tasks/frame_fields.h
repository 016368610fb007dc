#pragma once
/// A solved frame as it crosses to the Worker: as far as the raising looks at it, each timber's body, weight and place,
/// joints and contacts. Of the layout only which holes belong to which joint goes along: the rest of the features, tool
/// numbers, warnings and what the plan said stay behind.

#include "frame/plan.h"
#include "measure/fields.h"

namespace bentbook {

/// By number; `last` is the enumeration's last one.
template <class Enum>
void describe_enum(Fields& fields, const char* key, Enum& value, Enum last) {
  int n = static_cast<int>(value);
  fields.integer(key, n, 0, static_cast<int>(last));
  value = static_cast<Enum>(n);
}

void describe(Fields&, Vec3&);
void describe(Fields&, Frame&);

}  // namespace bentbook
