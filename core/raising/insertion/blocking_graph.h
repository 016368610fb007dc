#pragma once
/// The blocking graph itself: a way in is one stage or two (from far away, then a slide); who is in the way is kept by
/// timber and stage.

#include <unordered_map>

#include "raising/insertion/blocking.h"

namespace bentbook {

/// How far a piece may be slid into place, the shortest that will do.
inline constexpr double kSlides[] = {3, 6, 10, 16, 26};
inline constexpr int kSlideCount = 5;

/// Sets of timbers as bits; bit `count` is the ground.
using TimberBits = std::vector<std::uint64_t>;

struct Blocking::Graph {
  const Frame& frame;
  int count = 0;
  std::size_t words = 1;
  double ground = 0, far = 0;
  std::vector<MoveBody> bodies;
  std::vector<char> made;
  std::vector<Vec3> ways;                              ///< directions, each once
  std::vector<std::vector<int>> joints;                ///< by timber
  std::unordered_map<std::uint64_t, TimberBits> kept;  ///< only looked up, never walked

  explicit Graph(const Frame& given);
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

/// What comes and what stands; indices that are out of range, doubled or not placed are left out.
struct EntryCase {
  std::vector<int> coming, standing;
  TimberBits against;  ///< standing, and the ground where it counts
};

/// Without the ground.
[[nodiscard]] EntryCase case_of(const Blocking::Graph& in, std::span<const int> coming, std::span<const int> standing);

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
