#pragma once
/// Inside the frame solver: timbers while they are placed and cut. Until finish() a timber's origin is any point of its
/// axis and x is counted from there; finish() moves the origin to end A's tip.

#include <string>
#include <string_view>
#include <vector>

#include "frame/placing/kept.h"
#include "frame/plan.h"

namespace bentbook {

/// How far a pocket reaches past the wood where it is open.
inline constexpr double kPast = 1.0;

struct Tips {
  double a = 0, b = 0;
  bool a_cut = false, b_cut = false;  ///< a joint or tail has shaped this end
};

struct Work {
  const FramePlan& plan;
  Frame frame;
  std::vector<Tips> tips;
  std::vector<Vec3> guides;        ///< normals of the walls that only guide the joint being made
  std::vector<int> override_of;    ///< by timber: index in plan.overrides, −1
  std::vector<int> by_mark;        ///< plan.overrides in the order of their marks
  std::vector<bool> override_met;  ///< by index in plan.overrides
  const Frame* before = nullptr;   ///< an earlier frame, from which what still holds is taken
  Kept kept;                       ///< of it; known when the timbers are cut

  [[nodiscard]] Timber& timber(int i) { return frame.timbers[static_cast<std::size_t>(i)]; }
  [[nodiscard]] Tips& tip(int i) { return tips[static_cast<std::size_t>(i)]; }
  void add_finding(FindingId id, std::string mark = {}, std::string other = {}, double value = 0) {
    frame.findings.push_back({id, std::move(mark), std::move(other), value});
  }
};

/// A timber to place: its axis through `through`, from `a` to `b` along `x`, cut square there until a joint says
/// otherwise. y follows from x and z.
struct Placing {
  TimberKind kind = TimberKind::kOther;
  std::string mark;
  GridPlace place;
  Section section;
  Vec3 through, x, z;
  double a = 0, b = 0;
};
[[nodiscard]] Work begin_work(const FramePlan& plan, const Frame* before);
/// The axes of the world: across the building, along it, up.
inline constexpr Vec3 kX{1, 0, 0}, kY{0, 1, 0}, kZ{0, 0, 1};

/// Whether an override takes the timber of that mark out.
[[nodiscard]] bool is_taken_out(const Work& work, std::string_view mark);
/// Index of the new timber; −1 where an override takes it out.
int place_timber(Work& work, const Placing& placing);

/// Direction `v` (world) among a timber's own axes: the axis, and whether it points along or against it.
struct AxisOf {
  Axis axis = Axis::kX;
  double sign = 1;
  bool aligned = false;
};
[[nodiscard]] AxisOf axis_of(const Placement& at, Vec3 v);
[[nodiscard]] double along(Axis axis, Vec3 p);
struct Range {
  double lo = 0, hi = 0;
};
/// The wood across an axis (not kX).
[[nodiscard]] Range sides_along(const Timber& timber, Axis axis);
[[nodiscard]] Vec3 face_normal(const Timber& timber, Face face);  ///< world
/// Offset of the real face along its normal, world.
[[nodiscard]] double face_offset(const Timber& timber, Face face);
/// …and of the design section's face.
[[nodiscard]] double design_face_offset(const Timber& timber, Face face);
/// The face that looks most along `toward`.
[[nodiscard]] Face face_toward(const Timber& timber, Vec3 toward);

/// A pocket from world points that lie in planes square to the timber's `sweep` axis.
[[nodiscard]] Pocket pocket_from(const Placement& at, Axis sweep, const Vec3* points, int count, double from,
                                 double to);
/// Adds a pocket as one feature, or to the feature added last.
Feature& add_feature(Timber& timber, Feature feature, const Pocket& pocket);
void add_to_feature(Timber& timber, const Pocket& pocket);

/// Where the line from `p` along `d` meets a plane.
[[nodiscard]] Vec3 meet(Vec3 p, Vec3 d, Vec3 normal, double offset);
/// A feature on `face` as large as its pocket, as far as there is wood.
[[nodiscard]] Feature span_feature(const Timber& timber, FeatureKind kind, Face face, const Pocket& pocket, int joint);
/// …that belongs to an end and is measured from this plane (world).
[[nodiscard]] Feature with_shoulder(Feature feature, const Timber& timber, End end, Plane world);

/// Shapes an end: its cut planes (world, normal toward the waste) and its tip along x.
void cut_end(Work& work, int timber, End end, EndCutName name, const Plane& world);
/// The same, called by how the cut lies: square to the timber, level, plumb in its own slope or askew in plan.
void cut_end(Work& work, int timber, End end, const Plane& world);
void set_tip(Work& work, int timber, End end, double x);

/// A contact patch of the joint being made (the last one in the list). One that only guides (a cheek, a side) is not
/// kept: its normal counts for the ways in.
void add_contact(Work& work, bool bearing, Vec3 normal, std::initializer_list<Vec3> corners);
/// Begins a joint; contacts, holes and warnings that follow belong to it.
Joint& begin_joint(Work& work, Meeting meeting, JointKind kind, int member, int receiver);
[[nodiscard]] int this_joint(const Work& work);
/// The face that a hole along this axis is bored from.
[[nodiscard]] inline Face bored_from(Axis sweep) { return sweep == Axis::kY ? Face::kNear : Face::kTop; }
/// A round hole through the timber about `centre` (world).
void bore_hole(Work& work, int timber, Axis sweep, Vec3 centre, double diameter, HoleUse use);
void warn_joint(Work& work, int timber, WarningId id, double station, double value, double value2);
/// Of the candidates, keeps the directions along which the member can arrive without passing through a contact.
void keep_ways(Work& work, std::initializer_list<Vec3> candidates);

/// in³: less is rounding of measures, not a clash.
inline constexpr double kSharedWood = 0.005;

}  // namespace bentbook
