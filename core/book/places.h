#pragma once
/// What each place was showing, so that a killed app comes back as it was; stored app-wide under "places".
/// File form in README.md beside this file.

#include <string>
#include <string_view>

#include "cut/triangle.h"
#include "roof/corner/corner_input.h"
#include "roof/rafter.h"
#include "shop/plate_bench.h"

namespace bentbook {

class Fields;

enum class Place : std::uint8_t { kAngles, kRafter, kFrame, kShop, kRaising };

struct AnglesInput {
  TriangleInput triangle;
  Section section{Length::inches(11, 2), Length::inches(15, 2)};
  std::string saw;  ///< its name in the kit
  Angle mitre_between = Angle::degrees(90);
  Length mitre_depth_a = Length::inches(15, 2);
  Length mitre_depth_b = Length::inches(15, 2);
  Length flip_gap = Length::inches(1, 16);  ///< signed, see flip_test.h
  Length flip_depth = Length::inches(15, 2);
  friend bool operator==(const AnglesInput&, const AnglesInput&) = default;
};

struct Places {
  Place active = Place::kRafter;
  AnglesInput angles;
  RafterInput rafter;
  CornerInput corner;
  PlateBenchInput bench;
  std::string kept;  ///< as Kit::kept
  friend bool operator==(const Places&, const Places&) = default;
};

/// As files have them.
void describe(Fields&, Places&);
[[nodiscard]] std::string write_places(const Places& places);
/// Errors as read_kit, with where = "places" or the member.
[[nodiscard]] Result<Places> read_places(std::string_view bytes);

/// A rafter alone, as it stands inside the places file (member "rafter").
[[nodiscard]] std::string write_rafter(const RafterInput& input);
[[nodiscard]] Result<RafterInput> read_rafter(std::string_view bytes);

}  // namespace bentbook
