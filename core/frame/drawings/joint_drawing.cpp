#include "frame/drawings/joint_drawing.h"

#include <initializer_list>

#include "frame/drawings/lap_sketch.h"
#include "frame/drawings/plate_sketch.h"
#include "frame/drawings/wood_sketch.h"
#include "numeric/libm.h"

namespace bentbook {
namespace {

using Drawings = std::vector<JointDrawing>;

Drawings drawings_of(const HousedButt& butt, const JointWood& wood) {
  return {{JointView::kSide, butt_from_side(butt, wood)}};
}
Drawings drawings_of(const KnifePlate& plate, const JointWood& wood) {
  return {{JointView::kSide, plate_from_side(plate, wood)},
          {JointView::kEnd, plate_from_end(plate, wood)},
          {JointView::kMouth, plate_mouth(plate)}};
}
Drawings drawings_of(const MortiseTenon& tenon, const JointWood& wood) {
  return {{JointView::kSide, tenon_from_side(tenon, wood)}, {JointView::kEnd, tenon_from_end(tenon, wood)}};
}
Drawings drawings_of(const BirdsMouth& mouth, const JointWood& wood) {
  return {{JointView::kSide, mouth_from_side(mouth, wood)}};
}
Drawings drawings_of(const RafterPeak& peak, const JointWood& wood) {
  Drawings out{{JointView::kSide, peak_from_side(peak, wood)}};
  if (peak.tongue_and_fork) out.push_back({JointView::kEnd, peak_from_end(peak, wood)});
  return out;
}
Drawings drawings_of(const HalfLap& lap, const JointWood& wood) {
  return {{JointView::kSide, lap_from_side(lap, wood)}};
}
Drawings drawings_of(const Scarf& scarf, const JointWood& wood) {
  return {{JointView::kSide, scarf_from_side(scarf, wood)}};
}
Drawings drawings_of(const HalfDovetail& joint, const JointWood& wood) {
  return {{JointView::kSide, dovetail_from_side(joint, wood)}, {JointView::kEnd, dovetail_from_end(joint, wood)}};
}

bool among(std::string_view measure, std::initializer_list<std::string_view> all) {
  for (const std::string_view one : all)
    if (one == measure) return true;
  return false;
}
/// What is asked of a row of pins or pegs: nothing of none, no distance between one.
bool row_uses(std::string_view measure, int count) {
  if (count == 0 && (measure.starts_with("peg.") || measure.starts_with("pins.")) && measure != "pins.count")
    return false;
  return count > 1 || !measure.ends_with(".spacing");
}

}  // namespace

std::vector<JointDrawing> joint_drawings(const JointType& type, const JointWood& wood) {
  return std::visit([&](const auto& joint) { return drawings_of(joint, wood); }, type);
}

namespace {

double first_of(double across, const PinPattern& row, int count) {
  return first_of_row(row, count, Length::from_inches(across)).in();
}

std::optional<double> answer_of(const KnifePlate& plate, const JointWood& wood, std::string_view key) {
  if (key == "slot_depth") return slot_depth(plate).in();
  if (key == "slot_width") return slot_width(plate).in();
  if (key == "gauge") return near_side(wood, slot_width(plate));
  if (key == "plate_top") return (wood.high - plate.width.in()) / 2;
  if (key == "first_pin") return first_of(wood.high, plate.pins, plate.pins.count);
  return std::nullopt;
}
std::optional<double> answer_of(const MortiseTenon& tenon, const JointWood& wood, std::string_view key) {
  if (key == "fence") return near_side(wood, tenon.thickness);
  // The row stands in the tenon's middle.
  if (key == "first_peg")
    return tenon.shoulder_top.in() +
           first_of(wood.high - (tenon.shoulder_top + tenon.shoulder_bottom).in(), tenon.peg, tenon.pegs);
  return std::nullopt;
}
std::optional<double> answer_of(const HalfDovetail& joint, const JointWood& wood, std::string_view key) {
  if (key == "fence") return near_side(wood, joint.thickness);
  if (key == "first_peg")
    return first_of(wood.high - dovetail_length(joint, wood) / joint.one_in, joint.peg, joint.pegs);
  return std::nullopt;
}
std::optional<double> answer_of(const HalfLap&, const JointWood& wood, std::string_view key) {
  return key == "lap_depth" ? std::optional(wood.wide / 2) : std::nullopt;
}
std::optional<double> answer_of(const BirdsMouth& mouth, const JointWood& wood, std::string_view key) {
  const double seat = mouth.seat.in(), secant = libm::hypot(1, wood.lean);
  if (key == "heel") return seat * wood.lean;
  if (key == "stand") return wood.high * secant - seat * wood.lean;
  if (key == "mouth_depth") return seat * wood.lean / secant;
  if (key == "slope") return libm::atan(wood.lean) * 180 / libm::kPi;
  return std::nullopt;
}
template <class Other>
std::optional<double> answer_of(const Other&, const JointWood&, std::string_view) {
  return std::nullopt;
}

}  // namespace

std::optional<double> joint_answer(const JointType& type, const JointWood& wood, std::string_view key) {
  return std::visit([&](const auto& joint) { return answer_of(joint, wood, key); }, type);
}

bool is_used(const JointType& type, std::string_view measure) {
  if (const auto* plate = std::get_if<KnifePlate>(&type)) return row_uses(measure, plate->pins.count);
  if (const auto* tenon = std::get_if<MortiseTenon>(&type))
    return row_uses(measure, tenon->pegs) && (tenon->pegs > 0 || measure != "drawbore");
  if (const auto* dovetail = std::get_if<HalfDovetail>(&type))
    return row_uses(measure, dovetail->pegs) && !(dovetail->through && among(measure, {"length", "depth_clearance"}));
  if (const auto* lap = std::get_if<HalfLap>(&type))
    return row_uses(measure, lap->pegs) && !among(measure, {"peg.from_shoulder", "peg.spacing"});
  if (const auto* scarf = std::get_if<Scarf>(&type))
    return row_uses(measure, scarf->pegs) && !among(measure, {"peg.spacing", "clearance"}) &&
           (scarf->pegs > 1 || measure != "peg.from_shoulder");
  if (const auto* peak = std::get_if<RafterPeak>(&type))
    return measure == "tongue_and_fork" ||
           (peak->tongue_and_fork && !among(measure, {"peg.from_shoulder", "peg.spacing"}));
  return true;
}

}  // namespace bentbook
