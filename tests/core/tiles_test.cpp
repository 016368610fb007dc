#include "paper/tiles.h"

#include <algorithm>
#include <catch_amalgamated.hpp>
#include <random>

#include "numeric/libm.h"
#include "paper/layers_svg.h"
#include "paper/page_part.h"

using namespace bentbook;
using namespace bentbook::paper;
using draw::Point;

namespace {

struct Random {
  std::mt19937 engine;
  explicit Random(unsigned seed) : engine(seed) {}
  double in(double low, double high) { return low + (high - low) * static_cast<double>(engine()) / 4294967296.0; }
};

Page scribble(Random& random, double width, double height) {
  Page page;
  const auto point = [&] { return Point{random.in(0, width), random.in(0, height)}; };
  for (int i = 0; i < 12; ++i) page.lines.push_back({point(), point(), draw::Stroke::kCut, 0});
  for (int i = 0; i < 6; ++i) {
    const double from = random.in(-400, 400);
    page.arcs.push_back({point(), random.in(1, 150), from, from + random.in(1, 360), draw::Stroke::kVisible});
  }
  page.arcs.push_back({point(), random.in(1, 300), 0, 360, draw::Stroke::kVisible});
  return page;
}

double distance(Point p, const PageLine& line) {
  const double dx = line.b.x - line.a.x, dy = line.b.y - line.a.y, square = dx * dx + dy * dy;
  const double t = square > 0 ? std::clamp(((p.x - line.a.x) * dx + (p.y - line.a.y) * dy) / square, 0.0, 1.0) : 0.0;
  return libm::hypot(p.x - line.a.x - t * dx, p.y - line.a.y - t * dy);
}

Point on(const PageArc& arc, double share) { return on_arc(arc, arc.from_deg + share * (arc.to_deg - arc.from_deg)); }

/// Whether an arc of the same circle runs through the point.
bool runs_through(const PageArc& arc, Point p) {
  if (libm::fabs(libm::hypot(p.x - arc.centre.x, p.y - arc.centre.y) - arc.radius) > 1e-7) return false;
  const double deg = libm::atan2(arc.centre.y - p.y, p.x - arc.centre.x) * 180 / libm::kPi;
  for (double at = deg - 1440; at < 1441; at += 360)
    if (at > arc.from_deg - 1e-4 && at < arc.to_deg + 1e-4) return true;
  return false;
}

/// A page's own drawing where it lies in the whole one.
struct Laid {
  Page page;
  Window window;
};
std::vector<Laid> laid_pages(const Page& drawing, const TilePlan& plan) {
  std::vector<Laid> out;
  for (int r = 0; r < plan.rows; ++r)
    for (int c = 0; c < plan.columns; ++c) {
      Laid laid{tile_page(drawing, plan, c, r), plan.window(c, r)};
      move_by(laid.page, laid.window.left - plan.corner.x, laid.window.top - plan.corner.y);
      out.push_back(std::move(laid));
    }
  return out;
}

bool shows_line(const Laid& laid, Point p) {
  return std::any_of(laid.page.lines.begin(), laid.page.lines.end(),
                     [&](const PageLine& l) { return l.stroke == draw::Stroke::kCut && distance(p, l) < 1e-7; });
}
bool shows_arc(const Laid& laid, Point p) {
  return std::any_of(laid.page.arcs.begin(), laid.page.arcs.end(),
                     [&](const PageArc& a) { return a.stroke == draw::Stroke::kVisible && runs_through(a, p); });
}

constexpr TileFrame kFrame{24, 7, 7};

}  // namespace

TEST_CASE("every point of a drawing lies on a page, and on each page whose window has it", "[tiles]") {
  Random random(11);
  for (int round = 0; round < 25; ++round) {
    const double width = random.in(10, 900), height = random.in(10, 900);
    const Page drawing = scribble(random, width, height);
    const TilePlan plan = plan_tiles(round % 2 == 0 ? PageSize::kA4 : PageSize::kLetter, width, height, kFrame);
    const std::vector<Laid> pages = laid_pages(drawing, plan);
    const auto check = [&](Point p, bool line) {
      int seen = 0;
      for (const Laid& laid : pages) {
        const bool shown = line ? shows_line(laid, p) : shows_arc(laid, p);
        seen += shown ? 1 : 0;
        Window inner = laid.window;
        inner = {inner.left + 1e-3, inner.top + 1e-3, inner.right - 1e-3, inner.bottom - 1e-3};
        if (inner.holds(p) && !shown) FAIL("a page lacks a point of its own");
      }
      const bool inside = p.x > 1e-3 && p.y > 1e-3 && p.x < width - 1e-3 && p.y < height - 1e-3;
      if (inside && seen == 0) FAIL("a point is on no page");
    };
    for (int i = 0; i <= 40; ++i) {
      const double t = i / 40.0;
      for (const PageLine& l : drawing.lines) check({l.a.x + t * (l.b.x - l.a.x), l.a.y + t * (l.b.y - l.a.y)}, true);
      for (const PageArc& a : drawing.arcs) check(on(a, t), false);
    }
    SUCCEED();
  }
}

TEST_CASE("nothing of a drawing leaves its page's window", "[tiles]") {
  Random random(12);
  for (int round = 0; round < 25; ++round) {
    const double width = random.in(10, 900), height = random.in(10, 900);
    const TilePlan plan = plan_tiles(PageSize::kA4, width, height, kFrame);
    for (const Laid& laid : laid_pages(scribble(random, width, height), plan)) {
      const Window in{laid.window.left - 1e-7, laid.window.top - 1e-7, laid.window.right + 1e-7,
                      laid.window.bottom + 1e-7};
      for (const PageLine& l : laid.page.lines) REQUIRE((in.holds(l.a) && in.holds(l.b)));
      for (const PageArc& a : laid.page.arcs)
        for (int i = 0; i <= 16; ++i) REQUIRE(in.holds(on(a, i / 16.0)));
      for (const PageText& t : laid.page.texts) {
        const Window box = bounds_of(t);
        REQUIRE((in.holds({box.left, box.top}) && in.holds({box.right, box.bottom})));
      }
    }
  }
}

TEST_CASE("crosses fall on each other where two pages are joined, two or more to a join", "[tiles]") {
  const TilePlan plan = plan_tiles(PageSize::kA4, 500, 700, kFrame);
  REQUIRE(plan.columns > 1);
  REQUIRE(plan.rows > 1);
  const auto crosses = [&](int c, int r) {
    std::vector<Point> out;
    for (const PageArc& a : tile_page({}, plan, c, r).arcs) {
      const Window w = plan.window(c, r);
      out.push_back({a.centre.x - plan.corner.x + w.left, a.centre.y - plan.corner.y + w.top});
    }
    return out;
  };
  for (int r = 0; r < plan.rows; ++r)
    for (int c = 0; c < plan.columns; ++c)
      for (const auto& [dc, dr] : {std::pair{1, 0}, std::pair{0, 1}}) {
        if (c + dc >= plan.columns || r + dr >= plan.rows) continue;
        int shared = 0;
        const std::vector<Point> mine = crosses(c, r), theirs = crosses(c + dc, r + dr);
        for (const Point& a : mine)
          for (const Point& b : theirs) shared += libm::hypot(a.x - b.x, a.y - b.y) < 1e-9 ? 1 : 0;
        CHECK(shared >= 2);
      }
}

TEST_CASE("what goes on one page stands on one, without a join", "[tiles]") {
  const TilePlan plan = plan_tiles(PageSize::kLetter, 230, 120, kFrame);
  CHECK(plan.pages() == 1);
  CHECK(plan.lying);
  const Page page = tile_page({}, plan, 0, 0);
  CHECK(page.lines.empty());
  CHECK(page.texts.empty());
  // A hair more than the window takes a second page.
  CHECK(plan_tiles(PageSize::kLetter, plan.width + 0.001, plan.height, kFrame).pages() == 2);
  CHECK(plan_tiles(PageSize::kLetter, plan.width, plan.height, kFrame).pages() == 1);
}

TEST_CASE("words over a join stand whole on one page", "[tiles]") {
  Random random(13);
  Page drawing;
  for (int i = 0; i < 200; ++i)
    drawing.texts.push_back({{random.in(30, 570), random.in(30, 770)},
                             3.5,
                             i % 2 == 0,
                             static_cast<Align>(i % 3),
                             i % 4 == 0 ? 90.0 : 0.0,
                             "12′ 7 3⁄8″ #" + std::to_string(i)});
  const TilePlan plan = plan_tiles(PageSize::kA4, 600, 800, kFrame);
  const std::vector<Laid> pages = laid_pages(drawing, plan);
  for (const PageText& t : drawing.texts) {
    int found = 0;
    for (const Laid& laid : pages)
      for (const PageText& other : laid.page.texts) {
        if (other.text != t.text) continue;
        ++found;
        const Window box = bounds_of(other), in = laid.window;
        INFO(t.text);
        CHECK((box.left > in.left - 1e-9 && box.right < in.right + 1e-9));
        CHECK((box.top > in.top - 1e-9 && box.bottom < in.bottom + 1e-9));
      }
    CHECK(found >= 1);
  }
}

TEST_CASE("columns are letters and rows are numbers, past Z too", "[tiles]") {
  CHECK(tile_name(0, 0) == "A1");
  CHECK(tile_name(2, 1) == "C2");
  CHECK(tile_name(25, 9) == "Z10");
  CHECK(tile_name(26, 0) == "AA1");
}

TEST_CASE("a drawing's SVG is as large as the drawing, in millimetres, a group a layer", "[tiles]") {
  Page page;
  page.texts.push_back({{10, 20}, 3.5, false, Align::kLeft, 0, "7 3⁄8″ < 8″"});
  const Layer layer{"words", page};
  const std::string svg = layers_svg({&layer, 1}, measure_of(PageSize::kLetter, true), "A & B", "en");
  CHECK(svg.find("width=\"279.4mm\" height=\"215.9mm\" viewBox=\"0 0 279.4 215.9\"") != std::string::npos);
  CHECK(svg.find("<title>A &amp; B</title>") != std::string::npos);
  CHECK(svg.find("&lt; 8″") != std::string::npos);
  CHECK(svg.find("<g id=\"words\">") != std::string::npos);
}
