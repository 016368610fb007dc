#include "frame/placing/finish.h"

#include <algorithm>

#include "numeric/sorting.h"

namespace bentbook {
namespace {

void move_plane(CutPlane& plane, double by) { plane.offset += plane.normal.x * by; }

void move_pocket(Pocket& pocket, double by) {
  if (pocket.sweep == Axis::kX) {
    pocket.from += by;
    pocket.to += by;
    return;
  }
  for (int i = 0; i < pocket.outline.count; ++i) pocket.outline[i].x += by;
}

/// Origin to end A's tip; ends that nothing has shaped are cut square.
void settle(Timber& timber, const Tips& tips) {
  const double by = -tips.a;
  timber.length = tips.b - tips.a;
  timber.at.origin = timber.at.origin + tips.a * timber.at.x;
  for (EndCut& cut : timber.cuts) move_plane(cut.plane, by);
  if (!tips.a_cut) timber.cuts.push_back({End::kA, EndCutName::kSquare, {{-1, 0, 0}, 0}});
  if (!tips.b_cut) timber.cuts.push_back({End::kB, EndCutName::kSquare, {{1, 0, 0}, timber.length}});
  sort_by(timber.cuts, [](const EndCut& a, const EndCut& b) { return a.end < b.end; });
  for (Feature& f : timber.features) {
    f.from += by;
    f.to += by;
    f.from = f.from < 0 ? 0 : f.from;
    f.to = f.to > timber.length ? timber.length : f.to;
    move_plane(f.shoulder, by);
  }
  for (Pocket& pocket : timber.pockets) move_pocket(pocket, by);
  for (TimberWarning& w : timber.warnings) w.station += by;
}

/// Keeps the part of a patch inside of a plane; one that lies in the plane stays.
void clip_patch(FixedList<Vec3, 8>& patch, Vec3 normal, double offset) {
  constexpr double kHair = 1e-7;
  double height[8];
  bool cuts = false;
  for (int i = 0; i < patch.count; ++i) {
    height[i] = dot(normal, patch[i]) - offset;
    cuts = cuts || height[i] > kHair;
  }
  if (!cuts) return;
  FixedList<Vec3, 8> kept;
  for (int i = 0; i < patch.count; ++i) {
    const int j = i + 1 == patch.count ? 0 : i + 1;
    if (height[i] <= 0 && kept.count < 8) kept.add(patch[i]);
    if ((height[i] > 0) != (height[j] > 0) && kept.count < 8)
      kept.add(patch[i] + (height[i] / (height[i] - height[j])) * (patch[j] - patch[i]));
  }
  patch = kept;
}

/// Clips to a timber's body. `into`: the direction in which its wood must lie behind the patch; a patch on the body's
/// own skin that looks that way touches nothing.
void clip_to_timber(FixedList<Vec3, 8>& patch, Vec3 into, const Timber& t) {
  const auto clip = [&](Vec3 n, double offset) {
    if (patch.count < 3) return;
    const double same = dot(n, into);
    if (libm::fabs(same) < 1 - 1e-9)
      clip_patch(patch, n, offset);
    else if (same > 0 && dot(n, patch[0]) > offset - 1e-6)
      patch.count = 0;
  };
  const auto between = [&](Vec3 n, double lo, double hi) {
    const double origin = dot(n, t.at.origin);
    // Most patches lie within and are no part of the skin.
    bool within = libm::fabs(dot(n, into)) < 1 - 1e-9;
    for (int i = 0; within && i < patch.count; ++i) {
      const double v = dot(n, patch[i]) - origin;
      within = v <= hi && v >= lo;
    }
    if (within) return;
    clip(n, origin + hi);
    clip(-1 * n, -(origin + lo));
  };
  between(t.at.y, t.sides.y_lo, t.sides.y_hi);
  between(t.at.z, t.sides.z_lo, t.sides.z_hi);
  for (const EndCut& cut : t.cuts) {
    const Vec3 n = to_world_direction(t.at, cut.plane.normal);
    clip(n, cut.plane.offset + dot(n, t.at.origin));
  }
}

/// Where the receiver has only half of its depth, being scarfed or lapped, the patch is that half's.
void clip_to_scarf(FixedList<Vec3, 8>& patch, Vec3 normal, const Timber& t, int joint) {
  for (const Feature& f : t.features) {
    if ((f.kind != FeatureKind::kScarf && f.kind != FeatureKind::kLap) || f.joint == joint || patch.count < 3) continue;
    const Pocket& pocket = t.pockets[static_cast<std::size_t>(f.first_pocket)];
    const Box box = bounds_of(pocket);
    bool meets = false;
    for (int i = 0; i < patch.count; ++i) {
      const double x = to_local(t.at, patch[i]).x;
      meets = meets || (x > box.lo.x && x < box.hi.x);
    }
    // Across the axis in which some of the wood is left: a level lap takes all of the breadth and half of the depth.
    Axis axis = pocket.sweep == Axis::kY ? Axis::kZ : Axis::kY;
    const Range broad = sides_along(t, Axis::kY);
    if (pocket.sweep == Axis::kZ && box.lo.y <= broad.lo && box.hi.y >= broad.hi) axis = Axis::kZ;
    const Vec3 out = axis == Axis::kZ ? t.at.z : t.at.y;
    if (!meets || libm::fabs(dot(out, normal)) > 1 - 1e-9) continue;
    const double lo = along(axis, box.lo), hi = along(axis, box.hi);
    const Range wood = sides_along(t, axis);
    const double at = dot(out, t.at.origin);
    if (lo > wood.lo)
      clip_patch(patch, out, at + lo);
    else
      clip_patch(patch, -1 * out, -(at + hi));
  }
}

double area_of(const FixedList<Vec3, 8>& patch) {
  Vec3 twice{};
  for (int i = 2; i < patch.count; ++i) twice = twice + cross(patch[i - 1] - patch[0], patch[i] - patch[0]);
  return norm(twice) / 2;
}

void clip_contacts(Frame& frame) {
  std::size_t kept = 0;  // in place: never ahead of the one being read
  for (Joint& joint : frame.joints) {
    const int first = joint.first_contact, count = joint.contacts;
    joint.first_contact = static_cast<int>(kept);
    joint.contacts = 0;
    for (int c = 0; c < count; ++c) {
      ContactFace contact = frame.contacts[static_cast<std::size_t>(first) + static_cast<std::size_t>(c)];
      clip_to_timber(contact.corners, contact.normal, frame.timbers[static_cast<std::size_t>(joint.member)]);
      const Timber& receiver = frame.timbers[static_cast<std::size_t>(joint.receiver)];
      clip_to_timber(contact.corners, -1 * contact.normal, receiver);
      clip_to_scarf(contact.corners, contact.normal, receiver, contact.joint);
      if (contact.corners.count < 3 || area_of(contact.corners) < 1e-4) continue;
      frame.contacts[kept++] = contact;
      ++joint.contacts;
    }
  }
  frame.contacts.resize(kept);
}

/// All that decides how a timber is cut, as plain counts (1/4096 in), pockets in a fixed order. `mirror`: y turned.
std::vector<std::int64_t> fingerprint(const Timber& t, bool mirror) {
  const auto count = [](double v) { return static_cast<std::int64_t>(libm::floor(v * 4096 + 0.5)); };
  const double s = mirror ? -1 : 1;
  std::vector<std::int64_t> print{static_cast<std::int64_t>(t.kind),
                                  count(t.length),
                                  count(t.sides.z_lo),
                                  count(t.sides.z_hi),
                                  count(mirror ? -t.sides.y_hi : t.sides.y_lo),
                                  count(mirror ? -t.sides.y_lo : t.sides.y_hi),
                                  t.wood.nominal.breadth.count,
                                  t.wood.nominal.depth.count};
  for (const EndCut& cut : t.cuts)
    for (const double v : {cut.plane.normal.x, s * cut.plane.normal.y, cut.plane.normal.z, cut.plane.offset})
      print.push_back(count(v));
  std::vector<std::vector<std::int64_t>> pockets;
  for (const Pocket& p : t.pockets) {
    const bool swap = mirror && p.sweep == Axis::kY;
    std::vector<std::int64_t> one{static_cast<std::int64_t>(p.sweep), count(swap ? -p.to : p.from),
                                  count(swap ? -p.from : p.to), count(p.radius)};
    std::vector<std::pair<std::int64_t, std::int64_t>> corners;
    for (const Vec2& c : p.outline)
      corners.emplace_back(count(p.sweep == Axis::kX ? s * c.x : c.x), count(p.sweep == Axis::kZ ? s * c.y : c.y));
    sort_up(corners);
    for (const auto& [x, y] : corners) {
      one.push_back(x);
      one.push_back(y);
    }
    pockets.push_back(std::move(one));
  }
  sort_up(pockets);
  for (const auto& one : pockets) print.insert(print.end(), one.begin(), one.end());
  return print;
}

struct Print {
  std::vector<std::int64_t> value;
  int timber = 0;
};

bool less(const Print& a, const Print& b) { return a.value != b.value ? a.value < b.value : a.timber < b.timber; }

/// Those that were cut alike and are the same as then still are alike: by timber, the first of these.
std::vector<int> leaders(const Work& work) {
  std::vector<int> leader(work.frame.timbers.size());
  std::vector<int> first(work.kept.now.size(), -1);
  for (std::size_t i = 0; i < leader.size(); ++i) {
    leader[i] = static_cast<int>(i);
    if (!work.kept.same(leader[i])) continue;
    const int alike = work.before->timbers[static_cast<std::size_t>(work.kept.was[i])].alike;
    if (alike < 0) continue;
    int& known = first[static_cast<std::size_t>(alike)];
    if (known < 0) known = leader[i];
    leader[i] = known;
  }
  return leader;
}

/// Timbers that are cut alike share the first one's index; those whose mirror image occurs are handed pairs.
void match(Work& work) {
  Frame& frame = work.frame;
  const std::vector<int> leader = leaders(work);
  std::vector<Print> prints;
  prints.reserve(frame.timbers.size());
  for (std::size_t i = 0; i < frame.timbers.size(); ++i)
    if (leader[i] == static_cast<int>(i)) prints.push_back({fingerprint(frame.timbers[i], false), leader[i]});
  sort_by(prints, less);
  std::vector<std::size_t> firsts;
  for (std::size_t i = 0; i < prints.size(); ++i) {
    if (i == 0 || prints[i].value != prints[i - 1].value) firsts.push_back(i);
    frame.timbers[static_cast<std::size_t>(prints[i].timber)].alike = prints[firsts.back()].timber;
  }
  for (const std::size_t first : firsts) {
    const int own = prints[first].timber;
    const Print mirrored{fingerprint(frame.timbers[static_cast<std::size_t>(own)], true), -1};
    const auto found = std::lower_bound(prints.begin(), prints.end(), mirrored, less);
    if (found == prints.end() || found->value != mirrored.value) continue;
    const int other = frame.timbers[static_cast<std::size_t>(found->timber)].alike;
    if (other == own) continue;  // its own mirror image: no hand
    for (std::size_t i = first; i < prints.size() && prints[i].value == prints[first].value; ++i)
      frame.timbers[static_cast<std::size_t>(prints[i].timber)].handed_pair = own < other ? own : other;
  }
  for (std::size_t i = 0; i < leader.size(); ++i) {
    const Timber& first = frame.timbers[static_cast<std::size_t>(leader[i])];
    frame.timbers[i].alike = first.alike;
    frame.timbers[i].handed_pair = first.handed_pair;
  }
}

}  // namespace

void finish(Work& work) {
  for (std::size_t i = 0; i < work.frame.timbers.size(); ++i) settle(work.frame.timbers[i], work.tips[i]);
  clip_contacts(work.frame);
  work.kept = work.before != nullptr ? find_kept(work.frame, *work.before) : keep_nothing(work.frame);
  match(work);
}

}  // namespace bentbook
