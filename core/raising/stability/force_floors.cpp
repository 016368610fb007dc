/// Margins from forces that are known: loads and forces grow together until a row comes to its bound.

#include <algorithm>
#include <utility>

#include "numeric/index.h"
#include "numeric/sorting.h"
#include "raising/limits.h"
#include "raising/stability/force_work.h"

namespace bentbook {
namespace {

using More = std::vector<std::pair<int, double>>;

/// Forces of a case, what is scaled by its factor apart.
struct Scaled {
  double weight = 1;  ///< times the proof's own forces for the weight
  More more;
};

/// How far they go.
double most_of(const StandingModel& model, const RowForces& weight, const Scaled& it) {
  double most = limits::kMostFactor;
  for (const auto& [r, more] : it.more) {
    const HoldRow& row = model.rows[at(r)];
    const double limit = row.limit > 0 && row.limit < limits::kMostForce ? row.limit : limits::kMostForce;
    const double own = it.weight * weight(r), bound = more > 0 ? limit : row.two_way ? -limit : 0;
    if (more != 0) most = std::min(most, (bound - own) / more);
  }
  return most;
}

/// The better of the holds on each side of a place, and their mean there.
More mean_at(const std::vector<std::pair<PersonHold, double>>& holds, double station) {
  const PersonHold *below = nullptr, *above = nullptr;
  double most_below = -1, most_above = -1;
  for (const auto& [hold, most] : holds) {
    if (hold.station <= station + kSamePlace && most > most_below) {
      below = &hold;
      most_below = most;
    }
    if (hold.station >= station - kSamePlace && most > most_above) {
      above = &hold;
      most_above = most;
    }
  }
  if (below == nullptr || above == nullptr) return {};
  const double apart = above->station - below->station;
  if (!(apart > kSamePlace)) return *below->more;
  const double share = std::clamp((station - below->station) / apart, 0.0, 1.0);
  More sum;
  for (const auto& [r, f] : *below->more) sum.emplace_back(r, (1 - share) * f);
  for (const auto& [r, f] : *above->more) sum.emplace_back(r, share * f);
  sort_by(sum, [](const auto& a, const auto& b) { return a.first < b.first; });
  More merged;
  for (const auto& [r, f] : sum) {
    if (!merged.empty() && merged.back().first == r)
      merged.back().second += f;
    else
      merged.emplace_back(r, f);
  }
  return merged;
}

}  // namespace

Floors Prover::floors() const {
  const std::shared_ptr<const Proof> proof = proofs_.back();
  const ForceParts parts(model_, proof->set);
  auto known = std::make_shared<std::vector<Scaled>>();
  const bool fits = heavy_fits(model_, *proof);
  Floors floors;
  for (const LoadCase& load : load_cases(model_, proof->set)) {
    Scaled scaled;
    scaled.weight = load.heavy ? 1 + kMoreWeight : 1;
    if (load.kind == LoadKind::kPush) {
      const RowForces& push = proof->push[at(load.direction)];
      for (const int r : proof->set.rows) scaled.more.emplace_back(r, push(r) - proof->weight(r));
    } else {
      std::vector<std::pair<PersonHold, double>> holds;
      for (const PersonHold& hold : persons_[at(load.timber)].holds) {
        const bool stands = std::all_of(hold.more->begin(), hold.more->end(),
                                        [&](const auto& more) { return parts.has_row(more.first); });
        if (stands) holds.emplace_back(hold, most_of(model_, proof->weight, {scaled.weight, *hold.more}));
      }
      scaled.more = mean_at(holds, person_station(model_, load));
    }
    // That they hold at 1 is known, if by other forces than these.
    const bool known_more = !scaled.more.empty() && (fits || !load.heavy);
    floors.factor.push_back(known_more ? std::max(1.0, most_of(model_, proof->weight, scaled)) : 1.0);
    known->push_back(std::move(scaled));
  }
  floors.forces_about = [proof, known](std::size_t i, double factor) {
    const Scaled& scaled = (*known)[i];
    RowForces f = scaled.weight * proof->weight;
    for (const auto& [r, more] : scaled.more) f(r) += factor * more;
    return f;
  };
  return floors;
}

ForceVerdict Prover::worst(const StandingSet& set) {
  if (!judge(set).holds) return worst_case(model_, set);
  const Floors known = floors();
  return worst_case(model_, set, &known);
}

}  // namespace bentbook
