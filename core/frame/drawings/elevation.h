#pragma once
/// Timbers in elevation: their outlines as they are seen across the building (a bent's plane) or along it (a wall).
/// Inches of the building: x across or along it, y up.

#include <array>
#include <vector>

#include "draw/drawing.h"
#include "frame/timber.h"

namespace bentbook {

enum class Elevation : std::uint8_t { kAcross, kAlong };
[[nodiscard]] inline draw::Point seen(Vec3 p, Elevation elevation) {
  return {elevation == Elevation::kAcross ? p.x : p.y, p.z};
}

/// What is let into something else is drawn before it, so that its tenons stay unseen.
inline constexpr std::array<TimberKind, kTimberKinds> kDrawnInOrder = {
    TimberKind::kOther,        TimberKind::kJackRafter, TimberKind::kCommonRafter,    TimberKind::kHipRafter,
    TimberKind::kValleyRafter, TimberKind::kBrace,      TimberKind::kDragonTie,       TimberKind::kGirt,
    TimberKind::kJoist,        TimberKind::kCollar,     TimberKind::kQueenPost,       TimberKind::kKingPost,
    TimberKind::kTie,          TimberKind::kPurlin,     TimberKind::kPrincipalRafter, TimberKind::kPost,
    TimberKind::kRidgeBeam,    TimberKind::kPlate,      TimberKind::kHeader,          TimberKind::kSill};

/// Corners of a placed timber's body in the building.
[[nodiscard]] std::vector<Vec3> corners_of(const Timber& timber);
/// The outline of what has these corners.
[[nodiscard]] draw::Polygon elevation_of(const std::vector<Vec3>& corners, Elevation elevation, draw::Fill fill);

}  // namespace bentbook
