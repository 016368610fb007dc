#include "frame/roofs/roof_frame.h"

#include <algorithm>
#include <utility>

#include "frame/placing/find_clashes.h"
#include "frame/placing/finish.h"
#include "frame/placing/place_added.h"
#include "frame/placing/warn_timbers.h"
#include "numeric/index.h"
#include "roof/limits.h"
#include "roof/plan/solve_roof.h"

namespace bentbook {
namespace {

TimberKind frame_kind(RoofTimberKind kind) {
  switch (kind) {
    case RoofTimberKind::kRidge:
      return TimberKind::kRidgeBeam;
    case RoofTimberKind::kHip:
      return TimberKind::kHipRafter;
    case RoofTimberKind::kValley:
      return TimberKind::kValleyRafter;
    case RoofTimberKind::kCommon:
      return TimberKind::kCommonRafter;
    case RoofTimberKind::kPurlin:
      return TimberKind::kPurlin;
    default:
      return TimberKind::kJackRafter;
  }
}

Plane out_of(const Placement& at, const CutPlane& plane) {
  const Vec3 normal = to_world_direction(at, plane.normal);
  return {normal, plane.offset + dot(normal, at.origin)};
}

class RoofFramer {
 public:
  RoofFramer(const RoofSolution& roof, Work& work) : roof_(roof), work_(work) {}

  void run() {
    place_plates();
    for (const RoofTimber& t : roof_.timbers) placed_.push_back(place(t));
    join_plates();
    for (std::size_t i = 0; i < roof_.timbers.size(); ++i) join_foot(roof_.timbers[i], placed_[i]);
    for (const RoofContact& contact : roof_.contacts) join_contact(contact);
    for (const Vec3& node : roof_.shape.nodes)
      if (node.z > work_.frame.ridge_z) {
        work_.frame.ridge_x = node.x;
        work_.frame.ridge_z = node.z;
      }
    for (const RoofFinding& f : roof_.findings) {
      if (f.id == RoofFindingId::kThrust) work_.frame.thrust_lb = f.value;
      if (f.id == RoofFindingId::kThrust) work_.add_finding(FindingId::kThrust, {}, {}, f.value);
      if (f.id == RoofFindingId::kThrustUnknown) work_.add_finding(FindingId::kCornerThrust);
    }
  }

 private:
  [[nodiscard]] const RoofPlane& plane(std::size_t side) const { return roof_.shape.planes[side]; }
  [[nodiscard]] std::size_t next(std::size_t side) const {
    return side + 1 == roof_.shape.planes.size() ? 0 : side + 1;
  }

  /// The upright plane in which the plates of a side and the next one part, the normal away from the first.
  [[nodiscard]] Plane mitre_of(std::size_t side) const {
    const RoofPlane &own = plane(side), &other = plane(next(side));
    const Vec2 along = unit(own.along + other.along);
    return {{along.x, along.y, 0}, dot(along, own.to)};
  }

  void place_plates() {
    const Section& section = work_.plan.sections.plate;
    const std::size_t n = roof_.shape.planes.size();
    for (std::size_t i = 0; i < n; ++i) {
      plates_.push_back(-1);
      const RoofPlane& own = plane(i);
      if (own.gable) continue;
      const RoofPlane &last = plane(i == 0 ? n - 1 : i - 1), &after = plane(next(i));
      Placing p;
      p.kind = TimberKind::kPlate;
      p.mark = "L-" + side_letters(static_cast<int>(i));
      p.section = section;
      const Vec2 middle = own.from + (section.breadth.in() / 2) * own.in;
      p.through = {middle.x, middle.y, own.plate - section.depth.in() / 2};
      p.x = {own.along.x, own.along.y, 0};
      p.z = kZ;
      // The longest of both faces: an inner corner makes the outer one the shorter.
      const double broad = section.breadth.in();
      p.a = last.gable ? -last.overhang : std::min(0.0, at_mitre(i == 0 ? n - 1 : i - 1, own, broad));
      p.b = after.gable ? own.length + after.overhang : std::max(own.length, at_mitre(i, own, broad));
      const int plate = place_timber(work_, p);
      plates_.back() = plate;
      if (plate < 0) continue;
      if (!last.gable) {
        const Plane m = mitre_of(i == 0 ? n - 1 : i - 1);
        cut_end(work_, plate, End::kA, EndCutName::kMitre, {-1 * m.normal, -m.offset});
      }
      if (!after.gable) cut_end(work_, plate, End::kB, EndCutName::kMitre, mitre_of(i));
    }
  }

  /// Where the mitre behind a side crosses a plate's inner face, along the plate from its corner.
  [[nodiscard]] double at_mitre(std::size_t side, const RoofPlane& own, double broad) const {
    const Plane m = mitre_of(side);
    const Vec2 inner = own.from + broad * own.in, normal = flat(m.normal);
    return (m.offset - dot(normal, inner)) / dot(normal, own.along);
  }

  int place(const RoofTimber& t) {
    Placing p;
    p.kind = frame_kind(t.kind);
    p.mark = t.mark;
    p.section = t.section;
    p.through = t.at.origin;
    p.x = t.at.x;
    p.z = t.at.z;
    p.a = 0;
    p.b = t.length;
    const int timber = place_timber(work_, p);
    if (timber < 0) return -1;
    for (const RoofEndCut& cut : t.cuts) {
      const bool upright = libm::fabs(to_world_direction(t.at, cut.plane.normal).z) < 1e-9;
      const bool square = libm::fabs(cut.plane.normal.y) < 1e-9;
      const EndCutName name = !square ? EndCutName::kMitre : upright ? EndCutName::kPlumb : EndCutName::kSquare;
      cut_end(work_, timber, cut.at_b ? End::kB : End::kA, name, out_of(t.at, cut.plane));
    }
    work_.tip(timber).a_cut = work_.tip(timber).b_cut = true;
    return timber;
  }

  void join_plates() {
    for (std::size_t i = 0; i < plates_.size(); ++i) {
      const int own = plates_[i], other = plates_[next(i)];
      if (own < 0 || other < 0) continue;
      // The later plate comes to the earlier one, so that they do not wait for each other in a ring.
      const Plane m = mitre_of(i);
      const bool closes = next(i) == 0;
      const Vec3 into = (closes ? -1 : 1) * m.normal;
      Joint& joint =
          begin_joint(work_, Meeting::kPlateScarf, JointKind::kHousedButt, closes ? own : other, closes ? other : own);
      joint.bearing = Bearing::kButts;
      joint.end = closes ? End::kB : End::kA;
      const Section& section = work_.plan.sections.plate;
      const Vec3 along{-m.normal.y, m.normal.x, 0};
      const double top = std::min(plane(i).plate, plane(next(i)).plate),
                   low = std::max(plane(i).plate, plane(next(i)).plate) - section.depth.in();
      const Vec3 corner{plane(i).to.x, plane(i).to.y, 0};
      joint.where = corner + 0.5 * (top + low) * kZ;
      if (top > low + 1e-6) {
        const double reach = 4 * section.breadth.in();  // what is past the wood is clipped
        const Vec3 a = corner - reach * along, b = corner + reach * along;
        add_contact(work_, true, into, {a + low * kZ, b + low * kZ, b + top * kZ, a + top * kZ});
      }
      keep_ways(work_, {-1 * kZ, kZ, -1 * into, along, -1 * along});
    }
  }

  /// Over the plates that lie under its notch.
  void join_foot(const RoofTimber& t, int timber) {
    if (timber < 0 || !t.seat.cut) return;
    bool cut = false;
    for (const int side : {t.left, t.right}) {
      const int plate = plates_[at(side)];
      if (plate < 0 || (cut && t.left == t.right)) continue;
      if (libm::fabs(plane(at(side)).plate - seat_height(t)) > 1e-6) continue;
      seat_on(t, timber, plate, !cut);
      cut = true;
    }
  }

  static Vec3 notch_corner(const RoofTimber& t, int i) {
    constexpr double kPastEnd = 1.5;  // as cut_seat has it
    const Vec2 corner = t.seat.pocket.outline[0], p = t.seat.pocket.outline[i];
    const Vec2 end = i == 0 ? corner : corner + (1 / kPastEnd) * (p - corner);
    return to_world(t.at, {end.x, 0, end.y});
  }
  static double seat_height(const RoofTimber& t) { return notch_corner(t, 0).z; }

  void seat_on(const RoofTimber& t, int timber, int plate, bool first) {
    Timber& member = work_.timber(timber);
    const Vec3 corner = notch_corner(t, 0);
    Vec3 seat_end = notch_corner(t, 1), heel_end = notch_corner(t, 2);
    if (seat_end.z < heel_end.z) std::swap(seat_end, heel_end);
    Joint& joint = begin_joint(work_, Meeting::kRafterPlate, JointKind::kBirdsMouth, timber, plate);
    joint.bearing = Bearing::kBearsOn;
    joint.crossing = true;
    joint.where = corner + 0.5 * (seat_end - corner);
    const Range wood = sides_along(member, Axis::kY);
    if (first) {
      Feature f = span_feature(member, FeatureKind::kBirdsMouth, Face::kNear, t.seat.pocket, this_joint(work_));
      const double a = to_local(member.at, seat_end).x, b = to_local(member.at, heel_end).x;
      f.from = std::min(a, b);
      f.to = std::max(a, b);
      f.across_lo = sides_along(member, Axis::kZ).lo;
      f.across_hi = f.across_lo + t.seat.depth;
      f.depth = wood.hi - wood.lo;
      add_feature(member, f, t.seat.pocket);
      const double share = t.seat.depth / (member.sides.z_hi - member.sides.z_lo);
      if (share > limits::kNotchAway)
        warn_joint(work_, timber, WarningId::kNotchShare, t.seat.along, share,
                   share > limits::kNotchAtSupport ? limits::kNotchAtSupport : limits::kNotchAway);
    }
    const Vec3 y = member.at.y;
    const auto quad = [&](Vec3 p, Vec3 q, Vec3 normal) {
      add_contact(work_, true, normal, {p + wood.lo * y, q + wood.lo * y, q + wood.hi * y, p + wood.hi * y});
    };
    quad(corner, seat_end, kZ);
    const Vec3 level = unit(Vec3{t.at.x.x, t.at.x.y, 0});
    const Vec3 out = -1 * work_.timber(plate).at.y;  // a plate's outer face
    if (dot(out, level) < -1 + 1e-9) quad(corner, heel_end, -1 * level);
    keep_ways(work_, {-1 * kZ, level, -1 * member.at.z, member.at.x});
  }

  void join_contact(const RoofContact& c) {
    const int member = placed_[at(c.member)], receiver = placed_[at(c.receiver)];
    if (member < 0 || receiver < 0) return;
    const bool both = roof_.timbers[at(c.member)].line >= 0 && roof_.timbers[at(c.receiver)].line >= 0;
    // A cheek against a cheek is one joint, not two.
    if (both)
      for (const Joint& joint : work_.frame.joints)
        if (joint.member == receiver && joint.receiver == member) return;
    Joint& joint = begin_joint(work_, Meeting::kRafterRidge, JointKind::kHousedButt, member, receiver);
    joint.bearing = both ? Bearing::kButts : Bearing::kHangsFrom;
    joint.end = c.at_b ? End::kB : End::kA;
    ContactFace face;
    face.joint = this_joint(work_);
    face.normal = c.normal;
    Vec3 middle{};
    for (const Vec3& p : c.corners) {
      if (face.corners.count == 8) break;
      face.corners.add(p);
      middle = middle + p;
    }
    joint.where = (1.0 / face.corners.count) * middle;
    work_.frame.contacts.push_back(face);
    ++joint.contacts;
    const Vec3 x = work_.timber(member).at.x;
    keep_ways(work_, {-1 * kZ, kZ, c.at_b ? x : -1 * x, -1 * c.normal});
  }

  const RoofSolution& roof_;
  Work& work_;
  std::vector<int> placed_;  ///< by timber of the roof: index in the frame, −1 where it is taken out
  std::vector<int> plates_;  ///< by side
};

}  // namespace

Result<Frame> frame_of_roof(const RoofPlan& roof, const FramePlan& plan) {
  RoofPlan asked = roof;
  asked.hip_top = HipTop::kDropped;
  const auto solved = solve_roof(asked);
  if (!solved) return tl::unexpected(solved.error());
  Work work = begin_work(plan, nullptr);
  work.add_finding(FindingId::kNotEngineered);
  if (roof.hip_top == HipTop::kBacked) work.add_finding(FindingId::kHipsDropped);
  RoofFramer(*solved, work).run();
  place_added(work);
  for (std::size_t i = 0; i < plan.overrides.size(); ++i)
    if (!work.override_met[i]) work.add_finding(FindingId::kUnknownMark, plan.overrides[i].mark);
  finish(work);
  find_clashes(work);
  warn_timbers(work);
  return std::move(work.frame);
}

}  // namespace bentbook
