#include "frame/timber.h"

namespace bentbook {

Sides sides_of(const Wood& wood) {
  const double y = wood.design.breadth.in() / 2, z = wood.design.depth.in() / 2;
  const double breadth = wood.actual.breadth.in(), depth = wood.actual.depth.in();
  Sides sides;
  sides.y_lo = wood.near_is_reference ? -y : y - breadth;
  sides.y_hi = wood.near_is_reference ? -y + breadth : y;
  sides.z_lo = wood.top_is_reference ? z - depth : -z;
  sides.z_hi = wood.top_is_reference ? z : -z + depth;
  return sides;
}

Face reference_face(const Wood& wood, Axis axis) {
  if (axis == Axis::kY) return wood.near_is_reference ? Face::kNear : Face::kFar;
  return wood.top_is_reference ? Face::kTop : Face::kBottom;
}

double under_face(const Sides& s, Face face, double at) {
  switch (face) {
    case Face::kTop:
      return s.z_hi - at;
    case Face::kNear:
      return at - s.y_lo;
    case Face::kBottom:
      return at - s.z_lo;
    case Face::kFar:
      return s.y_hi - at;
  }
  return 0;
}

Gauged gauged(const Wood& wood, const Sides& sides, Axis axis, double a, double b) {
  const Face face = reference_face(wood, axis);
  const double from_a = under_face(sides, face, a), from_b = under_face(sides, face, b);
  return from_a < from_b ? Gauged{face, from_a, from_b} : Gauged{face, from_b, from_a};
}

Solid solid_of(const Timber& timber) {
  Solid solid;
  solid.blank = {{0, timber.sides.y_lo, timber.sides.z_lo}, {timber.length, timber.sides.y_hi, timber.sides.z_hi}};
  for (const EndCut& cut : timber.cuts) solid.cuts.push_back({cut.plane.normal, cut.plane.offset});
  solid.pockets = timber.pockets;
  return solid;
}

bool stands_in_bent(const Timber& timber, int bent) {
  return bent >= 1 && timber.place.bent == bent && timber.place.bay < 0;
}

bool raised_with_bent(const Timber& timber, int bent) {
  switch (timber.kind) {
    case TimberKind::kPost:
    case TimberKind::kTie:
    case TimberKind::kGirt:
    case TimberKind::kKingPost:
    case TimberKind::kQueenPost:
    case TimberKind::kBrace:
      return stands_in_bent(timber, bent);
    default:
      return false;
  }
}

}  // namespace bentbook
