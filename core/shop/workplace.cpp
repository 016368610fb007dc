#include "shop/workplace.h"

#include <algorithm>
#include <map>

namespace bentbook {
namespace {

void count_in(const TimberWork& work, ShopCount& count) {
  ++count.timbers;
  count.held += work.progress.held ? 1 : 0;
  count.flagged += work.progress.flags.empty() ? 0 : 1;
  for (std::size_t t = 0; t < 4; ++t) {
    const TickCount& tick = work.progress.ticks[t];
    count.ticked[t] += work.progress.has(static_cast<Tick>(t)) ? 1 : 0;
    count.steps += tick.steps;
    count.steps_done += tick.done;
  }
}

}  // namespace

TimberWork work_on(const Frame& frame, const Sheet& sheet, const ShopState& state) {
  const Timber& timber = frame.timbers[static_cast<std::size_t>(sheet.timber)];
  TimberWork work;
  work.timber = sheet.timber;
  work.steps = with_rules(work_steps(frame, sheet), timber.kind, state.rules);
  work.progress = progress_of(work.steps, state.find(timber.mark));
  return work;
}

std::vector<TimberWork> shop_work(const Frame& frame, const ShopState& state, const Saw& saw) {
  std::vector<TimberWork> all;
  all.reserve(frame.timbers.size());
  for (int i = 0; i < static_cast<int>(frame.timbers.size()); ++i)
    all.push_back(work_on(frame, solve_sheet(frame, i, saw), state));
  return all;
}

ShopCount count_all(std::span<const TimberWork> work) {
  ShopCount count;
  for (const TimberWork& one : work) count_in(one, count);
  return count;
}

std::vector<BentCount> count_by_bent(const Frame& frame, std::span<const TimberWork> work) {
  std::map<int, ShopCount> by_bent;
  for (const TimberWork& one : work)
    count_in(one, by_bent[frame.timbers[static_cast<std::size_t>(one.timber)].place.bent]);
  std::vector<BentCount> out;
  out.reserve(by_bent.size());
  for (const auto& [bent, count] : by_bent) out.push_back({bent, count});
  return out;
}

std::array<PlaceCount, 5> count_by_workplace(std::span<const TimberWork> work) {
  std::array<PlaceCount, 5> counts{};
  for (const TimberWork& one : work)
    for (std::size_t i = 0; i < one.steps.size(); ++i) {
      if (one.progress.done[i]) continue;
      PlaceCount& count = counts[static_cast<std::size_t>(one.steps[i].place)];
      ++count.steps;
      count.next += one.progress.next == static_cast<int>(i) ? 1 : 0;
    }
  return counts;
}

std::vector<SawGroup> waiting_for_saw(std::span<const TimberWork> work) {
  std::map<SawSetup, std::vector<WaitingCut>> groups;
  for (std::size_t w = 0; w < work.size(); ++w)
    for (std::size_t i = 0; i < work[w].steps.size() && !work[w].progress.held; ++i) {
      const WorkStep& step = work[w].steps[i];
      if (work[w].progress.done[i]) continue;
      for (const SawSetup& setup : step.setups) groups[setup].push_back({static_cast<int>(w), static_cast<int>(i)});
    }
  std::vector<SawSetup> setups;
  setups.reserve(groups.size());
  for (const auto& [setup, cuts] : groups) setups.push_back(setup);
  std::vector<SawGroup> out;
  for (const int i : order_of_setups(setups)) {
    const SawSetup& setup = setups[static_cast<std::size_t>(i)];
    out.push_back({setup, std::move(groups[setup])});
  }
  return out;
}

}  // namespace bentbook
