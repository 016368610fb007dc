/// `bench_shop book`, `bench_shop log`: a long building's file and its crew's log, to be opened by a browser.
/// `bench_shop hostile`: for each kind of event about one thing, by one device and by as many as there are,
/// milliseconds to fold 2^14, 2^15, 2^16 and 2^17 of them and find what does not agree, and the greatest t(2n)/t(n).
/// Else milliseconds for a shop of 2 000 timbers with 40 000 events of three phones: the least of nine runs. Prints
/// `fold N`, `read N` (the log's file), `merge N`, `open N` (the snapshot read), `work N` (steps and progress of 2 010
/// timbers).

#include <algorithm>
#include <chrono>
#include <cstdio>

#include "book/book.h"
#include "book/book_file.h"
#include "hostile.h"
#include "model/shop_model.h"
#include "shop/log/conflicts.h"
#include "shop/log/snapshot.h"

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

/// 74 bays: 2 010 timbers, as tests/bench/measure.mjs draws them too.
Book long_book() {
  Book book = new_book("Long", Length::feet(20), Length::feet(10), Length::feet(10), Slope::in_12(Length::inches(8)));
  book.identity = "bench";
  book.frame.bays.clear();
  for (int i = 0; i < 74; ++i) book.frame.bays.push_back({Length::feet(10), i + 2});
  return book;
}

/// The crew of that building, two phones, each with its own timbers: every step finished, then looked over.
Log long_log(const Book& book) {
  const BookModel model = solve(book);
  const Frame& frame = **model.frame;
  const std::vector<TimberWork> works = work_of(book, model, {}).value();
  Log log{book.identity, {}};
  std::uint64_t sequences[2] = {};
  for (std::uint64_t round = 0; log.events.size() < 40'000; ++round)
    for (const TimberWork& work : works)
      for (const WorkStep& step : work.steps) {
        if (log.events.size() == 40'000) return log;
        const auto phone = static_cast<std::uint64_t>(work.timber % 2);
        Event e;
        e.device = 0xB000 + phone;
        e.sequence = ++sequences[phone];
        e.logical = log.events.size() + 1;
        e.wall = 1'764'000'000'000 + static_cast<std::int64_t>(log.events.size()) * 60'000;
        e.who = phone == 0 ? "Ana Castro" : "Bo Lindgren";
        e.timber = frame.timbers[static_cast<std::size_t>(work.timber)].mark;
        e.step = step.id;
        e.action = round == 0 ? EventAction::kDone : EventAction::kPassed;
        if (round == 0) e.value = numbers_text(step.numbers);
        log.events.push_back(e);
      }
  return log;
}

void hostile_rows() {
  for (const hostile::Kind& kind : hostile::kinds()) {
    std::printf("%-14s %-4s", std::string(kind.name).c_str(), kind.many_devices ? "many" : "one");
    double before = 0, worst = 0;
    for (int power = 14; power <= 17; ++power) {
      const Log log = hostile::log_of(kind, std::uint64_t{1} << power);
      volatile std::uint64_t sink = 0;
      const double took = least_ms([&] { sink = sink + conflicts_of(fold(log)).size(); });
      if (before > 0) worst = std::max(worst, took / before);
      before = took;
      std::printf(" %8.1f", took);
    }
    std::printf("   %.2f\n", worst);
  }
}

}  // namespace

int main(int argc, char** argv) {
  if (argc == 2 && std::string_view(argv[1]) == "book") return std::puts(write_book(long_book()).c_str()) < 0;
  if (argc == 2 && std::string_view(argv[1]) == "log")
    return std::fputs(write_log(long_log(long_book())).c_str(), stdout) < 0;
  if (argc == 2 && std::string_view(argv[1]) == "hostile") {
    hostile_rows();
    return 0;
  }
  const Log log = big_log();
  const std::string bytes = write_log(log), snapshot = write_snapshot(fold(log));
  volatile std::uint64_t sink = 0;
  std::printf("fold %.1f\n", least_ms([&] { sink = sink + fold(log).timbers.size(); }));
  std::printf("read %.1f\n", least_ms([&] { sink = sink + read_log(bytes)->events.size(); }));
  std::printf("merge %.1f\n", least_ms([&] { sink = sink + merged(log, log)->events.size(); }));
  std::printf("open %.1f\n", least_ms([&] { sink = sink + read_snapshot(snapshot)->events; }));
  const Book book = long_book();
  const BookModel model = solve(book);
  const ShopState state = fold(log);
  std::printf("work %.1f\n", least_ms([&] { sink = sink + work_of(book, model, state)->size(); }));
  return 0;
}
