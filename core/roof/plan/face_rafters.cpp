#include "roof/plan/face_rafters.h"

#include <algorithm>

#include "geometry/cell.h"
#include "numeric/index.h"
#include "numeric/sorting.h"
#include "roof/plan/limits.h"

namespace bentbook {
namespace {

/// A boundary of the plane that a rafter's middle line crosses: how far up it does, level. `header`: the timber, where
/// it is the face of one and not a line.
struct Crossing {
  double depth = 0;
  int line = -1, header = -1;
};

class FaceFramer {
 public:
  FaceFramer(const RoofPlan& plan, const RoofShape& shape, const std::vector<LineRoom>& rooms, int side,
             bool from_middle, std::vector<RoofOpening>& openings, std::vector<RoofTimber>& timbers)
      : plan_(plan),
        shape_(shape),
        rooms_(rooms),
        side_(side),
        plane_(shape.planes[at(side)]),
        half_(plan.common.breadth.in() / 2),
        from_middle_(from_middle),
        timbers_(timbers) {
    for (std::size_t i = 0; i < shape.lines.size(); ++i) {
      const RoofLine& line = shape.lines[i];
      if (line.dormer < 0 && (line.left == side || line.right == side)) lines_.push_back(static_cast<int>(i));
    }
    for (RoofOpening& opening : openings)
      if (opening.side == side) openings_.push_back(&opening);
  }

  void run() {
    int number = 0;
    for (const double u : stations()) {
      const auto before = timbers_.size();
      RoofOpening* const opening = opening_at(u);
      if (opening != nullptr) opening->stations.push_back(u);
      place_at(u, opening);
      if (timbers_.size() > before) keep_trimmer(u, static_cast<int>(before));
      for (auto i = before; i < timbers_.size(); ++i) {
        constexpr const char* kLetters[] = {"R-", "HR-", "VR-", "C-", "JR-", "JR-", "JR-", "U-", "C-", "C-"};
        timbers_[i].mark =
            kLetters[static_cast<int>(timbers_[i].kind)] + side_letters(side_) + std::to_string(++number);
      }
    }
  }

 private:
  /// Of a place in plan: along the wall from its first corner, and inward.
  [[nodiscard]] Vec2 own(Vec2 p) const { return {dot(plane_.along, p - plane_.from), plane_.depth(p)}; }

  [[nodiscard]] RoofOpening* opening_at(double u) const {
    for (RoofOpening* opening : openings_)
      if (u > opening->from && u < opening->to) return opening;
    return nullptr;
  }

  /// Where a trimmer was to stand, the rafter that does is one.
  void keep_trimmer(double u, int first) {
    for (RoofOpening* opening : openings_)
      for (std::size_t i = 0; i < opening->trimmers.size(); ++i)
        if (libm::fabs(opening->trimmers[i] - u) < 1e-9) {
          timbers_[at(first)].kind = RoofTimberKind::kTrimmer;
          opening->placed[i] = first;
        }
  }

  /// Middles of the rafters along the wall.
  [[nodiscard]] std::vector<double> stations() const {
    double from = 1e300, to = -1e300;
    for (const Vec2& p : shape_.faces[at(side_)].outline) {
      from = std::min(from, own(p).x);
      to = std::max(to, own(p).x);
    }
    std::vector<double> found;
    const auto n = at(shape_.sides);
    const auto i = at(side_);
    const RoofPlane &last = shape_.planes[i == 0 ? n - 1 : i - 1], &next = shape_.planes[i + 1 == n ? 0 : i + 1];
    for (const bool at_end : {false, true}) {
      const RoofPlane& gable = at_end ? next : last;
      if (!gable.gable || libm::fabs(dot(gable.along, plane_.along)) > 1e-6) continue;
      const double sign = at_end ? -1 : 1, wall = at_end ? plane_.length : 0;
      const bool outward = dot(gable.in, plane_.along) * sign > 0;  // the gable's corner is no inner one
      if (!outward) continue;
      found.push_back(wall + sign * half_);
      if (gable.overhang > 4 * half_ + 1) found.push_back(wall + sign * (half_ - gable.overhang));
    }
    for (const RoofOpening* opening : openings_)
      found.insert(found.end(), opening->trimmers.begin(), opening->trimmers.end());
    const std::size_t fixed = found.size();
    const double step = plan_.spacing.in(), first = origin();
    const double clear = 2 * half_ + 1;
    for (double k = libm::ceil((from - first) / step); first + k * step < to; ++k) {
      const double u = first + k * step;
      bool free = true;
      for (std::size_t f = 0; f < fixed; ++f) free = free && libm::fabs(found[f] - u) > clear;
      if (free) found.push_back(u);
    }
    sort_up(found);
    return found;
  }

  /// Where, along this wall, the spacings are counted from.
  [[nodiscard]] double origin() const {
    if (from_middle_) return plane_.length / 2;
    for (const RoofPlane& plane : shape_.planes)
      if (!plane.gable && libm::fabs(cross(plane.along, plane_.along)) < 1e-9) return own(plane.from).x;
    return 0;
  }

  void place_at(double u, const RoofOpening* opening) {
    std::vector<Crossing> crossings;
    // One that stands at a peak belongs to the line toward the middle, the ridge.
    constexpr double kHair = 1e-6;
    const double toward = plane_.length / 2 - u;
    const double side = !from_middle_ || libm::fabs(toward) < kHair ? u : u + (toward > 0 ? kHair : -kHair);
    for (const int l : lines_) {
      const RoofLine& line = shape_.lines[at(l)];
      const Vec2 a = own(flat(line.a)), b = own(flat(line.b));
      if ((a.x > side) == (b.x > side)) continue;
      crossings.push_back({a.y + (u - a.x) / (b.x - a.x) * (b.y - a.y), l, -1});
    }
    sort_by(crossings, [](const Crossing& a, const Crossing& b) { return a.depth < b.depth; });
    for (std::size_t i = 0; i + 1 < crossings.size(); ++i) {
      const Vec2 mid =
          plane_.from + u * plane_.along + (0.5 * (crossings[i].depth + crossings[i + 1].depth)) * plane_.in;
      if (depth_inside(shape_.faces[at(side_)].outline, mid) <= 0) continue;
      if (opening != nullptr && crossings[i].depth < opening->high && opening->high < crossings[i + 1].depth)
        place_in(*opening, u, crossings[i], crossings[i + 1]);
      else
        place(u, crossings[i], crossings[i + 1]);
    }
  }

  /// What an opening leaves of a rafter: to its lower header, from its valleys to the upper one, and on from there.
  void place_in(const RoofOpening& opening, double u, const Crossing& low, const Crossing& high) {
    if (opening.low_header >= 0) place(u, low, {opening.low, -1, opening.low_header});
    const double middle = (opening.from + opening.to) / 2;
    if (!opening.valleys.empty() && libm::fabs(u - middle) > opening.ridge_room) {
      const int valley = opening.valleys[u < middle ? 0 : 1];
      const RoofLine& line = shape_.lines[at(valley)];
      const Vec2 a = own(flat(line.a)), b = own(flat(line.b));
      place(u, {a.y + (u - a.x) / (b.x - a.x) * (b.y - a.y), valley, -1}, {opening.high, -1, opening.high_header});
    }
    place(u, {opening.past, -1, opening.high_header}, high);
  }

  [[nodiscard]] RoofLineKind kind_of(const Crossing& c) const {
    return c.line < 0 ? RoofLineKind::kTop : shape_.lines[at(c.line)].kind;
  }

  [[nodiscard]] RoofTimberKind kind_between(const Crossing& from, const Crossing& to) const {
    const RoofLineKind low = kind_of(from), high = kind_of(to);
    if (from.header >= 0 || (to.header >= 0 && low != RoofLineKind::kValley)) return RoofTimberKind::kCutCommon;
    if (low == RoofLineKind::kValley)
      return high == RoofLineKind::kHip ? RoofTimberKind::kCripple : RoofTimberKind::kValleyJack;
    return high == RoofLineKind::kHip ? RoofTimberKind::kHipJack : RoofTimberKind::kCommon;
  }

  void place(double u, const Crossing& low, const Crossing& high) {
    const bool from_eave = kind_of(low) == RoofLineKind::kEave;
    // A rafter from the eaves bears on its plate; what ends before it is a piece of the overhang's carpentry.
    if (from_eave && !(high.depth > plane_.seat + half_)) return;
    constexpr double kPastEnd = 100;
    RoofTimber t;
    t.kind = kind_between(low, high);
    t.section = plan_.common;
    t.left = t.right = side_;
    t.slope = libm::atan(plane_.tan);
    const Vec3 x{plane_.cos * plane_.in.x, plane_.cos * plane_.in.y, plane_.sin};
    const Vec3 y{-plane_.along.x, -plane_.along.y, 0}, z = cross(x, y);
    const Vec2 foot = plane_.from + u * plane_.along + low.depth * plane_.in;
    t.at = {Vec3{foot.x, foot.y, plane_.height(foot)} - (t.section.depth.in() / 2) * z - kPastEnd * x, x, y, z};
    t.length = (high.depth - low.depth) / plane_.cos + 2 * kPastEnd;
    t.run = high.depth - (from_eave ? 0 : low.depth);
    t.line_length = t.run / plane_.cos;
    const auto first = t.cuts.size();
    end_at(t, low, u, false);
    for (std::size_t i = first; i < t.cuts.size(); ++i) t.cuts[i].at_b = false;
    end_at(t, high, u, true);
    cut_beside(t, u, low, high);
    if (from_eave || over_plate(t)) seat(t, u);
    t.shortening = shortening(t, kPastEnd + (high.depth - low.depth) / plane_.cos);
    if (settle_timber(t, limits::kShortestJack)) timbers_.push_back(std::move(t));
  }

  /// The room of a line's timber, −1: there is none.
  [[nodiscard]] int room_of(int line) const {
    for (std::size_t i = 0; i < rooms_.size(); ++i)
      if (rooms_[i].line == line) return static_cast<int>(i);
    return -1;
  }

  /// The upright plane at the side of a line's timber that looks to this plane.
  [[nodiscard]] RoofEndCut cut_against(const RoofTimber& t, const LineRoom& room) const {
    const bool on_left = shape_.lines[at(room.line)].left == side_;
    const Vec2 away = on_left ? left_of(room.along) : -1.0 * left_of(room.along);
    const bool square = libm::fabs(dot(away, plane_.in)) > 1 - 1e-9;
    return upright_cut(t.at, -1.0 * away, room.from + (on_left ? room.left : room.right) * away,
                       square ? RoofCutName::kPlumb : RoofCutName::kCheek, room.timber);
  }

  void end_at(RoofTimber& t, const Crossing& end, double u, bool at_b) const {
    if (end.header >= 0) {
      t.cuts.push_back(upright_cut(t.at, at_b ? plane_.in : -1.0 * plane_.in,
                                   plane_.from + u * plane_.along + end.depth * plane_.in, RoofCutName::kPlumb,
                                   end.header));
      t.cuts.back().at_b = at_b;
      return;
    }
    const RoofLine& line = shape_.lines[at(end.line)];
    if (line.kind == RoofLineKind::kEave) {
      t.cuts.push_back(tail_cut(t.at, plane_, plan_.tail));
      return;
    }
    if (const int room = room_of(end.line); room >= 0) {
      t.cuts.push_back(cut_against(t, rooms_[at(room)]));
      t.cuts.back().at_b = at_b;
      return;
    }
    // Against a wall or in the air: along the line itself.
    const Vec2 p = plane_.from + u * plane_.along + end.depth * plane_.in;
    Vec2 waste = left_of(unit(flat(line.b - line.a)));
    if ((dot(waste, plane_.in) > 0) != at_b) waste = -1.0 * waste;
    const bool square = libm::fabs(dot(waste, plane_.in)) > 1 - 1e-9;
    t.cuts.push_back(upright_cut(t.at, waste, p, square ? RoofCutName::kPlumb : RoofCutName::kCheek, -1));
    t.cuts.back().at_b = at_b;
  }

  /// Beside its middle line the rafter may run into the next line's timber too: near a hip's peak, or a valley's foot.
  void cut_beside(RoofTimber& t, double u, const Crossing& low, const Crossing& high) const {
    const double from = low.depth - 1, to = high.depth + 1;
    const auto place_of = [&](double du, double depth) {
      return plane_.from + (u + du) * plane_.along + depth * plane_.in;
    };
    const Vec2 strip[] = {place_of(-half_, from), place_of(half_, from), place_of(half_, to), place_of(-half_, to)};
    for (const LineRoom& room : rooms_) {
      const RoofLine& line = shape_.lines[at(room.line)];
      if ((line.left != side_ && line.right != side_) || room.line == low.line || room.line == high.line) continue;
      if (room.taken.size() < 3 || overlap_of(strip, room.taken) < 1e-6) continue;
      RoofEndCut cut = cut_against(t, room);
      // The end that lies nearer to it.
      const Vec2 middle = own(room.from + (room.length / 2) * room.along), start = own(room.from),
                 end = own(room.from + room.length * room.along);
      const double near_low = std::min({libm::fabs(middle.y - low.depth), libm::fabs(start.y - low.depth),
                                        libm::fabs(end.y - low.depth)}),
                   near_high = std::min({libm::fabs(middle.y - high.depth), libm::fabs(start.y - high.depth),
                                         libm::fabs(end.y - high.depth)});
      if (libm::fabs(cut.plane.normal.x) < 1e-9) cut.at_b = near_high < near_low;
      t.cuts.push_back(cut);
    }
  }

  /// Whether a rafter that begins in a valley still reaches down past the top of its own side's plate.
  [[nodiscard]] bool over_plate(const RoofTimber& t) const {
    for (const Vec3& corner : body_of(solid_of(t)).corners) {
      const Vec3 p = to_world(t.at, corner);
      if (p.z < plane_.plate - 1e-6 && plane_.depth(flat(p)) < plane_.seat) return true;
    }
    return false;
  }

  void seat(RoofTimber& t, double u) const {
    if (!(plane_.seat > 0.05)) return;
    const Vec2 wall = plane_.from + u * plane_.along, end = wall + plane_.seat * plane_.in;
    t.seat.heel = plane_.base - plane_.plate;
    const double under = plane_.base - t.section.depth.in() / plane_.cos;
    cut_seat(t, {wall.x, wall.y, plane_.plate}, {end.x, end.y, plane_.plate}, {wall.x, wall.y, under});
  }

  /// Along the top in the middle, from the theoretical end to the first cut.
  static double shortening(const RoofTimber& t, double end) {
    double nearest = end;
    for (const RoofEndCut& cut : t.cuts)
      if (cut.plane.normal.x > 1e-9)
        nearest =
            std::min(nearest, (cut.plane.offset - cut.plane.normal.z * t.section.depth.in() / 2) / cut.plane.normal.x);
    return end - nearest;
  }

  const RoofPlan& plan_;
  const RoofShape& shape_;
  const std::vector<LineRoom>& rooms_;
  int side_;
  const RoofPlane& plane_;
  double half_;
  bool from_middle_;
  std::vector<int> lines_;  ///< of the shape, that bound this plane
  std::vector<RoofOpening*> openings_;
  std::vector<RoofTimber>& timbers_;
};

}  // namespace

void place_face_rafters(const RoofPlan& plan, const RoofShape& shape, const std::vector<LineRoom>& rooms,
                        bool from_middle, std::vector<RoofOpening>& openings, std::vector<RoofTimber>& timbers) {
  for (int side = 0; side < shape.sides; ++side)
    if (!shape.planes[at(side)].gable) FaceFramer(plan, shape, rooms, side, from_middle, openings, timbers).run();
}

}  // namespace bentbook
