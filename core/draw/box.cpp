#include "draw/box.h"

#include <algorithm>

#include "numeric/libm.h"

namespace bentbook::draw {
namespace {

struct Interval {
  double low = 1e300, high = -1e300;
};

Interval shadow(const std::array<Point, 4>& points, double x, double y) {
  Interval s;
  for (const Point& p : points) {
    const double v = p.x * x + p.y * y;
    s.low = std::min(s.low, v);
    s.high = std::max(s.high, v);
  }
  return s;
}

bool apart(const std::array<Point, 4>& a, const std::array<Point, 4>& b, double x, double y) {
  constexpr double kTouch = 1e-9;
  const Interval sa = shadow(a, x, y), sb = shadow(b, x, y);
  return sa.high <= sb.low + kTouch || sb.high <= sa.low + kTouch;
}

}  // namespace

void Bounds::add(Point p) {
  left = std::min(left, p.x);
  right = std::max(right, p.x);
  top = std::min(top, p.y);
  bottom = std::max(bottom, p.y);
}

void Bounds::add(const Box& box) {
  for (const Point& p : corners(box)) add(p);
}

std::array<Point, 4> corners(const Box& box) {
  const double c = box.angle == 0 ? 1 : libm::cos(box.angle), s = box.angle == 0 ? 0 : libm::sin(box.angle);
  const auto corner = [&](double x, double y) {
    return Point{box.centre.x + x * c - y * s, box.centre.y + x * s + y * c};
  };
  const double w = box.w / 2, h = box.h / 2;
  return {corner(-w, -h), corner(w, -h), corner(w, h), corner(-w, h)};
}

Box upright(const Box& box) {
  if (box.angle == 0) return box;
  const double c = libm::fabs(libm::cos(box.angle)), s = libm::fabs(libm::sin(box.angle));
  return {box.centre, box.w * c + box.h * s, box.w * s + box.h * c, 0};
}

bool overlap(const Box& a, const Box& b) {
  // Far apart is the usual answer: ask the circles around them first.
  const double dx = a.centre.x - b.centre.x, dy = a.centre.y - b.centre.y;
  const double reach = a.w + a.h + b.w + b.h;
  if (dx * dx + dy * dy > reach * reach / 4) return false;
  const auto ca = corners(a), cb = corners(b);
  for (const double angle : {a.angle, b.angle}) {
    const double c = libm::cos(angle), s = libm::sin(angle);
    if (apart(ca, cb, c, s) || apart(ca, cb, -s, c)) return false;
  }
  return true;
}

std::optional<Stretch> stretch_inside(const Box& box, Point a, Point b) {
  const double reach = (box.w + box.h) / 2;
  if (std::max(a.x, b.x) < box.centre.x - reach || std::min(a.x, b.x) > box.centre.x + reach ||
      std::max(a.y, b.y) < box.centre.y - reach || std::min(a.y, b.y) > box.centre.y + reach)
    return std::nullopt;
  // In the box's own axes; then clip the segment to it.
  const double c = libm::cos(box.angle), s = libm::sin(box.angle);
  const auto local = [&](Point p) {
    const double x = p.x - box.centre.x, y = p.y - box.centre.y;
    return Point{x * c + y * s, y * c - x * s};
  };
  const Point p = local(a), q = local(b);
  Stretch in;
  const auto clip = [&](double start, double step, double half) {
    if (step == 0) return start > -half && start < half;
    const double t0 = (-half - start) / step, t1 = (half - start) / step;
    in.from = std::max(in.from, std::min(t0, t1));
    in.to = std::min(in.to, std::max(t0, t1));
    return in.from < in.to;
  };
  if (!clip(p.x, q.x - p.x, box.w / 2) || !clip(p.y, q.y - p.y, box.h / 2)) return std::nullopt;
  return in;
}

bool crosses(const Box& box, Point a, Point b) { return stretch_inside(box, a, b).has_value(); }

std::optional<Box> box_beside(Point at, Size size, const Bounds& sheet, std::span<const Box> keep, double farthest) {
  constexpr double kStep = 6;
  constexpr int kWays = 24;  // of looking about, at each distance
  const auto free = [&](const Box& box) {
    return box.centre.x - box.w / 2 >= sheet.left && box.centre.x + box.w / 2 <= sheet.right &&
           box.centre.y - box.h / 2 >= sheet.top && box.centre.y + box.h / 2 <= sheet.bottom &&
           std::none_of(keep.begin(), keep.end(), [&](const Box& k) { return overlap(k, box); });
  };
  for (double far = 0; far <= farthest; far += kStep)
    for (int way = 0; way < (far == 0 ? 1 : kWays); ++way) {
      // Straight up first, then both sides of it in turn.
      const double turn = 2 * libm::kPi / kWays * ((way + 1) / 2) * (way % 2 == 0 ? 1 : -1);
      const Box box{{at.x + far * libm::sin(turn), at.y - far * libm::cos(turn)}, size.w, size.h, 0};
      if (free(box)) return box;
    }
  return std::nullopt;
}

Box grown(const Box& box, double by) { return {box.centre, box.w + 2 * by, box.h + 2 * by, box.angle}; }

}  // namespace bentbook::draw
