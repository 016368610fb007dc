#include <catch_amalgamated.hpp>
#include <cmath>
#include <map>

#include "frame/facts.h"
#include "frame/placing/solve_frame.h"
#include "geometry/mesh.h"
#include "plans.h"

using namespace bentbook;

namespace {

bool finite(Vec3 v) { return std::isfinite(v.x) && std::isfinite(v.y) && std::isfinite(v.z); }

/// The first thing of a frame that is not a number, or that lies outside of its timber; nullptr if none.
const char* fault(const Frame& frame) {
  for (const Timber& t : frame.timbers) {
    if (!(std::isfinite(t.length) && t.length > 0) || !finite(t.at.origin) || !finite(t.at.x)) return "placement";
    for (const EndCut& cut : t.cuts)
      if (!finite(cut.plane.normal) || !std::isfinite(cut.plane.offset)) return "cut";
    for (const Pocket& p : t.pockets) {
      if (!std::isfinite(p.from) || !(p.from < p.to)) return "pocket";
      for (const Vec2& c : p.outline)
        if (!std::isfinite(c.x) || !std::isfinite(c.y)) return "outline";
    }
    for (const Feature& f : t.features)
      if (!std::isfinite(f.from) || !std::isfinite(f.to) || !std::isfinite(f.depth) || !std::isfinite(f.across_lo))
        return "feature";
    const TimberFacts facts = facts_of(t);
    if (!(facts.volume >= 0) || !finite(facts.cg) || !std::isfinite(facts.weight_lb)) return "facts";
  }
  for (const ContactFace& c : frame.contacts)
    for (const Vec3& p : c.corners)
      if (!finite(p)) return "contact";
  for (const Joint& j : frame.joints)
    if (!finite(j.where)) return "joint";
  return nullptr;
}

/// Any measure at all, sensible or not.
Length wild(Random& random) {
  switch (random.whole(0, 5)) {
    case 0:
      return {};
    case 1:
      return Length{random.whole(-Length::kLimit, Length::kLimit)};
    case 2:
      return Length::inches(random.whole(-10, 10), 8);
    default:
      return Length::inches(random.whole(0, 400), 1);
  }
}

FramePlan made_wild(Random& random, FramePlan p) {
  Length* const lengths[] = {&p.span,
                             &p.plate_left,
                             &p.plate_right,
                             &p.eave_overhang,
                             &p.gable_overhang,
                             &p.rafter_spacing,
                             &p.purlin_spacing,
                             &p.queen_inset,
                             &p.tie_drop,
                             &p.collar_rise,
                             &p.joist_spacing,
                             &p.brace_leg_post,
                             &p.brace_leg_beam,
                             &p.stock_most,
                             &p.stand_off,
                             &p.sections.post.depth,
                             &p.sections.tie.breadth,
                             &p.sections.plate.depth,
                             &p.sections.common.depth,
                             &p.sections.brace.depth,
                             &p.sections.ridge_beam.breadth,
                             &p.bays[0].width};
  for (int i = static_cast<int>(random.whole(0, 3)); i > 0; --i)
    *lengths[random.whole(0, static_cast<std::int64_t>(std::size(lengths)) - 1)] = wild(random);
  for (int i = static_cast<int>(random.whole(0, 2)); i > 0; --i) {
    JointType& joint = p.joints[static_cast<std::size_t>(random.whole(0, kMeetings - 1))];
    if (auto* tenon = std::get_if<MortiseTenon>(&joint)) {
      tenon->thickness = wild(random);
      tenon->length = wild(random);
      tenon->housing = wild(random);
    } else if (auto* plate = std::get_if<KnifePlate>(&joint)) {
      plate->reach = wild(random);
      plate->thickness = wild(random);
    } else if (auto* mouth = std::get_if<BirdsMouth>(&joint)) {
      mouth->seat = wild(random);
    } else {
      joint = default_joint(static_cast<Meeting>(random.whole(0, kMeetings - 1)));
    }
  }
  if (chance(random, 20)) {
    HandTimber hand;
    hand.mark = chance(random, 50) ? "X-1" : "P-A1";
    hand.length = wild(random);
    hand.a.angle = Angle::degrees(random.whole(-89, 89));
    hand.features.push_back({FeatureKind::kMortise, Face::kTop, wild(random), wild(random), wild(random), wild(random),
                             wild(random), wild(random)});
    hand.placed = chance(random, 50);
    p.added.push_back(hand);
  }
  return p;
}

FramePlan wild_plan(Random& random) { return made_wild(random, random_plan(random)); }

FramePlan wild_hip_plan(Random& random) {
  FramePlan p = made_wild(random, random_hip_plan(random));
  Length* const lengths[] = {&p.hips.hip.depth, &p.hips.hip.breadth, &p.hips.dragon_leg, &p.hips.dragon_tie.breadth};
  for (Length* length : lengths)
    if (chance(random, 15)) *length = wild(random);
  if (chance(random, 20)) p.hips.pitch = Slope::of_angle(Angle::degrees(random.whole(-5, 95)));
  return p;
}

/// Each ends in a frame without a fault or in a refusal that names its field; how many end in a frame.
template <class Draw>
int solved_of(int cases, Random random, Draw draw) {
  int solved = 0;
  for (int i = 0; i < cases; ++i) {
    const auto frame = solve_frame(draw(random));
    if (!frame) {
      if (frame.error().where.empty()) REQUIRE_FALSE(frame.error().where.empty());
      continue;
    }
    ++solved;
    if (const char* what = fault(*frame)) {
      INFO(i);
      REQUIRE(std::string(what).empty());
    }
  }
  return solved;
}

}  // namespace

TEST_CASE("any hip-ended plan ends in a frame or in a refusal that names its field", "[frame][property][hipframe]") {
  const int cases = property_cases() / 500;
  CHECK(solved_of(cases, Random(1807), wild_hip_plan) > cases / 12);
}

TEST_CASE("any plan ends in a frame or in a refusal that names its field", "[frame][property]") {
  const int cases = property_cases() / 250;
  CHECK(solved_of(cases, Random(1906), wild_plan) > cases / 8);
}

TEST_CASE("the same plan gives the same frame", "[frame][property]") {
  Random random(7);
  for (int i = 0; i < 20; ++i) {
    const FramePlan plan = random_plan(random);
    const auto a = solve_frame(plan), b = solve_frame(plan);
    REQUIRE(a.has_value() == b.has_value());
    if (!a) continue;
    REQUIRE(a->timbers.size() == b->timbers.size());
    for (std::size_t t = 0; t < a->timbers.size(); ++t) {
      REQUIRE(a->timbers[t].mark == b->timbers[t].mark);
      REQUIRE(a->timbers[t].length == b->timbers[t].length);
    }
  }
}

TEST_CASE("every timber's surface is closed and holds its volume", "[frame][property]") {
  Random random(77);
  for (int i = 0; i < 12; ++i) {
    const auto frame = solve_frame(random_plan(random));
    if (!frame) continue;
    for (const Timber& t : frame->timbers) {
      const Mesh mesh = mesh_of(solid_of(t));
      std::map<std::pair<int, int>, int> edges;
      double volume = 0;
      for (const auto& tri : mesh.triangles) {
        for (const auto& [a, b] : {std::pair{tri.a, tri.b}, {tri.b, tri.c}, {tri.c, tri.a}}) edges[{a, b}] += 1;
        volume +=
            dot(mesh.corners[static_cast<std::size_t>(tri.a)],
                cross(mesh.corners[static_cast<std::size_t>(tri.b)], mesh.corners[static_cast<std::size_t>(tri.c)])) /
            6;
      }
      bool closed = !edges.empty();
      for (const auto& [edge, n] : edges) {
        const auto back = edges.find({edge.second, edge.first});
        closed = closed && back != edges.end() && back->second == n;
      }
      INFO(i << " " << t.mark);
      REQUIRE(closed);
      REQUIRE(volume == Catch::Approx(facts_of(t).volume).epsilon(1e-6));
    }
  }
}
