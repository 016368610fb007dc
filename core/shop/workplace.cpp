#include "shop/workplace.h"

#include <algorithm>
#include <array>
#include <map>
#include <utility>

#include "numeric/libm.h"
#include "shop/saw_order.h"
#include "shop/step_rules.h"

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

/// Whether one's passes and their order are the other's too: features and cuts in one order at the same places. Marks
/// and mates may differ.
bool sawn_alike(const Timber& a, const Timber& b) {
  constexpr double kSame = 1e-6;
  const auto near = [](double x, double y) { return libm::fabs(x - y) <= kSame; };
  const auto same_feature = [&](const Feature& f, const Feature& g) {
    return f.kind == g.kind && f.face == g.face && f.at_end == g.at_end && f.end == g.end && f.use == g.use &&
           f.open == g.open && near(f.from, g.from) && near(f.to, g.to) && near(f.across_lo, g.across_lo) &&
           near(f.across_hi, g.across_hi) && near(f.depth, g.depth) && near(f.diameter, g.diameter);
  };
  const auto same_cut = [&](const EndCut& c, const EndCut& d) {
    return c.end == d.end && c.name == d.name && near(c.plane.offset, d.plane.offset) &&
           near(c.plane.normal.x, d.plane.normal.x) && near(c.plane.normal.y, d.plane.normal.y) &&
           near(c.plane.normal.z, d.plane.normal.z);
  };
  return a.alike == b.alike && near(a.length, b.length) && a.wood == b.wood &&
         std::equal(a.features.begin(), a.features.end(), b.features.begin(), b.features.end(), same_feature) &&
         std::equal(a.cuts.begin(), a.cuts.end(), b.cuts.begin(), b.cuts.end(), same_cut);
}

/// Whose turn it is at the saw: what the tape is hooked on is cut before what is taped.
std::size_t turn_of(const WorkStep& step) {
  if (step.on != WorkOn::kEndCut) return 2;
  return step.end == End::kA ? 0 : 1;
}

bool same_work(const Frame& frame, const TimberWork& a, const WorkStep& s, const TimberWork& b, const WorkStep& t) {
  constexpr double kSame = 1e-6;
  const Timber& on = frame.timbers[static_cast<std::size_t>(a.timber)];
  const Timber& other = frame.timbers[static_cast<std::size_t>(b.timber)];
  const auto same_number = [](const StepNumber& x, const StepNumber& y) {
    return x.name == y.name && x.from == y.from && libm::fabs(x.value - y.value) <= kSame;
  };
  return on.kind == other.kind && on.wood.nominal == other.wood.nominal && s.work == t.work && s.part == t.part &&
         s.end == t.end && s.name == t.name && s.setup == t.setup &&
         std::equal(s.numbers.begin(), s.numbers.end(), t.numbers.begin(), t.numbers.end(), same_number);
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
  std::map<int, Sheet> known;  // what is sawn of timbers cut alike is the same, and a sheet is dear
  for (int i = 0; i < static_cast<int>(frame.timbers.size()); ++i) {
    const Timber& timber = frame.timbers[static_cast<std::size_t>(i)];
    const auto found = known.find(timber.alike);
    if (found != known.end() && sawn_alike(timber, frame.timbers[static_cast<std::size_t>(found->second.timber)])) {
      Sheet& sheet = found->second;
      const int first = std::exchange(sheet.timber, i);
      all.push_back(work_on(frame, sheet, state));
      sheet.timber = first;
      continue;
    }
    Sheet sheet = solve_sawing(frame, i, saw);
    all.push_back(work_on(frame, sheet, state));
    if (timber.alike >= 0) known.insert_or_assign(timber.alike, std::move(sheet));
  }
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

int waits_for(const TimberWork& work, int step) {
  const auto place = [&](int i) { return work.steps[static_cast<std::size_t>(i)].place; };
  for (int i = 0; i < step; ++i)
    if (!work.progress.done[static_cast<std::size_t>(i)] && place(i) != place(step)) return i;
  return -1;
}

std::vector<WaitingCut> waiting_at(std::span<const TimberWork> work, Workplace place, Waiting which) {
  std::vector<WaitingCut> out;
  for (std::size_t w = 0; w < work.size(); ++w)
    for (std::size_t i = 0; i < work[w].steps.size() && !work[w].progress.held; ++i) {
      if (work[w].steps[i].place != place || work[w].progress.done[i]) continue;
      const int step = static_cast<int>(i);
      if (which == Waiting::kAll || (which == Waiting::kNow) == (waits_for(work[w], step) < 0))
        out.push_back({static_cast<int>(w), step});
    }
  return out;
}

std::vector<SawGroup> waiting_for_saw(std::span<const TimberWork> work, Waiting which) {
  std::array<std::map<SawSetup, std::vector<WaitingCut>>, 3> turns;
  std::vector<WaitingCut> along;
  for (const WaitingCut& cut : waiting_at(work, Workplace::kSaw, which)) {
    const WorkStep& step = work[static_cast<std::size_t>(cut.work)].steps[static_cast<std::size_t>(cut.step)];
    if (step.setup)
      turns[turn_of(step)][*step.setup].push_back(cut);
    else
      along.push_back(cut);
  }
  std::vector<SawGroup> out;
  for (auto& groups : turns) {
    std::vector<SawSetup> setups;
    setups.reserve(groups.size());
    for (const auto& [setup, cuts] : groups) setups.push_back(setup);
    for (const int i : order_of_setups(setups)) {
      const SawSetup& setup = setups[static_cast<std::size_t>(i)];
      out.push_back({setup, false, std::move(groups[setup])});
    }
  }
  if (!along.empty()) out.push_back({{}, true, std::move(along)});
  return out;
}

std::vector<std::vector<WaitingCut>> alike_steps(const Frame& frame, std::span<const TimberWork> work,
                                                 std::span<const WaitingCut> steps) {
  std::vector<std::vector<WaitingCut>> out;
  for (const WaitingCut& cut : steps) {
    const TimberWork& on = work[static_cast<std::size_t>(cut.work)];
    const auto same = [&](const std::vector<WaitingCut>& alike) {
      const TimberWork& first = work[static_cast<std::size_t>(alike.front().work)];
      return same_work(frame, first, first.steps[static_cast<std::size_t>(alike.front().step)], on,
                       on.steps[static_cast<std::size_t>(cut.step)]);
    };
    const auto found = std::find_if(out.begin(), out.end(), same);
    if (found == out.end())
      out.push_back({cut});
    else
      found->push_back(cut);
  }
  return out;
}

}  // namespace bentbook
