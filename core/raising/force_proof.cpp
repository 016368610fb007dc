/// Proofs that every case holds, from one set to the next.

#include <algorithm>

#include "raising/force_cases.h"

namespace bentbook {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr double kMoreWeight = 0.25 / 0.9;
constexpr std::size_t kKept = 4;
constexpr double kLeastSoft = 0.02;
constexpr int kPartRounds = 10;
constexpr int kAloneRounds = 30;   ///< worth more: it is found once
constexpr std::size_t kNear = 24;  ///< timbers and rows that differ, at most, for a proof to be of use

std::size_t differ(const std::vector<int>& a, const std::vector<int>& b) {
  std::size_t count = 0;
  for (std::size_t i = 0, j = 0; i < a.size() || j < b.size();) {
    if (i < a.size() && j < b.size() && a[i] == b[j]) {
      ++i;
      ++j;
      continue;
    }
    ++count;
    if (j == b.size() || (i < a.size() && a[i] < b[j]))
      ++i;
    else
      ++j;
  }
  return count;
}

bool has(const std::vector<int>& sorted, int value) { return std::binary_search(sorted.begin(), sorted.end(), value); }

}  // namespace

struct Prover::Work {
  const StandingModel& model;
  const StandingSet& set;
  Proof proof;
  std::unique_ptr<ForceSystem> all;
  std::unique_ptr<Balance> all_balance;
  std::unique_ptr<LoadFactor> program;
  Loads all_motion;
  ForceVerdict verdict{true, 1, true, {}, {}, {}};
  std::vector<char> row_in;  ///< by row of the model
  const Proof* nearest = nullptr;
  bool limits = false;  ///< a row that stands has one

  Work(const StandingModel& m, const StandingSet& s) : model(m), set(s), row_in(m.rows.size(), 0) {
    proof.set = s;
    for (const int r : s.rows) {
      row_in[at(r)] = 1;
      limits = limits || m.rows[at(r)].limit > 0;
    }
  }

  /// A part of the set that is solved by itself, what is beside it left as it is.
  struct Part {
    std::vector<char> in;  ///< by place in the set
    ForceSystem system;
    std::unique_ptr<Balance> balance;
    std::vector<int> border;  ///< rows with one end in it
    Loads motion;
  };

  [[nodiscard]] int place(int timber) const { return timber < 0 ? -1 : set.place[at(timber)]; }
  template <class Take>
  void each_partner(int timber, const Take& take) const {
    for (const int r : model.touches[at(timber)]) {
      if (row_in[at(r)] == 0) continue;
      const HoldRow& row = model.rows[at(r)];
      const int other = row.a == timber ? row.b : row.a;
      if (other >= 0) take(other, row);
    }
  }

  /// What carries these, what carries that, and what hangs between them alone.
  std::vector<char> carriers_of(const std::vector<int>& from) const {
    std::vector<char> in(set.timbers.size(), 0);
    std::vector<int> todo = from;
    for (const int t : from) in[at(place(t))] = 1;
    while (!todo.empty()) {
      const int t = todo.back();
      todo.pop_back();
      each_partner(t, [&](int other, const HoldRow& row) {
        const bool carries = row.joint < 0 || model.joint_carrier[at(row.joint)] == other;
        if (!carries || in[at(place(other))] != 0) return;
        in[at(place(other))] = 1;
        todo.push_back(other);
      });
    }
    const std::vector<char> core = in;
    for (std::size_t i = 0; i < in.size(); ++i) {
      if (core[i] != 0) continue;
      int inside = 0, outside = 0;
      each_partner(set.timbers[i],
                   [&](int other, const HoldRow&) { ++(core[at(place(other))] != 0 ? inside : outside); });
      if (inside > 0 && outside == 0) in[i] = 1;
    }
    return in;
  }
  std::vector<char> grown(const std::vector<char>& in) const {
    std::vector<char> more = in;
    for (std::size_t i = 0; i < in.size(); ++i)
      if (in[i] != 0) each_partner(set.timbers[i], [&](int other, const HoldRow&) { more[at(place(other))] = 1; });
    return more;
  }

  std::unique_ptr<Part> part_of(std::vector<char> in) const {
    auto part = std::make_unique<Part>();
    part->in = std::move(in);
    std::vector<int> bodies, rows;
    for (std::size_t i = 0; i < part->in.size(); ++i)
      if (part->in[i] != 0) bodies.push_back(set.timbers[i]);
    for (const int r : set.rows) {
      const HoldRow& row = model.rows[at(r)];
      const bool a = part->in[at(place(row.a))] != 0, b = row.b < 0 || part->in[at(place(row.b))] != 0;
      if (a && b)
        rows.push_back(r);
      else if (a || (b && row.b >= 0))
        part->border.push_back(r);
    }
    part->system = force_system(model, std::move(bodies), std::move(rows));
    part->balance = std::make_unique<Balance>(part->system);
    return part;
  }

  /// Forces near `f` that hold a case, changed within the part alone. `extra`: forces of its rows to begin with.
  bool solve_part(Part& part, const LoadCase& load, double factor, RowForces& f) const {
    const CaseLoads loads = case_loads(model, part.system.bodies, load);
    Loads needed = loads.fixed + factor * loads.scaled;
    for (const int r : part.border) {
      const double force = f(r);
      if (force == 0) continue;
      const HoldRow& row = model.rows[at(r)];
      const bool a = part.in[at(place(row.a))] != 0;
      const int timber = a ? row.a : row.b;
      const auto body = std::lower_bound(part.system.bodies.begin(), part.system.bodies.end(), timber);
      const Eigen::Index o = 6 * (body - part.system.bodies.begin());
      const Vec3 d = ((a ? 1 : -1) * force) * row.direction;
      const Vec3 m = (1 / kMechanismLength) * cross(row.point - model.bodies[at(timber)].cg, d);
      const double values[] = {d.x, d.y, d.z, m.x, m.y, m.z};
      for (Eigen::Index k = 0; k < 6; ++k) needed(o + k) -= values[k];
    }
    Eigen::VectorXd own(static_cast<Eigen::Index>(part.system.rows.size()));
    for (std::size_t i = 0; i < part.system.rows.size(); ++i)
      own(static_cast<Eigen::Index>(i)) = f(part.system.rows[i]);
    part.motion = Loads();
    if (load.kind == LoadKind::kPush && nearest != nullptr) part.balance->set_soft(soft_of(part.system, own));
    if (part.balance->solve(needed, own, part.motion, kPartRounds) != Found::kForces) return false;
    for (std::size_t i = 0; i < part.system.rows.size(); ++i)
      f(part.system.rows[i]) = own(static_cast<Eigen::Index>(i));
    return true;
  }

  /// Rows take about as much more as they have.
  std::vector<double> soft_of(const ForceSystem& system, const Eigen::VectorXd& f) const {
    const double mean = f.size() > 0 ? f.lpNorm<1>() / static_cast<double>(f.size()) : 0;
    std::vector<double> soft(system.rows.size(), 1);
    for (std::size_t i = 0; i < soft.size() && mean > 0; ++i) {
      if (model.rows[at(system.rows[i])].two_way || !has(nearest->set.rows, system.rows[i])) continue;
      soft[i] = std::clamp(f(static_cast<Eigen::Index>(i)) / mean, kLeastSoft, 4.0);
    }
    return soft;
  }

  /// The whole set; where it fails the verdict says so.
  bool solve_all(const LoadCase& load, double factor, RowForces& f) {
    if (!all) {
      all = std::make_unique<ForceSystem>(force_system(model, set.timbers, set.rows));
      all_balance = std::make_unique<Balance>(*all);
    }
    const CaseLoads loads = case_loads(model, set.timbers, load);
    Eigen::VectorXd own(static_cast<Eigen::Index>(set.rows.size()));
    for (std::size_t i = 0; i < set.rows.size(); ++i) own(static_cast<Eigen::Index>(i)) = f(set.rows[i]);
    if (nearest != nullptr)
      all_balance->set_soft(load.kind == LoadKind::kPush ? soft_of(*all, own)
                                                         : std::vector<double>(set.rows.size(), 1));
    Found found = all_balance->solve(loads.fixed + factor * loads.scaled, own, all_motion);
    verdict.fall = found == Found::kForces ? std::vector<TimberMotion>{} : motions_of(set.timbers, all_motion);
    if (found != Found::kForces) all_motion = Loads();
    if (found == Found::kUndecided) {
      if (!program) program = std::make_unique<LoadFactor>(*all);
      // At this very factor: forces at a larger one are no proof of what is built on them.
      const CaseLoads exact{loads.fixed + factor * loads.scaled, Loads::Zero(loads.fixed.size())};
      const Largest most = program->sure(*all_balance, exact);
      if (most.motion.size() > 0) verdict.fall = motions_of(set.timbers, most.motion);
      if (most.forces.size() == own.size() && holds(*all, exact.fixed, most.forces)) {
        own = most.forces;
        found = Found::kForces;
        verdict.fall.clear();
      } else {
        verdict.decided = most.decided;
      }
    }
    if (found == Found::kForces) {
      for (std::size_t i = 0; i < set.rows.size(); ++i) f(set.rows[i]) = own(static_cast<Eigen::Index>(i));
      return true;
    }
    verdict.holds = false;
    verdict.factor = 0;
    verdict.worst = load;
    return false;
  }

  /// Whether `f` and kMoreWeight of the weight's forces keep within the limits.
  [[nodiscard]] bool heavy_too(const RowForces& f) const {
    for (const int r : set.rows) {
      const double rated = model.rows[at(r)].limit;
      const double limit = rated > 0 && rated < kMostForce ? rated : kMostForce;
      if (libm::fabs(f(r) + kMoreWeight * proof.weight(r)) > limit) return false;
    }
    return true;
  }
  bool heavy_case(LoadCase load, const RowForces& f) {
    if (heavy_too(f)) return true;
    load.heavy = true;
    RowForces near = f;
    return solve_all(load, 1, near);
  }

  /// `was`: the nearest proof, or none.
  bool pushes(const Proof* was) {
    nearest = was;
    std::vector<std::unique_ptr<Part>> parts;
    if (was != nullptr) {
      std::vector<int> changed;
      for (const int t : set.timbers) {
        bool differs = !has(was->set.timbers, t);
        for (const int r : model.touches[at(t)]) differs = differs || (row_in[at(r)] == 0 && has(was->set.rows, r));
        if (differs) changed.push_back(t);
      }
      std::vector<char> in = carriers_of(changed);
      for (int wider = 0; wider < 2; ++wider) {
        const auto count = static_cast<std::size_t>(std::count(in.begin(), in.end(), 1));
        if (count > 0 && 2 * count < in.size()) parts.push_back(part_of(in));
        in = grown(in);
      }
      if (changed.empty()) parts.clear();
      if (changed.empty()) return keep(*was);
    }
    for (int k = -1; k < 8; ++k) {
      const LoadCase load{LoadKind::kPush, false, k < 0 ? 0 : k, -1, {}};
      RowForces& f = k < 0 ? proof.weight : proof.push[at(k)];
      const double factor = k < 0 ? 0 : 1;
      start(was == nullptr ? nullptr : k < 0 ? &was->weight : &was->push[at(k)], f);
      bool found = false;
      // A part that failed once is of no use for the other cases either.
      while (!found && !parts.empty()) {
        found = solve_part(*parts.front(), load, factor, f);
        if (!found) parts.erase(parts.begin());
      }
      if (!found && !solve_all(load, factor, f)) return false;
      if (k >= 0 && !heavy_case(load, f)) return false;
    }
    return true;
  }
  /// Rows were only added: the forces are what they were.
  bool keep(const Proof& was) {
    start(&was.weight, proof.weight);
    for (std::size_t k = 0; k < 8; ++k) start(&was.push[k], proof.push[k]);
    return true;
  }
  void start(const RowForces* was, RowForces& f) const {
    f = RowForces::Zero(static_cast<Eigen::Index>(model.rows.size()));
    if (was == nullptr) return;
    for (const int r : set.rows)
      if (r < was->size()) f(r) = (*was)(r);
  }

  /// `gone`: rows of its own set may be missing in this one.
  [[nodiscard]] bool still(const Proof::Person& person, bool gone) const {
    if (person.alone && person.small && !gone && !limits) return true;
    return std::all_of(person.more->begin(), person.more->end(), [&](const auto& more) {
      const HoldRow& row = model.rows[at(more.first)];
      if (row_in[at(more.first)] == 0) return false;
      const double f = proof.weight(more.first) + more.second;
      const double most = row.limit > 0 && row.limit < kMostForce ? row.limit : kMostForce;
      const double heavy = f + kMoreWeight * proof.weight(more.first);
      return f >= (row.two_way ? -most : 0) && f <= most && heavy <= most && heavy >= (row.two_way ? -most : 0);
    });
  }
  bool person(const LoadCase& load, const Proof::Person* old, std::unique_ptr<Part>& part) {
    if (!part) {
      std::vector<char> in = carriers_of({load.timber});
      part = part_of(std::move(in));
    }
    // Most loads are held without the help of any weight: what holds them then holds whatever else changes.
    RowForces f = RowForces::Zero(proof.weight.size());
    const bool helped = old != nullptr && !old->alone;
    if (!helped && person_alone(*part, load, f)) {
      keep_person(load, f, true);
      if (still(proof.persons.back(), false)) return true;
      proof.persons.pop_back();
    }
    f = proof.weight;
    for (std::size_t i = 0; helped && i < old->more->size(); ++i)
      if (row_in[at((*old->more)[i].first)] != 0) f((*old->more)[i].first) += (*old->more)[i].second;
    if (!solve_part(*part, load, 1, f)) {
      f = proof.weight;
      if (!solve_all(load, 1, f)) return false;
    }
    if (!heavy_case(load, f)) return false;
    keep_person(load, f - proof.weight, false);
    return true;
  }
  void keep_person(const LoadCase& load, const RowForces& more, bool alone) {
    auto rows = std::make_shared<std::vector<std::pair<int, double>>>();
    for (const int r : set.rows)
      if (more(r) != 0) rows->emplace_back(r, more(r));
    proof.persons.push_back({load, std::move(rows), alone, more.lpNorm<Eigen::Infinity>() < kMostForce / 2});
  }
  /// Forces for the person's weight alone.
  bool person_alone(Part& part, const LoadCase& load, RowForces& f) const {
    const CaseLoads loads = case_loads(model, part.system.bodies, load);
    Eigen::VectorXd own = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(part.system.rows.size()));
    part.motion = Loads();
    if (part.balance->solve(loads.scaled, own, part.motion, kAloneRounds) != Found::kForces) return false;
    for (std::size_t i = 0; i < part.system.rows.size(); ++i)
      f(part.system.rows[i]) = own(static_cast<Eigen::Index>(i));
    return true;
  }
  bool persons(const Proof* was) {
    std::unique_ptr<Part> part;
    int part_timber = -1;
    std::size_t next = 0;
    // Far from the limit that every row has, what is alone within its half is within it with the weight too.
    limits = limits || 1.3 * proof.weight.lpNorm<Eigen::Infinity>() > kMostForce / 2;
    const bool gone =
        was != nullptr && !std::includes(set.rows.begin(), set.rows.end(), was->set.rows.begin(), was->set.rows.end());
    for (const LoadCase& load : load_cases(model, set)) {
      if (load.kind != LoadKind::kPerson || load.heavy) continue;
      const Proof::Person* old = nullptr;
      // Both lists are in order of timbers.
      while (was != nullptr && next < was->persons.size() && was->persons[next].load.timber < load.timber) ++next;
      for (std::size_t i = next; was != nullptr && i < was->persons.size(); ++i) {
        if (was->persons[i].load.timber != load.timber) break;
        if (was->persons[i].load == load) old = &was->persons[i];
      }
      if (old != nullptr && still(*old, gone)) {
        proof.persons.push_back(*old);
        continue;
      }
      if (part_timber != load.timber) part.reset();
      part_timber = load.timber;
      if (!person(load, old, part)) return false;
    }
    return true;
  }
};

ForceVerdict Prover::judge(const StandingSet& set) {
  const Proof* was = nullptr;
  std::size_t least = kNear;
  for (const Proof& proof : proofs_) {
    const std::size_t d = differ(proof.set.timbers, set.timbers) + differ(proof.set.rows, set.rows) / 6;
    if (d > least) continue;
    least = d;
    was = &proof;
  }
  Work work(model_, set);
  if (work.pushes(was) && work.persons(was)) {
    if (proofs_.size() == kKept) proofs_.erase(proofs_.begin());
    proofs_.push_back(std::move(work.proof));
  }
  return work.verdict;
}

}  // namespace bentbook
