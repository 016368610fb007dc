#pragma once
/// Judges for tests of orders that no statics stand behind: dice, and one that remembers what another one said.

#include <algorithm>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "raising/order_judge.h"
#include "random.h"

namespace bentbook {

/// By dice thrown once for each set of timbers: how much holding it wants, and how much each of a fixed list of braces
/// gives it. What stands may fall when a timber is added, or stand by itself; a brace that held may hold nothing a
/// timber later; now and then braces that are enough are not enough after all. The whole stands.
class DiceJudge final : public Judge {
 public:
  DiceJudge(const Frame& frame, const RaisingPlan& plan, std::uint64_t seed)
      : frame_(frame), list_(plan.temporaries), seed_(seed) {
    Random random(seed);
    for (const Timber& t : frame.timbers) {
      Temporary brace;
      brace.from.mark = t.mark;
      if (random.whole(0, 2) == 0)
        brace.to.mark =
            frame.timbers[static_cast<std::size_t>(random.whole(0, static_cast<int>(frame.timbers.size()) - 1))].mark;
      list_.push_back(brace);
    }
  }

  bool rigid(std::span<const int> timbers, std::span<const int> temporaries) override {
    return given(timbers, temporaries) + 1 >= wanted(timbers);
  }
  bool stands(std::span<const int> timbers, std::span<const int> temporaries) override {
    if (given(timbers, temporaries) < wanted(timbers)) return false;
    return temporaries.empty() || throw_dice(timbers, temporaries, 1) % 40 != 0;
  }
  std::vector<int> propose(std::span<const int> timbers, std::span<const int> temporaries) override {
    std::vector<int> with(temporaries.begin(), temporaries.end()), added;
    for (int i = 0; i < static_cast<int>(list_.size()); ++i) {
      if (given(timbers, with) >= wanted(timbers)) break;
      if (std::count(with.begin(), with.end(), i) > 0 || !reaches(timbers, i) || worth(timbers, i) == 0) continue;
      with.push_back(i);
      added.push_back(i);
    }
    return given(timbers, with) >= wanted(timbers) ? added : std::vector<int>{};
  }
  bool bears(std::span<const int> /*timbers*/, std::span<const int> /*temporaries*/,
             std::span<const std::vector<HungWeight>> /*moments*/) override {
    return true;
  }
  bool lifts(std::span<const int> timbers) override { return throw_dice(timbers, {}, 2) % 1000 != 0; }
  [[nodiscard]] const std::vector<Temporary>& temporaries() const override { return list_; }

 private:
  std::uint64_t throw_dice(std::span<const int> timbers, std::span<const int> temporaries, std::uint64_t what) const {
    std::uint64_t sum = seed_ * 8 + what;
    for (const int t : timbers) sum = Random(sum * 64 + static_cast<std::uint64_t>(t)).bits();
    for (const int t : temporaries) sum = Random(sum * 64 + 32 + static_cast<std::uint64_t>(t)).bits();
    return sum;
  }
  int wanted(std::span<const int> timbers) const {
    if (timbers.size() == frame_.timbers.size()) return 0;
    const int face = static_cast<int>(throw_dice(timbers, {}, 3) % 12);
    return face < 2 ? 0 : face < 6 ? 1 : face < 11 ? 2 : 3;
  }
  int worth(std::span<const int> timbers, int brace) const {
    const int one[] = {brace};
    return static_cast<int>(throw_dice(timbers, one, 4) % 3);
  }
  int given(std::span<const int> timbers, std::span<const int> temporaries) const {
    int sum = 0;
    for (const int t : temporaries) sum += worth(timbers, t);
    return sum;
  }
  /// All of its ends are at what stands.
  bool reaches(std::span<const int> timbers, int brace) const {
    const auto there = [&](const std::string& mark) {
      return mark.empty() || std::any_of(timbers.begin(), timbers.end(), [&](int t) {
               return frame_.timbers[static_cast<std::size_t>(t)].mark == mark;
             });
    };
    const Temporary& it = list_[static_cast<std::size_t>(brace)];
    return there(it.from.mark) && there(it.to.mark);
  }

  const Frame& frame_;
  std::vector<Temporary> list_;
  std::uint64_t seed_;
};

/// Says again what another judge said.
class SameAgain final : public Judge {
 public:
  explicit SameAgain(Judge& judge) : judge_(judge) {}
  bool rigid(std::span<const int> timbers, std::span<const int> temporaries) override {
    const auto [at, fresh] = rigid_.try_emplace(key(timbers, temporaries), false);
    if (fresh) at->second = judge_.rigid(timbers, temporaries);
    return at->second;
  }
  bool stands(std::span<const int> timbers, std::span<const int> temporaries) override {
    const auto [at, fresh] = stood_.try_emplace(key(timbers, temporaries), false);
    if (fresh) at->second = judge_.rigid(timbers, temporaries) && judge_.stands(timbers, temporaries);
    return at->second;
  }
  std::vector<int> propose(std::span<const int> timbers, std::span<const int> temporaries) override {
    const auto [at, fresh] = proposed_.try_emplace(key(timbers, temporaries));
    if (fresh) at->second = judge_.propose(timbers, temporaries);
    return at->second;
  }
  bool bears(std::span<const int> timbers, std::span<const int> temporaries,
             std::span<const std::vector<HungWeight>> moments) override {
    return judge_.bears(timbers, temporaries, moments);
  }
  bool lifts(std::span<const int> timbers) override { return judge_.lifts(timbers); }
  [[nodiscard]] const std::vector<Temporary>& temporaries() const override { return judge_.temporaries(); }

 private:
  using Key = std::pair<std::vector<int>, std::vector<int>>;
  static Key key(std::span<const int> a, std::span<const int> b) {
    return {{a.begin(), a.end()}, {b.begin(), b.end()}};
  }
  Judge& judge_;
  std::map<Key, bool> rigid_, stood_;
  std::map<Key, std::vector<int>> proposed_;
};

}  // namespace bentbook
