// Cuts against constructions that share no formula with the core.

#include <algorithm>
#include <catch_amalgamated.hpp>
#include <cmath>

#include "cut/mitre.h"
#include "cut/setting.h"
#include "cut/triangle.h"
#include "random.h"

using namespace bentbook;

namespace {

constexpr double kPi = 3.14159265358979323846;
bool near(double a, double b, double tolerance) { return std::fabs(a - b) <= tolerance; }

}  // namespace

TEST_CASE("what a graduation costs, measured on the two cuts", "[property][saw]") {
  Random random(0x5a3);
  int bad = 0;
  for (int i = 0; i < property_cases(); ++i) {
    Saw saw;
    saw.square_reads = random.whole(0, 1) == 0 ? SquareReads::kZero : SquareReads::kNinety;
    const std::int64_t steps[] = {Angle::kPerDegree, Angle::kPerDegree / 2, Angle::kPerDegree / 10,
                                  5 * Angle::kPerDegree};
    saw.step = {steps[random.whole(0, 3)]};
    saw.scale_error = Angle::from_degrees(random.real(-1, 1));
    const Length depth = Length::from_inches(random.real(1, 16));
    const Angle exact = Angle::from_degrees(random.real(1, 75));
    const auto marks = graduations(saw, depth, exact);
    if (!marks) {
      ++bad;
      continue;
    }
    for (const Graduation* g : {&marks->below, &marks->above}) {
      // The mark stands at the near arris; both cuts cross to the far one.
      const double theta = exact.deg() * kPi / 180, s = g->off_square.deg() * kPi / 180, d = depth.in();
      const double far_exact = d * std::tan(theta), far_cut = d * std::tan(s);
      bad += !near(g->arris.in(), std::fabs(far_cut - far_exact), 1e-7);
      // The gape: from the end of the cut, square to the true face's line.
      const double gap = std::fabs(far_cut * std::cos(theta) - d * std::sin(theta));
      bad += !near(g->gap.in(), gap, 1e-7);
      bad += g->reads.nano_degrees % saw.step.nano_degrees != 0;
    }
    bad += marks->below.off_square > exact || marks->above.off_square < exact;
    bad += marks->above.off_square - marks->below.off_square > saw.step;
  }
  CHECK(bad == 0);
}

TEST_CASE("a mitre runs from the meeting of the inner edges to that of the outer", "[property][mitre]") {
  Random random(0x317e);
  int bad = 0;
  for (int i = 0; i < property_cases(); ++i) {
    const double phi = random.real(5, 175) * kPi / 180, a = random.real(1, 16), b = random.real(1, 16);
    const auto m = solve_mitre(Angle::from_radians(phi), Length::from_inches(a), Length::from_inches(b));
    if (!m) {
      ++bad;
      continue;
    }
    // The first member lies along −x, its inner edge on the axis, its outer edge y = −a. The second leaves the origin
    // at 180° − phi; its outer edge is b to the right of it: dot(p, (sin, −cos) of that direction) = b.
    const double to_b = kPi - phi, y = -a, x = (b + std::cos(to_b) * y) / std::sin(to_b);
    bad += !near(m->line.in(), std::hypot(x, y), 1e-6);
    bad += !near(m->from_length_a.deg() * kPi / 180, std::atan2(a, x), 1e-7);
    bad += !near(m->line.in() * std::sin(m->from_length_a.deg() * kPi / 180), a, 1e-6);
    bad += !near(m->line.in() * std::sin(m->from_length_b.deg() * kPi / 180), b, 1e-6);
    bad += m->from_length_a + m->from_length_b != Angle::from_radians(phi);
  }
  CHECK(bad == 0);
}

TEST_CASE("a triangle solved from any two measures is one triangle", "[property][triangle]") {
  Random random(0x34a);
  int bad = 0;
  for (int i = 0; i < property_cases(); ++i) {
    TriangleInput input;
    input.rise = Length::from_inches(random.real(1, 300));
    input.run = Length::from_inches(random.real(1, 300));
    input.slope_length = Length::from_inches(random.real(300, 600));
    input.slope = Slope::in_12(Length::from_inches(random.real(1, 24)));
    input.older = static_cast<TrianglePart>(random.whole(0, 3));
    input.newer = static_cast<TrianglePart>((static_cast<int>(input.older) + random.whole(1, 3)) % 4);
    const auto t = solve_triangle(input);
    if (!t) {
      ++bad;
      continue;
    }
    bad += !near(t->rise.in() * t->rise.in() + t->run.in() * t->run.in(), t->slope_length.in() * t->slope_length.in(),
                 1e-4);
    bad += !near(t->angle.deg() * kPi / 180, std::atan2(t->rise.in(), t->run.in()), 1e-7);
    if (input.given(TrianglePart::kRise)) bad += t->rise != input.rise;
    if (input.given(TrianglePart::kRun)) bad += t->run != input.run;
    if (input.given(TrianglePart::kSlopeLength)) bad += t->slope_length != input.slope_length;
    if (input.given(TrianglePart::kSlope)) bad += !near(t->angle.deg(), input.slope.deg(), 1e-9);
  }
  CHECK(bad == 0);
}
