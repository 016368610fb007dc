#include "raising/stability/force_persons.h"

#include <algorithm>
#include <utility>

#include "numeric/index.h"
#include "raising/limits.h"
#include "raising/stability/force_judgement.h"

namespace bentbook {
namespace {

constexpr int kAloneRounds = 14;
constexpr int kHelpedRounds = 30;
constexpr std::size_t kHolds = 8;   ///< kept, by timber
constexpr double kHelp = 0.5;       ///< share of the weight's forces that may be counted on: they change a little
constexpr std::size_t kParts = 24;  ///< kept, of one set

/// FNV-1a over a place and rows. Source: SOURCES.md, "hashing".
std::uint64_t question(double station, const std::vector<int>& rows) {
  std::uint64_t hash = 0xcbf29ce484222325;
  const auto add = [&](std::uint64_t value) { hash = (hash ^ value) * 0x100000001b3; };
  add(static_cast<std::uint64_t>(static_cast<std::int64_t>(libm::floor(station / kSameStation + 0.5))));
  for (const int r : rows) add(static_cast<std::uint64_t>(r));
  return hash;
}

}  // namespace

double person_station(const StandingModel& model, const LoadCase& load) {
  constexpr double kPlumb = 1e-6;
  const Vec3& axis = model.axis[at(load.timber)];
  if (norm(cross(axis, Vec3{0, 0, 1})) < kPlumb) return 0;
  return dot(load.point - model.bodies[at(load.timber)].end_a, axis);
}

bool heavy_fits(const StandingModel& model, const Proof& proof) {
  return std::all_of(proof.set.rows.begin(), proof.set.rows.end(), [&](int r) {
    const double limit = model.rows[at(r)].limit;
    return libm::fabs((1 + kMoreWeight) * proof.weight(r)) <=
           (limit > 0 && limit < limits::kMostForce ? limit : limits::kMostForce);
  });
}

/// Whether its rows stand and are within their bounds with the weight's forces, light and heavy.
bool ForceJudgement::still_holds(const PersonHold& hold) const {
  return std::all_of(hold.more->begin(), hold.more->end(), [&](const std::pair<int, double>& more) {
    if (!parts_.has_row(more.first)) return false;
    const HoldRow& row = model_.rows[at(more.first)];
    const double weight = proof_.weight(more.first), light = weight + more.second;
    const double heavy = light + kMoreWeight * weight;
    const double most = row.limit > 0 && row.limit < limits::kMostForce ? row.limit : limits::kMostForce;
    const double least = row.two_way ? -most : 0;
    return light >= least && light <= most && heavy >= least && heavy <= most;
  });
}

/// Whether holds (all of which are still good) lie on both sides of a place.
bool ForceJudgement::covered(const std::vector<PersonHold>& holds, double station) const {
  bool below = false, above = false;
  for (const PersonHold& hold : holds) {
    below = below || hold.station <= station + kSameStation;
    above = above || hold.station >= station - kSameStation;
  }
  return below && above;
}

bool ForceJudgement::persons(std::vector<PersonKnown>& all) {
  // Where the heavy weight alone is too much for some row, other forces hold it, and what is known says nothing of
  // them.
  heavy_fits_ = heavy_fits(model_, proof_);
  int timber = -1;
  std::vector<PersonHold> good;
  for (const LoadCase& load : load_cases(model_, set_)) {
    if (load.kind != LoadKind::kPerson || load.heavy) continue;
    PersonKnown& known = all[at(load.timber)];
    if (load.timber != timber) {
      timber = load.timber;
      good.clear();
      for (const PersonHold& hold : known.holds)
        if (still_holds(hold)) good.push_back(hold);
    }
    const double station = person_station(model_, load);
    if (heavy_fits_ && covered(good, station)) continue;
    if (!person(load, station, known)) return false;
    good.push_back(known.holds.back());
  }
  return true;
}

ForcePart& ForceJudgement::part_for(const std::vector<char>& in, bool temporaries) {
  for (const auto& [whose, part] : person_parts_)
    if (whose == temporaries && part->in == in) return *part;
  if (person_parts_.size() == kParts) person_parts_.erase(person_parts_.begin());
  person_parts_.emplace_back(temporaries, parts_.part_of(in, temporaries));
  return *person_parts_.back().second;
}

bool ForceJudgement::person(const LoadCase& load, double station, PersonKnown& known) {
  const auto keep_if_good = [&](const RowForces& more) {
    keep_person(station, more, known);
    if (still_holds(known.holds.back()) && (heavy_fits_ || heavy_case(load, proof_.weight + more))) return true;
    known.holds.pop_back();
    return false;
  };
  RowForces more;
  // Most loads are held by the joints near them, without the help of temporaries or of any weight: what holds them then
  // holds whatever else changes. Next to what bears the load stands what keeps that upright.
  const std::vector<char> near = parts_.carriers_at(load.timber, station), beside = parts_.grown(near);
  // What failed is asked again when other joints stand next to it.
  const std::uint64_t asked = question(station, parts_.joints_beside(load.timber));
  const bool in_vain = std::find(known.not_alone.begin(), known.not_alone.end(), asked) != known.not_alone.end();
  for (const std::vector<char>* in : {&near, &beside}) {
    if (in_vain || (in == &beside && near == beside)) continue;
    if (person_beside(part_for(*in, false), load, 0, nullptr, more) && keep_if_good(more)) return true;
  }
  if (!in_vain) {
    if (known.not_alone.size() == kHolds) known.not_alone.erase(known.not_alone.begin());
    known.not_alone.push_back(asked);
  }
  const PersonHold* old = nullptr;
  for (const PersonHold& hold : known.holds)
    if (old == nullptr || libm::fabs(hold.station - station) <= libm::fabs(old->station - station)) old = &hold;
  if (person_beside(part_for(beside, true), load, kHelp, old, more) && keep_if_good(more)) return true;
  RowForces f = proof_.weight;
  if (!solve_part(part_for(parts_.carriers_of({load.timber}, Reach::kAll), true), load, 1, f)) {
    f = proof_.weight;
    if (!solve_all(load, 1, f)) return false;
  }
  if (!heavy_case(load, f)) return false;
  keep_person(station, f - proof_.weight, known);
  return true;
}

/// Forces for the person's weight alone, with that share of the weight's forces as the most that may be let go, near to
/// those of `old`.
bool ForceJudgement::person_beside(ForcePart& part, const LoadCase& load, double share, const PersonHold* old,
                                   RowForces& more) const {
  const std::vector<int>& rows = part.system.rows;
  const auto n = static_cast<Eigen::Index>(rows.size());
  Eigen::VectorXd help(n);
  for (Eigen::Index i = 0; i < n; ++i) help(i) = share * proof_.weight(rows[static_cast<std::size_t>(i)]);
  Eigen::VectorXd own = help;
  for (std::size_t k = 0; old != nullptr && k < old->more->size(); ++k) {
    const auto& [row, force] = (*old->more)[k];
    const auto found = std::lower_bound(rows.begin(), rows.end(), row);
    if (found != rows.end() && *found == row) own(found - rows.begin()) += force;
  }
  MotionVector motion;
  const Loads needed = case_loads(model_, part.system.bodies, load).scaled + part.system.effect(help);
  part.solver->set_soft(std::vector<double>(rows.size(), 1));
  if (part.solver->solve(needed, own, motion, share > 0 ? kHelpedRounds : kAloneRounds) != Feasibility::kFeasible)
    return false;
  more = RowForces::Zero(proof_.weight.size());
  for (Eigen::Index i = 0; i < n; ++i) more(rows[static_cast<std::size_t>(i)]) = own(i) - help(i);
  return true;
}

void ForceJudgement::keep_person(double station, const RowForces& more, PersonKnown& known) const {
  auto rows = std::make_shared<std::vector<std::pair<int, double>>>();
  for (const int r : set_.rows)
    if (more(r) != 0) rows->emplace_back(r, more(r));
  if (known.holds.size() == kHolds) known.holds.erase(known.holds.begin());
  known.holds.push_back({station, std::move(rows)});
}

}  // namespace bentbook
