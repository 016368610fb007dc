#pragma once
/// What every fuzzer needs. A fuzzer is one file, tests/fuzz/fuzz_<name>.cpp; its seeds lie in tests/corpus/<name>/:
/// whole files, except *.lines, of which each line is a seed. Nothing else lists it.

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace fuzz {

inline std::string_view text_of(const std::uint8_t* data, std::size_t size) {
  return {reinterpret_cast<const char*>(data), size};
}

/// A finding, when it does not hold.
inline void hold(bool condition) {
  if (!condition) std::abort();
}

/// Every error names a byte of the text, or its end.
template <class Result>
void hold_error_inside(const Result& result, std::size_t size) {
  if (result) return;
  hold(result.error().at >= 0 && static_cast<std::size_t>(result.error().at) <= size);
}

}  // namespace fuzz
