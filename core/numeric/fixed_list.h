#pragma once
/// A list of at most N items that lives where it is declared: nothing is allocated.

#include <array>

namespace bentbook {

template <class T, int N>
struct FixedList {
  std::array<T, N> items{};
  int count = 0;
  void add(T item) { items[static_cast<unsigned>(count++)] = item; }
  [[nodiscard]] const T* begin() const { return items.data(); }
  [[nodiscard]] const T* end() const { return items.data() + count; }
  [[nodiscard]] const T& operator[](int i) const { return items[static_cast<unsigned>(i)]; }
  [[nodiscard]] T& operator[](int i) { return items[static_cast<unsigned>(i)]; }
  friend bool operator==(const FixedList& a, const FixedList& b) {
    if (a.count != b.count) return false;
    for (int i = 0; i < a.count; ++i)
      if (!(a[i] == b[i])) return false;
    return true;
  }
};

}  // namespace bentbook
