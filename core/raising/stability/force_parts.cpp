#include "raising/stability/force_parts.h"

#include <algorithm>
#include <set>
#include <utility>

#include "numeric/index.h"
#include "numeric/sorting.h"

namespace bentbook {
namespace {

constexpr std::size_t kBeside = 2;  ///< carriers on each side of a load
constexpr double kFar = 450;        ///< inches: farther from the load only the nearest carrier counts

constexpr std::size_t kBusy = 120;  ///< rows: a plate or ridge, joints all along it that say nothing of this place

}  // namespace

ForceParts::ForceParts(const StandingModel& model, const StandingSet& set)
    : model_(model), set_(set), row_in_(model.rows.size(), 0) {
  for (const int r : set.rows) row_in_[at(r)] = 1;
}

template <class Take>
void ForceParts::each_partner(int timber, const Take& take) const {
  for (const int r : model_.touches[at(timber)]) {
    if (row_in_[at(r)] == 0) continue;
    const HoldRow& row = model_.rows[at(r)];
    const int other = row.a == timber ? row.b : row.a;
    if (other >= 0) take(other, row);
  }
}

std::vector<ForceParts::Loaded> ForceParts::carriers_of_one(const Loaded& it) const {
  struct Carrier {
    double from = 0;  ///< from the load, along the timber
    Loaded loaded;
  };
  std::vector<Carrier> found;
  const Vec3& axis = model_.axis[at(it.timber)];
  each_partner(it.timber, [&](int other, const HoldRow& row) {
    if (row.joint >= 0 && model_.joint_carrier[at(row.joint)] != other) return;
    if (!found.empty() && found.back().loaded.timber == other) return;
    const Vec3 where = row.joint >= 0 ? model_.joint_at[at(row.joint)] : row.point;
    const auto along = [&](int t) { return dot(where - model_.bodies[at(t)].end_a, model_.axis[at(t)]); };
    const double from = along(it.timber) - it.station, level = libm::hypot(axis.x, axis.y);
    found.push_back({from, {other, along(other), it.all, it.far + libm::fabs(from) * level}});
  });
  const auto middle = std::stable_partition(found.begin(), found.end(), [](const Carrier& c) { return c.from < 0; });
  std::stable_sort(found.begin(), middle, [](const Carrier& a, const Carrier& b) { return a.from > b.from; });
  std::stable_sort(middle, found.end(), [](const Carrier& a, const Carrier& b) { return a.from < b.from; });
  double far = it.far;
  for (const Carrier& c : found) far = &c == found.data() ? c.loaded.far : std::min(far, c.loaded.far);
  std::vector<Loaded> taken;
  for (auto [begin, end] : {std::pair{found.begin(), middle}, std::pair{middle, found.end()}})
    for (std::size_t n = 0; begin != end && (it.all || n < kBeside); ++begin, ++n)
      if (it.all || begin->loaded.far <= std::max(kFar, far)) taken.push_back(begin->loaded);
  return taken;
}

std::vector<char> ForceParts::carriers(std::vector<Loaded> todo) const {
  std::vector<char> in(set_.timbers.size(), 0);
  std::set<std::pair<int, double>> seen;
  for (const Loaded& it : todo) in[at(place(it.timber))] = 1;
  while (!todo.empty()) {
    const Loaded it = todo.back();
    todo.pop_back();
    if (!seen.emplace(it.timber, it.all ? 0 : it.station).second) continue;
    for (const Loaded& carrier : carriers_of_one(it)) {
      in[at(place(carrier.timber))] = 1;
      todo.push_back(carrier);
    }
  }
  const std::vector<char> core = in;
  std::vector<char> looked = in;
  for (std::size_t i = 0; i < core.size(); ++i) {
    if (core[i] == 0) continue;
    each_partner(set_.timbers[i], [&](int beside, const HoldRow&) {
      if (looked[at(place(beside))] != 0) return;
      looked[at(place(beside))] = 1;
      bool between = true;
      each_partner(beside, [&](int other, const HoldRow&) { between = between && core[at(place(other))] != 0; });
      if (between) in[at(place(beside))] = 1;
    });
  }
  return in;
}

std::vector<char> ForceParts::carriers_of(const std::vector<int>& from, Reach reach) const {
  std::vector<Loaded> todo;
  if (reach == Reach::kAll) {
    for (const int t : from) todo.push_back({t, 0, true});
    return carriers(std::move(todo));
  }
  // All that carries these themselves; from there on what is near.
  std::vector<char> own(set_.timbers.size(), 0);
  for (const int t : from) {
    own[at(place(t))] = 1;
    for (Loaded carrier : carriers_of_one({t, 0, true})) {
      carrier.all = false;
      todo.push_back(carrier);
    }
  }
  std::vector<char> in = carriers(std::move(todo));
  for (std::size_t i = 0; i < in.size(); ++i) in[i] = in[i] != 0 || own[i] != 0 ? 1 : 0;
  return in;
}

std::vector<char> ForceParts::carriers_at(int timber, double station) const {
  return carriers({{timber, station, false}});
}

std::vector<char> ForceParts::grown(const std::vector<char>& in) const {
  std::vector<char> more = in;
  for (std::size_t i = 0; i < in.size(); ++i)
    if (in[i] != 0) each_partner(set_.timbers[i], [&](int other, const HoldRow&) { more[at(place(other))] = 1; });
  return more;
}

std::vector<int> ForceParts::joints_beside(int timber) const {
  std::vector<int> joints;
  const auto take = [&](int /*other*/, const HoldRow& row) {
    if (row.joint >= 0) joints.push_back(row.joint);
  };
  each_partner(timber, take);
  each_partner(timber, [&](int other, const HoldRow& row) {
    if (row.joint >= 0 && model_.touches[at(other)].size() < kBusy) each_partner(other, take);
  });
  sort_up(joints);
  joints.erase(std::unique(joints.begin(), joints.end()), joints.end());
  return joints;
}

std::unique_ptr<ForcePart> ForceParts::part_of(std::vector<char> in, bool temporaries) const {
  auto part = std::make_unique<ForcePart>();
  part->in = std::move(in);
  std::vector<int> bodies, rows;
  for (std::size_t i = 0; i < part->in.size(); ++i) {
    if (part->in[i] == 0) continue;
    const int t = set_.timbers[i];
    bodies.push_back(t);
    for (const int r : model_.touches[at(t)]) {
      const HoldRow& row = model_.rows[at(r)];
      if (row_in_[at(r)] == 0 || (row.temporary >= 0 && !temporaries)) continue;
      const int other = row.a == t ? row.b : row.a;
      const bool within = other < 0 || part->in[at(place(other))] != 0;
      if (!within)
        part->border.push_back(r);
      else if (row.a == t)
        rows.push_back(r);
    }
  }
  sort_up(rows);
  part->system = force_system(model_, std::move(bodies), std::move(rows));
  part->solver = std::make_unique<ActiveSetSolver>(part->system);
  return part;
}

Loads ForceParts::border_loads(const ForcePart& part, const RowForces& f) const {
  Loads loads = Loads::Zero(part.system.size());
  for (const int r : part.border) {
    const double force = f(r);
    if (force == 0) continue;
    const HoldRow& row = model_.rows[at(r)];
    const bool a = part.in[at(place(row.a))] != 0;
    const int timber = a ? row.a : row.b;
    const auto body = std::lower_bound(part.system.bodies.begin(), part.system.bodies.end(), timber);
    const Eigen::Index o = 6 * (body - part.system.bodies.begin());
    const Vec3 d = ((a ? 1 : -1) * force) * row.direction;
    const Vec3 m = (1 / kMechanismLength) * cross(row.point - model_.bodies[at(timber)].cg, d);
    const double values[] = {d.x, d.y, d.z, m.x, m.y, m.z};
    for (Eigen::Index k = 0; k < 6; ++k) loads(o + k) += values[k];
  }
  return loads;
}

}  // namespace bentbook
