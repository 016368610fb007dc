#pragma once
/// A timber: where it stands, how long it is tip to tip, how its ends are cut, what is taken out of it and from which
/// face. Everything a sheet, a drawing, the shop and the raising need of one piece of wood.
///
/// World axes: X across the building, Y along the ridge, Z up; origin in the middle of the first bent, on the top of
/// the floor. Timber axes: x from end A to end B, y across the breadth, z up through the depth; origin on the design
/// axis at the farthest point of end A. Inches in double: computed from exact lengths, rounded where they are shown.
/// End A: a post's foot, a rafter's foot, else the end at the lower grid mark. Faces 1 top (or outside), 2 (−y), 3, 4
/// clockwise seen from end A.

#include <string>
#include <vector>

#include "cut/saw.h"
#include "geometry/cut_plane.h"
#include "geometry/solid.h"
#include "measure/length.h"

namespace bentbook {

enum class TimberKind : std::uint8_t {
  kSill,
  kPost,
  kPlate,
  kTie,
  kGirt,
  kJoist,
  kKingPost,
  kQueenPost,
  kCollar,
  kRidgeBeam,
  kPrincipalRafter,
  kCommonRafter,
  kPurlin,
  kBrace,
  kOther,  ///< entered by hand
  // Of a roof of any plan.
  kHipRafter,
  kValleyRafter,
  kJackRafter,
  kDragonTie,  ///< level, across a corner of the plates
  kHeader,     ///< level, between the trimmers beside an opening in a roof
};
inline constexpr int kTimberKinds = 20;
/// Those before kOther have a section in the plan.
inline constexpr int kPlannedKinds = static_cast<int>(TimberKind::kOther);

enum class End : std::uint8_t { kA, kB };

/// Density data of a species: specific gravity on green volume and at 12 %, green moisture in percent.
struct Species {
  std::string name;
  double gravity_green = 0.45, gravity_12 = 0.48, green_moisture = 35.33;
  friend bool operator==(const Species&, const Species&) = default;
};

/// What the wood really is. Faces that are not references float: what is cut to them is housed to the inner size.
struct Wood {
  Section nominal{Length::inches(8), Length::inches(8)};  ///< as ordered: board feet
  Section design{Length::inches(8), Length::inches(8)};   ///< as the plan counts on it
  Section actual{Length::inches(8), Length::inches(8)};   ///< as measured
  bool top_is_reference = true;                           ///< face 1 lies in its design plane, else face 3
  bool near_is_reference = true;                          ///< face 2 lies in its design plane, else face 4
  Length bow{};  ///< greatest departure from the snapped line, crown up positive
  friend bool operator==(const Wood&, const Wood&) = default;
};

/// Where the real faces lie in timber axes: the design section is ±half about the axis, the wood hangs from its
/// reference faces.
struct Sides {
  double y_lo = -4, y_hi = 4, z_lo = -4, z_hi = 4;
  friend bool operator==(const Sides&, const Sides&) = default;
};
[[nodiscard]] Sides sides_of(const Wood& wood);
/// The reference face square to an axis (not kX).
[[nodiscard]] Face reference_face(const Wood& wood, Axis axis);
/// How far a place on the axis square to the face lies under it, into the wood.
[[nodiscard]] double under_face(const Sides& sides, Face face, double at);
/// What lies between two places on the axis square to it, from the face: the near one first.
struct Gauged {
  Face from = Face::kTop;
  double near = 0, far = 0;
};
/// …from the reference face of that axis.
[[nodiscard]] Gauged gauged(const Wood& wood, const Sides& sides, Axis axis, double a, double b);

/// A cut across an end; the waste on its positive side. kMitre: between two plates at a corner; kSide: plumb and askew
/// in plan, of hips, jacks and the ridge between hips; kAngle: askew in any other way.
enum class EndCutName : std::uint8_t { kSquare, kPlumb, kLevel, kMitre, kSide, kAngle };
struct EndCut {
  End end = End::kA;
  EndCutName name = EndCutName::kSquare;
  CutPlane plane;
  friend bool operator==(const EndCut&, const EndCut&) = default;
};

enum class FeatureKind : std::uint8_t {
  kSlot,        ///< for a knife plate, in an end
  kRelief,      ///< chamfer at a slot's mouth
  kLetIn,       ///< shallow housing for a knife plate's base
  kMortise,     ///< takes a tenon
  kHousing,     ///< takes the mate's whole end
  kTenon,       ///< the wood around it taken off to the shoulder
  kHole,        ///< round
  kBirdsMouth,  ///< seat and plumb cut
  kLap,         ///< half of the wood taken off, at an end or on the way
  kScarf,       ///< as kLap, at an end over a post
  kTongue,      ///< cheeks taken off at the peak
  kFork,        ///< open slot at the peak that takes the tongue
};

/// Where a slot is open across the depth.
enum class SlotOpen : std::uint8_t { kTop, kBottom, kBoth, kBlind };

/// What a hole is for.
enum class HoleUse : std::uint8_t { kPin, kPeg, kScrew, kOther };

/// One feature in the trade's words; its pockets say the same as geometry. Timber axes, inches.
/// `face` is the face that it is laid out on and cut from; "across" runs along y on top and bottom, along z on the
/// near and far face.
struct Feature {
  FeatureKind kind = FeatureKind::kHole;
  Face face = Face::kTop;
  bool at_end = false;  ///< slot, relief, tenon, scarf, tongue, fork: belongs to `end`
  End end = End::kA;
  double from = 0, to = 0;              ///< along x from end A's tip: the extent of what is taken out of the wood
  double across_lo = 0, across_hi = 0;  ///< on the face
  double depth = 0;                     ///< from the real face inward; a slot or tenon: its length from the shoulder
  double diameter = 0;                  ///< holes
  HoleUse use = HoleUse::kOther;
  SlotOpen open = SlotOpen::kBoth;    ///< slots
  CutPlane shoulder;                  ///< tenon, tongue, scarf, slot: the plane its length is measured from
  int joint = -1;                     ///< index in Frame::joints; -1: entered by hand
  int first_pocket = 0, pockets = 0;  ///< range in Timber::pockets
  friend bool operator==(const Feature&, const Feature&) = default;
};

/// Things to mind on one timber; limits are shown with their value and the engineer decides.
enum class WarningId : std::uint8_t {
  kEndDistance,   ///< a pin or peg nearer to the end than value2 diameters (value: diameters)
  kEdgeDistance,  ///< …to the edge
  kShareLeft,     ///< value: share of the section left at `station`
  kReliefSmall,   ///< value: leg of the relief, value2: what the plate's root needs
  kPinsMeet,      ///< pins of two joints run into each other; value: distance of the axes, value2: wanted
  kPinSpread,     ///< pins across the grain farther apart than value2
  kTenonShort,    ///< shortened so as not to meet the one from the other side; value: length, value2: asked
  kNotchShare,    ///< bird's mouth or notch; value: share of the depth, value2: the limit passed
  kSeatShort,     ///< bearing shorter than value2 along the seat
  kOpenTop,       ///< slot open to the weather
  kDefect,        ///< a joint lies in a span that is marked as wane, knot, check or heart
  kTenonThin,     ///< thickness brought down to what the wood allows; value, value2: asked
  kMadePlain,     ///< the receiver is scarfed here: cut to its face alone
  kContactCut,    ///< another joint takes of where this one bears; value: in², value2: the other joint
  kFeaturesMeet,  ///< features of two joints take the same wood; value: in³, value2: the other joint
  kHousingDeep,   ///< the timber stands so far past its design face that what is let in comes value deep; value2: asked
};
struct TimberWarning {
  WarningId id = WarningId::kShareLeft;
  int joint = -1;
  double station = 0;
  double value = 0, value2 = 0;
  friend bool operator==(const TimberWarning&, const TimberWarning&) = default;
};
/// Whether `value2` is the other joint.
[[nodiscard]] constexpr bool names_another_joint(WarningId id) {
  return id == WarningId::kContactCut || id == WarningId::kFeaturesMeet;
}

/// A span of a face where no joint may come.
enum class DefectKind : std::uint8_t { kWane, kKnot, kCheck, kHeart };
struct Defect {
  DefectKind kind = DefectKind::kKnot;
  Face face = Face::kTop;
  Length from, to;
  friend bool operator==(const Defect&, const Defect&) = default;
};

/// What the user changed against the plan, shown wherever the timber is.
struct OverrideFlags {
  bool added = false, section = false, species = false, wood = false, joint_a = false, joint_b = false;
  friend bool operator==(const OverrideFlags&, const OverrideFlags&) = default;
  [[nodiscard]] bool any() const { return added || section || species || wood || joint_a || joint_b; }
};

/// Where it belongs, for lists and grouping; −1: to none.
struct GridPlace {
  int bent = -1;   ///< label of the bent that it stands in, or of the bay's lower bent
  int bay = -1;    ///< index of the bay
  char line = 0;   ///< 'A' left eave, 'B' left inner, 'C' middle, 'D' right inner, 'E' right eave; 0: across all
  int number = 0;  ///< among its like in one bay
  friend bool operator==(const GridPlace&, const GridPlace&) = default;
};

struct Timber {
  std::string mark;  ///< also its stable id (mark.h)
  TimberKind kind = TimberKind::kPost;
  GridPlace place;
  Wood wood;
  Sides sides;
  Species species;
  double moisture = 12;  ///< percent
  double length = 0;     ///< tip to tip, tenons and tongues counted in
  Placement at;
  std::vector<EndCut> cuts;  ///< end A's first
  std::vector<Feature> features;
  std::vector<Pocket> pockets;
  std::vector<TimberWarning> warnings;
  std::vector<Defect> defects;
  OverrideFlags overridden;
  int handed_pair = -1;   ///< timbers with one number mirror each other
  int alike = -1;         ///< timbers with one number are cut alike
  bool placed = true;     ///< false: entered by hand without a place
  double pier_level = 0;  ///< posts: top of their own pier against the floor's top
  friend bool operator==(const Timber&, const Timber&) = default;
};

/// Whether it stands in the plane of that bent, not in a bay beside it. Bents go by their labels, from 1.
[[nodiscard]] bool stands_in_bent(const Timber& timber, int bent);
/// …and is put together with it lying down and raised as one: posts, tie, girts, king and queen posts, braces.
[[nodiscard]] bool raised_with_bent(const Timber& timber, int bent);

/// Blank, end cuts and pockets in timber axes.
[[nodiscard]] Solid solid_of(const Timber& timber);

}  // namespace bentbook
