#include "roof/rafter.h"

#include "numeric/libm.h"
#include "roof/limits.h"
#include "roof/rafter_plan.h"
#include "roof/rafter_shape.h"

namespace bentbook {
namespace {

constexpr Length kFoot = Length::feet(1);

Length length(double inches) { return Length::from_inches(inches); }

struct Steps {
  int whole = 0;
  Length odd;
};
/// Feet of run stepped off with the square. A run within a micron of a whole foot is that foot.
Steps steps_in(Length run) {
  constexpr std::int64_t kHair = 8'000;
  const std::int64_t whole = (run.count + kHair) / kFoot.count;
  const Length odd = run - kFoot * whole;
  return {static_cast<int>(whole), odd.count < kHair ? Length{} : odd};
}

Length stock_for(Length longest, Length trim) {
  constexpr std::int64_t kHair = 8'000;
  const std::int64_t need = longest.count + trim.count - kHair;
  return limits::kStockStep * (need <= 0 ? 1 : (need + limits::kStockStep.count - 1) / limits::kStockStep.count);
}

/// Over a beam the left seat is as given; the right one bears on the same beam top.
double beam_seat(const RafterInput& input, const RoofPlan& plan, Side side) {
  const double seat = input.beam_seat.in();
  if (side == Side::kLeft || input.alike) return seat;
  const SidePlan &l = plan.left, &r = plan.right;
  const double half = input.beam_breadth.in() / 2;
  const double top = l.plate_height + (l.run - half + seat - l.seat) * l.tan;
  return (top - r.plate_height) / r.tan - (r.run - half - r.seat);
}

/// The notch and the peak must leave each other room, and the seat its timber.
Result<void> check_room(const RafterInput& input, const Shape& s, Side side) {
  if (input.peak == PeakKind::kRidgeBoard && !(input.ridge_thickness.in() / 2 < s.run))
    return fail(ErrorCode::kTooLarge, "ridge", -1, length(2 * s.run).count - 1);
  if (input.peak == PeakKind::kOverBeam) {
    const double half = input.beam_breadth.in() / 2;
    if (!(half < s.run)) return fail(ErrorCode::kTooLarge, "ridge_beam", -1, length(2 * s.run).count - 1);
    const double most = libm::fabs(half) < s.depth / s.sin ? half : s.depth / s.sin;
    if (side == Side::kLeft && input.beam_seat > length(most))
      return fail(ErrorCode::kTooLarge, "ridge_seat", -1, length(most).count);
  }
  if (!(s.seat < s.near_peak))
    return fail(ErrorCode::kSeatTooLong, side_key("seat", side), -1, length(s.near_peak).count - 1);
  return {};
}

Result<void> check_tail(const RafterInput& input, const Shape& s, Side side) {
  if (s.tail == TailCut::kPlumb) return {};
  const double plumb_depth = s.depth / s.cos;
  if (s.tail == TailCut::kLevelAndPlumb && !(s.tail_plumb < plumb_depth))
    return fail(ErrorCode::kTooLarge, "tail_plumb", -1, length(plumb_depth).count - 1);
  const double least = s.tail == TailCut::kSquare ? s.depth * s.sin : (plumb_depth - s.tail_plumb) / s.tan;
  const Length overhang = (side == Side::kLeft || input.alike ? input.left : input.right).overhang;
  if (overhang < length(least)) return fail(ErrorCode::kTooSmall, side_key("overhang", side), -1, length(least).count);
  return {};
}

void add_notch_caution(Rafter& r, double share, bool at_beam) {
  constexpr double kHair = 1e-9;
  if (share > limits::kNotchAtSupport + kHair)
    r.cautions.add({CautionId::kNotchPastQuarter, at_beam, share, {}});
  else if (share > limits::kNotchAway + kHair)
    r.cautions.add({CautionId::kNotchPastSixth, at_beam, share, {}});
}

void add_cautions(Rafter& r, const RafterInput& input) {
  add_notch_caution(r, r.birdsmouth_share, false);
  if (input.peak == PeakKind::kOverBeam) {
    add_notch_caution(r, r.beam_notch_share, true);
    const double past = r.beam_seat.in() - input.beam_breadth.in() / 2;
    if (r.beam_seat < Length{})
      r.cautions.add({CautionId::kBeamSeatShort, true, 0, length(-r.beam_seat.in() * r.tan)});
    else if (past > 1e-6)
      r.cautions.add({CautionId::kBeamSeatLong, true, 0, length(past)});
  }
  if (input.plate_breadth > Length{} && r.seat > input.plate_breadth + Length{8'000})
    r.cautions.add({CautionId::kSeatPastPlate, false, 0, r.seat - input.plate_breadth});
  if (input.peak == PeakKind::kRidgeBoard && input.ridge_depth > Length{} && input.ridge_depth < r.plumb_depth)
    r.cautions.add({CautionId::kRidgeShallow, false, 0, r.plumb_depth});
  if (r.slope > Angle::degrees(45)) r.cautions.add({CautionId::kSteeperThan45, false, 0, {}});
}

void set_peak(Rafter& r, const RafterInput& input, const Shape& s) {
  r.peak_height = length(s.heel + s.run * s.tan);
  r.rafter_top = length(s.top(s.peak_x));
  r.ridge_deduction = length((s.run - s.peak_x) / s.cos);
  r.peak_setback = length(s.depth * s.tan);
  if (input.peak == PeakKind::kRidgeBoard) r.ridge_top = r.rafter_top;
  if (input.peak != PeakKind::kOverBeam) return;
  r.beam_seat = length(s.beam_seat);
  r.ridge_top = length((s.near_peak + s.beam_seat - s.seat) * s.tan);
  if (s.beam_seat > 0) {
    r.beam_notch_depth = length(s.beam_seat * s.sin);
    r.beam_notch_share = s.beam_seat * s.sin / s.depth;
  }
}

void set_foot(Rafter& r, const RafterInput& input, const Shape& s) {
  r.seat = length(s.seat);
  r.heel = length(s.heel);
  r.plumb_depth = length(s.depth / s.cos);
  r.birdsmouth_depth = length(s.seat * s.sin);
  r.birdsmouth_share = s.seat * s.sin / s.depth;
  r.share_left = 1 - r.birdsmouth_share;
  r.sheathing_plumb = length(input.sheathing.in() / s.cos);
  r.overhang = length(s.overhang);
  r.tail_along = length(s.overhang / s.cos);
  const Steps tail = steps_in(r.overhang);
  r.tail_steps = tail.whole;
  r.tail_step_odd = tail.odd;
}

Result<void> solve_side(Rafter& r, const RafterInput& input, const RoofPlan& plan, Side side) {
  const SidePlan& p = side == Side::kLeft ? plan.left : plan.right;
  const RafterSide& given = side == Side::kLeft || input.alike ? input.left : input.right;
  const Shape s = make_shape(input, given, p, beam_seat(input, plan, side));
  if (auto ok = check_room(input, s, side); !ok) return ok;
  if (auto ok = check_tail(input, s, side); !ok) return ok;
  r.tan = s.tan, r.cos = s.cos, r.sin = s.sin;
  r.slope = given.measured ? Angle::from_radians(libm::atan(s.tan)) : Angle::from_degrees(given.pitch.deg());
  r.run = length(s.run);
  r.rise = length(s.run * s.tan);
  r.line_length = length(s.run / s.cos);
  r.plate_height = length(p.plate_height);
  set_peak(r, input, s);
  set_foot(r, input, s);
  r.tip_to_tip = length((s.peak_x + s.overhang) / s.cos);
  r.step_length = length(kFoot.in() / s.cos);
  const Steps steps = steps_in(r.run);
  r.steps = steps.whole;
  r.step_odd = steps.odd;
  draw_outline(r, s);
  add_marks(r, s);
  add_cuts(r, s);
  r.longest = length(longest_of(r, s));
  r.stock = stock_for(r.longest, input.trim);
  add_cautions(r, input);
  return {};
}

}  // namespace

Result<RafterPair> solve_rafters(const RafterInput& input) {
  auto plan = plan_roof(input);
  if (!plan) return tl::unexpected(plan.error());
  Result<RafterPair> out{tl::in_place};
  RafterPair& pair = *out;
  pair.alike = input.alike;
  if (auto ok = solve_side(pair.left, input, *plan, Side::kLeft); !ok) return tl::unexpected(ok.error());
  if (input.alike)
    pair.right = pair.left;
  else if (auto ok = solve_side(pair.right, input, *plan, Side::kRight); !ok)
    return tl::unexpected(ok.error());
  pair.span = length(plan->span);
  pair.ridge_off_centre = input.alike ? Length{} : length(plan->left.run - plan->span / 2);
  if (input.feet == Feet::kLoose) {
    const double load_per_foot = input.load_psf * input.spacing.in() / 12;
    pair.thrust_lb = load_per_foot * plan->span / 12 / (2 * (plan->left.tan + plan->right.tan));
    pair.left.cautions.add({CautionId::kThrust, false, 0, {}});
  }
  return out;
}

}  // namespace bentbook
