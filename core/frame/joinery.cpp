#include "frame/joinery.h"

#include <algorithm>
#include <utility>

#include "frame/metric_sizes.h"

namespace bentbook {
namespace {

struct Plated {
  Meeting meeting;
  Section PlanSections::*member;
};
constexpr Plated kPlated[] = {
    {Meeting::kPostFoot, &PlanSections::post},       {Meeting::kPostTop, &PlanSections::post},
    {Meeting::kTiePost, &PlanSections::tie},         {Meeting::kGirtPost, &PlanSections::girt},
    {Meeting::kKingFoot, &PlanSections::king_post},  {Meeting::kKingTop, &PlanSections::king_post},
    {Meeting::kQueenTop, &PlanSections::queen_post}, {Meeting::kPurlinRafter, &PlanSections::purlin},
    {Meeting::kCollarRafter, &PlanSections::collar}, {Meeting::kJoistTie, &PlanSections::joist},
    {Meeting::kBraceEnd, &PlanSections::brace},
};

bool has_plate(const FramePlan& plan, Meeting meeting) {
  return kind_of(plan.joints[static_cast<std::size_t>(meeting)]) == JointKind::kKnifePlate;
}

}  // namespace

KnifePlate plate_for(const Section& section) {
  const Length high = section.depth, wide = section.breadth;
  KnifePlate plate;
  if (high < Length::inches(9)) {
    plate.pins.diameter = Length::inches(1, 2);
    plate.pins.from_shoulder = Length::inches(7, 2);
    plate.reach = Length::inches(5);
    if (high < Length::inches(7)) plate.pins.spacing = Length::inches(2);
    if (high < Length::inches(6)) plate.pins.count = 1;
  }
  plate.width = std::min(plate.width, std::max(high - Length::inches(2), Length::inches(2)));
  plate.base_height = std::min(plate.base_height, std::max(high - Length::inches(1), Length::inches(2)));
  plate.base_width = std::min(plate.base_width, std::max(wide - Length::inches(1), Length::inches(2)));
  if (wide < Length::inches(6)) plate.thickness = Length::inches(1, 4);
  return plate;
}

FramePlan with_joinery(FramePlan plan, Joinery joinery) {
  for (const Plated& one : kPlated) {
    JointType& joint = plan.joints[static_cast<std::size_t>(one.meeting)];
    const bool plate = has_plate(plan, one.meeting);
    const Section& member = plan.sections.*one.member;
    const bool metric = is_by_millimetres(member);
    if (joinery == Joinery::kPlates && !plate) joint = metric ? in_millimetres(plate_for(member)) : plate_for(member);
    if (joinery == Joinery::kWooden && plate)
      joint = metric ? in_millimetres(default_joint(one.meeting)) : default_joint(one.meeting);
  }
  return plan;
}

std::optional<Joinery> joinery_of(const FramePlan& plan) {
  const auto plates = std::count_if(std::begin(kPlated), std::end(kPlated),
                                    [&](const Plated& one) { return has_plate(plan, one.meeting); });
  if (plates == 0) return Joinery::kWooden;
  if (plates == static_cast<std::ptrdiff_t>(std::size(kPlated))) return Joinery::kPlates;
  return std::nullopt;
}

}  // namespace bentbook
