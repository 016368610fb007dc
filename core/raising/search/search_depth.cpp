#include "raising/search/search_depth.h"

#include <algorithm>

#include "numeric/sorting.h"

namespace bentbook {
namespace {

/// So many of the nearest are tried without new temporaries before one is put up. Source: SOURCES.md, "search effort".
constexpr std::size_t kNear = 12;

struct Level {
  SearchState state;
  std::vector<int> candidates;  ///< the nearest first
  std::size_t next = 0;         ///< first the near ones without, then all with new temporaries
  SearchStep step;              ///< by which the next level came
};

Level level_of(SearchSpace& space, const SearchState& state, Preference preference) {
  Level level;
  level.state = state;
  for (int p = 0; p < space.count(); ++p)
    if (state.in[static_cast<std::size_t>(p)] == 0 && space.lifts(p) && may_come(space.graph(), p, state.in))
      level.candidates.push_back(p);
  sort_by(level.candidates, [&](int a, int b) {
    const int ta = space.tier(a, preference), tb = space.tier(b, preference);
    return ta != tb ? ta < tb : space.leg(state.last, a) < space.leg(state.last, b);
  });
  return level;
}

/// Goes on to the next candidate of a level; false: none is left.
bool advance(SearchSpace& space, SearchClock& clock, Level& level, SearchState& next) {
  const std::size_t near = std::min(kNear, level.candidates.size());
  while (level.next < near + level.candidates.size()) {
    const bool with = level.next >= near;
    const NewTemporaries may = with ? NewTemporaries::kPutUp : NewTemporaries::kNone;
    const int p = level.candidates[with ? level.next - near : level.next];
    ++level.next;
    if (!clock.tick(level.state.placed)) return false;
    next = level.state;
    if (!space.enters(level.state, p) || !space.add(next, p, level.step, may)) continue;
    // Those that need no new ones were there before.
    if (with && level.step.put_up.empty() && level.next - near <= near) continue;
    if (space.shut_out(level.state, p).empty()) return true;
  }
  return false;
}

}  // namespace

DepthFirst search_depth(SearchSpace& space, SearchClock& clock, Preference preference, int most) {
  DepthFirst result;
  most += clock.tried();
  const int most_not_braced = space.not_braced() + 20 + space.count();
  result.farthest = space.start();
  std::vector<Level> levels{level_of(space, space.start(), preference)};
  const auto steps = [&] {
    std::vector<SearchStep> all;
    for (std::size_t i = 0; i + 1 < levels.size(); ++i) all.push_back(levels[i].step);
    return all;
  };
  while (!levels.empty()) {
    const SearchState& here = levels.back().state;
    if (here.placed > result.farthest.placed) {
      result.farthest = here;
      result.part = steps();
    }
    if (here.placed == space.count()) {
      result.sequence = {true, steps(), here.cost};
      return result;
    }
    SearchState next;
    if (clock.tried() < most && space.not_braced() <= most_not_braced && advance(space, clock, levels.back(), next)) {
      levels.push_back(level_of(space, next, preference));
      continue;
    }
    if (clock.stopped() || clock.tried() >= most || space.not_braced() > most_not_braced) break;
    levels.pop_back();
  }
  return result;
}

}  // namespace bentbook
