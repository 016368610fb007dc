#include "raising/plan_edits.h"

#include <utility>

#include "frame/facts.h"
#include "frame/joints/joint_table.h"
#include "numeric/index.h"
#include "numeric/sorting.h"
#include "raising/order.h"
#include "raising/temporary_line.h"

namespace bentbook {
namespace {

Length in_steps(double inches, Length step) {
  return Length{static_cast<std::int64_t>(libm::floor(inches / step.in() + 0.5)) * step.count};
}

/// The ground that lies as far away from the building as the end is high.
void to_ground(const Frame& frame, Temporary& temporary, Length step) {
  const int t = timber_by_mark(frame, temporary.from.mark);
  if (t < 0) return;
  double middle = 0;
  int posts = 0;
  for (const Timber& timber : frame.timbers)
    if (timber.kind == TimberKind::kPost && timber.placed) middle += timber.at.origin.y, ++posts;
  if (posts > 0) middle /= posts;
  const Timber& timber = frame.timbers[at(t)];
  const Vec3 end = timber.at.origin + temporary.from.station.in() * timber.at.x;
  const char line = timber.place.line;
  const bool across = line == 'A' || line == 'E';
  const double out = std::max(end.z, step.in());
  temporary.ground_x = in_steps(across ? end.x + (line == 'A' ? -out : out) : end.x, step);
  temporary.ground_y = in_steps(across ? end.y : end.y + (end.y < middle ? -out : out), step);
  temporary.ground_z = {};
}

}  // namespace

std::vector<std::string> marks_left(const Frame& frame, const RaisingPlan& plan) {
  std::vector<std::string> brought;
  for (const RaisingStep& step : plan.steps)
    for (std::string& mark : marks_in(step)) brought.push_back(std::move(mark));
  sort_up(brought);
  std::vector<std::string> left;
  for (const Timber& timber : frame.timbers)
    if (timber.placed && !std::binary_search(brought.begin(), brought.end(), timber.mark)) left.push_back(timber.mark);
  return left;
}

void add_step(RaisingPlan& plan, std::vector<std::string> marks, std::vector<SetPiece> set_first) {
  RaisingStep step;
  step.marks = std::move(marks);
  step.set_first = std::move(set_first);
  if (!plan.steps.empty()) step.day = plan.steps.back().day;
  plan.steps.push_back(std::move(step));
}

void day_from(RaisingPlan& plan, int step) {
  const auto from = plan.steps.begin() + step;
  for (auto it = from; it != plan.steps.end(); ++it) it->day = std::max(it->day, from->day);
}

bool goes_back(const RaisingPlan& plan, int step) {
  const auto from = plan.steps.begin() + step;
  return std::any_of(from, plan.steps.end(), [&](const RaisingStep& later) { return later.day < from->day; });
}

void toggle_name(std::vector<std::string>& names, std::string_view name) {
  const auto it = std::find(names.begin(), names.end(), name);
  if (it == names.end())
    names.emplace_back(name);
  else
    names.erase(it);
}

std::string free_temporary_name(const RaisingPlan& plan) {
  for (int n = 1;; ++n) {
    std::string name = "T" + std::to_string(n);
    const bool taken = std::any_of(plan.temporaries.begin(), plan.temporaries.end(),
                                   [&](const Temporary& t) { return t.name == name; });
    if (!taken) return name;
  }
}

Temporary* find_temporary(RaisingPlan& plan, std::string_view name) {
  const auto it = std::find_if(plan.temporaries.begin(), plan.temporaries.end(),
                               [&](const Temporary& t) { return t.name == name; });
  return it == plan.temporaries.end() ? nullptr : &*it;
}

void hold_timber(const Frame& frame, Temporary& temporary, const std::string& mark, Length step) {
  const int t = timber_by_mark(frame, mark);
  if (t < 0) return;
  const Timber& timber = frame.timbers[at(t)];
  const bool post = libm::fabs(timber.at.x.z) > 0.9;
  temporary.from = {mark, in_steps(timber.length * (post ? 0.75 : 0.5), step)};
  if (temporary.to.mark == mark) temporary.to = {};
  if (temporary.to.mark.empty()) to_ground(frame, temporary, step);
}

void lead_to(const Frame& frame, Temporary& temporary, const std::string& mark, Length step) {
  temporary.to = {};
  const int t = timber_by_mark(frame, mark);
  if (t < 0 || mark == temporary.from.mark) return to_ground(frame, temporary, step);
  temporary.to.mark = mark;
  const double whole = step.in();
  double least = 1e300;
  Length best{};
  for (double along = 0; along <= frame.timbers[at(t)].length; along += whole) {
    temporary.to.station = in_steps(along, step);
    const auto line = temporary_line(frame, temporary);
    if (!line) return;
    const Vec3 run = line->to - line->from;
    const double off = libm::fabs(libm::fabs(run.z) - libm::hypot(run.x, run.y)) + (run.z > 0 ? 1 : 0);
    if (off >= least) continue;
    least = off;
    best = temporary.to.station;
  }
  temporary.to.station = best;
}

void drop_temporary(RaisingPlan& plan, std::string_view name) {
  std::erase_if(plan.temporaries, [&](const Temporary& t) { return t.name == name; });
  for (RaisingStep& step : plan.steps) {
    std::erase(step.put_up, name);
    std::erase(step.take_out, name);
  }
}

void take_braces(RaisingPlan& plan, int step, const std::vector<Temporary>& braces) {
  for (Temporary brace : braces) {
    brace.name = free_temporary_name(plan);
    plan.steps[static_cast<std::size_t>(step)].put_up.push_back(brace.name);
    plan.temporaries.push_back(std::move(brace));
  }
}

HoldChange& hold_change(RaisingPlan& plan, JointKind joint) {
  for (HoldChange& h : plan.holds)
    if (h.joint == joint) return h;
  return plan.holds.emplace_back(HoldChange{joint, false, false, false, {}});
}

void drop_hold_change(RaisingPlan& plan, JointKind joint) {
  std::erase_if(plan.holds, [&](const HoldChange& h) { return h.joint == joint; });
}

void leave_for_later(RaisingPlan& plan, std::span<const JointName> joints) {
  for (const JointName& joint : joints)
    if (std::find(plan.later.begin(), plan.later.end(), joint) == plan.later.end()) plan.later.push_back(joint);
}

void toggle_later(RaisingPlan& plan, const JointName& joint) {
  if (std::erase(plan.later, joint) == 0) plan.later.push_back(joint);
}

}  // namespace bentbook
