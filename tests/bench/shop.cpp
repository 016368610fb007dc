/// Milliseconds for a shop of 2 000 timbers with 40 000 events of three phones: the least of nine runs. Prints
/// `fold N`, `read N` (the log's file), `merge N`, `snapshot N` (read, and checked against the log).

#include <algorithm>
#include <chrono>
#include <cstdio>

#include "shop/snapshot.h"

namespace {

using namespace bentbook;

Log big_log() {
  Log log{"b1", {}};
  log.events.reserve(40'000);
  std::uint64_t sequences[3] = {};
  for (std::uint64_t i = 0; i < 40'000; ++i) {
    Event e;
    e.device = 0xA000 + i % 3;
    e.sequence = ++sequences[i % 3];
    e.logical = i + 1;
    e.wall = 1'764'000'000'000 + static_cast<std::int64_t>(i) * 60'000;
    e.who = i % 2 == 0 ? "Ana Castro" : "Bo Lindgren";
    e.timber = "P-A" + std::to_string(i / 20 + 1);
    e.step = "mortise/B-A" + std::to_string(i % 20) + ".1";
    e.value = "from_in=38.2500 to_in=44.2500 depth_in=4.1250";
    log.events.push_back(e);
  }
  return log;
}

template <class Work>
double least_ms(Work work) {
  using Clock = std::chrono::steady_clock;
  double least = 1e9;
  for (int run = 0; run < 9; ++run) {
    const auto began = Clock::now();
    work();
    const std::chrono::duration<double, std::milli> took = Clock::now() - began;
    least = std::min(least, took.count());
  }
  return least;
}

}  // namespace

int main() {
  const Log log = big_log();
  const std::string bytes = write_log(log), snapshot = write_snapshot(fold(log));
  volatile std::uint64_t sink = 0;
  std::printf("fold %.1f\n", least_ms([&] { sink = sink + fold(log).timbers.size(); }));
  std::printf("read %.1f\n", least_ms([&] { sink = sink + read_log(bytes)->events.size(); }));
  std::printf("merge %.1f\n", least_ms([&] { sink = sink + merged(log, log)->events.size(); }));
  std::printf("snapshot %.1f\n", least_ms([&] { sink = sink + open_shop(snapshot, {}, log).state.events; }));
  return 0;
}
