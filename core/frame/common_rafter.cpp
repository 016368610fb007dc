#include "frame/common_rafter.h"

#include <algorithm>

namespace bentbook {

std::optional<RafterInput> common_rafter_of(const FramePlan& plan, const RafterInput& rest) {
  if (plan.form != RoofForm::kGable || plan.roof != RoofFrame::kCommons) return std::nullopt;
  const auto mouth_at = [&](Meeting meeting) {
    return std::get_if<BirdsMouth>(&plan.joints[static_cast<std::size_t>(meeting)]);
  };
  const BirdsMouth* foot = mouth_at(Meeting::kRafterPlate);
  if (foot == nullptr) return std::nullopt;
  RafterInput r = rest;
  r.plan_by = PlanBy::kSpan;
  r.span = plan.span;
  r.alike = plan.pitch_left == plan.pitch_right && plan.plate_left == plan.plate_right;
  r.held = Held::kHeelsAndPlates;
  r.left.pitch = plan.pitch_left;
  r.left.heel_by = HeelBy::kSeat;
  r.left.seat = foot->seat;
  r.left.overhang = plan.eave_overhang;
  r.left.measured = false;
  r.left.plate_height = {};
  r.right = r.left;
  r.right.pitch = plan.pitch_right;
  r.right.plate_height = plan.plate_right - plan.plate_left;
  r.section = plan.sections.common;
  r.plate_breadth = plan.sections.plate.breadth;
  r.tail = TailCut::kPlumb;
  r.spacing = plan.rafter_spacing;
  r.feet = plan.ties || plan.peak == Peak::kRidgeBeam ? Feet::kTied : Feet::kLoose;
  r.peak = PeakKind::kAgainstEachOther;
  if (plan.peak == Peak::kPair) return r;
  const Section& beam = plan.sections.ridge_beam;
  if (const BirdsMouth* over = mouth_at(Meeting::kRafterRidge)) {
    r.peak = PeakKind::kOverBeam;
    r.beam_breadth = beam.breadth;
    r.beam_seat = std::min(over->seat, Length{beam.breadth.count / 2});
  } else {
    r.peak = PeakKind::kRidgeBoard;
    r.ridge_thickness = beam.breadth;
    r.ridge_depth = beam.depth;
  }
  return r;
}

}  // namespace bentbook
