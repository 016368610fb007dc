#include "cut/setting.h"

namespace bentbook {
namespace {

constexpr Angle kRight = Angle::degrees(90);

std::int64_t floor_to(std::int64_t value, std::int64_t step) {
  const std::int64_t rest = value % step;
  return value - (rest < 0 ? rest + step : rest);
}

Graduation graduation(const Saw& saw, Length depth, Angle exact, Angle reads) {
  Graduation g;
  g.reads = reads;
  g.off_square = in_scale(saw.square_reads, reads) + saw.scale_error;
  g.past = g.off_square > exact;
  if (g.off_square >= kRight || g.off_square <= Angle{} - kRight) {
    g.arris = g.gap = g.gap_mated = Length{Length::kLimit};  // runs along the timber: never comes out
    return g;
  }
  const double s = g.off_square.rad(), theta = exact.rad(), d = depth.in();
  g.arris = Length::from_inches(d * libm::fabs(libm::tan(s) - libm::tan(theta)));
  g.gap = Length::from_inches(d / libm::cos(s) * libm::sin(libm::fabs(s - theta)));
  g.gap_mated = g.gap * 2;
  return g;
}

/// Size of an angle, any sign, from radians.
Angle size_of(double rad) { return Angle::from_radians(libm::fabs(rad)); }

Result<void> check_cut(const Saw& saw, Length depth, Angle off_square) {
  if (off_square < Angle{}) return fail(ErrorCode::kNegative, "angle");
  if (off_square >= kRight) return fail(ErrorCode::kSteep, "angle");
  if (depth <= Length{}) return fail(ErrorCode::kNotPositive, "depth");
  if (depth.count > Length::kLimit) return fail(ErrorCode::kTooLarge, "depth", -1, Length::kLimit);
  return check_saw(saw);
}

Graduations nearest_graduations(const Saw& saw, Length depth, Angle exact) {
  const Angle reading = in_scale(saw.square_reads, exact - saw.scale_error);
  const Angle low{floor_to(reading.nano_degrees, saw.step.nano_degrees)};
  Graduations out;
  out.on_mark = low == reading;
  const Angle high = out.on_mark ? low : low + saw.step;
  // A scale that reads 90 at square falls as the cut leaves square.
  const bool rising = saw.square_reads == SquareReads::kZero;
  out.below = graduation(saw, depth, exact, rising ? low : high);
  out.above = graduation(saw, depth, exact, rising ? high : low);
  return out;
}

}  // namespace

Result<Graduations> graduations(const Saw& saw, Length depth, Angle off_square) {
  if (auto ok = check_cut(saw, depth, off_square); !ok) return tl::unexpected(ok.error());
  return nearest_graduations(saw, depth, off_square);
}

Pass pass_on(const Saw& saw, const Section& section, const CutPlane& cut, Face face) {
  const BladeAngles blade = blade_angles(cut, face);
  const bool flat = face == Face::kTop || face == Face::kBottom;
  const double width = (flat ? section.breadth : section.depth).in();
  const double thickness = (flat ? section.depth : section.breadth).in();
  Pass pass;
  pass.swing = size_of(blade.swing);
  pass.tilt = size_of(blade.tilt);
  pass.travel = Length::from_inches(width / libm::cos(blade.swing));
  pass.needed = Length::from_inches(thickness / libm::cos(blade.tilt));
  if (saw.kind == SawKind::kHand) return pass;
  if (pass.swing > saw.max_swing || pass.tilt > saw.max_tilt) {
    pass.faces = Faces::kCannot;
    pass.bite = pass.swing > saw.max_swing ? Bite::kSwing : Bite::kTilt;
  } else if (saw.reach < pass.needed) {
    pass.bite = Bite::kReach;
    pass.left = pass.needed - saw.reach * 2;
    if (pass.left < Length{}) pass.left = Length{};
    pass.faces = pass.left > Length{} ? Faces::kByHand : Faces::kTwo;
  }
  return pass;
}

Result<Setting> saw_setting(const Saw& saw, const Section& section, Angle off_square) {
  if (auto ok = check_cut(saw, section.depth, off_square); !ok) return tl::unexpected(ok.error());
  if (section.breadth <= Length{}) return fail(ErrorCode::kNotPositive, "breadth");
  const double theta = off_square.rad();
  const CutPlane cut{{libm::cos(theta), 0, libm::sin(theta)}, 0};
  Setting out;
  out.exact = off_square;
  out.set_to = in_scale(saw.square_reads, off_square - saw.scale_error);
  out.graduations = nearest_graduations(saw, section.depth, off_square);
  out.on_side = pass_on(saw, section, cut, Face::kNear);
  out.on_top = pass_on(saw, section, cut, Face::kTop);
  // The plane's round trip through atan2 must not turn an exact 45° into 45.000000001°.
  out.on_side.swing = out.on_top.tilt = off_square;
  out.travel = out.on_side.travel;
  return out;
}

}  // namespace bentbook
