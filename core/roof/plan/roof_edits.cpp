#include "roof/plan/roof_edits.h"

#include <algorithm>
#include <charconv>
#include <cstddef>
#include <string_view>
#include <utility>
#include <vector>

#include "numeric/index.h"
#include "roof/plan/dormer_shape.h"
#include "roof/plan/flat.h"

namespace bentbook {
namespace {

/// Sine of an angle below which two walls run along each other.
constexpr double kAlong = 1e-9;
/// Inches: corners nearer to each other are one.
constexpr double kSameCorner = 1e-6;

/// A wall's line without ends.
struct WallLine {
  Vec2 through, along;
  PlanSide side;
  int was = -1;  ///< the side's index
};

std::size_t next_of(const RoofPlan& plan, std::size_t i) { return (i + 1) % plan.sides.size(); }
std::size_t last_of(const RoofPlan& plan, std::size_t i) { return (i + plan.sides.size() - 1) % plan.sides.size(); }
Vec2 corner(const PlanSide& side) { return {side.x.in(), side.y.in()}; }

std::vector<WallLine> lines_of(const RoofPlan& plan) {
  std::vector<WallLine> lines;
  lines.reserve(plan.sides.size());
  for (std::size_t i = 0; i < plan.sides.size(); ++i) {
    const Vec2 from = corner(plan.sides[i]);
    lines.push_back({from, unit(corner(plan.sides[next_of(plan, i)]) - from), plan.sides[i], static_cast<int>(i)});
  }
  return lines;
}

/// Where two lines meet, as a side's corner.
void put_corner(const WallLine& before, WallLine& own) {
  const double turn = cross(before.along, own.along);
  const double far = cross(own.through - before.through, own.along) / turn;
  const Vec2 p = before.through + far * before.along;
  own.side.x = Length::from_inches(p.x);
  own.side.y = Length::from_inches(p.y);
}

/// Walls that go straight on from the one before are one with it.
void join_straight(std::vector<WallLine>& lines) {
  for (std::size_t i = 0; lines.size() > 2 && i < lines.size();) {
    const WallLine& before = lines[(i + lines.size() - 1) % lines.size()];
    if (libm::fabs(cross(before.along, lines[i].along)) >= kAlong) {
      ++i;
      continue;
    }
    lines.erase(lines.begin() + static_cast<std::ptrdiff_t>(i));
    i = 0;
  }
}

/// The wall that has no length left; −1: none.
int vanished(const std::vector<WallLine>& lines) {
  for (std::size_t i = 0; i < lines.size(); ++i)
    if (norm(corner(lines[(i + 1) % lines.size()].side) - corner(lines[i].side)) < kSameCorner)
      return static_cast<int>(i);
  return -1;
}

/// Dormers over walls that are still there keep their place in the building.
void keep_dormers(RoofPlan& plan, const std::vector<PlanSide>& before, const std::vector<WallLine>& lines) {
  std::vector<Dormer> kept;
  kept.reserve(plan.dormers.size());
  for (Dormer d : plan.dormers)
    for (std::size_t i = 0; i < lines.size(); ++i) {
      if (lines[i].was != d.side) continue;
      const Vec2 moved = corner(before[at(d.side)]) - corner(plan.sides[i]);
      d.side = static_cast<int>(i);
      d.centre = d.centre + Length::from_inches(dot(moved, lines[i].along));
      kept.push_back(d);
      break;
    }
  plan.dormers = std::move(kept);
}

/// Every corner from its two lines; a wall that vanishes leaves those beside it to each other.
void close(RoofPlan& plan, std::vector<WallLine> lines) {
  for (;;) {
    join_straight(lines);
    for (std::size_t i = 0; i < lines.size(); ++i) put_corner(lines[(i + lines.size() - 1) % lines.size()], lines[i]);
    const int gone = vanished(lines);
    if (gone < 0 || lines.size() <= 3) break;
    lines.erase(lines.begin() + gone);
  }
  const std::vector<PlanSide> before = std::exchange(plan.sides, {});
  plan.sides.reserve(lines.size());
  for (const WallLine& line : lines) plan.sides.push_back(line.side);
  keep_dormers(plan, before, lines);
}

}  // namespace

Length length_of_side(const RoofPlan& plan, int side) {
  const PlanSide &a = plan.sides[at(side)], &b = plan.sides[next_of(plan, at(side))];
  const Length dx = b.x - a.x, dy = b.y - a.y;
  const auto size = [](Length l) { return l.count < 0 ? -l : l; };
  if (dx.count == 0 || dy.count == 0) return size(dx) + size(dy);
  return Length::from_inches(libm::hypot(dx.in(), dy.in()));
}

RoofPlan with_side_length(const RoofPlan& plan, int side, Length length) {
  RoofPlan out = plan;
  const std::size_t own = at(side), next = next_of(plan, own), after = next_of(plan, next), last = next_of(plan, after);
  const PlanSide &a = plan.sides[own], &b = plan.sides[next];
  const Length grown = length - length_of_side(plan, side);
  const std::vector<WallLine> lines = lines_of(plan);
  const bool level = a.y == b.y, upright = a.x == b.x;
  if ((level || upright) && libm::fabs(cross(lines[own].along, lines[after].along)) < kAlong && last != next) {
    // The wall after the next runs along this one: it takes up the difference, to the last bit.
    const bool forward = level ? a.x < b.x : a.y < b.y;
    for (const std::size_t i : {next, after}) {
      Length& moved = level ? out.sides[i].x : out.sides[i].y;
      moved = forward ? moved + grown : moved - grown;
    }
    return out;
  }
  std::vector<WallLine> moved = lines;
  moved[next].through = moved[next].through + grown.in() * lines[own].along;
  close(out, std::move(moved));
  return out;
}

RoofPlan with_part_out(const RoofPlan& plan, int side, Length step) {
  RoofPlan next = plan;
  const std::size_t own = at(side);
  const PlanSide from = plan.sides[own];
  const Vec2 along = unit(corner(plan.sides[next_of(plan, own)]) - corner(from)), away{along.y, -along.x};
  const auto part = [&](int parts) {
    return Length{std::max<std::int64_t>(length_of_side(plan, side).count / parts / step.count, 1) * step.count}.in();
  };
  const double third = part(3), out = part(6);
  const auto place = [&](double far, double off) {
    PlanSide s = from;
    s.x = from.x + Length::from_inches(far * along.x + off * away.x);
    s.y = from.y + Length::from_inches(far * along.y + off * away.y);
    return s;
  };
  const PlanSide corners[] = {place(third, 0), place(third, out), place(2 * third, out), place(2 * third, 0)};
  for (Dormer& d : next.dormers) {
    if (d.side > side) d.side += 4;
    if (d.side != side || d.centre.in() <= third) continue;
    const bool past = d.centre.in() > 2 * third;
    d.side += past ? 4 : 2;
    d.centre = d.centre - Length::from_inches(past ? 2 * third : third);
  }
  next.sides.insert(next.sides.begin() + static_cast<std::ptrdiff_t>(own) + 1, std::begin(corners), std::end(corners));
  return next;
}

RoofPlan without_side(const RoofPlan& plan, int side) {
  RoofPlan out = plan;
  const std::size_t n = plan.sides.size(), own = at(side);
  if (n <= 3) return out;
  std::vector<WallLine> lines = lines_of(plan);
  const std::size_t before = last_of(plan, own), after = next_of(plan, own);
  const auto drop = [&](std::size_t i) { lines.erase(lines.begin() + static_cast<std::ptrdiff_t>(i)); };
  if (libm::fabs(cross(lines[before].along, lines[after].along)) >= kAlong) {
    drop(own);
  } else if (dot(lines[before].along, lines[after].along) > 0) {
    lines[after].through = lines[before].through;  // a step in a wall: the wall goes straight on
    drop(own);
  } else {
    const bool first = length_of_side(plan, static_cast<int>(before)) <= length_of_side(plan, static_cast<int>(after));
    lines[own].through = first ? corner(plan.sides[before]) : corner(plan.sides[next_of(plan, after)]);
    drop(first ? before : after);
  }
  close(out, std::move(lines));
  return out;
}

bool take_cure(RoofPlan& plan, const Error& error) {
  constexpr std::string_view kDormers = "dormers.";
  const std::string_view where = error.where;
  const std::size_t point = where.rfind('.');
  if (!where.starts_with(kDormers) || point < kDormers.size() || error.limit == 0) return false;
  int index = -1;
  std::from_chars(where.data() + kDormers.size(), where.data() + point, index);
  if (index < 0 || at(index) >= plan.dormers.size()) return false;
  Dormer& d = plan.dormers[at(index)];
  const struct {
    std::string_view field;
    Length& value;
  } fields[] = {{"centre", d.centre}, {"width", d.width}, {"face", d.face}, {"plate_height", d.plate_height}};
  for (const auto& it : fields)
    if (where.substr(point + 1) == it.field) {
      it.value = Length{error.limit};
      return true;
    }
  return false;
}

RoofPlan with_dormer(const RoofPlan& plan, int side, DormerKind kind, Length foot) {
  RoofPlan next = plan;
  const Slope roof = plan.sides[at(side)].pitch;
  Dormer d;
  d.kind = kind;
  d.side = side;
  d.centre = Length{length_of_side(plan, side).count / 2};
  d.width = foot * 6;
  d.face = foot * 2;
  d.plate_height = foot * 5;
  d.overhang = Length{foot.count / 2};
  d.pitch =
      kind == DormerKind::kGable ? roof : Slope::in_12(Length::from_inches(std::max(libm::floor(6 * roof.tan()), 0.5)));
  next.dormers.push_back(d);
  const auto shape = solve_shape(next);
  if (!shape) return next;
  constexpr int kMostCures = 8;
  for (int i = 0; i < kMostCures; ++i) {
    const auto dormers = solve_dormers(next, *shape);
    if (dormers || !take_cure(next, dormers.error())) break;
  }
  return next;
}

}  // namespace bentbook
