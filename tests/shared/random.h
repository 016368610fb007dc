#pragma once
/// Random numbers for tests: fixed seeds, the same on every target.

#include <cstdint>
#include <cstdlib>

/// SplitMix64 (Steele, Lea, Flood: Fast splittable pseudorandom number generators, 2014).
class Random {
 public:
  explicit Random(std::uint64_t seed) : state_(seed) {}

  std::uint64_t bits() {
    state_ += 0x9e3779b97f4a7c15;
    std::uint64_t z = state_;
    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9;
    z = (z ^ (z >> 27)) * 0x94d049bb133111eb;
    return z ^ (z >> 31);
  }

  /// least to most, both included
  std::int64_t whole(std::int64_t least, std::int64_t most) {
    const std::uint64_t width = static_cast<std::uint64_t>(most) - static_cast<std::uint64_t>(least) + 1;
    const std::uint64_t offset = width == 0 ? bits() : bits() % width;
    return static_cast<std::int64_t>(static_cast<std::uint64_t>(least) + offset);
  }

  /// from least up to most
  double real(double least, double most) {
    return least + (most - least) * (static_cast<double>(bits() >> 11) * 0x1p-53);
  }

 private:
  std::uint64_t state_;
};

/// Under `tests/run long`: the big counts.
inline bool is_long() {
  const char* text = std::getenv("BENTBOOK_LONG");
  return text != nullptr && *text == '1';
}

/// How many cases a property is tried with: 100 000, a million under `tests/run long`.
inline int property_cases() { return is_long() ? 1'000'000 : 100'000; }
