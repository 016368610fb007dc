#include "geometry/solid.h"

#include <utility>

#include "geometry/cell.h"
#include "numeric/sorting.h"

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

/// A convex part of what is taken out: a plain box where it is one (most are), else a cell.
struct Piece {
  Box box;  ///< itself, or the cell's bounds
  Cell cell;
  [[nodiscard]] bool plain() const { return cell.empty(); }
};

bool apart(const Box& a, const Box& b) {
  return a.lo.x >= b.hi.x || b.lo.x >= a.hi.x || a.lo.y >= b.hi.y || b.lo.y >= a.hi.y || a.lo.z >= b.hi.z ||
         b.lo.z >= a.hi.z;
}

Box common(const Box& a, const Box& b) {
  const auto more = [](double p, double q) { return p > q ? p : q; };
  const auto less = [](double p, double q) { return p < q ? p : q; };
  return {{more(a.lo.x, b.lo.x), more(a.lo.y, b.lo.y), more(a.lo.z, b.lo.z)},
          {less(a.hi.x, b.hi.x), less(a.hi.y, b.hi.y), less(a.hi.z, b.hi.z)}};
}

VolumeFacts volume_of_box(const Box& box) {
  const Vec3 size = box.hi - box.lo;
  return {size.x * size.y * size.z, 0.5 * (box.lo + box.hi)};
}

VolumeFacts volume_of_piece(const Piece& piece) {
  return piece.plain() ? volume_of_box(piece.box) : volume_of(piece.cell);
}

bool is_box(const Pocket& pocket) {
  const auto& p = pocket.outline;
  if (pocket.radius > 0 || p.count != 4) return false;
  for (int i = 0; i < 4; ++i) {
    const Vec2 a = p[i], b = p[(i + 1) % 4];
    if (a.x != b.x && a.y != b.y) return false;
  }
  return true;
}

/// How far the box reaches along a direction.
double reach(const Box& box, Vec3 n) {
  return (n.x > 0 ? n.x * box.hi.x : n.x * box.lo.x) + (n.y > 0 ? n.y * box.hi.y : n.y * box.lo.y) +
         (n.z > 0 ? n.z * box.hi.z : n.z * box.lo.z);
}

/// A pocket with what is asked of it again and again.
struct Ready {
  const Pocket* pocket = nullptr;
  Box bounds;
};

/// The part of a pocket inside of the body; false where there is none.
bool cut_piece(Clipper& clipper, const Solid& solid, const Ready& ready, Piece& piece) {
  if (apart(ready.bounds, solid.blank)) return false;
  const Pocket& pocket = *ready.pocket;
  const bool box = is_box(pocket);
  piece.box = common(ready.bounds, solid.blank);
  bool clear = box;
  for (const Plane& plane : solid.cuts)
    if (reach(piece.box, plane.normal) > plane.offset + kSamePlace) {
      clear = false;
      break;
    }
  if (clear) return true;
  piece.cell = box ? cell_of(piece.box) : cell_of(pocket);
  if (!box)
    for (const Plane& plane : planes_of(box_pocket(Axis::kZ, solid.blank.lo, solid.blank.hi)))
      clipper.clip(piece.cell, plane);
  for (const Plane& plane : solid.cuts) clipper.clip(piece.cell, plane);
  return !piece.cell.empty();
}

/// vol(∪ cᵢ) = Σᵢ (vol cᵢ − vol(∪ⱼ﹥ᵢ cᵢ ∩ cⱼ)): every intersection of convex pieces is a convex piece.
void add_union(Clipper& clipper, Sum& sum, double sign, const std::vector<Piece>& pieces) {
  std::vector<Piece> shared;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    sum.add(sign, volume_of_piece(pieces[i]));
    shared.clear();
    for (std::size_t j = i + 1; j < pieces.size(); ++j) {
      if (apart(pieces[i].box, pieces[j].box)) continue;
      Piece both;
      both.box = common(pieces[i].box, pieces[j].box);
      if (!pieces[i].plain() || !pieces[j].plain()) {
        both.cell = pieces[i].plain() ? cell_of(pieces[i].box) : pieces[i].cell;
        const std::vector<Plane>* planes = pieces[j].plain() ? nullptr : &pieces[j].cell.planes;
        if (planes != nullptr)
          for (const Plane& plane : *planes) clipper.clip(both.cell, plane);
        else
          for (const Plane& plane : planes_of(box_pocket(Axis::kZ, pieces[j].box.lo, pieces[j].box.hi)))
            clipper.clip(both.cell, plane);
        if (both.cell.empty()) continue;
      }
      shared.push_back(std::move(both));
    }
    if (!shared.empty()) add_union(clipper, sum, -sign, shared);
  }
}

// A round hole's axis, cut by planes square to it and missed by all others: what is left is a sum of lengths.

struct Span {
  double from = 0, to = 0;
};
enum class Through { kMissed, kLengths, kAslant };

double along_axis(Axis axis, Vec3 p) { return axis == Axis::kX ? p.x : axis == Axis::kY ? p.y : p.z; }

Vec3 centre_of(const Pocket& hole) {
  const Vec2 c = hole.outline[0];
  return hole.sweep == Axis::kX ? Vec3{0, c.x, c.y} : hole.sweep == Axis::kY ? Vec3{c.x, 0, c.y} : Vec3{c.x, c.y, 0};
}

/// Largest circle about the axis that holds the hole's polygon.
double girth(const Pocket& hole) {
  const Vec2 corner = corners_of(hole)[0];
  return corner.x - hole.outline[0].x;
}

template <class Planes>
Through span_within(const Pocket& hole, double radius, const Planes& planes, Span& span) {
  const Vec3 centre = centre_of(hole);
  for (const Plane& plane : planes) {
    const double lean = along_axis(hole.sweep, plane.normal);
    const double out = above(plane, centre);
    if (libm::fabs(lean) > 1 - 1e-12) {
      const double at = -out / lean;
      if (lean > 0)
        span.to = at < span.to ? at : span.to;
      else
        span.from = at > span.from ? at : span.from;
    } else if (libm::fabs(lean) < 1e-12) {
      if (out >= radius) return Through::kMissed;
      if (out > -radius) return Through::kAslant;
    } else {
      // An inclined face: no matter where it lies clear of the span.
      const double spread = radius * libm::sqrt(1 - lean * lean);
      const double a = out + lean * span.from, b = out + lean * span.to;
      if (a > spread && b > spread) return Through::kMissed;
      if (a > -spread || b > -spread) return Through::kAslant;
    }
    if (span.from >= span.to) return Through::kMissed;
  }
  return Through::kLengths;
}

FixedList<Plane, kHoleSides + 2> blank_planes(const Solid& solid) {
  return planes_of(box_pocket(Axis::kZ, solid.blank.lo, solid.blank.hi));
}

/// What a hole takes out of the body where none of the others has: false where its length does not tell it.
bool add_hole(Sum& sum, const Solid& solid, const std::vector<Ready>& others, const Ready& hole) {
  const Pocket& own = *hole.pocket;
  const double radius = girth(own);
  Span body{own.from, own.to};
  Through through = span_within(own, radius, blank_planes(solid), body);
  if (through == Through::kLengths) through = span_within(own, radius, solid.cuts, body);
  if (through != Through::kLengths) return through == Through::kMissed;
  std::vector<Span> taken;
  for (const Ready& other : others) {
    if (other.pocket == hole.pocket || apart(hole.bounds, other.bounds)) continue;
    Span span = body;
    through = span_within(own, radius, planes_of(*other.pocket), span);
    if (through == Through::kAslant) return false;
    if (through == Through::kLengths) taken.push_back(span);
  }
  sort_by(taken, [](const Span& a, const Span& b) { return a.from < b.from; });
  const double area = libm::kPi * own.radius * own.radius;
  const Vec3 centre = centre_of(own);
  double at = body.from;
  const auto add = [&](double from, double to) {
    if (to <= from) return;
    const double middle = (from + to) / 2;
    const Vec3 step = own.sweep == Axis::kX   ? Vec3{middle, 0, 0}
                      : own.sweep == Axis::kY ? Vec3{0, middle, 0}
                                              : Vec3{0, 0, middle};
    sum.add(-1, {area * (to - from), centre + step});
  };
  for (const Span& span : taken) {
    add(at, span.from);
    at = span.to > at ? span.to : at;
  }
  add(at, body.to);
  return true;
}

/// Takes the holes that their lengths tell out of the sum; the others join the pockets.
void add_holes(Sum& sum, const Solid& solid, std::vector<Ready>& pockets, const std::vector<Ready>& holes) {
  std::vector<Ready> told, left = pockets;
  Sum unused;
  for (const Ready& hole : holes) (add_hole(unused, solid, pockets, hole) ? told : left).push_back(hole);
  pockets = left;
  Sum part;
  for (const Ready& hole : told) {
    if (!add_hole(part, solid, left, hole)) {  // holes that run into each other: all by the long way
      pockets.insert(pockets.end(), told.begin(), told.end());
      return;
    }
    left.push_back(hole);
  }
  sum.volume += part.volume;
  sum.moment = sum.moment + part.moment;
}

}  // namespace

VolumeFacts volume_of(const Solid& solid) {
  Sum sum;
  bool clear = true;
  for (const Plane& plane : solid.cuts) clear = clear && reach(solid.blank, plane.normal) <= plane.offset + kSamePlace;
  sum.add(1, clear ? volume_of_box(solid.blank) : volume_of(body_of(solid)));
  std::vector<Ready> pockets, holes;
  for (const Pocket& pocket : solid.pockets)
    (pocket.radius > 0 ? holes : pockets).push_back({&pocket, bounds_of(pocket)});
  add_holes(sum, solid, pockets, holes);
  Clipper clipper;
  std::vector<Piece> pieces;
  for (const Ready& ready : pockets) {
    Piece piece;
    if (cut_piece(clipper, solid, ready, piece)) pieces.push_back(std::move(piece));
  }
  add_union(clipper, sum, -1, pieces);
  VolumeFacts facts{sum.volume, {}};
  if (sum.volume > 0) facts.centroid = (1 / sum.volume) * sum.moment;
  return facts;
}

namespace {

Plane placed(const Plane& plane, const Placement& from, const Placement& to) {
  const Vec3 world = to_world_direction(from, plane.normal);
  const double offset = plane.offset + dot(world, from.origin);
  return {to_local_direction(to, world), offset - dot(world, to.origin)};
}

Box bounds_of_points(const std::vector<Vec3>& points) {
  Box box{points[0], points[0]};
  for (const Vec3& p : points) {
    box.lo = {p.x < box.lo.x ? p.x : box.lo.x, p.y < box.lo.y ? p.y : box.lo.y, p.z < box.lo.z ? p.z : box.lo.z};
    box.hi = {p.x > box.hi.x ? p.x : box.hi.x, p.y > box.hi.y ? p.y : box.hi.y, p.z > box.hi.z ? p.z : box.hi.z};
  }
  return box;
}

/// Takes a pocket out of convex cells: each is parted by the pocket's planes, what lies outside of one stays.
template <class Where>
void take_out(Clipper& clipper, std::vector<Cell>& cells, const Pocket& pocket, Where where) {
  std::vector<Cell> left;
  for (Cell& cell : cells) {
    Cell inside = cell;
    std::vector<Cell> outside;
    for (const Plane& there : planes_of(pocket)) {
      const Plane plane = where(there);
      Cell out = inside;
      clipper.clip(out, {-1 * plane.normal, -plane.offset});
      if (!out.empty()) outside.push_back(std::move(out));
      clipper.clip(inside, plane);
      if (inside.empty()) break;
    }
    if (inside.empty())
      left.push_back(std::move(cell));
    else
      for (Cell& out : outside) left.push_back(std::move(out));
  }
  cells.swap(left);
}

}  // namespace

double shared_volume(const Solid& a, const Placement& at_a, const Solid& b, const Placement& at_b) {
  Clipper clipper;
  std::vector<Cell> cells{body_of(a)};
  const auto own = [](const Plane& plane) { return plane; };
  const auto here = [&](const Plane& plane) { return placed(plane, at_b, at_a); };
  for (const Plane& plane : blank_planes(b)) clipper.clip(cells[0], here(plane));
  for (const Plane& plane : b.cuts) clipper.clip(cells[0], here(plane));
  if (cells[0].empty()) return 0;
  const Box in_a = bounds_of_points(cells[0].corners);
  std::vector<Vec3> corners = cells[0].corners;
  for (Vec3& p : corners) p = to_local(at_b, to_world(at_a, p));
  const Box in_b = bounds_of_points(corners);
  // Pegs and pins fill their holes.
  for (const Pocket& pocket : a.pockets)
    if (pocket.radius <= 0 && !cells.empty() && !apart(in_a, bounds_of(pocket))) take_out(clipper, cells, pocket, own);
  for (const Pocket& pocket : b.pockets)
    if (pocket.radius <= 0 && !cells.empty() && !apart(in_b, bounds_of(pocket))) take_out(clipper, cells, pocket, here);
  double volume = 0;
  for (const Cell& cell : cells) volume += volume_of(cell).volume;
  return volume;
}

double shared_volume(const Solid& solid, const Pocket& a, const Pocket& b) {
  if (apart(bounds_of(a), bounds_of(b))) return 0;
  Clipper clipper;
  Cell cell = cell_of(a);
  for (const Plane& plane : planes_of(b)) clipper.clip(cell, plane);
  for (const Plane& plane : blank_planes(solid)) clipper.clip(cell, plane);
  for (const Plane& plane : solid.cuts) clipper.clip(cell, plane);
  return volume_of(cell).volume;
}

}  // namespace bentbook
