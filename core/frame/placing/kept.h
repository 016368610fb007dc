#pragma once
/// Inside the frame solver: what of an earlier frame still holds for the one being solved. Findings about a timber that
/// stands and is cut as before, and whose bearings are as before, need not be made again: this says which those are.

#include <vector>

#include "frame/plan.h"

namespace bentbook {

struct Kept {
  std::vector<int> was;        ///< by timber: its index in the earlier frame where it is the same, else −1
  std::vector<int> now;        ///< by timber of the earlier frame: the other way round
  std::vector<bool> bears;     ///< by timber: it is the same, and so are the patches on which it bears
  std::vector<int> joint_now;  ///< by joint of the earlier frame, −1: gone
  [[nodiscard]] bool same(int timber) const { return was[static_cast<std::size_t>(timber)] >= 0; }
};

/// `frame`: all timbers cut, nothing yet found about them but what was said while they were.
[[nodiscard]] Kept find_kept(const Frame& frame, const Frame& before);
/// Nothing of it.
[[nodiscard]] Kept keep_nothing(const Frame& frame);

/// A warning of the earlier frame in this one's joints.
[[nodiscard]] TimberWarning carried_over(TimberWarning warning, const Kept& kept);

}  // namespace bentbook
