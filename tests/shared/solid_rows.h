#pragma once
/// Timbers as lines of text for programs that build them again with an outside modeller (solids.mjs).

#include <cstdio>

#include "frame/facts.h"
#include "plans.h"

namespace bentbook {

inline void write(const char* name, Vec3 v) { std::printf("%s %.17g %.17g %.17g\n", name, v.x, v.y, v.z); }

inline void write_timber(const Timber& t) {
  const TimberFacts facts = facts_of(t);
  std::printf("timber %s %.17g %.17g %.17g %.17g %.17g\n", t.mark.c_str(), t.length, t.sides.y_lo, t.sides.y_hi,
              t.sides.z_lo, t.sides.z_hi);
  std::printf("volume %.17g\n", facts.volume);
  write("cg", facts.cg);
  write("origin", t.at.origin);
  write("x", t.at.x);
  write("y", t.at.y);
  write("z", t.at.z);
  for (const EndCut& cut : t.cuts)
    std::printf("cut %.17g %.17g %.17g %.17g\n", cut.plane.normal.x, cut.plane.normal.y, cut.plane.normal.z,
                cut.plane.offset);
  for (const Pocket& p : t.pockets) {
    std::printf("%s %c %.17g %.17g", p.radius > 0 ? "hole" : "pocket", "xyz"[static_cast<int>(p.sweep)], p.from, p.to);
    if (p.radius > 0) std::printf(" %.17g", p.radius);
    for (const Vec2& c : p.outline) std::printf(" %.17g %.17g", c.x, c.y);
    std::printf("\n");
  }
}

/// Most plans have one bay and few rafters, so that many can be checked; each kind of timber and joint is in them.
inline FramePlan plan_to_check(Random& random) {
  FramePlan plan = random_plan(random);
  draw_half_dovetails(random, plan);
  if (!chance(random, 75)) return plan;
  plan.bays.resize(1);
  if (plan.rafter_spacing < Length::inches(54)) plan.rafter_spacing = Length::inches(54);
  if (plan.joist_spacing < Length::inches(40)) plan.joist_spacing = Length::inches(40);
  return plan;
}

inline bool clashes(const Frame& frame) {
  for (const Finding& f : frame.findings)
    if (f.id == FindingId::kClash) return true;
  return false;
}

}  // namespace bentbook
