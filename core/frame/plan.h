#pragma once
/// The frame plan: the building's few numbers in, placed and cut timbers out.
/// World axes and timber axes as in timber.h. Sections are not engineered: solve_frame says so, and flags a roof with
/// neither a carried ridge nor a low tie, with its thrust.

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "frame/joints/joint.h"
#include "frame/timber.h"
#include "measure/slope.h"
#include "numeric/result.h"

namespace bentbook {

/// kHip: both ends are hipped, see HipEnds.
enum class RoofForm : std::uint8_t { kGable, kLeanTo, kHip };
/// kCommons: rafters at a spacing over plates, purlins and ridge. kPrincipals: a pair in each bent, purlins let in
/// between them.
enum class RoofFrame : std::uint8_t { kCommons, kPrincipals };
/// What carries the peak. With a beam, the joint at Meeting::kRafterRidge says whether the rafters end against its
/// sides or lie over it (a bird's mouth).
enum class Peak : std::uint8_t { kPair, kRidgeBeam };
/// What stands on the ties.
enum class OnTies : std::uint8_t { kNothing, kKingPosts, kQueenPosts };

/// From one bent to the next. `label` names the bent at its far end; the first bent is 1. A label never changes.
struct Bay {
  Length width = Length::feet(12);
  int label = 2;
  friend bool operator==(const Bay&, const Bay&) = default;
};

struct PlanSections {
  Section sill{Length::inches(8), Length::inches(8)};
  Section post{Length::inches(8), Length::inches(8)};
  Section plate{Length::inches(8), Length::inches(8)};
  Section tie{Length::inches(8), Length::inches(10)};
  Section girt{Length::inches(6), Length::inches(6)};
  Section joist{Length::inches(4), Length::inches(6)};
  Section king_post{Length::inches(8), Length::inches(8)};
  Section queen_post{Length::inches(6), Length::inches(6)};
  Section collar{Length::inches(6), Length::inches(8)};
  Section ridge_beam{Length::inches(8), Length::inches(12)};
  Section principal{Length::inches(8), Length::inches(10)};
  Section common{Length::inches(4), Length::inches(6)};
  Section purlin{Length::inches(6), Length::inches(8)};
  Section brace{Length::inches(4), Length::inches(6)};
  friend bool operator==(const PlanSections&, const PlanSections&) = default;
};

/// What a roof with two hipped ends has that a gable has not. Its right side is as its left one, commons and jacks
/// stand at their spacing from the middle of each wall, and a ridge beam runs from peak to peak: `plate_right`,
/// `pitch_right`, `gable_overhang`, `roof`, `peak`, queen posts and collars are not looked at. The ends overhang as far
/// as lines their fascias up with the sides'. A plate lies across each end, over the end bent, and the ties stand
/// between the ends.
struct HipEnds {
  Slope pitch = Slope::in_12(Length::inches(8));  ///< of both ends
  Section hip{Length::inches(6), Length::inches(8)};
  bool end_posts = true;  ///< under the end plates, alike apart, no farther than limits::kUsualBay
  bool dragon_ties = false;
  Length dragon_leg = Length::inches(42);  ///< along each plate, to the outer shoulders
  Section dragon_tie{Length::inches(6), Length::inches(6)};
  friend bool operator==(const HipEnds&, const HipEnds&) = default;
};

/// One timber set apart from the plan, by its mark.
struct Override {
  std::string mark;
  bool removed = false;
  bool has_section = false;
  Section section;  ///< nominal, design and actual alike
  bool has_wood = false;
  Wood wood;  ///< measured: `design` is the plan's and is not looked at
  bool has_species = false;
  Species species;
  Length pier_level{};  ///< posts: top of their pier against the floor's top
  bool has_joint_a = false, has_joint_b = false;
  JointType joint_a, joint_b;  ///< in place of the plan's, where the timber's own end meets another one
  std::vector<Defect> defects;
  friend bool operator==(const Override&, const Override&) = default;
};

/// An end of a timber entered by hand: the cut off square seen from the side (angle, positive where the top is longer)
/// and from the top (tilt, positive where the far face is longer).
struct HandEnd {
  Angle angle{}, tilt{};
  friend bool operator==(const HandEnd&, const HandEnd&) = default;
};
/// Slot, mortise, housing, hole, by station and face. `station`: from end A's tip to the middle; `offset`: from the
/// face's arris at the lower coordinate to the middle. kSlot at an end: station 0 or the length, `along` its depth.
struct HandFeature {
  FeatureKind kind = FeatureKind::kHole;
  Face face = Face::kTop;
  Length station, offset, along, across, depth, diameter;  ///< depth 0: through
  friend bool operator==(const HandFeature&, const HandFeature&) = default;
};
struct HandTimber {
  std::string mark;
  TimberKind kind = TimberKind::kOther;
  Wood wood;
  Species species;
  Length length = Length::feet(8);  ///< tip to tip
  HandEnd a, b;
  std::vector<HandFeature> features;
  bool placed = false;
  Length origin[3]{};            ///< end A's tip on the axis, in the building
  Angle turn{}, rise{}, roll{};  ///< about Z from X, above level, about its own axis
  friend bool operator==(const HandTimber&, const HandTimber&) = default;
};

struct FramePlan {
  RoofForm form = RoofForm::kGable;
  Length span = Length::feet(20);  ///< wall line to wall line: outside of posts and plates
  std::vector<Bay> bays{{Length::feet(12), 2}, {Length::feet(12), 3}};
  Length plate_left = Length::feet(10), plate_right = Length::feet(10);  ///< plate tops above the floor; a lean-to's
                                                                         ///< right one follows from its pitch
  Slope pitch_left = Slope::in_12(Length::inches(8)), pitch_right = Slope::in_12(Length::inches(8));
  Length eave_overhang = Length::inches(16);   ///< level, past the wall line
  Length gable_overhang = Length::inches(12);  ///< of plates, ridge and purlins past the end bents' outside
  RoofFrame roof = RoofFrame::kCommons;
  Length rafter_spacing = Length::feet(2);
  Length purlin_spacing = Length::feet(4);  ///< along the slope, at most; kPrincipals
  Peak peak = Peak::kRidgeBeam;
  OnTies on_ties = OnTies::kKingPosts;
  Length queen_inset{};  ///< wall line to the queen posts' axis; 0: a quarter of the span
  bool ties = true;
  Length tie_drop = Length::inches(14);  ///< plate top down to tie top
  bool collars = false;
  Length collar_rise = Length::feet(4);  ///< plate top up to the collar's underside
  bool loft = false;                     ///< joists between the ties
  Length joist_spacing = Length::feet(2);
  bool sills = false;                          ///< under the floor's top
  std::vector<Length> girts{Length::feet(4)};  ///< heights of their tops; wall girts in each bay
  bool end_girts = false;                      ///< also across the end bents
  bool braces = true;
  Length brace_leg_post = Length::inches(30),
         brace_leg_beam = Length::inches(30);  ///< to the outer shoulders; at a hipped end 3 in or 75 mm more, so that
                                               ///< a corner post's pegs pass each other
  Length stock_most = Length::feet(20);        ///< longest plate, ridge or sill before it is scarfed over a post
  Length stand_off{};                          ///< under a post's foot when there are no sills
  HipEnds hips;                                ///< RoofForm::kHip
  PlanSections sections;
  std::array<JointType, kMeetings> joints;  ///< by Meeting; default_joint
  Species species{"Douglas-fir", .45, .48, 35.33};
  double moisture = 20;  ///< percent
  double load_psf = 30;  ///< on level plan, for the thrust alone
  std::vector<Override> overrides;
  std::vector<HandTimber> added;
  FramePlan();
  friend bool operator==(const FramePlan&, const FramePlan&) = default;
};

/// What wood and steel are bought by.
enum class SizedBy : std::uint8_t { kInches, kMillimetres };

/// A frame from four numbers; all else is default, "not engineered". Bays are alike to a quarter inch or 5 mm, the
/// middle one taking the rest.
[[nodiscard]] FramePlan default_plan(Length span, Length length, Length plate_height, Slope pitch,
                                     SizedBy by = SizedBy::kInches);
/// The same with hipped ends, of the sides' pitch where no other is given. The bays at the ends are so wide that a king
/// post's outer face stands under the ridge's end, where the hips meet; of a shorter building two bays are alike.
[[nodiscard]] FramePlan default_hip_plan(Length span, Length length, Length plate_height, Slope pitch,
                                         SizedBy by = SizedBy::kInches, std::optional<Slope> end_pitch = {});
/// Its roof hipped as `plan` has it otherwise: pitch and hips as its sides and commons, sizes by what they are bought
/// by.
[[nodiscard]] HipEnds usual_hips(const FramePlan& plan);
/// Bays of a frame `length` long outside, as default_plan and default_hip_plan have them.
[[nodiscard]] std::vector<Bay> usual_bays(const FramePlan& plan, Length length);
/// Outside of the end posts, along the ridge.
[[nodiscard]] Length outside_length(const FramePlan& plan);
/// An end bay so wide that a king post's outer face stands under the end of a hip roof's ridge: as it comes out where a
/// tape has it, else up to the next quarter inch or 5 mm.
[[nodiscard]] Length end_bay_under_peak(const FramePlan& plan);
/// The narrowest bay: room for two feet between its posts.
[[nodiscard]] Length least_bay(const FramePlan& plan);
/// A new bay after bay `index` (−1: before the first… the first bent stays where it is), with a label not yet used.
void insert_bay(FramePlan& plan, int index, Length width);

enum class FindingId : std::uint8_t {
  kNotEngineered,     ///< sections are defaults, always said
  kThrust,            ///< neither carried ridge nor low tie; value: lb a pair (principals) or a common rafter pair
  kHighCollar,        ///< a collar above the plate is no tie
  kNoRoom,            ///< left out: there is no room for it (`mark`)
  kClash,             ///< two timbers take the same room (`mark`, `other`); value: in³
  kUnknownMark,       ///< an override names no timber
  kMarkTaken,         ///< an added timber has a mark that another one has; it is left out
  kJointUnfit,        ///< the meeting cannot take this joint; its default is used
  kBadHandTimber,     ///< left out: its measures make no solid
  kRidgeUnsupported,  ///< a ridge beam with nothing under it
  kWoodThin,          ///< measured smaller than the inner size of a housing
  kCornerThrust,      ///< nothing ties the feet of a roof with hips or valleys: an engineer must say its push
  kHipsDropped,       ///< backed hips were asked for; a frame cuts them dropped
  kPeakUncarried,     ///< hips (`mark`, `other`) meet where no king post stands; value: the end bay, in inches, that
                      ///< sets one there, 0: none does
  kMiddleUncarried,  ///< …four of them at one peak, or so near to it that one post carries all; value: each of two bays
                     ///< that set one there, 0: none do
};
struct Finding {
  FindingId id = FindingId::kNotEngineered;
  std::string mark, other;
  double value = 0;
  friend bool operator==(const Finding&, const Finding&) = default;
};

struct Frame {
  std::vector<Timber> timbers;  ///< order fixed by kind and place, added ones last
  std::vector<Joint> joints;
  std::vector<ContactFace> contacts;
  std::vector<Finding> findings;
  double thrust_lb = 0;
  double ridge_x = 0, ridge_z = 0;  ///< where the roof planes' tops meet
  friend bool operator==(const Frame&, const Frame&) = default;
};

}  // namespace bentbook
