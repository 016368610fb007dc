#pragma once
/// Joints: what happens where two timbers meet. A joint type with its measures turns a meeting into cuts and features
/// on the member (the timber whose end it is) and on the receiver, the member's length, the faces that touch, and the
/// ways the two can come together.
/// The user changes every measure; pins, distances and strength are the engineer's.
/// Source: SOURCES.md, "joint measures".

#include <array>
#include <cstdint>
#include <string>
#include <variant>

#include "frame/timber.h"

namespace bentbook {

/// Pins of a knife plate or pegs of a tenon, through the member (and the receiver's cheeks) square to the slot.
struct PinPattern {
  Length diameter = Length::inches(3, 4);
  int count = 2;                                 ///< in one row across the member
  Length from_shoulder = Length::inches(21, 4);  ///< row to shoulder, along the member
  Length spacing = Length::inches(3);            ///< axis to axis across the member
  Length plug = Length::inches(1);               ///< kept free at each face for a wooden plug; knife plates alone
  friend bool operator==(const PinPattern&, const PinPattern&) = default;
};

/// Member cut to the receiver's face, a plate in a slot, fixed to the receiver.
struct KnifePlate {
  std::string name;
  Length thickness = Length::inches(3, 8);
  Length reach = Length::inches(15, 2);  ///< of the plate, into the member from its shoulder
  Length width = Length::inches(6);      ///< of the plate across the member; a slot blind or open at one side
  Length slot_clearance = Length::inches(1, 16);
  Length depth_clearance = Length::inches(1, 4);
  SlotOpen open = SlotOpen::kBottom;
  Length relief_leg = Length::inches(3, 8);   ///< 45° chamfer at the mouth; 0: none
  Length root_radius = Length::inches(1, 4);  ///< of the fillet at the plate's root
  Length weld_crown{};                        ///< welds: relief leg at least root + 1.41 crown
  Length base_thickness = Length::inches(1, 2);
  Length base_width = Length::inches(5);   ///< across the slot
  Length base_height = Length::inches(7);  ///< along the slot
  bool let_in = true;                      ///< base let into the receiver flush, else into the member's shoulder
  PinPattern pins;
  int temporary_screws = 2;
  friend bool operator==(const KnifePlate&, const KnifePlate&) = default;
};

/// Tenon on the member, mortise in the receiver, pegs across both; shouldered or housed.
struct MortiseTenon {
  Length thickness = Length::inches(2);      ///< a quarter to a third of the member
  Length length = Length::inches(4);         ///< from the shoulder
  Length shoulder_top{}, shoulder_bottom{};  ///< taken off the tenon's width at z hi and z lo
  Length housing{};                          ///< depth that the whole member is let in; 0: shouldered
  Length depth_clearance = Length::inches(1, 8);
  int pegs = 1;
  PinPattern peg{Length::inches(1), 1, Length::inches(3, 2), Length::inches(3), {}};
  Length drawbore = Length::inches(1, 8);  ///< hole in the tenon nearer to the shoulder (1/16 to 1/8)
  friend bool operator==(const MortiseTenon&, const MortiseTenon&) = default;
};

/// Member cut to the receiver's face or let into it, nothing else.
struct HousedButt {
  Length housing = Length::inches(1);  ///< 0: plain butt
  friend bool operator==(const HousedButt&, const HousedButt&) = default;
};

/// Rafter notched over plate, purlin or ridge beam.
struct BirdsMouth {
  Length seat = Length::inches(7, 2);  ///< level; the plumb cut stands at the receiver's outer face
  friend bool operator==(const BirdsMouth&, const BirdsMouth&) = default;
};

/// Two rafters against each other at the peak: plumb cuts, or a tongue in the right one's fork.
struct RafterPeak {
  bool tongue_and_fork = true;
  Length thickness = Length::inches(2);     ///< of the tongue
  Length clearance = Length::inches(1, 8);  ///< at the tongue's tip
  PinPattern peg{Length::inches(1), 1, Length::inches(2), Length::inches(3), {}};
  friend bool operator==(const RafterPeak&, const RafterPeak&) = default;
};

/// Half of each taken off where two cross or one ends on the other; the member keeps its upper (or outer) half.
struct HalfLap {
  int pegs = 1;
  PinPattern peg{Length::inches(1), 1, Length::inches(3), Length::inches(3), {}};
  friend bool operator==(const HalfLap&, const HalfLap&) = default;
};

/// Two lengths of one plate, ridge or sill joined over a post: halved scarf with square ends.
struct Scarf {
  Length length = Length::inches(24);
  Length clearance{};
  int pegs = 2;
  PinPattern peg{Length::inches(1), 1, Length::inches(4), Length::inches(3), {}};
  friend bool operator==(const Scarf&, const Scarf&) = default;
};

using JointType = std::variant<HousedButt, KnifePlate, MortiseTenon, BirdsMouth, RafterPeak, HalfLap, Scarf>;
enum class JointKind : std::uint8_t {
  kHousedButt,
  kKnifePlate,
  kMortiseTenon,
  kBirdsMouth,
  kRafterPeak,
  kHalfLap,
  kScarf
};
inline JointKind kind_of(const JointType& type) { return static_cast<JointKind>(type.index()); }

/// The kinds of meeting that a plan knows; each is given one joint type.
enum class Meeting : std::uint8_t {
  kPostFoot,    ///< post on sill
  kSillCorner,  ///< long sill with cross sill
  kSillScarf,
  kPostTop,  ///< eave post under plate
  kPlateScarf,
  kTiePost,
  kGirtPost,
  kKingFoot,  ///< king or queen post on tie
  kKingTop,   ///< king post under ridge beam
  kQueenTop,  ///< queen post under purlin or principal rafter
  kRidgeScarf,
  kRafterPlate,   ///< rafter over plate
  kRafterPurlin,  ///< common rafter over a purlin
  kRafterPeak,    ///< rafter against rafter
  kRafterRidge,   ///< rafter to or over the ridge beam
  kPurlinRafter,  ///< purlin between principal rafters
  kPurlinScarf,
  kCollarRafter,
  kJoistTie,
  kBraceEnd,
};
inline constexpr int kMeetings = 20;

/// Which joint types a meeting can take; the first is its default.
[[nodiscard]] bool fits(Meeting meeting, JointKind kind);
[[nodiscard]] JointType default_joint(Meeting meeting);

/// How `carried` is held by `carrier`.
enum class Bearing : std::uint8_t { kBearsOn, kHangsFrom, kBraces, kButts };

/// A flat patch over which member and receiver bear on each other. World axes; convex. Round holes that go through it
/// are not taken out.
struct ContactFace {
  int joint = 0;
  Vec3 normal;                   ///< out of the receiver into the member
  FixedList<Vec3, 8> corners{};  ///< counterclockwise seen from the member's side
  friend bool operator==(const ContactFace&, const ContactFace&) = default;
};

/// What a tool is set to. Lengths in inches.
enum class ToolSetting : std::uint8_t {
  kDepthStop,     ///< how deep it may go from the face or shoulder
  kShimToCentre,  ///< (size the tool is set for − actual size) / 2; may be negative
  kJigOffset,     ///< reference face to the jig's line
  kFence,         ///< reference face to the near side of slot, mortise or tenon
};
struct ToolNumber {
  ToolSetting setting = ToolSetting::kDepthStop;
  int timber = 0;
  double value = 0;
  friend bool operator==(const ToolNumber&, const ToolNumber&) = default;
};

struct Joint {
  Meeting meeting = Meeting::kPostTop;
  JointKind kind = JointKind::kMortiseTenon;
  Bearing bearing = Bearing::kButts;
  int member = 0, receiver = 0;  ///< indices in Frame::timbers
  int carried = 0, carrier = 0;  ///< one is the member, the other the receiver
  End end = End::kB;             ///< of the member; of no meaning where `crossing`
  bool crossing = false;         ///< the member passes (bird's mouth on the way, lap)
  Vec3 where;                    ///< world: middle of the shoulder or seat
  /// Added to the member beyond its shoulder (tenon, tongue), along its axis, and how far the shoulder itself was
  /// moved past the receiver's design face (housing, positive longer).
  double beyond_shoulder = 0, past_face = 0;
  double drawbore = 0;
  /// Unit world directions along which the member can travel into its place, the receiver standing; empty: only
  /// together with a third timber or by springing.
  FixedList<Vec3, 6> ways{};
  FixedList<ToolNumber, 8> tools{};
  int first_contact = 0, contacts = 0;  ///< range in Frame::contacts
  friend bool operator==(const Joint&, const Joint&) = default;
};

}  // namespace bentbook
