#include "frame/plan.h"

#include <algorithm>
#include <variant>

#include "frame/limits.h"
#include "numeric/libm.h"
#include "roof/limits.h"

namespace bentbook {

JointType default_joint(Meeting meeting) {
  MortiseTenon tenon;
  HalfLap lap;
  BirdsMouth mouth;
  HousedButt butt;
  switch (meeting) {
    case Meeting::kPostFoot:
      tenon.length = Length::inches(2);
      tenon.pegs = 0;
      return tenon;
    case Meeting::kSillCorner:
      lap.pegs = 0;
      return lap;
    case Meeting::kSillScarf:
    case Meeting::kPlateScarf:
    case Meeting::kRidgeScarf:
    case Meeting::kPurlinScarf:
      return Scarf{};
    case Meeting::kPostTop:
      tenon.length = Length::inches(3);  // as under a scarf, where half the plate is there
      return tenon;
    case Meeting::kTiePost:
      tenon.housing = Length::inches(1, 2);
      tenon.pegs = 2;
      return tenon;
    case Meeting::kRafterPlate:
      return mouth;
    case Meeting::kRafterPurlin:
      mouth.seat = Length::inches(2);
      return mouth;
    case Meeting::kRafterPeak:
      return RafterPeak{};
    case Meeting::kRafterRidge:
      butt.housing = {};
      return butt;
    case Meeting::kPurlinRafter:
    case Meeting::kJoistTie:
      return butt;
    case Meeting::kCollarRafter:
    case Meeting::kGirtPost:
    case Meeting::kBraceEnd:
      tenon.thickness = Length::inches(3, 2);
      tenon.length = Length::inches(3);
      tenon.peg = {Length::inches(3, 4), 1, Length::inches(3, 2), Length::inches(3), {}};
      return tenon;
    default:
      return tenon;
  }
}

FramePlan::FramePlan() {
  for (int i = 0; i < kMeetings; ++i) joints[static_cast<std::size_t>(i)] = default_joint(static_cast<Meeting>(i));
}

namespace {

/// A rafter over its plate: a seat that bears and takes no more of the rafter than a notch may anywhere; in a steep
/// roof a deeper rafter, so that there is one.
void seat_rafters(FramePlan& plan, Slope pitch) {
  constexpr double kEighths = 8;
  const auto seat = [&] { return limits::kNotchAway * plan.sections.common.depth.in() / pitch.sin(); };
  if (seat() < limits::kLeastSeat) plan.sections.common.depth = plan.sections.common.depth + Length::inches(2);
  const double inches =
      std::clamp(libm::floor(seat() * kEighths) / kEighths, limits::kLeastSeat, BirdsMouth{}.seat.in());
  plan.joints[static_cast<std::size_t>(Meeting::kRafterPlate)] = BirdsMouth{Length::from_inches(inches)};
}

}  // namespace

FramePlan default_plan(Length span, Length length, Length plate_height, Slope pitch) {
  FramePlan plan;
  plan.span = span;
  plan.plate_left = plan.plate_right = plate_height;
  plan.pitch_left = plan.pitch_right = pitch;
  seat_rafters(plan, pitch);
  if (plate_height < limits::kLowPlate) plan.brace_leg_post = plan.brace_leg_beam = limits::kShortBrace;
  // Posts stand within the length.
  const Length between = length - plan.sections.post.breadth;
  const Length most = limits::kUsualBay;
  std::int64_t count = between.count <= 0 ? 1 : (between.count + most.count - 1) / most.count;
  count = count > 10'000 ? 10'000 : count;
  plan.bays.clear();
  for (std::int64_t i = 0; i < count; ++i)
    plan.bays.push_back({Length{between.count / count}, static_cast<int>(i) + 2});
  return plan;
}

void insert_bay(FramePlan& plan, int index, Length width) {
  int label = 1;
  for (const Bay& bay : plan.bays) label = bay.label > label ? bay.label : label;
  plan.bays.insert(plan.bays.begin() + (index + 1), Bay{width, label + 1});
}

}  // namespace bentbook
