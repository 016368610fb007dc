#include <catch_amalgamated.hpp>

#include "frame/placing/solve_frame.h"
#include "frame/sheet/face_marks.h"
#include "frame/sheet/sheet.h"
#include "from_marks.h"
#include "geometry/mesh.h"
#include "plans.h"

using namespace bentbook;

namespace {

Saw table_saw() {
  Saw saw;
  saw.kind = SawKind::kChainsawBar;
  saw.reach = Length::inches(16);
  return saw;
}

bool is_number(double x) { return x - x == 0; }

/// Where an arris really begins and ends: the mesh's corners that lie on it.
struct Ends {
  double from = 1e300, to = -1e300;
};
Ends ends_on_mesh(const Mesh& mesh, Vec2 arris) {
  Ends ends;
  for (const Vec3& p : mesh.corners) {
    if (libm::fabs(p.y - arris.x) > 1e-7 || libm::fabs(p.z - arris.y) > 1e-7) continue;
    ends.from = p.x < ends.from ? p.x : ends.from;
    ends.to = p.x > ends.to ? p.x : ends.to;
  }
  return ends;
}

}  // namespace

TEST_CASE("over random frames every cut and pocket comes back from its marks alone", "[marks]") {
  Random random(5301);
  const int plans = property_cases() / 500;
  long cuts = 0, pockets = 0;
  for (int n = 0; n < plans; ++n) {
    const auto frame = solve_frame(random_plan(random));
    if (!frame) continue;
    for (const Timber& timber : frame->timbers) {
      const LayoutMarks marks = layout_marks(timber);
      for (const CutMarks& cut : marks.cuts) {
        ++cuts;
        if (!from_marks::comes_back(timber, cut)) FAIL("plan " << n << ' ' << timber.mark << " cut " << cut.cut);
      }
      for (const RecessMarks& recess : marks.recesses) {
        ++pockets;
        if (!from_marks::comes_back(timber, recess))
          FAIL("plan " << n << ' ' << timber.mark << " pocket " << recess.pocket);
      }
    }
  }
  CHECK(cuts > 40 * plans);
  CHECK(pockets > 40 * plans);
}

TEST_CASE("over random frames the arrises measured are those of the solid", "[marks]") {
  Random random(5302);
  int compared = 0;
  for (int n = 0; n < property_cases() / 2500; ++n) {
    const auto frame = solve_frame(random_plan(random));
    if (!frame) continue;
    for (const Timber& timber : frame->timbers) {
      const CheckMeasures check = check_measures(timber);
      const Mesh mesh = mesh_of(solid_of(timber));
      for (int arris = 1; arris <= 4; ++arris) {
        const double length = check.arrises[static_cast<unsigned>(arris - 1)];
        const Ends ends = ends_on_mesh(mesh, arris_at(arris, timber.sides));
        if (length <= 0 || ends.to < ends.from) continue;
        ++compared;
        if (libm::fabs(ends.to - ends.from - length) > 1e-6)
          FAIL("plan " << n << ' ' << timber.mark << " arris " << arris << ": " << length << " for "
                       << ends.to - ends.from);
      }
    }
  }
  CHECK(compared > 1000);
}

TEST_CASE("over random frames every sheet has its steps once and no figure that is not a number", "[marks]") {
  Random random(5303);
  for (int n = 0; n < property_cases() / 2500; ++n) {
    const auto frame = solve_frame(random_plan(random));
    if (!frame) continue;
    for (int i = 0; i < static_cast<int>(frame->timbers.size()); ++i) {
      const Timber& timber = frame->timbers[static_cast<std::size_t>(i)];
      const Sheet sheet = solve_sheet(*frame, i, table_saw());
      bool good = sheet.steps.size() == timber.cuts.size() + timber.features.size();
      for (const SawCut& cut : sheet.saw_cuts)
        good = good && is_number(cut.blade.swing) && is_number(cut.blade.tilt) && is_number(cut.depth) &&
               is_number(cut.from);
      for (const Face face : kFaces) {
        const FaceMarks marks = face_marks(timber, sheet, face);
        const auto on_it = [&](Vec2 p) {
          return p.x > -1e-6 && p.x < marks.length + 1e-6 && p.y > -1e-6 && p.y < marks.width + 1e-6;
        };
        for (const FaceMark& mark : marks.marks)
          for (const FaceLine& l : mark.lines) good = good && on_it(l.a) && on_it(l.b);
      }
      if (!good) FAIL("plan " << n << ' ' << timber.mark);
    }
  }
}
