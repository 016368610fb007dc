/// What stands, asked in the order of a raising: a verdict from what was known before, its margin, and the verdict of
/// one who knows nothing must agree.

#include <algorithm>
#include <catch_amalgamated.hpp>
#include <vector>

#include "frame/placing/solve_frame.h"
#include "frame/plan.h"
#include "raising/search/search_braces.h"
#include "raising/stability/standing.h"
#include "random.h"

using namespace bentbook;

namespace {

/// A timber that is next to what stands, or any; −1: all stand.
int next_of(const Frame& frame, const std::vector<int>& standing, Random& random) {
  std::vector<int> left;
  for (std::size_t t = 0; t < frame.timbers.size(); ++t)
    if (frame.timbers[t].placed && !std::binary_search(standing.begin(), standing.end(), static_cast<int>(t)))
      left.push_back(static_cast<int>(t));
  if (left.empty()) return -1;
  // Timbers are numbered about as they are raised.
  return left[static_cast<std::size_t>(
      random.whole(0, std::min<std::int64_t>(static_cast<std::int64_t>(left.size()), 4) - 1))];
}

}  // namespace

TEST_CASE("A verdict, its margin and the same asked from nothing agree all through a raising") {
  Random random(20);
  int stood = 0, fell = 0;
  for (int round = 0; round < property_cases() / 33'000; ++round) {
    const Frame frame = solve_frame(default_plan(Length::feet(16 + 2 * random.whole(0, 3)), Length::feet(12),
                                                 Length::feet(9), Slope::in_12(Length::inches(8))))
                            .value();
    RaisingPlan plan;
    plan.posts_anchored = round % 2 == 0;
    StandingModel model = make_standing_model(frame, plan);
    StandingRun run(model);
    std::vector<int> standing, up;
    for (int t = next_of(frame, standing, random); t >= 0; t = next_of(frame, standing, random)) {
      standing.insert(std::lower_bound(standing.begin(), standing.end(), t), t);
      const bool stands = run.stands(standing, up);
      (stands ? stood : fell) += 1;
      if (standing.size() % 3 == 0) {
        const StandingCheck said = run.check(standing, up, StandingDepth::kExplain, std::vector<int>{t});
        CHECK(said.stands() == stands);
        CHECK((said.factor >= 1) == stands);
        CHECK(check_standing(model, standing, up, StandingDepth::kStands).stands() == stands);
      }
      if (stands) continue;
      for (const int brace : brace_step(model, frame, run, standing, up)) up.push_back(brace);
      std::sort(up.begin(), up.end());
      // Some are taken out again.
      if (up.size() > 6 && random.whole(0, 2) == 0)
        up.erase(up.begin() + random.whole(0, static_cast<std::int64_t>(up.size()) - 1));
    }
  }
  CHECK(stood > 20);
  CHECK(fell > 20);
}
