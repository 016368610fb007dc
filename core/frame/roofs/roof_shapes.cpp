#include "frame/roofs/roof_shapes.h"

#include <algorithm>

#include "frame/metric_sizes.h"

namespace bentbook {
namespace {

Length whole_steps(Length length, Length step) {
  return {std::max<std::int64_t>(length.count / step.count, 1) * step.count};
}

/// What of the frame holds for its roof too.
void take_over(RoofPlan& roof, const FramePlan& frame, bool metric) {
  if (metric) roof = in_millimetres(std::move(roof));
  const Section common = frame.sections.common;
  const Length deeper = metric ? Length::mm(50) : Length::inches(2);
  roof.common = common;
  roof.hip = roof.valley = {common.breadth, common.depth + deeper};
  roof.heel = common.depth - (metric ? Length::mm(5) : Length::inches(1, 4));
  roof.spacing = frame.rafter_spacing;
  for (PlanSide& side : roof.sides) {
    side.overhang = frame.eave_overhang;
    side.plate_height = frame.plate_left;
  }
}

}  // namespace

std::array<RoofPlan, 5> roof_shapes(const FramePlan& frame, Length along) {
  const bool metric = is_by_millimetres(frame.sections.common);
  const Length step = metric ? Length::mm(300) : Length::feet(1);
  const Length across = frame.span;
  const Slope pitch = frame.pitch_left;
  const auto part = [&](Length whole, int parts) { return whole_steps({whole.count / parts}, step); };
  const Length wing = part(along, 3), out = part(across, 2);
  std::array<RoofPlan, 5> shapes = {rectangle_roof(along, across, pitch), l_roof(along, across, wing, out, pitch),
                                    t_roof(along, across, wing, out, pitch), u_roof(along, across, wing, out, pitch),
                                    bay_roof(along, across, part(along, 2), part(along, 8), pitch)};
  for (RoofPlan& shape : shapes) take_over(shape, frame, metric);
  return shapes;
}

}  // namespace bentbook
