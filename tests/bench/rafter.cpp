/// Nanoseconds for one solve_rafters() call: the least of nine runs, over inputs that differ so that nothing can be
/// kept from one call to the next. Prints `alike N` (both sides the same: one common rafter) and `unlike N` (two).

#include "roof/rafter.h"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <vector>

namespace {

using bentbook::Length;

std::vector<bentbook::RafterInput> inputs(bool alike) {
  std::vector<bentbook::RafterInput> all;
  for (int i = 0; i < 256; ++i) {
    bentbook::RafterInput in;
    in.span = Length::inches(20 * 12 + i);
    in.left.pitch = in.right.pitch = bentbook::Slope::in_12(Length::inches(16 + i % 32, 4));
    in.alike = alike;
    if (!alike) in.right.pitch = bentbook::Slope::in_12(Length::inches(20 + i % 16, 4));
    all.push_back(in);
  }
  return all;
}

double least_ns(const std::vector<bentbook::RafterInput>& all) {
  using Clock = std::chrono::steady_clock;
  constexpr int kRounds = 400;
  double least = 1e9;
  volatile long long sink = 0;
  for (int run = 0; run < 9; ++run) {
    const auto began = Clock::now();
    long long sum = 0;
    for (int round = 0; round < kRounds; ++round) {
      for (const bentbook::RafterInput& in : all) {
        const auto pair = bentbook::solve_rafters(in);
        sum += pair ? pair->left.line_length.count : 1;
      }
    }
    sink = sink + sum;
    const std::chrono::duration<double, std::nano> took = Clock::now() - began;
    least = std::min(least, took.count() / (kRounds * static_cast<double>(all.size())));
  }
  return least;
}

}  // namespace

int main() {
  std::printf("alike %.0f\nunlike %.0f\n", least_ns(inputs(true)), least_ns(inputs(false)));
  return 0;
}
