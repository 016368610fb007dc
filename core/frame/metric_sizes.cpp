#include "frame/metric_sizes.h"

#include <string>
#include <utility>

#include "frame/joints/joint_table.h"
#include "frame/limits.h"
#include "frame/plan_fields.h"
#include "measure/field.h"

namespace bentbook {
namespace {

constexpr Length kStep = Length::mm(5);

/// Play, plates, pins, housings.
struct Small {
  Length inches, metric;
};
constexpr Small kSmall[] = {
    {Length::inches(1, 16), Length::mm(2)}, {Length::inches(1, 8), Length::mm(3)},
    {Length::inches(3, 16), Length::mm(5)}, {Length::inches(1, 4), Length::mm(6)},
    {Length::inches(3, 8), Length::mm(10)}, {Length::inches(1, 2), Length::mm(12)},
    {Length::inches(3, 4), Length::mm(20)},
};

/// Diameters: a metric pin is a little thicker, and stands as far from the end.
constexpr std::int64_t kPinsFromEnd = static_cast<std::int64_t>(limits::kEndDiameters);

Length up_to_step(Length value) { return {(value.count + kStep.count - 1) / kStep.count * kStep.count}; }

template <class Thing>
Thing with_metric_lengths(Thing thing) {
  for (const std::string& path : field_paths(described(thing))) {
    const auto field = find_field(described(thing), path);
    if (!field || field->kind() != FieldKind::kLength) continue;
    Thing next = thing;
    // What its limits refuse stays as it was.
    if (set_field(described(next), path, metric_size(std::get<Length>(field->value)))) thing = std::move(next);
  }
  return thing;
}

}  // namespace

Length metric_size(Length usual) {
  for (const Small& small : kSmall)
    if (usual == small.inches) return small.metric;
  // 25 mm to the inch, to the nearest step; half a step goes up.
  const std::int64_t whole = usual.count / Length::kPerInch, rest = usual.count % Length::kPerInch;
  const std::int64_t scaled = whole * Length::mm(25).count + rest * Length::mm(25).count / Length::kPerInch;
  return {(scaled + kStep.count / 2) / kStep.count * kStep.count};
}

KnifePlate in_millimetres(KnifePlate plate) {
  const bool far = plate.pins.from_shoulder >= plate.pins.diameter * kPinsFromEnd;
  plate = with_metric_lengths(std::move(plate));
  const Length least = up_to_step(plate.pins.diameter * kPinsFromEnd);
  if (far && plate.pins.from_shoulder < least) plate.pins.from_shoulder = least;
  return plate;
}
JointType in_millimetres(JointType joint) {
  if (const auto* plate = std::get_if<KnifePlate>(&joint)) return in_millimetres(*plate);
  return with_metric_lengths(std::move(joint));
}
RoofPlan in_millimetres(RoofPlan plan) {
  std::vector<PlanSide> sides = std::exchange(plan.sides, {});
  plan = with_metric_lengths(std::move(plan));
  plan.sides = std::move(sides);
  return plan;
}

FramePlan in_millimetres(FramePlan plan) {
  for (Length& girt : plan.girts) girt = metric_size(girt);
  return with_metric_lengths(std::move(plan));
}

bool is_by_millimetres(const Section& section) {
  return section.breadth.count % kStep.count == 0 && section.depth.count % kStep.count == 0;
}

}  // namespace bentbook
