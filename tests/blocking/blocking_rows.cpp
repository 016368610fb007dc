/// Writes frames and what the blocking graph says of them as text for tests/blocking/check.mjs.
///   blocking_rows CASES SEED
/// case free|blocked, coming and standing timbers, the moves (for a blocked one those of the way with the fewest in
/// it, and who they are): at least CASES of either. pair: one timber against another along one line.

#include <cstdlib>

#include "frame/placing/solve_frame.h"
#include "raising/insertion/assemblies.h"
#include "raising/insertion/blocking.h"
#include "solid_rows.h"

using namespace bentbook;

namespace {

void write_list(const char* name, const std::vector<int>& list) {
  std::printf("%s", name);
  for (const int t : list) std::printf(" %d", t);
  std::printf("\n");
}

void write_moves(const std::vector<Move>& moves) {
  for (const Move& m : moves) {
    std::printf("move %d %.17g %.17g %.17g %.17g %.17g %.17g %.17g", static_cast<int>(m.kind), m.direction.x,
                m.direction.y, m.direction.z, m.distance, m.pivot.x, m.pivot.y, m.pivot.z);
    for (const int t : m.who) std::printf(" %d", t);
    std::printf("\n");
  }
}

std::vector<int> neighbours(const Frame& frame, const std::vector<int>& coming) {
  std::vector<int> found;
  const auto has = [](const std::vector<int>& list, int t) {
    return std::find(list.begin(), list.end(), t) != list.end();
  };
  for (const Joint& j : frame.joints)
    for (const int t : {j.member, j.receiver}) {
      const int other = t == j.member ? j.receiver : j.member;
      if (has(coming, t) && !has(coming, other) && !has(found, other)) found.push_back(other);
    }
  return found;
}

struct Counts {
  int free = 0, blocked = 0, pairs = 0, special = 0;
};

void write_case(Random& random, const Frame& frame, Blocking& blocking, const std::vector<std::vector<int>>& bents,
                Counts& counts) {
  const auto any = [&](std::size_t n) { return static_cast<int>(random.whole(0, static_cast<std::int64_t>(n) - 1)); };
  std::vector<int> coming{any(frame.timbers.size())};
  if (!bents.empty() && chance(random, 25)) coming = bents[static_cast<std::size_t>(any(bents.size()))];
  std::vector<int> standing;
  for (const int t : neighbours(frame, coming))
    if (chance(random, 60)) standing.push_back(t);
  for (std::size_t t = 0; t < frame.timbers.size(); ++t) {
    const int i = static_cast<int>(t);
    const bool in = std::find(coming.begin(), coming.end(), i) != coming.end() ||
                    std::find(standing.begin(), standing.end(), i) != standing.end();
    if (!in && chance(random, 30)) standing.push_back(i);
  }
  if (standing.empty()) return;
  const Entry entry = blocking.entry(coming, standing);
  if (!entry.free && entry.blockers.empty()) return;  // the ground alone
  const bool special = entry.free && entry.path.back().kind != MoveKind::kLower;
  // Coming straight down is the common case: of those but a few are written.
  if (entry.free && !special && chance(random, 80)) return;
  (entry.free ? counts.free : counts.blocked) += 1;
  counts.special += special ? 1 : 0;
  std::printf("case %s\n", entry.free ? "free" : "blocked");
  write_list("coming", coming);
  write_list("standing", standing);
  write_list("blockers", entry.blockers);
  write_moves(entry.free ? entry.path : entry.blocked);
  std::printf("judge\n");
}

void write_pair(Random& random, const Frame& frame, Blocking& blocking, Counts& counts) {
  if (frame.joints.empty()) return;
  const Joint& j =
      frame.joints[static_cast<std::size_t>(random.whole(0, static_cast<std::int64_t>(frame.joints.size()) - 1))];
  if (!frame.timbers[static_cast<std::size_t>(j.member)].placed) return;
  Vec3 d = frame.timbers[static_cast<std::size_t>(j.member)].at.x;
  switch (random.whole(0, 3)) {
    case 0:
      if (j.ways.count > 0) d = j.ways[static_cast<int>(random.whole(0, j.ways.count - 1))];
      break;
    case 1:
      d = -1 * d;
      break;
    case 2:
      d = {0, 0, chance(random, 70) ? -1.0 : 1.0};
      break;
    default:
      d = chance(random, 50) ? Vec3{chance(random, 50) ? 1.0 : -1.0, 0, 0}
                             : Vec3{0, chance(random, 50) ? 1.0 : -1.0, 0};
  }
  const double distance = static_cast<double>(random.whole(2, 60));
  const bool hits = runs_into(blocking.body(j.member), {}, -distance * d, blocking.body(j.receiver));
  std::printf("pair %d %d %.17g %.17g %.17g %.17g %d\n", j.member, j.receiver, d.x, d.y, d.z, distance, hits ? 1 : 0);
  ++counts.pairs;
}

}  // namespace

int main(int argc, char** argv) try {
  if (argc < 3) return 2;
  const int cases = std::atoi(argv[1]);
  Random random(std::strtoull(argv[2], nullptr, 10));
  Counts counts;
  for (int number = 0; counts.free < cases || counts.blocked < cases;) {
    const auto frame = solve_frame(plan_to_check(random));
    if (!frame || clashes(*frame)) continue;
    std::printf("plan %d\n", number++);
    for (const Timber& t : frame->timbers) write_timber(t);
    Blocking blocking(*frame);
    std::vector<std::vector<int>> bents;
    for (const Assembly& a : propose_assemblies(*frame, blocking)) {
      bents.emplace_back();
      for (const std::string& mark : a.marks) bents.back().push_back(timber_by_mark(*frame, mark));
    }
    for (int i = 0; i < 10; ++i) write_case(random, *frame, blocking, bents, counts);
    for (int i = 0; i < 10; ++i) write_pair(random, *frame, blocking, counts);
    std::printf("end\n");
  }
  std::printf("drawn %d %d %d\n", counts.free, counts.blocked, counts.special);
  return 0;
} catch (...) {
  return 1;
}
