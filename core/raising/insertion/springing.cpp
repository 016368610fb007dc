#include "raising/insertion/springing.h"

#include <algorithm>

#include "numeric/sorting.h"
#include "raising/limits.h"

namespace bentbook {
namespace {

const Joint& joint_at(const Blocking::Graph& in, int j) { return in.frame.joints[static_cast<std::size_t>(j)]; }

/// How deep a joint reaches into the receiver.
double depth_of(const Joint& joint) { return joint.beyond_shoulder + (joint.past_face > 0 ? joint.past_face : 0); }

bool foot_between(const Blocking::Graph& in, int a, int b) {
  const std::vector<int>& joints = in.joints[static_cast<std::size_t>(a)];
  return std::any_of(joints.begin(), joints.end(), [&](int j) {
    const Joint& joint = joint_at(in, j);
    return joint.meeting == Meeting::kPostFoot && (joint.member == b || joint.receiver == b);
  });
}

/// What goes along when a standing timber gives way: all that it, and what goes along, would run into. Feet on sills do
/// not count: they turn there. Empty: `stays` would have to go along.
std::vector<int> yielding(Blocking::Graph& in, const std::vector<int>& standing, int timber, Vec3 sweep, int stays) {
  std::vector<int> group{timber}, rest = standing;
  rest.erase(std::remove(rest.begin(), rest.end(), timber), rest.end());
  for (std::size_t g = 0; g < group.size(); ++g) {
    std::vector<int> left;
    for (const int t : rest) {
      const bool pushed = !foot_between(in, group[g], t) && runs_into(in.body(group[g]), {}, sweep, in.body(t));
      if (pushed && t == stays) return {};
      (pushed ? group : left).push_back(t);
    }
    rest.swap(left);
  }
  sort_up(group);
  return group;
}

bool any_into(Blocking::Graph& in, std::span<const int> moving, Vec3 from, Vec3 sweep, std::span<const int> still) {
  for (const int a : moving)
    for (const int b : still)
      if (runs_into(in.body(a), from, sweep, in.body(b))) return true;
  return false;
}

std::vector<int> without(const std::vector<int>& all, const std::vector<int>& some) {
  std::vector<int> left;
  std::set_difference(all.begin(), all.end(), some.begin(), some.end(), std::back_inserter(left));
  return left;
}

struct BothEnds {
  double a = 0, b = 0;  ///< how deep either end goes
  int at_b = -1;        ///< the receiver there
  int at_a = -1;
};

BothEnds ends_of(const Blocking::Graph& in, const TimberBits& standing, int timber) {
  BothEnds ends;
  for (const int j : in.joints[static_cast<std::size_t>(timber)]) {
    const Joint& joint = joint_at(in, j);
    if (joint.member != timber || joint.crossing || !has_bit(standing, joint.receiver)) continue;
    (joint.end == End::kA ? ends.a : ends.b) = depth_of(joint);
    (joint.end == End::kA ? ends.at_a : ends.at_b) = joint.receiver;
  }
  return ends;
}

/// How much farther what gives way has to lean at the middle of a timber's end than at its lower edge: it turns on the
/// foot of its lowest timber, an upright. Nothing leans for what lies at that foot, nor where no upright is lowest:
/// none.
double lean(Blocking::Graph& in, int timber, double middle, const std::vector<int>& group) {
  const auto lies_lower = [&](int a, int b) { return in.body(a).whole.lo.z < in.body(b).whole.lo.z; };
  const int lowest = *std::min_element(group.begin(), group.end(), lies_lower);
  if (libm::fabs(in.frame.timbers[static_cast<std::size_t>(lowest)].at.x.z) < limits::kUprightSine) return 0;
  const double foot = in.body(lowest).whole.lo.z, low = in.body(timber).whole.lo.z;
  return low > foot + 1 ? (middle - foot) / (low - foot) : 0;
}

/// The side at end B yields along +axis (or A's along −axis): in from above beside the other end, in, and closed again.
std::vector<Move> spread_one(Blocking::Graph& in, const EntryCase& entry, const EntryLimits& limits, Vec3 out,
                             double fixed_depth, double depth, int yields, int stays) {
  const Timber& timber = in.frame.timbers[static_cast<std::size_t>(entry.coming[0])];
  const Vec3 a = timber.at.origin, b = a + timber.length * timber.at.x;
  const double open = fixed_depth + depth + 2 * limits::kHandRoom;
  const std::vector<int> least = yielding(in, entry.standing, yields, open * out, stays);
  if (least.empty()) return {};
  const double leaning = lean(in, entry.coming[0], dot(a, out) > dot(b, out) ? a.z : b.z, least);
  const double by = leaning * open;
  if (leaning == 0 || by > limits.spread_most) return {};
  const std::vector<int> group = yielding(in, entry.standing, yields, by * out, stays);
  if (group.empty()) return {};
  const std::vector<int> rest = without(entry.standing, group);
  const Vec3 beside = (fixed_depth + limits::kHandRoom) * out;
  const Vec3 down = -in.far * in.ways[0];
  if (any_into(in, entry.coming, beside, down, rest) || any_into(in, entry.coming, beside - by * out, down, group))
    return {};
  if (any_into(in, entry.coming, {}, beside, rest) || any_into(in, entry.coming, -by * out, beside, group)) return {};
  if (any_into(in, group, {}, by * out, entry.coming)) return {};
  Move spread{MoveKind::kSpread, out, by, {}, group}, lower, slide{MoveKind::kSlide, -1 * out, norm(beside), {}, {}};
  lower.distance = in.far;
  return {spread, lower, slide};
}

}  // namespace

std::vector<Move> find_spread(Blocking::Graph& in, const EntryCase& entry, const EntryLimits& limits) {
  if (entry.coming.size() != 1) return {};
  const int timber = entry.coming[0];
  const Vec3 axis = in.frame.timbers[static_cast<std::size_t>(timber)].at.x;
  const BothEnds ends = ends_of(in, entry.against, timber);
  if (ends.at_a < 0 || ends.at_b < 0 || libm::fabs(axis.z) > 0.3) return {};
  std::vector<Move> moves = spread_one(in, entry, limits, axis, ends.a, ends.b, ends.at_b, ends.at_a);
  if (moves.empty()) moves = spread_one(in, entry, limits, -1 * axis, ends.b, ends.a, ends.at_a, ends.at_b);
  return moves;
}

std::vector<Move> find_swing(Blocking::Graph& in, const EntryCase& entry) {
  if (entry.coming.size() != 1) return {};
  constexpr double kStep = libm::kPi / 180, kTurn = limits::kMostSwing * kStep;
  const int timber = entry.coming[0];
  const MoveBody& own = in.body(timber);
  if (own.cells.empty()) return {};
  const Placement& at = in.frame.timbers[static_cast<std::size_t>(timber)].at;
  for (const int j : in.joints[static_cast<std::size_t>(timber)]) {
    const Joint& joint = joint_at(in, j);
    if (joint.member != timber || joint.crossing || !has_bit(entry.against, joint.receiver)) continue;
    for (const Vec3& axis : {at.y, -1 * at.y, at.z, -1 * at.z}) {
      const auto hits = [&](const MoveBody& body, Vec3 sweep) {
        if (body.whole.lo.z < in.ground - limits::kTouching) return true;
        return std::any_of(entry.standing.begin(), entry.standing.end(),
                           [&](int other) { return runs_into(body, {}, sweep, in.body(other)); });
      };
      bool free = true;
      for (double turn = kStep / 4; turn < kTurn && free; turn += turn < kStep ? kStep / 4 : kStep / 2)
        free = !hits(turned(own, joint.where, axis, -turn), {});
      if (!free) continue;
      if (hits(turned(own, joint.where, axis, -kTurn), -in.far * in.ways[0])) continue;
      Move lower, swing{MoveKind::kSwing, axis, kTurn, joint.where, {}};
      lower.distance = in.far;
      return {lower, swing};
    }
  }
  return {};
}

}  // namespace bentbook
