#include "raising/lifting/sling.h"

#include <algorithm>

namespace bentbook {
namespace {

constexpr double kSlack = 1e-9;  ///< of the weight: a leg's pull below it is none

struct Plumb {
  Vec3 cg, up;
  [[nodiscard]] double height(Vec3 p) const { return dot(p - cg, up); }
  [[nodiscard]] Vec3 level(Vec3 p) const { return (p - cg) - height(p) * up; }
};

/// Pulls of three legs, from the lever of each about the line through the hook's foot and another's point: level parts
/// have to cancel. Nothing where they lie on one line.
std::optional<std::vector<double>> three_legs(std::span<const Vec3> level, std::span<const double> rise, Vec3 up,
                                              double weight) {
  // Upright parts v_i with Σ v_i = W, Σ v_i level_i / rise_i = 0: v_i as the areas opposite to it.
  Vec3 flat[3];
  for (std::size_t i = 0; i < 3; ++i) flat[i] = (1 / rise[i]) * level[i];
  double area[3], sum = 0;
  for (std::size_t i = 0; i < 3; ++i) {
    area[i] = dot(up, cross(flat[(i + 1) % 3], flat[(i + 2) % 3]));
    sum += area[i];
  }
  const double size = std::max({norm(flat[0]), norm(flat[1]), norm(flat[2]), 1e-12});
  if (libm::fabs(sum) < 1e-9 * size * size) return std::nullopt;
  std::vector<double> upright;
  for (const double a : area) upright.push_back(weight * a / sum);
  return upright;
}

/// Upright parts of two legs by their level distances on either side of the plumb line.
std::optional<std::vector<double>> two_legs(std::span<const Vec3> level, std::span<const double> rise, double weight) {
  const Vec3 a = (1 / rise[0]) * level[0], b = (1 / rise[1]) * level[1];
  const Vec3 between = b - a;
  const double length = norm(between);
  if (length < 1e-9) return std::vector<double>{weight / 2, weight / 2};
  const Vec3 along = (1 / length) * between;
  const double share = -dot(a, along) / length;
  return std::vector<double>{weight * (1 - share), weight * share};
}

/// The most that each leg's upright part can be.
std::optional<std::vector<double>> upright_parts(std::span<const Vec3> level, std::span<const double> rise, Vec3 up,
                                                 double weight) {
  const double least = -kSlack * weight;
  const auto pulls = [&](const std::vector<double>& v) {
    return std::all_of(v.begin(), v.end(), [&](double part) { return part >= least; });
  };
  if (level.size() == 1) return std::vector<double>{weight};
  if (level.size() == 2) {
    auto v = two_legs(level, rise, weight);
    return v && pulls(*v) ? v : std::nullopt;
  }
  if (level.size() == 3) {
    auto v = three_legs(level, rise, up, weight);
    return v && pulls(*v) ? v : std::nullopt;
  }
  std::vector<double> most(4, 0);
  bool any = false;
  for (std::size_t slack = 0; slack < 4; ++slack) {
    std::vector<Vec3> l;
    std::vector<double> r;
    for (std::size_t i = 0; i < 4; ++i)
      if (i != slack) l.push_back(level[i]), r.push_back(rise[i]);
    const auto v = three_legs(l, r, up, weight);
    if (!v || !pulls(*v)) continue;
    any = true;
    for (std::size_t i = 0, k = 0; i < 4; ++i)
      if (i != slack) most[i] = std::max(most[i], (*v)[k++]);
  }
  return any ? std::optional(most) : std::nullopt;
}

std::optional<Hang> hang_at(std::span<const Vec3> points, const Plumb& plumb, double weight, double hook_height) {
  Hang hang;
  hang.hook = plumb.cg + hook_height * plumb.up;
  hang.above_cg = plumb.height(points[0]);
  std::vector<Vec3> level;
  std::vector<double> rise;
  for (const Vec3 p : points) {
    level.push_back(plumb.level(p));
    rise.push_back(hook_height - plumb.height(p));
    if (!(rise.back() > 1e-9)) return std::nullopt;
    hang.above_cg = std::min(hang.above_cg, plumb.height(p));
  }
  const auto upright = upright_parts(level, rise, plumb.up, weight);
  if (!upright) return std::nullopt;
  for (std::size_t i = 0; i < points.size(); ++i) {
    SlingLeg leg;
    leg.point = points[i];
    leg.length = norm(hang.hook - points[i]);
    leg.from_level = libm::atan2(rise[i], norm(level[i])) / libm::kDegree;
    leg.tension = std::max(0.0, (*upright)[i]) * leg.length / rise[i];
    hang.least_angle = std::min(hang.least_angle, leg.from_level);
    hang.most_tension = std::max(hang.most_tension, leg.tension);
    hang.legs.push_back(leg);
  }
  if (points.size() == 1) hang.lean = libm::atan2(norm(level[0]), std::max(hang.above_cg, 1e-9)) / libm::kDegree;
  if (points.size() == 2 && norm(level[1] - level[0]) > 1e-9) {
    const Vec3 off = cross(unit(level[1] - level[0]), level[0]);
    hang.lean = libm::atan2(norm(off), std::max(hang.above_cg, 1e-9)) / libm::kDegree;
  }
  return hang;
}

bool fair(std::span<const Vec3> points, double weight) { return !points.empty() && points.size() <= 4 && weight >= 0; }

}  // namespace

double sling_factor(double degrees_from_level) {
  return degrees_from_level > 0 ? 1 / libm::sin(degrees_from_level * libm::kDegree) : 0;
}

std::optional<Hang> hang_on_legs(std::span<const Vec3> points, Vec3 cg, Vec3 up, double weight, double longest) {
  if (!fair(points, weight)) return std::nullopt;
  const Plumb plumb{cg, unit(up)};
  std::optional<double> hook;
  for (const Vec3 p : points) {
    const double level = norm(plumb.level(p));
    if (!(longest > level)) return std::nullopt;
    const double height = plumb.height(p) + libm::sqrt(longest * longest - level * level);
    hook = hook ? std::min(*hook, height) : height;
  }
  return hang_at(points, plumb, weight, *hook);
}

std::optional<Hang> hang_at_angle(std::span<const Vec3> points, Vec3 cg, Vec3 up, double weight,
                                  double degrees_from_level) {
  if (!fair(points, weight) || !(degrees_from_level > 0 && degrees_from_level < 90)) return std::nullopt;
  const Plumb plumb{cg, unit(up)};
  const double slope = libm::tan(degrees_from_level * libm::kDegree);
  double hook = plumb.height(points[0]) + 1;
  for (const Vec3 p : points) hook = std::max(hook, plumb.height(p) + slope * norm(plumb.level(p)));
  return hang_at(points, plumb, weight, hook);
}

}  // namespace bentbook
