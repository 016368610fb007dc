#pragma once
/// An order in which every step can go in, stands, keeps supports and wishes, and can be picked.
///
/// What comes in as one: the plan's assemblies, what wishes put together, and (if asked for) proposed bents, walls and
/// rafter pairs that crane, gear or crew can lift; every other timber by itself. Steps that are done stay as they are.
///
/// Temporaries: those that are up are kept while they are needed. When a piece has come, all are taken out if what
/// stands holds without. Else the judge's proposal is put up where it does not hold with those that are up, and then of
/// those that were up before (with the last piece all of them, earlier only those with an end at the piece or at a
/// timber joined to it) the ones are collected without which there is no mechanism, one after the other. All of these
/// are taken out if it stands without them, else the first half, else the second half, else none.
///
/// Cost, the first difference decides: temporaries put up; moves of crane and crew, counted in bents from one pick to
/// the next; inches (each rounded to a whole one) from one set-down place to the next, the first from the stack. The
/// rule for temporaries being what it is, an order's cost follows from its sequence of pieces alone.
///
/// Up to `exact_up_to` pieces: uniform-cost search over (what stands, what is up, last piece) finds the cheapest
/// sequence. Above that: depth-first search with backtracking, sills and then the nearest piece first (where that finds
/// none, once more from the ground up), then local search. A piece that would shut another one out for good is never
/// placed: what is in the way of a straight move only grows with what stands. Results depend on the input, `seed` and
/// `steps` alone, not on time; the caller's callback may stop it, and gets what was best so far.

#include <compare>
#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include "frame/plan.h"
#include "raising/insertion/blocking.h"
#include "raising/order.h"
#include "raising/order_judge.h"
#include "raising/plan.h"

namespace bentbook {

struct OrderCost {
  int temporaries = 0;
  int moves = 0;
  std::int64_t carry = 0;  ///< inches
  // The compiler's own 0 in it.
  // NOLINTNEXTLINE(modernize-use-nullptr)
  friend auto operator<=>(const OrderCost&, const OrderCost&) = default;
};

struct SearchOptions {
  std::uint64_t seed = 1;
  int steps = 4000;      ///< pieces tried in the depth-first search
  int improving = 500;   ///< pieces tried in improving what that found
  int exact_up_to = 10;  ///< pieces
  bool propose = true;   ///< assemblies beyond the plan's
  bool improve = true;   ///< whether to go on after the first good order
};

struct SearchProgress {
  int tried = 0;   ///< pieces tried so far
  int placed = 0;  ///< most pieces that stood so far
  int pieces = 0;
  bool found = false;
  OrderCost best;  ///< where found
};

enum class StuckReason : std::uint8_t {
  kCycle,       ///< supports and wishes contradict each other: `cycle`
  kSupport,     ///< what carries it can't come
  kCantGoIn,    ///< `marks` are in the way
  kShutsOut,    ///< once it stands, `marks` can't go in any more
  kCantStand,   ///< no temporaries were found with which it would stand; no piece: the order's first_unstable step
  kCantPick,    ///< more than what stands in the yard carries
  kWholeFalls,  ///< all together does not stand with no temporary, so no order can end; `piece`: what would move most
};
/// A piece that did not come in, seen from where the search got farthest.
struct Stuck {
  std::vector<std::string> piece;
  StuckReason reason = StuckReason::kCantStand;
  std::vector<std::string> marks;
  friend bool operator==(const Stuck&, const Stuck&) = default;
};

struct FoundOrder {
  bool found = false;
  bool stopped = false;         ///< by the callback, before the search was through
  bool proven_optimal = false;  ///< no cheaper sequence of these pieces
  OrderCost cost, bound;        ///< no sequence of these pieces costs less than `bound`
  int tried = 0;
  /// The plan given, with `steps`, `temporaries` and `assemblies` (those that are raised as one) as found. Not found:
  /// the longest part of an order that is good.
  RaisingPlan plan;
  std::vector<std::string> cycle;  ///< kCycle: each must stand before the next one, the last before the first
  std::vector<Stuck> stuck;        ///< not found: what is left and why; what waits for others last
  int first_unstable = -1;         ///< not found because nothing stands: the step, after those of `plan`
};

/// False stops the search.
using SearchCallback = std::function<bool(const SearchProgress&)>;

/// What it finds is judged once more from nothing, by check_order, before it counts as found.
[[nodiscard]] FoundOrder search_order(const Frame& frame, const RaisingPlan& plan, const SearchOptions& options = {},
                                      const SearchCallback& go_on = {});
/// The same with a judge and a blocking graph that are there already.
[[nodiscard]] FoundOrder search_order(const Frame& frame, const RaisingPlan& plan, Judge& judge, Blocking& blocking,
                                      const SearchOptions& options = {}, const SearchCallback& go_on = {});

}  // namespace bentbook
