#pragma once
/// What check and search ask of the rest of the raising: does what stands hold, can this be picked. Answered by
/// standing.h and pick.h (make_judge); tests put plain rules in their place.

#include <memory>
#include <span>
#include <vector>

#include "frame/plan.h"
#include "raising/plan.h"
#include "raising/stability/standing.h"

namespace bentbook {

class Judge {
 public:
  Judge() = default;
  Judge(const Judge&) = delete;
  Judge& operator=(const Judge&) = delete;
  virtual ~Judge() = default;

  /// Cheap. False: it has a mechanism, so no forces can hold it. True: it may still fall.
  /// `timbers`: indices in Frame::timbers; `temporaries`: numbers of the judge's own list; both in order.
  virtual bool rigid(std::span<const int> timbers, std::span<const int> temporaries) = 0;
  /// The whole verdict: no mechanism, and every load case holds at a load factor of 1 or more.
  virtual bool stands(std::span<const int> timbers, std::span<const int> temporaries) = 0;
  /// The same with standing.h's reasons. `coming`: those of `timbers` that have just come.
  /// (Defined here, so that what derives from it may be built with run-time types, as tests are.)
  virtual StandingCheck check(std::span<const int> timbers, std::span<const int> temporaries,
                              std::span<const int> /*coming*/, StandingDepth /*depth*/) {
    StandingCheck check;
    check.mechanisms = rigid(timbers, temporaries) ? 0 : 1;
    check.forces = stands(timbers, temporaries);
    check.factor = check.stands() ? 1 : 0;
    return check;
  }
  /// Whether what stands bears what hangs on it, at each of the moments; see force_cases.h.
  virtual bool bears(std::span<const int> timbers, std::span<const int> temporaries,
                     std::span<const std::vector<HungWeight>> moments) = 0;
  /// Temporaries that with those given make it stand, as few as it finds; empty: none do. Numbers in the judge's list,
  /// which grows by them; the same braces always have the same number.
  virtual std::vector<int> propose(std::span<const int> timbers, std::span<const int> temporaries) = 0;
  /// Whether the machines of the yard, where there are some, can pick these together; see can_pick.
  virtual bool lifts(std::span<const int> timbers) = 0;
  /// The plan's temporaries first, then the proposed ones.
  [[nodiscard]] virtual const std::vector<Temporary>& temporaries() const = 0;
};

/// Asks standing.h. Frame and plan must outlive it.
[[nodiscard]] std::unique_ptr<Judge> make_judge(const Frame& frame, const RaisingPlan& plan);

}  // namespace bentbook
