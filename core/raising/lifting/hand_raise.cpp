#include "raising/lifting/hand_raise.h"

#include <algorithm>

#include "raising/lifting/pick_points.h"
#include "raising/limits.h"

namespace bentbook {
namespace {

constexpr double kHair = 0.125;

struct Span {
  double lo = 1e9, hi = -1e9;
  void take(double v) { lo = std::min(lo, v), hi = std::max(hi, v); }
};

const Timber& at(const Frame& frame, int t) { return frame.timbers[static_cast<std::size_t>(t)]; }

std::vector<int> real_ones(const Frame& frame, std::span<const int> timbers) {
  std::vector<int> found;
  for (const int t : timbers)
    if (t >= 0 && static_cast<std::size_t>(t) < frame.timbers.size() && at(frame, t).placed) found.push_back(t);
  return found;
}

/// Extent of a timber's blank along a direction, world.
Span extent(const Timber& timber, Vec3 direction) {
  Span span;
  for (const double x : {0.0, timber.length})
    for (const double y : {timber.sides.y_lo, timber.sides.y_hi})
      for (const double z : {timber.sides.z_lo, timber.sides.z_hi})
        span.take(dot(to_world(timber.at, {x, y, z}), direction));
  return span;
}

bool upright(const Timber& timber) { return libm::fabs(timber.at.x.z) > 0.99; }

/// What decides the plane: its posts, where there are two.
std::vector<int> plane_timbers(const Frame& frame, const std::vector<int>& timbers) {
  std::vector<int> posts;
  for (const int t : timbers)
    if (upright(at(frame, t))) posts.push_back(t);
  return posts.size() >= 2 ? posts : timbers;
}

/// Of them, what lies in the plane square to that: plates, girts and a ridge run out of a bent's.
std::vector<int> in_plane(const Frame& frame, const std::vector<int>& timbers, Vec3 square) {
  std::vector<int> found;
  for (const int t : timbers)
    if (libm::fabs(dot(at(frame, t).at.x, square)) < limits::kOutOfPlane) found.push_back(t);
  return found;
}

/// Level direction square to the plane in which they stand.
Vec3 square_to(const Frame& frame, std::span<const int> timbers) {
  double xx = 0, xy = 0, yy = 0, mx = 0, my = 0;
  double n = 0;
  for (const int t : timbers)
    for (const double x : {0.0, at(frame, t).length}) {
      const Vec3 p = to_world(at(frame, t).at, {x, 0, 0});
      mx += p.x, my += p.y, ++n;
    }
  for (const int t : timbers)
    for (const double x : {0.0, at(frame, t).length}) {
      const Vec3 p = to_world(at(frame, t).at, {x, 0, 0});
      xx += (p.x - mx / n) * (p.x - mx / n), xy += (p.x - mx / n) * (p.y - my / n),
          yy += (p.y - my / n) * (p.y - my / n);
    }
  const double angle = libm::atan2(2 * xy, xx - yy) / 2;
  const Vec3 found{-libm::sin(angle), libm::cos(angle), 0};
  // What stands out pulls the middle plane a little askew: a face that looks about that way says it truly.
  for (const int t : timbers)
    for (const Vec3 face : {at(frame, t).at.y, at(frame, t).at.z}) {
      const double along = dot(face, found);
      if (libm::fabs(along) > 0.98 && libm::fabs(face.z) < 1e-9) return along > 0 ? face : -1.0 * face;
    }
  return found;
}

/// Feet: what reaches down to the lowest point.
std::vector<int> feet_of(const Frame& frame, std::span<const int> timbers, double foot_z) {
  std::vector<int> feet;
  for (const int t : timbers)
    if (extent(at(frame, t), {0, 0, 1}).lo < foot_z + 12) feet.push_back(t);
  return feet;
}

/// Where hands and poles take hold: the top of the highest timber that lies level, else near the top.
double lift_height(const Frame& frame, std::span<const int> timbers, double foot_z) {
  double level = 0, top = 0;
  for (const int t : timbers) {
    const Span z = extent(at(frame, t), {0, 0, 1});
    top = std::max(top, z.hi - foot_z);
    if (libm::fabs(at(frame, t).at.x.z) < 0.34) level = std::max(level, (z.lo + z.hi) / 2 - foot_z);
  }
  return level > 0 ? level : 0.85 * top;
}

RaiseRow row_at(const HandRaise& r, double tilt) {
  const double c = libm::cos(tilt * libm::kDegree), s = libm::sin(tilt * libm::kDegree);
  const double moment = r.weight_lb * (r.cg_height * c - r.cg_behind * s);
  RaiseRow row{tilt, moment / r.lift_height, 0};
  // The rope runs from the lift point to the anchor on the other side of the foot line.
  const double px = r.lift_height * c, pz = r.lift_height * s;
  const double dx = -r.anchor_ahead - px, dz = -pz;
  const double lever = libm::fabs(px * dz - pz * dx) / libm::sqrt(dx * dx + dz * dz);
  if (moment > 0 && lever > 0.02 * r.lift_height) row.rope_lb = moment / lever;
  return row;
}

}  // namespace

HandRaise raise_by_hand(const Frame& frame, const RaisingPlan& plan, std::span<const PickBody> bodies,
                        std::span<const int> timbers, double anchor_ahead) {
  HandRaise r;
  const std::vector<int> real = real_ones(frame, timbers);
  if (real.empty() || bodies.size() != frame.timbers.size()) return r;
  // Measured from the foot's edge on the side that lies down.
  const auto ground = lay_on_ground(frame, real);
  const Vec3 square = ground ? -1.0 * ground->down : square_to(frame, real);
  Span z;
  for (const int t : real) z.take(extent(at(frame, t), {0, 0, 1}).lo);
  r.foot_z = z.lo;
  Span foot;
  for (const int t : feet_of(frame, real, r.foot_z)) {
    const Span e = extent(at(frame, t), square);
    foot.take(e.lo), foot.take(e.hi);
  }
  double levers = 0, behind = 0;
  for (const int t : real) {
    const PickBody& body = bodies[static_cast<std::size_t>(t)];
    r.weight_lb += body.weight_lb;
    levers += body.weight_lb * (body.cg.z - r.foot_z);
    behind += body.weight_lb * (dot(body.cg, square) - foot.lo);
  }
  r.lift_height = lift_height(frame, real, r.foot_z);
  if (!(r.weight_lb > 0 && r.lift_height > 0)) return r;
  r.cg_height = levers / r.weight_lb;
  r.cg_behind = std::max(0.0, behind / r.weight_lb);
  r.anchor_ahead = anchor_ahead > 0 ? anchor_ahead : limits::kAnchorShare * r.lift_height;
  r.most_lb = levers / r.lift_height;
  if (plan.crew.each.count > 0)
    r.people = static_cast<int>(libm::ceil(std::min(r.most_lb / plan.crew.each.lb() - 1e-9, 1e6)));
  if (r.lift_height > limits::kHandReach)
    r.hands_until = libm::asin(limits::kHandReach / r.lift_height) / libm::kDegree;
  r.balance = r.cg_behind > 0 ? libm::atan2(r.cg_height, r.cg_behind) / libm::kDegree : 90;
  for (double tilt = 0; tilt < r.balance; tilt += 10) r.rows.push_back(row_at(r, tilt));
  r.rows.push_back(row_at(r, r.balance));
  return r;
}

std::optional<OnTheGround> lay_on_ground(const Frame& frame, std::span<const int> timbers) {
  const std::vector<int> given = real_ones(frame, timbers);
  if (given.size() < 2) return std::nullopt;
  const Vec3 square = square_to(frame, plane_timbers(frame, given));
  const std::vector<int> real = in_plane(frame, given, square);
  // Timbers in one line make no plane, nor do those that all lie level.
  const bool rises = std::any_of(real.begin(), real.end(),
                                 [&](int t) { return libm::fabs(at(frame, t).at.x.z) > limits::kOutOfPlane; });
  if (real.size() < 2 || !rises) return std::nullopt;
  Span all, faces;
  double foot_z = 1e9;
  std::vector<int> posts;
  for (const int t : real) {
    const Span e = extent(at(frame, t), square);
    all.take(e.lo), all.take(e.hi);
    foot_z = std::min(foot_z, extent(at(frame, t), {0, 0, 1}).lo);
    if (upright(at(frame, t))) posts.push_back(t);
  }
  if (all.hi - all.lo > 2 * limits::kFlat) return std::nullopt;
  // The faces that it lies on: the posts', or where it has none, the longest timber's.
  std::vector<int> main = posts;
  if (main.empty())
    main.push_back(*std::max_element(real.begin(), real.end(),
                                     [&](int a, int b) { return at(frame, a).length < at(frame, b).length; }));
  for (const int t : main) {
    const Span e = extent(at(frame, t), square);
    faces.take(e.lo), faces.take(e.hi);
  }
  OnTheGround ground;
  ground.timbers = real;
  int low = 0, high = 0;
  for (const int t : real) {
    const Span e = extent(at(frame, t), square);
    if (e.lo < faces.lo - kHair) ++low;
    if (e.hi > faces.hi + kHair) ++high;
  }
  bool low_down = low < high;
  if (low == high) {
    ground.why = FaceDownWhy::kReference;
    const Timber& first = at(frame, main[0]);
    // Face 2 looks toward −y: it is the reference where near_is_reference.
    const Vec3 reference = (first.wood.near_is_reference ? -1.0 : 1.0) * first.at.y;
    const double toward = dot(reference, square);
    low_down = toward >= 0;
  }
  ground.down = low_down ? -1.0 * square : square;
  ground.stands_out_down = low_down ? low : high;
  ground.stands_out_up = low_down ? high : low;
  ground.block_height = std::max(0.0, low_down ? faces.lo - all.lo : all.hi - faces.hi) + limits::kLeastBlock;
  for (const int t : main)
    for (const double share : {limits::kBlockShare, 1 - limits::kBlockShare})
      ground.blocks.push_back({t, share * at(frame, t).length});
  for (std::size_t i = 0; i + 1 < posts.size(); ++i)
    for (std::size_t k = i + 1; k < posts.size(); ++k) {
      const Timber &a = at(frame, posts[i]), &b = at(frame, posts[k]);
      const auto end = [](const Timber& t, bool top) {
        return to_world(t.at, {top == (t.at.x.z > 0) ? t.length : 0, 0, 0});
      };
      ground.diagonals.push_back({posts[i], posts[k], norm(end(b, true) - end(a, false))});
      ground.diagonals.push_back({posts[k], posts[i], norm(end(a, true) - end(b, false))});
    }
  ground.toe_stops = feet_of(frame, posts.empty() ? real : posts, foot_z);
  for (const int t : real) {
    const Timber& timber = at(frame, t);
    const Span e = extent(timber, square);
    const double thick = e.hi - e.lo;
    if (thick > 0 && timber.length / thick >= limits::kSlenderFlat)
      ground.strongbacks.push_back({t, timber.length / thick});
  }
  return ground;
}

}  // namespace bentbook
