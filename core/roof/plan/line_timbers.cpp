#include "roof/plan/line_timbers.h"

#include <algorithm>
#include <utility>

#include "numeric/index.h"
#include "numeric/sorting.h"

namespace bentbook {
namespace {

constexpr double kPastEnd = 400;  ///< inches that a timber is longer than its line before its ends are cut

/// One end of a line's timber at a node.
struct Arm {
  int room = 0;
  bool at_b = false;
  bool ridge = false;          ///< or a purlin along a break: level
  Vec2 out;                    ///< away from the node
  double left = 0, right = 0;  ///< half of its room, seen outward
  double angle = 0;
};

bool is_level(RoofLineKind kind) { return kind == RoofLineKind::kRidge || kind == RoofLineKind::kBreak; }

class Placer {
 public:
  Placer(const RoofPlan& plan, const RoofShape& shape, std::vector<RoofTimber>& timbers, std::vector<LineRoom>& rooms)
      : plan_(plan), shape_(shape), timbers_(timbers), rooms_(rooms) {}

  void run() {
    int counts[4] = {0, 0, 0, 0};
    for (std::size_t i = 0; i < shape_.lines.size(); ++i) {
      const RoofLineKind kind = shape_.lines[i].kind;
      if (kind > RoofLineKind::kValley && kind != RoofLineKind::kBreak) continue;
      const int row = kind == RoofLineKind::kBreak ? 3 : static_cast<int>(kind);
      place(static_cast<int>(i), row, ++counts[row]);
    }
    for (std::size_t node = 0; node < shape_.nodes.size(); ++node) meet_at(static_cast<int>(node));
    for (const LineRoom& room : rooms_) {
      end_outside(room);
      seat(room);
    }
  }

 private:
  [[nodiscard]] const RoofLine& line_of(const LineRoom& room) const { return shape_.lines[at(room.line)]; }
  RoofTimber& timber_of(const LineRoom& room) { return timbers_[at(room.timber)]; }
  [[nodiscard]] bool at_eaves(int node) const { return node < static_cast<int>(shape_.planes.size()); }

  void place(int index, int row, int number) {
    const RoofLine& line = shape_.lines[at(index)];
    RoofTimber t;
    LineRoom room;
    t.line = index;
    t.left = line.left;
    t.right = line.right;
    const struct {
      RoofTimberKind kind;
      const char* letters;
      const Section& section;
    } rows[] = {{RoofTimberKind::kRidge, "R-", plan_.ridge},
                {RoofTimberKind::kHip, "HR-", plan_.hip},
                {RoofTimberKind::kValley, "VR-", plan_.valley},
                {RoofTimberKind::kPurlin, "U-", plan_.ridge}};
    t.kind = rows[row].kind;
    t.mark = rows[row].letters + std::to_string(number);
    t.section = rows[row].section;
    room.line = index;
    room.timber = static_cast<int>(timbers_.size());
    room.from = flat(line.a);
    room.length = norm(flat(line.b - line.a));
    room.along = unit(flat(line.b - line.a));
    set_top(t, room);
    const Vec3 x = unit(line.b - line.a);
    const Vec2 left = left_of(room.along);
    const Vec3 y{left.x, left.y, 0}, z = cross(x, y);
    const Vec3 top = line.a + t.shift * y - t.drop * Vec3{0, 0, 1};
    t.at = {top - (t.section.depth.in() / 2) * z - kPastEnd * x, x, y, z};
    t.length = norm(line.b - line.a) + 2 * kPastEnd;
    t.slope = libm::atan2(line.b.z - line.a.z, room.length);
    if (t.kind == RoofTimberKind::kHip && plan_.hip_top == HipTop::kBacked) back(t, line);
    timbers_.push_back(std::move(t));
    rooms_.push_back(room);
  }

  /// Where its top and its sides lie against the line. Source: SOURCES.md, "roof corners".
  void set_top(RoofTimber& t, LineRoom& room) const {
    const Vec2 left = left_of(room.along);
    const double breadth = t.section.breadth.in();
    const double a = shape_.planes[at(t.left)].fall(left), b = shape_.planes[at(t.right)].fall(-1.0 * left);
    room.left = room.right = breadth / 2;
    const double steeper = std::max({a, b, 0.0});
    if (t.kind != RoofTimberKind::kHip) {
      t.drop = steeper * breadth / 2;  // level with the lower of the rafters at its faces; a valley's planes rise: none
      return;
    }
    if (plan_.hip_top == HipTop::kBacked) return;
    if (a > 0 && b > 0) {  // the arrises stand where both planes have fallen alike
      room.left = breadth * b / (a + b);
      room.right = breadth * a / (a + b);
      t.drop = breadth * a * b / (a + b);
    } else {
      t.drop = steeper * breadth / 2;
    }
    t.shift = (room.left - room.right) / 2;
  }

  void back(RoofTimber& t, const RoofLine& line) const {
    for (const int side : {line.left, line.right}) {
      const RoofPlane& plane = shape_.planes[at(side)];
      const Vec3 up = unit(Vec3{-plane.tan * plane.in.x, -plane.tan * plane.in.y, 1});
      Vec3 normal = to_local_direction(t.at, up);
      normal.x = 0;  // the line lies in the plane
      normal = unit(normal);
      const double beside = side == line.left ? normal.y : -normal.y;
      if (!(beside > 1e-9)) continue;  // the plane rises from the line: nothing to take off
      t.backing.push_back({normal, dot(normal, to_local(t.at, line.a))});
    }
  }

  void meet_at(int node) {
    if (at_eaves(node)) return;
    std::vector<Arm> arms;
    for (std::size_t i = 0; i < rooms_.size(); ++i) {
      const LineRoom& room = rooms_[i];
      const RoofLine& line = line_of(room);
      for (const bool at_b : {false, true}) {
        if ((at_b ? line.node_b : line.node_a) != node) continue;
        Arm arm{static_cast<int>(i), at_b, is_level(line.kind), room.along, room.left, room.right, 0};
        if (at_b) {
          arm.out = -1.0 * arm.out;
          std::swap(arm.left, arm.right);
        }
        arm.angle = libm::atan2(arm.out.y, arm.out.x);
        arms.push_back(arm);
      }
    }
    sort_by(arms, [](const Arm& a, const Arm& b) { return a.angle < b.angle; });
    const Vec2 here = flat(shape_.nodes[at(node)]);
    meet_ridges(arms, here);
    for (std::size_t i = 0; i < arms.size(); ++i)
      if (!arms[i].ridge) meet_ridges_beside(arms, i, here);
    for (std::size_t i = 0; i < arms.size() && arms.size() > 1; ++i) {
      const Arm &own = arms[i], &next = arms[i + 1 == arms.size() ? 0 : i + 1];
      if (own.ridge || next.ridge) continue;
      mitre(own, next, here);
    }
    for (const Arm& arm : arms)
      if (!bounded_both_ways(arms, arm)) cut(arm, -1.0 * arm.out, here, RoofCutName::kPlumb, -1);
  }

  void cut(const Arm& arm, Vec2 waste, Vec2 through, RoofCutName name, int against_room) {
    RoofTimber& t = timber_of(rooms_[at(arm.room)]);
    RoofEndCut made = upright_cut(t.at, waste, through, name, against_room < 0 ? -1 : rooms_[at(against_room)].timber);
    made.at_b = arm.at_b;
    t.cuts.push_back(made);
  }

  /// Counterclockwise from a to b, in [0, 2π).
  static double gap(const Arm& a, const Arm& b) {
    const double d = b.angle - a.angle;
    return d < 0 ? d + 2 * libm::kPi : d;
  }

  /// Two arms, the second one to the left of the first, part along the upright plane from the node to where their sides
  /// meet: a cheek on each.
  void mitre(const Arm& own, const Arm& next, Vec2 here) {
    const double turn = gap(own, next);
    if (!(turn > 1e-6 && turn < libm::kPi + 1e-6)) return;
    Vec2 ray = left_of(own.out);
    if (turn < libm::kPi - 0.02) {
      const double along = (next.right + own.left * libm::cos(turn)) / libm::sin(turn);
      ray = unit(along * own.out + own.left * left_of(own.out));
    }
    cut(own, left_of(ray), here, RoofCutName::kCheek, next.room);
    cut(next, -1.0 * left_of(ray), here, RoofCutName::kCheek, own.room);
  }

  /// Ridges end square at the node. One that goes straight on keeps its way, and others end against its side; where
  /// none does they are mitred.
  void meet_ridges(const std::vector<Arm>& arms, Vec2 here) {
    std::vector<Arm> ridges;
    for (const Arm& arm : arms)
      if (arm.ridge) ridges.push_back(arm);
    int first = -1, second = -1;
    for (std::size_t i = 0; i < ridges.size() && first < 0; ++i)
      for (std::size_t j = i + 1; j < ridges.size(); ++j)
        if (dot(ridges[i].out, ridges[j].out) < -1 + 1e-9) first = static_cast<int>(i), second = static_cast<int>(j);
    for (std::size_t i = 0; i < ridges.size(); ++i) {
      const Arm& own = ridges[i];
      if (first >= 0 && static_cast<int>(i) != first && static_cast<int>(i) != second) {
        const Arm& through = ridges[at(first)];
        const bool to_left = cross(through.out, own.out) > 0;
        const Vec2 away = to_left ? left_of(through.out) : -1.0 * left_of(through.out);
        cut(own, -1.0 * away, here + (to_left ? through.left : through.right) * away, RoofCutName::kPlumb,
            through.room);
        continue;
      }
      const bool goes_on = first >= 0;
      cut(own, -1.0 * own.out, here, RoofCutName::kPlumb,
          goes_on ? ridges[at(static_cast<int>(i) == first ? second : first)].room : -1);
      if (!goes_on && ridges.size() > 1) mitre(own, ridges[i + 1 == ridges.size() ? 0 : i + 1], here);
    }
  }

  /// A hip or valley against the nearest ridge on either hand: against its side where they lie close, else its end.
  void meet_ridges_beside(const std::vector<Arm>& arms, std::size_t index, Vec2 here) {
    constexpr double kBeside = 100 * libm::kDegree;
    const Arm& own = arms[index];
    const Arm *left = nullptr, *right = nullptr;
    for (const Arm& arm : arms) {
      if (!arm.ridge) continue;
      if (gap(own, arm) < libm::kPi && (left == nullptr || gap(own, arm) < gap(own, *left))) left = &arm;
      if (gap(arm, own) < libm::kPi && (right == nullptr || gap(arm, own) < gap(*right, own))) right = &arm;
    }
    if (right != nullptr) {
      const Vec2 away = left_of(right->out);
      if (gap(*right, own) <= kBeside)
        cut(own, -1.0 * away, here + right->left * away, RoofCutName::kCheek, right->room);
      else
        cut(own, right->out, here, RoofCutName::kCheek, right->room);
    }
    if (left != nullptr) {
      const Vec2 away = -1.0 * left_of(left->out);
      if (gap(own, *left) <= kBeside)
        cut(own, -1.0 * away, here + left->right * away, RoofCutName::kCheek, left->room);
      else
        cut(own, left->out, here, RoofCutName::kCheek, left->room);
    }
  }

  /// Whether something bounds it on either hand; a ridge always ends square.
  static bool bounded_both_ways(const std::vector<Arm>& arms, const Arm& own) {
    if (own.ridge) return true;
    bool left = false, right = false;
    for (const Arm& arm : arms) {
      if (arm.room == own.room) continue;
      const double turn = gap(own, arm);
      left = left || (turn > 1e-6 && turn < libm::kPi + 1e-6);
      right = right || turn > libm::kPi - 1e-6;
    }
    return left && right;
  }

  /// Ends at the tails and in gables.
  void end_outside(const LineRoom& room) {
    RoofTimber& t = timber_of(room);
    const RoofLine& line = line_of(room);
    for (const bool at_b : {false, true}) {
      const int node = at_b ? line.node_b : line.node_a;
      const Vec3 end = at_b ? line.b : line.a;
      const auto first = t.cuts.size();
      if (node < 0 || at_eaves(node)) end_at_tail(t, line, flat(end), at_b);
      if (node >= 0 && !at_eaves(node)) end_in_gables(t, flat(end), at_b ? -1.0 * room.along : room.along);
      for (std::size_t i = first; i < t.cuts.size(); ++i) t.cuts[i].at_b = at_b;
    }
  }

  /// Plumb at a gable's outside, or against its wall where the line runs into that from the other side.
  void end_in_gables(RoofTimber& t, Vec2 end, Vec2 out) const {
    for (const RoofPlane& plane : shape_.planes) {
      if (!plane.gable || libm::fabs(plane.depth(end) + plane.overhang) > 1e-3) continue;
      const Vec2 kept = dot(plane.in, out) > 0 ? plane.in : -1.0 * plane.in;
      t.cuts.push_back(upright_cut(t.at, -1.0 * kept, end, RoofCutName::kPlumb, -1));
    }
  }

  void end_at_tail(RoofTimber& t, const RoofLine& line, Vec2 end, bool at_b) const {
    const Vec2 out = at_b ? t_along(line) : -1.0 * t_along(line);
    if (line.kind == RoofLineKind::kValley) {
      // In an inner corner of the eaves all that lies above a square cut is under the roof; away from one, one
      // fascia's.
      bool in_corner = false;
      for (const Vec2& corner : shape_.eaves) in_corner = in_corner || norm(corner - end) < 1e-3;
      if (in_corner) {
        t.cuts.push_back(upright_cut(t.at, out, end, RoofCutName::kTail, -1));
        return;
      }
    }
    bool any = false;
    for (const int side : {line.left, line.right}) {
      const RoofPlane& plane = shape_.planes[at(side)];
      if (plane.gable || (line.kind == RoofLineKind::kValley && libm::fabs(plane.depth(end) + plane.overhang) > 1e-3))
        continue;
      t.cuts.push_back(tail_cut(t.at, plane, plan_.tail));
      any = true;
    }
    if (!any) t.cuts.push_back(upright_cut(t.at, out, end, RoofCutName::kTail, -1));
  }
  static Vec2 t_along(const RoofLine& line) { return unit(flat(line.b - line.a)); }

  /// Hips and valleys over the corner of the plates.
  void seat(const LineRoom& room) {
    RoofTimber& t = timber_of(room);
    const RoofLine& line = line_of(room);
    if (is_level(line.kind) || (line.node_a >= 0 && !at_eaves(line.node_a))) return;
    // Where the timber, on its way up, first comes over a wall.
    const Vec2 left = left_of(room.along);
    const std::size_t n = shape_.planes.size();
    double first = 1e300, plate = 0;
    const auto meets = [&](double s, const RoofPlane& plane) {
      // With a short overhang an inner corner's walls lie beside its valley's tail already.
      const bool own = &plane == &shape_.planes[at(line.left)] || &plane == &shape_.planes[at(line.right)];
      if (s < 0 && s > -room.left - room.right && own) s = 0;
      if (plane.gable || s < -1e-6 || s > first + 1e-6 || s > room.length) return;
      plate = s < first - 1e-6 ? plane.plate : std::max(plate, plane.plate);
      first = std::min(first, s);
    };
    for (std::size_t i = 0; i < n; ++i) {
      const RoofPlane &plane = shape_.planes[i], &last = shape_.planes[i == 0 ? n - 1 : i - 1];
      const double off = dot(left, plane.from - room.from);
      if (off < room.left + 1e-9 && off > -room.right - 1e-9) {
        meets(dot(room.along, plane.from - room.from), plane);
        meets(dot(room.along, plane.from - room.from), last);
      }
      for (const double side : {room.left, -room.right}) {
        const Vec2 start = room.from + side * left;
        const double nears = dot(plane.in, room.along);
        if (libm::fabs(nears) < 1e-9) continue;
        const double s = -plane.depth(start) / nears, along = dot(plane.along, start + s * room.along - plane.from);
        if (along > -1e-9 && along < plane.length + 1e-9) meets(s, plane);
      }
    }
    if (first > 1e200) return;
    const double tan = libm::tan(t.slope), cos = libm::cos(t.slope);
    const double top = line.a.z + first * tan - t.drop, plumb = t.section.depth.in() / cos;
    t.seat.heel = top - plate;
    const double length = (plumb - t.seat.heel) / tan;
    if (!(length > 0.05) || t.seat.heel < 0.05) return;
    const Vec2 corner = room.from + first * room.along, end = corner + length * room.along;
    const Vec2 mid = t.shift * left;
    const Vec3 p{corner.x + mid.x, corner.y + mid.y, plate}, q{end.x + mid.x, end.y + mid.y, plate},
        r{p.x, p.y, top - plumb};
    cut_seat(t, p, q, r);
  }

 private:
  const RoofPlan& plan_;
  const RoofShape& shape_;
  std::vector<RoofTimber>& timbers_;
  std::vector<LineRoom>& rooms_;
};

}  // namespace

RoofEndCut upright_cut(const Placement& at, Vec2 waste, Vec2 through, RoofCutName name, int against) {
  const Vec3 normal{waste.x, waste.y, 0};
  RoofEndCut cut;
  cut.name = name;
  cut.plane.normal = to_local_direction(at, normal);
  cut.plane.offset = dot(waste, through) - dot(normal, at.origin);
  cut.at_b = cut.plane.normal.x > 0;
  cut.against = against;
  return cut;
}

RoofEndCut tail_cut(const Placement& at, const RoofPlane& plane, TailEnd tail) {
  const Vec2 eave = plane.from - plane.overhang * plane.in;
  if (tail == TailEnd::kPlumb) return upright_cut(at, -1.0 * plane.in, eave, RoofCutName::kTail, -1);
  const Vec3 normal{-plane.cos * plane.in.x, -plane.cos * plane.in.y, -plane.sin};
  RoofEndCut cut;
  cut.name = RoofCutName::kTail;
  cut.plane.normal = to_local_direction(at, normal);
  cut.plane.offset = dot(normal, Vec3{eave.x, eave.y, plane.eave_z} - at.origin);
  cut.at_b = cut.plane.normal.x > 0;
  return cut;
}

void take_room(const std::vector<RoofTimber>& timbers, std::vector<LineRoom>& rooms) {
  for (LineRoom& room : rooms) {
    const RoofTimber& t = timbers[at(room.timber)];
    const double wide = std::max(room.left, room.right);
    const Vec2 left = left_of(room.along), a = room.from - wide * room.along,
               b = room.from + (room.length + wide) * room.along;
    room.taken = {a - room.right * left, b - room.right * left, b + room.left * left, a + room.left * left};
    for (const RoofEndCut& cut : t.cuts) {
      const Vec3 normal = to_world_direction(t.at, cut.plane.normal);
      if (libm::fabs(normal.z) > 1e-9) continue;
      const double offset = cut.plane.offset + dot(normal, t.at.origin);
      Polygon2 kept;
      kept.reserve(room.taken.size() + 1);
      for (std::size_t i = 0; i < room.taken.size(); ++i) {
        const Vec2 p = room.taken[i], q = room.taken[i + 1 == room.taken.size() ? 0 : i + 1];
        const double u = dot(flat(normal), p) - offset, v = dot(flat(normal), q) - offset;
        if (u <= 0) kept.push_back(p);
        if ((u > 0) != (v > 0)) kept.push_back(p + (u / (u - v)) * (q - p));
      }
      room.taken = std::move(kept);
    }
  }
}

void place_line_timbers(const RoofPlan& plan, const RoofShape& shape, std::vector<RoofTimber>& timbers,
                        std::vector<LineRoom>& rooms) {
  Placer(plan, shape, timbers, rooms).run();
}

}  // namespace bentbook
