#pragma once
/// Indices are int where "none" is −1; containers count in std::size_t.

#include <cstddef>

namespace bentbook {

/// An index that is known not to be negative, as a container takes it.
constexpr std::size_t at(int i) { return static_cast<std::size_t>(i); }

}  // namespace bentbook
