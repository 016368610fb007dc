#include <catch_amalgamated.hpp>

#include "draw/box.h"
#include "draw/fill.h"
#include "draw/layout.h"
#include "numeric/libm.h"

using namespace bentbook;
using namespace bentbook::draw;

namespace {

// A bird's mouth's outline: not convex.
const std::vector<Point> kNotched{{0, 0}, {100, 0}, {100, 60}, {70, 60}, {70, 30}, {30, 50}, {0, 60}};

/// Source: the shoelace formula.
double area(const std::vector<Point>& p) {
  double sum = 0;
  for (std::size_t i = 0; i < p.size(); ++i) {
    const Point &a = p[i], &b = p[(i + 1) % p.size()];
    sum += a.x * b.y - b.x * a.y;
  }
  return libm::fabs(sum) / 2;
}

}  // namespace

TEST_CASE("hatch strokes cover a polygon's area, both ways", "[draw]") {
  for (const bool down : {false, true}) {
    double length = 0;
    for (const Segment& s : hatch(kNotched, 0.5, down)) {
      length += libm::hypot(s.b.x - s.a.x, s.b.y - s.a.y);
      REQUIRE(libm::fabs(libm::fabs(s.b.x - s.a.x) - libm::fabs(s.b.y - s.a.y)) < 1e-9);
    }
    REQUIRE(length * 0.5 == Catch::Approx(area(kNotched)).epsilon(0.01));
  }
}

TEST_CASE("triangles of a notched polygon have its area", "[draw]") {
  std::vector<Point> polygon = kNotched;
  for (int sense = 0; sense < 2; ++sense) {
    const std::vector<std::uint16_t> t = triangles(polygon);
    REQUIRE(t.size() == 3 * (polygon.size() - 2));
    double sum = 0;
    for (std::size_t i = 0; i < t.size(); i += 3) sum += area({polygon[t[i]], polygon[t[i + 1]], polygon[t[i + 2]]});
    REQUIRE(sum == Catch::Approx(area(polygon)));
    std::reverse(polygon.begin(), polygon.end());
  }
}

TEST_CASE("nothing to fill", "[draw]") {
  REQUIRE(hatch(std::vector<Point>{{0, 0}, {1, 1}}, 4, false).empty());
  REQUIRE(hatch(kNotched, 0, false).empty());
  REQUIRE(triangles(std::vector<Point>{{0, 0}, {1, 1}}).empty());
}

TEST_CASE("an odd drawing still gets a layout", "[draw]") {
  LayoutOptions options;
  options.rect = {300, 200};
  REQUIRE(lay_out({}, {}, options).figures.empty());
  Drawing drawing;
  const double bad = 0.0 / libm::floor(0.5);
  drawing.lines.push_back({{bad, 0}, {1, 1}, Stroke::kThin});
  drawing.dimensions.push_back({{3, 3}, {3, 3}, 1, {}, "same", Meaning::kGiven});
  drawing.dimensions.push_back({{bad, 3}, {3, 3}, 1, {}, "nan", Meaning::kGiven});
  const std::vector<Size> sizes(2, Size{40, 17});
  const Layout layout = lay_out(drawing, sizes, options);
  REQUIRE(layout.figures.size() == 1);
  REQUIRE(layout.figures[0].key == "same");
}

TEST_CASE("a drawing fills its rectangle as far as its figures let it", "[draw]") {
  Drawing drawing;
  drawing.polygons.push_back({{{0, 0}, {144, 96}, {288, 0}}, Stroke::kVisible, Fill::kNone, true});
  drawing.dimensions.push_back({{0, 0}, {288, 0}, -1, {1, 0}, "span", Meaning::kGiven});
  const std::vector<Size> sizes{{25, 17}};
  LayoutOptions options;
  options.rect = {358, 270};
  // 342 px between the paddings, less 4 px past each end of the dimension line.
  REQUIRE(lay_out(drawing, sizes, options).scale * 288 == Catch::Approx(334).epsilon(0.01));
}

TEST_CASE("text stands upright beside its line, whichever way that runs", "[draw]") {
  Drawing drawing;
  drawing.dimensions.push_back({{0, 0}, {0, 100}, 1, {}, "up", Meaning::kFact});
  drawing.dimensions.push_back({{0, 100}, {100, 0}, 1, {}, "slant", Meaning::kFact});
  drawing.dimensions.push_back({{100, 0}, {0, 0}, 1, {}, "left", Meaning::kFact});
  const std::vector<Size> sizes(3, Size{60, 17});
  LayoutOptions options;
  options.rect = {400, 400};
  const Layout layout = lay_out(drawing, sizes, options);
  for (const PlacedFigure& figure : layout.figures) {
    CHECK(figure.box.angle == 0);
    for (const PlacedLine& line : layout.lines) CHECK_FALSE(crosses(figure.box, line.a, line.b));
  }
}

TEST_CASE("what of a line lies in a box is told in shares of its way, turned boxes too", "[draw]") {
  const Box box{{10, 0}, 8, 2, 0};
  const auto in = stretch_inside(box, {0, 0}, {20, 0});
  REQUIRE(in);
  CHECK(in->from == 0.3);
  CHECK(in->to == 0.7);
  CHECK_FALSE(stretch_inside(box, {0, 1}, {20, 1}));  // along its side
  CHECK_FALSE(stretch_inside(box, {0, 0}, {6, 0}));
  const auto turned = stretch_inside({{10, 0}, 8, 2, libm::kPi / 2}, {0, 0}, {20, 0});
  REQUIRE(turned);
  CHECK_THAT(turned->from, Catch::Matchers::WithinAbs(0.45, 1e-12));
  CHECK_THAT(turned->to, Catch::Matchers::WithinAbs(0.55, 1e-12));
  const auto ends_in = stretch_inside(box, {10, 0}, {10, 4});
  REQUIRE(ends_in);
  CHECK(ends_in->from == 0);
  CHECK(ends_in->to == 0.25);
}

TEST_CASE("a word finds the nearest place off what is to be kept free, or none", "[draw]") {
  Bounds sheet;
  sheet.add(Point{0, 0});
  sheet.add(Point{200, 100});
  const Point at{100, 50};
  const auto alone = box_beside(at, {40, 16}, sheet, {}, 100);
  REQUIRE(alone);
  CHECK((alone->centre.x == at.x && alone->centre.y == at.y));
  // A timber that runs level through the point, another word above it.
  const std::vector<Box> keep{{at, 200, 10, 0}, {{100, 30}, 60, 16, 0}};
  const auto off = box_beside(at, {40, 16}, sheet, keep, 100);
  REQUIRE(off);
  for (const Box& k : keep) CHECK_FALSE(overlap(k, *off));
  CHECK(off->centre.y - 8 >= 55);  // below: the nearest side
  CHECK(libm::hypot(off->centre.x - at.x, off->centre.y - at.y) < 13 + 6);
  CHECK_FALSE(box_beside(at, {40, 16}, sheet, std::vector<Box>{{at, 200, 100, 0}}, 100));
}
