// What a tool is set to at a joint is measured from the reference face of the timber that it works on.

#include <algorithm>
#include <catch_amalgamated.hpp>

#include "frame/placing/solve_frame.h"
#include "plans.h"
#include "words/frame_words.h"

using namespace bentbook;
using Catch::Approx;

namespace {

/// Whichever faces are the references of all timbers.
FramePlan with_references(FramePlan plan, bool top, bool near, Length rough) {
  const auto frame = solve_frame(plan);
  if (!frame) return plan;
  plan.overrides.clear();
  for (const Timber& t : frame->timbers) {
    Override o;
    o.mark = t.mark;
    o.has_wood = true;
    o.wood = t.wood;
    o.wood.top_is_reference = top;
    o.wood.near_is_reference = near;
    o.wood.actual.breadth = o.wood.actual.breadth + rough;
    o.wood.actual.depth = o.wood.actual.depth + rough;
    plan.overrides.push_back(o);
  }
  return plan;
}

/// The feature that a fence is for: the joint's slot, mortise, tenon, tongue or fork.
const Feature* fenced(const Timber& timber, int joint) {
  for (const Feature& f : timber.features)
    if (f.joint == joint &&
        (f.kind == FeatureKind::kSlot || f.kind == FeatureKind::kMortise || f.kind == FeatureKind::kTenon ||
         f.kind == FeatureKind::kTongue || f.kind == FeatureKind::kFork))
      return &f;
  return nullptr;
}

double near_side(const Timber& t, const Feature& f) {
  if (f.face == Face::kTop || f.face == Face::kBottom)
    return t.wood.near_is_reference ? f.across_lo - t.sides.y_lo : t.sides.y_hi - f.across_hi;
  return t.wood.top_is_reference ? t.sides.z_hi - f.across_hi : f.across_lo - t.sides.z_lo;
}

Face side_reference(const Timber& t, const Feature& f) {
  if (f.face == Face::kTop || f.face == Face::kBottom) return t.wood.near_is_reference ? Face::kNear : Face::kFar;
  return t.wood.top_is_reference ? Face::kTop : Face::kBottom;
}

}  // namespace

TEST_CASE("each fence is gauged from its timber's reference face", "[joint]") {
  Random random(1011);
  int fences = 0, others = 0;
  for (int n = 0; n < 40; ++n) {
    FramePlan plan = random_plan(random);
    draw_half_dovetails(random, plan);
    const bool top = chance(random, 50), near = chance(random, 50);
    const auto frame = solve_frame(with_references(plan, top, near, Length::inches(random.whole(-2, 2), 8)));
    if (!frame) continue;
    for (std::size_t j = 0; j < frame->joints.size(); ++j)
      for (const ToolNumber& tool : frame->joints[j].tools) {
        const Timber& t = frame->timbers[static_cast<std::size_t>(tool.timber)];
        const Feature* f = fenced(t, static_cast<int>(j));
        if (f == nullptr) continue;
        INFO(t.mark << " joint " << j << " tool " << static_cast<int>(tool.setting));
        const double middle = near_side(t, *f) + (f->across_hi - f->across_lo) / 2;
        if (tool.setting == ToolSetting::kFence) {
          ++fences;
          CHECK(tool.value == Approx(near_side(t, *f)).margin(1e-9));
        } else if (tool.setting == ToolSetting::kJigOffset) {
          CHECK(tool.value == Approx(middle).margin(1e-9));
        } else if (tool.setting == ToolSetting::kShimToCentre) {
          const bool y = f->face == Face::kTop || f->face == Face::kBottom;
          const double plan_size = (y ? t.wood.design.breadth : t.wood.design.depth).in();
          CHECK(plan_size / 2 - tool.value == Approx(middle).margin(1e-9));
        } else if (tool.setting == ToolSetting::kSlotWidth) {
          CHECK(tool.value == Approx(f->across_hi - f->across_lo).margin(1e-9));
          continue;
        } else {
          continue;
        }
        ++others;
        CHECK(tool.from == side_reference(t, *f));
      }
  }
  CHECK(fences > 2000);
  CHECK(others > fences);
}

TEST_CASE("a pin is driven under the member's face, not the receiver's", "[joint]") {
  FramePlan plan;
  KnifePlate plate;
  plate.pins.plug = Length::inches(1);
  plate.base_thickness = Length::inches(1, 2);
  plate.let_in = true;
  plan.joints[static_cast<std::size_t>(Meeting::kTiePost)] = plate;
  const auto frame = solve_frame(plan);
  REQUIRE(frame);
  int plugs = 0;
  for (const Joint& joint : frame->joints) {
    std::vector<std::pair<ToolSetting, int>> seen;
    for (const ToolNumber& tool : joint.tools) {
      INFO("two alike at one joint");
      CHECK(std::find(seen.begin(), seen.end(), std::pair(tool.setting, tool.timber)) == seen.end());
      seen.emplace_back(tool.setting, tool.timber);
      if (tool.setting != ToolSetting::kPlugDepth) continue;
      ++plugs;
      CHECK(tool.timber == joint.member);
      CHECK(tool.value == 1);
    }
  }
  CHECK(plugs > 0);
}

TEST_CASE("what a tool is set to is said to a 64th", "[joint]") {
  Voice voice;
  voice.marks = Marks::kAscii;
  CHECK(say_inches(3 + 27.0 / 32, voice) != say_tool_inches(3 + 27.0 / 32, voice));
  CHECK(say_tool_inches(3 + 27.0 / 32, voice) == "3-27/32\"");
  voice.lengths.form = LengthForm::kMm;
  voice.lengths.decimals = 0;
  CHECK(say_tool_inches(0.3125, voice) == "~ 7.9 mm");
}
