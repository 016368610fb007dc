#include <catch_amalgamated.hpp>

#include "draw/layout.h"
#include "numeric/libm.h"
#include "random.h"

using namespace bentbook;
using namespace bentbook::draw;

namespace {

struct Sheet {
  Drawing drawing;
  std::vector<Size> sizes;
};

Meaning meaning(Random& random) { return static_cast<Meaning>(random.whole(0, 2)); }

void dimension(Sheet& sheet, Random& random, Point a, Point b, double offset, Point along) {
  sheet.drawing.dimensions.push_back({a, b, offset, along, "d", meaning(random)});
  sheet.sizes.push_back({random.real(14, 78), 17});
}

/// A roof from the gable: span, run, overhangs, slope lengths, rises, pitches, notes.
Sheet roof(Random& random) {
  Sheet s;
  const double span = random.real(60, 700), ridge = span * random.real(0.3, 0.7);
  const double rise = span * random.real(0.1, 0.9), over = random.real(0, 30);
  s.drawing.polygons.push_back({{{-over, -over * 0.6}, {ridge, rise}, {span + over, -over * 0.6}, {ridge, rise - 8}}});
  dimension(s, random, {0, 0}, {span, 0}, -2, {1, 0});
  dimension(s, random, {0, 0}, {ridge, 0}, -1, {1, 0});
  dimension(s, random, {-over, 0}, {0, 0}, -1, {1, 0});
  dimension(s, random, {span, 0}, {span + over, 0}, -1, {1, 0});
  dimension(s, random, {0, 0}, {ridge, rise}, 1, {});
  dimension(s, random, {ridge, rise}, {span, 0}, 1, {});
  dimension(s, random, {span, 0}, {span, rise}, -1.5, {0, 1});
  const double pitch = libm::atan2(rise, ridge) * 180 / libm::kPi;
  s.drawing.angles.push_back({{0, 0}, 0, pitch, random.real(1.5, 2.5), "a", meaning(random)});
  s.sizes.push_back({random.real(30, 60), 17});
  s.drawing.notes.push_back({{ridge, rise + 4}, "n", meaning(random)});
  s.sizes.push_back({random.real(30, 90), 17});
  return s;
}

/// Marks along a timber's edge, crowded at places: each from the same end, or one after the other.
Sheet marks(Random& random) {
  Sheet s;
  const double length = random.real(40, 300), depth = random.real(5, 12);
  s.drawing.polygons.push_back({{{0, 0}, {length, 0}, {length, depth}, {0, depth}}});
  const int count = static_cast<int>(random.whole(2, 5));
  double at = 0;
  for (int i = 0; i < count; ++i) {
    const double next = at + random.real(0.2, 1) * (length - at) * 0.6;
    dimension(s, random, {at, depth}, {next, depth}, 1, {1, 0});
    if (random.whole(0, 1) == 0) dimension(s, random, {0, 0}, {next, 0}, -1 - i, {1, 0});
    at = next;
  }
  dimension(s, random, {0, 0}, {0, depth}, 1, {0, 1});
  return s;
}

/// The foot on its plate: small measures close together, at an angle.
Sheet foot(Random& random) {
  Sheet s;
  const double seat = random.real(1, 6), slope = random.real(0.2, 1.4), depth = random.real(4, 12);
  const double drop = seat * slope;
  s.drawing.polygons.push_back({{{-20, -20 * slope},
                                 {30, 30 * slope},
                                 {30, 30 * slope - depth},
                                 {seat, 0},
                                 {0, 0},
                                 {0, -drop},
                                 {-20, -20 * slope - depth}}});
  dimension(s, random, {0, 0}, {seat, 0}, -1, {1, 0});
  dimension(s, random, {0, 0}, {seat + 2, 0}, -2, {1, 0});
  dimension(s, random, {0, 0}, {0, depth}, 1, {0, 1});
  dimension(s, random, {10, 10 * slope}, {10 + slope * 3, 10 * slope - 3}, 0, {});
  dimension(s, random, {-20, 0}, {0, 0}, -2, {1, 0});
  s.drawing.angles.push_back({{seat, 0}, 0, libm::atan(slope) * 180 / libm::kPi, 1.5, "a", meaning(random)});
  s.sizes.push_back({random.real(30, 60), 17});
  return s;
}

Sheet any_sheet(Random& random) {
  switch (random.whole(0, 2)) {
    case 0:
      return roof(random);
    case 1:
      return marks(random);
    default:
      return foot(random);
  }
}

bool inside(const Box& box, Size rect) {
  constexpr double kSlack = 0.02;
  for (const Point& p : corners(box))
    if (p.x < -kSlack || p.y < -kSlack || p.x > rect.w + kSlack || p.y > rect.h + kSlack) return false;
  return true;
}

}  // namespace

TEST_CASE("no figure lies on another, and all lie inside", "[draw]") {
  Random random(20240611);
  for (int i = 0; i < property_cases() / 100; ++i) {
    const Sheet sheet = any_sheet(random);
    LayoutOptions options;
    options.rect = {random.real(304, 800), random.real(260, 600)};
    const Layout layout = lay_out(sheet.drawing, sheet.sizes, options);
    REQUIRE(layout.figures.size() == sheet.sizes.size());
    for (std::size_t a = 0; a < layout.figures.size(); ++a) {
      CAPTURE(i, a, options.rect.w, options.rect.h, layout.figures[a].box.centre.x, layout.figures[a].box.centre.y);
      REQUIRE(inside(layout.figures[a].box, options.rect));
      REQUIRE(inside(layout.figures[a].target, options.rect));
      for (std::size_t b = a + 1; b < layout.figures.size(); ++b) {
        CAPTURE(b);
        REQUIRE_FALSE(overlap(layout.figures[a].box, layout.figures[b].box));
      }
    }
  }
}

TEST_CASE("the thing drawn lies inside too, at one scale", "[draw]") {
  Random random(7);
  for (int i = 0; i < property_cases() / 200; ++i) {
    const Sheet sheet = any_sheet(random);
    LayoutOptions options;
    options.rect = {random.real(304, 800), random.real(300, 600)};
    const Layout layout = lay_out(sheet.drawing, sheet.sizes, options);
    for (const Polygon& polygon : sheet.drawing.polygons)
      for (const Point& p : polygon.points) REQUIRE(inside({layout.to_px(p), 0, 0, 0}, options.rect));
    REQUIRE(layout.scale > 0);
  }
}

TEST_CASE("boxes overlap as a grid of points says", "[draw]") {
  Random random(99);
  for (int i = 0; i < property_cases() / 100; ++i) {
    const auto box = [&] {
      return Box{{random.real(-5, 5), random.real(-5, 5)}, random.real(1, 8), random.real(1, 8), random.real(-3, 3)};
    };
    const Box a = box(), b = box();
    const auto has = [](const Box& of, Point p) {
      const double c = libm::cos(of.angle), s = libm::sin(of.angle), x = p.x - of.centre.x, y = p.y - of.centre.y;
      return libm::fabs(x * c + y * s) < of.w / 2 && libm::fabs(y * c - x * s) < of.h / 2;
    };
    bool common = false;
    for (double x = -12; x <= 12 && !common; x += 0.25)
      for (double y = -12; y <= 12 && !common; y += 0.25) common = has(a, {x, y}) && has(b, {x, y});
    if (common) REQUIRE(overlap(a, b));
    if (!overlap(a, b)) REQUIRE_FALSE(common);
    REQUIRE(overlap(a, b) == overlap(b, a));
  }
}
