#include "frame/plan.h"

#include <variant>

#include "frame/facts.h"
#include "frame/layout.h"

namespace bentbook {

bool fits(Meeting meeting, JointKind kind) {
  switch (meeting) {
    case Meeting::kSillCorner:
      return kind == JointKind::kHalfLap;
    case Meeting::kSillScarf:
    case Meeting::kPlateScarf:
    case Meeting::kRidgeScarf:
    case Meeting::kPurlinScarf:
      return kind == JointKind::kScarf;
    case Meeting::kRafterPlate:
    case Meeting::kRafterPurlin:
      return kind == JointKind::kBirdsMouth;
    case Meeting::kRafterPeak:
      return kind == JointKind::kRafterPeak;
    case Meeting::kRafterRidge:
      return kind <= JointKind::kBirdsMouth;
    case Meeting::kCollarRafter:
      return kind <= JointKind::kMortiseTenon || kind == JointKind::kHalfLap;
    default:
      return kind <= JointKind::kMortiseTenon;
  }
}

JointType default_joint(Meeting meeting) {
  MortiseTenon tenon;
  HalfLap lap;
  BirdsMouth mouth;
  HousedButt butt;
  switch (meeting) {
    case Meeting::kPostFoot:
      tenon.length = Length::inches(2);
      tenon.pegs = 0;
      return tenon;
    case Meeting::kSillCorner:
      lap.pegs = 0;
      return lap;
    case Meeting::kSillScarf:
    case Meeting::kPlateScarf:
    case Meeting::kRidgeScarf:
    case Meeting::kPurlinScarf:
      return Scarf{};
    case Meeting::kTiePost:
      tenon.housing = Length::inches(1, 2);
      tenon.pegs = 2;
      return tenon;
    case Meeting::kRafterPlate:
      return mouth;
    case Meeting::kRafterPurlin:
      mouth.seat = Length::inches(2);
      return mouth;
    case Meeting::kRafterPeak:
      return RafterPeak{};
    case Meeting::kRafterRidge:
      butt.housing = {};
      return butt;
    case Meeting::kPurlinRafter:
    case Meeting::kJoistTie:
      return butt;
    case Meeting::kCollarRafter:
    case Meeting::kGirtPost:
    case Meeting::kBraceEnd:
      tenon.thickness = Length::inches(3, 2);
      tenon.length = Length::inches(3);
      tenon.peg = {Length::inches(3, 4), 1, Length::inches(3, 2), Length::inches(3), {}};
      return tenon;
    default:
      return tenon;
  }
}

FramePlan::FramePlan() {
  for (int i = 0; i < kMeetings; ++i) joints[static_cast<std::size_t>(i)] = default_joint(static_cast<Meeting>(i));
}

FramePlan default_plan(Length span, Length length, Length plate_height, Slope pitch) {
  FramePlan plan;
  plan.span = span;
  plan.plate_left = plan.plate_right = plate_height;
  plan.pitch_left = plan.pitch_right = pitch;
  // Bays alike and at most 14 ft (common practice); posts stand within the length.
  const Length between = length - plan.sections.post.breadth;
  const Length most = Length::feet(14);
  std::int64_t count = between.count <= 0 ? 1 : (between.count + most.count - 1) / most.count;
  count = count > 10'000 ? 10'000 : count;
  plan.bays.clear();
  for (std::int64_t i = 0; i < count; ++i)
    plan.bays.push_back({Length{between.count / count}, static_cast<int>(i) + 2});
  return plan;
}

void insert_bay(FramePlan& plan, int index, Length width) {
  int label = 1;
  for (const Bay& bay : plan.bays) label = bay.label > label ? bay.label : label;
  plan.bays.insert(plan.bays.begin() + (index + 1), Bay{width, label + 1});
}

namespace {

/// Outward push at the feet of one pair: w · span / (2 (tan A + tan B)). Source: statics of a three-hinged frame.
void say_thrust(Work& work, const Layout& l) {
  const FramePlan& plan = work.plan;
  if (l.lean_to) return;
  // A tie counts as low within 2 ft of the plates (common practice).
  bool tied = plan.ties && plan.tie_drop <= Length::feet(2);
  for (const int tie : l.tie) tied = tied && tie >= 0;
  const bool carried = plan.peak == Peak::kRidgeBeam && plan.on_ties == OnTies::kKingPosts && plan.ties;
  if (tied || carried) return;
  double spacing = plan.rafter_spacing.in();
  if (plan.roof == RoofFrame::kPrincipals) {
    spacing = 0;
    for (const Bay& bay : plan.bays) spacing = bay.width.in() > spacing ? bay.width.in() : spacing;
  }
  const double per_foot = plan.load_psf * spacing / 12;
  work.frame.thrust_lb = per_foot * plan.span.in() / 12 / (2 * (l.left.tan + l.right.tan));
  work.find(FindingId::kThrust, {}, {}, work.frame.thrust_lb);
  if (plan.collars) work.find(FindingId::kHighCollar);
}

void say_ridge(Work& work, const Layout& l) {
  if (l.lean_to || work.plan.peak != Peak::kRidgeBeam) return;
  for (const int king : l.king)
    if (king < 0) {
      work.find(FindingId::kRidgeUnsupported);
      return;
    }
}

void say_overrides(Work& work) {
  for (std::size_t i = 0; i < work.plan.overrides.size(); ++i)
    if (!work.override_met[i]) work.find(FindingId::kUnknownMark, work.plan.overrides[i].mark);
}

Result<Frame> solved(const FramePlan& plan, const Frame* before) {
  auto layout = lay_out(plan);
  if (!layout) return tl::unexpected(layout.error());
  Work work = begin_work(plan, before);
  Layout& l = *layout;
  work.find(FindingId::kNotEngineered);
  work.frame.ridge_x = l.ridge_x;
  work.frame.ridge_z = l.ridge_z;
  place_sills(work, l);
  place_posts(work, l);
  place_plates(work, l);
  place_ties(work, l);
  place_girts(work, l);
  place_joists(work, l);
  place_king_posts(work, l);
  place_queen_posts(work, l);
  place_ridge(work, l);
  place_rafters(work, l);
  place_braces(work, l);
  place_added(work);
  say_thrust(work, l);
  say_ridge(work, l);
  say_overrides(work);
  finish(work);
  find_clashes(work);
  warn_timbers(work);
  return std::move(work.frame);
}

}  // namespace

Result<Frame> solve_frame(const FramePlan& plan) { return solved(plan, nullptr); }

Result<Frame> solve_frame_again(const FramePlan& plan, const Frame& before) { return solved(plan, &before); }

}  // namespace bentbook
