#include "frame/plan.h"

#include <algorithm>
#include <variant>

#include "frame/limits.h"
#include "frame/metric_sizes.h"
#include "numeric/libm.h"
#include "roof/limits.h"

namespace bentbook {

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
    case Meeting::kPostTop:
      tenon.length = Length::inches(3);  // as under a scarf, where half the plate is there
      return tenon;
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

namespace {

const FramePlan& usual_plan(SizedBy by) {
  static const FramePlan kInches, kMetric = in_millimetres(FramePlan{});
  return by == SizedBy::kMillimetres ? kMetric : kInches;
}

SizedBy sized_by(const FramePlan& plan) {
  return is_by_millimetres(plan.sections.common) ? SizedBy::kMillimetres : SizedBy::kInches;
}
Length size_by(SizedBy by, Length inches) { return by == SizedBy::kMillimetres ? metric_size(inches) : inches; }
Length down_to(Length value, Length step) { return {value.count / step.count * step.count}; }
Length up_to(Length value, Length step) { return {(value.count + step.count - 1) / step.count * step.count}; }

/// A rafter over its plate: a seat that bears and takes no more of the rafter than a notch may anywhere; in a steep
/// roof a deeper rafter, so that there is one. `other`: the pitch of other sides, whose rafters stand as high over
/// their plates: theirs too, where any depth has such seats for both.
void seat_rafters(FramePlan& plan, Slope pitch, Slope other, SizedBy by) {
  const bool metric = by == SizedBy::kMillimetres;
  const Length step = metric ? Length::mm(5) : Length::inches(1, 8);
  const Length least = metric ? Length::mm(40) : Length::from_inches(limits::kLeastSeat);
  const Length usual = size_by(by, BirdsMouth{}.seat), deepest = size_by(by, limits::kDeepestCommon);
  Length& depth = plan.sections.common.depth;
  const auto seat_under = [&](double heel) {
    return Length::from_inches((depth.in() / pitch.cos() - heel) / pitch.tan());
  };
  const auto most = [&] {
    const Length own = Length::from_inches(limits::kNotchAway * depth.in() / pitch.sin());
    if (other == pitch) return down_to(own, step);
    return down_to(std::min(own, seat_under((1 - limits::kNotchAway) * depth.in() / other.cos())), step);
  };
  const auto needed = [&] {
    return other == pitch ? least : std::max(least, seat_under(depth.in() / other.cos() - least.in() * other.tan()));
  };
  const auto deepen = [&] {
    while (most() < needed() && depth < deepest) depth = depth + size_by(by, Length::inches(2));
    return !(most() < needed());
  };
  const Length was = depth;
  if (!deepen()) {
    depth = was;
    other = pitch;
    (void)deepen();
  }
  plan.joints[static_cast<std::size_t>(Meeting::kRafterPlate)] =
      BirdsMouth{std::clamp(most(), needed(), std::max(usual, needed()))};
}

/// No wider than the usual ones; alike where that is a size that a tape has, else to the step, the middle one taking
/// the rest.
std::vector<Bay> even_bays(Length between, SizedBy by) {
  const Length most = size_by(by, limits::kUsualBay);
  const std::int64_t count = std::clamp<std::int64_t>((between.count + most.count - 1) / most.count, 1, 10'000);
  const bool metric = by == SizedBy::kMillimetres;
  const Length tape = metric ? Length::mm(1) : Length::inches(1, 16),
               step = metric ? Length::mm(5) : Length::inches(1, 4);
  Length each{between.count / count};
  if (each * count != between || each.count % tape.count != 0) each = down_to({each.count + step.count / 2}, step);
  std::vector<Bay> bays;
  for (std::int64_t i = 0; i < count; ++i) bays.push_back({each, static_cast<int>(i) + 2});
  bays[static_cast<std::size_t>(count / 2)].width = between - each * (count - 1);
  return bays;
}

}  // namespace

FramePlan default_plan(Length span, Length length, Length plate_height, Slope pitch, SizedBy by) {
  FramePlan plan = usual_plan(by);
  plan.span = span;
  plan.plate_left = plan.plate_right = plate_height;
  plan.pitch_left = plan.pitch_right = pitch;
  seat_rafters(plan, pitch, pitch, by);
  if (plate_height < size_by(by, limits::kLowPlate))
    plan.brace_leg_post = plan.brace_leg_beam = size_by(by, limits::kShortBrace);
  plan.bays = usual_bays(plan, length);
  return plan;
}

HipEnds usual_hips(const FramePlan& plan) {
  const SizedBy by = sized_by(plan);
  HipEnds hips = plan.hips;
  const HipEnds usual;
  hips.pitch = plan.pitch_left;
  // As deep as a jack's plumb cut is long, and broader.
  hips.hip = {plan.sections.common.breadth + size_by(by, Length::inches(2)),
              plan.sections.common.depth + size_by(by, Length::inches(2))};
  hips.dragon_tie = {size_by(by, usual.dragon_tie.breadth), size_by(by, usual.dragon_tie.depth)};
  hips.dragon_leg = size_by(by, usual.dragon_leg);
  return hips;
}

namespace {

/// The end bays so wide that king posts stand under the peaks; alike where bays would be too narrow for that, and that
/// nothing stands there is said.
std::vector<Bay> bays_under_peaks(const FramePlan& plan, Length length) {
  const SizedBy by = sized_by(plan);
  const Length inner = length - plan.sections.post.breadth, end = end_bay_under_peak(plan), half{inner.count / 2};
  const Length between = inner - end * 2;
  // One peak where the walls are alike, or so short a ridge that one post carries it, or a building that is too short,
  // which is said.
  const bool at_middle = between < least_bay(plan);
  if ((at_middle ? half : end) < least_bay(plan)) return even_bays(inner, by);
  if (at_middle) return {{half, 2}, {inner - half, 3}};
  std::vector<Bay> bays{{end, 2}};
  for (const Bay& bay : even_bays(between, by)) bays.push_back({bay.width, static_cast<int>(bays.size()) + 2});
  bays.push_back({end, static_cast<int>(bays.size()) + 2});
  return bays;
}

}  // namespace

std::vector<Bay> usual_bays(const FramePlan& plan, Length length) {
  if (plan.form == RoofForm::kHip) return bays_under_peaks(plan, length);
  // Posts stand within the length.
  return even_bays(length - plan.sections.post.breadth, sized_by(plan));
}

Length outside_length(const FramePlan& plan) {
  Length length = plan.sections.post.breadth;
  for (const Bay& bay : plan.bays) length = length + bay.width;
  return length;
}

namespace {

/// Ends flatter than the sides have longer tails: the hips', level, no longer than a notched one may be.
void shorten_tails(FramePlan& plan, SizedBy by) {
  const double past = plan.pitch_left.tan() / plan.hips.pitch.tan();
  const Length most = Length::from_inches(limits::kFarthestTail / libm::sqrt(1 + past * past));
  const Length step = by == SizedBy::kMillimetres ? Length::mm(5) : Length::inches(1, 4);
  plan.eave_overhang = std::min(plan.eave_overhang, down_to(most, step));
}

}  // namespace

FramePlan default_hip_plan(Length span, Length length, Length plate_height, Slope pitch, SizedBy by,
                           std::optional<Slope> end_pitch) {
  FramePlan plan = default_plan(span, length, plate_height, pitch, by);
  plan.form = RoofForm::kHip;
  if (end_pitch) {
    plan.sections.common = usual_plan(by).sections.common;
    seat_rafters(plan, pitch, *end_pitch, by);
  }
  plan.hips = usual_hips(plan);
  if (end_pitch) {
    plan.hips.pitch = *end_pitch;
    shorten_tails(plan, by);
  }
  plan.bays = usual_bays(plan, length);
  return plan;
}

Length end_bay_under_peak(const FramePlan& plan) {
  const bool metric = sized_by(plan) == SizedBy::kMillimetres;
  const Length tape = metric ? Length::mm(1) : Length::inches(1, 8),
               step = metric ? Length::mm(5) : Length::inches(1, 4);
  // A pitch of next to nothing is refused later: it has no peak. A hair under a size is that size.
  constexpr double kHair = 1e-6;
  const bool alike = plan.hips.pitch == plan.pitch_left || !(plan.hips.pitch.tan() > 0.01);
  const Length run = alike ? Length{(plan.span.count + 1) / 2}
                           : Length::from_inches(plan.span.in() / 2 * plan.pitch_left.tan() / plan.hips.pitch.tan());
  const Length bay = run + Length{(plan.sections.king_post.breadth.count - plan.sections.post.breadth.count + 1) / 2};
  const Length even = down_to(bay + Length::from_inches(kHair), tape);
  return bay - even <= Length::from_inches(kHair) ? even : up_to(bay, step);
}

Length least_bay(const FramePlan& plan) { return plan.sections.post.breadth + Length::feet(2); }

void insert_bay(FramePlan& plan, int index, Length width) {
  int label = 1;
  for (const Bay& bay : plan.bays) label = bay.label > label ? bay.label : label;
  plan.bays.insert(plan.bays.begin() + (index + 1), Bay{width, label + 1});
}

}  // namespace bentbook
