#include "raising/insertion/entry.h"

#include <algorithm>

#include "frame/facts.h"
#include "numeric/sorting.h"
#include "raising/insertion/springing.h"
#include "raising/insertion/straight_path.h"
#include "raising/order.h"

namespace bentbook {
namespace {

bool holds(const std::vector<int>& sorted, int t) { return std::binary_search(sorted.begin(), sorted.end(), t); }

std::vector<int> merged(const std::vector<int>& a, const std::vector<int>& b) {
  std::vector<int> all;
  std::set_union(a.begin(), a.end(), b.begin(), b.end(), std::back_inserter(all));
  return all;
}

EntryCase on_ground(const Blocking::Graph& in, std::span<const int> coming, std::span<const int> standing) {
  EntryCase entry = case_of(in, coming, standing);
  set_bit(entry.against, in.count);
  return entry;
}

/// Standing timbers which, left out, let it in, and which can come afterwards themselves.
void add_loose(Blocking::Graph& in, const EntryCase& entry, Entry& answer) {
  for (const int blocker : answer.blockers) {
    std::vector<int> rest = entry.standing;
    rest.erase(std::remove(rest.begin(), rest.end(), blocker), rest.end());
    if (!find_straight(in, on_ground(in, entry.coming, rest)).free) continue;
    const int later[] = {blocker};
    if (!find_straight(in, on_ground(in, later, merged(rest, entry.coming))).free) continue;
    answer.remedies.push_back({RemedyKind::kLeaveLoose, {blocker}, -1});
    return;
  }
}

/// The joints of what comes with what blocks it, if without their pockets' walls there would be a way.
void add_joints(const Blocking::Graph& in, const EntryCase& entry, Entry& answer) {
  for (const int t : entry.coming)
    for (const int j : in.joints[static_cast<std::size_t>(t)]) {
      const Joint& joint = in.frame.joints[static_cast<std::size_t>(j)];
      const int other = other_timber(joint, t);
      const bool interlocks = joint.beyond_shoulder > 0 || joint.past_face > 0 || joint.kind != JointKind::kHousedButt;
      if (holds(answer.blockers, other) && interlocks)
        answer.remedies.push_back({RemedyKind::kChangeJoint, {other}, j});
    }
}

void add_clashes(Blocking& blocking, const EntryCase& entry, Entry& answer) {
  Remedy apart{RemedyKind::kMoveApart, {}, -1};
  for (const int t : entry.coming)
    for (const int other : answer.blockers)
      if (blocking.clash(t, other) && !holds(apart.timbers, other)) {
        apart.timbers.push_back(other);
        sort_up(apart.timbers);
      }
  if (!apart.timbers.empty()) answer.remedies.insert(answer.remedies.begin(), apart);
}

/// With what blocks it and the standing braces there: only where all of that stands in one bent and can be put
/// together.
void add_with_bent(Blocking& blocking, const Blocking::Graph& in, const EntryCase& entry, Entry& answer) {
  const auto timber = [&](int t) -> const Timber& { return in.frame.timbers[static_cast<std::size_t>(t)]; };
  const int bent = timber(entry.coming[0]).place.bent;
  std::vector<int> all = merged(entry.coming, answer.blockers);
  if (all.size() == entry.coming.size()) return;
  for (const int t : all)
    if (!raised_with_bent(timber(t), bent)) return;
  for (const int t : entry.standing)
    if (timber(t).kind == TimberKind::kBrace && raised_with_bent(timber(t), bent)) all = merged(all, {t});
  if (blocking.assemble(all).possible) answer.remedies.push_back({RemedyKind::kWithBent, all, -1});
}

}  // namespace

Entry Blocking::entry(std::span<const int> coming, std::span<const int> standing, const EntryLimits& limits) {
  Entry answer;
  Graph& in = *graph_;
  const EntryCase entry = on_ground(in, coming, standing);
  if (entry.coming.empty()) {
    answer.free = true;
    return answer;
  }
  const PathFound found = find_straight(in, entry);
  answer.free = found.free;
  if (found.free) {
    answer.path = moves_of(in, found.path);
    return answer;
  }
  if (limits.springing) {
    answer.path = find_spread(in, entry, limits);
    if (answer.path.empty()) answer.path = find_swing(in, entry);
    answer.free = !answer.path.empty();
    if (answer.free) return answer;
  }
  answer.blockers = listed(found.best_blockers, in.count);
  answer.blocked = moves_of(in, found.best);
  answer.ground = has_bit(found.best_blockers, in.count);
  add_clashes(*this, entry, answer);
  add_with_bent(*this, in, entry, answer);
  add_loose(in, entry, answer);
  add_joints(in, entry, answer);
  return answer;
}

}  // namespace bentbook
