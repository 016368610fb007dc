#include "frame/roofs/roof_frame.h"

#include <algorithm>
#include <utility>

#include "frame/placing/find_clashes.h"
#include "frame/placing/finish.h"
#include "frame/placing/place_added.h"
#include "frame/placing/warn_timbers.h"
#include "frame/roofs/roof_timbers.h"
#include "numeric/index.h"
#include "roof/plan/solve_roof.h"

namespace bentbook {
namespace {

class RoofFramer {
 public:
  RoofFramer(const RoofSolution& roof, Work& work) : roof_(roof), work_(work) {}

  void run() {
    place_plates();
    for (const RoofTimber& t : roof_.timbers) {
      placed_.push_back(place_roof_timber(work_, t, t.mark, {}));
      if (t.kind == RoofTimberKind::kPlate && t.left >= roof_.shape.sides) plates_[at(t.left)] = placed_.back();
    }
    join_plates();
    for (std::size_t i = 0; i < roof_.timbers.size(); ++i) join_foot(roof_.timbers[i], placed_[i]);
    for (const RoofContact& contact : roof_.contacts) join_roof_contact(work_, roof_, contact, placed_);
    for (const Vec3& node : roof_.shape.nodes)
      if (node.z > work_.frame.ridge_z) {
        work_.frame.ridge_x = node.x;
        work_.frame.ridge_z = node.z;
      }
    for (const RoofFinding& f : roof_.findings) {
      if (f.id == RoofFindingId::kThrust) work_.frame.thrust_lb = f.value;
      if (f.id == RoofFindingId::kThrust) work_.add_finding(FindingId::kThrust, {}, {}, f.value);
      if (f.id == RoofFindingId::kThrustUnknown) work_.add_finding(FindingId::kCornerThrust);
    }
  }

 private:
  [[nodiscard]] const RoofPlane& plane(std::size_t side) const { return roof_.shape.planes[side]; }
  [[nodiscard]] std::size_t next(std::size_t side) const { return side + 1 == at(roof_.shape.sides) ? 0 : side + 1; }

  /// The upright plane in which the plates of a side and the next one part, the normal away from the first.
  [[nodiscard]] Plane mitre_of(std::size_t side) const {
    const RoofPlane &own = plane(side), &other = plane(next(side));
    const Vec2 along = unit(own.along + other.along);
    return {{along.x, along.y, 0}, dot(along, own.to)};
  }

  void place_plates() {
    const Section& section = work_.plan.sections.plate;
    const auto n = at(roof_.shape.sides);
    plates_.assign(roof_.shape.planes.size(), -1);
    for (std::size_t i = 0; i < n; ++i) {
      const RoofPlane& own = plane(i);
      if (own.gable) continue;
      const RoofPlane &last = plane(i == 0 ? n - 1 : i - 1), &after = plane(next(i));
      Placing p;
      p.kind = TimberKind::kPlate;
      p.mark = "L-" + side_letters(static_cast<int>(i));
      p.section = section;
      const Vec2 middle = own.from + (section.breadth.in() / 2) * own.in;
      p.through = {middle.x, middle.y, own.plate - section.depth.in() / 2};
      p.x = {own.along.x, own.along.y, 0};
      p.z = kZ;
      // The longest of both faces: an inner corner makes the outer one the shorter.
      const double broad = section.breadth.in();
      p.a = last.gable ? -last.overhang : std::min(0.0, at_mitre(i == 0 ? n - 1 : i - 1, own, broad));
      p.b = after.gable ? own.length + after.overhang : std::max(own.length, at_mitre(i, own, broad));
      const int plate = place_timber(work_, p);
      plates_[i] = plate;
      if (plate < 0) continue;
      if (!last.gable) {
        const Plane m = mitre_of(i == 0 ? n - 1 : i - 1);
        cut_end(work_, plate, End::kA, EndCutName::kMitre, {-1 * m.normal, -m.offset});
      }
      if (!after.gable) cut_end(work_, plate, End::kB, EndCutName::kMitre, mitre_of(i));
    }
  }

  /// Where the mitre behind a side crosses a plate's inner face, along the plate from its corner.
  [[nodiscard]] double at_mitre(std::size_t side, const RoofPlane& own, double broad) const {
    const Plane m = mitre_of(side);
    const Vec2 inner = own.from + broad * own.in, normal = flat(m.normal);
    return (m.offset - dot(normal, inner)) / dot(normal, own.along);
  }

  void join_plates() {
    for (std::size_t i = 0; i < at(roof_.shape.sides); ++i) {
      const int own = plates_[i], other = plates_[next(i)];
      if (own < 0 || other < 0) continue;
      // The later plate comes to the earlier one, so that they do not wait for each other in a ring.
      const Plane m = mitre_of(i);
      const bool closes = next(i) == 0;
      const Vec3 into = (closes ? -1 : 1) * m.normal;
      Joint& joint =
          begin_joint(work_, Meeting::kPlateScarf, JointKind::kHousedButt, closes ? own : other, closes ? other : own);
      joint.bearing = Bearing::kButts;
      joint.end = closes ? End::kB : End::kA;
      const Section& section = work_.plan.sections.plate;
      const Vec3 along{-m.normal.y, m.normal.x, 0};
      const double top = std::min(plane(i).plate, plane(next(i)).plate),
                   low = std::max(plane(i).plate, plane(next(i)).plate) - section.depth.in();
      const Vec3 corner{plane(i).to.x, plane(i).to.y, 0};
      joint.where = corner + 0.5 * (top + low) * kZ;
      if (top > low + 1e-6) {
        const double reach = 4 * section.breadth.in();  // what is past the wood is clipped
        const Vec3 a = corner - reach * along, b = corner + reach * along;
        add_contact(work_, true, into, {a + low * kZ, b + low * kZ, b + top * kZ, a + top * kZ});
      }
      keep_ways(work_, {-1 * kZ, kZ, -1 * into, along, -1 * along});
    }
  }

  /// Over the plates that lie under its notch.
  void join_foot(const RoofTimber& t, int timber) {
    if (timber < 0 || !t.seat.cut) return;
    bool cut = false;
    for (const int side : {t.left, t.right}) {
      const int plate = plates_[at(side)];
      if (plate < 0 || (cut && t.left == t.right)) continue;
      if (libm::fabs(plane(at(side)).plate - seat_height(t)) > 1e-6) continue;
      // A seat may be longer than a dormer's plate is broad.
      const Timber& under = work_.timber(plate);
      const Plane inside{under.at.y, dot(under.at.y, under.at.origin) + under.sides.y_hi};
      const std::span<const Plane> within{&inside, at(side) < at(roof_.shape.sides) ? 0U : 1U};
      (void)seat_on_plate(work_, {t, timber, plate, -1 * under.at.y, !cut, within});
      cut = true;
    }
  }

  const RoofSolution& roof_;
  Work& work_;
  std::vector<int> placed_;  ///< by timber of the roof: index in the frame, −1 where it is taken out
  std::vector<int> plates_;  ///< by plane
};

}  // namespace

Result<Frame> frame_of_roof(const RoofPlan& roof, const FramePlan& plan) {
  RoofPlan asked = roof;
  asked.hip_top = HipTop::kDropped;
  const auto solved = solve_roof(asked);
  if (!solved) return tl::unexpected(solved.error());
  Work work = begin_work(plan, nullptr);
  work.add_finding(FindingId::kNotEngineered);
  if (roof.hip_top == HipTop::kBacked) work.add_finding(FindingId::kHipsDropped);
  RoofFramer(*solved, work).run();
  place_added(work);
  for (std::size_t i = 0; i < plan.overrides.size(); ++i)
    if (!work.override_met[i]) work.add_finding(FindingId::kUnknownMark, plan.overrides[i].mark);
  finish(work);
  find_clashes(work);
  warn_timbers(work);
  return std::move(work.frame);
}

}  // namespace bentbook
