#pragma once
/// A knife plate at the bench, with no frame: what slotter, jig and drill are set to for a square end of this section.

#include "cut/saw.h"
#include "draw/drawing.h"
#include "frame/joints/knife_plate.h"
#include "frame/plan.h"
#include "numeric/result.h"

namespace bentbook {

/// The usual section, and a plate 1/4 in thick with a knife plate's usual measures.
[[nodiscard]] KnifePlate usual_bench_plate();
struct PlateBenchInput {
  Section section{Length::inches(8), Length::inches(8)};
  KnifePlate plate = usual_bench_plate();
  friend bool operator==(const PlateBenchInput&, const PlateBenchInput&) = default;
};
void describe(Fields&, PlateBenchInput&);
/// Before anything was entered: 8 × 8 in and a plate of 1/4, or 200 × 200 mm and one of 6.
[[nodiscard]] PlateBenchInput usual_bench(SizedBy by);

struct PlateBench {
  Length slot;        ///< width: plate and play
  Length gauge;       ///< from either side face to the slot's near side; the slot stands in the middle
  Length depth;       ///< from the shoulder: reach and play, and the base where that is let into the member
  Length row;         ///< pins' axes from the shoulder
  Length first_pin;   ///< …the first from the edge
  Length pin_length;  ///< between the plugs
};
/// Errors: kTooLarge with `where` = "bench.plate.thickness" (no wood beside the slot), "bench.plate.pins.spacing" (pins
/// run out of the section), "bench.plate.pins.plug" (plugs leave no pin through the slot); `limit`: the most that would
/// do.
[[nodiscard]] Result<PlateBench> plate_bench(const PlateBenchInput& input);

/// The end seen from its shoulder, the plate in its slot. Keys: "section.breadth", "section.depth", "plate.thickness"
/// (given), "gauge", "slot" (answers).
[[nodiscard]] draw::Drawing bench_end_drawing(const PlateBenchInput& input, const PlateBench& bench);
/// The end seen from its side. Keys: "depth" (answer), "plate.reach", "plate.pins.from_shoulder",
/// "plate.pins.spacing", "plate.pins.diameter" (given).
[[nodiscard]] draw::Drawing bench_side_drawing(const PlateBenchInput& input, const PlateBench& bench);

}  // namespace bentbook
