#pragma once
/// Roof corners in closed form: hip or valley between two roof planes over an eave corner. Every function here is
/// checked against roof-plane vectors (tests/property). Angles in radians.
///
/// `eave`: the angle between the two eaves, measured inside the roof's plan (90° for a square corner); for a valley use
/// 360° less the inside angle. `own` and `other`: tangents of the two pitches.
/// Source: SOURCES.md, "roof corners".

namespace bentbook {

/// Plan angle between the own side's eave and the hip: atan2(sin W, own / other + cos W). (A plain atan loses the
/// quadrant on one corner in seven.)
[[nodiscard]] double hip_plan_angle(double eave, double own, double other);
/// Slope of the hip: atan(own · sin plan).
[[nodiscard]] double hip_slope(double own, double plan);
/// Backing on the own side, across the hip's top: asin(sin slope · cos plan) of the common slope.
[[nodiscard]] double backing_angle(double own, double plan);
/// Side cut of a jack on its top face, measured from the timber's length: atan(cos slope / tan plan).
[[nodiscard]] double jack_side_cut(double own, double plan);
/// Length that one spacing adds to a jack, along the slope: spacing · tan plan / cos slope.
[[nodiscard]] double jack_difference(double spacing, double own, double plan);
/// Plumb drop of an unbacked hip of a thickness so that its arrises meet the roof; with unlike pitches after the shift.
[[nodiscard]] double hip_drop(double thickness, double eave, double own, double other);
/// How far an unbacked hip is shifted, level and square to itself, toward the shallower roof (positive: toward the
/// own side) before it is dropped.
[[nodiscard]] double hip_shift(double thickness, double eave, double own, double other);

}  // namespace bentbook
