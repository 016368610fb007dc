#include "raising/stability/force_system.h"

#include <algorithm>
#include <utility>

#include "numeric/index.h"
#include "raising/limits.h"

namespace bentbook {
namespace {

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

double ForceSystem::give(const Column& c, const MotionVector& motion) const {
  double sum = 0;
  for (int k = 0; k < 6; ++k) {
    if (c.a >= 0) sum += c.on_a[k] * motion(6 * c.a + k);
    if (c.b >= 0) sum += c.on_b[k] * motion(6 * c.b + k);
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

void add_weight(Loads& needed, int place, const StandingBody& body, Vec3 at, double lb) {
  const Vec3 turn = (lb / kMechanismLength) * cross(at - body.cg, Vec3{0, 0, 1});
  const Eigen::Index o = 6 * static_cast<Eigen::Index>(place);
  needed(o + 2) += lb;
  needed(o + 3) += turn.x;
  needed(o + 4) += turn.y;
  needed(o + 5) += turn.z;
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
      add_weight(loads.scaled, static_cast<int>(i), body, load.point, model.loads.person.lb());
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
  return (needed - system.effect(f)).lpNorm<Eigen::Infinity>() <= kEquilibriumError * (most > 1 ? most : 1);
}

}  // namespace bentbook
