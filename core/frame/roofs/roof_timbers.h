#pragma once
/// Inside the frame solvers: timbers of a solved roof among a frame's own, seated on its plates and joined to each
/// other. The roof stands in the frame's axes.

#include <span>
#include <string>
#include <vector>

#include "frame/placing/work.h"
#include "roof/plan/solve_roof.h"

namespace bentbook {

[[nodiscard]] TimberKind frame_kind(RoofTimberKind kind);

/// As the roof has cut it; `leave_open`: a roof timber against which its end B is cut later by a joint of the frame,
/// −1. Index of the new timber, −1 where an override takes it out.
int place_roof_timber(Work& work, const RoofTimber& timber, const std::string& mark, GridPlace place,
                      int leave_open = -1);

/// Where its notch's level part lies.
[[nodiscard]] double seat_height(const RoofTimber& timber);

/// A rafter over a plate, the seat in the notch that the roof has cut. `first`: the notch is no feature of the timber
/// yet. `within`: what of the plate's top is there to bear, world planes looking out; none: all of it.
struct RoofSeating {
  const RoofTimber& rafter;
  int timber = -1, plate = -1;
  Vec3 outward;  ///< the plate's outer face looks there
  bool first = true;
  std::span<const Plane> within{};
};
/// Whether there is such a seat: false, and nothing done, where `within` leaves none of it.
bool seat_on_plate(Work& work, const RoofSeating& seating);

/// Where an end bears on another timber of the roof. `placed`: by timber of the roof, its index in the frame.
void join_roof_contact(Work& work, const RoofSolution& roof, const RoofContact& contact,
                       const std::vector<int>& placed);

}  // namespace bentbook
