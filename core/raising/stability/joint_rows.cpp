#include "raising/stability/joint_rows.h"

#include <algorithm>

#include "frame/joints/joint_table.h"
#include "numeric/sorting.h"
#include "raising/fasteners.h"
#include "raising/limits.h"

namespace bentbook {
namespace {

/// Nothing driven: what the wood holds, and of that no more than the lead allows its kind.
JointHold unfastened(const RaisingPlan& plan, JointKind kind) {
  JointHold hold = row_of(kind).holds;
  for (const HoldChange& change : plan.holds) {
    if (change.joint != kind) continue;
    hold.sideways = hold.sideways && change.sideways;
    hold.uplift = hold.uplift && change.uplift;
    hold.pulls = hold.pulls && change.pulls;
  }
  return hold;
}

JointHold hold_of(const RaisingPlan& plan, JointKind kind, bool later) {
  if (later) return unfastened(plan, kind);
  const JointRow& row = row_of(kind);
  for (const HoldChange& change : plan.holds)
    if (change.joint == kind) return {row.holds.by, change.sideways, change.uplift, change.pulls};
  if (plan.fasten == FastenWhen::kWithStep && row.fasteners == Fasteners::kLoose)
    return {row.holds.by, true, true, true};
  return row.holds;
}

/// Pounds that the joint's fasteners count for in one direction.
double fasteners_lb(const Frame& frame, const FastenerRatings& ratings, int joint) {
  const auto or_low = [](Weight rated, double low) { return rated.count > 0 ? rated.lb() : low; };
  const int holes = fastener_holes(frame, joint);
  if (row_of(frame.joints[static_cast<std::size_t>(joint)].kind).fasteners == Fasteners::kPins)
    return std::max(holes, 1) * or_low(ratings.pin, limits::kUnratedPinLb);
  if (holes > 0) return holes * or_low(ratings.peg, limits::kUnratedPegLb);
  return limits::kScrewsEach * or_low(ratings.screw, limits::kUnratedScrewLb);
}

bool level(Vec3 d) { return libm::fabs(d.z) < 0.5; }

/// Corners of the convex hull of points that lie in one plane, about its normal.
std::vector<Vec3> hull_of(std::vector<Vec3> points, Vec3 normal) {
  const Vec3 helper = libm::fabs(normal.z) < 0.9 ? Vec3{0, 0, 1} : Vec3{1, 0, 0};
  const Vec3 s = unit(cross(helper, normal)), t = cross(normal, s);
  const auto before = [&](const Vec3& a, const Vec3& b) {
    const double d = dot(s, a - b);
    return libm::fabs(d) > 1e-6 ? d < 0 : dot(t, a - b) < -1e-6;
  };
  sort_by(points, before);
  std::vector<Vec3> hull;
  for (int half = 0; half < 2; ++half) {
    const std::size_t start = hull.size();
    for (const Vec3& p : points) {
      while (hull.size() >= start + 2 &&
             dot(normal, cross(hull.back() - hull[hull.size() - 2], p - hull.back())) < 1e-3)
        hull.pop_back();
      hull.push_back(p);
    }
    hull.pop_back();
    std::reverse(points.begin(), points.end());
  }
  return hull;
}

/// The ends of what points reach along `across`, through their middle.
std::vector<Vec3> line_of(const std::vector<Vec3>& points, Vec3 across) {
  Vec3 sum;
  for (const Vec3& p : points) sum = sum + p;
  const Vec3 middle = (1.0 / static_cast<double>(points.size())) * sum;
  double lo = 0, hi = 0;
  for (const Vec3& p : points) {
    lo = std::min(lo, dot(across, p - middle));
    hi = std::max(hi, dot(across, p - middle));
  }
  return {middle + lo * across, middle + hi * across};
}

/// The joint being made into rows. Forces are on the member, from the receiver.
struct Rows {
  std::vector<HoldRow>& rows;
  const Frame& frame;
  int index = 0;

  [[nodiscard]] const Joint& joint() const { return frame.joints[static_cast<std::size_t>(index)]; }
  [[nodiscard]] const Timber& timber(int i) const { return frame.timbers[static_cast<std::size_t>(i)]; }
  void add(HoldKind kind, Vec3 point, Vec3 direction, bool two_way) {
    HoldRow row{joint().member, joint().receiver, point, direction, two_way};
    row.kind = kind;
    row.joint = index;
    rows.push_back(row);
  }
  /// Holds what is carried down.
  void hold_down(HoldKind kind) {
    const double sign = joint().carried == joint().member ? -1 : 1;
    add(kind, joint().where, {0, 0, sign}, false);
  }
  [[nodiscard]] const ContactFace& face(int i) const {
    return frame.contacts[static_cast<std::size_t>(joint().first_contact) + static_cast<std::size_t>(i)];
  }
  /// Faces in one plane press at the corners of their hull. Where the joint has a face the other way round, or is held
  /// against opening (`held`), they press along one line across the member only: two walls an inch apart, or a screw
  /// beside an edge, would else be counted as holding a moment.
  void press(bool held) {
    const Vec3 u = timber(joint().member).at.x;
    std::vector<char> used(static_cast<std::size_t>(joint().contacts), 0);
    for (int i = 0; i < joint().contacts; ++i) {
      if (used[static_cast<std::size_t>(i)] != 0 || face(i).corners.count < 3) continue;
      const Vec3 normal = face(i).normal;
      bool line = held;
      std::vector<Vec3> points;
      for (int j = 0; j < joint().contacts; ++j) {
        if (face(j).corners.count < 3) continue;
        const double same = dot(face(j).normal, normal);
        line = line || same < -0.9;
        const bool apart = libm::fabs(dot(normal, face(j).corners[0] - face(i).corners[0])) > 1e-3;
        if (used[static_cast<std::size_t>(j)] != 0 || same < 1 - 1e-9 || apart) continue;
        used[static_cast<std::size_t>(j)] = 1;
        points.insert(points.end(), face(j).corners.begin(), face(j).corners.end());
      }
      const Vec3 across = cross(normal, u);
      if (line && norm(across) > 1e-6) points = line_of(points, unit(across));
      for (const Vec3& p : line ? points : hull_of(points, normal)) add(HoldKind::kPress, p, normal, false);
    }
  }
};

/// Directions at the member's end: u out of it into the receiver, w across both timbers, v the third one.
struct EndAxes {
  Vec3 u, v, w;
  double reach = 2;  ///< a quarter of the member's size along v
  double side = 2;   ///< …along w
};
EndAxes end_axes(const Rows& it) {
  const Joint& joint = it.joint();
  const Timber &m = it.timber(joint.member), &r = it.timber(joint.receiver);
  EndAxes axes;
  axes.u = joint.end == End::kB ? m.at.x : -1 * m.at.x;
  const Vec3 across = cross(m.at.x, r.at.x);
  axes.w = norm(across) > 1e-6 ? unit(across) : m.at.y;
  axes.v = cross(axes.w, axes.u);
  const bool depth = libm::fabs(dot(axes.v, m.at.z)) > 0.7;
  const double z = (m.sides.z_hi - m.sides.z_lo) / 4, y = (m.sides.y_hi - m.sides.y_lo) / 4;
  axes.reach = depth ? z : y;
  axes.side = depth ? y : z;
  return axes;
}

/// A hinge about w: the shoulder presses on both sides of it, against pegs that carry what they are rated for. On a
/// brace it presses in the middle, unless gravity sits on it.
void shoulder(Rows& it, bool brace) {
  const EndAxes e = end_axes(it);
  const bool sits = it.joint().carried == it.joint().receiver;
  if (!sits && brace) {
    it.add(HoldKind::kPress, it.joint().where, -1 * e.u, false);
    return;
  }
  it.add(HoldKind::kPress, it.joint().where + e.side * e.w, -1 * e.u, false);
  it.add(HoldKind::kPress, it.joint().where - e.side * e.w, -1 * e.u, false);
}

void tenon_rows(Rows& it, const JointHold& hold) {
  const EndAxes e = end_axes(it);
  const Vec3 o = it.joint().where;
  const bool brace = it.joint().meeting == Meeting::kBraceEnd;
  shoulder(it, brace);
  if (brace || !level(e.w) || hold.sideways) {
    it.add(HoldKind::kAcross, o + e.reach * e.v, e.w, true);
    it.add(HoldKind::kAcross, o - e.reach * e.v, e.w, true);
  }
  if (brace || !level(e.v) || hold.sideways) it.add(HoldKind::kAcross, o, e.v, true);
  if (hold.pulls || (hold.uplift && !level(e.u))) it.add(HoldKind::kPin, o, e.u, false);
}

/// One row, both ways or only as far as `hold` says.
void plate_row(Rows& it, const JointHold& hold, Vec3 point, Vec3 d) {
  if (level(d)) {
    if (hold.sideways) it.add(HoldKind::kPin, point, d, true);
    return;
  }
  if (hold.uplift) {
    it.add(HoldKind::kPin, point, d, true);
    return;
  }
  const bool member = it.joint().carried == it.joint().member;
  it.add(HoldKind::kPin, point, ((d.z > 0) == member ? 1.0 : -1.0) * d, false);
}

void knife_rows(Rows& it, const JointHold& hold) {
  const EndAxes e = end_axes(it);
  const Vec3 o = it.joint().where;
  it.add(HoldKind::kPin, o, -1 * e.u, hold.pulls);
  if (it.joint().carried == it.joint().receiver) shoulder(it, false);  // what sits on a post does not roll off
  plate_row(it, hold, o, e.v);
  if (level(e.w) && !hold.sideways) return;
  plate_row(it, hold, o + e.reach * e.v, e.w);
  plate_row(it, hold, o - e.reach * e.v, e.w);
}

void butt_rows(Rows& it, const JointHold& hold) {
  const EndAxes e = end_axes(it);
  const Vec3 o = it.joint().where;
  it.press(hold.uplift || hold.pulls);
  if (hold.sideways && (level(e.v) || level(e.w))) {
    for (const Vec3& d : {e.v, e.w})
      if (level(d)) it.add(HoldKind::kPin, o, d, true);
  } else if (hold.sideways && it.joint().contacts > 0) {
    // A jack's or a hip's head, cut at an angle both ways: level along its face.
    const Vec3 along = cross(it.face(0).normal, Vec3{0, 0, 1});
    if (norm(along) > 1e-6) it.add(HoldKind::kPin, o, unit(along), true);
  }
  if (hold.uplift) it.hold_down(HoldKind::kPin);
  if (hold.pulls) it.add(HoldKind::kPin, o, e.u, false);
}

void birds_mouth_rows(Rows& it, const JointHold& hold) {
  const Vec3 along = it.timber(it.joint().receiver).at.x;
  it.press(hold.uplift || hold.pulls);
  if (hold.sideways) it.add(HoldKind::kPin, it.joint().where, along, true);
  if (hold.uplift) it.hold_down(HoldKind::kPin);
  const Vec3 out = cross(along, Vec3{0, 0, 1});
  if (hold.pulls && norm(out) > 1e-6) it.add(HoldKind::kPin, it.joint().where, unit(out), true);
}

void peak_rows(Rows& it, const JointHold& hold) {
  const Vec3 y = it.timber(it.joint().member).at.y;
  it.press(hold.uplift || hold.pulls);
  if (hold.sideways || it.joint().beyond_shoulder > 0) it.add(HoldKind::kAcross, it.joint().where, y, true);
  if (hold.uplift) it.add(HoldKind::kPin, it.joint().where, {0, 0, 1}, true);
  if (hold.pulls) it.add(HoldKind::kPin, it.joint().where, unit(cross(y, {0, 0, 1})), true);
}

void lap_rows(Rows& it, const JointHold& hold) {
  const Joint& joint = it.joint();
  const Timber& m = it.timber(joint.member);
  it.press(hold.uplift || hold.pulls);
  const Vec3 k = unit(cross(m.at.x, it.timber(joint.receiver).at.x));
  it.add(HoldKind::kAcross, joint.where, cross(k, m.at.x), true);  // the notch's sides
  if (hold.sideways && level(k)) it.add(HoldKind::kPin, joint.where, k, true);
  if (hold.uplift) it.hold_down(HoldKind::kPin);
  if (hold.pulls) it.add(HoldKind::kPin, joint.where, joint.end == End::kB ? m.at.x : -1 * m.at.x, false);
}

void scarf_rows(Rows& it, const JointHold& hold) {
  const Joint& joint = it.joint();
  const Timber& m = it.timber(joint.member);
  it.press(hold.uplift || hold.pulls);
  if (hold.sideways)
    for (const double off : {-6.0, 6.0}) it.add(HoldKind::kPin, joint.where + off * m.at.x, m.at.y, true);
  if (hold.uplift) it.hold_down(HoldKind::kPin);
  if (hold.pulls) it.add(HoldKind::kPin, joint.where, m.at.x, false);
}

void joint_rows(Rows& it, const RaisingPlan& plan) {
  const bool later = fastened_later(it.frame, plan, it.index);
  const JointHold hold = hold_of(plan, it.joint().kind, later);
  switch (hold.by) {
    case HoldBy::kPress:
      return butt_rows(it, hold);
    case HoldBy::kPlate:
      // Before its pins are in a plate holds nothing; what sits on a post sits there all the same.
      if (later && it.joint().carried == it.joint().receiver) shoulder(it, false);
      if (later) return;
      return knife_rows(it, hold);
    case HoldBy::kTenon:
      return tenon_rows(it, hold);
    case HoldBy::kSeat:
      return birds_mouth_rows(it, hold);
    case HoldBy::kPeak:
      return peak_rows(it, hold);
    case HoldBy::kLap:
      return lap_rows(it, hold);
    case HoldBy::kScarf:
      return scarf_rows(it, hold);
  }
}

}  // namespace

void add_joint_rows(const Frame& frame, const RaisingPlan& plan, int joint, std::vector<HoldRow>& rows) {
  Rows it{rows, frame, joint};
  const std::size_t first = rows.size();
  joint_rows(it, plan);
  const double limit = fasteners_lb(frame, plan.ratings, joint);
  for (std::size_t r = first; r < rows.size(); ++r)
    if (rows[r].kind == HoldKind::kPin) rows[r].limit = limit;
}

}  // namespace bentbook
