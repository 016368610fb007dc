#pragma once
/// Planes of cuts and pockets as polygons within the wood of one timber.

#include <vector>

#include "frame/timber.h"

namespace bentbook {

/// in², less is no cut and no wall.
inline constexpr double kLeastCut = 1e-6;

/// The plane's part that lies in the wood between the faces and the end cuts.
[[nodiscard]] std::vector<Vec3> polygon_of(const Timber& timber, const CutPlane& plane);
/// A pocket's side, or a plane in its place, within the pocket and the wood. `own`: the side's number among `planes`.
[[nodiscard]] std::vector<Vec3> side_of(const Timber& timber, const CutPlane& side,
                                        const FixedList<Plane, kHoleSides + 2>& planes, int own);
[[nodiscard]] double area_of(const std::vector<Vec3>& polygon);
/// Whether a side of a pocket is wood: not where it is open, nor in a face or an end cut.
[[nodiscard]] bool is_wall(const Timber& timber, const FixedList<Plane, kHoleSides + 2>& planes, int own);
[[nodiscard]] bool same_plane(const CutPlane& a, const CutPlane& b);
/// A plane that lies in a face or an end cut.
[[nodiscard]] bool on_boundary(const Timber& timber, const CutPlane& plane);

}  // namespace bentbook
