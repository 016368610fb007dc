/// Random cuttings, a line each: what was asked, what solve_cutting says. The k-th hangs on k alone.
///   stock_rows COUNT FIRST
/// Line: `k | room:cost:most … | size:count … | cost bound | kind:row*count+row*count …`, or `… | none`.

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <random>

#include "stock/cutting.h"

using namespace bentbook;

namespace {

/// As yards sell and jobs ask: one length, or all from one to another by a step; counted by sticks, by length or by a
/// price that grows with it; sometimes with odd sticks in hand that cost next to nothing.
CuttingProblem random_problem(std::mt19937& rng) {
  const auto pick = [&](int low, int high) {
    return low + static_cast<int>(rng() % static_cast<unsigned>(high - low + 1));
  };
  CuttingProblem problem;
  enum Form { kOneLength, kSticks, kLength, kPrice };
  const Form form = static_cast<Form>(pick(0, 3));
  const int step = pick(8, 14), trim = pick(0, 2), hand = pick(0, 2) == 0 ? pick(1, 3) : 0;
  const int last = pick(6, 10), first = form == kOneLength ? last : pick(3, last - 1);
  const int foot = pick(90, 250), dearer = pick(0, 8);
  for (int n = first; n <= last; ++n) {
    const int cost = form == kLength ? n : form == kPrice ? n * (foot + dearer * n) : 1;
    problem.kinds.push_back({n * step - trim, cost, -1});
  }
  int in_hand = 0;
  for (int k = 0; k < hand; ++k) {
    problem.kinds.push_back({pick(step * 2, step * last) - trim, 1, pick(1, 3)});
    in_hand += problem.kinds.back().most;
  }
  // What is bought comes first, then how many in hand are cut.
  for (StickKind& kind : problem.kinds)
    if (kind.most < 0) kind.cost *= in_hand + 1;
  const int longest = last * step - trim, pieces = pick(3, 60), sizes = pick(2, 25);
  std::vector<int> known, sized;
  for (int i = 0; i < sizes; ++i) known.push_back(pick(longest / 8, i % 3 == 0 ? longest : longest * 2 / 3));
  for (int i = 0; i < pieces; ++i) sized.push_back(known[rng() % known.size()]);
  std::sort(sized.rbegin(), sized.rend());
  for (const int size : sized) {
    if (problem.rows.empty() || problem.rows.back().size != size) problem.rows.push_back({size, 0});
    ++problem.rows.back().count;
  }
  return problem;
}

}  // namespace

int main(int argc, char** argv) {
  const int count = argc > 1 ? std::atoi(argv[1]) : 300, first = argc > 2 ? std::atoi(argv[2]) : 0;
  for (int k = first; k < first + count; ++k) {
    std::mt19937 rng(static_cast<unsigned>(k) * 7919U + 17U);
    const CuttingProblem problem = random_problem(rng);
    std::printf("%d |", k);
    for (const StickKind& s : problem.kinds)
      std::printf(" %lld:%lld:%d", static_cast<long long>(s.room), static_cast<long long>(s.cost), s.most);
    std::printf(" |");
    for (const CutRow& r : problem.rows) std::printf(" %lld:%d", static_cast<long long>(r.size), r.count);
    const auto cutting = solve_cutting(problem);
    if (!cutting) {
      std::printf(" | none\n");
      continue;
    }
    std::printf(" | %lld %lld |", static_cast<long long>(cutting->cost), static_cast<long long>(cutting->bound));
    for (const CutStick& stick : cutting->sticks) {
      std::printf(" %d:", stick.kind);
      for (std::size_t i = 0; i < stick.pieces.size(); ++i)
        std::printf("%s%d*%d", i > 0 ? "+" : "", stick.pieces[i].row, stick.pieces[i].count);
    }
    std::printf("\n");
  }
}
