#include "shop/step_walls.h"

#include <algorithm>
#include <utility>

#include "frame/sheet/cut_polygon.h"
#include "frame/sheet/rough.h"
#include "geometry/pocket.h"

namespace bentbook {
namespace {

using Name = StepNumberName;
using Numbers = std::vector<StepNumber>;

constexpr double kSquareWall = 1e-9, kOpen = 1e-9, kNoLean = 1e-6;

double degrees_of(double radians) { return Angle::from_radians(radians).deg(); }

bool has(const Numbers& numbers, Name name) {
  return std::any_of(numbers.begin(), numbers.end(), [&](const StepNumber& n) { return n.name == name; });
}
double value_of(const Numbers& numbers, Name name) {
  for (const StepNumber& n : numbers)
    if (n.name == name) return n.value;
  return 0;
}

Axis across_of(Face face) { return face == Face::kTop || face == Face::kBottom ? Axis::kY : Axis::kZ; }
double along_axis(Axis axis, Vec3 v) { return axis == Axis::kY ? v.y : v.z; }

/// The plane's place on an axis where the other two coordinates are those of `p`.
double place_on(Axis axis, const Plane& plane, Vec3 p) {
  const double n = axis == Axis::kX ? plane.normal.x : along_axis(axis, plane.normal);
  const double own = axis == Axis::kX ? p.x : along_axis(axis, p);
  return (plane.offset - dot(plane.normal, p)) / n + own;
}

/// A side that looks toward the reference face is the near one.
void add_side(Numbers& out, const Timber& timber, Axis axis, double at, double normal, Name near, Name far) {
  const Face reference = reference_face(timber.wood, axis);
  const bool high = reference == Face::kTop || reference == Face::kFar;
  out.push_back({(normal > 0) == high ? near : far, under_face(timber.sides, reference, at), reference});
}

void add_size(Numbers& out, Name size) {
  if (has(out, Name::kFence) && has(out, Name::kFar))
    out.push_back({size, value_of(out, Name::kFar) - value_of(out, Name::kFence)});
}

/// The first is the one that is wanted first.
Numbers in_order(Numbers numbers) {
  std::stable_sort(numbers.begin() + 1, numbers.end(),
                   [](const StepNumber& a, const StepNumber& b) { return a.name < b.name; });
  return numbers;
}

/// A recess as it stands in a face.
struct InFace {
  FaceFrame frame;
  Axis across = Axis::kY, inward = Axis::kZ;
  Vec3 level;       ///< a point where the recess begins
  double into = 0;  ///< sign of the inward coordinate
};

void add_wall(Numbers& out, const Timber& timber, const InFace& in, const Plane& wall) {
  const double n_in = along_axis(in.inward, wall.normal), n_across = along_axis(in.across, wall.normal);
  const bool station = libm::fabs(wall.normal.x) > libm::fabs(n_across);
  const double at = place_on(station ? Axis::kX : in.across, wall, in.level);
  const double run = -n_in / (station ? wall.normal.x : n_across) * in.into;  // an inch deeper
  if (station) {
    const bool from = wall.normal.x < 0;
    out.push_back({from ? Name::kFrom : Name::kTo, at});
    if (libm::fabs(run) > kNoLean) out.push_back({from ? Name::kLeanFrom : Name::kLeanTo, degrees_of(libm::atan(run))});
    return;
  }
  add_side(out, timber, in.across, at, n_across, Name::kFence, Name::kFar);
  if (libm::fabs(run) <= kNoLean) return;
  const Face reference = reference_face(timber.wood, in.across);
  const double away = reference == Face::kTop || reference == Face::kFar ? -1 : 1;
  out.push_back(
      {out.back().name == Name::kFence ? Name::kLeanNear : Name::kLeanFar, degrees_of(libm::atan(away * run))});
}

/// A wall of an end's recess that stands square to the end: measured along the end from the reference face's edge.
void add_end_wall(Numbers& out, const Timber& timber, const Feature& f, Axis axis, const Plane& wall) {
  const Face reference = reference_face(timber.wood, axis);
  const FaceFrame frame = frame_of(reference, timber.sides);
  const Vec3 n = f.shoulder.normal, down = axis == Axis::kY ? Vec3{0, -frame.outward, 0} : Vec3{0, 0, -frame.outward};
  const Vec3 along = unit(down - dot(down, n) * n);
  Vec3 edge{};
  (axis == Axis::kY ? edge.y : edge.z) = frame.at;
  edge.x = (f.shoulder.offset - dot(n, edge)) / n.x;
  const double sign = dot(wall.normal, along);
  out.push_back({sign < 0 ? Name::kBegins : Name::kEnds, (wall.offset - dot(wall.normal, edge)) / sign, reference});
}

/// A face that is open to a recess in an end while the other one is not: how deep it goes from there.
void add_depth_from_open(Numbers& out, const Timber& timber, Axis axis) {
  const bool begins = has(out, Name::kBegins);
  if (begins == has(out, Name::kEnds)) return;
  const Face low = axis == Axis::kY ? Face::kNear : Face::kBottom, high = axis == Axis::kY ? Face::kFar : Face::kTop;
  const Face reference = reference_face(timber.wood, axis);
  const double wall = value_of(out, begins ? Name::kBegins : Name::kEnds);
  if (begins)
    out.push_back(
        {Name::kDepth, frame_of(reference, timber.sides).thickness - wall, reference == low ? high : low, false, true});
  else
    out.push_back({Name::kDepth, wall, reference, false, true});
}

/// A bottom that is not square across: where it comes to both edges.
void add_bottom(Numbers& out, const Timber& timber, Axis axis, const Plane& floor) {
  if (libm::fabs(along_axis(axis, floor.normal)) < kNoLean) return;
  const Face low = axis == Axis::kY ? Face::kNear : Face::kBottom, high = axis == Axis::kY ? Face::kFar : Face::kTop;
  for (const Face face : {high, low}) {
    const double at = frame_of(face, timber.sides).at;
    const double station = (floor.offset - along_axis(axis, floor.normal) * at) / floor.normal.x;
    out.push_back({Name::kBottom, station, face, false, true});
  }
}

}  // namespace

bool goes_through(const Timber& timber, Face face, double depth) {
  return depth >= frame_of(face, timber.sides).thickness - kNoLean;
}

Numbers recess_numbers(const Timber& timber, const Feature& f) {
  const Pocket& pocket = timber.pockets[static_cast<std::size_t>(f.first_pocket)];
  const auto planes = planes_of(pocket);
  const Box box = bounds_of(pocket);
  InFace in;
  in.frame = frame_of(f.face, timber.sides);
  in.across = across_of(f.face);
  in.inward = in.across == Axis::kY ? Axis::kZ : Axis::kY;
  in.into = -in.frame.outward;
  const double from = in.frame.under(in.into < 0 ? box.hi : box.lo), to = in.frame.under(in.into < 0 ? box.lo : box.hi);
  const double start = from > kOpen ? from : 0;
  (in.inward == Axis::kZ ? in.level.z : in.level.y) = in.frame.at + in.into * start;
  Numbers out{{Name::kDepth, std::min(to, in.frame.thickness), f.face, goes_through(timber, f.face, to)}};
  if (start > 0) out.push_back({Name::kStart, start, f.face});
  for (int i = 0; i < planes.count; ++i)
    if (libm::fabs(along_axis(in.inward, planes[i].normal)) < 1 - kSquareWall && is_wall(timber, planes, i))
      add_wall(out, timber, in, planes[i]);
  add_size(out, Name::kWidth);
  return in_order(std::move(out));
}

Numbers end_recess_numbers(const Timber& timber, const Feature& f) {
  const Axis across = across_of(f.face), other = across == Axis::kY ? Axis::kZ : Axis::kY;
  const bool pair = f.pockets > 1;  // both edges of a slot's mouth, off at 45°
  // A relief is measured square to the end, a slot along the timber.
  const bool square = f.kind == FeatureKind::kRelief;
  Numbers out{{Name::kDepth, square ? relief_leg(f) : f.depth}};
  const auto planes = planes_of(timber.pockets[static_cast<std::size_t>(f.first_pocket)]);
  for (int i = 0; i < planes.count; ++i) {
    const Plane& wall = planes[i];
    if (!is_wall(timber, planes, i)) continue;
    if (libm::fabs(along_axis(across, wall.normal)) > 1 - kSquareWall) {
      if (!pair)
        add_side(out, timber, across, wall.offset * along_axis(across, wall.normal), along_axis(across, wall.normal),
                 Name::kFence, Name::kFar);
    } else if (libm::fabs(along_axis(other, wall.normal)) > 1 - kSquareWall) {
      add_side(out, timber, other, wall.offset * along_axis(other, wall.normal), along_axis(other, wall.normal),
               Name::kBegins, Name::kEnds);
    } else if (f.kind == FeatureKind::kLetIn && libm::fabs(dot(wall.normal, f.shoulder.normal)) < kSquareWall) {
      add_end_wall(out, timber, f, other, wall);
    } else if (f.kind == FeatureKind::kSlot && libm::fabs(along_axis(across, wall.normal)) < kSquareWall) {
      add_bottom(out, timber, other, wall);
    }
  }
  if (f.kind == FeatureKind::kSlot) add_depth_from_open(out, timber, other);
  add_size(out, Name::kWidth);
  if (pair) out.push_back({Name::kTilt, 45});
  return in_order(std::move(out));
}

}  // namespace bentbook
