#include "raising/stability/forces.h"

#include <algorithm>
#include <utility>

#include "numeric/index.h"
#include "numeric/sorting.h"
#include "raising/limits.h"

namespace bentbook {
namespace {

/// Below it the rows that hold give way: keeps the equations solvable where they have lost rank.
constexpr double kSoft = 1e-6;

void write_side(double (&side)[6], const HoldRow& row, Vec3 cg, double sign) {
  const Vec3 turn = (1 / kMechanismLength) * cross(row.point - cg, row.direction);
  const double values[] = {row.direction.x, row.direction.y, row.direction.z, turn.x, turn.y, turn.z};
  for (int k = 0; k < 6; ++k) side[k] = sign * values[k];
}

}  // namespace

Loads ForceSystem::effect(const Eigen::VectorXd& f) const {
  Loads sum = Loads::Zero(size());
  for (std::size_t r = 0; r < columns.size(); ++r) {
    const double force = f(static_cast<Eigen::Index>(r));
    if (force == 0) continue;
    const Column& c = columns[r];
    for (int k = 0; k < 6; ++k) {
      if (c.a >= 0) sum(6 * c.a + k) += force * c.on_a[k];
      if (c.b >= 0) sum(6 * c.b + k) += force * c.on_b[k];
    }
  }
  return sum;
}

double ForceSystem::give(const Column& c, const Loads& y) const {
  double sum = 0;
  for (int k = 0; k < 6; ++k) {
    if (c.a >= 0) sum += c.on_a[k] * y(6 * c.a + k);
    if (c.b >= 0) sum += c.on_b[k] * y(6 * c.b + k);
  }
  return sum;
}

ForceSystem force_system(const StandingModel& model, std::vector<int> bodies, std::vector<int> rows) {
  ForceSystem system;
  system.bodies = std::move(bodies);
  system.rows = std::move(rows);
  std::vector<int> number(model.bodies.size(), -1);
  for (std::size_t i = 0; i < system.bodies.size(); ++i) number[at(system.bodies[i])] = static_cast<int>(i);
  for (const int r : system.rows) {
    const HoldRow& row = model.rows[at(r)];
    ForceSystem::Column c;
    c.a = number[at(row.a)];
    c.b = row.b < 0 ? -1 : number[at(row.b)];
    if (c.a >= 0) write_side(c.on_a, row, model.bodies[at(row.a)].cg, 1);
    if (c.b >= 0) write_side(c.on_b, row, model.bodies[at(row.b)].cg, -1);
    c.hi = row.limit > 0 && row.limit < limits::kMostForce ? row.limit : limits::kMostForce;
    c.lo = row.two_way ? -c.hi : 0;
    system.columns.push_back(c);
  }
  return system;
}

CaseLoads case_loads(const StandingModel& model, const std::vector<int>& bodies, const LoadCase& load) {
  CaseLoads loads{Loads::Zero(static_cast<Eigen::Index>(6 * bodies.size())),
                  Loads::Zero(static_cast<Eigen::Index>(6 * bodies.size()))};
  constexpr double kHalf = 0.70710678118654752;
  constexpr double kX[8] = {1, kHalf, 0, -kHalf, -1, -kHalf, 0, kHalf};
  constexpr double kY[8] = {0, kHalf, 1, kHalf, 0, -kHalf, -1, -kHalf};
  for (std::size_t i = 0; i < bodies.size(); ++i) {
    const StandingBody& body = model.bodies[at(bodies[i])];
    const Eigen::Index o = static_cast<Eigen::Index>(6 * i);
    loads.fixed(o + 2) = (load.heavy ? limits::kHeavyShare : limits::kLightShare) * body.weight_lb;
    if (load.kind == LoadKind::kPush) {
      loads.scaled(o) = -body.push_lb[load.direction] * kX[load.direction];
      loads.scaled(o + 1) = -body.push_lb[load.direction] * kY[load.direction];
    } else if (load.timber == bodies[i]) {
      const double person = model.loads.person.lb();
      const Vec3 turn = (person / kMechanismLength) * cross(load.point - body.cg, Vec3{0, 0, 1});
      loads.scaled(o + 2) = person;
      loads.scaled(o + 3) = turn.x;
      loads.scaled(o + 4) = turn.y;
      loads.scaled(o + 5) = turn.z;
    }
  }
  return loads;
}

bool holds(const ForceSystem& system, const Loads& needed, const Eigen::VectorXd& f) {
  for (std::size_t r = 0; r < system.columns.size(); ++r) {
    const double force = f(static_cast<Eigen::Index>(r));
    if (!(force >= system.columns[r].lo && force <= system.columns[r].hi)) return false;
  }
  if (needed.size() == 0) return true;
  const double most = needed.lpNorm<Eigen::Infinity>();
  return (needed - system.effect(f)).lpNorm<Eigen::Infinity>() <= kBalanceError * (most > 1 ? most : 1);
}

Balance::Balance(const ForceSystem& system) : system_(system), soft_(system.columns.size(), 1) {
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
  solver_.analyzePattern(normal_);
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

bool Balance::factor(const std::vector<char>& free) {
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
  solver_.factorize(normal_);
  factored_ = free;
  factored_soft_ = soft_;
  ready_ = solver_.info() == Eigen::Success;
  return ready_;
}

bool Balance::proves_none(const Loads& needed, const Loads& y) const {
  const double size = y.lpNorm<Eigen::Infinity>();
  if (!(size > 0)) return false;
  double most = 0;
  for (const ForceSystem::Column& c : system_.columns) {
    const double g = system_.give(c, y);
    most += g > 0 ? g * c.hi : g * c.lo;
  }
  return needed.dot(y) - most > 1e-6 * size;
}

Eigen::VectorXd Balance::forces_at(const Eigen::VectorXd& start, const Loads& y, std::vector<char>* free) const {
  Eigen::VectorXd f(start.size());
  for (std::size_t r = 0; r < system_.columns.size(); ++r) {
    const auto i = static_cast<Eigen::Index>(r);
    const ForceSystem::Column& c = system_.columns[r];
    const double want = start(i) + soft_[r] * system_.give(c, y);
    if (free != nullptr) (*free)[r] = want >= c.lo && want <= c.hi ? 1 : 0;
    f(i) = std::clamp(want, c.lo, c.hi);
  }
  return f;
}

/// How far along `step` the residual still pushes on: the root of a falling function, within a tenth.
double Balance::stretch(const Loads& needed, const Eigen::VectorXd& start, const Loads& y, const Loads& step) const {
  const auto slope = [&](double t) {
    return step.dot(needed - system_.effect(forces_at(start, y + t * step, nullptr)));
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

Found Balance::solve(const Loads& needed, Eigen::VectorXd& f, Loads& y, int rounds) {
  const Eigen::VectorXd start = f;
  if (y.size() != needed.size()) y = Loads::Zero(needed.size());
  std::vector<char> free(system_.columns.size(), 1);
  for (int round = 0; round < rounds; ++round) {
    f = forces_at(start, y, &free);
    if (holds(system_, needed, f)) return Found::kForces;
    if (round % 4 == 3 && proves_none(needed, y)) return Found::kNone;
    if (!factor(free)) return Found::kUndecided;
    const Loads step = solver_.solve(needed - system_.effect(f));
    y += stretch(needed, start, y, step) * step;
  }
  return proves_none(needed, y) ? Found::kNone : Found::kUndecided;
}

}  // namespace bentbook
