#include "raising/order_judge.h"

#include <algorithm>
#include <map>

#include "numeric/sorting.h"
#include "raising/lifting/pick.h"
#include "raising/search/crew_braces.h"
#include "raising/search/search_braces.h"
#include "raising/stability/force_cases.h"

namespace bentbook {
namespace {

/// Temporaries that one step may put up: beyond that the order is wrong, not the bracing. Source: SOURCES.md, "search
/// effort".
constexpr int kMostAtOnce = 10;

class Standing final : public Judge {
 public:
  Standing(const Frame& frame, const RaisingPlan& plan)
      : frame_(frame),
        plan_(plan),
        bodies_(pick_bodies(frame, plan)),
        model_(make_standing_model(frame, plan)),
        run_(model_) {}

  bool rigid(std::span<const int> timbers, std::span<const int> temporaries) override {
    return run_.rigid(timbers, temporaries);
  }
  bool stands(std::span<const int> timbers, std::span<const int> temporaries) override {
    return timbers.empty() || run_.stands(timbers, temporaries);
  }
  StandingCheck check(std::span<const int> timbers, std::span<const int> temporaries, std::span<const int> coming,
                      StandingDepth depth) override {
    return run_.check(timbers, temporaries, depth, coming);
  }
  bool bears(std::span<const int> timbers, std::span<const int> temporaries,
             std::span<const std::vector<HungWeight>> moments) override {
    return bentbook::bears(model_, standing_set(model_, timbers, temporaries), moments);
  }
  std::vector<int> propose(std::span<const int> timbers, std::span<const int> temporaries) override {
    if (!crew_) crew_ = std::make_unique<CrewBraces>(model_, frame_, run_);
    std::vector<int> added = crew_->against(timbers, temporaries, plan_.spare, kMostAtOnce);
    if (!added.empty()) return added;
    added = brace_step(model_, frame_, run_, timbers, temporaries);
    if (!added.empty()) return added;
    const BraceProposal proposal = propose_braces(model_, frame_, run_, timbers, temporaries);
    if (!proposal.cures) return added;
    for (const Temporary& brace : proposal.braces) added.push_back(number_of(brace));
    sort_up(added);
    return added;
  }
  bool lifts(std::span<const int> timbers) override {
    std::vector<int> key(timbers.begin(), timbers.end());
    const auto known = lifts_.find(key);
    if (known != lifts_.end()) return known->second;
    const bool can = can_pick(frame_, plan_, bodies_, timbers);
    lifts_.emplace(std::move(key), can);
    return can;
  }
  [[nodiscard]] const std::vector<Temporary>& temporaries() const override { return model_.temporaries; }

 private:
  int number_of(const Temporary& brace) {
    for (std::size_t i = 0; i < model_.temporaries.size(); ++i) {
      Temporary known = model_.temporaries[i];
      known.name = brace.name;
      if (known == brace) return static_cast<int>(i);
    }
    return add_temporary(model_, frame_, brace);
  }

  const Frame& frame_;
  const RaisingPlan& plan_;
  std::vector<PickBody> bodies_;
  std::map<std::vector<int>, bool> lifts_;
  StandingModel model_;
  StandingRun run_;
  std::unique_ptr<CrewBraces> crew_;
};

}  // namespace

std::unique_ptr<Judge> make_judge(const Frame& frame, const RaisingPlan& plan) {
  return std::make_unique<Standing>(frame, plan);
}

}  // namespace bentbook
