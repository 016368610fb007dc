#include "roof/plan/solve_roof.h"

#include <algorithm>
#include <utility>

#include "numeric/index.h"
#include "roof/limits.h"
#include "roof/plan/dormer_timbers.h"
#include "roof/plan/limits.h"

namespace bentbook {
namespace {

class Judge {
 public:
  Judge(const RoofPlan& plan, RoofSolution& roof) : plan_(plan), roof_(roof) {}

  void run() {
    add({RoofFindingId::kNotEngineered});
    say_fascias();
    say_thrust();
    for (std::size_t i = 0; i < roof_.timbers.size(); ++i) say_seat(static_cast<int>(i));
    say_notches();
    say_shallow();
    say_bearing();
    say_clashes();
    for (const DormerShape& dormer : roof_.dormers) {
      RoofFinding finding{RoofFindingId::kDormer};
      finding.dormer = dormer.dormer;
      add(finding);
    }
  }

 private:
  void add(const RoofFinding& finding) { roof_.findings.push_back(finding); }
  [[nodiscard]] const RoofPlane& plane(int side) const { return roof_.shape.planes[at(side)]; }

  /// Neighbours whose tails end at unlike heights. Source: SOURCES.md, "fascias".
  void say_fascias() {
    const int n = roof_.shape.sides;
    for (int i = 0; i < n; ++i) {
      const int next = i + 1 == n ? 0 : i + 1;
      const RoofPlane &a = plane(i), &b = plane(next);
      if (a.gable || b.gable || libm::fabs(b.eave_z - a.eave_z) <= limits::kFasciaApart) continue;
      RoofFinding finding{RoofFindingId::kFasciaApart, i, next};
      finding.value = b.eave_z - a.eave_z;
      finding.overhang = (b.base - a.eave_z) / b.tan;
      finding.plate = b.plate - finding.value;
      add(finding);
    }
  }

  void say_thrust() {
    if (plan_.feet == Feet::kTied) return;
    std::vector<int> eaves;
    for (int i = 0; i < roof_.shape.sides; ++i)
      if (!plane(i).gable) eaves.push_back(i);
    const bool pair = eaves.size() == 2 && dot(plane(eaves[0]).along, plane(eaves[1]).along) < -1 + 1e-9;
    if (!pair) {
      if (eaves.size() > 1) add({RoofFindingId::kThrustUnknown});
      return;
    }
    const RoofPlane &a = plane(eaves[0]), &b = plane(eaves[1]);
    RoofFinding finding{RoofFindingId::kThrust};
    const double span = a.depth(b.from), per_foot = plan_.load_psf * plan_.spacing.in() / 12;
    finding.value = per_foot * span / 12 / (2 * (a.tan + b.tan));
    add(finding);
  }

  void say_seat(int index) {
    const RoofTimber& t = roof_.timbers[at(index)];
    if (t.kind != RoofTimberKind::kHip && t.kind != RoofTimberKind::kValley) return;
    const RoofLine& line = roof_.shape.lines[at(t.line)];
    if (line.node_a >= roof_.shape.sides) return;  // it stands on other timbers
    const double clear = t.seat.heel - t.section.depth.in() / libm::cos(t.slope);
    if (!t.seat.cut) {
      RoofFinding finding{RoofFindingId::kNoSeat};
      finding.timber = index;
      finding.value = std::max(clear, 0.0);
      add(finding);
    }
    const double apart = libm::fabs(plane(t.left).plate - plane(t.right).plate);
    if (plane(t.left).gable || plane(t.right).gable || apart < limits::kFasciaApart) return;
    RoofFinding finding{RoofFindingId::kUnlikePlates};
    finding.timber = index;
    finding.value = apart;
    add(finding);
  }

  void say_notches() {
    std::vector<bool> told(roof_.shape.planes.size(), false);
    for (std::size_t i = 0; i < roof_.timbers.size(); ++i) {
      const RoofTimber& t = roof_.timbers[i];
      const double share = t.seat.depth / t.section.depth.in();
      if (!t.seat.cut || share <= limits::kNotchAtSupport) continue;
      if (t.line < 0) {
        if (told[at(t.left)]) continue;
        told[at(t.left)] = true;
      }
      RoofFinding finding{RoofFindingId::kNotch};
      finding.timber = static_cast<int>(i);
      finding.value = share;
      add(finding);
    }
  }

  /// How far the lowest of what ends against each ridge, hip and valley hangs under it.
  void say_shallow() {
    std::vector<double> under(roof_.timbers.size(), 0);
    for (const RoofTimber& t : roof_.timbers)
      for (const RoofEndCut& cut : t.cuts) {
        if (cut.against < 0 || t.line >= 0 || libm::fabs(cut.plane.normal.x) < 1e-9) continue;
        const RoofTimber& other = roof_.timbers[at(cut.against)];
        // The bottom arris' end, and the other's bottom over it.
        const double z = -t.section.depth.in() / 2,
                     x = (cut.plane.offset - cut.plane.normal.z * z) / cut.plane.normal.x;
        const Vec3 low = to_world(t.at, {x, 0, z});
        const Vec3 place = to_local(other.at, low);
        const double hangs = (-other.section.depth.in() / 2 - place.z) / other.at.z.z;
        under[at(cut.against)] = std::max(under[at(cut.against)], hangs);
      }
    for (std::size_t i = 0; i < under.size(); ++i) {
      if (under[i] <= limits::kFasciaApart) continue;
      RoofFinding finding{RoofFindingId::kShallow};
      finding.timber = static_cast<int>(i);
      finding.value = under[i];
      add(finding);
    }
  }

  void say_bearing() {
    std::vector<bool> held(roof_.timbers.size(), false);
    for (const RoofContact& contact : roof_.contacts)
      if (contact.at_b) held[at(contact.member)] = true;
    for (std::size_t i = 0; i < held.size(); ++i) {
      if (held[i] || roof_.timbers[i].line >= 0) continue;
      bool fits = false;
      for (const RoofEndCut& cut : roof_.timbers[i].cuts) fits = fits || (cut.at_b && cut.against >= 0);
      if (!fits) continue;
      RoofFinding finding{RoofFindingId::kNoBearing};
      finding.timber = static_cast<int>(i);
      add(finding);
    }
  }

  void say_clashes();

  const RoofPlan& plan_;
  RoofSolution& roof_;
};

/// The box around a placed timber.
Box room_of_timber(const RoofTimber& t) {
  Box box{{1e300, 1e300, 1e300}, {-1e300, -1e300, -1e300}};
  const double y = t.section.breadth.in() / 2, z = t.section.depth.in() / 2;
  for (const double a : {0.0, t.length})
    for (const double b : {-y, y})
      for (const double c : {-z, z}) {
        const Vec3 p = to_world(t.at, {a, b, c});
        box.lo = {std::min(box.lo.x, p.x), std::min(box.lo.y, p.y), std::min(box.lo.z, p.z)};
        box.hi = {std::max(box.hi.x, p.x), std::max(box.hi.y, p.y), std::max(box.hi.z, p.z)};
      }
  return box;
}

bool boxes_meet(const Box& a, const Box& b) {
  constexpr double kHair = 1e-6;
  return a.lo.x < b.hi.x - kHair && b.lo.x < a.hi.x - kHair && a.lo.y < b.hi.y - kHair && b.lo.y < a.hi.y - kHair &&
         a.lo.z < b.hi.z - kHair && b.lo.z < a.hi.z - kHair;
}

/// Whether an end cut of one keeps clear of all of the other's wood.
bool parted_by_cut(const RoofTimber& a, const RoofTimber& b) {
  constexpr double kHair = 1e-6;
  const double y = b.section.breadth.in() / 2, z = b.section.depth.in() / 2;
  for (const RoofEndCut& cut : a.cuts) {
    const Vec3 normal = to_world_direction(a.at, cut.plane.normal);
    const Vec3 local = to_local_direction(b.at, normal);
    const double offset = cut.plane.offset + dot(normal, a.at.origin) - dot(normal, b.at.origin);
    const double lowest = std::min(0.0, local.x * b.length) - libm::fabs(local.y) * y - libm::fabs(local.z) * z;
    if (lowest > offset - kHair) return true;
    // A cheek against its mate's cheek.
    for (const RoofEndCut& other : b.cuts)
      if (dot(other.plane.normal, local) < -1 + 1e-12 && libm::fabs(other.plane.offset + offset) < kHair) return true;
  }
  return false;
}

void Judge::say_clashes() {
  constexpr double kSharedWood = 0.005;  // in³: less is rounding
  std::vector<Box> boxes;
  boxes.reserve(roof_.timbers.size());
  for (const RoofTimber& t : roof_.timbers) boxes.push_back(room_of_timber(t));
  for (std::size_t i = 0; i < boxes.size(); ++i)
    for (std::size_t j = i + 1; j < boxes.size(); ++j) {
      if (!boxes_meet(boxes[i], boxes[j])) continue;
      const RoofTimber &a = roof_.timbers[i], &b = roof_.timbers[j];
      if (parted_by_cut(a, b) || parted_by_cut(b, a)) continue;
      const double shared = shared_volume(solid_of(a), a.at, solid_of(b), b.at);
      if (shared <= kSharedWood) continue;
      RoofFinding finding{RoofFindingId::kClash};
      finding.timber = static_cast<int>(i);
      finding.other = static_cast<int>(j);
      finding.value = shared;
      add(finding);
    }
}

/// Settles the lines' timbers and takes out those that their neighbours leave no wood of, with their rooms.
void keep_wood(std::vector<RoofTimber>& timbers, std::vector<LineRoom>& rooms) {
  std::vector<int> now(timbers.size(), -1);
  std::vector<RoofTimber> kept;
  std::vector<LineRoom> kept_rooms;
  kept.reserve(timbers.size());
  kept_rooms.reserve(rooms.size());
  for (std::size_t i = 0; i < timbers.size(); ++i) {
    if (!settle_timber(timbers[i], 0)) continue;
    now[i] = static_cast<int>(kept.size());
    kept.push_back(std::move(timbers[i]));
    kept_rooms.push_back(rooms[i]);
    kept_rooms.back().timber = now[i];
  }
  for (RoofTimber& t : kept)
    for (RoofEndCut& cut : t.cuts)
      if (cut.against >= 0) cut.against = now[at(cut.against)];
  timbers = std::move(kept);
  rooms = std::move(kept_rooms);
}

/// Line lengths of hips and valleys, from the wall line where they come over it.
void measure_lines(const RoofShape& shape, std::vector<RoofTimber>& timbers) {
  for (RoofTimber& t : timbers) {
    if (t.line < 0) continue;  // a dormer's header
    const RoofLine& line = shape.lines[at(t.line)];
    const Vec2 a = flat(line.a), d = flat(line.b - line.a);
    double from = 0;
    for (const int side : {t.left, t.right}) {
      const RoofPlane& plane = shape.planes[at(side)];
      const double start = plane.depth(a), rise = dot(plane.in, d);
      if (start < -1e-9 && rise > 1e-9) from = std::max(from, -start / rise);
    }
    t.run = (1 - std::min(from, 1.0)) * norm(d);
    t.line_length = t.run / libm::cos(t.slope);
    // Along the top in the middle, from the line's end to the first cut there.
    const double end = to_local(t.at, line.b).x;
    double nearest = end;
    for (const RoofEndCut& cut : t.cuts)
      if (cut.at_b && cut.plane.normal.x > 1e-9)
        nearest =
            std::min(nearest, (cut.plane.offset - cut.plane.normal.z * t.section.depth.in() / 2) / cut.plane.normal.x);
    t.shortening = end - nearest;
  }
}

}  // namespace

Result<RoofSolution> solve_roof(const RoofPlan& plan, SpacedFrom spaced) {
  auto shape = solve_shape(plan);
  if (!shape) return tl::unexpected(shape.error());
  RoofSolution roof;
  roof.shape = *std::move(shape);
  std::vector<LineRoom> rooms;
  place_line_timbers(plan, roof.shape, roof.timbers, rooms);
  keep_wood(roof.timbers, rooms);
  auto dormers = solve_dormers(plan, roof.shape);
  if (!dormers) return tl::unexpected(dormers.error());
  roof.dormers = *std::move(dormers);
  add_dormers(roof.dormers, roof.shape);
  std::vector<RoofOpening> openings;
  openings.reserve(roof.dormers.size());
  for (const DormerShape& dormer : roof.dormers)
    openings.push_back(place_dormer_opening(plan, roof.shape, dormer, roof.timbers, rooms));
  take_room(roof.timbers, rooms);
  measure_lines(roof.shape, roof.timbers);
  place_face_rafters(plan, roof.shape, rooms, spaced == SpacedFrom::kMiddle, openings, roof.timbers);
  for (std::size_t i = 0; i < openings.size(); ++i)
    place_dormer(plan, roof.shape, roof.dormers[i], openings[i], rooms, roof.timbers);
  for (std::size_t i = 0; i < roof.timbers.size(); ++i) add_contacts(roof.timbers, static_cast<int>(i), roof.contacts);
  Judge(plan, roof).run();
  return roof;
}

}  // namespace bentbook
