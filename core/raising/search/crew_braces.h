#pragma once
/// Temporary braces where crews nail them: from a post or king post to a stake along the ridge, a post's outer side to
/// a stake, from post to post across a bay, in a corner where the frame has no knee brace yet. Never on a knee brace or
/// a common rafter. World axes, inches. *Common practice.*

#include <span>
#include <vector>

#include "frame/plan.h"
#include "raising/stability/standing.h"

namespace bentbook {

/// All those places in a frame, each clear of joints, in 1 1/2 or 3 1/2 in stock; names empty.
[[nodiscard]] std::vector<Temporary> crew_places(const Frame& frame);

/// Braces at such places against how what stands would move.
class CrewBraces {
 public:
  /// Adds the places to the model. All three must outlive it.
  CrewBraces(StandingModel& model, const Frame& frame, StandingRun& run);
  /// Numbers of temporaries in the model that with `up` make it stand, in order, without needless ones; `spare`: also
  /// without any one of all that are then up. At most `most`. Empty: none found.
  [[nodiscard]] std::vector<int> against(std::span<const int> timbers, std::span<const int> up, bool spare, int most);

 private:
  using Motions = std::vector<std::vector<TimberMotion>>;
  [[nodiscard]] bool stands(const std::vector<int>& timbers, const std::vector<int>& up);
  /// How it would move; empty: it stands.
  [[nodiscard]] Motions motions(const std::vector<int>& timbers, const std::vector<int>& up);
  [[nodiscard]] int best(const std::vector<int>& timbers, const Motions& motions, const std::vector<int>& up) const;
  void drop_needless(const std::vector<int>& timbers, std::vector<int>& up, std::vector<int>& added);

  StandingModel& model_;
  const Frame& frame_;
  StandingRun& run_;
  std::vector<char> rigid_;
  std::vector<int> places_;
};

}  // namespace bentbook
