#include <algorithm>
#include <catch_amalgamated.hpp>
#include <cmath>

#include "frame/facts.h"
#include "frame/placing/solve_frame.h"

using namespace bentbook;
using Catch::Approx;

namespace {

FramePlan small_plan() {
  return default_plan(Length::feet(20), Length::feet(24), Length::feet(10), Slope::in_12(Length::inches(8)));
}

JointType& joint(FramePlan& plan, Meeting meeting) { return plan.joints[static_cast<std::size_t>(meeting)]; }

Frame solved(const FramePlan& plan) {
  auto frame = solve_frame(plan);
  REQUIRE(frame);
  return *std::move(frame);
}

const Timber& timber(const Frame& frame, const char* mark) {
  const int i = timber_by_mark(frame, mark);
  REQUIRE(i >= 0);
  return frame.timbers[static_cast<std::size_t>(i)];
}

const Joint& joint_of(const Frame& frame, const char* member, Meeting meeting, End end) {
  const int i = timber_by_mark(frame, member);
  for (const Joint& j : frame.joints)
    if (j.member == i && j.meeting == meeting && j.end == end) return j;
  FAIL("no such joint");
  return frame.joints.front();
}

int count(const Timber& t, FeatureKind kind) {
  int n = 0;
  for (const Feature& f : t.features) n += f.kind == kind ? 1 : 0;
  return n;
}

double setting(const Joint& j, ToolSetting which) {
  for (const ToolNumber& n : j.tools)
    if (n.setting == which) return n.value;
  return -1e9;
}

bool has_way(const Joint& j, Vec3 way) {
  for (const Vec3& w : j.ways)
    if (norm(w - way) < 1e-9) return true;
  return false;
}

}  // namespace

// Length allowance (plane geometry): a housing adds its depth and a tenon its length at each end.
TEST_CASE("a tie is longer than the clear width by housings and tenons", "[joint]") {
  FramePlan plan = small_plan();
  auto& tenon = std::get<MortiseTenon>(joint(plan, Meeting::kTiePost));
  tenon.length = Length::inches(4);
  tenon.housing = Length::inches(1, 2);
  const Frame frame = solved(plan);
  CHECK(timber(frame, "T-1").length == Approx(240 - 16 + 2 * (4 + 0.5)).epsilon(1e-13));
  const Joint& j = joint_of(frame, "T-1", Meeting::kTiePost, End::kA);
  CHECK(j.past_face == Approx(0.5));
  CHECK(j.beyond_shoulder == Approx(4));
  CHECK(setting(j, ToolSetting::kDepthStop) == Approx(0.5 + 4 + 0.125));
  CHECK(count(timber(frame, "P-A1"), FeatureKind::kHousing) >= 1);
}

// Drawbore: the hole in the tenon nearer to the shoulder, 1/16 to 1/8 (common practice).
TEST_CASE("the peg's hole in the tenon stands nearer to the shoulder by the drawbore", "[joint]") {
  const Frame frame = solved(small_plan());
  const Timber& tie = timber(frame, "T-1");
  double holes = 1e9;
  for (const Feature& f : tie.features)
    if (f.kind == FeatureKind::kHole && f.to < 20) holes = (f.from + f.to) / 2;
  double in_post = 1e9;
  const Timber& post = timber(frame, "P-A1");
  const Joint& j = joint_of(frame, "T-1", Meeting::kTiePost, End::kA);
  for (const Feature& f : post.features)
    if (f.kind == FeatureKind::kHole && f.joint == static_cast<int>(&j - frame.joints.data()))
      in_post = post.pockets[static_cast<std::size_t>(f.first_pocket)].outline[0].y;
  const double tie_x = tie.at.origin.x + holes;                    // world X of the tenon's hole
  const double post_x = post.at.origin.x + in_post * post.at.z.x;  // …and of the post's
  CHECK(tie_x - post_x == Approx(0.125).epsilon(1e-9));
}

// A tool set to the middle of 8 in that rides on the reference face of a 6 in timber makes the slot where the plan has
// it: no shim. (Over 1 in, (8 − 6) / 2, it would make it in the middle of the wood: common practice.)
TEST_CASE("thin wood in a knife plate's slotter: from the reference face no shim", "[joint]") {
  FramePlan plan = small_plan();
  joint(plan, Meeting::kTiePost) = KnifePlate{};
  Override thin;
  thin.mark = "T-1";
  thin.has_wood = true;
  thin.wood.nominal = {Length::inches(8), Length::inches(10)};
  thin.wood.actual = {Length::inches(6), Length::inches(10)};
  plan.overrides = {thin};
  const Frame frame = solved(plan);
  const Joint& j = joint_of(frame, "T-1", Meeting::kTiePost, End::kA);
  CHECK(setting(j, ToolSetting::kShimToCentre) == Approx(0).margin(1e-12));
  CHECK(setting(j, ToolSetting::kJigOffset) == Approx(4));
}

TEST_CASE("a knife plate's slot: as deep as the plate reaches and its clearance, open where it was asked", "[joint]") {
  FramePlan plan = small_plan();
  KnifePlate plate;
  plate.reach = Length::inches(7);
  plate.depth_clearance = Length::inches(1, 4);
  plate.open = SlotOpen::kBottom;
  joint(plan, Meeting::kTiePost) = plate;
  const Frame frame = solved(plan);
  const Timber& tie = timber(frame, "T-1");
  CHECK(tie.length == Approx(240 - 16).epsilon(1e-13));
  for (const Feature& f : tie.features)
    if (f.kind == FeatureKind::kSlot) CHECK(f.depth == Approx(7.25));
  CHECK(count(tie, FeatureKind::kSlot) == 2);
  // Open below: the tie can be let down over the standing plates, and run in endwise.
  const Joint& j = joint_of(frame, "T-1", Meeting::kTiePost, End::kA);
  CHECK(has_way(j, {0, 0, -1}));
  CHECK_FALSE(has_way(j, {0, 0, 1}));
  plate.open = SlotOpen::kBlind;
  joint(plan, Meeting::kTiePost) = plate;
  const Frame closed = solved(plan);
  const Joint& blind = joint_of(closed, "T-1", Meeting::kTiePost, End::kA);
  CHECK(blind.ways.count == 1);
}

// Relief at least the root's radius, for a weld leg + 1.41 · crown (common practice).
TEST_CASE("a relief smaller than the plate's root is warned of", "[joint]") {
  FramePlan plan = small_plan();
  KnifePlate plate;
  plate.relief_leg = Length::inches(1, 4);
  plate.root_radius = Length::inches(1, 4);
  plate.weld_crown = Length::inches(1, 16);
  joint(plan, Meeting::kTiePost) = plate;
  const Frame frame = solved(plan);
  double need = 0;
  for (const TimberWarning& w : timber(frame, "T-1").warnings)
    if (w.id == WarningId::kReliefSmall) need = w.value2;
  CHECK(need == Approx(0.25 + 1.41 / 16));
}

// Bird's mouth depth square to the rafter = seat · sin θ (trade geometry).
TEST_CASE("a bird's mouth is as deep as seat times sine", "[joint]") {
  FramePlan plan = small_plan();
  joint(plan, Meeting::kRafterPlate) = BirdsMouth{Length::inches(7, 2)};
  const Frame frame = solved(plan);
  const Timber& rafter = timber(frame, "C-A1");
  double deep = 0;
  for (const Feature& f : rafter.features)
    if (f.kind == FeatureKind::kBirdsMouth) deep = f.across_hi - f.across_lo;
  CHECK(deep == Approx(3.5 * 8 / std::sqrt(208.0)).epsilon(1e-9));
}

TEST_CASE("a measured timber keeps its joints at the reference planes", "[joint]") {
  FramePlan plan = small_plan();
  const Frame before = solved(plan);
  Override rough;
  rough.mark = "P-A1";
  rough.has_wood = true;
  rough.wood.nominal = {Length::inches(8), Length::inches(8)};
  rough.wood.actual = {Length::inches(33, 4), Length::inches(67, 8)};  // 8 1/4 by 8 3/8
  plan.overrides = {rough};
  const Frame after = solved(plan);
  // The tie is let in to the inner size: its length does not change, the housing is deeper by what the post has more.
  CHECK(timber(after, "T-1").length == Approx(timber(before, "T-1").length).epsilon(1e-13));
  const auto housing = [](const Timber& t) {
    for (const Feature& f : t.features)
      if (f.kind == FeatureKind::kHousing) return f.depth;
    return 0.0;
  };
  CHECK(housing(timber(after, "P-A1")) == Approx(housing(timber(before, "P-A1")) + 0.375));
}

TEST_CASE("tenons from both sides of a post do not meet", "[joint]") {
  FramePlan plan = small_plan();
  auto& tenon = std::get<MortiseTenon>(joint(plan, Meeting::kGirtPost));
  tenon.length = Length::inches(6);
  const Frame frame = solved(plan);
  bool warned = false;
  for (const TimberWarning& w : timber(frame, "G-A1.1").warnings) warned = warned || w.id == WarningId::kTenonShort;
  CHECK(warned);
  for (const Finding& f : frame.findings) CHECK(f.id != FindingId::kClash);
}

TEST_CASE("each listed joint can be had and shows itself in both timbers", "[joint]") {
  FramePlan plan = small_plan();
  plan.sills = true;
  plan.stock_most = Length::feet(14);
  plan.collars = true;
  plan.peak = Peak::kPair;
  plan.on_ties = OnTies::kQueenPosts;
  joint(plan, Meeting::kCollarRafter) = HalfLap{};
  const Frame frame = solved(plan);
  bool seen[7] = {};
  for (const Joint& j : frame.joints) seen[static_cast<int>(j.kind)] = true;
  CHECK(seen[static_cast<int>(JointKind::kMortiseTenon)]);
  CHECK(seen[static_cast<int>(JointKind::kBirdsMouth)]);
  CHECK(seen[static_cast<int>(JointKind::kRafterPeak)]);
  CHECK(seen[static_cast<int>(JointKind::kHalfLap)]);
  CHECK(seen[static_cast<int>(JointKind::kScarf)]);
  CHECK(count(timber(frame, "C-A1"), FeatureKind::kTongue) + count(timber(frame, "C-A1"), FeatureKind::kLap) >= 1);
}

namespace {

const TimberWarning* warning(const Timber& t, WarningId id) {
  for (const TimberWarning& w : t.warnings)
    if (w.id == id) return &w;
  return nullptr;
}

}  // namespace

TEST_CASE("a housing that comes deeper because its post was made larger is said, sawn wood's half inch is not",
          "[joint]") {
  FramePlan plan = small_plan();
  std::get<MortiseTenon>(joint(plan, Meeting::kTiePost)).housing = Length::inches(1, 2);
  Override larger;
  larger.mark = "P-A1";
  larger.has_wood = true;
  larger.wood.nominal = larger.wood.actual = {Length::inches(8), Length::inches(17, 2)};
  plan.overrides = {larger};
  CHECK(warning(timber(solved(plan), "P-A1"), WarningId::kHousingDeep) == nullptr);
  plan.overrides[0].wood.nominal = plan.overrides[0].wood.actual = {Length::inches(8), Length::inches(12)};
  const Frame frame = solved(plan);
  const TimberWarning* w = warning(timber(frame, "P-A1"), WarningId::kHousingDeep);
  REQUIRE(w != nullptr);
  CHECK(w->value2 == Approx(0.5));
  CHECK(w->value > 2);
}

TEST_CASE("a joint that comes on a knot is warned of", "[joint]") {
  FramePlan plan = small_plan();
  Override knotty;
  knotty.mark = "T-1";
  knotty.defects.push_back({DefectKind::kKnot, Face::kTop, Length::inches(110), Length::inches(118)});
  plan.overrides = {knotty};
  const Frame frame = solved(plan);
  REQUIRE(warning(timber(frame, "T-1"), WarningId::kDefect) != nullptr);  // the king post stands there
  CHECK(warning(timber(frame, "T-1"), WarningId::kDefect)->value == 1);
  CHECK(warning(timber(frame, "T-2"), WarningId::kDefect) == nullptr);
}

// Two joints' mortises from both sides of a 4 in post leave 4 − 2 · 1 5/8 − … of 4: counted by hand.
TEST_CASE("the share of the section left is the area that no pocket takes", "[joint]") {
  FramePlan plan = small_plan();
  plan.added.push_back({});
  HandTimber& hand = plan.added.back();
  hand.mark = "X-1";
  hand.wood.nominal = hand.wood.design = hand.wood.actual = {Length::inches(6), Length::inches(8)};
  const Length two = Length::inches(2), three = Length::inches(3);
  // 5 in deep and 3 wide from the top, 4 deep and 2 wide through its side: 15 + 6·2 − common.
  hand.features.push_back(
      {FeatureKind::kMortise, Face::kTop, Length::inches(40), three, two, three, Length::inches(5), {}});
  hand.features.push_back({FeatureKind::kMortise, Face::kNear, Length::inches(40), two, two, two, {}, {}});
  const Frame frame = solved(plan);
  const TimberWarning* w = warning(timber(frame, "X-1"), WarningId::kShareLeft);
  // Top mortise: y ±1.5, z −1 to 4 (15 in²). Side mortise: all of y, z −3 to −1 (12 in²). Together 27 of 48.
  REQUIRE(w != nullptr);
  CHECK(w->value == Approx(21 / 48.0).epsilon(1e-12));
  CHECK(w->station == Approx(40));
}

TEST_CASE("pegs of two joints that would meet are warned of", "[joint]") {
  FramePlan plan = small_plan();
  plan.added.push_back({});
  HandTimber& hand = plan.added.back();
  hand.mark = "X-1";
  const Length four = Length::inches(4), inch = Length::inches(1);
  hand.features.push_back({FeatureKind::kHole, Face::kTop, Length::inches(40), four, {}, {}, {}, inch});
  const Frame one = solved(plan);
  CHECK(warning(timber(one, "X-1"), WarningId::kPinsMeet) == nullptr);
  // In a plan: the tie's pegs and a girt's at one height in the post run across each other only where both pass.
  auto& tie = std::get<MortiseTenon>(joint(plan, Meeting::kTiePost));
  tie.peg.spacing = Length::inches(5, 4);
  plan.girts = {Length::inches(105)};
  const Frame frame = solved(plan);
  REQUIRE(timber_by_mark(frame, "G-A1.1") >= 0);
  bool said = false;
  for (const Timber& t : frame.timbers)
    said = said || warning(t, WarningId::kFeaturesMeet) != nullptr || warning(t, WarningId::kPinsMeet) != nullptr;
  CHECK(said);
}

TEST_CASE("one end can have another joint than the plan's, and says so", "[joint]") {
  FramePlan plan = small_plan();
  Override o;
  o.mark = "T-1";
  o.has_joint_a = true;
  o.joint_a = KnifePlate{};
  o.has_joint_b = true;
  o.joint_b = Scarf{};  // not to be had at a post
  plan.overrides = {o};
  const Frame frame = solved(plan);
  const Timber& tie = timber(frame, "T-1");
  CHECK(tie.overridden.joint_a);
  CHECK_FALSE(tie.overridden.joint_b);
  CHECK(joint_of(frame, "T-1", Meeting::kTiePost, End::kA).kind == JointKind::kKnifePlate);
  CHECK(joint_of(frame, "T-1", Meeting::kTiePost, End::kB).kind == JointKind::kMortiseTenon);
  CHECK(joint_of(frame, "T-2", Meeting::kTiePost, End::kA).kind == JointKind::kMortiseTenon);
  bool unfit = false;
  for (const Finding& f : frame.findings) unfit = unfit || f.id == FindingId::kJointUnfit;
  CHECK(unfit);
}

// Plane geometry: over the post's 8 in an edge that falls 1 in 8 falls 1 in; the wedges fill that and the play.
TEST_CASE("a half-dovetail goes through its post, comes in down its slope and is wedged", "[joint]") {
  FramePlan plan = small_plan();
  joint(plan, Meeting::kTiePost) = HalfDovetail{};
  const Frame frame = solved(plan);
  CHECK(timber(frame, "T-1").length == Approx(240).epsilon(1e-13));
  const Joint& j = joint_of(frame, "T-1", Meeting::kTiePost, End::kA);
  CHECK(j.kind == JointKind::kHalfDovetail);
  CHECK(j.beyond_shoulder == Approx(8));
  CHECK(setting(j, ToolSetting::kFall) == Approx(1));
  CHECK(setting(j, ToolSetting::kWedge) == Approx(1.125));
  CHECK(setting(j, ToolSetting::kDepthStop) < 0);
  REQUIRE(j.ways.count == 1);
  CHECK(has_way(j, unit(Vec3{-8, 0, -1})));
  bool slope = false;
  for (int c = j.first_contact; c < j.first_contact + j.contacts; ++c)
    slope = slope || norm(frame.contacts[static_cast<std::size_t>(c)].normal - unit(Vec3{-1, 0, 8})) < 1e-9;
  CHECK(slope);
}

// Tops flush: there is no wood to wedge against, the joist is dropped in (common practice).
TEST_CASE("a joist's half-dovetail is open at the top and stopped where another comes from the far side", "[joint]") {
  FramePlan plan = small_plan();
  plan.loft = true;
  joint(plan, Meeting::kJoistTie) = HalfDovetail{};
  const Frame frame = solved(plan);
  const auto it = std::find_if(frame.joints.begin(), frame.joints.end(),
                               [](const Joint& j) { return j.meeting == Meeting::kJoistTie; });
  REQUIRE(it != frame.joints.end());
  CHECK(it->beyond_shoulder < 4);
  CHECK(setting(*it, ToolSetting::kFall) == Approx(it->beyond_shoulder / 8));
  CHECK(setting(*it, ToolSetting::kWedge) < 0);
  CHECK(has_way(*it, {0, 0, -1}));
}
