/// Writes frames as text for tests/fit/check.mjs: of each timber nothing but what its sheet says, and of the frame
/// where each stands and which faces touch.
///   fit_rows COUNT SEED [WRONG]     WRONG: inches by which every end B is cut too long

#include <cstdio>
#include <cstdlib>

#include "frame/facts.h"
#include "plans.h"

using namespace bentbook;

namespace {

void write(const char* name, Vec3 v) { std::printf("%s %.17g %.17g %.17g\n", name, v.x, v.y, v.z); }

void write_timber(const Timber& t) {
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

}  // namespace

int main(int argc, char** argv) try {
  if (argc < 3) return 2;
  const int count = std::atoi(argv[1]);
  Random random(std::strtoull(argv[2], nullptr, 10));
  const double wrong = argc > 3 ? std::atof(argv[3]) : 0;
  for (int i = 0; i < count; ++i) {
    const FramePlan plan = random_plan(random);
    auto frame = solve_frame(plan);
    if (!frame) {
      std::printf("refused %d %s\nend\n", i, frame.error().where.c_str());
      continue;
    }
    std::printf("plan %d\n", i);
    if (wrong != 0)
      for (Timber& t : frame->timbers) {
        t.length += wrong;
        for (EndCut& cut : t.cuts)
          if (cut.end == End::kB) cut.plane.offset += cut.plane.normal.x * wrong;
      }
    for (const Finding& f : frame->findings)
      std::printf("finding %d %s %s %.6g\n", static_cast<int>(f.id), f.mark.empty() ? "-" : f.mark.c_str(),
                  f.other.empty() ? "-" : f.other.c_str(), f.value);
    for (const Timber& t : frame->timbers) write_timber(t);
    std::vector<bool> cut_into(frame->joints.size(), false);
    for (const Timber& t : frame->timbers)
      for (const TimberWarning& w : t.warnings)
        if (w.id == WarningId::kContactCut && w.joint >= 0) cut_into[static_cast<std::size_t>(w.joint)] = true;
    for (const ContactFace& c : frame->contacts) {
      if (cut_into[static_cast<std::size_t>(c.joint)]) {
        std::printf("said\n");
        continue;
      }
      const Joint& joint = frame->joints[static_cast<std::size_t>(c.joint)];
      std::printf("contact %d %d %d %.17g %.17g %.17g", static_cast<int>(joint.meeting), joint.member, joint.receiver,
                  c.normal.x, c.normal.y, c.normal.z);
      for (const Vec3& p : c.corners) std::printf(" %.17g %.17g %.17g", p.x, p.y, p.z);
      std::printf("\n");
    }
    std::printf("end\n");
  }
  return 0;
} catch (...) {
  return 1;
}
