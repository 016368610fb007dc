#pragma once
/// Mechanisms of what stands: the null space of the constraint matrix, one-way rows counted as two-way.
///
/// Timbers that one joint alone holds in all six ways are one body. The bodies are then eliminated one after another,
/// fewest neighbours first: an orthogonal factorisation of the rows that touch a body, by its six columns, tells which
/// of its motions nothing holds back whatever its neighbours do (each is one mechanism) and leaves what its rows say of
/// the neighbours. Exact but for rounding, since every step is orthogonal; the work grows with the frame's size and not
/// with its cube. Lengths in units of kMechanismLength, so that turns and moves weigh about alike.

#include <span>
#include <vector>

#include "raising/stability/standing.h"

namespace bentbook {

inline constexpr double kMechanismLength = 48;
inline constexpr double kHeldPivot = 1e-7;  ///< a smaller pivot holds nothing

/// What stands: timbers and rows, in order, each once.
struct StandingSet {
  std::vector<int> timbers, rows;
  std::vector<int> place;  ///< by timber of the frame: index in `timbers`, −1
};
[[nodiscard]] StandingSet standing_set(const StandingModel& model, std::span<const int> timbers,
                                       std::span<const int> temporaries);

struct Mechanisms {
  int count = 0;
  double least_pivot = 0;
  /// By mechanism, where asked for: all timbers' motions, not yet scaled; a basis of the null space.
  std::vector<std::vector<TimberMotion>> modes;
};
/// `rigid_joint`: by joint (rigid_joints).
[[nodiscard]] Mechanisms mechanisms_of(const StandingModel& model, const StandingSet& set,
                                       const std::vector<char>& rigid_joint, bool modes);
/// By joint: whether its rows alone have rank 6.
[[nodiscard]] std::vector<char> rigid_joints(const StandingModel& model);

/// A mode's name: what moves and how. Scales it as TimberMotion says and leaves out what stays.
[[nodiscard]] Mode name_mode(const StandingModel& model, std::vector<TimberMotion> motions);

}  // namespace bentbook
