#include "raising/insertion/blocking.h"

#include <algorithm>
#include <array>

#include "numeric/sorting.h"
#include "raising/insertion/blocking_inside.h"
#include "raising/limits.h"

namespace bentbook {
namespace {

constexpr Vec3 kDown{0, 0, -1};
constexpr std::array<Vec3, 6> kAxes = {Vec3{0, 0, -1}, Vec3{1, 0, 0},  Vec3{-1, 0, 0},
                                       Vec3{0, 1, 0},  Vec3{0, -1, 0}, Vec3{0, 0, 1}};

std::uint64_t key_of(int timber, int way, int slide, int reach, bool far) {
  const auto part = [](int value) { return static_cast<std::uint64_t>(value) + 1; };
  return part(timber) << 40U | part(way) << 24U | part(slide) << 8U | part(reach) << 2U | (far ? 1U : 0U);
}

}  // namespace

EntryCase case_of(const Blocking::Inside& in, std::span<const int> coming, std::span<const int> standing) {
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

Blocking::Inside::Inside(const Frame& given) : frame(given) {
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

const MoveBody& Blocking::Inside::body(int timber) {
  const auto t = static_cast<std::size_t>(timber);
  if (made[t] == 0) {
    made[t] = 1;
    if (frame.timbers[t].placed) bodies[t] = move_body_of(frame.timbers[t]);
  }
  return bodies[t];
}

int Blocking::Inside::way(Vec3 direction) {
  for (std::size_t i = 0; i < ways.size(); ++i)
    if (norm(ways[i] - direction) < 1e-7) return static_cast<int>(i);
  ways.push_back(direction);
  return static_cast<int>(ways.size()) - 1;
}

TimberBits Blocking::Inside::find_blockers(int timber, Vec3 from, Vec3 sweep) {
  TimberBits bits(words, 0);
  const MoveBody& own = body(timber);
  if (own.cells.empty()) return bits;
  for (int other = 0; other < count; ++other)
    if (other != timber && runs_into(own, from, sweep, body(other))) set_bit(bits, other);
  const double lowest = own.whole.lo.z + from.z + (sweep.z < 0 ? sweep.z : 0);
  if (lowest < ground - limits::kTouching) set_bit(bits, count);
  return bits;
}

const TimberBits& Blocking::Inside::slide_blockers(int timber, int way, int reach) {
  const auto [at, fresh] = kept.try_emplace(key_of(timber, way, -1, reach, false));
  if (fresh) at->second = find_blockers(timber, {}, -kSlides[reach] * ways[static_cast<std::size_t>(way)]);
  return at->second;
}

const TimberBits& Blocking::Inside::far_blockers(int timber, int way, int slide, int reach) {
  const auto [at, fresh] = kept.try_emplace(key_of(timber, way, slide, slide < 0 ? -1 : reach, true));
  if (fresh) {
    const Vec3 from = slide < 0 ? Vec3{} : -kSlides[reach] * ways[static_cast<std::size_t>(slide)];
    at->second = find_blockers(timber, from, -far * ways[static_cast<std::size_t>(way)]);
  }
  return at->second;
}

std::vector<int> Blocking::Inside::candidates(std::span<const int> coming) {
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

namespace {

/// One search for a straight path.
class Straight {
 public:
  Straight(Blocking::Inside& in, const EntryCase& entry) : in_(in), entry_(entry) {}

  PathFound find() {
    const std::vector<int> ways = in_.candidates(entry_.coming);
    if (tried({0, -1, 0})) return found_;
    for (const int slide : ways)
      if (tried_slides(slide, {&ways[0], 1})) return found_;
    for (const int far : ways)
      if (far != 0 && tried({far, -1, 0})) return found_;
    for (const int slide : ways)
      if (tried_slides(slide, {ways.data() + 1, ways.size() - 1})) return found_;
    return found_;
  }

 private:
  /// Whether it is free; else remembers it where fewer are in the way than in all before.
  bool tried(const StraightPath& path) {
    TimberBits in_way(in_.words, 0);
    for (const int t : entry_.coming) {
      gather(in_way, in_.far_blockers(t, path.far, path.slide, path.reach));
      if (path.slide >= 0) gather(in_way, in_.slide_blockers(t, path.slide, path.reach));
    }
    return weighed(path, in_way);
  }
  bool tried_slides(int slide, std::span<const int> fars) {
    for (int reach = 0; reach < kSlideCount; ++reach) {
      TimberBits in_way(in_.words, 0);
      for (const int t : entry_.coming) gather(in_way, in_.slide_blockers(t, slide, reach));
      if (count_of(in_way) > 0) return false;
      for (const int far : fars)
        if (far != slide && tried({far, slide, reach})) return true;
    }
    return false;
  }
  bool weighed(const StraightPath& path, const TimberBits& in_way) {
    const int many = count_of(in_way);
    if (many == 0) {
      found_.free = true;
      found_.path = path;
    } else if (fewest_ < 0 || many < fewest_) {
      fewest_ = many;
      found_.best = path;
      found_.best_blockers = in_way;
    }
    return many == 0;
  }
  void gather(TimberBits& into, const TimberBits& from) const {
    for (std::size_t w = 0; w < into.size(); ++w) into[w] |= from[w] & entry_.against[w];
  }
  static int count_of(const TimberBits& bits) {
    int many = 0;
    for (const std::uint64_t word : bits) many += __builtin_popcountll(word);
    return many;
  }

  Blocking::Inside& in_;
  const EntryCase& entry_;
  PathFound found_;
  int fewest_ = -1;
};

}  // namespace

PathFound find_straight(Blocking::Inside& in, const EntryCase& entry) { return Straight(in, entry).find(); }

std::vector<Move> moves_of(const Blocking::Inside& in, const StraightPath& path) {
  std::vector<Move> moves;
  const auto add = [&](int way, double distance) {
    Move move;
    move.direction = in.ways[static_cast<std::size_t>(way)];
    move.kind = distance == in.far && dot(move.direction, kDown) > 1 - 1e-9 ? MoveKind::kLower : MoveKind::kSlide;
    move.distance = distance;
    moves.push_back(move);
  };
  add(path.far, in.far);
  if (path.slide >= 0) add(path.slide, kSlides[path.reach]);
  return moves;
}

Blocking::Blocking(const Frame& frame) : inside_(std::make_unique<Inside>(frame)) {}
Blocking::~Blocking() = default;
Blocking::Blocking(Blocking&&) noexcept = default;
Blocking& Blocking::operator=(Blocking&&) noexcept = default;

int Blocking::count() const { return inside_->count; }
const MoveBody& Blocking::body(int timber) { return inside_->body(timber); }
bool Blocking::clash(int a, int b) {
  return a != b && has_bit(inside_->slide_blockers(a, 0, 0), b) && runs_into(body(a), {}, {}, body(b));
}

bool Blocking::straight(std::span<const int> coming, std::span<const int> standing) {
  EntryCase entry = case_of(*inside_, coming, standing);
  set_bit(entry.against, inside_->count);
  return entry.coming.empty() || find_straight(*inside_, entry).free;
}

bool Blocking::clear_way(std::span<const int> coming, std::span<const int> standing, std::vector<int>& in_it) {
  Inside& in = *inside_;
  in_it.clear();
  EntryCase entry = case_of(in, coming, standing);
  set_bit(entry.against, in.count);
  if (entry.coming.empty()) return true;
  const PathFound found = find_straight(in, entry);
  if (!found.free) return false;
  TimberBits all(in.words, 0);
  const StraightPath& path = found.path;
  const auto gather = [&all](const TimberBits& bits) {
    for (std::size_t w = 0; w < all.size(); ++w) all[w] |= bits[w];
  };
  for (const int t : entry.coming) {
    gather(in.far_blockers(t, path.far, path.slide, path.reach));
    if (path.slide >= 0) gather(in.slide_blockers(t, path.slide, path.reach));
  }
  for (const int t : entry.coming) clear_bit(all, t);
  in_it = listed(all, in.count);
  return true;
}

Together Blocking::together(std::span<const int> timbers) {
  // Taken apart piece by piece: what can be taken off last can be put on first. Taking one off never blocks another.
  Together result;
  std::vector<int> left = case_of(*inside_, timbers, {}).coming;
  while (left.size() > 1) {
    bool off = false;
    for (std::size_t i = left.size(); i-- > 0 && !off;) {
      std::vector<int> rest = left;
      rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(i));
      const int one[] = {left[i]};
      if (!find_straight(*inside_, case_of(*inside_, one, rest)).free) continue;
      result.order.push_back(left[i]);
      left = std::move(rest);
      off = true;
    }
    if (!off) break;
  }
  if (left.size() > 1) {
    result.stuck = left;
    result.order.clear();
    return result;
  }
  result.possible = true;
  for (const int last : left) result.order.push_back(last);
  std::reverse(result.order.begin(), result.order.end());
  return result;
}

}  // namespace bentbook
