#pragma once
/// Proofs that sets of standing timbers hold every load case, carried over from one set to the next.

#include <array>
#include <cstdint>
#include <memory>
#include <utility>
#include <vector>

#include "raising/stability/force_cases.h"

namespace bentbook {

/// Forces that hold every push on a set at λ = 1. Loads add up and so do forces, so only the light cases are kept: a
/// heavy one is the light one and kMoreWeight of the weight's own forces. Those press where they pressed, so one-way
/// rows still hold; only limits have to be looked at.
struct Proof {
  StandingSet set;
  RowForces weight;               ///< for 0.9 × weight
  std::array<RowForces, 8> push;  ///< weight counted in
};

/// Forces for a person's weight at one place of a timber and nothing else. They hold that case in every set that has
/// their rows, as long as they and the weight's own forces together are within all bounds. A mean of two of them holds
/// every place between theirs.
struct PersonHold {
  double station = 0;  ///< inches from end A; 0 on a plumb timber, where all places are one
  std::shared_ptr<const std::vector<std::pair<int, double>>> more;  ///< row, force
};

/// Of one timber, the latest last.
struct PersonKnown {
  std::vector<PersonHold> holds;
  std::vector<std::uint64_t> not_alone;  ///< places and rows (hashed) where the weight's help was needed
};

/// Judges set after set whether every case holds at λ = 1, starting from the proof of a set that differs little: forces
/// far from the change are kept (they were in equilibrium and still are), those near it are solved for again. Where
/// that fails the whole set is solved.
class Prover {
 public:
  explicit Prover(const StandingModel& model) : model_(model), persons_(model.bodies.size()) {}
  /// Takes over what `other` knows; its model is this one with fewer temporaries.
  Prover(const StandingModel& model, const Prover& other)
      : model_(model), proofs_(other.proofs_), persons_(other.persons_) {}
  [[nodiscard]] ForceVerdict judge(const StandingSet& set);
  /// The worst case with its margin.
  [[nodiscard]] ForceVerdict worst(const StandingSet& set);

 private:
  /// Of the set judged last, which must have held.
  [[nodiscard]] MarginFloors floors() const;
  void keep(std::shared_ptr<const Proof> proof);
  const StandingModel& model_;
  std::vector<std::shared_ptr<const Proof>> proofs_;  ///< the latest last
  std::vector<PersonKnown> persons_;                  ///< by timber
};

}  // namespace bentbook
