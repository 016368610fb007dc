#pragma once
/// Multifrontal QR, fewest neighbours first: mechanisms of what stands are the null space of the constraint matrix,
/// one-way rows counted as two-way.
///
/// Timbers that one joint alone holds in all six ways are one body. Bodies are eliminated one after another: an
/// orthogonal factorisation of the rows that touch a body, by its six columns, tells which of its motions nothing holds
/// back whatever its neighbours do (each is one mechanism) and leaves what its rows say of the neighbours. Every step
/// is orthogonal, so the answer is exact but for rounding; the work grows with the frame's size and not with its cube.

#include <span>
#include <vector>

#include "raising/stability/standing.h"

namespace bentbook {

/// Inches: lengths are counted in this unit, so that turns and moves weigh about alike. Source: SOURCES.md, "rounding".
inline constexpr double kMechanismLength = 48;
/// A smaller pivot holds nothing: dimensionless, rows have length 1. Larger: a joint that is nearly loose counts as
/// loose. Source: SOURCES.md, "rounding".
inline constexpr double kHeldPivot = 1e-7;

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

}  // namespace bentbook
