#include "frame/placing/hand_timber.h"

#include "geometry/pocket.h"

namespace bentbook {
namespace {

constexpr double kPastSide = 1;  ///< how far an open side reaches past the wood, inches
constexpr Angle kSteepest = Angle::degrees(80);
constexpr std::size_t kLongestMark = 60;
constexpr Length kLongest = Length::feet(200);
constexpr Length kThickest = Length::feet(10);

/// What a face looks like: its normal's axis, whether the wood lies below it on that axis, and its two spans.
struct FaceSpan {
  bool flat = true;             ///< top or bottom: across is y, inward is z
  bool from_above = true;       ///< the wood lies toward the lower coordinate
  double lo = 0, hi = 0;        ///< across the face
  double in_lo = 0, in_hi = 0;  ///< through the wood
};

FaceSpan span_of(Face face, const Sides& s) {
  const bool flat = face == Face::kTop || face == Face::kBottom;
  const bool from_above = face == Face::kTop || face == Face::kFar;
  if (flat) return {true, from_above, s.y_lo, s.y_hi, s.z_lo, s.z_hi};
  return {false, from_above, s.z_lo, s.z_hi, s.y_lo, s.y_hi};
}

Pocket box_on(const FaceSpan& face, double x0, double x1, double a0, double a1, double d0, double d1) {
  if (face.flat) return box_pocket(Axis::kZ, {x0, a0, d0}, {x1, a1, d1});
  return box_pocket(Axis::kY, {x0, d0, a0}, {x1, d1, a1});
}

EndCut end_cut(End end, const HandEnd& given, const Sides& s, double length) {
  const double along_z = libm::tan(given.angle.rad()), along_y = libm::tan(given.tilt.rad());
  const double sign = end == End::kA ? -1 : 1;
  // Where the cut meets the four arrises past its place on the axis, outward.
  const double reach_y = along_y > 0 ? along_y * s.y_hi : along_y * s.y_lo;
  const double reach_z = along_z > 0 ? along_z * s.z_hi : along_z * s.z_lo;
  const double on_axis = (end == End::kA ? 0 : length) - sign * (reach_y + reach_z);
  EndCut cut;
  cut.end = end;
  cut.name = given == HandEnd{} ? EndCutName::kSquare : EndCutName::kAngle;
  const Vec3 along{sign, -along_y, -along_z};
  cut.plane.normal = unit(along);
  cut.plane.offset = sign * on_axis / norm(along);
  return cut;
}

Placement placement_of(const HandTimber& hand) {
  if (!hand.placed) return {};
  const double turn = hand.turn.rad(), rise = hand.rise.rad(), roll = hand.roll.rad();
  Placement at;
  at.origin = {hand.origin[0].in(), hand.origin[1].in(), hand.origin[2].in()};
  at.x = {libm::cos(turn) * libm::cos(rise), libm::sin(turn) * libm::cos(rise), libm::sin(rise)};
  const Vec3 level{-libm::sin(turn), libm::cos(turn), 0};
  const Vec3 up = cross(at.x, level);
  at.y = libm::cos(roll) * level + libm::sin(roll) * up;
  at.z = cross(at.x, at.y);
  return at;
}

SlotOpen open_of(const FaceSpan& face, bool through) {
  if (through || !face.flat) return SlotOpen::kBoth;
  return face.from_above ? SlotOpen::kTop : SlotOpen::kBottom;
}

/// One feature being read: its place on the timber, and the trouble if there is one.
class FeatureReader {
 public:
  FeatureReader(Timber& timber, const HandFeature& given, int index)
      : timber_(timber), given_(given), index_(index), face_(span_of(given.face, timber.sides)) {}

  Result<void> read() {
    if (auto ok = measures(); !ok) return ok;
    place();
    if (auto ok = touches(); !ok) return ok;
    feature_.first_pocket = static_cast<int>(timber_.pockets.size());
    if (given_.kind == FeatureKind::kTenon)
      cheeks();
    else
      hollow();
    feature_.pockets = static_cast<int>(timber_.pockets.size()) - feature_.first_pocket;
    timber_.features.push_back(feature_);
    return {};
  }

 private:
  [[nodiscard]] tl::unexpected<Error> wrong(ErrorCode code, const char* where) const {
    return fail(code, where, index_);
  }

  [[nodiscard]] Result<void> measures() const {
    if (!enters_by_hand(given_.kind)) return wrong(ErrorCode::kConflict, "kind");
    const bool hole = given_.kind == FeatureKind::kHole;
    if (hole && given_.diameter <= Length{}) return wrong(ErrorCode::kNotPositive, "diameter");
    if (!hole && given_.along <= Length{}) return wrong(ErrorCode::kNotPositive, "along");
    if (!hole && given_.across <= Length{}) return wrong(ErrorCode::kNotPositive, "across");
    if (given_.depth < Length{}) return wrong(ErrorCode::kNegative, "feature_depth");
    return {};
  }

  void place() {
    const FeatureKind kind = given_.kind;
    const bool hole = kind == FeatureKind::kHole;
    const double station = given_.station.in();
    const double along = (hole ? given_.diameter : given_.along).in();
    const double across = (hole ? given_.diameter : given_.across).in();
    const double middle = face_.lo + given_.offset.in();
    const Length length = Length::from_inches(timber_.length);
    const bool end_kind = kind == FeatureKind::kSlot || kind == FeatureKind::kTenon || kind == FeatureKind::kLap;
    feature_.kind = kind;
    feature_.face = given_.face;
    feature_.at_end = end_kind && (given_.station == Length{} || given_.station == length);
    feature_.end = given_.station == Length{} ? End::kA : End::kB;
    feature_.from = station - along / 2;
    feature_.to = station + along / 2;
    if (feature_.at_end) {
      feature_.from = feature_.end == End::kA ? 0 : timber_.length - along;
      feature_.to = feature_.end == End::kA ? along : timber_.length;
    }
    feature_.across_lo = middle - across / 2;
    feature_.across_hi = middle + across / 2;
    through_ = given_.depth == Length{} || given_.depth.in() >= face_.in_hi - face_.in_lo;
    feature_.depth = through_ ? face_.in_hi - face_.in_lo : given_.depth.in();
    feature_.diameter = hole ? given_.diameter.in() : 0;
    feature_.open = kind == FeatureKind::kSlot ? open_of(face_, through_) : SlotOpen::kBoth;
    if (feature_.at_end) {
      const double sign = feature_.end == End::kA ? -1 : 1;
      const double shoulder = feature_.end == End::kA ? feature_.to : feature_.from;
      feature_.shoulder = {{sign, 0, 0}, sign * shoulder};
      feature_.depth = kind == FeatureKind::kLap ? feature_.depth : along;
    }
  }

  [[nodiscard]] Result<void> touches() const {
    if (feature_.to <= 0 || feature_.from >= timber_.length) return wrong(ErrorCode::kImpossible, "station");
    if (given_.kind == FeatureKind::kTenon && !feature_.at_end) return wrong(ErrorCode::kImpossible, "station");
    if (feature_.across_hi <= face_.lo || feature_.across_lo >= face_.hi)
      return wrong(ErrorCode::kImpossible, "offset");
    const bool whole_width = feature_.across_lo <= face_.lo && feature_.across_hi >= face_.hi;
    if (through_ && whole_width && given_.kind != FeatureKind::kTenon)
      return wrong(ErrorCode::kImpossible, "feature_depth");
    return {};
  }

  /// Past the end where it is open there.
  [[nodiscard]] double start() const { return feature_.at_end && feature_.end == End::kA ? -kPastSide : feature_.from; }
  [[nodiscard]] double stop() const {
    return feature_.at_end && feature_.end == End::kB ? timber_.length + kPastSide : feature_.to;
  }

  void hollow() {
    const double depth = given_.depth.in();
    const double d0 = through_ || !face_.from_above ? face_.in_lo - kPastSide : face_.in_hi - depth;
    const double d1 = through_ || face_.from_above ? face_.in_hi + kPastSide : face_.in_lo + depth;
    if (given_.kind != FeatureKind::kHole) {
      timber_.pockets.push_back(box_on(face_, start(), stop(), feature_.across_lo, feature_.across_hi, d0, d1));
      return;
    }
    const Vec2 centre{given_.station.in(), (feature_.across_lo + feature_.across_hi) / 2};
    timber_.pockets.push_back(hole_pocket(face_.flat ? Axis::kZ : Axis::kY, centre, given_.diameter.in(), d0, d1));
  }

  /// The wood beside the tenon, on either side.
  void cheeks() {
    const double d0 = face_.in_lo - kPastSide, d1 = face_.in_hi + kPastSide;
    if (feature_.across_lo > face_.lo)
      timber_.pockets.push_back(box_on(face_, start(), stop(), face_.lo - kPastSide, feature_.across_lo, d0, d1));
    if (feature_.across_hi < face_.hi)
      timber_.pockets.push_back(box_on(face_, start(), stop(), feature_.across_hi, face_.hi + kPastSide, d0, d1));
  }

  Timber& timber_;
  const HandFeature& given_;
  int index_;
  FaceSpan face_;
  Feature feature_;
  bool through_ = false;
};

Result<void> check_body(const HandTimber& hand) {
  if (hand.mark.empty()) return fail(ErrorCode::kMissing, "mark");
  if (hand.mark.size() > kLongestMark) return fail(ErrorCode::kTooLarge, "mark");
  if (hand.length <= Length{}) return fail(ErrorCode::kNotPositive, "length");
  if (hand.length > kLongest) return fail(ErrorCode::kTooLarge, "length", -1, kLongest.count);
  for (const Section& s : {hand.wood.nominal, hand.wood.design, hand.wood.actual}) {
    if (s.breadth <= Length{}) return fail(ErrorCode::kNotPositive, "breadth");
    if (s.depth <= Length{}) return fail(ErrorCode::kNotPositive, "depth");
    if (s.breadth > kThickest) return fail(ErrorCode::kTooLarge, "breadth", -1, kThickest.count);
    if (s.depth > kThickest) return fail(ErrorCode::kTooLarge, "depth", -1, kThickest.count);
  }
  const auto steep = [](const HandEnd& e) {
    return e.angle > kSteepest || e.tilt > kSteepest || e.angle < Angle{} - kSteepest || e.tilt < Angle{} - kSteepest;
  };
  if (steep(hand.a)) return fail(ErrorCode::kSteep, "end_a", -1, kSteepest.nano_degrees);
  if (steep(hand.b)) return fail(ErrorCode::kSteep, "end_b", -1, kSteepest.nano_degrees);
  return {};
}

double station_at(const CutPlane& cut, double y, double z) {
  return (cut.offset - cut.normal.y * y - cut.normal.z * z) / cut.normal.x;
}

/// Every arris must be longer than nothing, or the two cuts meet inside the wood.
bool ends_cross(const EndCut& a, const EndCut& b, const Sides& s) {
  for (const double y : {s.y_lo, s.y_hi})
    for (const double z : {s.z_lo, s.z_hi})
      if (station_at(a.plane, y, z) >= station_at(b.plane, y, z)) return true;
  return false;
}

}  // namespace

bool enters_by_hand(FeatureKind kind) {
  switch (kind) {
    case FeatureKind::kSlot:
    case FeatureKind::kMortise:
    case FeatureKind::kHousing:
    case FeatureKind::kHole:
    case FeatureKind::kTenon:
    case FeatureKind::kLap:
      return true;
    default:
      return false;
  }
}

Result<Timber> solve_hand_timber(const HandTimber& hand) {
  if (auto ok = check_body(hand); !ok) return tl::unexpected(ok.error());
  Timber timber;
  timber.mark = hand.mark;
  timber.kind = hand.kind;
  timber.wood = hand.wood;
  timber.sides = sides_of(hand.wood);
  timber.species = hand.species;
  timber.length = hand.length.in();
  timber.at = placement_of(hand);
  timber.placed = hand.placed;
  timber.overridden.added = true;
  timber.cuts = {end_cut(End::kA, hand.a, timber.sides, timber.length),
                 end_cut(End::kB, hand.b, timber.sides, timber.length)};
  if (ends_cross(timber.cuts[0], timber.cuts[1], timber.sides)) return fail(ErrorCode::kSteep, "end_b");
  int index = 0;
  for (const HandFeature& feature : hand.features)
    if (auto ok = FeatureReader(timber, feature, index++).read(); !ok) return tl::unexpected(ok.error());
  return timber;
}

}  // namespace bentbook
