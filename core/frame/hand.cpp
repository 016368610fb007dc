/// Timbers entered by hand: mark, section, length, ends by angle and tilt, features by station and face.

#include <algorithm>

#include "frame/layout.h"

namespace bentbook {
namespace {

constexpr Length kLongest = Length::feet(200);

bool sound(const Section& s) {
  return s.breadth >= Length::inches(1, 2) && s.depth >= Length::inches(1, 2) && s.breadth <= Length::inches(60) &&
         s.depth <= Length::inches(60);
}

bool sound(const HandEnd& end) {
  const Angle most = Angle::degrees(80);
  const Angle least{-most.nano_degrees};
  return end.angle <= most && end.angle >= least && end.tilt <= most && end.tilt >= least;
}

bool within(Length value, Length most) { return value >= Length{} && value <= most; }

bool sound(const HandFeature& f, const HandTimber& t) {
  if (!within(f.station, t.length) || !within(f.depth, kLongest)) return false;
  if (f.kind == FeatureKind::kHole)
    return f.diameter > Length{} && f.diameter <= Length::inches(24) && within(f.offset, kLongest);
  return f.along > Length{} && f.across > Length{} && within(f.along, kLongest) && within(f.across, kLongest) &&
         within(f.offset, kLongest);
}

bool sound(const HandTimber& t) {
  if (t.mark.empty() || !sound(t.wood.nominal) || !sound(t.wood.design) || !sound(t.wood.actual)) return false;
  if (t.length < Length::inches(1) || t.length > kLongest || !sound(t.a) || !sound(t.b)) return false;
  for (const Length& o : t.origin)
    if (o > kLongest * 10 || -o > kLongest * 10) return false;
  return std::all_of(t.features.begin(), t.features.end(), [&t](const HandFeature& f) { return sound(f, t); });
}

/// Longest at its tip: x = ±(tip − m + z tan angle + y tan tilt), m the most that the last two come to.
EndCut end_cut(End end, const HandEnd& given, const Sides& s, double length) {
  const double a = libm::tan(given.angle.rad()), t = libm::tan(given.tilt.rad());
  const double most = (a > 0 ? a * s.z_hi : a * s.z_lo) + (t > 0 ? t * s.y_hi : t * s.y_lo);
  const double size = libm::sqrt(1 + a * a + t * t);
  const double out = end == End::kB ? 1 : -1;
  const double tip = end == End::kB ? length : 0;
  return {end,
          a == 0 && t == 0 ? EndCutName::kSquare : EndCutName::kMitre,
          {(1 / size) * Vec3{out, -t, -a}, (out * tip - most) / size}};
}

struct OnFace {
  Axis across = Axis::kY, in = Axis::kZ;
  bool from_high = true;  ///< depth counts down from the higher coordinate
};
OnFace on_face(Face face) {
  switch (face) {
    case Face::kTop:
      return {Axis::kY, Axis::kZ, true};
    case Face::kBottom:
      return {Axis::kY, Axis::kZ, false};
    case Face::kFar:
      return {Axis::kZ, Axis::kY, true};
    default:
      return {Axis::kZ, Axis::kY, false};
  }
}

void add_hand_feature(Timber& t, const HandFeature& given) {
  const OnFace f = on_face(given.face);
  const Range wide = sides_along(t, f.across), deep = sides_along(t, f.in);
  const double whole = deep.hi - deep.lo;
  const bool through = given.depth == Length{} || given.depth.in() >= whole;
  const double depth = through ? whole : given.depth.in();
  const double in_lo = !through && f.from_high ? deep.hi - depth : deep.lo - kPast;
  const double in_hi = !through && !f.from_high ? deep.lo + depth : deep.hi + kPast;
  const double middle = wide.lo + given.offset.in(), x = given.station.in();
  const bool hole = given.kind == FeatureKind::kHole;
  const bool at_end = given.kind == FeatureKind::kSlot;
  const double half_across = (hole ? given.diameter : given.across).in() / 2;
  double from = x - (hole ? given.diameter : given.along).in() / 2,
         to = x + (hole ? given.diameter : given.along).in() / 2;
  Feature feature;
  feature.kind = given.kind;
  feature.face = given.face;
  feature.depth = depth;
  feature.across_lo = middle - half_across;
  feature.across_hi = middle + half_across;
  feature.diameter = hole ? given.diameter.in() : 0;
  if (at_end) {
    const bool b = x > t.length / 2;
    feature.at_end = true;
    feature.end = b ? End::kB : End::kA;
    feature.depth = given.along.in();
    feature.open = through ? SlotOpen::kBoth : f.from_high ? SlotOpen::kTop : SlotOpen::kBottom;
    for (const EndCut& cut : t.cuts)
      if (cut.end == feature.end) feature.shoulder = cut.plane;
    from = b ? t.length - given.along.in() : -kPast;
    to = b ? t.length + kPast : given.along.in();
  }
  feature.from = from;
  feature.to = to;
  if (hole) {
    add_feature(t, feature, hole_pocket(f.in, {x, middle}, given.diameter.in(), in_lo, in_hi));
    return;
  }
  const bool y = f.across == Axis::kY;
  const double lo = middle - half_across, hi = middle + half_across;
  add_feature(t, feature,
              box_pocket(f.in, {from, y ? lo : in_lo, y ? in_lo : lo}, {to, y ? hi : in_hi, y ? in_hi : hi}));
}

Placement placement_of(const HandTimber& t) {
  if (!t.placed) return {};
  const double turn = t.turn.rad(), rise = t.rise.rad(), roll = t.roll.rad();
  const Vec3 x{libm::cos(turn) * libm::cos(rise), libm::sin(turn) * libm::cos(rise), libm::sin(rise)};
  const Vec3 up{-libm::cos(turn) * libm::sin(rise), -libm::sin(turn) * libm::sin(rise), libm::cos(rise)};
  const Vec3 side = cross(up, x);
  return {{t.origin[0].in(), t.origin[1].in(), t.origin[2].in()},
          x,
          libm::cos(roll) * side + libm::sin(roll) * up,
          libm::cos(roll) * up - libm::sin(roll) * side};
}

}  // namespace

void place_added(Work& work) {
  for (const HandTimber& given : work.plan.added) {
    if (!sound(given)) {
      work.find(FindingId::kBadHandTimber, given.mark);
      continue;
    }
    const auto same = [&given](const Timber& t) { return t.mark == given.mark; };
    if (std::any_of(work.frame.timbers.begin(), work.frame.timbers.end(), same)) {
      work.find(FindingId::kMarkTaken, given.mark);
      continue;
    }
    Timber t;
    t.mark = given.mark;
    t.kind = given.kind;
    t.wood = given.wood;
    t.sides = sides_of(given.wood);
    t.species = given.species;
    t.moisture = work.plan.moisture;
    t.length = given.length.in();
    t.at = placement_of(given);
    t.placed = given.placed;
    t.overridden.added = true;
    t.cuts = {end_cut(End::kA, given.a, t.sides, t.length), end_cut(End::kB, given.b, t.sides, t.length)};
    for (const HandFeature& f : given.features) add_hand_feature(t, f);
    work.frame.timbers.push_back(std::move(t));
    work.tips.push_back({0, given.length.in(), true, true});
  }
}

}  // namespace bentbook
