#include <algorithm>
#include <utility>

#include "frame/work.h"
#include "geometry/cell.h"

namespace bentbook {
namespace {

constexpr double kRoom = 0.005;  // in³: less is rounding of measures, not a clash

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
  std::sort(pairs.begin(), pairs.end());
  return pairs;
}

/// Pairs whose blanks share room, in order; swept along the building.
std::vector<Pair> near_pairs(const Frame& frame) {
  std::vector<Stand> stands;
  stands.reserve(frame.timbers.size());
  for (std::size_t i = 0; i < frame.timbers.size(); ++i)
    if (frame.timbers[i].placed) stands.push_back(stand_of(frame.timbers[i], static_cast<int>(i)));
  std::sort(stands.begin(), stands.end(),
            [](const Stand& a, const Stand& b) { return a.lo.y != b.lo.y ? a.lo.y < b.lo.y : a.timber < b.timber; });
  const auto at = [&](const Stand& s) -> const Placement& {
    return frame.timbers[static_cast<std::size_t>(s.timber)].at;
  };
  std::vector<Pair> pairs;
  std::vector<const Stand*> open;
  for (const Stand& s : stands) {
    std::size_t kept = 0;
    for (const Stand* other : open) {
      if (other->hi.y <= s.lo.y) continue;
      open[kept++] = other;
      if (other->hi.x <= s.lo.x || s.hi.x <= other->lo.x || other->hi.z <= s.lo.z || s.hi.z <= other->lo.z) continue;
      if (!parted(*other, at(*other), s, at(s)))
        pairs.emplace_back(std::min(s.timber, other->timber), std::max(s.timber, other->timber));
    }
    open.resize(kept);
    open.push_back(&s);
  }
  std::sort(pairs.begin(), pairs.end());
  return pairs;
}

bool apart(const Box& a, const Box& b) {
  return a.lo.x >= b.hi.x || b.lo.x >= a.hi.x || a.lo.y >= b.hi.y || b.lo.y >= a.hi.y || a.lo.z >= b.hi.z ||
         b.lo.z >= a.hi.z;
}

using Bounds = std::vector<Box>;

Bounds bounds_of_pockets(const Timber& t) {
  Bounds bounds;
  bounds.reserve(t.pockets.size());
  for (const Pocket& pocket : t.pockets) bounds.push_back(bounds_of(pocket));
  return bounds;
}

/// Features of two joints that take the same wood of one timber.
void warn_meeting_features(Timber& t, const Bounds& bounds) {
  Solid solid;  // made when the first two come near each other
  for (std::size_t i = 0; i < t.features.size(); ++i)
    for (std::size_t j = i + 1; j < t.features.size(); ++j) {
      const Feature &a = t.features[i], &b = t.features[j];
      if ((a.joint == b.joint && a.joint >= 0) || a.from >= b.to || b.from >= a.to) continue;
      double shared = 0;
      for (int p = a.first_pocket; p < a.first_pocket + a.pockets; ++p)
        for (int q = b.first_pocket; q < b.first_pocket + b.pockets; ++q) {
          const auto one = static_cast<std::size_t>(p), two = static_cast<std::size_t>(q);
          if (apart(bounds[one], bounds[two])) continue;
          if (solid.cuts.empty()) solid = solid_of(t);
          shared += shared_volume(solid, t.pockets[one], t.pockets[two]);
        }
      if (shared > kRoom)
        t.warnings.push_back(
            {WarningId::kFeaturesMeet, b.joint, (b.from + b.to) / 2, shared, static_cast<double>(a.joint)});
    }
}

using Patch = std::vector<Vec3>;

double area_of(const Patch& patch) {
  Vec3 twice{};
  for (std::size_t i = 2; i < patch.size(); ++i) twice = twice + cross(patch[i - 1] - patch[0], patch[i] - patch[0]);
  return norm(twice) / 2;
}

/// Area of a patch (timber axes) that lies within a pocket.
double area_within(Patch patch, const Pocket& pocket) {
  Patch outside, inside;
  for (const Plane& plane : planes_of(pocket)) {
    split(patch, plane, outside, inside);
    patch.swap(inside);
    if (patch.empty()) return 0;
  }
  return area_of(patch);
}

/// Other joints' pockets where a joint bears. Round holes are left out: they are small, and known.
void warn_cut_contact(Frame& frame, const ContactFace& contact, int timber, double into, const Bounds& bounds) {
  constexpr double kSkin = 1e-3, kLeast = 0.01;
  Timber& t = frame.timbers[static_cast<std::size_t>(timber)];
  Patch patch;
  Box box{{1e300, 1e300, 1e300}, {-1e300, -1e300, -1e300}};
  for (const Vec3& corner : contact.corners) {
    const Vec3 p = to_local(t.at, corner + into * kSkin * contact.normal);
    patch.push_back(p);
    box.lo = {std::min(box.lo.x, p.x), std::min(box.lo.y, p.y), std::min(box.lo.z, p.z)};
    box.hi = {std::max(box.hi.x, p.x), std::max(box.hi.y, p.y), std::max(box.hi.z, p.z)};
  }
  for (const Feature& f : t.features) {
    if (f.joint == contact.joint || f.kind == FeatureKind::kHole || f.kind == FeatureKind::kScarf) continue;
    double lost = 0;
    for (int p = f.first_pocket; p < f.first_pocket + f.pockets; ++p)
      if (!apart(box, bounds[static_cast<std::size_t>(p)]))
        lost += area_within(patch, t.pockets[static_cast<std::size_t>(p)]);
    if (lost > kLeast)
      t.warnings.push_back(
          {WarningId::kContactCut, contact.joint, (box.lo.x + box.hi.x) / 2, lost, static_cast<double>(f.joint)});
  }
}

}  // namespace

void find_clashes(Work& work) {
  Frame& frame = work.frame;
  const std::vector<Pair> joined = joined_pairs(frame);
  for (const Pair& pair : near_pairs(frame)) {
    if (std::binary_search(joined.begin(), joined.end(), pair)) continue;
    const Timber &a = work.timber(pair.first), &b = work.timber(pair.second);
    const double shared = shared_volume(solid_of(a), a.at, solid_of(b), b.at);
    if (shared > kRoom) work.find(FindingId::kClash, a.mark, b.mark, shared);
  }
  std::vector<Bounds> bounds;
  bounds.reserve(frame.timbers.size());
  for (Timber& t : frame.timbers) {
    bounds.push_back(bounds_of_pockets(t));
    warn_meeting_features(t, bounds.back());
  }
  for (const ContactFace& contact : frame.contacts) {
    const Joint& joint = frame.joints[static_cast<std::size_t>(contact.joint)];
    warn_cut_contact(frame, contact, joint.member, 1, bounds[static_cast<std::size_t>(joint.member)]);
    warn_cut_contact(frame, contact, joint.receiver, -1, bounds[static_cast<std::size_t>(joint.receiver)]);
  }
}

}  // namespace bentbook
