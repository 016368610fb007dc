#include "raising/fasteners.h"

#include <algorithm>

#include "numeric/index.h"
#include "numeric/libm.h"
#include "numeric/sorting.h"
#include "raising/order.h"

namespace bentbook {
namespace {

bool is_hole_of(const Feature& f, int joint) { return f.kind == FeatureKind::kHole && f.joint == joint; }

void count_in(std::vector<Driven>& all, Fasteners kind, double diameter, int count) {
  const auto same = [&](const Driven& d) { return d.kind == kind && libm::fabs(d.diameter - diameter) < 1e-6; };
  const auto at = std::find_if(all.begin(), all.end(), same);
  if (at != all.end())
    at->count += count;
  else
    all.push_back({kind, diameter, count});
}

void sort_driven(std::vector<Driven>& all) {
  sort_by(all, [](const Driven& a, const Driven& b) {
    return a.kind != b.kind ? a.kind < b.kind : a.diameter > b.diameter;
  });
}

}  // namespace

int fastener_holes(const Frame& frame, int joint) {
  const Timber& member = frame.timbers[at(frame.joints[at(joint)].member)];
  return static_cast<int>(std::count_if(member.features.begin(), member.features.end(),
                                        [&](const Feature& f) { return is_hole_of(f, joint); }));
}

JointName joint_name_of(const Frame& frame, int joint) {
  const Joint& it = frame.joints[at(joint)];
  return {frame.timbers[at(it.member)].mark, frame.timbers[at(it.receiver)].mark};
}

bool fastened_later(const Frame& frame, const RaisingPlan& plan, int joint) {
  const auto& later = plan.later;
  return plan.fasten == FastenWhen::kWithStep &&
         std::find(later.begin(), later.end(), joint_name_of(frame, joint)) != later.end();
}

std::vector<int> joints_closed(const Frame& frame, const RaisingPlan& plan, std::size_t step) {
  std::vector<int> closed;
  if (step >= plan.steps.size()) return closed;
  std::vector<char> stands(frame.timbers.size(), 0), comes(frame.timbers.size(), 0);
  for (const int t : standing_before(frame, plan, step)) stands[at(t)] = 1;
  for (const int t : timbers_of(frame, marks_in(plan.steps[step]))) comes[at(t)] = 1;
  for (std::size_t j = 0; j < frame.joints.size(); ++j) {
    const Joint& joint = frame.joints[j];
    const auto there = [&](int t) { return stands[at(t)] != 0 || comes[at(t)] != 0; };
    if (!there(joint.member) || !there(joint.receiver)) continue;
    if (comes[at(joint.member)] != 0 || comes[at(joint.receiver)] != 0) closed.push_back(static_cast<int>(j));
  }
  return closed;
}

std::vector<int> joints_closed_on(const Frame& frame, const RaisingPlan& plan, int day) {
  std::vector<int> closed;
  for (std::size_t step = 0; step < plan.steps.size(); ++step) {
    if (plan.steps[step].day != day) continue;
    const std::vector<int> own = joints_closed(frame, plan, step);
    closed.insert(closed.end(), own.begin(), own.end());
  }
  return closed;
}

std::vector<Driven> fasteners_of(const Frame& frame, std::span<const int> joints) {
  std::vector<Driven> all;
  for (const int joint : joints) {
    const Joint& it = frame.joints[at(joint)];
    const Fasteners kind = row_of(it.kind).fasteners;
    bool drilled = false;
    for (const Feature& f : frame.timbers[at(it.member)].features)
      if (is_hole_of(f, joint)) drilled = true, count_in(all, kind, f.diameter, 1);
    if (!drilled && it.receiver != it.member) count_in(all, kind, 0, 1);
  }
  sort_driven(all);
  return all;
}

std::vector<Driven> driven_in(const Frame& frame, const RaisingPlan& plan, std::size_t step) {
  if (plan.fasten != FastenWhen::kWithStep) return {};
  std::vector<int> now = joints_closed(frame, plan, step);
  std::erase_if(now, [&](int joint) { return fastened_later(frame, plan, joint); });
  return fasteners_of(frame, now);
}

}  // namespace bentbook
