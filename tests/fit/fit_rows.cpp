/// Writes frames as text for tests/fit/check.mjs: of each timber nothing but what its sheet says, and of the frame
/// where each stands and which faces touch.
///   fit_rows COUNT SEED clean|clashing [WRONG]
/// clean: plans in which the frame finds no two timbers that take the same room; clashing: only those in which it does.
/// WRONG: inches by which every end B is cut too long.

#include <cstdio>
#include <cstdlib>
#include <cstring>

#include "frame/placing/solve_frame.h"
#include "solid_rows.h"

using namespace bentbook;

namespace {

void cut_too_long(Frame& frame, double by) {
  for (Timber& t : frame.timbers) {
    t.length += by;
    for (EndCut& cut : t.cuts)
      if (cut.end == End::kB) cut.plane.offset += cut.plane.normal.x * by;
  }
}

/// What other joints take of where this one bears, as the timbers' own warnings say: pockets, by timber.
void write_cut_into(const Frame& frame, const Joint& joint, int index) {
  for (const int i : {joint.member, joint.receiver}) {
    const Timber& t = frame.timbers[static_cast<std::size_t>(i)];
    for (const TimberWarning& w : t.warnings) {
      if (w.id != WarningId::kContactCut || w.joint != index) continue;
      for (const Feature& f : t.features)
        if (f.joint == static_cast<int>(w.value2))
          for (int p = f.first_pocket; p < f.first_pocket + f.pockets; ++p) std::printf("cut_into %d %d\n", i, p);
    }
  }
}

void write_contact(const Frame& frame, const ContactFace& c) {
  const Joint& joint = frame.joints[static_cast<std::size_t>(c.joint)];
  std::printf("contact %d %d %d %.17g %.17g %.17g", static_cast<int>(joint.meeting), joint.member, joint.receiver,
              c.normal.x, c.normal.y, c.normal.z);
  for (const Vec3& p : c.corners) std::printf(" %.17g %.17g %.17g", p.x, p.y, p.z);
  std::printf("\n");
  write_cut_into(frame, joint, c.joint);
}

void write_frame(const Frame& frame, int number) {
  std::printf("plan %d\n", number);
  for (const Finding& f : frame.findings)
    if (f.id == FindingId::kClash) std::printf("clash %s %s %.17g\n", f.mark.c_str(), f.other.c_str(), f.value);
  for (const Timber& t : frame.timbers) write_timber(t);
  for (const ContactFace& c : frame.contacts) write_contact(frame, c);
  std::printf("end\n");
}

}  // namespace

int main(int argc, char** argv) try {
  if (argc < 4) return 2;
  const int count = std::atoi(argv[1]);
  Random random(std::strtoull(argv[2], nullptr, 10));
  const bool clashing = std::strcmp(argv[3], "clashing") == 0;
  const double wrong = argc > 4 ? std::atof(argv[4]) : 0;
  int others = 0;
  for (int written = 0; written < count;) {
    auto frame = solve_frame(plan_to_check(random));
    if (!frame || clashes(*frame) != clashing) {
      ++others;
      continue;
    }
    if (wrong != 0) cut_too_long(*frame, wrong);
    write_frame(*frame, written++);
  }
  std::printf("passed_over %d\n", others);
  return 0;
} catch (...) {
  return 1;
}
