#pragma once
/// Parts of what stands that are solved by themselves, so that the cost of a step grows with what it changes and not
/// with all that stands.

#include <memory>
#include <vector>

#include "raising/stability/active_set.h"
#include "raising/stability/force_cases.h"

namespace bentbook {

/// How far carriers are followed.
enum class Reach : std::uint8_t {
  kNear,  ///< of a long timber's carriers the two on each side of where it is borne upon, if not too far from the load
  kAll,
};

/// Some of what stands, solved while the forces in all the rest are kept. Rows of `system` lie within it; rows of
/// `border` have one end in it.
struct ForcePart {
  std::vector<char> in;  ///< by place in the set
  ForceSystem system;
  std::unique_ptr<ActiveSetSolver> solver;
  std::vector<int> border;
};

/// A set seen from its timbers.
class ForceParts {
 public:
  ForceParts(const StandingModel& model, const StandingSet& set);

  [[nodiscard]] bool has_row(int row) const { return row_in_[static_cast<std::size_t>(row)] != 0; }
  [[nodiscard]] int place(int timber) const { return timber < 0 ? -1 : set_.place[static_cast<std::size_t>(timber)]; }
  /// These, what carries them, what carries that and so on; and what is joined to nothing but those.
  [[nodiscard]] std::vector<char> carriers_of(const std::vector<int>& from, Reach reach) const;
  /// The same of a load on one timber, `station` inches from its end A.
  [[nodiscard]] std::vector<char> carriers_at(int timber, double station) const;
  /// With all that is joined to it.
  [[nodiscard]] std::vector<char> grown(const std::vector<char>& in) const;
  /// Joints of a timber and of what is joined to it, as far as they stand.
  [[nodiscard]] std::vector<int> joints_beside(int timber) const;
  [[nodiscard]] std::unique_ptr<ForcePart> part_of(std::vector<char> in, bool temporaries) const;
  /// Loads on the part from forces in its border. `f`: forces of the whole set, by row of the model.
  [[nodiscard]] Loads border_loads(const ForcePart& part, const RowForces& f) const;

 private:
  /// A timber that bears a load, and where; `all`: anywhere.
  struct Loaded {
    int timber = 0;
    double station = 0;
    bool all = true;
    double far = 0;  ///< inches along timbers from the load, level
  };
  [[nodiscard]] std::vector<char> carriers(std::vector<Loaded> todo) const;
  [[nodiscard]] std::vector<Loaded> carriers_of_one(const Loaded& it) const;
  template <class Take>
  void each_partner(int timber, const Take& take) const;

  const StandingModel& model_;
  const StandingSet& set_;
  std::vector<char> row_in_;  ///< by row of the model
};

}  // namespace bentbook
