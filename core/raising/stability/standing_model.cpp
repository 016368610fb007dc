/// What each joint holds, as unit forces. The table stands in standing.h.

#include <algorithm>

#include "frame/facts.h"
#include "frame/joints/joint_table.h"
#include "numeric/sorting.h"
#include "raising/fasteners.h"
#include "raising/limits.h"
#include "raising/stability/standing.h"
#include "raising/temporary_line.h"

namespace bentbook {
namespace {

JointHold hold_of(const RaisingPlan& plan, JointKind kind) {
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
  const JointHold hold = hold_of(plan, it.joint().kind);
  switch (hold.by) {
    case HoldBy::kPress:
      return butt_rows(it, hold);
    case HoldBy::kPlate:
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

void ground_row(std::vector<HoldRow>& rows, int timber, Vec3 point, Vec3 direction, bool two_way) {
  HoldRow row{timber, kGround, point, direction, two_way};
  row.kind = HoldKind::kFoot;
  rows.push_back(row);
}

void post_on_ground(std::vector<HoldRow>& rows, int i, const Timber& t, bool anchored) {
  const Vec3 o = t.at.origin;
  ground_row(rows, i, o, {0, 0, 1}, anchored);
  if (!anchored) return;
  const double half = (t.sides.y_hi - t.sides.y_lo) / 2;
  ground_row(rows, i, o, {1, 0, 0}, true);
  ground_row(rows, i, o + Vec3{half, 0, 0}, {0, 1, 0}, true);
  ground_row(rows, i, o - Vec3{half, 0, 0}, {0, 1, 0}, true);
}

void sill_on_ground(std::vector<HoldRow>& rows, int i, const Timber& t, bool anchored) {
  const Vec3 a = t.at.origin + t.sides.z_lo * t.at.z, b = a + t.length * t.at.x;
  for (const Vec3& end : {a, b}) {
    ground_row(rows, i, end + t.sides.y_lo * t.at.y, {0, 0, 1}, false);
    ground_row(rows, i, end + t.sides.y_hi * t.at.y, {0, 0, 1}, false);
  }
  if (!anchored) return;
  ground_row(rows, i, a, t.at.x, true);
  for (const Vec3& end : {a, b}) {
    ground_row(rows, i, end, t.at.y, true);
    ground_row(rows, i, end, {0, 0, -1}, false);
  }
}

constexpr double kEighths[8][2] = {
    {1, 0},  {0.70710678118654752, 0.70710678118654752},   {0, 1},  {-0.70710678118654752, 0.70710678118654752},
    {-1, 0}, {-0.70710678118654752, -0.70710678118654752}, {0, -1}, {0.70710678118654752, -0.70710678118654752}};

StandingBody body_of(const Timber& t, const RaisingLoads& loads) {
  StandingBody body;
  const TimberFacts facts = facts_of(t);
  body.cg = facts.cg_world;
  body.weight_lb = facts.weight_lb;
  body.placed = t.placed;
  body.end_a = t.at.origin;
  body.end_b = t.at.origin + t.length * t.at.x;
  const double b = t.sides.y_hi - t.sides.y_lo, d = t.sides.z_hi - t.sides.z_lo;
  const double pressure =
      limits::kTimberDrag * limits::kWindPressure * loads.wind_mph * loads.wind_mph / 144;  // lb/in²
  for (std::size_t k = 0; k < 8; ++k) {
    const Vec3 blow{kEighths[k][0], kEighths[k][1], 0};
    const double area = libm::fabs(dot(blow, t.at.x)) * b * d + libm::fabs(dot(blow, t.at.y)) * t.length * d +
                        libm::fabs(dot(blow, t.at.z)) * t.length * b;
    const double wind = pressure * area, share = body.weight_lb * loads.push_per_cent / 100;
    body.wind_rules[k] = wind > share;
    body.push_lb[k] = (wind > share ? wind : share) + body.weight_lb * loads.out_of_plumb_per_mille / 1000;
  }
  return body;
}

void keep_row(StandingModel& model, const HoldRow& row) {
  const int index = static_cast<int>(model.rows.size());
  model.rows.push_back(row);
  model.touches[static_cast<std::size_t>(row.a)].push_back(index);
  if (row.b != kGround) model.touches[static_cast<std::size_t>(row.b)].push_back(index);
}

}  // namespace

StandingModel make_standing_model(const Frame& frame, const RaisingPlan& plan) {
  StandingModel model;
  model.loads = plan.loads;
  model.ratings = plan.ratings;
  std::vector<char> carried(frame.timbers.size(), 0);
  std::vector<HoldRow> rows;
  for (std::size_t j = 0; j < frame.joints.size(); ++j) {
    const Joint& joint = frame.joints[j];
    Rows it{rows, frame, static_cast<int>(j)};
    const std::size_t first_row = rows.size();
    joint_rows(it, plan);
    const double limit = fasteners_lb(frame, plan.ratings, static_cast<int>(j));
    for (std::size_t r = first_row; r < rows.size(); ++r)
      if (rows[r].kind == HoldKind::kPin) rows[r].limit = limit;
    if (joint.meeting == Meeting::kPostFoot) carried[static_cast<std::size_t>(joint.member)] = 1;
    model.joint_at.push_back(joint.where);
    model.joint_member.push_back(joint.member);
    model.joint_receiver.push_back(joint.receiver);
    model.joint_carrier.push_back(joint.carrier);
    model.joint_pinned.push_back(row_of(joint.kind).fasteners == Fasteners::kPins ? 1 : 0);
  }
  bool first = true;
  for (std::size_t i = 0; i < frame.timbers.size(); ++i) {
    const Timber& t = frame.timbers[i];
    model.bodies.push_back(body_of(t, plan.loads));
    model.bent.push_back(t.place.bent);
    model.timber_kind.push_back(t.kind);
    model.axis.push_back(t.at.x);
    model.length.push_back(t.length);
    if (!t.placed) continue;
    const double low = t.at.origin.z < model.bodies.back().end_b.z ? t.at.origin.z : model.bodies.back().end_b.z;
    if (first || low < model.ground_z) model.ground_z = low;
    first = false;
    if (t.kind == TimberKind::kSill) sill_on_ground(rows, static_cast<int>(i), t, plan.posts_anchored);
    if (t.kind == TimberKind::kPost && carried[i] == 0)
      post_on_ground(rows, static_cast<int>(i), t, plan.posts_anchored);
  }
  model.touches.resize(frame.timbers.size());
  for (const HoldRow& row : rows)
    if (row.a >= 0 && model.bodies[static_cast<std::size_t>(row.a)].placed &&
        (row.b < 0 || model.bodies[static_cast<std::size_t>(row.b)].placed))
      keep_row(model, row);
  for (const Temporary& temporary : plan.temporaries) add_temporary(model, frame, temporary);
  return model;
}

int add_temporary(StandingModel& model, const Frame& frame, const Temporary& temporary) {
  const int index = static_cast<int>(model.temporaries.size());
  model.temporaries.push_back(temporary);
  model.temporary_row.push_back(-1);
  const auto line = temporary_line(frame, temporary);
  if (!line) return index;
  const int from = timber_by_mark(frame, temporary.from.mark);
  const int to = temporary.to.mark.empty() ? kGround : timber_by_mark(frame, temporary.to.mark);
  const Vec3 p = line->from, q = line->to;
  const double length = norm(q - p);
  if (!(length > 1)) return index;
  HoldRow row{from, to, p, (1 / length) * (q - p), false};
  if (temporary.kind == TemporaryKind::kProp) row.direction = -1 * row.direction;
  row.two_way =
      temporary.kind == TemporaryKind::kDiagonal && length <= limits::kMostSlenderness * temporary.thickness.in();
  const bool nailed = temporary.kind == TemporaryKind::kDiagonal && model.ratings.nailed_brace.count > 0;
  row.limit = temporary.rated.count > 0 ? temporary.rated.lb()
              : nailed                  ? model.ratings.nailed_brace.lb()
                                        : limits::kUnratedBraceLb;
  row.kind = HoldKind::kTemporary;
  row.temporary = index;
  model.temporary_row.back() = static_cast<int>(model.rows.size());
  keep_row(model, row);
  return index;
}

}  // namespace bentbook
