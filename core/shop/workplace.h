#pragma once
/// The whole shop: what is left by bent and by workplace, and what waits for the saw, grouped so that it is set as
/// seldom as can be.

#include <vector>

#include "shop/progress.h"

namespace bentbook {

struct TimberWork {
  int timber = 0;  ///< in Frame::timbers
  std::vector<WorkStep> steps;
  TimberProgress progress;
};
[[nodiscard]] TimberWork work_on(const Frame& frame, const Sheet& sheet, const ShopState& state);
/// Steps and progress of every timber; the rules in `state` are followed. The saw must pass check_saw().
[[nodiscard]] std::vector<TimberWork> shop_work(const Frame& frame, const ShopState& state, const Saw& saw);

struct ShopCount {
  int timbers = 0, held = 0, flagged = 0;
  std::array<int, 4> ticked{};  ///< by Tick: timbers that have it
  int steps = 0, steps_done = 0;
};
[[nodiscard]] ShopCount count_all(std::span<const TimberWork> work);

struct BentCount {
  int bent = -1;  ///< its label, or of the bay's lower bent; −1: of none
  ShopCount count;
};
/// Ascending by bent.
[[nodiscard]] std::vector<BentCount> count_by_bent(const Frame& frame, std::span<const TimberWork> work);

struct PlaceCount {
  int next = 0;   ///< timbers whose next step is made there
  int steps = 0;  ///< steps there that are not done
};
[[nodiscard]] std::array<PlaceCount, 5> count_by_workplace(std::span<const TimberWork> work);

/// A step that waits, held timbers left out: they are not worked on.
struct WaitingCut {
  int work = 0;  ///< in the list given
  int step = 0;  ///< in TimberWork::steps
};
struct SawGroup {
  SawSetup setup;
  bool along = false;            ///< cut along the grain to gauge lines: no table is set
  std::vector<WaitingCut> cuts;  ///< in the order of the list given
};
/// Whether a step can be made as things are, or comes after one that is made elsewhere.
enum class Waiting : std::uint8_t { kAll, kNow, kLater };
/// The first step before this one that is not done and is made at another workplace, in TimberWork::steps; −1: none.
[[nodiscard]] int waits_for(const TimberWork& work, int step);
/// Steps at a place that are not done, in the order of the list given.
[[nodiscard]] std::vector<WaitingCut> waiting_at(std::span<const TimberWork> work, Workplace place, Waiting which);
/// All steps that are sawn and not done, one group for each setting: ends A, from which the stops of all others are
/// taped, then ends B, then joinery; each of the three in an order with few changes (saw_order.h). Last what is cut
/// along the grain.
[[nodiscard]] std::vector<SawGroup> waiting_for_saw(std::span<const TimberWork> work, Waiting which = Waiting::kAll);
/// Those that are the same work with the same numbers on timbers of one kind and section, together; each list and all
/// of them in the order given.
[[nodiscard]] std::vector<std::vector<WaitingCut>> alike_steps(const Frame& frame, std::span<const TimberWork> work,
                                                               std::span<const WaitingCut> steps);

}  // namespace bentbook
