#pragma once
/// Joints: what happens where two timbers meet. A joint type with its measures turns a meeting into cuts and features
/// on the member (the timber whose end it is) and on the receiver, the member's length, the faces that touch, and the
/// ways the two can come together.
/// The user changes every measure; pins, distances and strength are the engineer's.
/// Source: SOURCES.md, "joint measures".

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>
#include <variant>

#include "frame/joints/birds_mouth.h"
#include "frame/joints/half_dovetail.h"
#include "frame/joints/half_lap.h"
#include "frame/joints/housed_butt.h"
#include "frame/joints/knife_plate.h"
#include "frame/joints/meeting.h"
#include "frame/joints/mortise_tenon.h"
#include "frame/joints/rafter_peak.h"
#include "frame/joints/scarf.h"
#include "frame/timber.h"

namespace bentbook {

using JointType =
    std::variant<HousedButt, KnifePlate, MortiseTenon, BirdsMouth, RafterPeak, HalfLap, Scarf, HalfDovetail>;
enum class JointKind : std::uint8_t {
  kHousedButt,
  kKnifePlate,
  kMortiseTenon,
  kBirdsMouth,
  kRafterPeak,
  kHalfLap,
  kScarf,
  kHalfDovetail
};
inline constexpr int kJointKinds = static_cast<int>(std::variant_size_v<JointType>);
inline JointKind kind_of(const JointType& type) { return static_cast<JointKind>(type.index()); }

/// What a meeting has before the user chooses.
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
  kShimToCentre,  ///< between the face and a tool set to the middle of the plan's size; negative: the tool is set
                  ///< nearer
  kJigOffset,     ///< to the jig's line
  kFence,         ///< to the near side of slot, mortise or tenon
  kFall,          ///< of a dovetailed edge, from the shoulder to the tip
  kWedge,         ///< thickness of the wedges that fill a mortise
  kSlotWidth,
  kLetInDepth,  ///< of the recess for a plate's base
  kPlugDepth,   ///< how far under the face a pin is driven, for its plug
};
inline constexpr std::array<std::string_view, 9> kToolWords = {"depth_stop", "shim",       "jig",    "fence", "fall",
                                                               "wedge",      "slot_width", "let_in", "plug"};
struct ToolNumber {
  ToolSetting setting = ToolSetting::kDepthStop;
  int timber = 0;
  double value = 0;
  std::optional<Face> from{};  ///< the real face of `timber` that it is measured from; nothing: shoulder or end
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
