#include "frame/placing/work.h"

#include <algorithm>
#include <span>
#include <utility>

#include "numeric/sorting.h"

namespace bentbook {
namespace {

/// A section or measured wood set apart: depth hangs from the reference face, so that tops stay flush; a section that
/// the user chose stays in the middle of the plan's breadth.
void dress(Timber& timber, const Section& section, const Override& o) {
  timber.wood = {section, section, section, true, true, {}};
  if (o.has_section) {
    timber.wood.nominal = timber.wood.actual = o.section;
    timber.wood.design = {o.section.breadth, section.depth};
    timber.overridden.section = true;
  }
  if (o.has_wood) {
    const Section design = timber.wood.design;
    timber.wood = o.wood;
    timber.wood.design = design;
    timber.overridden.wood = true;
  }
  if (o.has_species) {
    timber.species = o.species;
    timber.overridden.species = true;
  }
  timber.defects = o.defects;
}

double unsigned_area(const Pocket& pocket) {
  double twice = 0;
  const auto& p = pocket.outline;
  for (int i = 0; i < p.count; ++i) {
    const Vec2 a = p[i], b = p[i + 1 == p.count ? 0 : i + 1];
    twice += a.x * b.y - b.x * a.y;
  }
  return twice / 2;
}

/// As much as it took the last time, where it is known.
void make_room(const Work& work, Timber& timber) {
  const std::size_t i = work.frame.timbers.size();
  const bool known = work.before != nullptr && i < work.before->timbers.size();
  timber.cuts.reserve(known ? work.before->timbers[i].cuts.size() : 2);
  timber.features.reserve(known ? work.before->timbers[i].features.size() : 8);
  timber.pockets.reserve(known ? work.before->timbers[i].pockets.size() : 8);
}

const Override& override_at(const FramePlan& plan, int i) { return plan.overrides[static_cast<std::size_t>(i)]; }

/// Those of one mark: indices in plan.overrides.
std::span<const int> overrides_of(const Work& work, std::string_view mark) {
  const auto mark_of = [&work](int i) -> std::string_view { return override_at(work.plan, i).mark; };
  const auto first = std::lower_bound(work.by_mark.begin(), work.by_mark.end(), mark,
                                      [&](int i, std::string_view m) { return mark_of(i) < m; });
  auto last = first;
  while (last != work.by_mark.end() && mark_of(*last) == mark) ++last;
  const auto begin = static_cast<std::size_t>(first - work.by_mark.begin());
  return std::span<const int>(work.by_mark).subspan(begin, static_cast<std::size_t>(last - first));
}

}  // namespace

Work begin_work(const FramePlan& plan, const Frame* before) {
  Work work{plan, {}, {}, {}, {}, {}, std::vector<bool>(plan.overrides.size(), false), before, {}};
  work.by_mark.reserve(plan.overrides.size());
  for (std::size_t i = 0; i < plan.overrides.size(); ++i) work.by_mark.push_back(static_cast<int>(i));
  sort_by(work.by_mark, [&plan](int a, int b) { return override_at(plan, a).mark < override_at(plan, b).mark; });
  if (before != nullptr) {
    work.frame.timbers.reserve(before->timbers.size() + 1);
    work.frame.joints.reserve(before->joints.size() + 2);
    work.frame.contacts.reserve(2 * before->contacts.size());
    work.tips.reserve(before->timbers.size() + 1);
  }
  return work;
}

bool is_taken_out(const Work& work, std::string_view mark) {
  const std::span<const int> own = overrides_of(work, mark);
  return std::any_of(own.begin(), own.end(), [&work](int i) { return override_at(work.plan, i).removed; });
}

int place_timber(Work& work, const Placing& placing) {
  Timber timber;
  timber.mark = placing.mark;
  timber.kind = placing.kind;
  timber.place = placing.place;
  timber.species = work.plan.species;
  timber.moisture = work.plan.moisture;
  timber.wood = {placing.section, placing.section, placing.section, true, true, {}};
  int set_apart = -1;
  bool taken_out = false;
  for (const int i : overrides_of(work, placing.mark)) {
    work.override_met[static_cast<std::size_t>(i)] = true;
    dress(timber, placing.section, override_at(work.plan, i));
    set_apart = i;
    taken_out = taken_out || override_at(work.plan, i).removed;
  }
  if (taken_out) return -1;
  if (!(placing.b - placing.a > 1)) {
    work.add_finding(FindingId::kNoRoom, placing.mark);
    return -1;
  }
  timber.sides = sides_of(timber.wood);
  timber.at = {placing.through, placing.x, cross(placing.z, placing.x), placing.z};
  make_room(work, timber);
  work.frame.timbers.push_back(std::move(timber));
  work.tips.push_back({placing.a, placing.b, false, false});
  work.override_of.push_back(set_apart);
  return static_cast<int>(work.frame.timbers.size()) - 1;
}

AxisOf axis_of(const Placement& at, Vec3 v) {
  constexpr double kAligned = 1 - 1e-12;
  const Vec3 local = to_local_direction(at, v);
  if (libm::fabs(local.x) > kAligned) return {Axis::kX, local.x > 0 ? 1.0 : -1.0, true};
  if (libm::fabs(local.y) > kAligned) return {Axis::kY, local.y > 0 ? 1.0 : -1.0, true};
  if (libm::fabs(local.z) > kAligned) return {Axis::kZ, local.z > 0 ? 1.0 : -1.0, true};
  return {};
}

double along(Axis axis, Vec3 p) { return axis == Axis::kX ? p.x : axis == Axis::kY ? p.y : p.z; }

Range sides_along(const Timber& timber, Axis axis) {
  return axis == Axis::kY ? Range{timber.sides.y_lo, timber.sides.y_hi} : Range{timber.sides.z_lo, timber.sides.z_hi};
}

Vec3 face_normal(const Timber& timber, Face face) {
  switch (face) {
    case Face::kTop:
      return timber.at.z;
    case Face::kNear:
      return -1 * timber.at.y;
    case Face::kBottom:
      return -1 * timber.at.z;
    default:
      return timber.at.y;
  }
}

double face_offset(const Timber& timber, Face face) {
  const Sides& s = timber.sides;
  const double out = face == Face::kTop      ? s.z_hi
                     : face == Face::kBottom ? -s.z_lo
                     : face == Face::kNear   ? -s.y_lo
                                             : s.y_hi;
  return dot(face_normal(timber, face), timber.at.origin) + out;
}

double design_face_offset(const Timber& timber, Face face) {
  const bool depth = face == Face::kTop || face == Face::kBottom;
  const double half = (depth ? timber.wood.design.depth : timber.wood.design.breadth).in() / 2;
  return dot(face_normal(timber, face), timber.at.origin) + half;
}

Face face_toward(const Timber& timber, Vec3 toward) {
  const double y = dot(timber.at.y, toward), z = dot(timber.at.z, toward);
  if (libm::fabs(z) >= libm::fabs(y)) return z >= 0 ? Face::kTop : Face::kBottom;
  return y >= 0 ? Face::kFar : Face::kNear;
}

Pocket pocket_from(const Placement& at, Axis sweep, const Vec3* points, int count, double from, double to) {
  Pocket pocket;
  pocket.sweep = sweep;
  pocket.from = from < to ? from : to;
  pocket.to = from < to ? to : from;
  for (int i = 0; i < count; ++i) {
    const Vec3 p = to_local(at, points[i]);
    pocket.outline.add(sweep == Axis::kX ? Vec2{p.y, p.z} : sweep == Axis::kY ? Vec2{p.x, p.z} : Vec2{p.x, p.y});
  }
  if (unsigned_area(pocket) < 0)
    for (int i = 0, j = count - 1; i < j; ++i, --j) std::swap(pocket.outline[i], pocket.outline[j]);
  return pocket;
}

Feature& add_feature(Timber& timber, Feature feature, const Pocket& pocket) {
  feature.first_pocket = static_cast<int>(timber.pockets.size());
  feature.pockets = 0;
  timber.features.push_back(feature);
  add_to_feature(timber, pocket);
  return timber.features.back();
}

void add_to_feature(Timber& timber, const Pocket& pocket) {
  timber.pockets.push_back(pocket);
  ++timber.features.back().pockets;
}

Vec3 meet(Vec3 p, Vec3 d, Vec3 normal, double offset) { return p + ((offset - dot(normal, p)) / dot(normal, d)) * d; }

Feature span_feature(const Timber& timber, FeatureKind kind, Face face, const Pocket& pocket, int joint) {
  Feature f;
  f.kind = kind;
  f.face = face;
  f.joint = joint;
  const Box box = bounds_of(pocket);
  f.from = box.lo.x;
  f.to = box.hi.x;
  const bool across_is_y = face == Face::kTop || face == Face::kBottom;
  const Range wood = sides_along(timber, across_is_y ? Axis::kY : Axis::kZ);
  const double lo = across_is_y ? box.lo.y : box.lo.z, hi = across_is_y ? box.hi.y : box.hi.z;
  f.across_lo = lo > wood.lo ? lo : wood.lo;
  f.across_hi = hi < wood.hi ? hi : wood.hi;
  const Range deep = sides_along(timber, across_is_y ? Axis::kZ : Axis::kY);
  const double in_lo = across_is_y ? box.lo.z : box.lo.y, in_hi = across_is_y ? box.hi.z : box.hi.y;
  f.depth = face == Face::kTop || face == Face::kFar ? deep.hi - in_lo : in_hi - deep.lo;
  return f;
}

Feature with_shoulder(Feature f, const Timber& timber, End end, Plane world) {
  f.at_end = true;
  f.end = end;
  f.shoulder = {to_local_direction(timber.at, world.normal), world.offset - dot(world.normal, timber.at.origin)};
  return f;
}

void bore_hole(Work& work, int timber, Axis sweep, Vec3 centre, double diameter, HoleUse use) {
  Timber& it = work.timber(timber);
  const Vec3 p = to_local(it.at, centre);
  Feature f;
  f.kind = FeatureKind::kHole;
  f.face = bored_from(sweep);
  f.from = p.x - diameter / 2;
  f.to = p.x + diameter / 2;
  const double across = sweep == Axis::kY ? p.z : p.y;
  f.across_lo = across - diameter / 2;
  f.across_hi = across + diameter / 2;
  f.diameter = diameter;
  f.use = use;
  f.joint = this_joint(work);
  const Range wood = sides_along(it, sweep);
  f.depth = wood.hi - wood.lo;
  add_feature(it, f,
              hole_pocket(sweep, sweep == Axis::kY ? Vec2{p.x, p.z} : Vec2{p.x, p.y}, diameter, wood.lo - kPast,
                          wood.hi + kPast));
}

void cut_end(Work& work, int i, End end, EndCutName name, const Plane& world) {
  Timber& timber = work.timber(i);
  const CutPlane plane{to_local_direction(timber.at, world.normal), world.offset - dot(world.normal, timber.at.origin)};
  timber.cuts.push_back({end, name, plane});
  (end == End::kA ? work.tip(i).a_cut : work.tip(i).b_cut) = true;
}

void cut_end(Work& work, int i, End end, const Plane& world) {
  constexpr double kLies = 1e-9;  // of a unit vector: what is left where it lies in a direction
  const Vec3 along = work.timber(i).at.x, n = world.normal;
  EndCutName name = EndCutName::kAngle;
  if (norm(cross(n, along)) < kLies)
    name = EndCutName::kSquare;
  else if (libm::hypot(n.x, n.y) < kLies)
    name = EndCutName::kLevel;
  else if (libm::fabs(n.z) < kLies)
    name = libm::fabs(dot(n, cross(along, {0, 0, 1}))) < kLies ? EndCutName::kPlumb : EndCutName::kSide;
  cut_end(work, i, end, name, world);
}

void set_tip(Work& work, int i, End end, double x) { (end == End::kA ? work.tip(i).a : work.tip(i).b) = x; }

Joint& begin_joint(Work& work, Meeting meeting, JointKind kind, int member, int receiver) {
  Joint joint;
  joint.meeting = meeting;
  joint.kind = kind;
  joint.member = joint.carried = member;
  joint.receiver = joint.carrier = receiver;
  joint.first_contact = static_cast<int>(work.frame.contacts.size());
  work.frame.joints.push_back(joint);
  work.guides.clear();
  return work.frame.joints.back();
}

int this_joint(const Work& work) { return static_cast<int>(work.frame.joints.size()) - 1; }

void warn_joint(Work& work, int timber, WarningId id, double station, double value, double value2) {
  work.timber(timber).warnings.push_back({id, this_joint(work), station, value, value2});
}

void add_contact(Work& work, bool bearing, Vec3 normal, std::initializer_list<Vec3> corners) {
  if (!bearing) {
    work.guides.push_back(normal);
    return;
  }
  ContactFace contact;
  contact.joint = this_joint(work);
  contact.normal = normal;
  for (const Vec3& p : corners) contact.corners.add(p);
  Vec3 turn{};
  for (int i = 2; i < contact.corners.count; ++i)
    turn = turn + cross(contact.corners[i - 1] - contact.corners[0], contact.corners[i] - contact.corners[0]);
  if (dot(turn, normal) < 0)
    for (int i = 0, j = contact.corners.count - 1; i < j; ++i, --j) std::swap(contact.corners[i], contact.corners[j]);
  work.frame.contacts.push_back(contact);
  ++work.frame.joints.back().contacts;
}

void keep_ways(Work& work, std::initializer_list<Vec3> candidates) {
  Joint& joint = work.frame.joints.back();
  for (const Vec3& way : candidates) {
    bool free = true;
    for (const Vec3& known : joint.ways) free = free && norm(known - way) > 1e-9;
    for (const Vec3& guide : work.guides) free = free && dot(way, guide) < 1e-9;
    for (int c = 0; c < joint.contacts && free; ++c) {
      const auto at = static_cast<std::size_t>(joint.first_contact) + static_cast<std::size_t>(c);
      const ContactFace& contact = work.frame.contacts[at];
      free = dot(way, contact.normal) < 1e-9;
    }
    if (free && joint.ways.count < 6) joint.ways.add(way);
  }
}

}  // namespace bentbook
