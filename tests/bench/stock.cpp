/// Milliseconds for a cutting plan of PIECES pieces (at first 200) of lengths all unlike, out of sticks of 8 to 20 ft
/// by 2 ft, forty jobs for each aim. Prints the aim, the mean, the longest, and how many sticks' worth the worst plan
/// is above its bound.
///   bench_stock [PIECES]

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <random>
#include <string>

#include "stock/order.h"

using namespace bentbook;

int main(int argc, char** argv) {
  const int count = argc > 1 ? std::atoi(argv[1]) : 200;
  for (const StockAim aim : {StockAim::kSticks, StockAim::kWaste}) {
    double sum = 0, longest = 0, over = 0;
    for (unsigned job = 0; job < 40; ++job) {
      std::mt19937 rng(job);
      std::vector<StockPiece> pieces;
      pieces.reserve(static_cast<std::size_t>(count));
      for (int i = 0; i < count; ++i)
        pieces.push_back(
            {std::to_string(i), {}, {}, Length::inches(30 * 64 + static_cast<int>(rng() % (200U * 64)), 64), 0});
      StockPlan plan;
      plan.aim = aim;
      using Clock = std::chrono::steady_clock;
      const auto began = Clock::now();
      const StockOrder order = plan_stock(std::move(pieces), plan);
      const double ms = std::chrono::duration<double, std::milli>(Clock::now() - began).count();
      sum += ms;
      longest = std::max(longest, ms);
      const std::int64_t one = aim == StockAim::kSticks ? 1 : Length::feet(20).count;
      for (const StockGroup& group : order.groups)
        over = std::max(over, static_cast<double>(group.counted - group.bound) / static_cast<double>(one));
    }
    std::printf("%s mean %.1f longest %.1f over %.2f\n", kStockAimWords[static_cast<std::size_t>(aim)].data(), sum / 40,
                longest, over);
  }
}
