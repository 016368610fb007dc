#pragma once
/// The item registry as the mirror reads it: a JSON array with one array an item,
///   [key, role, name, value, x, y, w, h, flags, level, min, max, step, number, scroll]
/// role, touch: the enums' numbers. Rectangles in whole CSS px. flags: 1 enabled, 2 checked, 4 live, 8 × touch.

#include <string>

#include "ui/registry.h"

namespace bentbook::page {

[[nodiscard]] std::string registry_json(const screens::Registry& registry);

}  // namespace bentbook::page
