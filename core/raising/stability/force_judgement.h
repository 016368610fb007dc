#pragma once
/// One set judged for the Prover: pushes first (force_judgement.cpp), then persons (force_persons.cpp).

#include <memory>
#include <utility>
#include <vector>

#include "raising/stability/force_parts.h"
#include "raising/stability/load_factor.h"
#include "raising/stability/prover.h"

namespace bentbook {

class ForceJudgement {
 public:
  ForceJudgement(const StandingModel& model, const StandingSet& set);

  /// Every push holds. `was`: the nearest proof, or none.
  [[nodiscard]] bool pushes(const Proof* was);
  /// Every person holds, once pushes() has said so. `all`: by timber.
  [[nodiscard]] bool persons(std::vector<PersonKnown>& all);
  [[nodiscard]] const ForceVerdict& verdict() const { return verdict_; }
  [[nodiscard]] Proof take_proof() { return std::move(proof_); }

 private:
  void start(const RowForces* was, RowForces& f) const;
  [[nodiscard]] std::vector<double> soft_of(const ForceSystem& system, const Eigen::VectorXd& f) const;
  [[nodiscard]] bool solve_part(ForcePart& part, const LoadCase& load, double factor, RowForces& f) const;
  /// The whole set; where it fails the verdict says so.
  [[nodiscard]] bool solve_all(const LoadCase& load, double factor, RowForces& f);
  [[nodiscard]] bool heavy_case(LoadCase load, const RowForces& f);

  [[nodiscard]] bool still_holds(const PersonHold& hold) const;
  [[nodiscard]] bool covered(const std::vector<PersonHold>& holds, double station) const;
  [[nodiscard]] bool person(const LoadCase& load, double station, PersonKnown& known);
  [[nodiscard]] bool person_beside(ForcePart& part, const LoadCase& load, double share, const PersonHold* old,
                                   RowForces& more) const;
  void keep_person(double station, const RowForces& more, PersonKnown& known) const;
  [[nodiscard]] ForcePart& part_for(const std::vector<char>& in, bool temporaries);

  const StandingModel& model_;
  const StandingSet& set_;
  ForceParts parts_;
  const Proof* was_ = nullptr;
  Proof proof_;
  bool heavy_fits_ = true;
  ForceVerdict verdict_{true, 1, true, {}, {}, {}};
  std::unique_ptr<ForceSystem> all_;
  std::unique_ptr<ActiveSetSolver> all_solver_;
  std::unique_ptr<LoadFactorProgram> program_;
  MotionVector all_motion_;
  std::vector<std::pair<bool, std::unique_ptr<ForcePart>>> person_parts_;  ///< with temporaries or not; the latest last
};

}  // namespace bentbook
