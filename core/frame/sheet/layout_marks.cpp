#include "frame/sheet/layout_marks.h"

#include <algorithm>
#include <utility>

#include "geometry/outline.h"
#include "geometry/pocket.h"

namespace bentbook {
namespace {

constexpr double kSame = 1e-9;
constexpr double kLeastArea = 1e-9;
constexpr double kFar = 1000;   ///< past every tip, inches
constexpr double kHair = 1e-6;  ///< inches
constexpr int kBoundary = -1;   ///< an edge that is no line of its own

/// A polygon on a face whose edges know what made them: edge i runs from corner i to the next.
struct Outline {
  std::vector<Vec2> corners;
  std::vector<int> edges;
};

/// Inside where a·x + b·y <= c.
struct HalfPlane {
  double a = 0, b = 0, c = 0;
};

HalfPlane on_face(Vec3 normal, double offset, const FaceFrame& face) {
  if (face.flat) return {normal.x, normal.y, offset - normal.z * face.at};
  return {normal.x, normal.z, offset - normal.y * face.at};
}

/// Sutherland and Hodgman's clip, one half-plane; new edges are tagged. A half-plane without a direction keeps all or
/// nothing.
void clip(Outline& outline, const HalfPlane& half, int tag) {
  Outline out;
  const std::size_t n = outline.corners.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Vec2 p = outline.corners[i], q = outline.corners[i + 1 == n ? 0 : i + 1];
    const double dp = half.a * p.x + half.b * p.y - half.c, dq = half.a * q.x + half.b * q.y - half.c;
    const bool in_p = dp <= kSame, in_q = dq <= kSame;
    if (in_p) {
      out.corners.push_back(p);
      out.edges.push_back(outline.edges[i]);
    }
    if (in_p == in_q) continue;
    const double t = dp / (dp - dq);
    out.corners.push_back({p.x + t * (q.x - p.x), p.y + t * (q.y - p.y)});
    out.edges.push_back(in_p ? tag : outline.edges[i]);
  }
  outline = std::move(out);
}

Outline kept_outline(const Timber& timber, const FaceFrame& face) {
  const double past = timber.length + kFar;
  Outline outline{{{-kFar, face.lo}, {past, face.lo}, {past, face.hi}, {-kFar, face.hi}},
                  {kBoundary, kBoundary, kBoundary, kBoundary}};
  for (const EndCut& cut : timber.cuts) clip(outline, on_face(cut.plane.normal, cut.plane.offset, face), kBoundary);
  return outline;
}

/// `half`: the wood that stays lies inside.
LineMark line_between(Face face, Vec2 a, Vec2 b, const HalfPlane& half, bool keeps_inside) {
  LineMark line;
  line.face = face;
  const bool across = libm::fabs(b.y - a.y) > kSame;
  if (across ? b.y < a.y : b.x < a.x) std::swap(a, b);
  line.a = a;
  line.b = b;
  line.off_square = libm::atan2(b.x - a.x, b.y - a.y);
  const double sign = keeps_inside ? 1 : -1;  // the waste lies along sign · (a, b)
  if (across)
    line.waste = sign * half.a > 0 ? Waste::kTowardB : Waste::kTowardA;
  else
    line.waste = sign * half.b > 0 ? Waste::kTowardHigh : Waste::kTowardLow;
  return line;
}

double length_of(Vec2 a, Vec2 b) { return libm::hypot(b.x - a.x, b.y - a.y); }

double station_on(const CutPlane& plane, Vec2 arris) {
  return (plane.offset - plane.normal.y * arris.x - plane.normal.z * arris.y) / plane.normal.x;
}

bool inside_of_others(const Timber& timber, std::size_t own, Vec3 p) {
  // Past a tip there is no wood: a tenon's shoulders have taken it.
  if (p.x < -kHair || p.x > timber.length + kHair) return false;
  for (std::size_t i = 0; i < timber.cuts.size(); ++i)
    if (i != own && dot(timber.cuts[i].plane.normal, p) > timber.cuts[i].plane.offset + kSame) return false;
  return true;
}

CutMarks cut_marks(const Timber& timber, std::size_t index) {
  const CutPlane& plane = timber.cuts[index].plane;
  CutMarks marks;
  marks.cut = static_cast<int>(index);
  marks.waste = plane.normal.x > 0 ? Waste::kTowardB : Waste::kTowardA;
  for (int arris = 1; arris <= 4; ++arris) {
    const Vec2 at = arris_at(arris, timber.sides);
    const double station = station_on(plane, at);
    marks.stations[static_cast<unsigned>(arris - 1)] = station;
    marks.on_wood[static_cast<unsigned>(arris - 1)] = inside_of_others(timber, index, {station, at.x, at.y});
  }
  for (const Face face : kFaces) {
    const FaceFrame frame = frame_of(face, timber.sides);
    const HalfPlane half = on_face(plane.normal, plane.offset, frame);
    // The line across the whole face, then what the other cuts leave of it.
    double from = 0, to = 1;
    const Vec2 a{(half.c - half.b * frame.lo) / half.a, frame.lo}, b{(half.c - half.b * frame.hi) / half.a, frame.hi};
    std::vector<HalfPlane> others;
    for (std::size_t i = 0; i < timber.cuts.size(); ++i)
      if (i != index) others.push_back(on_face(timber.cuts[i].plane.normal, timber.cuts[i].plane.offset, frame));
    for (const HalfPlane& other : others) {
      const double da = other.a * a.x + other.b * a.y - other.c, db = other.a * b.x + other.b * b.y - other.c;
      if (da > kSame && db > kSame) to = from - 1;
      if (da > kSame && db <= kSame) from = std::max(from, da / (da - db));
      if (da <= kSame && db > kSame) to = std::min(to, da / (da - db));
    }
    const auto at = [&](double t) { return Vec2{a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)}; };
    if (to > from && length_of(at(from), at(to)) > kSame)
      marks.lines.push_back(line_between(face, at(from), at(to), half, true));
  }
  return marks;
}

double deepest_under(const FaceFrame& frame, const Pocket& pocket) {
  const Box box = bounds_of(pocket);
  const double deep = frame.under(frame.outward > 0 ? box.lo : box.hi);
  return deep < frame.thickness ? deep : frame.thickness;
}

double nearest_under(const FaceFrame& frame, const Pocket& pocket) {
  const Box box = bounds_of(pocket);
  return frame.under(frame.outward > 0 ? box.hi : box.lo);
}

/// `under`: drawn that deep under the face, on a floor parallel to it.
void add_on_face(RecessMarks& recess, const Timber& timber, const Pocket& pocket, Face face, double under) {
  const FaceFrame real = frame_of(face, timber.sides);
  FaceFrame frame = real;
  frame.at -= real.outward * under;
  const auto planes = planes_of(pocket);
  Outline outline = kept_outline(timber, frame);
  FixedList<HalfPlane, kHoleSides + 2> halves;
  for (int i = 0; i < planes.count; ++i) {
    halves.add(on_face(planes[i].normal, planes[i].offset, frame));
    // The pocket's own end may lie in the face: it is open there, and this plane draws no line on it.
    const bool parallel = libm::fabs(halves[i].a) < kSame && libm::fabs(halves[i].b) < kSame;
    if (parallel && halves[i].c < -kSame) return;
    if (!parallel) clip(outline, halves[i], i);
  }
  if (outline.corners.size() < 3 || signed_area(outline.corners) < kLeastArea) return;
  RecessOnFace on;
  on.face = face;
  on.outline = outline.corners;
  on.under = under;
  on.depth = deepest_under(real, pocket);
  on.through = on.depth >= real.thickness - kSame;
  for (std::size_t i = 0; i < outline.corners.size(); ++i) {
    const Vec2 a = outline.corners[i], b = outline.corners[i + 1 == outline.corners.size() ? 0 : i + 1];
    if (outline.edges[i] == kBoundary || length_of(a, b) < kSame) continue;
    on.lines.push_back(line_between(face, a, b, halves[outline.edges[i]], false));
  }
  recess.faces.push_back(std::move(on));
}

/// The face square to the sweep: the feature's own where it is one of the two, else the one that the pocket opens.
Face face_of_sweep(const Timber& timber, const Pocket& pocket, int feature) {
  const bool flat = pocket.sweep == Axis::kZ;
  const Face high = flat ? Face::kTop : Face::kFar, low = flat ? Face::kBottom : Face::kNear;
  if (feature >= 0) {
    const Face own = timber.features[static_cast<unsigned>(feature)].face;
    if (own == high || own == low) return own;
  }
  return pocket.to >= frame_of(high, timber.sides).at - kSame ? high : low;
}

RecessMarks recess_marks(const Timber& timber, int index, int feature) {
  const Pocket& pocket = timber.pockets[static_cast<unsigned>(index)];
  RecessMarks recess;
  recess.pocket = index;
  recess.feature = feature;
  recess.diameter = 2 * pocket.radius;
  recess.on_end = pocket.sweep == Axis::kX;
  if (recess.on_end) {
    const Vec2 corner = arris_at(3, timber.sides);
    for (const Vec2& p : pocket.outline) recess.outline.push_back({p.x - corner.x, p.y - corner.y});
    recess.start = pocket.from;
    recess.stop = pocket.to;
  } else {
    recess.face = face_of_sweep(timber, pocket, feature);
    const FaceFrame frame = frame_of(recess.face, timber.sides);
    for (const Vec2& p : pocket.outline) recess.outline.push_back({p.x, p.y - frame.lo});
    recess.start = frame.outward > 0 ? frame.at - pocket.to : pocket.from - frame.at;
    recess.stop = frame.outward > 0 ? frame.at - pocket.from : pocket.to - frame.at;
  }
  for (const Face face : kFaces) add_on_face(recess, timber, pocket, face, 0);
  // What begins under its face opens on another recess's floor.
  if (recess.faces.empty() && feature >= 0 && !recess.on_end) {
    const Face face = timber.features[static_cast<unsigned>(feature)].face;
    const double under = nearest_under(frame_of(face, timber.sides), pocket);
    if (under > kSame) add_on_face(recess, timber, pocket, face, under);
  }
  return recess;
}

/// Stations between which a pocket takes the arris. `inward`: signs of y and z that lead from the arris into the wood:
/// a pocket that the arris only touches takes it where the wood on both of its faces is taken.
Reach taken_by(const Pocket& pocket, Vec2 arris, Vec2 inward) {
  Reach taken{-1e300, 1e300};
  for (const Plane& plane : planes_of(pocket)) {
    const double rest = plane.offset - plane.normal.y * arris.x - plane.normal.z * arris.y;
    if (libm::fabs(plane.normal.x) < kSame) {
      const bool touches = rest < kSame;
      const bool leaves_wood = plane.normal.y * inward.x > kSame || plane.normal.z * inward.y > kSame;
      if (rest < -kSame || (touches && leaves_wood)) return {0, 0};
    } else if (plane.normal.x > 0) {
      taken.to = std::min(taken.to, rest / plane.normal.x);
    } else {
      taken.from = std::max(taken.from, rest / plane.normal.x);
    }
  }
  return taken;
}

int feature_of(const Timber& timber, int pocket) {
  for (std::size_t i = 0; i < timber.features.size(); ++i) {
    const Feature& f = timber.features[i];
    if (pocket >= f.first_pocket && pocket < f.first_pocket + f.pockets) return static_cast<int>(i);
  }
  return -1;
}

}  // namespace

FaceFrame frame_of(Face face, const Sides& s) {
  switch (face) {
    case Face::kTop:
      return {true, s.y_lo, s.y_hi, s.z_hi, 1, s.z_hi - s.z_lo};
    case Face::kNear:
      return {false, s.z_lo, s.z_hi, s.y_lo, -1, s.y_hi - s.y_lo};
    case Face::kBottom:
      return {true, s.y_lo, s.y_hi, s.z_lo, -1, s.z_hi - s.z_lo};
    case Face::kFar:
      return {false, s.z_lo, s.z_hi, s.y_hi, 1, s.y_hi - s.y_lo};
  }
  return {};
}

Vec2 arris_at(int number, const Sides& s) {
  return {number == 1 || number == 4 ? s.y_hi : s.y_lo, number <= 2 ? s.z_hi : s.z_lo};
}

LayoutMarks layout_marks(const Timber& timber) {
  LayoutMarks marks;
  for (std::size_t i = 0; i < timber.cuts.size(); ++i) marks.cuts.push_back(cut_marks(timber, i));
  for (int i = 0; i < static_cast<int>(timber.pockets.size()); ++i)
    marks.recesses.push_back(recess_marks(timber, i, feature_of(timber, i)));
  return marks;
}

std::vector<Vec2> kept_face(const Timber& timber, Face face) {
  return kept_outline(timber, frame_of(face, timber.sides)).corners;
}

std::vector<std::vector<Vec2>> waste_on_face(const Timber& timber, Face face) {
  const FaceFrame frame = frame_of(face, timber.sides);
  std::vector<std::vector<Vec2>> polygons;
  for (std::size_t i = 0; i < timber.cuts.size(); ++i) {
    Outline waste{{{0, frame.lo}, {timber.length, frame.lo}, {timber.length, frame.hi}, {0, frame.hi}},
                  {kBoundary, kBoundary, kBoundary, kBoundary}};
    const CutPlane& own = timber.cuts[i].plane;
    clip(waste, on_face(-1.0 * own.normal, -own.offset, frame), kBoundary);
    for (std::size_t k = 0; k < i; ++k)
      clip(waste, on_face(timber.cuts[k].plane.normal, timber.cuts[k].plane.offset, frame), kBoundary);
    if (waste.corners.size() >= 3 && signed_area(waste.corners) > kLeastArea)
      polygons.push_back(std::move(waste.corners));
  }
  return polygons;
}

std::vector<Vec2> clipped_to(const std::vector<Vec2>& polygon, double from, double to) {
  Outline outline{polygon, std::vector<int>(polygon.size(), kBoundary)};
  clip(outline, {-1, 0, -from}, kBoundary);
  clip(outline, {1, 0, to}, kBoundary);
  return outline.corners.size() >= 3 && signed_area(outline.corners) > kLeastArea ? outline.corners
                                                                                  : std::vector<Vec2>{};
}

Reach arris_reach(const Timber& timber, int number) {
  const Vec2 at = arris_at(number, timber.sides);
  Reach reach{0, timber.length};
  for (const EndCut& cut : timber.cuts) {
    const double station = station_on(cut.plane, at);
    if (cut.plane.normal.x > 0)
      reach.to = std::min(reach.to, station);
    else
      reach.from = std::max(reach.from, station);
  }
  const Vec2 inward{at.x > timber.sides.y_lo ? -1.0 : 1.0, at.y > timber.sides.z_lo ? -1.0 : 1.0};
  // Shoulders: pockets that begin at an end take the arris back to where they stop.
  for (bool moved = true; moved;) {
    moved = false;
    for (const Pocket& pocket : timber.pockets) {
      const Reach taken = taken_by(pocket, at, inward);
      if (taken.to <= taken.from + kSame) continue;
      if (taken.from <= reach.from + kSame && taken.to > reach.from + kSame) moved = true, reach.from = taken.to;
      if (taken.to >= reach.to - kSame && taken.from < reach.to - kSame) moved = true, reach.to = taken.from;
    }
  }
  return reach;
}

CheckMeasures check_measures(const Timber& timber) {
  CheckMeasures check;
  check.overall = timber.length;
  std::array<Reach, 5> reach{};
  for (int i = 1; i <= 4; ++i) {
    reach[static_cast<unsigned>(i)] = arris_reach(timber, i);
    check.arrises[static_cast<unsigned>(i - 1)] =
        reach[static_cast<unsigned>(i)].to - reach[static_cast<unsigned>(i)].from;
  }
  for (unsigned i = 1; i <= 4; ++i) {
    const FaceFrame frame = frame_of(kFaces[i - 1], timber.sides);
    const double width = frame.hi - frame.lo;
    const unsigned before = i, after = i == 4 ? 1 : i + 1;  // arris i opens face i, the next one closes it
    const bool opens_high = i == 1 || i == 2;               // arris 1 has the high y of face 1, arris 2 the high z of 2
    const Reach low = opens_high ? reach[after] : reach[before], high = opens_high ? reach[before] : reach[after];
    check.rising[i - 1] = libm::hypot(high.to - low.from, width);
    check.falling[i - 1] = libm::hypot(low.to - high.from, width);
  }
  return check;
}

}  // namespace bentbook
