#include "raising/stability/active_set.h"

#include <algorithm>

#include "numeric/index.h"
#include "numeric/sorting.h"

namespace bentbook {
namespace {

/// Added to the diagonal: keeps the equations solvable where the rows that hold have lost rank.
constexpr double kSoft = 1e-6;

}  // namespace

ActiveSetSolver::ActiveSetSolver(const ForceSystem& system) : system_(system), soft_(system.columns.size(), 1) {
  const int n = system.size();
  std::vector<Eigen::Triplet<double>> pattern;
  std::vector<std::pair<int, int>> pairs;
  for (const ForceSystem::Column& c : system.columns)
    if (c.a >= 0 && c.b >= 0) pairs.emplace_back(std::max(c.a, c.b), std::min(c.a, c.b));
  for (std::size_t i = 0; i < system.bodies.size(); ++i) pairs.emplace_back(static_cast<int>(i), static_cast<int>(i));
  sort_up(pairs);
  pairs.erase(std::unique(pairs.begin(), pairs.end()), pairs.end());
  for (const auto& [row, column] : pairs)
    for (int i = 0; i < 6; ++i)
      for (int j = 0; j < (row == column ? i + 1 : 6); ++j) pattern.emplace_back(6 * row + i, 6 * column + j, 1.0);
  normal_.resize(n, n);
  normal_.setFromTriplets(pattern.begin(), pattern.end());
  factorisation_.analyzePattern(normal_);
  // A pair's entries of one column lie side by side.
  const auto find = [&](int row, int column) {
    const int* begin = normal_.innerIndexPtr() + normal_.outerIndexPtr()[column];
    const int* end = normal_.innerIndexPtr() + normal_.outerIndexPtr()[column + 1];
    return static_cast<int>(std::lower_bound(begin, end, row) - normal_.innerIndexPtr());
  };
  for (const auto& [row, column] : pairs) {
    std::array<int, 6> places{};
    for (int j = 0; j < 6; ++j) places[at(j)] = find(6 * row + (row == column ? j : 0), 6 * column + j);
    blocks_.push_back(places);
  }
  const auto block = [&](int row, int column) {
    return static_cast<int>(std::lower_bound(pairs.begin(), pairs.end(), std::pair{row, column}) - pairs.begin());
  };
  for (const ForceSystem::Column& c : system.columns) {
    const int low = c.b < 0 ? c.a : c.a < 0 ? c.b : std::min(c.a, c.b);
    const int high = std::max(c.a, c.b);
    where_.push_back(
        {low < 0 ? -1 : block(low, low), low == high ? -1 : block(high, high), low == high ? -1 : block(high, low)});
  }
}

bool ActiveSetSolver::factor(const std::vector<char>& free) {
  if (ready_ && free == factored_ && soft_ == factored_soft_) return true;
  double* values = normal_.valuePtr();
  std::fill(values, values + normal_.nonZeros(), 0.0);
  const auto add_own = [&](int block, double soft, const double(&side)[6]) {
    for (int j = 0; j < 6; ++j)
      for (int i = j; i < 6; ++i) values[blocks_[at(block)][at(j)] + i - j] += soft * side[i] * side[j];
  };
  for (std::size_t r = 0; r < system_.columns.size(); ++r) {
    if (free[r] == 0 || where_[r].low < 0) continue;
    const ForceSystem::Column& c = system_.columns[r];
    const bool first = c.b < 0 || (c.a >= 0 && c.a < c.b);
    const double(&low)[6] = first ? c.on_a : c.on_b;
    add_own(where_[r].low, soft_[r], low);
    if (where_[r].high < 0) continue;
    const double(&high)[6] = first ? c.on_b : c.on_a;
    add_own(where_[r].high, soft_[r], high);
    for (int j = 0; j < 6; ++j)
      for (int i = 0; i < 6; ++i) values[blocks_[at(where_[r].both)][at(j)] + i] += soft_[r] * high[i] * low[j];
  }
  for (int i = 0; i < system_.size(); ++i) values[normal_.outerIndexPtr()[i]] += kSoft;
  factorisation_.factorize(normal_);
  factored_ = free;
  factored_soft_ = soft_;
  ready_ = factorisation_.info() == Eigen::Success;
  return ready_;
}

bool ActiveSetSolver::proves_none(const Loads& needed, const MotionVector& motion) const {
  const double size = motion.lpNorm<Eigen::Infinity>();
  if (!(size > 0)) return false;
  double most = 0;
  for (const ForceSystem::Column& c : system_.columns) {
    const double g = system_.give(c, motion);
    most += g > 0 ? g * c.hi : g * c.lo;
  }
  return needed.dot(motion) - most > 1e-6 * size;
}

Eigen::VectorXd ActiveSetSolver::forces_at(const Eigen::VectorXd& start, const MotionVector& motion,
                                           std::vector<char>* free) const {
  Eigen::VectorXd f(start.size());
  for (std::size_t r = 0; r < system_.columns.size(); ++r) {
    const auto i = static_cast<Eigen::Index>(r);
    const ForceSystem::Column& c = system_.columns[r];
    const double want = start(i) + soft_[r] * system_.give(c, motion);
    if (free != nullptr) (*free)[r] = want >= c.lo && want <= c.hi ? 1 : 0;
    f(i) = std::clamp(want, c.lo, c.hi);
  }
  return f;
}

/// How far along `step` the residual still pushes on: the root of a falling function, within a tenth.
double ActiveSetSolver::stretch(const Loads& needed, const Eigen::VectorXd& start, const MotionVector& motion,
                                const MotionVector& step) const {
  const auto slope = [&](double t) {
    return step.dot(needed - system_.effect(forces_at(start, motion + t * step, nullptr)));
  };
  const double first = slope(0);
  double lo = 0, hi = 1;
  double at_hi = slope(hi);
  if (libm::fabs(at_hi) <= 0.1 * first) return 1;
  for (int k = 0; k < 24 && at_hi > 0; ++k) {
    lo = hi;
    hi *= 4;
    at_hi = slope(hi);
  }
  for (int k = 0; k < 24 && lo == 0; ++k) {
    const double less = hi / 8;
    (slope(less) > 0 ? lo : hi) = less;
  }
  for (int k = 0; k < 12; ++k) {
    const double mid = (lo + hi) / 2, here = slope(mid);
    if (libm::fabs(here) <= 0.1 * first) return mid;
    (here > 0 ? lo : hi) = mid;
  }
  return lo > 0 ? lo : hi;
}

Feasibility ActiveSetSolver::solve(const Loads& needed, Eigen::VectorXd& f, MotionVector& motion, int rounds) {
  const Eigen::VectorXd start = f;
  if (motion.size() != needed.size()) motion = MotionVector::Zero(needed.size());
  std::vector<char> free(system_.columns.size(), 1);
  for (int round = 0; round < rounds; ++round) {
    f = forces_at(start, motion, &free);
    if (holds(system_, needed, f)) return Feasibility::kFeasible;
    if (round % 4 == 3 && proves_none(needed, motion)) return Feasibility::kInfeasible;
    if (!factor(free)) return Feasibility::kUndecided;
    const MotionVector step = factorisation_.solve(needed - system_.effect(f));
    motion += stretch(needed, start, motion, step) * step;
  }
  return proves_none(needed, motion) ? Feasibility::kInfeasible : Feasibility::kUndecided;
}

}  // namespace bentbook
