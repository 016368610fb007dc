#include <initializer_list>

#include "cut/flip_test.h"
#include "cut/mitre.h"
#include "cut/setting.h"
#include "cut/triangle.h"
#include "numeric/libm.h"
#include "random.h"
#include "roof/corner/corner.h"
#include "roof/corner/corner_cuts.h"
#include "roof/rafter.h"
#include "rows.h"

using namespace bentbook;

namespace golden {
namespace {

constexpr double kRadian = libm::kPi / 180;

Length sixteenths(Random& random, std::int64_t least, std::int64_t most) {
  return Length::inches(random.whole(least, most), 16);
}

void error(Rows& rows, const Error& error) {
  rows.word("error").whole(static_cast<int>(error.code)).word(error.where).whole(error.limit).end();
}

void lengths(Rows& rows, std::initializer_list<Length> values) {
  for (const Length value : values) rows.whole(value.count);
}

void graduation(Rows& rows, const Graduation& g) {
  rows.whole(g.reads.nano_degrees).whole(g.off_square.nano_degrees).whole(g.past ? 1 : 0);
  lengths(rows, {g.arris, g.gap, g.gap_mated});
}

void pass(Rows& rows, const Pass& p) {
  rows.whole(p.swing.nano_degrees).whole(p.tilt.nano_degrees);
  lengths(rows, {p.travel, p.needed, p.left});
  rows.whole(static_cast<int>(p.faces)).whole(static_cast<int>(p.bite));
}

void side_rows(Rows& rows, const Rafter& r) {
  rows.bits(r.tan).bits(r.cos).bits(r.sin).whole(r.slope.nano_degrees);
  lengths(rows, {r.run,
                 r.rise,
                 r.line_length,
                 r.ridge_deduction,
                 r.tip_to_tip,
                 r.longest,
                 r.stock,
                 r.peak_setback,
                 r.seat,
                 r.heel,
                 r.plate_height,
                 r.plumb_depth,
                 r.birdsmouth_depth,
                 r.beam_seat,
                 r.beam_notch_depth,
                 r.peak_height,
                 r.rafter_top,
                 r.ridge_top,
                 r.sheathing_plumb,
                 r.tail_along,
                 r.step_length,
                 r.step_odd,
                 r.tail_step_odd});
  rows.bits(r.birdsmouth_share).bits(r.share_left).bits(r.beam_notch_share).whole(r.steps).whole(r.tail_steps);
  for (const Mark& mark : r.marks_top) rows.whole(static_cast<int>(mark.name)).whole(mark.from_peak.count);
  for (const Mark& mark : r.marks_bottom) rows.whole(static_cast<int>(mark.name)).whole(mark.from_peak.count);
  for (const CutAngle& cut : r.cuts) rows.whole(static_cast<int>(cut.name)).whole(cut.off_square.nano_degrees);
  for (const Caution& c : r.cautions) rows.whole(static_cast<int>(c.id)).bits(c.share).whole(c.length.count);
  for (const XY& point : r.outline) rows.bits(point.x).bits(point.y);
  rows.end();
}

RafterSide random_side(Random& random) {
  RafterSide side;
  side.pitch = Slope::in_12(sixteenths(random, 32, 24 * 16));
  side.heel_by = random.whole(0, 1) == 0 ? HeelBy::kSeat : HeelBy::kHeel;
  side.seat = sixteenths(random, 0, 6 * 16);
  side.heel = sixteenths(random, 3 * 16, 12 * 16);
  side.plate_height = sixteenths(random, -64, 64);
  side.overhang = sixteenths(random, 0, 36 * 16);
  side.measured = random.whole(0, 9) == 0;
  return side;
}

RafterInput random_rafter(Random& random) {
  RafterInput input;
  input.plan_by = static_cast<PlanBy>(random.whole(0, 2));
  input.span = sixteenths(random, 96 * 16, 600 * 16);
  input.run = sixteenths(random, 60 * 16, 200 * 16);
  input.alike = random.whole(0, 1) == 0;
  input.left = random_side(random);
  input.right = random_side(random);
  input.held = static_cast<Held>(random.whole(0, 2));
  input.section = {sixteenths(random, 24, 160), sixteenths(random, 56, 224)};
  input.peak = static_cast<PeakKind>(random.whole(0, 2));
  input.tail = static_cast<TailCut>(random.whole(0, 2));
  input.tail_plumb = sixteenths(random, 16, 80);
  input.feet = static_cast<Feet>(random.whole(0, 1));
  return input;
}

CornerInput random_corner(Random& random) {
  CornerInput input;
  input.kind = random.whole(0, 1) == 0 ? CornerKind::kHip : CornerKind::kValley;
  input.eave_angle = Angle::from_degrees(random.real(20, 160));
  input.pitch = Slope::in_12(sixteenths(random, 32, 24 * 16));
  input.pitch_other = Slope::in_12(sixteenths(random, 32, 24 * 16));
  input.run = sixteenths(random, 60 * 16, 300 * 16);
  input.hip_breadth = sixteenths(random, 24, 160);
  input.backed = random.whole(0, 1) == 0;
  input.peak = random.whole(0, 1) == 0 ? CornerPeak::kRidge : CornerPeak::kBetween;
  input.seat = sixteenths(random, 0, 60);
  return input;
}

void solved_corner_rows(Rows& rows, const CornerInput& input) {
  const auto corner = solve_corner(input);
  if (!corner) return error(rows, corner.error());
  rows.whole(corner->slope.nano_degrees);
  lengths(rows, {corner->run, corner->rise, corner->length, corner->drop, corner->shift, corner->shortening,
                 corner->to_cut, corner->tail, corner->heel, corner->seat, corner->notch, corner->longest});
  for (const CornerRoof& r : corner->roofs) {
    rows.whole(r.plan.nano_degrees).whole(r.backing.nano_degrees).whole(r.jack_side.nano_degrees).whole(r.jacks);
    lengths(rows, {r.run, r.seat, r.jack_difference, r.jack_shortening, r.jack_long_point});
  }
  for (const CornerCaution& c : corner->cautions) rows.whole(static_cast<int>(c.id)).whole(c.length.count);
  for (const CornerCut& cut : corner_cuts(input, *corner)) {
    const CutLine top = cut_line(cut, Face::kTop), side = cut_line(cut, Face::kNear);
    rows.whole(top.off_square.nano_degrees).whole(top.tilt.nano_degrees).whole(side.off_square.nano_degrees);
  }
  rows.end();
}

}  // namespace

void corner_rows(Rows& rows) {
  Random random(301);
  for (int i = 0; i < 2000; ++i) {
    const double eave = random.real(20, 340) * kRadian;
    const double own = random.real(0.05, 3);
    const double other = random.real(0.05, 3);
    const double plan = hip_plan_angle(eave, own, other);
    rows.bits(plan).bits(hip_slope(own, plan)).bits(backing_angle(own, plan)).bits(jack_side_cut(own, plan));
    rows.bits(jack_difference(16, own, plan)).bits(hip_drop(1.5, eave, own, other));
    rows.bits(hip_shift(1.5, eave, own, other)).end();
  }
  for (int i = 0; i < 300; ++i) solved_corner_rows(rows, random_corner(random));
}

void rafter_rows(Rows& rows) {
  Random random(302);
  for (int i = 0; i < 1500; ++i) {
    const auto pair = solve_rafters(random_rafter(random));
    if (!pair) {
      error(rows, pair.error());
      continue;
    }
    lengths(rows, {pair->span, pair->ridge_off_centre});
    rows.bits(pair->thrust_lb).end();
    side_rows(rows, pair->left);
    if (!pair->alike) side_rows(rows, pair->right);
  }
}

void saw_rows(Rows& rows) {
  Random random(303);
  for (int i = 0; i < 1500; ++i) {
    Saw saw;
    saw.square_reads = static_cast<SquareReads>(random.whole(0, 1));
    saw.reach = sixteenths(random, 32, 256);
    saw.max_swing = Angle::degrees(random.whole(0, 75));
    saw.max_tilt = Angle::degrees(random.whole(0, 60));
    saw.scale_error = Angle{random.whole(-Angle::kPerDegree, Angle::kPerDegree)};
    const Section section{sixteenths(random, 24, 160), sixteenths(random, 56, 224)};
    const auto setting = saw_setting(saw, section, Angle{random.whole(0, 89 * Angle::kPerDegree)});
    if (!setting) {
      error(rows, setting.error());
      continue;
    }
    rows.whole(setting->exact.nano_degrees).whole(setting->set_to.nano_degrees).whole(setting->travel.count);
    graduation(rows, setting->graduations.below);
    graduation(rows, setting->graduations.above);
    pass(rows, setting->on_side);
    pass(rows, setting->on_top);
    rows.end();
  }
}

void triangle_rows(Rows& rows) {
  Random random(304);
  for (int i = 0; i < 1000; ++i) {
    TriangleInput input;
    input.rise = sixteenths(random, 0, 4000);
    input.run = sixteenths(random, 1, 4000);
    input.slope_length = sixteenths(random, 1, 8000);
    input.slope = Slope::of_angle(Angle{random.whole(0, 90 * Angle::kPerDegree - 1)});
    input.older = static_cast<TrianglePart>(random.whole(0, 3));
    input.newer = static_cast<TrianglePart>(random.whole(0, 3));
    const auto triangle = solve_triangle(input);
    if (triangle) {
      lengths(rows, {triangle->rise, triangle->run, triangle->slope_length});
      rows.whole(triangle->angle.nano_degrees).end();
    } else {
      error(rows, triangle.error());
    }
  }
  for (int i = 0; i < 500; ++i) {
    const SlopeFacts facts = slope_facts(Slope::in_12(sixteenths(random, 0, 400)));
    rows.bits(facts.in_12).bits(facts.percent).bits(facts.mm_per_m).whole(facts.complement.nano_degrees).end();
  }
}

void joint_rows(Rows& rows) {
  Random random(305);
  for (int i = 0; i < 500; ++i) {
    const Angle between{random.whole(0, 180 * Angle::kPerDegree)};
    const Length a = sixteenths(random, 0, 200);
    const Length b = sixteenths(random, 1, 200);
    const auto mitre = solve_mitre(between, a, b);
    if (mitre) {
      rows.whole(mitre->off_square_a.nano_degrees)
          .whole(mitre->off_square_b.nano_degrees)
          .whole(mitre->line.count)
          .end();
    } else {
      error(rows, mitre.error());
    }
    const auto scale_error = scale_error_from_flip(Length{random.whole(-Length::kPerInch, Length::kPerInch)}, b);
    if (scale_error) {
      rows.whole(scale_error->nano_degrees).whole(flip_gap(*scale_error, b).count).end();
    } else {
      error(rows, scale_error.error());
    }
  }
}

}  // namespace golden
