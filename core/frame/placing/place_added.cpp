#include "frame/placing/place_added.h"

#include <string>
#include <unordered_set>

#include "frame/placing/hand_timber.h"

namespace bentbook {

void place_added(Work& work) {
  if (work.plan.added.empty()) return;
  std::unordered_set<std::string> taken;
  for (const Timber& t : work.frame.timbers) taken.insert(t.mark);
  for (const HandTimber& given : work.plan.added) {
    if (taken.contains(given.mark)) {
      work.add_finding(FindingId::kMarkTaken, given.mark);
      continue;
    }
    Result<Timber> timber = solve_hand_timber(given);
    if (!timber) {
      work.add_finding(FindingId::kBadHandTimber, given.mark);
      continue;
    }
    taken.insert(given.mark);
    timber->moisture = work.plan.moisture;
    work.tips.push_back({0, timber->length, true, true});
    work.frame.timbers.push_back(*std::move(timber));
  }
}

}  // namespace bentbook
