#pragma once
/// For tests of orders: small frames cut out of random ones, and a plain rule in place of statics.

#include <algorithm>
#include <string>
#include <vector>

#include "frame/facts.h"
#include "plans.h"
#include "raising/order_judge.h"

namespace bentbook {

/// The frame with some of its timbers alone, and the joints among them.
inline Frame part_of(const Frame& frame, const std::vector<int>& keep) {
  Frame part;
  std::vector<int> now(frame.timbers.size(), -1);
  for (const int t : keep) {
    now[static_cast<std::size_t>(t)] = static_cast<int>(part.timbers.size());
    part.timbers.push_back(frame.timbers[static_cast<std::size_t>(t)]);
  }
  for (Joint joint : frame.joints) {
    for (int* end : {&joint.member, &joint.receiver, &joint.carried, &joint.carrier})
      *end = now[static_cast<std::size_t>(*end)];
    if (joint.member < 0 || joint.receiver < 0) continue;
    const int first = joint.first_contact;
    joint.first_contact = static_cast<int>(part.contacts.size());
    for (int c = 0; c < joint.contacts; ++c) {
      part.contacts.push_back(frame.contacts[static_cast<std::size_t>(first) + static_cast<std::size_t>(c)]);
      part.contacts.back().joint = static_cast<int>(part.joints.size());
    }
    part.joints.push_back(joint);
  }
  return part;
}

/// A timber and what it is joined to, grown at random to `most` timbers.
inline Frame random_part(Random& random, const Frame& frame, std::size_t most) {
  std::vector<int> keep;
  for (std::size_t t = 0; t < frame.timbers.size(); ++t)
    if (frame.timbers[t].kind == TimberKind::kPost) keep.push_back(static_cast<int>(t));
  if (keep.empty()) keep.push_back(0);
  keep = {keep[static_cast<std::size_t>(random.whole(0, static_cast<std::int64_t>(keep.size()) - 1))]};
  for (int tries = 0; tries < 400 && keep.size() < most && !frame.joints.empty(); ++tries) {
    const Joint& joint =
        frame.joints[static_cast<std::size_t>(random.whole(0, static_cast<std::int64_t>(frame.joints.size()) - 1))];
    const auto has = [&](int t) { return std::find(keep.begin(), keep.end(), t) != keep.end(); };
    if (has(joint.member) == has(joint.receiver)) continue;
    keep.push_back(has(joint.member) ? joint.receiver : joint.member);
  }
  std::sort(keep.begin(), keep.end());
  return part_of(frame, keep);
}

/// Stands where every timber has two joints with others that stand (a post's foot on the ground counts as one; all that
/// it has, where they are fewer), or a temporary of its own. No statics: only a rule that an order can break.
class RuleJudge : public Judge {
 public:
  RuleJudge(const Frame& frame, const RaisingPlan& plan, double most_lb = 1e9)
      : frame_(frame), list_(plan.temporaries), most_lb_(most_lb) {}

  bool rigid(std::span<const int> /*timbers*/, std::span<const int> /*temporaries*/) override { return true; }
  bool stands(std::span<const int> timbers, std::span<const int> temporaries) override {
    ++asked;
    return loose(timbers, temporaries).empty();
  }
  std::vector<int> propose(std::span<const int> timbers, std::span<const int> temporaries) override {
    std::vector<int> added;
    for (const int t : loose(timbers, temporaries)) {
      if (cant_be_held == frame_.timbers[static_cast<std::size_t>(t)].kind) return {};
      added.push_back(number_for(t));
    }
    return added;
  }
  bool bears(std::span<const int> /*timbers*/, std::span<const int> /*temporaries*/,
             std::span<const std::vector<HungWeight>> /*moments*/) override {
    return true;
  }
  bool lifts(std::span<const int> timbers) override {
    double sum = 0;
    for (const int t : timbers) sum += facts_of(frame_.timbers[static_cast<std::size_t>(t)]).weight_lb;
    return sum <= most_lb_;
  }
  [[nodiscard]] const std::vector<Temporary>& temporaries() const override { return list_; }

  int asked = 0;
  TimberKind cant_be_held = TimberKind::kOther;

 private:
  std::vector<int> loose(std::span<const int> timbers, std::span<const int> temporaries) const {
    std::vector<int> found;
    const auto there = [&](int t) { return std::find(timbers.begin(), timbers.end(), t) != timbers.end(); };
    for (const int t : timbers) {
      const Timber& it = frame_.timbers[static_cast<std::size_t>(t)];
      int held = it.kind == TimberKind::kPost ? 1 : 0, most = held;
      for (const Joint& joint : frame_.joints) {
        if (joint.member != t && joint.receiver != t) continue;
        ++most;
        if (there(joint.member == t ? joint.receiver : joint.member)) ++held;
      }
      for (const int i : temporaries)
        if (list_[static_cast<std::size_t>(i)].from.mark == it.mark) held = 2;
      if (held < std::min(2, most)) found.push_back(t);
    }
    return found;
  }
  int number_for(int t) {
    const std::string& mark = frame_.timbers[static_cast<std::size_t>(t)].mark;
    for (std::size_t i = 0; i < list_.size(); ++i)
      if (list_[i].from.mark == mark) return static_cast<int>(i);
    Temporary made;
    made.kind = TemporaryKind::kProp;
    made.from.mark = mark;
    list_.push_back(made);
    return static_cast<int>(list_.size()) - 1;
  }

  const Frame& frame_;
  std::vector<Temporary> list_;
  double most_lb_;
};

}  // namespace bentbook
