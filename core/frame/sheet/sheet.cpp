#include "frame/sheet/sheet.h"

#include <algorithm>
#include <utility>

#include "frame/facts.h"
#include "frame/sheet/cut_polygon.h"
#include "geometry/pocket.h"
#include "numeric/sorting.h"

namespace bentbook {
namespace {

constexpr double kSameOnSheet = 1e-7;

using Polygon = std::vector<Vec3>;

std::optional<Graduations> graduations_of(const Saw& saw, double across, Angle angle) {
  if (saw.kind == SawKind::kHand) return std::nullopt;
  const auto found = graduations(saw, Length::from_inches(across), angle);
  return found ? std::optional(*found) : std::nullopt;
}

/// The line of a cut on one face: its ends by across coordinate, and how deep the cut goes under it.
struct FaceLine {
  Vec2 low{0, 1e300}, high{0, -1e300};
  double deepest = 0;
};

FaceLine line_on(const Polygon& polygon, const FaceFrame& face) {
  FaceLine line;
  for (const Vec3& p : polygon) {
    line.deepest = std::max(line.deepest, face.under(p));
    if (libm::fabs(face.under(p)) > kSameOnSheet) continue;
    const double across = face.flat ? p.y : p.z;
    if (across < line.low.y) line.low = {p.x, across};
    if (across > line.high.y) line.high = {p.x, across};
  }
  return line;
}

SawCut pass_on_face(const Timber& timber, const CutPlane& plane, const Saw& saw, Face face, const FaceLine& line) {
  const FaceFrame frame = frame_of(face, timber.sides);
  const Length width = Length::from_inches(line.high.y - line.low.y), deep = Length::from_inches(line.deepest);
  SawCut cut;
  cut.plane = plane;
  cut.face = face;
  cut.on_reference = is_reference(timber.wood, face);
  cut.blade = blade_angles(plane, face);
  cut.pass = pass_on(saw, frame.flat ? Section{width, deep} : Section{deep, width}, plane, face);
  cut.from = line.low.x;
  cut.to = line.high.x;
  cut.at_low = line.low.y <= frame.lo + kSameOnSheet;
  cut.at_high = line.high.y >= frame.hi - kSameOnSheet;
  cut.depth = line.deepest;
  cut.through = line.deepest >= frame.thickness - kSameOnSheet;
  // From the other face a cut that is not through cannot be met.
  if (!cut.through && cut.pass.faces == Faces::kTwo) {
    cut.pass.faces = Faces::kByHand;
    cut.pass.left = cut.pass.needed - saw.reach;
  }
  cut.swing = graduations_of(saw, width.in(), cut.pass.swing);
  cut.tilt = graduations_of(saw, line.deepest, cut.pass.tilt);
  return cut;
}

bool better(const SawCut& a, const SawCut& b) {
  if (a.pass.faces != b.pass.faces) return a.pass.faces < b.pass.faces;
  const bool tilted_a = a.pass.tilt != Angle{}, tilted_b = b.pass.tilt != Angle{};
  if (tilted_a != tilted_b) return tilted_b;
  if (a.pass.tilt != b.pass.tilt) return a.pass.tilt < b.pass.tilt;
  if (a.on_reference != b.on_reference) return a.on_reference;
  return a.pass.needed < b.pass.needed;
}

/// A shoulder is sawn from the face that its line crosses from arris to arris, down to the cheek.
bool better_shoulder(const SawCut& a, const SawCut& b) {
  const bool whole_a = a.at_low && a.at_high, whole_b = b.at_low && b.at_high;
  return whole_a != whole_b ? whole_a : better(a, b);
}

std::vector<SawCut> ways_of(const Timber& timber, const CutPlane& plane, const Polygon& polygon, const Saw& saw) {
  std::vector<SawCut> ways;
  for (const Face face : kFaces) {
    const FaceLine line = line_on(polygon, frame_of(face, timber.sides));
    if (line.high.y - line.low.y > kSameOnSheet) ways.push_back(pass_on_face(timber, plane, saw, face, line));
  }
  return ways;
}

/// From the face ridden and, where the blade does not reach, from the one opposite.
Pass along_pass(Length needed, const Saw& saw) {
  Pass pass;
  pass.needed = needed;
  if (saw.kind == SawKind::kHand || needed <= saw.reach) return pass;
  pass.bite = Bite::kReach;
  pass.faces = Faces::kTwo;
  if (needed <= saw.reach * 2) return pass;
  pass.faces = Faces::kByHand;
  pass.left = needed - saw.reach * 2;
  return pass;
}

/// A cheek is gauged from the reference face nearest to square with it; its depth is as long as it runs.
SawCut cheek_of(const Timber& timber, const CutPlane& plane, const Polygon& polygon, const Saw& saw) {
  SawCut cut;
  cut.plane = plane;
  cut.along = true;
  cut.through = false;
  const bool level = libm::fabs(plane.normal.z) > libm::fabs(plane.normal.y);
  if (level)
    cut.face = timber.wood.near_is_reference ? Face::kNear : Face::kFar;
  else
    cut.face = timber.wood.top_is_reference ? Face::kTop : Face::kBottom;
  double lo = 1e300, hi = -1e300, deepest = 0;
  const FaceFrame frame = frame_of(cut.face, timber.sides);
  for (const Vec3& p : polygon) {
    lo = std::min(lo, p.x);
    hi = std::max(hi, p.x);
    deepest = std::max(deepest, frame.under(p));
  }
  cut.pass = along_pass(Length::from_inches(deepest), saw);
  cut.from = std::max(lo, 0.0);
  cut.to = std::min(hi, timber.length);
  cut.depth = cut.to - cut.from;
  return cut;
}

bool is_sawn(FeatureKind kind) {
  switch (kind) {
    case FeatureKind::kTenon:
    case FeatureKind::kTongue:
    case FeatureKind::kLap:
    case FeatureKind::kScarf:
    case FeatureKind::kBirdsMouth:
      return true;
    default:
      return false;
  }
}

/// Whether a side is sawn along the grain: a cheek, or a tenon's edge that leaves the grain by no more than 1 in 4.
bool is_ripped(FeatureKind kind, const CutPlane& side) {
  return libm::fabs(side.normal.x) < (kind == FeatureKind::kTenon ? 0.2426 : kSameOnSheet);
}

class SheetMaker {
 public:
  SheetMaker(const Frame& frame, int timber, const Saw& saw)
      : frame_(frame), timber_(frame.timbers[static_cast<unsigned>(timber)]), saw_(saw) {
    sheet_.timber = timber;
    sheet_.saw = saw.kind;
  }

  Sheet make() {
    sheet_.marks = layout_marks(timber_);
    sheet_.floating = floating_faces(timber_);
    find_mates();
    find_pairs();
    warn();
    return make_sawing();
  }

  Sheet make_sawing() {
    sheet_.check = check_measures(timber_);
    for (int i = 0; i < static_cast<int>(timber_.cuts.size()); ++i) end_cut(i);
    for (int i = 0; i < static_cast<int>(timber_.features.size()); ++i) feature(i);
    sort_by(sheet_.steps, [this](const BenchStep& a, const BenchStep& b) { return before(a, b); });
    return std::move(sheet_);
  }

 private:
  void end_cut(int index) {
    BenchStep step{WorkOn::kEndCut, index, {}};
    const CutPlane& plane = timber_.cuts[static_cast<unsigned>(index)].plane;
    std::vector<SawCut> ways = ways_of(timber_, plane, polygon_of(timber_, plane), saw_);
    sort_by(ways, better);
    if (!ways.empty()) add(step, ways.front());
    sheet_.steps.push_back(std::move(step));
  }

  void feature(int index) {
    BenchStep step{WorkOn::kFeature, index, {}};
    const Feature& f = timber_.features[static_cast<unsigned>(index)];
    if (is_sawn(f.kind))
      for (int i = f.first_pocket; i < f.first_pocket + f.pockets; ++i) saw_sides(step, f, i);
    sheet_.steps.push_back(std::move(step));
  }

  void saw_sides(BenchStep& step, const Feature& f, int own) {
    const auto planes = planes_of(timber_.pockets[static_cast<unsigned>(own)]);
    for (int i = 0; i < planes.count; ++i) {
      // The pocket's inside is the waste.
      const CutPlane side{-1.0 * planes[i].normal, -planes[i].offset};
      const Polygon polygon = side_of(timber_, side, planes, i);
      if (area_of(polygon) < kLeastCut || on_boundary(timber_, side) || borders_waste(f, own, polygon, planes[i]))
        continue;
      if (is_ripped(f.kind, side)) {
        if (!known(step, side, std::nullopt)) add(step, cheek_of(timber_, side, polygon, saw_));
        continue;
      }
      std::vector<SawCut> ways = ways_of(timber_, side, polygon, saw_);
      if (ways.empty()) ways = ways_of(timber_, side, past_sweep(side, planes, i), saw_);
      sort_by(ways, f.kind == FeatureKind::kBirdsMouth ? better : better_shoulder);
      if (!ways.empty() && !known(step, side, ways.front().face)) add(step, ways.front());
    }
  }

  /// A nose between a tenon's cheeks meets no face: it is marked and sawn from the side, through what the cheeks leave.
  [[nodiscard]] Polygon past_sweep(const CutPlane& side, FixedList<Plane, kHoleSides + 2> planes, int own) const {
    planes.count -= 2;
    return side_of(timber_, side, planes, own);
  }

  /// Whether what lies beyond a pocket's side is another pocket of the same feature: no wood is parted there.
  [[nodiscard]] bool borders_waste(const Feature& f, int own, const Polygon& polygon, const Plane& side) const {
    constexpr double kBeyond = 1e-4;
    Vec3 middle{};
    for (const Vec3& p : polygon) middle = middle + (1.0 / static_cast<double>(polygon.size())) * p;
    const Vec3 beyond = middle + kBeyond * side.normal;
    for (int i = f.first_pocket; i < f.first_pocket + f.pockets; ++i) {
      if (i == own) continue;
      bool inside = true;
      for (const Plane& plane : planes_of(timber_.pockets[static_cast<unsigned>(i)]))
        inside = inside && above(plane, beyond) < 0;
      if (inside) return true;
    }
    return false;
  }

  void add(BenchStep& step, SawCut cut) {
    cut.work = step.work;
    cut.index = step.index;
    step.saw_cuts.push_back(static_cast<int>(sheet_.saw_cuts.size()));
    sheet_.saw_cuts.push_back(cut);
  }

  /// One plane may be sawn from several faces, each down to its own cheek.
  [[nodiscard]] bool known(const BenchStep& step, const CutPlane& plane, std::optional<Face> face) const {
    for (const int i : step.saw_cuts) {
      const SawCut& cut = sheet_.saw_cuts[static_cast<unsigned>(i)];
      if (same_plane(cut.plane, plane) && (!face || cut.face == *face)) return true;
    }
    return false;
  }

  [[nodiscard]] int rank(const BenchStep& step) const {
    if (step.work == WorkOn::kEndCut) return timber_.cuts[static_cast<unsigned>(step.index)].end == End::kA ? 0 : 1;
    const Feature& f = timber_.features[static_cast<unsigned>(step.index)];
    switch (f.kind) {
      case FeatureKind::kTenon:
      case FeatureKind::kTongue:
      case FeatureKind::kScarf:
      case FeatureKind::kFork:
        return 2;
      case FeatureKind::kLetIn:
        return f.at_end ? 2 : 6;
      case FeatureKind::kSlot:
        return 3;
      case FeatureKind::kRelief:
        return 4;
      case FeatureKind::kBirdsMouth:
        return 5;
      case FeatureKind::kLap:
        return f.at_end ? 2 : 5;
      case FeatureKind::kHousing:
        return 6;
      case FeatureKind::kMortise:
        return 7;
      case FeatureKind::kHole:
        return 8;
    }
    return 9;
  }

  [[nodiscard]] bool before(const BenchStep& a, const BenchStep& b) const {
    const int ra = rank(a), rb = rank(b);
    if (ra != rb) return ra < rb;
    if (a.work == WorkOn::kEndCut || b.work == WorkOn::kEndCut) return false;
    return timber_.features[static_cast<unsigned>(a.index)].from <
           timber_.features[static_cast<unsigned>(b.index)].from - kSameOnSheet;
  }

  void find_mates() {
    for (const ContactFace& contact : frame_.contacts) {
      const Joint& joint = frame_.joints[static_cast<unsigned>(contact.joint)];
      if (joint.receiver != sheet_.timber) continue;
      for (const Face face : kFaces) land(contact, joint, face);
    }
  }

  void land(const ContactFace& contact, const Joint& joint, Face face) {
    const FaceFrame frame = frame_of(face, timber_.sides);
    MateOutline mate{face, joint.member, contact.joint, {}};
    for (const Vec3& corner : contact.corners) {
      const Vec3 p = to_local(timber_.at, corner);
      if (libm::fabs(frame.under(p)) > 1e-6) return;
      mate.outline.push_back({p.x, frame.flat ? p.y : p.z});
    }
    if (mate.outline.size() >= 3) sheet_.mates.push_back(std::move(mate));
  }

  void find_pairs() {
    for (int i = 0; i < static_cast<int>(frame_.timbers.size()); ++i) {
      if (i == sheet_.timber) continue;
      const Timber& other = frame_.timbers[static_cast<unsigned>(i)];
      if (timber_.alike >= 0 && other.alike == timber_.alike)
        sheet_.alike.push_back(i);
      else if (timber_.handed_pair >= 0 && other.handed_pair == timber_.handed_pair)
        sheet_.mirrored.push_back(i);
    }
    if (sheet_.mirrored.empty()) return;
    const int first = sheet_.alike.empty() ? sheet_.timber : std::min(sheet_.timber, sheet_.alike.front());
    sheet_.hand = first < sheet_.mirrored.front() ? Hand::kLeft : Hand::kRight;
  }

  void warn() {
    sheet_.warnings = timber_.warnings;
    for (const TimberWarning& known : timber_.warnings)
      if (known.id == WarningId::kDefect) return;
    for (const TimberWarning& w : defect_warnings(timber_, sheet_.marks)) sheet_.warnings.push_back(w);
  }

  const Frame& frame_;
  const Timber& timber_;
  const Saw& saw_;
  Sheet sheet_;
};

}  // namespace

int mate_of(const Frame& frame, int timber, const Feature& feature) {
  if (feature.joint < 0) return -1;
  const Joint& joint = frame.joints[static_cast<std::size_t>(feature.joint)];
  return other_timber(joint, timber);
}

Sheet solve_sheet(const Frame& frame, int timber, const Saw& saw) { return SheetMaker(frame, timber, saw).make(); }

Sheet solve_sawing(const Frame& frame, int timber, const Saw& saw) {
  return SheetMaker(frame, timber, saw).make_sawing();
}

}  // namespace bentbook
