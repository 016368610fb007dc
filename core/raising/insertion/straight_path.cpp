#include "raising/insertion/straight_path.h"

#include <algorithm>

namespace bentbook {
namespace {

constexpr Vec3 kDown{0, 0, -1};

/// One search for a straight path.
class Straight {
 public:
  Straight(Blocking::Graph& in, const EntryCase& entry) : in_(in), entry_(entry) {}

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

  Blocking::Graph& in_;
  const EntryCase& entry_;
  PathFound found_;
  int fewest_ = -1;
};

}  // namespace

PathFound find_straight(Blocking::Graph& in, const EntryCase& entry) { return Straight(in, entry).find(); }

std::vector<Move> moves_of(const Blocking::Graph& in, const StraightPath& path) {
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

}  // namespace bentbook
