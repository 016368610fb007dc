#pragma once
/// Pegs, pins and screws of the joints that a step closes: what is driven before the sling comes off.

#include <span>
#include <vector>

#include "frame/joints/joint_table.h"
#include "frame/plan.h"
#include "raising/plan.h"

namespace bentbook {

/// Of one kind and diameter.
struct Driven {
  Fasteners kind = Fasteners::kLoose;
  double diameter = 0;  ///< inches; 0: screws, or what nobody has drilled for
  int count = 0;        ///< holes; of screws: joints that want them
  friend bool operator==(const Driven&, const Driven&) = default;
};

/// Holes through the joint's member that belong to it: its pegs or pins. `joint`: index in Frame::joints.
[[nodiscard]] int fastener_holes(const Frame& frame, int joint);

/// Member first.
[[nodiscard]] JointName joint_name_of(const Frame& frame, int joint);
/// Whether a plan that fastens with the steps leaves a joint of the frame for after the raising.
[[nodiscard]] bool fastened_later(const Frame& frame, const RaisingPlan& plan, int joint);
/// Joints between what `step` brings and what stands by then, indices in Frame::joints. `step`: index in
/// RaisingPlan::steps.
[[nodiscard]] std::vector<int> joints_closed(const Frame& frame, const RaisingPlan& plan, std::size_t step);
/// The same of all steps of a day.
[[nodiscard]] std::vector<int> joints_closed_on(const Frame& frame, const RaisingPlan& plan, int day);
/// What these joints' pegs, pins or screws are, pins first, the thickest first.
[[nodiscard]] std::vector<Driven> fasteners_of(const Frame& frame, std::span<const int> joints);
/// Of the joints between what `step` brings and what stands by then, pins first, the thickest first. Empty where the
/// plan fastens later; joints that it leaves are not counted. `step`: index in RaisingPlan::steps.
[[nodiscard]] std::vector<Driven> driven_in(const Frame& frame, const RaisingPlan& plan, std::size_t step);

}  // namespace bentbook
