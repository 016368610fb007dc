#pragma once
/// All load cases of what stands, judged.

#include <array>
#include <functional>
#include <memory>
#include <utility>
#include <vector>

#include "raising/limits.h"
#include "raising/stability/forces.h"

namespace bentbook {

/// The load cases of a set: pushes first (light ones first), then persons by timber.
[[nodiscard]] std::vector<LoadCase> load_cases(const StandingModel& model, const StandingSet& set);

struct ForceVerdict {
  bool holds = false;
  double factor =
      0;  ///< of the worst case, to limits::kMostFactor, rounded down to thousandths; where only asked: 1 or 0
  bool decided = true;
  LoadCase worst;
  std::vector<int> hangs_on;
  std::vector<TimberMotion> fall;
};
/// Six numbers a body as motions.
[[nodiscard]] std::vector<TimberMotion> motions_of(const std::vector<int>& bodies, const Loads& y);

/// Forces by row of the model, 0 where a row is not of the set.
using RowForces = Eigen::VectorXd;

/// What is known of the margins of load_cases(model, set) before they are looked for.
struct Floors {
  std::vector<double> factor;                                  ///< by case: none is smaller
  std::function<RowForces(std::size_t, double)> forces_about;  ///< of a case at a factor, to begin with
};
/// The worst case, its factor and the rows it hangs on. `floors`: where every case is known to hold at 1.
[[nodiscard]] ForceVerdict worst_case(const StandingModel& model, const StandingSet& set,
                                      const Floors* floors = nullptr);

/// Forces that hold every push on a set at λ = 1. Loads add up and so do forces, hence only the light cases are kept: a
/// heavy one is the light one and 0.25/0.9 of the weight's own forces, which no one-way row minds; only limits must be
/// looked at.
struct Proof {
  StandingSet set;
  RowForces weight;               ///< for 0.9 × weight
  std::array<RowForces, 8> push;  ///< weight counted in
};

/// Forces for a person's weight at one place of a timber and nothing else. They hold that case in every set that has
/// their rows, as long as with the weight's own forces they are within all bounds; and so does a mean of two of them
/// for every place between theirs.
struct PersonHold {
  double station = 0;  ///< inches from end A; 0 on a plumb timber, where all places are one
  std::shared_ptr<const std::vector<std::pair<int, double>>> more;  ///< row, force
};

/// Of one timber, the latest last.
struct PersonKnown {
  std::vector<PersonHold> holds;
  std::vector<std::uint64_t> not_alone;  ///< what was asked in vain without the weight's help: place and rows, hashed
};

/// Judges set after set whether every case holds at λ = 1, from proofs of sets that differ little: forces far from what
/// changed stay as they were (they were in balance and still are), a small program finds those near it. Where that
/// fails the whole set is asked.
class Prover {
 public:
  explicit Prover(const StandingModel& model) : model_(model), persons_(model.bodies.size()) {}
  /// With what `other` knows of a model of which this one is a copy with more temporaries.
  Prover(const StandingModel& model, const Prover& other)
      : model_(model), proofs_(other.proofs_), persons_(other.persons_) {}
  [[nodiscard]] ForceVerdict judge(const StandingSet& set);
  /// The worst case with its margin.
  [[nodiscard]] ForceVerdict worst(const StandingSet& set);

 private:
  /// Of the set that was judged last, which held.
  [[nodiscard]] Floors floors() const;
  void keep(std::shared_ptr<const Proof> proof);
  const StandingModel& model_;
  std::vector<std::shared_ptr<const Proof>> proofs_;  ///< the latest last
  std::vector<PersonKnown> persons_;                  ///< by timber
};

}  // namespace bentbook
