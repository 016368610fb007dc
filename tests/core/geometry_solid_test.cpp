#include <catch_amalgamated.hpp>
#include <cmath>
#include <map>

#include "geometry/cell.h"
#include "geometry/mesh.h"
#include "geometry/solid.h"
#include "random.h"

using namespace bentbook;
using Catch::Approx;

namespace {

Solid blank(double length, double breadth, double depth) {
  return {{{0, -breadth / 2, -depth / 2}, {length, breadth / 2, depth / 2}}, {}, {}};
}

double mesh_volume(const Mesh& mesh) {
  double volume = 0;
  for (const auto& t : mesh.triangles) {
    const Vec3 a = mesh.corners[static_cast<std::size_t>(t.a)], b = mesh.corners[static_cast<std::size_t>(t.b)],
               c = mesh.corners[static_cast<std::size_t>(t.c)];
    volume += dot(a, cross(b, c)) / 6;
  }
  return volume;
}

/// Every directed edge has its opposite.
bool closed(const Mesh& mesh) {
  std::map<std::pair<int, int>, int> count;
  for (const auto& t : mesh.triangles)
    for (const auto& [a, b] : {std::pair{t.a, t.b}, {t.b, t.c}, {t.c, t.a}}) ++count[{a, b}];
  for (const auto& [edge, n] : count) {
    const auto back = count.find({edge.second, edge.first});
    if (back == count.end() || back->second != n) return false;
  }
  return !count.empty();
}

}  // namespace

// Source: solid geometry (prism, wedge).
TEST_CASE("a blank cut plumb at both ends is a prism and its volume", "[solid]") {
  Solid s = blank(100, 6, 8);
  CHECK(volume_of(s).volume == Approx(4800).epsilon(1e-14));
  // 45° at end B: a wedge of half the last 8 in goes.
  const double r = std::sqrt(0.5);
  s.cuts.push_back({{r, 0, r}, (100 - 4) * r});
  const VolumeFacts f = volume_of(s);
  CHECK(f.volume == Approx(4800 - 6 * 8 * 8 / 2.0).epsilon(1e-13));
  // Centroid by the wedge's own third point.
  CHECK(f.centroid.x == Approx((4800 * 50 - 192 * (100 - 8 / 3.0)) / (4800 - 192)).epsilon(1e-13));
  CHECK(f.centroid.z == Approx(-192 * (8 / 2.0 - 8 / 3.0) / (4800 - 192)).epsilon(1e-12));
}

// Source: area of a circle.
TEST_CASE("a round hole takes its circle's area", "[solid]") {
  Solid s = blank(20, 6, 8);
  s.pockets.push_back(hole_pocket(Axis::kY, {10, 0}, 1.5, -10, 10));
  CHECK(volume_of(s).volume == Approx(960 - 6 * std::acos(-1.0) * 0.75 * 0.75).epsilon(1e-13));
}

TEST_CASE("pockets that overlap are counted once", "[solid]") {
  Solid s = blank(20, 6, 8);
  s.pockets.push_back(box_pocket(Axis::kY, {4, -1, 0}, {8, 1, 9}));
  s.pockets.push_back(box_pocket(Axis::kZ, {6, -9, 2}, {10, 9, 9}));
  s.pockets.push_back(box_pocket(Axis::kX, {5, -0.5, 1}, {7, 0.5, 5}));
  // Counted by hand: 4·2·4 + 4·6·2 − common 2·2·2; the third lies within them but for nothing.
  CHECK(volume_of(s).volume == Approx(960 - (32 + 48 - 8)).epsilon(1e-13));
  // A hole through all of it takes only what wood is left on its way.
  s.pockets.push_back(hole_pocket(Axis::kY, {7, 3}, 1, -9, 9));
  CHECK(volume_of(s).volume == Approx(960 - 72).epsilon(1e-13));
  s.pockets.push_back(hole_pocket(Axis::kY, {5, 1.5}, 1, -9, 9));
  CHECK(volume_of(s).volume == Approx(960 - 72 - 4 * std::acos(-1.0) / 4).epsilon(1e-13));
}

TEST_CASE("a body without a word of wood left has no volume", "[solid]") {
  Solid s = blank(20, 6, 8);
  s.cuts.push_back({{1, 0, 0}, -1});
  CHECK(volume_of(s).volume == 0);
  CHECK(mesh_of(s).triangles.empty());
}

TEST_CASE("two placed blanks share the room that they share", "[solid]") {
  const Solid a = blank(20, 6, 8), b = blank(20, 6, 8);
  Placement away;
  away.origin = {15, 1, 2};
  CHECK(shared_volume(a, {}, b, away) == Approx(5 * 5 * 6).epsilon(1e-13));
  away.origin = {20, 0, 0};
  CHECK(shared_volume(a, {}, b, away) == 0);
  // Across each other: 6 × 6 in plan, 8 high.
  const Placement across{{10, -10, 0}, {0, 1, 0}, {-1, 0, 0}, {0, 0, 1}};
  CHECK(shared_volume(a, {}, b, across) == Approx(6 * 6 * 8).epsilon(1e-13));
}

TEST_CASE("the mesh is closed and holds the volume", "[solid]") {
  Random random(31);
  for (int i = 0; i < 300; ++i) {
    Solid s = blank(random.real(20, 60), random.real(4, 10), random.real(4, 12));
    if (i % 3 != 0) {
      const double a = random.real(-0.8, 0.8);
      s.cuts.push_back({{std::cos(a), 0, std::sin(a)}, (s.blank.hi.x - 6) * std::cos(a)});
    }
    // Whole inches now and then, so that faces come to lie in one plane.
    const auto measure = [&](double lo, double hi) {
      const double v = random.real(lo, hi);
      return i % 2 == 0 ? std::floor(v) : v;
    };
    for (int k = static_cast<int>(random.whole(0, 5)); k > 0; --k) {
      const double x = measure(1, 14), y = measure(-4, 2), z = measure(-5, 3);
      const Axis axis = static_cast<Axis>(random.whole(0, 2));
      if (k % 3 == 0)
        s.pockets.push_back(hole_pocket(axis == Axis::kX ? Axis::kY : axis, {x, z / 2}, 1, -20, 20));
      else
        s.pockets.push_back(box_pocket(axis, {x, y, z}, {x + measure(1, 6), y + measure(1, 6), z + measure(1, 9)}));
    }
    const Mesh mesh = mesh_of(s);
    const double volume = volume_of(s).volume;
    INFO(i);
    REQUIRE(closed(mesh));
    REQUIRE(mesh_volume(mesh) == Approx(volume).epsilon(1e-6).margin(1e-5));
  }
}
