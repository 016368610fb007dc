#pragma once
/// Inside the blocking graph: ways as stages, and who is in them, kept by timber and stage.

#include <unordered_map>

#include "raising/insertion/blocking.h"

namespace bentbook {

/// A straight path of one or two stages; `slide` < 0: one.
struct StraightPath {
  int far = 0;
  int slide = -1;
  int reach = 0;  ///< index in kSlides
};
/// How far a piece may be slid into place, the shortest that will do.
inline constexpr double kSlides[] = {3, 6, 10, 16, 26};
inline constexpr int kSlideCount = 5;

/// Sets of timbers as bits; bit `count` is the ground.
using TimberBits = std::vector<std::uint64_t>;

struct Blocking::Inside {
  const Frame& frame;
  int count = 0;
  std::size_t words = 1;
  double ground = 0, far = 0;
  std::vector<MoveBody> bodies;
  std::vector<char> made;
  std::vector<Vec3> ways;                              ///< directions, each once
  std::vector<std::vector<int>> joints;                ///< by timber
  std::unordered_map<std::uint64_t, TimberBits> kept;  ///< only looked up, never walked

  explicit Inside(const Frame& given);
  const MoveBody& body(int timber);
  int way(Vec3 direction);
  /// Who is in the way of one timber: slid along `way` over kSlides[reach] into its place.
  const TimberBits& slide_blockers(int timber, int way, int reach);
  /// …brought from far away along `way` to its place, or to where the slide begins.
  const TimberBits& far_blockers(int timber, int way, int slide, int reach);
  TimberBits find_blockers(int timber, Vec3 from, Vec3 sweep);
  /// Directions worth trying for what comes, the likeliest first.
  std::vector<int> candidates(std::span<const int> coming);
};

/// What comes and what stands, cleaned of what makes no sense.
struct EntryCase {
  std::vector<int> coming, standing;
  TimberBits against;  ///< standing, and the ground where it counts
};

/// Without the ground.
[[nodiscard]] EntryCase case_of(const Blocking::Inside& in, std::span<const int> coming, std::span<const int> standing);

struct PathFound {
  bool free = false;
  StraightPath path;
  StraightPath best;  ///< not free: with the fewest blockers
  TimberBits best_blockers;
};
[[nodiscard]] PathFound find_straight(Blocking::Inside& in, const EntryCase& entry);
[[nodiscard]] std::vector<Move> moves_of(const Blocking::Inside& in, const StraightPath& path);
/// Spreading and swinging; empty: neither will do.
[[nodiscard]] std::vector<Move> find_spread(Blocking::Inside& in, const EntryCase& entry, const EntryLimits& limits);
[[nodiscard]] std::vector<Move> find_swing(Blocking::Inside& in, const EntryCase& entry);

[[nodiscard]] inline bool has_bit(const TimberBits& bits, int i) {
  return (bits[static_cast<std::size_t>(i) / 64] >> (static_cast<unsigned>(i) % 64) & 1U) != 0;
}
inline void set_bit(TimberBits& bits, int i) {
  bits[static_cast<std::size_t>(i) / 64] |= std::uint64_t{1} << (static_cast<unsigned>(i) % 64);
}
inline void clear_bit(TimberBits& bits, int i) {
  bits[static_cast<std::size_t>(i) / 64] &= ~(std::uint64_t{1} << (static_cast<unsigned>(i) % 64));
}
[[nodiscard]] inline std::vector<int> listed(const TimberBits& bits, int count) {
  std::vector<int> list;
  for (int i = 0; i < count; ++i)
    if (has_bit(bits, i)) list.push_back(i);
  return list;
}

}  // namespace bentbook
