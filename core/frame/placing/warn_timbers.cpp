#include "frame/placing/warn_timbers.h"

#include <algorithm>

#include "frame/limits.h"
#include "geometry/cell.h"
#include "numeric/sorting.h"

namespace bentbook {
namespace {

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
      if (shared > kSharedWood)
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

/// Pins and pegs of two joints want their axes apart by half of both and a margin.
void warn_close_pins(Timber& t) {
  for (std::size_t i = 0; i < t.features.size(); ++i)
    for (std::size_t j = i + 1; j < t.features.size(); ++j) {
      const Feature &a = t.features[i], &b = t.features[j];
      if (a.kind != FeatureKind::kHole || b.kind != FeatureKind::kHole || a.joint == b.joint) continue;
      const double wanted = (a.diameter + b.diameter) / 2 + limits::kPinMargin;
      const double along = libm::fabs((a.from + a.to) - (b.from + b.to)) / 2;
      if (along >= wanted) continue;
      const Axis one = t.pockets[static_cast<std::size_t>(a.first_pocket)].sweep;
      const Axis two = t.pockets[static_cast<std::size_t>(b.first_pocket)].sweep;
      const double across = one == two ? libm::fabs((a.across_lo + a.across_hi) - (b.across_lo + b.across_hi)) / 2 : 0;
      const double apart_by = libm::sqrt(along * along + across * across);
      if (apart_by < wanted - 1e-9)
        t.warnings.push_back({WarningId::kPinsMeet, b.joint, (b.from + b.to) / 2, apart_by, wanted});
    }
}

struct Rectangle {
  double y_lo, y_hi, z_lo, z_hi;
};

/// What a pocket takes of the section at x: swept along y or z a rectangle, along x its bounds.
bool section_of(const Pocket& pocket, const Box& bounds, double x, const Sides& sides, Rectangle& r) {
  if (x <= bounds.lo.x || x >= bounds.hi.x) return false;
  double lo = 1e300, hi = -1e300;
  if (pocket.sweep == Axis::kX) {
    r = {bounds.lo.y, bounds.hi.y, bounds.lo.z, bounds.hi.z};
  } else {
    const auto corners = corners_of(pocket);
    for (int i = 0; i < corners.count; ++i) {
      const Vec2 a = corners[i], b = corners[i + 1 == corners.count ? 0 : i + 1];
      if ((a.x - x) * (b.x - x) > 0 || a.x == b.x) continue;
      const double v = a.y + (x - a.x) / (b.x - a.x) * (b.y - a.y);
      lo = v < lo ? v : lo;
      hi = v > hi ? v : hi;
    }
    if (!(lo < hi)) return false;
    r = pocket.sweep == Axis::kY ? Rectangle{pocket.from, pocket.to, lo, hi}
                                 : Rectangle{lo, hi, pocket.from, pocket.to};
  }
  r = {std::max(r.y_lo, sides.y_lo), std::min(r.y_hi, sides.y_hi), std::max(r.z_lo, sides.z_lo),
       std::min(r.z_hi, sides.z_hi)};
  return r.y_lo < r.y_hi && r.z_lo < r.z_hi;
}

/// Area of the union of rectangles, strip by strip.
double covered(const std::vector<Rectangle>& all) {
  std::vector<double> cuts;
  for (const Rectangle& r : all) {
    cuts.push_back(r.y_lo);
    cuts.push_back(r.y_hi);
  }
  sort_up(cuts);
  double area = 0;
  std::vector<std::pair<double, double>> spans;
  for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
    const double middle = (cuts[i] + cuts[i + 1]) / 2;
    spans.clear();
    for (const Rectangle& r : all)
      if (r.y_lo < middle && middle < r.y_hi) spans.emplace_back(r.z_lo, r.z_hi);
    sort_up(spans);
    double top = -1e300, length = 0;
    for (const auto& [lo, hi] : spans) {
      length += std::max(0.0, hi - std::max(lo, top));
      top = std::max(top, hi);
    }
    area += length * (cuts[i + 1] - cuts[i]);
  }
  return area;
}

/// At the ends the timber is a tenon, tongue, scarf or lap on purpose: its section is not asked for there.
bool in_shaped_end(const Timber& t, double x) {
  return std::any_of(t.features.begin(), t.features.end(), [&t, x](const Feature& f) {
    const bool lapped_end = f.kind == FeatureKind::kLap && (f.from < 1e-6 || f.to > t.length - 1e-6);
    return (f.at_end || lapped_end) && f.kind != FeatureKind::kSlot && f.kind != FeatureKind::kRelief &&
           f.kind != FeatureKind::kLetIn && x > f.from && x < f.to;
  });
}

/// The weakest place is said where too little of the section is left; the engineer decides.
void warn_section(Timber& t, const Bounds& bounds) {
  const double whole = (t.sides.y_hi - t.sides.y_lo) * (t.sides.z_hi - t.sides.z_lo);
  TimberWarning least{WarningId::kShareLeft, -1, 0, 1, limits::kLeastSection};
  std::vector<Rectangle> taken;
  for (const Feature& f : t.features) {
    const double x = (f.from + f.to) / 2;
    if (in_shaped_end(t, x)) continue;
    taken.clear();
    Rectangle r{};
    for (std::size_t p = 0; p < t.pockets.size(); ++p)
      if (section_of(t.pockets[p], bounds[p], x, t.sides, r)) taken.push_back(r);
    const double share = 1 - covered(taken) / whole;
    if (share < least.value) least = {WarningId::kShareLeft, f.joint, x, share, limits::kLeastSection};
  }
  if (least.value < limits::kLeastSection) t.warnings.push_back(least);
}

void warn_defects(Timber& t) {
  for (const Defect& d : t.defects)
    for (const Feature& f : t.features)
      if ((f.face == d.face || f.at_end) && f.from < d.to.in() && d.from.in() < f.to) {
        t.warnings.push_back({WarningId::kDefect, f.joint, (f.from + f.to) / 2, static_cast<double>(d.kind), 0});
        break;
      }
}

void take_over_warnings(Work& work, int timber) {
  Timber& t = work.timber(timber);
  const Timber& was = work.before->timbers[static_cast<std::size_t>(work.kept.was[static_cast<std::size_t>(timber)])];
  for (std::size_t i = t.warnings.size(); i < was.warnings.size(); ++i)
    t.warnings.push_back(carried_over(was.warnings[i], work.kept));
}

}  // namespace

void warn_timbers(Work& work) {
  Frame& frame = work.frame;
  std::vector<Bounds> bounds(frame.timbers.size());
  for (int i = 0; i < static_cast<int>(frame.timbers.size()); ++i) {
    if (work.kept.bears[static_cast<std::size_t>(i)]) {
      take_over_warnings(work, i);
      continue;
    }
    Timber& t = work.timber(i);
    Bounds& own = bounds[static_cast<std::size_t>(i)];
    own = bounds_of_pockets(t);
    warn_meeting_features(t, own);
    warn_close_pins(t);
    warn_section(t, own);
    warn_defects(t);
  }
  for (const ContactFace& contact : frame.contacts) {
    const Joint& joint = frame.joints[static_cast<std::size_t>(contact.joint)];
    for (const auto& [timber, into] : {std::pair{joint.member, 1.0}, std::pair{joint.receiver, -1.0}})
      if (const auto at = static_cast<std::size_t>(timber); !work.kept.bears[at])
        warn_cut_contact(frame, contact, timber, into, bounds[at]);
  }
}

}  // namespace bentbook
