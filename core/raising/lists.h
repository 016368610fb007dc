#pragma once
/// How the timbers are loaded and laid down so that the first one wanted is on top: the reverse of the raising.
/// Inches, pounds; weights as picks have them (pick.h, wet_per_cent counted in).
///
/// Steps that are done have come and are left out. What no step brings comes last, in the frame's order, below all
/// else. Of a timber in two steps the first counts; marks that the frame does not have are passed over (check.h names
/// them). How wide and high a load may be, its axles and its lashing are not known here.

#include <vector>

#include "frame/plan.h"
#include "raising/plan.h"

namespace bentbook {

struct LoadedTimber {
  int timber = 0;
  int step = -1;  ///< index in RaisingPlan::steps; −1: none brings it
  double weight_lb = 0;
  double length = 0;       ///< tip to tip
  bool too_long = false;   ///< longer than the truck
  bool too_heavy = false;  ///< heavier than all that the truck carries
  friend bool operator==(const LoadedTimber&, const LoadedTimber&) = default;
};

struct TruckLoad {
  std::vector<LoadedTimber> timbers;  ///< the lowest first
  double weight_lb = 0;
  double longest = 0;
  friend bool operator==(const TruckLoad&, const TruckLoad&) = default;
};
/// The load that is wanted first is first. A load is full when the next timber in the order would be more than the
/// truck carries; with the order kept, no fewer loads do. What is too heavy has a load of its own.
[[nodiscard]] std::vector<TruckLoad> truck_loads(const Frame& frame, const RaisingPlan& plan);

/// What lies in one stack at the site: a day's timbers.
struct LayDownStack {
  int day = 0;                        ///< 0: of no step
  std::vector<LoadedTimber> timbers;  ///< the lowest first
  double weight_lb = 0;
  friend bool operator==(const LayDownStack&, const LayDownStack&) = default;
};
/// Of each of them.
[[nodiscard]] std::vector<double> weights_of(const std::vector<LoadedTimber>& timbers);
/// By days, in the order in which they are first wanted; what no step brings is the last stack.
[[nodiscard]] std::vector<LayDownStack> lay_down(const Frame& frame, const RaisingPlan& plan);

/// When a temporary brace is up, and how much of a stick it takes.
struct TemporaryTime {
  int temporary = 0;      ///< index in RaisingPlan::temporaries
  int from = 0, to = -1;  ///< steps that put it up and take it out; −1: it stays up
  double length = 0;      ///< from point to point; 0: an end is at no timber of the frame
  friend bool operator==(const TemporaryTime&, const TemporaryTime&) = default;
};
/// In the order in which they go up; one that goes up twice is there twice.
[[nodiscard]] std::vector<TemporaryTime> temporary_times(const Frame& frame, const RaisingPlan& plan);
/// How many are up at once at most, before those of the step are taken out.
[[nodiscard]] int most_temporaries_up(const RaisingPlan& plan);

}  // namespace bentbook
