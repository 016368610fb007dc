#include "raising/standing.h"

namespace bentbook {

BraceProposal propose_braces(const StandingModel&, const Frame&, StandingRun& run, std::span<const int> timbers,
                             std::span<const int> temporaries) {
  BraceProposal proposal;
  const StandingCheck check = run.check(timbers, temporaries, StandingDepth::kStands);
  proposal.at_least = check.mechanisms;
  proposal.cures = check.stands();
  return proposal;
}

}  // namespace bentbook
