#pragma once
/// Finds what a crew that works in metric units should not read.

#include <array>
#include <string_view>

namespace bentbook {

/// A figure in a unit of the inch, the pound or the mile, in any of the languages: a digit, perhaps a space, the unit,
/// and no letter after it.
inline bool has_inch_units(std::string_view said) {
  constexpr std::array<std::string_view, 10> kUnits = {"lb",         "in",  "ft",   "″",          "′",
                                                       "board feet", "mph", "mi/h", "pies tabla", "pieds-planche"};
  for (size_t i = 0; i < said.size(); ++i) {
    if (said[i] < '0' || said[i] > '9') continue;
    std::string_view rest = said.substr(i + 1);
    if (!rest.empty() && rest.front() == ' ') rest.remove_prefix(1);
    for (const std::string_view unit : kUnits) {
      if (!rest.starts_with(unit)) continue;
      const std::string_view after = rest.substr(unit.size());
      if (after.empty() || after.front() < 'a' || after.front() > 'z') return true;
    }
  }
  return false;
}

}  // namespace bentbook
