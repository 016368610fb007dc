#include "frame/placing/kept.h"

#include "numeric/index.h"

namespace bentbook {
namespace {

/// Walks two lists that differ by a few items put in or taken out; `equal(i, k)` says whether item i of the new one is
/// item k of the old. By new item: the old one, −1. Order is kept; what is farther off than kLookAhead counts as new.
template <class Equal>
std::vector<int> align(std::size_t size, std::size_t old_size, Equal equal) {
  constexpr int kLookAhead = 64;
  std::vector<int> old_of(size, -1);
  int k = 0;
  const int end = static_cast<int>(old_size);
  for (std::size_t i = 0; i < size; ++i) {
    for (int ahead = k; ahead < end && ahead < k + kLookAhead; ++ahead)
      if (equal(i, at(ahead))) {
        old_of[i] = ahead;
        k = ahead + 1;
        break;
      }
  }
  return old_of;
}

int mapped(const std::vector<int>& map, int index) { return index < 0 ? index : map[at(index)]; }

bool same_features(const Timber& now, const Timber& was, const Kept& kept) {
  if (now.features.size() != was.features.size()) return false;
  for (std::size_t i = 0; i < now.features.size(); ++i) {
    if (mapped(kept.joint_now, was.features[i].joint) != now.features[i].joint) return false;
    Feature moved = was.features[i];
    moved.joint = now.features[i].joint;
    if (!(moved == now.features[i])) return false;
  }
  return true;
}

/// What was said while the timber was cut comes first in its warnings.
bool begins_with(const Timber& was, const Timber& now, const Kept& kept) {
  if (was.warnings.size() < now.warnings.size()) return false;
  for (std::size_t i = 0; i < now.warnings.size(); ++i)
    if (!(carried_over(was.warnings[i], kept) == now.warnings[i])) return false;
  return true;
}

bool same_timber(const Timber& now, const Timber& was, const Kept& kept) {
  return now.kind == was.kind && now.placed == was.placed && now.length == was.length && now.sides == was.sides &&
         now.at == was.at && now.wood == was.wood && now.cuts == was.cuts && now.pockets == was.pockets &&
         now.defects == was.defects && same_features(now, was, kept) && begins_with(was, now, kept);
}

bool same_contacts(const Frame& frame, const Joint& now, const Frame& before, const Joint& was) {
  if (now.contacts != was.contacts) return false;
  for (int c = 0; c < now.contacts; ++c) {
    const ContactFace& a = frame.contacts[at(now.first_contact) + at(c)];
    const ContactFace& b = before.contacts[at(was.first_contact) + at(c)];
    if (!(a.normal == b.normal && a.corners == b.corners)) return false;
  }
  return true;
}

/// By joint: the earlier frame's same one, −1.
std::vector<int> align_joints(const Frame& frame, const Frame& before, const std::vector<int>& timber_was) {
  return align(frame.joints.size(), before.joints.size(), [&](std::size_t i, std::size_t k) {
    const Joint &a = frame.joints[i], &b = before.joints[k];
    return timber_was[at(a.member)] == b.member && timber_was[at(a.receiver)] == b.receiver && a.meeting == b.meeting &&
           a.end == b.end && a.kind == b.kind;
  });
}

/// A joint that came or went changes both of its timbers, though neither may show it.
void drop_new_joints(Kept& kept, const Frame& frame, const std::vector<int>& joint_was) {
  for (std::size_t j = 0; j < joint_was.size(); ++j)
    if (joint_was[j] < 0) kept.was[at(frame.joints[j].member)] = kept.was[at(frame.joints[j].receiver)] = -1;
}

void drop_gone_joints(Kept& kept, const Frame& before) {
  for (std::size_t k = 0; k < before.joints.size(); ++k)
    if (kept.joint_now[k] < 0)
      for (const int gone : {before.joints[k].member, before.joints[k].receiver})
        if (const int now = kept.now[at(gone)]; now >= 0) kept.was[at(now)] = kept.now[at(gone)] = -1;
}

}  // namespace

TimberWarning carried_over(TimberWarning warning, const Kept& kept) {
  warning.joint = mapped(kept.joint_now, warning.joint);
  if (names_another_joint(warning.id))
    warning.value2 = static_cast<double>(mapped(kept.joint_now, static_cast<int>(warning.value2)));
  return warning;
}

Kept keep_nothing(const Frame& frame) {
  return {std::vector<int>(frame.timbers.size(), -1), {}, std::vector<bool>(frame.timbers.size(), false), {}};
}

Kept find_kept(const Frame& frame, const Frame& before) {
  Kept kept = keep_nothing(frame);
  kept.was = align(frame.timbers.size(), before.timbers.size(),
                   [&](std::size_t i, std::size_t k) { return frame.timbers[i].mark == before.timbers[k].mark; });
  const std::vector<int> joint_was = align_joints(frame, before, kept.was);
  kept.joint_now.assign(before.joints.size(), -1);
  for (std::size_t j = 0; j < joint_was.size(); ++j)
    if (joint_was[j] >= 0) kept.joint_now[at(joint_was[j])] = static_cast<int>(j);
  for (std::size_t i = 0; i < kept.was.size(); ++i)
    if (kept.was[i] >= 0 && !same_timber(frame.timbers[i], before.timbers[at(kept.was[i])], kept)) kept.was[i] = -1;
  drop_new_joints(kept, frame, joint_was);
  kept.now.assign(before.timbers.size(), -1);
  for (std::size_t i = 0; i < kept.was.size(); ++i)
    if (kept.was[i] >= 0) kept.now[at(kept.was[i])] = static_cast<int>(i);
  drop_gone_joints(kept, before);
  for (std::size_t i = 0; i < kept.was.size(); ++i) kept.bears[i] = kept.was[i] >= 0;
  for (std::size_t j = 0; j < joint_was.size(); ++j) {
    const Joint& joint = frame.joints[j];
    if (joint_was[j] >= 0 && !same_contacts(frame, joint, before, before.joints[at(joint_was[j])]))
      kept.bears[at(joint.member)] = kept.bears[at(joint.receiver)] = false;
  }
  return kept;
}

}  // namespace bentbook
