#include "shop/step_sawn.h"

#include <algorithm>
#include <utility>

#include "frame/sheet/cut_polygon.h"
#include "frame/sheet/face_marks.h"
#include "numeric/libm.h"

namespace bentbook {
namespace {

using Name = StepNumberName;
using Numbers = std::vector<StepNumber>;

constexpr double kNoSwing = 1e-9, kSameStop = 1e-6;

std::int64_t nearest(double value) { return static_cast<std::int64_t>(libm::floor(value + 0.5)); }
double degrees(double radians) { return Angle::from_radians(radians).deg(); }

/// What is sawn of one feature.
struct Sawn {
  const Timber& timber;
  const Feature& feature;
  const Sheet& sheet;
  [[nodiscard]] const SawCut& cut(int i) const { return sheet.saw_cuts[static_cast<std::size_t>(i)]; }
};

StepPart part_of(const Sawn& s, const SawCut& cut) {
  if (s.feature.kind == FeatureKind::kBirdsMouth) {
    const Vec3 n = cut.plane.normal;
    const double up = n.x * s.timber.at.x.z + n.y * s.timber.at.y.z + n.z * s.timber.at.z.z;
    return libm::fabs(up) > 0.7 ? StepPart::kSeat : StepPart::kPlumb;
  }
  if (!s.feature.at_end) return StepPart::kWall;
  const CutPlane& shoulder = s.feature.shoulder;
  const bool same =
      same_plane(cut.plane, shoulder) || same_plane(cut.plane, {-1.0 * shoulder.normal, -shoulder.offset});
  return same ? StepPart::kShoulder : StepPart::kNose;
}

StepSetting across_setting(const Sawn& s, int index) {
  const SawCut& cut = s.cut(index);
  const Stop stop = stop_of(s.timber, cut);
  StepSetting out;
  out.part = part_of(s, cut);
  out.setup = setup_of(cut, &stop);
  out.saw_cuts.push_back(index);
  saw_numbers(cut.blade, stop, out.numbers);
  if (s.feature.kind == FeatureKind::kBirdsMouth)
    out.numbers.push_back({Name::kDepth, s.feature.across_hi - s.feature.across_lo, Face::kBottom});
  else
    out.numbers.push_back({Name::kDepth, cut.depth, cut.face});
  out.numbers.push_back({Name::kReach, cut.pass.needed.in()});
  out.numbers.push_back({Name::kFaceUp, static_cast<double>(cut.face)});
  return out;
}

/// Where a cheek meets the shoulder, on its own axis.
double gauge_of(const Sawn& s, const SawCut& cut, Axis axis) {
  const double n = axis == Axis::kY ? cut.plane.normal.y : cut.plane.normal.z;
  const double x = s.feature.at_end ? s.feature.shoulder.offset / s.feature.shoulder.normal.x : 0;
  return (cut.plane.offset - cut.plane.normal.x * x) / n;
}

/// A dovetailed edge's fall from the shoulder to the tip, and toward which face.
void add_fall(const Sawn& s, const SawCut& cut, Axis axis, Numbers& out) {
  const double n = axis == Axis::kY ? cut.plane.normal.y : cut.plane.normal.z;
  const double slope = -cut.plane.normal.x / n;  // of the axis's coordinate, an inch toward end B
  if (libm::fabs(slope) < kNoSwing) return;
  const double shoulder = s.feature.shoulder.offset / s.feature.shoulder.normal.x;
  const double fall = slope * ((s.feature.end == End::kB ? s.timber.length : 0) - shoulder);
  const Face low = axis == Axis::kY ? Face::kNear : Face::kBottom, high = axis == Axis::kY ? Face::kFar : Face::kTop;
  out.push_back({Name::kFall, libm::fabs(fall), fall < 0 ? low : high});
}

/// What stops a saw that runs along: the shoulder where the cheek meets it, at both edges where it is not square there.
/// Run to the one edge's line through all the wood, the saw would be past the other's.
void add_shoulder(const Sawn& s, const SawCut& cut, Axis axis, Numbers& out) {
  const CutPlane& shoulder = s.feature.shoulder;
  const double gauge = gauge_of(s, cut, axis);
  const bool upright = axis == Axis::kY;
  const double rest = shoulder.offset - (upright ? shoulder.normal.y : shoulder.normal.z) * gauge;
  const double lean = upright ? shoulder.normal.z : shoulder.normal.y;
  if (libm::fabs(lean) < kNoSwing) {
    out.push_back({Name::kShoulder, rest / shoulder.normal.x, std::nullopt, false, true});
    return;
  }
  for (const Face face : {cut.face, rolled(rolled(cut.face))})
    out.push_back(
        {Name::kShoulder, (rest - lean * frame_of(face, s.timber.sides).at) / shoulder.normal.x, face, false, true});
}

/// Both gauge lines of one axis are one setting: what is between them stays.
StepSetting along_setting(const Sawn& s, std::span<const int> cuts, Axis axis) {
  const bool level = s.feature.face == Face::kTop || s.feature.face == Face::kBottom;
  const bool cheeks = (axis == Axis::kY) == level;
  const Face reference = reference_face(s.timber.wood, axis);
  StepSetting out;
  out.part = s.feature.kind == FeatureKind::kLap || s.feature.kind == FeatureKind::kScarf ? StepPart::kFloor
             : cheeks                                                                     ? StepPart::kCheeks
                                                                                          : StepPart::kEdges;
  Numbers falls, shoulders;
  Length reach;
  const bool high = reference == Face::kTop || reference == Face::kFar;
  for (const int i : cuts) {
    const SawCut& cut = s.cut(i);
    out.saw_cuts.push_back(i);
    const double n = axis == Axis::kY ? cut.plane.normal.y : cut.plane.normal.z;
    const Name name = (n > 0) == high ? Name::kFence : Name::kFar;  // the waste's side
    out.numbers.push_back({name, under_face(s.timber.sides, reference, gauge_of(s, cut, axis)), reference});
    reach = std::max(reach, cut.pass.needed);
    if (!s.feature.at_end) continue;
    add_fall(s, cut, axis, falls);
    add_shoulder(s, cut, axis, shoulders);
  }
  std::sort(out.numbers.begin(), out.numbers.end(),
            [](const StepNumber& a, const StepNumber& b) { return a.name < b.name; });
  if (out.numbers.size() == 2) out.numbers.push_back({Name::kAcross, out.numbers[1].value - out.numbers[0].value});
  out.numbers.insert(out.numbers.end(), falls.begin(), falls.end());
  for (const StepNumber& n : shoulders) {
    const auto said = [&](const StepNumber& other) {
      return other.name == n.name && other.from == n.from && libm::fabs(other.value - n.value) < kSameStop;
    };
    if (std::none_of(out.numbers.begin(), out.numbers.end(), said)) out.numbers.push_back(n);
  }
  out.numbers.push_back({Name::kReach, reach.in(), std::nullopt, false, true});
  out.numbers.push_back({Name::kFaceUp, static_cast<double>(s.cut(cuts.front()).face)});
  return out;
}

/// A notch with one side alone runs out at an end: a lap there is a shoulder and its floor.
void open_at_end(const Sawn& s, std::vector<StepSetting>& settings) {
  if (s.feature.at_end) return;
  const auto crosses = [](const StepSetting& setting) { return setting.setup.has_value(); };
  if (std::count_if(settings.begin(), settings.end(), crosses) != 1) return;
  const StepSetting& only = *std::find_if(settings.begin(), settings.end(), crosses);
  const End end = s.cut(only.saw_cuts.front()).plane.normal.x > 0 ? End::kB : End::kA;
  for (StepSetting& setting : settings) {
    setting.end = end;
    if (setting.part == StepPart::kWall) setting.part = StepPart::kShoulder;
  }
}

/// A floor on the way ends at the notch's sides, one that runs out at an end at its shoulder.
void stop_floors(const Sawn& s, std::vector<StepSetting>& settings) {
  if (s.feature.at_end) return;
  Numbers stops;
  for (const StepSetting& setting : settings)
    if (setting.setup)
      for (const StepNumber& n : setting.numbers)
        if (n.name == Name::kStop) stops.push_back({Name::kShoulder, n.value, n.from, false, true});
  std::sort(stops.begin(), stops.end(), [](const StepNumber& a, const StepNumber& b) { return a.value < b.value; });
  if (stops.size() > 1) {
    stops = {stops.front(), stops.back()};
    stops[0].name = Name::kFrom;
    stops[1].name = Name::kTo;
  }
  for (StepSetting& setting : settings)
    if (setting.part == StepPart::kFloor)
      setting.numbers.insert(setting.numbers.begin() + 1, stops.begin(), stops.end());
}

bool in_shop_order(const StepSetting& a, const StepSetting& b) { return a.part < b.part; }

}  // namespace

Stop stop_at(const Timber& timber, const CutPlane& plane, Face face, bool low) {
  const FaceFrame frame = frame_of(face, timber.sides);
  const Vec3 p = frame.point({0, low ? frame.lo : frame.hi});
  const double at = (plane.offset - dot(plane.normal, p)) / plane.normal.x;
  return {at, frame.flat ? (low ? Face::kNear : Face::kFar) : (low ? Face::kBottom : Face::kTop)};
}
Stop stop_of(const Timber& timber, const SawCut& cut) {
  return stop_at(timber, cut.plane, cut.face, cut.at_low || !cut.at_high);
}

void saw_numbers(const BladeAngles& blade, const Stop& stop, Numbers& out) {
  out.push_back({Name::kTable, degrees(blade.swing)});
  out.push_back({Name::kTilt, degrees(blade.tilt)});
  StepNumber at{Name::kStop, stop.at};
  if (libm::fabs(blade.swing) > kNoSwing) at.from = stop.edge;  // square across, it is the same at both edges
  out.push_back(at);
}

SawSetup setup_of(const SawCut& cut, const Stop* stop) {
  return {nearest(degrees(cut.blade.swing) * 100), nearest(degrees(cut.blade.tilt) * 100),
          stop == nullptr ? 0 : nearest(stop->at * 64)};
}

std::vector<StepSetting> sawn_settings(const Sheet& sheet, const Timber& timber, const Feature& feature,
                                       const BenchStep& step) {
  const Sawn s{timber, feature, sheet};
  std::vector<StepSetting> out;
  std::vector<int> level, upright;
  for (const int i : step.saw_cuts) {
    const SawCut& cut = s.cut(i);
    if (!cut.along)
      out.push_back(across_setting(s, i));
    else
      (libm::fabs(cut.plane.normal.z) > libm::fabs(cut.plane.normal.y) ? level : upright).push_back(i);
  }
  if (!upright.empty()) out.push_back(along_setting(s, upright, Axis::kY));
  if (!level.empty()) out.push_back(along_setting(s, level, Axis::kZ));
  open_at_end(s, out);
  stop_floors(s, out);
  std::stable_sort(out.begin(), out.end(), in_shop_order);
  return out;
}

}  // namespace bentbook
