#include "frame/sheet/rough.h"

#include <algorithm>

#include "geometry/pocket.h"
#include "numeric/index.h"

namespace bentbook {
namespace {

constexpr double kFlush = 1e-6;

struct Stretch {
  double from = 1e300, to = -1e300;
  void take(double x) {
    from = std::min(from, x);
    to = std::max(to, x);
  }
  [[nodiscard]] bool meets(double a, double b) const { return from < b && a < to; }
};

Stretch stretch_of(const std::vector<LineMark>& lines, Face face) {
  Stretch s;
  for (const LineMark& line : lines) {
    if (line.face != face) continue;
    s.take(line.a.x);
    s.take(line.b.x);
  }
  return s;
}

TimberWarning warning_for(const Defect& defect, double station, int joint) {
  TimberWarning w;
  w.id = WarningId::kDefect;
  w.joint = joint;
  w.station = station;
  w.value = static_cast<double>(defect.kind);
  return w;
}

}  // namespace

double bow_offset(double bow, double length, double station) {
  return length > 0 ? 4 * bow * station * (length - station) / (length * length) : 0;
}

bool is_reference(const Wood& wood, Face face) {
  switch (face) {
    case Face::kTop:
      return wood.top_is_reference;
    case Face::kBottom:
      return !wood.top_is_reference;
    case Face::kNear:
      return wood.near_is_reference;
    case Face::kFar:
      return !wood.near_is_reference;
  }
  return false;
}

std::vector<FloatingFace> floating_faces(const Timber& timber) {
  std::vector<FloatingFace> faces;
  for (const Face face : kFaces) {
    if (is_reference(timber.wood, face)) continue;
    const bool flat = face == Face::kTop || face == Face::kBottom;
    const double over = flat ? timber.wood.actual.depth.in() - timber.wood.design.depth.in()
                             : timber.wood.actual.breadth.in() - timber.wood.design.breadth.in();
    if (libm::fabs(over) > kFlush) faces.push_back({face, over});
  }
  return faces;
}

double depth_here(const Timber& timber, const RecessOnFace& recess) {
  if (recess.through || (recess.face != Face::kTop && recess.face != Face::kBottom)) return recess.depth;
  Stretch s;
  for (const Vec2& p : recess.outline) s.take(p.x);
  const double lift = bow_offset(timber.wood.bow.in(), timber.length, (s.from + s.to) / 2);
  return recess.face == Face::kTop ? recess.depth + lift : recess.depth - lift;
}

double relief_leg(const Feature& relief) { return relief.depth / libm::fabs(relief.shoulder.normal.x); }

std::optional<double> told_depth(const Timber& timber, const RecessMarks& recess, const RecessOnFace& on) {
  if (recess.feature >= 0 && timber.features[at(recess.feature)].kind == FeatureKind::kRelief)
    return relief_leg(timber.features[at(recess.feature)]);
  if (on.through) return std::nullopt;
  if (recess.feature >= 0 && timber.features[at(recess.feature)].kind == FeatureKind::kTenon) {
    const auto planes = planes_of(timber.pockets[at(recess.pocket)]);
    const bool flat = frame_of(on.face, timber.sides).flat;
    bool floored = false;
    for (int i = 0; i < planes.count; ++i)
      floored = floored || libm::fabs(flat ? planes[i].normal.z : planes[i].normal.y) > 1 - 1e-9;
    if (!floored) return std::nullopt;
  }
  return depth_here(timber, on);
}

std::vector<TimberWarning> defect_warnings(const Timber& timber, const LayoutMarks& marks) {
  std::vector<TimberWarning> warnings;
  for (const Defect& defect : timber.defects) {
    const double from = defect.from.in(), to = defect.to.in();
    for (const CutMarks& cut : marks.cuts) {
      const Stretch s = stretch_of(cut.lines, defect.face);
      if (s.from <= to && from <= s.to) warnings.push_back(warning_for(defect, std::max(s.from, from), -1));
    }
    int last = -1;
    for (const RecessMarks& recess : marks.recesses) {
      if (recess.feature >= 0 && recess.feature == last) continue;
      for (const RecessOnFace& on : recess.faces) {
        if (on.face != defect.face) continue;
        Stretch s;
        for (const Vec2& p : on.outline) s.take(p.x);
        if (!s.meets(from, to)) continue;
        last = recess.feature;
        const int joint = last < 0 ? -1 : timber.features[static_cast<unsigned>(last)].joint;
        warnings.push_back(warning_for(defect, std::max(s.from, from), joint));
      }
    }
  }
  return warnings;
}

}  // namespace bentbook
