#include "roof/corner/corner_solve.h"

#include <algorithm>

#include "roof/limits.h"

namespace bentbook {
namespace {

constexpr std::array kBoth{0, 1};
/// A hip whose plan angle is nearer to a right angle than this runs with the commons: none of them comes up to it.
constexpr double kAlongside = 1e-9;

Length inches(double value) { return Length::from_inches(value); }
double angle_between(Vec3 a, Vec3 b) { return libm::atan2(norm(cross(a, b)), dot(a, b)); }

/// Half the hip's thickness on the side of a roof, its shift taken in.
double half_toward(const CornerInput& input, const RoofCorner& corner, int roof) {
  const double shift = corner.shift.in();
  return input.hip_breadth.in() / 2 + (roof == corner.shift_to ? shift : -shift);
}

/// An unbacked hip lies as high as it can under both roofs: its arrises stand u and v off the hip's line, u + v its
/// thickness, where both roofs have fallen alike. Where one of them rises away, the other alone drops it.
void set_drop(RoofCorner& c, const CornerInput& input) {
  if (input.kind == CornerKind::kValley || input.backed) return;
  const double thick = input.hip_breadth.in(), f = c.roofs[0].fall, g = c.roofs[1].fall;
  if (!(f > 0 && g > 0)) {
    c.drop = inches(thick / 2 * std::max(f, g));
    return;
  }
  c.drop = inches(thick * f * g / (f + g));
  c.shift = inches(thick / 2 * libm::fabs(g - f) / (f + g));
  c.shift_to = f < g ? 0 : 1;
}

void set_line(RoofCorner& c, const CornerInput& input, const CornerPlanes& p) {
  c.tan = p.hip.z / dot(p.hip, p.level);
  c.cos = dot(p.hip, p.level);
  c.sin = p.hip.z;
  c.slope = Angle::from_radians(libm::atan2(c.sin, c.cos));
  const double per_run = 1 / dot(p.level, p.inward[0]), run = input.run.in() * per_run;
  c.run = inches(run);
  c.rise = inches(input.run.in() * p.tan[0]);
  c.length = inches(run / c.cos);
  c.per_foot = inches(12 * per_run / c.cos);
  c.square_run = inches(12 * per_run);
  c.tail = inches(input.overhang.in() * per_run / c.cos);
}

void set_roof(CornerRoof& r, const CornerInput& input, const CornerPlanes& p, int roof) {
  const auto i = static_cast<std::size_t>(roof);
  const double along = dot(p.level, p.eave[i]), up = dot(p.level, p.inward[i]);
  const Placement rafter = rafter_axes(p, roof);
  r.slope = Angle::from_radians(libm::atan2(p.sin[i], p.cos[i]));
  r.plan = Angle::from_radians(libm::atan2(up, along));
  r.meets = along > kAlongside;
  r.fall = p.fall(roof);
  r.run = inches(input.run.in() * p.tan[0] / p.tan[i]);
  r.overhang = inches(input.overhang.in() * p.tan[0] / p.tan[i]);
  const double lean = dot(p.normal[i], p.toward(roof));
  r.backing = Angle::from_radians(libm::asin(p.kind == CornerKind::kHip ? lean : -lean));
  const double side = angle_between(rafter.x, p.hip);
  r.jack_side = Angle::from_radians(side);
  r.jack_tilt = Angle::from_radians(libm::asin(up));
  if (libm::fabs(along) > kAlongside) {
    r.jack_difference = inches(input.spacing.in() * up / (along * p.cos[i]));
    r.jack_long_point = inches(input.jack_breadth.in() / 2 / libm::fabs(libm::tan(side)));
  }
}

void set_jacks(RoofCorner& c, const CornerInput& input, const CornerPlanes& p, int roof) {
  const auto i = static_cast<std::size_t>(roof);
  CornerRoof& r = c.roofs[i];
  if (!r.meets) return;
  r.jack_shortening = inches(half_toward(input, c, roof) / (dot(p.level, p.eave[i]) * p.cos[i]));
  // Short of the last common, which stands where the hip's line ends.
  constexpr double kMostJacks = 1e6;
  const double spaces = r.run.in() / p.cos[i] / r.jack_difference.in();
  r.jacks = static_cast<int>(std::clamp(libm::ceil(spaces - 1e-9) - 1, 0.0, kMostJacks));
  if (p.kind == CornerKind::kValley)
    while (r.jacks > 0 && !(jack_of(input, c, roof, r.jacks).length > Length{})) --r.jacks;
}

/// Seat and heel of the first roof's commons; the hip's follow. heel = depth / cos θ − seat · tan θ.
Result<void> set_heel(RoofCorner& c, const CornerInput& input, const CornerPlanes& p) {
  const double plumb = input.jack_depth.in() / p.cos[0], drop = c.drop.in();
  if (!(plumb > drop)) return fail(ErrorCode::kTooLarge, "hip_breadth");
  const bool by_seat = input.heel_by == HeelBy::kSeat;
  const double heel = by_seat ? plumb - input.seat.in() * p.tan[0] : input.heel.in();
  if (by_seat && !(heel > drop))
    return fail(ErrorCode::kSeatTooLong, "seat", -1, inches((plumb - drop) / p.tan[0]).count - 1);
  if (!by_seat && input.heel > inches(plumb)) return fail(ErrorCode::kHeelTooLarge, "heel", -1, inches(plumb).count);
  c.heel = inches(heel) - c.drop;
  if (!(c.heel > Length{})) return fail(ErrorCode::kTooSmall, "heel", -1, c.drop.count + 1);
  for (const int roof : kBoth) {
    const auto i = static_cast<std::size_t>(roof);
    c.roofs[i].seat = inches(std::max(0.0, (input.jack_depth.in() / p.cos[i] - heel) / p.tan[i]));
  }
  const double depth = input.hip_depth.in(), hip_plumb = depth / c.cos;
  c.plumb_depth = inches(hip_plumb);
  const double seat = (hip_plumb - c.heel.in()) / c.tan;
  if (seat < 0) c.cautions.add({CornerCautionId::kHipHigh, 0, inches(c.heel.in() - hip_plumb), 0});
  c.seat = inches(std::max(0.0, seat));
  c.notch = inches(c.seat.in() * c.sin);
  c.notch_share = c.notch.in() / depth;
  if (c.notch_share > limits::kNotchAtSupport)
    c.cautions.add({CornerCautionId::kNotchPastQuarter, 0, {}, c.notch_share});
  return {};
}

/// Where a cheek's plane crosses the hip's line, level from the corner.
double crossing(const Cheek& cheek, const CornerPlanes& p) {
  return cheek.plane.offset / dot(cheek.plane.normal, p.level);
}

void set_ends(RoofCorner& c, const CornerInput& input, const CornerPlanes& p) {
  double end = c.run.in();
  for (const Cheek& cheek : peak_cheeks(input, p)) end = std::min(end, crossing(cheek, p));
  if (c.run.in() - end < 1e-9) return void(c.to_cut = c.length);  // nothing but rounding
  c.shortening_level = c.run - inches(end);
  c.shortening = inches((c.run.in() - end) / c.cos);
  c.to_cut = c.length - c.shortening;
}

/// Over the four arrises; the ends of all cheeks that are cut.
void set_longest(RoofCorner& c, const CornerInput& input, const CornerPlanes& p) {
  const Placement at = hip_axes(p);
  double low = 1e300, high = -1e300;
  for (const int side : kBoth)
    for (const double z : {0.0, -input.hip_depth.in()}) {
      const Vec3 arris = half_toward(input, c, side) * p.toward(side) + z * at.z;
      double peak = 1e300, foot = 0;
      bool first = true;
      const auto along = [&](const Cheek& cheek) {
        return (cheek.plane.offset - dot(cheek.plane.normal, arris)) / dot(cheek.plane.normal, at.x);
      };
      for (const Cheek& cheek : peak_cheeks(input, p)) peak = std::min(peak, along(cheek));
      for (const Cheek& cheek : foot_cheeks(input, p)) {
        // A hip's tail is pointed, a valley's goes in between its two cheeks.
        const double x = along(cheek);
        foot = first ? x : p.kind == CornerKind::kHip ? std::max(foot, x) : std::min(foot, x);
        first = false;
      }
      low = std::min(low, foot), high = std::max(high, peak);
    }
  c.longest = inches(high - low);
}

/// A jack's plumb cut has all of its length against the hip.
void check_depth(RoofCorner& c, const CornerInput& input, const CornerPlanes& p) {
  double wanted = 0;
  for (const int roof : kBoth) {
    const auto i = static_cast<std::size_t>(roof);
    if (!c.roofs[i].meets) continue;
    // How far the roof, in which the jack's top lies, stands at the hip's side below the top of its line: an unbacked
    // hip was dropped by as much, a valley's roof stands above.
    const double off = half_toward(input, c, roof) * c.roofs[i].fall;
    const double below = p.kind == CornerKind::kValley ? -off : input.backed ? off : 0;
    wanted = std::max(wanted, (input.jack_depth.in() / p.cos[i] + below) * c.cos);
  }
  if (wanted > input.hip_depth.in() + 1e-6) c.cautions.add({CornerCautionId::kHipShallow, 0, inches(wanted), 0});
}

}  // namespace

FixedList<Cheek, 2> peak_cheeks(const CornerInput& input, const CornerPlanes& planes) {
  FixedList<Cheek, 2> out;
  const double run = input.run.in();
  const Vec3 peak = (run / dot(planes.level, planes.inward[0])) * planes.level;
  for (const int roof : kBoth) {
    if (roof == 1 && input.peak == CornerPeak::kRidge) break;
    const auto i = static_cast<std::size_t>(roof);
    const bool commons = input.peak == CornerPeak::kBetween && input.kind == CornerKind::kHip;
    const Vec3 normal = commons ? planes.eave[i] : planes.inward[i];
    const double half = (commons ? input.jack_breadth : input.ridge).in() / 2;
    out.add({roof, {normal, dot(normal, peak) - half}});
  }
  return out;
}

FixedList<Cheek, 2> foot_cheeks(const CornerInput& input, const CornerPlanes& planes) {
  FixedList<Cheek, 2> out;
  for (const int roof : kBoth) {
    const auto i = static_cast<std::size_t>(roof);
    out.add({roof, {-1.0 * planes.inward[i], input.overhang.in() * planes.tan[0] / planes.tan[i]}});
  }
  return out;
}

Jack jack_of(const CornerInput& input, const RoofCorner& corner, int roof, int number) {
  const CornerRoof& r = corner.roof(roof);
  const bool valley = input.kind == CornerKind::kValley;
  const double cos = libm::cos(r.slope.rad()), step = r.jack_difference.in() * number;
  Jack jack;
  jack.line = inches(valley ? r.run.in() / cos - step : step);
  jack.length = jack.line - r.jack_shortening;
  if (valley) jack.length = jack.length - inches(input.ridge.in() / 2 / cos);
  return jack;
}

Result<RoofCorner> solve_corner(const CornerInput& input) {
  if (auto ok = check_corner(input); !ok) return tl::unexpected(ok.error());
  const CornerPlanes planes = corner_planes(input);
  Result<RoofCorner> out{tl::in_place};
  RoofCorner& c = *out;
  for (const Vec3& inward : planes.inward)
    if (!(dot(planes.level, inward) > libm::sin(limits::kLeastPlan.rad())))
      return fail(ErrorCode::kImpossible, "pitch_other");
  set_line(c, input, planes);
  if (c.length.count >= Length::kLimit) return fail(ErrorCode::kTooLarge, "run");
  for (const int roof : kBoth) {
    CornerRoof& r = c.roofs[static_cast<std::size_t>(roof)];
    set_roof(r, input, planes, roof);
    if (r.run.count >= Length::kLimit) return fail(ErrorCode::kTooLarge, "run");
    if (!r.meets) c.cautions.add({CornerCautionId::kRisesAway, roof, {}, 0});
  }
  if (input.peak == CornerPeak::kBetween && input.kind == CornerKind::kHip && c.cautions.count > 0)
    return fail(ErrorCode::kImpossible, "peak");
  set_drop(c, input);
  if (auto ok = set_heel(c, input, planes); !ok) return tl::unexpected(ok.error());
  for (const int roof : kBoth) set_jacks(c, input, planes, roof);
  set_ends(c, input, planes);
  set_longest(c, input, planes);
  check_depth(c, input, planes);
  return out;
}

}  // namespace bentbook
