#include "frame/placing/find_clashes.h"

#include <algorithm>
#include <utility>

#include "frame/facts.h"
#include "numeric/sorting.h"

namespace bentbook {
namespace {

/// A timber's blank as it stands.
struct Stand {
  Vec3 centre, half, lo, hi;  ///< half along its own axes; lo, hi in the building's
  int timber = 0;
};

Stand stand_of(const Timber& t, int index) {
  const Vec3 lo{0, t.sides.y_lo, t.sides.z_lo}, hi{t.length, t.sides.y_hi, t.sides.z_hi};
  Stand s;
  s.timber = index;
  s.half = 0.5 * (hi - lo);
  s.centre = to_world(t.at, 0.5 * (lo + hi));
  const auto size = [&](double x, double y, double z) {
    return libm::fabs(x) * s.half.x + libm::fabs(y) * s.half.y + libm::fabs(z) * s.half.z;
  };
  const Vec3 reach{size(t.at.x.x, t.at.y.x, t.at.z.x), size(t.at.x.y, t.at.y.y, t.at.z.y),
                   size(t.at.x.z, t.at.y.z, t.at.z.z)};
  s.lo = s.centre - reach;
  s.hi = s.centre + reach;
  return s;
}

/// Two turned boxes share no room where some axis parts them.
bool parted(const Stand& a, const Placement& at_a, const Stand& b, const Placement& at_b) {
  constexpr double kHair = 1e-4;
  const Vec3 d = b.centre - a.centre;
  const Vec3 ax[3] = {at_a.x, at_a.y, at_a.z}, bx[3] = {at_b.x, at_b.y, at_b.z};
  const double ah[3] = {a.half.x, a.half.y, a.half.z}, bh[3] = {b.half.x, b.half.y, b.half.z};
  double r[3][3], rs[3][3];
  for (int i = 0; i < 3; ++i)
    for (int j = 0; j < 3; ++j) {
      r[i][j] = dot(ax[i], bx[j]);
      rs[i][j] = libm::fabs(r[i][j]);
    }
  for (int i = 0; i < 3; ++i)
    if (libm::fabs(dot(d, ax[i])) > ah[i] + bh[0] * rs[i][0] + bh[1] * rs[i][1] + bh[2] * rs[i][2] - kHair) return true;
  for (int j = 0; j < 3; ++j)
    if (libm::fabs(dot(d, bx[j])) > bh[j] + ah[0] * rs[0][j] + ah[1] * rs[1][j] + ah[2] * rs[2][j] - kHair) return true;
  for (int i = 0; i < 3; ++i)
    for (int j = 0; j < 3; ++j) {
      const Vec3 axis = cross(ax[i], bx[j]);
      const double size = norm(axis);
      if (size < 1e-6) continue;
      const int i1 = (i + 1) % 3, i2 = (i + 2) % 3, j1 = (j + 1) % 3, j2 = (j + 2) % 3;
      const double reach = ah[i1] * rs[i2][j] + ah[i2] * rs[i1][j] + bh[j1] * rs[i][j2] + bh[j2] * rs[i][j1];
      if (libm::fabs(dot(d, axis)) > reach - kHair * size) return true;
    }
  return false;
}

using Pair = std::pair<int, int>;

std::vector<Pair> joined_pairs(const Frame& frame) {
  std::vector<Pair> pairs;
  pairs.reserve(frame.joints.size());
  for (const Joint& joint : frame.joints)
    pairs.emplace_back(std::min(joint.member, joint.receiver), std::max(joint.member, joint.receiver));
  sort_up(pairs);
  return pairs;
}

/// Pairs whose blanks share room, in order, but for those of which nothing has changed; swept along the building.
std::vector<Pair> near_pairs(const Frame& frame, const Kept& kept) {
  std::vector<Stand> stands;
  stands.reserve(frame.timbers.size());
  for (std::size_t i = 0; i < frame.timbers.size(); ++i)
    if (frame.timbers[i].placed) stands.push_back(stand_of(frame.timbers[i], static_cast<int>(i)));
  sort_by(stands,
          [](const Stand& a, const Stand& b) { return a.lo.y != b.lo.y ? a.lo.y < b.lo.y : a.timber < b.timber; });
  const auto at = [&](const Stand& s) -> const Placement& {
    return frame.timbers[static_cast<std::size_t>(s.timber)].at;
  };
  std::vector<Pair> pairs;
  std::vector<const Stand*> open;
  for (const Stand& s : stands) {
    std::size_t still_open = 0;
    for (const Stand* other : open) {
      if (other->hi.y <= s.lo.y) continue;
      open[still_open++] = other;
      if (kept.same(s.timber) && kept.same(other->timber)) continue;
      if (other->hi.x <= s.lo.x || s.hi.x <= other->lo.x || other->hi.z <= s.lo.z || s.hi.z <= other->lo.z) continue;
      if (!parted(*other, at(*other), s, at(s)))
        pairs.emplace_back(std::min(s.timber, other->timber), std::max(s.timber, other->timber));
    }
    open.resize(still_open);
    open.push_back(&s);
  }
  sort_up(pairs);
  return pairs;
}

struct Clash {
  Pair pair;
  double shared = 0;
};

/// Those of the earlier frame between timbers that are the same as then.
std::vector<Clash> kept_clashes(const Work& work) {
  std::vector<Clash> clashes;
  if (work.before == nullptr) return clashes;
  const auto now = [&work](const std::string& mark) {
    const int was = timber_by_mark(*work.before, mark);
    return was < 0 ? -1 : work.kept.now[static_cast<std::size_t>(was)];
  };
  for (const Finding& f : work.before->findings) {
    if (f.id != FindingId::kClash) continue;
    const int a = now(f.mark), b = now(f.other);
    if (a >= 0 && b >= 0) clashes.push_back({{std::min(a, b), std::max(a, b)}, f.value});
  }
  return clashes;
}

}  // namespace

void find_clashes(Work& work) {
  Frame& frame = work.frame;
  const std::vector<Pair> joined = joined_pairs(frame);
  std::vector<Clash> clashes = kept_clashes(work);
  for (const Pair& pair : near_pairs(frame, work.kept)) {
    if (std::binary_search(joined.begin(), joined.end(), pair)) continue;
    const Timber &a = work.timber(pair.first), &b = work.timber(pair.second);
    const double shared = shared_volume(solid_of(a), a.at, solid_of(b), b.at);
    if (shared > kSharedWood) clashes.push_back({pair, shared});
  }
  sort_by(clashes, [](const Clash& a, const Clash& b) { return a.pair < b.pair; });
  for (const Clash& clash : clashes)
    work.add_finding(FindingId::kClash, work.timber(clash.pair.first).mark, work.timber(clash.pair.second).mark,
                     clash.shared);
}

}  // namespace bentbook
