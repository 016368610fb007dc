/// Writes random roofs as text for tests/fit/check.mjs, which builds every timber again with an outside solid modeller
/// from nothing but its numbers: no two share wood but as the roof says, and what is said to touch does.
///   roof_rows COUNT SEED one_pitch|unlike|gables|dormers [WRONG]
/// WRONG: inches by which every end B is cut too long.

#include <cstdio>
#include <cstdlib>
#include <cstring>

#include "geometry/cell.h"
#include "roof/plan/roof_edits.h"
#include "roof/plan/solve_roof.h"
#include "roof_plans.h"

using namespace bentbook;

namespace {

void write(const char* name, Vec3 v) { std::printf("%s %.17g %.17g %.17g\n", name, v.x, v.y, v.z); }

void write_timber(const RoofTimber& t) {
  const Solid solid = solid_of(t);
  const VolumeFacts facts = volume_of(solid);
  std::printf("timber %s %.17g %.17g %.17g %.17g %.17g\n", t.mark.c_str(), t.length, solid.blank.lo.y, solid.blank.hi.y,
              solid.blank.lo.z, solid.blank.hi.z);
  std::printf("volume %.17g\n", facts.volume);
  write("cg", facts.centroid);
  write("origin", t.at.origin);
  write("x", t.at.x);
  write("y", t.at.y);
  write("z", t.at.z);
  for (const Plane& cut : solid.cuts)
    std::printf("cut %.17g %.17g %.17g %.17g\n", cut.normal.x, cut.normal.y, cut.normal.z, cut.offset);
  for (const Pocket& p : solid.pockets) {
    std::printf("pocket %c %.17g %.17g", "xyz"[static_cast<int>(p.sweep)], p.from, p.to);
    for (const Vec2& c : p.outline) std::printf(" %.17g %.17g", c.x, c.y);
    std::printf("\n");
  }
}

void cut_too_long(RoofSolution& roof, double by) {
  for (RoofTimber& t : roof.timbers) {
    t.length += by;
    for (RoofEndCut& cut : t.cuts)
      if (cut.at_b) cut.plane.offset += cut.plane.normal.x * by;
  }
}

/// The check lays a thin slab behind each patch; at an acute arris it would stand out of the wood on the other face.
/// What of the patch lies so near to one is left out.
std::vector<Vec3> clear_of_acute(std::vector<Vec3> patch, const RoofTimber& timber, Vec3 into) {
  constexpr double kSlab = 1.0 / 128;
  std::vector<Vec3> outside, inside;
  for (const Plane& local : body_of(solid_of(timber)).planes) {
    const Vec3 normal = to_world_direction(timber.at, local.normal);
    const double toward = dot(normal, into);
    if (toward < 1e-9) continue;
    split(patch, {normal, local.offset + dot(normal, timber.at.origin) - kSlab * toward}, outside, inside);
    patch.swap(inside);
  }
  return patch;
}

void write_roof(const RoofSolution& roof, int number) {
  std::printf("plan %d\n", number);
  for (const RoofFinding& f : roof.findings)
    if (f.id == RoofFindingId::kClash)
      std::printf("clash %s %s %.17g\n", roof.timbers[static_cast<std::size_t>(f.timber)].mark.c_str(),
                  roof.timbers[static_cast<std::size_t>(f.other)].mark.c_str(), f.value);
  for (const RoofTimber& t : roof.timbers) write_timber(t);
  for (const RoofContact& c : roof.contacts) {
    const auto& member = roof.timbers[static_cast<std::size_t>(c.member)];
    const auto& receiver = roof.timbers[static_cast<std::size_t>(c.receiver)];
    const auto patch = clear_of_acute(clear_of_acute(c.corners, member, c.normal), receiver, -1 * c.normal);
    if (patch.size() < 3) continue;
    std::printf("contact 0 %d %d %.17g %.17g %.17g", c.member, c.receiver, c.normal.x, c.normal.y, c.normal.z);
    for (const Vec3& p : patch) std::printf(" %.17g %.17g %.17g", p.x, p.y, p.z);
    std::printf("\n");
  }
  std::printf("end\n");
}

/// One with a dormer at least; what is said would do is put in where it has no room.
Result<RoofSolution> with_dormers(Random& random) {
  RoofPlan plan = dormered_roof(random, random.whole(0, 2) != 0);
  if (plan.dormers.empty()) return fail(ErrorCode::kMissing);
  auto roof = solve_roof(plan);
  for (int i = 0; i < 12 && !roof && take_cure(plan, roof.error()); ++i) roof = solve_roof(plan);
  return roof;
}

bool clashes(const RoofSolution& roof) {
  for (const RoofFinding& f : roof.findings)
    if (f.id == RoofFindingId::kClash) return true;
  return false;
}

}  // namespace

int main(int argc, char** argv) try {
  if (argc < 4) return 2;
  const int count = std::atoi(argv[1]);
  Random random(std::strtoull(argv[2], nullptr, 10));
  RandomRoof wanted;
  wanted.one_pitch = std::strcmp(argv[3], "one_pitch") == 0;
  wanted.gables = std::strcmp(argv[3], "gables") == 0;
  const bool dormers = std::strcmp(argv[3], "dormers") == 0;
  const double too_long = argc > 4 ? std::atof(argv[4]) : 0;
  int others = 0, clashing = 0;
  for (int written = 0; written < count;) {
    auto roof = dormers ? with_dormers(random) : solve_roof(random_roof(random, wanted));
    if (!roof) {
      ++others;
      continue;
    }
    if (clashes(*roof)) ++clashing;
    if (too_long != 0) cut_too_long(*roof, too_long);
    write_roof(*roof, written++);
  }
  std::fprintf(stderr, "%d of %d with clashes\n", clashing, count);
  std::printf("passed_over %d\n", others);
  return 0;
} catch (...) {
  return 1;
}
