#include "frame/drawings/joint_drawing.h"

#include <initializer_list>

#include "frame/drawings/lap_sketch.h"
#include "frame/drawings/plate_sketch.h"
#include "frame/drawings/wood_sketch.h"

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

std::optional<double> joint_answer(const JointType& type, const JointWood& wood, std::string_view key) {
  if (const auto* plate = std::get_if<KnifePlate>(&type)) {
    if (key == "slot_depth") return slot_depth(*plate).in();
    if (key == "slot_width") return slot_width(*plate).in();
    if (key == "gauge") return (wood.wide - slot_width(*plate).in()) / 2;
  }
  if (const auto* tenon = std::get_if<MortiseTenon>(&type))
    if (key == "fence") return (wood.wide - tenon->thickness.in()) / 2;
  if (const auto* dovetail = std::get_if<HalfDovetail>(&type))
    if (key == "fence") return (wood.wide - dovetail->thickness.in()) / 2;
  if (std::holds_alternative<HalfLap>(type) && key == "lap_depth") return wood.wide / 2;
  return std::nullopt;
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
