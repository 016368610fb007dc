#pragma once
/// The item registry as the mirror reads it: a JSON array of one array an item, after a first one that names their
/// columns. role and touch are the enumerations' numbers; rectangles in whole CSS px.

#include <string>

#include "ui/registry.h"

namespace bentbook::page {

[[nodiscard]] std::string registry_json(const screens::Registry& registry);

}  // namespace bentbook::page
