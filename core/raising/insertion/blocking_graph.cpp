#include "raising/insertion/blocking_graph.h"

#include <algorithm>
#include <array>

#include "numeric/sorting.h"
#include "raising/limits.h"

namespace bentbook {
namespace {

constexpr std::array<Vec3, 6> kAxes = {Vec3{0, 0, -1}, Vec3{1, 0, 0},  Vec3{-1, 0, 0},
                                       Vec3{0, 1, 0},  Vec3{0, -1, 0}, Vec3{0, 0, 1}};

std::uint64_t key_of(int timber, int way, int slide, int reach, bool far) {
  const auto part = [](int value) { return static_cast<std::uint64_t>(value) + 1; };
  return part(timber) << 40U | part(way) << 24U | part(slide) << 8U | part(reach) << 2U | (far ? 1U : 0U);
}

}  // namespace

EntryCase case_of(const Blocking::Graph& in, std::span<const int> coming, std::span<const int> standing) {
  EntryCase made;
  made.against.assign(in.words, 0);
  const auto real = [&](int t) {
    return t >= 0 && t < in.count && in.frame.timbers[static_cast<std::size_t>(t)].placed;
  };
  for (const int t : standing)
    if (real(t)) set_bit(made.against, t);
  for (const int t : coming)
    if (real(t) && !has_bit(made.against, t)) made.coming.push_back(t);
  sort_up(made.coming);
  made.coming.erase(std::unique(made.coming.begin(), made.coming.end()), made.coming.end());
  made.standing = listed(made.against, in.count);
  return made;
}

Blocking::Graph::Graph(const Frame& given) : frame(given) {
  count = static_cast<int>(frame.timbers.size());
  words = static_cast<std::size_t>(count) / 64 + 1;
  bodies.resize(frame.timbers.size());
  made.assign(frame.timbers.size(), 0);
  joints.resize(frame.timbers.size());
  for (std::size_t j = 0; j < frame.joints.size(); ++j) {
    joints[static_cast<std::size_t>(frame.joints[j].member)].push_back(static_cast<int>(j));
    joints[static_cast<std::size_t>(frame.joints[j].receiver)].push_back(static_cast<int>(j));
  }
  for (const Vec3& axis : kAxes) ways.push_back(axis);
  Vec3 lo{1e9, 1e9, 1e9}, hi{-1e9, -1e9, -1e9};
  bool any = false;
  for (int t = 0; t < count; ++t) {
    const MoveBody& b = body(t);
    if (b.cells.empty()) continue;
    any = true;
    lo = {std::min(lo.x, b.whole.lo.x), std::min(lo.y, b.whole.lo.y), std::min(lo.z, b.whole.lo.z)};
    hi = {std::max(hi.x, b.whole.hi.x), std::max(hi.y, b.whole.hi.y), std::max(hi.z, b.whole.hi.z)};
  }
  if (!any) lo = hi = {};
  ground = lo.z;
  far = 2 * norm(hi - lo) + 100;
}

const MoveBody& Blocking::Graph::body(int timber) {
  const auto t = static_cast<std::size_t>(timber);
  if (made[t] == 0) {
    made[t] = 1;
    if (frame.timbers[t].placed) bodies[t] = move_body_of(frame.timbers[t]);
  }
  return bodies[t];
}

int Blocking::Graph::way(Vec3 direction) {
  for (std::size_t i = 0; i < ways.size(); ++i)
    if (norm(ways[i] - direction) < 1e-7) return static_cast<int>(i);
  ways.push_back(direction);
  return static_cast<int>(ways.size()) - 1;
}

TimberBits Blocking::Graph::find_blockers(int timber, Vec3 from, Vec3 sweep) {
  TimberBits bits(words, 0);
  const MoveBody& own = body(timber);
  if (own.cells.empty()) return bits;
  for (int other = 0; other < count; ++other)
    if (other != timber && runs_into(own, from, sweep, body(other))) set_bit(bits, other);
  const double lowest = own.whole.lo.z + from.z + (sweep.z < 0 ? sweep.z : 0);
  if (lowest < ground - limits::kTouching) set_bit(bits, count);
  return bits;
}

const TimberBits& Blocking::Graph::slide_blockers(int timber, int way, int reach) {
  const auto [at, fresh] = kept.try_emplace(key_of(timber, way, -1, reach, false));
  if (fresh) at->second = find_blockers(timber, {}, -kSlides[reach] * ways[static_cast<std::size_t>(way)]);
  return at->second;
}

const TimberBits& Blocking::Graph::far_blockers(int timber, int way, int slide, int reach) {
  const auto [at, fresh] = kept.try_emplace(key_of(timber, way, slide, slide < 0 ? -1 : reach, true));
  if (fresh) {
    const Vec3 from = slide < 0 ? Vec3{} : -kSlides[reach] * ways[static_cast<std::size_t>(slide)];
    at->second = find_blockers(timber, from, -far * ways[static_cast<std::size_t>(way)]);
  }
  return at->second;
}

std::vector<int> Blocking::Graph::candidates(std::span<const int> coming) {
  std::vector<int> found{0};
  const auto add = [&](Vec3 direction) {
    const int w = way(direction);
    if (std::find(found.begin(), found.end(), w) == found.end()) found.push_back(w);
  };
  const auto comes = [&](int t) { return std::find(coming.begin(), coming.end(), t) != coming.end(); };
  for (const int t : coming)
    for (const int j : joints[static_cast<std::size_t>(t)]) {
      const Joint& joint = frame.joints[static_cast<std::size_t>(j)];
      if (comes(joint.member) == comes(joint.receiver)) continue;
      for (const Vec3& v : joint.ways) add(comes(joint.member) ? v : -1 * v);
    }
  for (const Vec3& axis : kAxes) add(axis);
  if (coming.size() == 1) {
    const Placement& at = frame.timbers[static_cast<std::size_t>(coming[0])].at;
    for (const Vec3& axis : {at.x, at.y, at.z}) {
      add(axis);
      add(-1 * axis);
    }
  }
  return found;
}

}  // namespace bentbook
