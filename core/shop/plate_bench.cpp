#include "shop/plate_bench.h"

#include "frame/metric_sizes.h"
#include "measure/fields.h"

namespace bentbook {
namespace {

using draw::Drawing;
using draw::Fill;
using draw::Meaning;
using draw::Point;
using draw::Stroke;

void add_rectangle(Drawing& d, Point low, Point high, Fill fill, bool outlined = true) {
  d.polygons.push_back({{low, {high.x, low.y}, high, {low.x, high.y}}, Stroke::kVisible, fill, outlined});
}

/// Wood that a slot leaves at each side, or there is no cheek to speak of.
constexpr Length kLeastBeside = Length::inches(1, 16);

Length half_of(Length whole) { return {whole.count / 2}; }

}  // namespace

KnifePlate usual_bench_plate() {
  KnifePlate plate;
  plate.thickness = Length::inches(1, 4);
  return plate;
}

PlateBenchInput usual_bench(SizedBy by) {
  PlateBenchInput input;
  if (by == SizedBy::kInches) return input;
  input.section = {metric_size(input.section.breadth), metric_size(input.section.depth)};
  input.plate = in_millimetres(input.plate);
  return input;
}

void describe(Fields& fields, PlateBenchInput& input) {
  fields.object("section", input.section);
  fields.object("plate", input.plate);
}

Result<PlateBench> plate_bench(const PlateBenchInput& input) {
  const KnifePlate& plate = input.plate;
  const PinPattern& pins = plate.pins;
  PlateBench out;
  out.slot = slot_width(plate);
  const Length most = input.section.breadth - plate.slot_clearance - kLeastBeside * 2;
  if (plate.thickness > most) return fail(ErrorCode::kTooLarge, "bench.plate.thickness", -1, most.count);
  out.gauge = slot_gauge(plate, input.section.breadth);
  out.depth = slot_depth(plate);
  out.row = base_in_member(plate) + pins.from_shoulder;
  const Length spread = pins.spacing * (pins.count > 0 ? pins.count - 1 : 0);
  out.first_pin = first_of_row(pins, pins.count, input.section.depth);
  const Length clear = input.section.depth - pins.diameter;
  if (pins.count > 1 && spread > clear)
    return fail(ErrorCode::kTooLarge, "bench.plate.pins.spacing", -1, clear.count / (pins.count - 1));
  out.pin_length = input.section.breadth - pins.plug * 2;
  if (pins.count > 0 && out.pin_length < out.slot)
    return fail(ErrorCode::kTooLarge, "bench.plate.pins.plug", -1, half_of(input.section.breadth - out.slot).count);
  return out;
}

Drawing bench_end_drawing(const PlateBenchInput& input, const PlateBench& bench) {
  const double wide = input.section.breadth.in(), high = input.section.depth.in();
  const double near = bench.gauge.in(), far = near + bench.slot.in(), middle = wide / 2;
  const double thick = input.plate.thickness.in() / 2;
  // The plate as it stands in a slot that is open at one side or both.
  const double tall = input.plate.width.in() < high ? input.plate.width.in() : high;
  Drawing d;
  add_rectangle(d, {0, 0}, {near, high}, Fill::kSection);
  add_rectangle(d, {far, 0}, {wide, high}, Fill::kSection);
  add_rectangle(d, {middle - thick, (high - tall) / 2}, {middle + thick, (high + tall) / 2}, Fill::kInk, false);
  for (const double side : {near, far}) d.lines.push_back({{side, 0}, {side, high}, Stroke::kCut});
  d.dimensions.push_back({{0, high}, {wide, high}, 1, {}, "section.breadth", Meaning::kGiven});
  d.dimensions.push_back({{0, 0}, {0, high}, 1, {}, "section.depth", Meaning::kGiven});
  d.dimensions.push_back({{0, 0}, {near, 0}, -1, {}, "gauge", Meaning::kAnswer});
  d.notes.push_back({{wide * 1.35, high * 0.72}, "plate.thickness", Meaning::kGiven});
  d.notes.push_back({{wide * 1.35, high * 0.34}, "slot", Meaning::kAnswer});
  return d;
}

Drawing bench_side_drawing(const PlateBenchInput& input, const PlateBench& bench) {
  const KnifePlate& plate = input.plate;
  const double high = input.section.depth.in(), depth = bench.depth.in(), length = depth * 1.45;
  const double foot = base_in_member(plate).in();
  const double tall = plate.width.in() < high ? plate.width.in() : high;
  Drawing d;
  add_rectangle(d, {foot, (high - tall) / 2}, {foot + plate.reach.in(), (high + tall) / 2}, Fill::kSection);
  d.lines.push_back({{0, 0}, {length, 0}, Stroke::kVisible});
  d.lines.push_back({{0, high}, {length, high}, Stroke::kVisible});
  d.lines.push_back({{0, 0}, {0, high}, Stroke::kVisible});
  d.lines.push_back({{length, 0}, {length, high}, Stroke::kThin});
  d.lines.push_back({{depth, 0}, {depth, high}, Stroke::kCut});
  const double row = bench.row.in(), radius = plate.pins.diameter.in() / 2, cross = radius * 2;
  for (int i = 0; i < plate.pins.count; ++i) {
    const double at = bench.first_pin.in() + i * plate.pins.spacing.in();
    d.arcs.push_back({{row, at}, radius, 0, 360, Stroke::kVisible});
    d.lines.push_back({{row - cross, at}, {row + cross, at}, Stroke::kCentre});
    d.lines.push_back({{row, at - cross}, {row, at + cross}, Stroke::kCentre});
  }
  d.dimensions.push_back({{0, high}, {depth, high}, 1, {}, "depth", Meaning::kAnswer});
  d.dimensions.push_back({{0, 0}, {row, 0}, -1, {}, "plate.pins.from_shoulder", Meaning::kGiven});
  if (plate.pins.count > 1) {
    const double low = bench.first_pin.in();
    d.dimensions.push_back(
        {{length, low}, {length, low + plate.pins.spacing.in()}, -1, {}, "plate.pins.spacing", Meaning::kGiven});
  }
  if (plate.pins.count > 0) d.notes.push_back({{depth * 0.82, -high * 0.3}, "plate.pins.diameter", Meaning::kGiven});
  return d;
}

}  // namespace bentbook
