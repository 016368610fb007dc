#include "frame/drawings/plate_sketch.h"

#include <algorithm>

#include "frame/drawings/sketch.h"

namespace bentbook {

using draw::Fill;
using draw::Point;
using draw::Stroke;

namespace {

bool opens(const KnifePlate& plate, SlotOpen side) { return plate.open == side || plate.open == SlotOpen::kBoth; }

struct Span {
  double lo = 0, hi = 0;
};
/// `size` in the middle of `whole`, no more than that.
Span middle_of(double whole, double size) {
  const double half = std::min(whole, size) / 2;
  return {whole / 2 - half, whole / 2 + half};
}

void draw_slot(Sketch& sketch, const EndSketch& end, const KnifePlate& plate) {
  const bool over = end.wood.top_is_low;
  const bool high = opens(plate, over ? SlotOpen::kBottom : SlotOpen::kTop);
  const bool low = opens(plate, over ? SlotOpen::kTop : SlotOpen::kBottom);
  const double deep = slot_depth(plate).in() * end.cos;
  Span slot = middle_of(end.tall, (plate.width.in() + 2 * plate.depth_clearance.in()) / end.cos);
  if (high) slot.hi = end.tall;
  if (low) slot.lo = 0;
  sketch.line(end.on(deep, slot.lo), end.on(deep, slot.hi), Stroke::kCut);
  if (!high) sketch.line(end.on(0, slot.hi), end.on(deep, slot.hi), Stroke::kCut);
  if (!low) sketch.line(end.on(0, slot.lo), end.on(deep, slot.lo), Stroke::kCut);
}

void draw_pins(Sketch& sketch, const EndSketch& end, const KnifePlate& plate) {
  const PinPattern& pins = plate.pins;
  const double row = (base_in_member(plate) + pins.from_shoulder).in() * end.cos;
  const auto at = [&](int i) {
    return end.on(row, end.tall / 2 + (i - (pins.count - 1) / 2.0) * pins.spacing.in() / end.cos);
  };
  for (int i = 0; i < pins.count; ++i) sketch.bore(at(i), pins.diameter.in());
  sketch.given_aside(pins.count > 0 ? at(0) : end.on(row, end.tall / 2), "pins.count");
  if (pins.count == 0) return;
  sketch.given_aside(at(pins.count - 1), "pins.diameter");
  sketch.given(end.on(base_in_member(plate).in(), 0), end.on(row, 0), -1, "pins.from_shoulder", end.axis());
  if (pins.count > 1) sketch.given(at(0), at(1), -1.1, "pins.spacing", end.square());
  const draw::Point first = at(pins.count - 1);
  sketch.told(first, end.on(row, end.tall), -1.1, "first_pin", end.square());
}

}  // namespace

draw::Drawing plate_from_side(const KnifePlate& plate, const JointWood& wood) {
  const EndSketch end(wood);
  Sketch sketch;
  const double floor = base_in_member(plate).in(), reach = floor + plate.reach.in() * end.cos;
  const double deep = slot_depth(plate).in() * end.cos, length = deep + std::max(0.55 * end.tall, 3.0);
  end.draw_timbers(sketch, 0, length);
  const Span steel = middle_of(end.tall, plate.width.in() / end.cos);
  sketch.shape({end.on(floor, steel.lo), end.on(reach, steel.lo), end.on(reach, steel.hi), end.on(floor, steel.hi)},
               Fill::kSection);
  const Span base = middle_of(end.tall, plate.base_height.in());
  const double thick = plate.base_thickness.in();
  if (thick > 0) sketch.rectangle({floor - thick, base.lo}, {floor, base.hi}, Fill::kSection);
  draw_slot(sketch, end, plate);
  draw_pins(sketch, end, plate);
  sketch.given(end.on(floor, end.tall), end.on(reach, end.tall), 1, "reach", end.axis());
  sketch.told(end.on(0, end.tall), end.on(deep, end.tall), 2.1, "slot_depth", end.axis());
  sketch.given(end.on(length, steel.lo), end.on(length, steel.hi), -1, "width", end.square());
  if (steel.hi < end.tall - 1e-9)
    sketch.told(end.on(length, steel.hi), end.on(length, end.tall), -1, "plate_top", end.square());
  sketch.given_aside(end.on((reach + deep) / 2, (steel.lo + end.tall / 2) / 2), "depth_clearance");
  sketch.given_aside({floor - thick / 2, base.lo + 0.15 * (base.hi - base.lo)}, "let_in");
  return turned(std::move(sketch.drawing), wood.from);
}

draw::Drawing plate_from_end(const KnifePlate& plate, const JointWood& wood) {
  Sketch sketch;
  const double wide = wood.wide, high = wood.high;
  // The reference face at the left.
  const double near = near_side(wood, slot_width(plate)), middle = near + slot_width(plate).in() / 2;
  const auto about = [&](Length size) { return Span{middle - size.in() / 2, middle + size.in() / 2}; };
  const Span slot = about(slot_width(plate)), steel = about(plate.thickness), base_w = about(plate.base_width);
  const Span base_h = middle_of(high, plate.base_height.in());
  const Span tall = middle_of(high, plate.width.in());
  sketch.rectangle({0, 0}, {wide, high}, Fill::kNone);
  const double plug = plate.pins.plug.in(), radius = plate.pins.diameter.in() / 2;
  for (int i = 0; i < plate.pins.count; ++i) {
    const double at = high / 2 + (i - (plate.pins.count - 1) / 2.0) * plate.pins.spacing.in();
    for (const double edge : {at - radius, at + radius}) sketch.line({0, edge}, {wide, edge}, Stroke::kHidden);
    if (plug > 0) {
      sketch.rectangle({0, at - radius}, {plug, at + radius}, Fill::kShade, Stroke::kThin);
      sketch.rectangle({wide - plug, at - radius}, {wide, at + radius}, Fill::kShade, Stroke::kThin);
    }
  }
  sketch.rectangle({base_w.lo, base_h.lo}, {base_w.hi, base_h.hi}, Fill::kNone);
  for (int i = 0; i < plate.temporary_screws; ++i) {
    // In the base's corners, by turns from either end.
    const double x = i % 2 == 0 ? (base_w.lo * 3 + slot.lo) / 4 : (base_w.hi * 3 + slot.hi) / 4;
    const double in = 0.12 * (1 + i / 2 % 3) * (base_h.hi - base_h.lo);
    sketch.drawing.arcs.push_back({{x, i % 2 == 0 ? base_h.hi - in : base_h.lo + in}, 0.16, 0, 360, Stroke::kVisible});
  }
  const double low = opens(plate, SlotOpen::kBottom) ? 0 : tall.lo, top = opens(plate, SlotOpen::kTop) ? high : tall.hi;
  for (const double side : {slot.lo, slot.hi}) sketch.line({side, low}, {side, top}, Stroke::kCut);
  for (const double floor : {low, top})
    if (floor > 0 && floor < high) sketch.line({slot.lo, floor}, {slot.hi, floor}, Stroke::kCut);
  sketch.drawing.polygons.push_back(
      {{{steel.lo, tall.lo}, {steel.hi, tall.lo}, {steel.hi, tall.hi}, {steel.lo, tall.hi}},
       Stroke::kVisible,
       Fill::kInk,
       false});
  sketch.given({base_w.lo, high}, {base_w.hi, high}, 1, "base_width", {1, 0});
  sketch.given({0, base_h.lo}, {0, base_h.hi}, 1, "base_height", {0, 1});
  sketch.told({0, 0}, {slot.lo, 0}, -1, "gauge", {1, 0});
  sketch.told_aside({slot.hi, low + 0.08 * (top - low)}, "slot_width");
  sketch.given_aside({steel.hi, high / 2 + 0.2 * (tall.hi - tall.lo)}, "thickness");
  sketch.given_aside({(steel.hi + slot.hi) / 2, high / 2 - 0.15 * (tall.hi - tall.lo)}, "slot_clearance");
  sketch.given_aside({base_w.hi, base_h.lo + 0.12 * (base_h.hi - base_h.lo)}, "temporary_screws");
  if (plate.pins.count > 0)
    sketch.given_aside({wide - plug / 2, high / 2 + (plate.pins.count - 1) / 2.0 * plate.pins.spacing.in()},
                       "pins.plug");
  return std::move(sketch.drawing);
}

draw::Drawing plate_mouth(const KnifePlate& plate) {
  Sketch sketch;
  const double half = slot_width(plate).in() / 2, steel = plate.thickness.in() / 2;
  const double leg = plate.relief_leg.in(), radius = plate.root_radius.in(), thick = plate.base_thickness.in();
  const double beside = half + std::max(2.2 * leg, 0.75), up = std::max({3 * leg, 2.5 * radius, 1.2});
  // The shoulder lies at 0 where the base is let into the receiver, else behind the base.
  for (const double way : {-1.0, 1.0}) {
    sketch.line({way * half, up}, {way * half, leg}, Stroke::kCut);
    sketch.line({way * half, leg}, {way * (half + leg), 0}, Stroke::kCut);
    sketch.line({way * (half + leg), 0}, {way * beside, 0});
    sketch.torn({way * beside, 0}, {way * beside, up});
    sketch.line({way * steel, up}, {way * steel, radius});
    const double turn = way < 0 ? 270 : 180;
    if (radius > 0)
      sketch.drawing.arcs.push_back({{way * (steel + radius), radius}, radius, turn, turn + 90, Stroke::kVisible});
  }
  sketch.torn({-half, up}, {-beside, up});
  sketch.torn({half, up}, {beside, up});
  sketch.drawing.polygons.push_back(
      {{{-steel, 0}, {steel, 0}, {steel, up}, {-steel, up}}, Stroke::kVisible, Fill::kSection, false});
  if (thick > 0) sketch.rectangle({-beside, -thick}, {beside, 0}, Fill::kSection);
  sketch.given({beside, -thick}, {beside, 0}, -1, "base_thickness", {0, 1});
  sketch.given({-half - leg, -thick}, {-half, -thick}, -1, "relief_leg", {1, 0});
  sketch.given_aside({steel + 0.3 * radius, 0.3 * radius}, "root_radius");
  sketch.given_aside({-steel - 0.3 * radius, 0.3 * radius}, "weld_crown");
  return std::move(sketch.drawing);
}

}  // namespace bentbook
