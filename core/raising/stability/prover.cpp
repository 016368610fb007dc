#include "raising/stability/prover.h"

#include <algorithm>
#include <utility>

#include "numeric/index.h"
#include "numeric/sorting.h"
#include "raising/limits.h"
#include "raising/stability/force_judgement.h"
#include "raising/stability/force_persons.h"

namespace bentbook {
namespace {

// Source: SOURCES.md, "search effort".
constexpr std::size_t kNear = 24;         ///< timbers and rows that differ, at most, for a proof to be of use
constexpr std::size_t kKept = 3'000'000;  ///< forces in all proofs that are kept: 24 MB

/// Numbers that only one of the lists has; not counted beyond `most`.
std::size_t differ(const std::vector<int>& a, const std::vector<int>& b, std::size_t most) {
  std::size_t count = 0;
  for (std::size_t i = 0, j = 0; (i < a.size() || j < b.size()) && count <= most;) {
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

std::size_t size_of(const Proof& proof) { return 9 * static_cast<std::size_t>(proof.weight.size()); }

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
    if (hold.station <= station + kSameStation && most > most_below) {
      below = &hold;
      most_below = most;
    }
    if (hold.station >= station - kSameStation && most > most_above) {
      above = &hold;
      most_above = most;
    }
  }
  if (below == nullptr || above == nullptr) return {};
  const double apart = above->station - below->station;
  if (!(apart > kSameStation)) return *below->more;
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

ForceVerdict Prover::judge(const StandingSet& set) {
  std::shared_ptr<const Proof> was;
  std::size_t least = kNear;
  for (const std::shared_ptr<const Proof>& proof : proofs_) {
    const std::size_t timbers = differ(proof->set.timbers, set.timbers, least);
    if (timbers > least) continue;
    const std::size_t rows = differ(proof->set.rows, set.rows, 6 * (least - timbers + 1)) / 6;
    if (timbers + rows > least) continue;
    least = timbers + rows;
    was = proof;
  }
  ForceJudgement work(model_, set);
  if (work.pushes(was.get()) && work.persons(persons_)) keep(std::make_shared<Proof>(work.take_proof()));
  return work.verdict();
}

void Prover::keep(std::shared_ptr<const Proof> proof) {
  proofs_.push_back(std::move(proof));
  std::size_t sum = 0;
  for (std::size_t i = proofs_.size(); i-- > 0;) {
    sum += size_of(*proofs_[i]);
    if (sum <= kKept || i + 1 == proofs_.size()) continue;
    proofs_.erase(proofs_.begin(), proofs_.begin() + static_cast<std::ptrdiff_t>(i + 1));
    return;
  }
}

// Margins from forces that are known: loads and forces grow together until a row comes to its bound.

MarginFloors Prover::floors() const {
  const std::shared_ptr<const Proof> proof = proofs_.back();
  const ForceParts parts(model_, proof->set);
  auto known = std::make_shared<std::vector<Scaled>>();
  const bool fits = heavy_fits(model_, *proof);
  MarginFloors floors;
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
  const MarginFloors known = floors();
  return worst_case(model_, set, &known);
}

}  // namespace bentbook
