#include "geometry/solid.h"

#include "geometry/cell.h"

namespace bentbook {
namespace {

struct Sum {
  double volume = 0;
  Vec3 moment;
  void add(double sign, const VolumeFacts& facts) {
    volume += sign * facts.volume;
    moment = moment + sign * facts.volume * facts.centroid;
  }
};

struct Piece {
  Cell cell;
  Box bounds;
  int pocket = 0;
};

bool apart(const Box& a, const Box& b) {
  return a.lo.x >= b.hi.x || b.lo.x >= a.hi.x || a.lo.y >= b.hi.y || b.lo.y >= a.hi.y || a.lo.z >= b.hi.z ||
         b.lo.z >= a.hi.z;
}

/// vol(∪ cᵢ) = Σᵢ (vol cᵢ − vol(∪ⱼ﹥ᵢ cᵢ ∩ cⱼ)): every intersection of convex cells is a convex cell.
void add_union(Sum& sum, double sign, const std::vector<Piece>& pieces, const std::vector<Pocket>& pockets) {
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    sum.add(sign, volume_of(pieces[i].cell));
    std::vector<Piece> common;
    for (std::size_t j = i + 1; j < pieces.size(); ++j) {
      if (apart(pieces[i].bounds, pieces[j].bounds)) continue;
      Piece both{pieces[i].cell, pieces[j].bounds, pieces[j].pocket};
      for (const Plane& plane : planes_of(pockets[static_cast<std::size_t>(both.pocket)])) clip(both.cell, plane);
      if (!both.cell.empty()) common.push_back(both);
    }
    if (!common.empty()) add_union(sum, -sign, common, pockets);
  }
}

}  // namespace

VolumeFacts volume_of(const Solid& solid) {
  Sum sum;
  const Cell body = body_of(solid);
  sum.add(1, volume_of(body));
  std::vector<Piece> pieces;
  for (std::size_t i = 0; i < solid.pockets.size(); ++i) {
    Piece piece{cell_of(solid.pockets[i]), bounds_of(solid.pockets[i]), static_cast<int>(i)};
    for (const Plane& plane : body.planes) clip(piece.cell, plane);
    if (!piece.cell.empty()) pieces.push_back(piece);
  }
  add_union(sum, -1, pieces, solid.pockets);
  VolumeFacts facts{sum.volume, {}};
  if (sum.volume > 0) facts.centroid = (1 / sum.volume) * sum.moment;
  return facts;
}

}  // namespace bentbook
