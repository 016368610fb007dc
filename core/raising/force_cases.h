#pragma once
/// All load cases of what stands, judged.

#include <array>
#include <memory>
#include <utility>
#include <vector>

#include "raising/forces.h"

namespace bentbook {

/// The load cases of a set: pushes first (light ones first), then persons by timber.
[[nodiscard]] std::vector<LoadCase> load_cases(const StandingModel& model, const StandingSet& set);

struct ForceVerdict {
  bool holds = false;
  double factor = 0;  ///< of the worst case, to kMostFactor, rounded down to thousandths; where only asked: 1 or 0
  bool decided = true;
  LoadCase worst;
  std::vector<int> hangs_on;
  std::vector<TimberMotion> fall;
};
/// Six numbers a body as motions.
[[nodiscard]] std::vector<TimberMotion> motions_of(const std::vector<int>& bodies, const Loads& y);
/// The worst case, its factor and the rows it hangs on.
[[nodiscard]] ForceVerdict worst_case(const StandingModel& model, const StandingSet& set);

/// Forces by row of the model, 0 where a row is not of the set.
using RowForces = Eigen::VectorXd;

/// Forces that hold every case of a set at λ = 1. Loads add up and so do forces, hence only the light cases are kept:
/// a heavy one is the light one and 0.25/0.9 of the weight's own forces, which no one-way row minds; only limits must
/// be looked at.
struct Proof {
  StandingSet set;
  RowForces weight;               ///< for 0.9 × weight
  std::array<RowForces, 8> push;  ///< weight counted in
  struct Person {
    LoadCase load;
    std::shared_ptr<const std::vector<std::pair<int, double>>> more;  ///< row, force beyond `weight`
    bool alone = false;  ///< `more` is within all bounds without the weight's forces
    bool small = false;  ///< …and within half of kMostForce
  };
  std::vector<Person> persons;
};

/// Judges set after set whether every case holds at λ = 1, from proofs of sets that differ little: forces far from what
/// changed stay as they were (they were in balance and still are), a small program finds those near it. Where that
/// fails the whole set is asked.
class Prover {
 public:
  explicit Prover(const StandingModel& model) : model_(model) {}
  /// With what `other` knows of a model of which this one is a copy with more temporaries.
  Prover(const StandingModel& model, const Prover& other) : model_(model), proofs_(other.proofs_) {}
  [[nodiscard]] ForceVerdict judge(const StandingSet& set);

 private:
  struct Work;
  const StandingModel& model_;
  std::vector<Proof> proofs_;  ///< the latest last
};

}  // namespace bentbook
