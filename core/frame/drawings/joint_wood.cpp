#include "frame/drawings/joint_wood.h"

#include "numeric/libm.h"

namespace bentbook {
namespace {

constexpr double kMostly = 0.7;  // of a unit vector: it lies rather this way

struct Sized {
  Vec3 axis;
  double size = 0;
};

/// The two sides of a timber, the one that lies along `way` first.
struct Sides2 {
  Sized along, other;
};
Sides2 sides_by(const Timber& timber, Vec3 way) {
  const Sized y{timber.at.y, timber.wood.design.breadth.in()}, z{timber.at.z, timber.wood.design.depth.in()};
  return libm::fabs(dot(y.axis, way)) > libm::fabs(dot(z.axis, way)) ? Sides2{y, z} : Sides2{z, y};
}

Vec3 middle_of(const Timber& timber) { return timber.at.origin + timber.length / 2 * timber.at.x; }

/// In the plane in which one looks at the joint (as joints/end_view.h does): of a leaning end that in which it leans;
/// of a square one that along the receiver's grain, a dovetail's plumb.
Vec3 up_in_view(const Joint& joint, const Timber& member, const Timber& receiver, Vec3 normal) {
  const Vec3 across = cross(member.at.x, normal);
  if (dot(across, across) > 1e-6) return cross(across, member.at.x);
  return joint.kind == JointKind::kHalfDovetail ? Vec3{0, 0, 1} : receiver.at.x;
}

MemberFrom from_of(const Joint& joint, const Timber& member, Vec3 normal, double lean) {
  const bool higher = middle_of(member).z > joint.where.z;
  if (libm::fabs(normal.z) > kMostly) return higher ? MemberFrom::kAbove : MemberFrom::kBelow;
  return lean > 0 && higher ? MemberFrom::kLeft : MemberFrom::kRight;
}

}  // namespace

JointWood joint_wood(const Frame& frame, const Joint& joint) {
  const Timber& member = frame.timbers[static_cast<std::size_t>(joint.member)];
  const Timber& receiver = frame.timbers[static_cast<std::size_t>(joint.receiver)];
  const Vec3 u = member.at.x;
  JointWood out;
  if (joint.kind == JointKind::kBirdsMouth || joint.kind == JointKind::kRafterPeak || joint.kind == JointKind::kScarf) {
    const Sides2 seen = sides_by(member, joint.kind == JointKind::kScarf ? member.at.z : Vec3{0, 0, 1});
    const Sides2 under = sides_by(receiver, {0, 0, 1});
    out = {seen.along.size, seen.other.size, under.along.size, under.other.size};
    const double level = libm::hypot(u.x, u.y);
    out.lean = level > 1e-9 ? libm::fabs(u.z) / level : 0;
    return out;
  }
  const Sides2 met = sides_by(receiver, u);
  const double square = libm::fabs(dot(u, met.along.axis));
  const Sides2 seen = sides_by(member, up_in_view(joint, member, receiver, met.along.axis));
  out = {seen.along.size, seen.other.size, met.along.size, met.other.size};
  out.lean = square < 1 - 1e-9 && square > 1e-6 ? libm::sqrt(1 - square * square) / square : 0;
  out.from = from_of(joint, member, met.along.axis, out.lean);
  for (int i = 0; i < joint.tools.count; ++i)
    if (const ToolNumber& tool = joint.tools[i]; tool.setting == ToolSetting::kFence && tool.timber == joint.member)
      out.fence = tool.value;
  // Drawn, a leaning member falls as it leaves: its top edge is the high one where that looks out of the receiver.
  const Vec3 away = joint.end == End::kB ? -1 * u : u;
  const double outward = dot(met.along.axis, away) < 0 ? -1 : 1;
  out.top_is_low = out.lean > 0 && outward * dot(met.along.axis, seen.along.axis) < 0;
  return out;
}

double near_side(const JointWood& wood, Length width) { return wood.fence.value_or((wood.wide - width.in()) / 2); }

const Joint* joint_to_show(const Frame& frame, Meeting meeting) {
  const Joint* first = nullptr;
  for (const Joint& joint : frame.joints) {
    if (joint.meeting != meeting) continue;
    if (first == nullptr) first = &joint;
    // A brace is known by its upper end.
    if (meeting != Meeting::kBraceEnd || joint_wood(frame, joint).from == MemberFrom::kBelow) return &joint;
  }
  return first;
}

}  // namespace bentbook
