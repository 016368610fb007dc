#include "raising/forces.h"

#include <algorithm>
#include <utility>

namespace bentbook {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

/// Below it the rows that hold give way: keeps the equations solvable where they have lost rank.
constexpr double kSoft = 1e-9;
constexpr int kRounds = 40;

void write_side(double (&side)[6], const HoldRow& row, Vec3 cg, double sign) {
  const Vec3 turn = (1 / kMechanismLength) * cross(row.point - cg, row.direction);
  const double values[] = {row.direction.x, row.direction.y, row.direction.z, turn.x, turn.y, turn.z};
  for (int k = 0; k < 6; ++k) side[k] = sign * values[k];
}

/// The row's numbers, the place of each in the whole.
struct Entries {
  int place[12];
  double value[12];
  int count = 0;
};
Entries entries_of(const ForceSystem::Column& c) {
  Entries e;
  const auto add = [&](int body, const double(&side)[6]) {
    if (body < 0) return;
    for (int k = 0; k < 6; ++k) {
      e.place[e.count] = 6 * body + k;
      e.value[e.count++] = side[k];
    }
  };
  const bool first = c.a < c.b || c.b < 0;
  add(first ? c.a : c.b, first ? c.on_a : c.on_b);
  add(first ? c.b : c.a, first ? c.on_b : c.on_a);
  return e;
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
    c.hi = row.limit > 0 ? row.limit : kMostForce;
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
    loads.fixed(o + 2) = (load.heavy ? 1.15 : 0.9) * body.weight_lb;
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

Balance::Balance(const ForceSystem& system) : system_(system) {
  const int n = system.size();
  std::vector<Eigen::Triplet<double>> pattern;
  std::vector<std::pair<int, int>> pairs;
  for (const ForceSystem::Column& c : system.columns)
    if (c.a >= 0 && c.b >= 0) pairs.emplace_back(std::max(c.a, c.b), std::min(c.a, c.b));
  for (std::size_t i = 0; i < system.bodies.size(); ++i) pairs.emplace_back(static_cast<int>(i), static_cast<int>(i));
  std::sort(pairs.begin(), pairs.end());
  pairs.erase(std::unique(pairs.begin(), pairs.end()), pairs.end());
  for (const auto& [row, column] : pairs)
    for (int i = 0; i < 6; ++i)
      for (int j = 0; j < (row == column ? i + 1 : 6); ++j) pattern.emplace_back(6 * row + i, 6 * column + j, 1.0);
  normal_.resize(n, n);
  normal_.setFromTriplets(pattern.begin(), pattern.end());
  solver_.analyzePattern(normal_);
  const auto find = [&](int row, int column) {
    const int* begin = normal_.innerIndexPtr() + normal_.outerIndexPtr()[column];
    const int* end = normal_.innerIndexPtr() + normal_.outerIndexPtr()[column + 1];
    return static_cast<int>(std::lower_bound(begin, end, row) - normal_.innerIndexPtr());
  };
  for (const ForceSystem::Column& c : system.columns) {
    const Entries e = entries_of(c);
    std::vector<int> places;
    for (int i = 0; i < e.count; ++i)
      for (int j = 0; j <= i; ++j) places.push_back(find(e.place[i], e.place[j]));
    where_.push_back(std::move(places));
  }
}

bool Balance::factor(const std::vector<char>& free) {
  if (ready_ && free == factored_) return true;
  double* values = normal_.valuePtr();
  std::fill(values, values + normal_.nonZeros(), 0.0);
  for (std::size_t r = 0; r < system_.columns.size(); ++r) {
    if (free[r] == 0) continue;
    const Entries e = entries_of(system_.columns[r]);
    std::size_t k = 0;
    for (int i = 0; i < e.count; ++i)
      for (int j = 0; j <= i; ++j) values[where_[r][k++]] += e.value[i] * e.value[j];
  }
  for (int i = 0; i < system_.size(); ++i) values[normal_.outerIndexPtr()[i]] += kSoft;
  solver_.factorize(normal_);
  factored_ = free;
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

Found Balance::solve(const Loads& needed, Eigen::VectorXd& f, Loads& y) {
  const std::size_t n = system_.columns.size();
  const Eigen::VectorXd start = f;
  y = Loads::Zero(system_.size());
  std::vector<char> free(n, 1);
  // Where the forces to stay near to are already at a bound, begin with that row let go.
  for (std::size_t r = 0; r < n; ++r) {
    const ForceSystem::Column& c = system_.columns[r];
    const double s = start(static_cast<Eigen::Index>(r));
    if (ready_ && factored_[r] == 0 && s <= c.lo) free[r] = 0;
  }
  f = start.cwiseMax(0 * start);
  for (std::size_t r = 0; r < n; ++r) {
    const auto i = static_cast<Eigen::Index>(r);
    f(i) = std::clamp(start(i), system_.columns[r].lo, system_.columns[r].hi);
  }
  Eigen::VectorXd best = f;
  for (int round = 0; round < kRounds; ++round) {
    if (!factor(free)) return Found::kUndecided;
    // Forces of rows at a bound stay there; the others follow the motion.
    Eigen::VectorXd base(static_cast<Eigen::Index>(n));
    for (std::size_t r = 0; r < n; ++r) {
      const auto i = static_cast<Eigen::Index>(r);
      base(i) = free[r] != 0 ? start(i) : f(i);
    }
    Loads rest = needed - system_.effect(base);
    y = solver_.solve(rest);
    for (int again = 0; again < 2; ++again) {
      Eigen::VectorXd now = base;
      for (std::size_t r = 0; r < n; ++r)
        if (free[r] != 0) now(static_cast<Eigen::Index>(r)) += system_.give(system_.columns[r], y);
      y += solver_.solve(needed - system_.effect(now));
    }
    bool same = true;
    for (std::size_t r = 0; r < n; ++r) {
      const auto i = static_cast<Eigen::Index>(r);
      const ForceSystem::Column& c = system_.columns[r];
      const double want = start(i) + system_.give(c, y);
      const char stays = want > c.lo && want < c.hi ? 1 : 0;
      // Two-way without a rating: never at a bound that means anything.
      same = same && stays == free[r];
      free[r] = stays;
      f(i) = std::clamp(want, c.lo, c.hi);
    }
    if (holds(system_, needed, f)) return Found::kForces;
    if (same || round % 4 == 3) {
      if (proves_none(needed, y)) return Found::kNone;
      if (same) return Found::kUndecided;
    }
  }
  return Found::kUndecided;
}

}  // namespace bentbook
