#include "raising/search/crew_braces.h"

#include <algorithm>

#include "numeric/index.h"
#include "numeric/sorting.h"
#include "raising/stability/mechanism.h"

namespace bentbook {
namespace {

std::vector<int> without(const std::vector<int>& all, int one) {
  std::vector<int> left = all;
  std::erase(left, one);
  return left;
}

void insert(std::vector<int>& in_order, int value) {
  in_order.insert(std::lower_bound(in_order.begin(), in_order.end(), value), value);
}

Vec3 speed(const StandingModel& model, const TimberMotion& m, int timber, Vec3 p) {
  return m.move + cross(m.turn, p - model.bodies[at(timber)].cg);
}

}  // namespace

CrewBraces::CrewBraces(StandingModel& model, const Frame& frame, StandingRun& run)
    : model_(model), frame_(frame), run_(run), rigid_(rigid_joints(model)) {
  for (const Temporary& place : crew_places(frame)) places_.push_back(add_temporary(model_, frame_, place));
}

bool CrewBraces::stands(const std::vector<int>& timbers, const std::vector<int>& up) {
  return run_.rigid(timbers, up) && run_.stands(timbers, up);
}

CrewBraces::Motions CrewBraces::motions(const std::vector<int>& timbers, const std::vector<int>& up) {
  Mechanisms found = mechanisms_of(model_, standing_set(model_, timbers, up), rigid_, true);
  if (found.count > 0) return std::move(found.modes);
  const StandingCheck check = run_.check(timbers, up, StandingDepth::kStands);
  if (check.stands()) return {};
  return {check.fall};
}

int CrewBraces::best(const std::vector<int>& timbers, const Motions& motions, const std::vector<int>& up) const {
  const std::size_t n = frame_.timbers.size();
  std::vector<char> in(n, 0);
  for (const int t : timbers) in[at(t)] = 1;
  std::vector<std::vector<TimberMotion>> by(motions.size(), std::vector<TimberMotion>(n));
  std::vector<double> size(motions.size(), 0);
  for (std::size_t k = 0; k < motions.size(); ++k)
    for (const TimberMotion& m : motions[k]) {
      by[k][at(m.timber)] = m;
      const StandingBody& body = model_.bodies[at(m.timber)];
      for (const Vec3& p : {body.end_a, body.end_b}) size[k] = std::max(size[k], norm(speed(model_, m, m.timber, p)));
    }
  int found = -1;
  double most = 1e-4;
  for (const int c : places_) {
    const int r = model_.temporary_row[at(c)];
    if (r < 0 || std::binary_search(up.begin(), up.end(), c)) continue;
    const HoldRow& row = model_.rows[at(r)];
    if (in[at(row.a)] == 0 || (row.b >= 0 && in[at(row.b)] == 0)) continue;
    double sum = 0;
    for (std::size_t k = 0; k < motions.size(); ++k) {
      if (!(size[k] > 0)) continue;
      Vec3 opens = speed(model_, by[k][at(row.a)], row.a, row.point);
      if (row.b >= 0) opens = opens - speed(model_, by[k][at(row.b)], row.b, row.point);
      const double rate = dot(row.direction, opens) / size[k];
      sum += rate * rate;
    }
    // Rather thin stock, rather between timbers than to a stake, and a second one rather on another timber.
    const bool thick = model_.temporaries[at(c)].thickness.in() > 2;
    const bool beside = std::any_of(up.begin(), up.end(), [&](int o) {
      const int other = model_.temporary_row[at(o)];
      return other >= 0 && model_.rows[at(other)].a == row.a;
    });
    const double score = libm::sqrt(sum) * (thick ? 0.9 : 1) * (row.b >= 0 ? 0.95 : 1) * (beside ? 0.8 : 1);
    if (score > most * 1.000001) {
      most = score;
      found = c;
    }
  }
  return found;
}

void CrewBraces::drop_needless(const std::vector<int>& timbers, std::vector<int>& up, std::vector<int>& added) {
  for (std::size_t i = added.size(); i-- > 0;) {
    std::vector<int> less = without(up, added[i]);
    if (!stands(timbers, less)) continue;
    up = std::move(less);
    added.erase(added.begin() + static_cast<std::ptrdiff_t>(i));
  }
}

std::vector<int> CrewBraces::against(std::span<const int> timbers, std::span<const int> up, bool spare, int most) {
  const std::vector<int> set(timbers.begin(), timbers.end());
  std::vector<int> now(up.begin(), up.end()), added;
  const auto add_against = [&](const Motions& moves) {
    const int c = static_cast<int>(added.size()) < most ? best(set, moves, now) : -1;
    if (c < 0) return false;
    insert(now, c);
    added.push_back(c);
    return true;
  };
  for (Motions moves = motions(set, now); !moves.empty(); moves = motions(set, now))
    if (!add_against(moves)) return {};
  drop_needless(set, now, added);
  // One more brace takes nothing from what the others do, so each is left out once; and what is added for it can be
  // left out in its turn.
  for (const int one : spare ? std::vector<int>(now) : std::vector<int>())
    for (Motions moves = motions(set, without(now, one)); !moves.empty(); moves = motions(set, without(now, one)))
      if (!add_against(moves)) return {};
  sort_up(added);
  return added;
}

}  // namespace bentbook
