#include "roof/plan/dormer_shape.h"

#include <algorithm>
#include <string>

#include "geometry/outline.h"
#include "numeric/index.h"
#include "roof/plan/limits.h"

namespace bentbook {
namespace {

constexpr double kSixteenths = 16;  ///< of an inch: what would be accepted is told in these

Length rounded_down(double inches) {
  return Length::from_inches(libm::floor(inches * kSixteenths + 1e-6) / kSixteenths);
}
Length rounded_up(double inches) { return Length::from_inches(libm::ceil(inches * kSixteenths - 1e-6) / kSixteenths); }

double plumb_depth(const RoofPlan& plan, double cos) { return plan.common.depth.in() / cos; }

/// Plumb, of a rafter of that slope in the plan's way.
double heel_of(const RoofPlan& plan, const Slope& pitch) {
  if (plan.heel_by == HeelBy::kHeel) return plan.heel.in();
  return plumb_depth(plan, pitch.cos()) - plan.seat.in() * pitch.tan();
}

/// What a plan says, without a look at whether it can be.
DormerShape shape_of(const RoofPlan& plan, const RoofShape& roof, const Dormer& told, int index) {
  const RoofPlane& side = roof.planes[at(told.side)];
  DormerShape d;
  d.dormer = index;
  d.side = told.side;
  d.gable = told.kind == DormerKind::kGable;
  d.flush = told.face.count == 0;
  d.middle = told.centre.in();
  d.half = told.width.in() / 2;
  const double trimmers = plan.common.breadth.in() * (told.doubled ? 2 : 1);
  d.inner = d.half - trimmers;
  d.face = told.face.in();
  d.overhang = told.overhang.in();
  d.plate = side.plate + told.plate_height.in();
  d.base = d.plate + heel_of(plan, told.pitch);
  d.seat = plan.heel_by == HeelBy::kSeat ? plan.seat.in()
                                         : (plumb_depth(plan, told.pitch.cos()) - plan.heel.in()) / told.pitch.tan();
  d.tan = told.pitch.tan();
  d.cos = told.pitch.cos();
  d.sin = told.pitch.sin();
  if (d.gable) {
    d.top = d.base + d.tan * d.half;
    d.meets = (d.top - side.base) / side.tan;
    d.plate_end = (d.plate - side.base) / side.tan;
    d.wall_end = (d.base - side.base) / side.tan;
    d.trimmer_end = d.wall_end + d.tan * trimmers / side.tan;
    d.eave_end = d.wall_end - d.tan * d.overhang / side.tan;
  } else {
    d.meets = (d.base - d.tan * d.face - side.base) / (side.tan - d.tan);
    d.top = side.base + side.tan * d.meets;
  }
  d.past = d.meets + plan.header.breadth.in();
  return d;
}

/// Whether a straight way comes into the inside of a level rectangle.
bool enters(Vec2 a, Vec2 b, Vec2 low, Vec2 high) {
  double from = 0, to = 1;
  const Vec2 d = b - a;
  const auto clip = [&](double start, double step, double least, double most) {
    if (libm::fabs(step) < 1e-12) {
      if (start <= least || start >= most) to = -1;
      return;
    }
    const double p = (least - start) / step, q = (most - start) / step;
    from = std::max(from, std::min(p, q));
    to = std::min(to, std::max(p, q));
  };
  clip(a.x, d.x, low.x, high.x);
  clip(a.y, d.y, low.y, high.y);
  return to - from > 1e-9;
}

/// What there is to stand in, on the sides of one roof.
class DormerRoom {
 public:
  DormerRoom(const RoofPlan& plan, const RoofShape& roof) : plan_(plan), roof_(roof) {
    margin_ = std::max({plan.hip.breadth, plan.valley.breadth, plan.ridge.breadth}).in() / 2 + 1;
  }

  [[nodiscard]] Result<DormerShape> solve(int index, const std::vector<DormerShape>& before) {
    before_ = &before;
    told_ = plan_.dormers[at(index)];
    index_ = index;
    const RoofPlane& side = roof_.planes[at(told_.side)];
    if (told_.kind == DormerKind::kShed && !(told_.pitch.tan() < side.tan - 1e-6))
      return wrong(ErrorCode::kTooLarge, "pitch");
    const DormerShape d = shape_of(plan_, roof_, told_, index);
    if (auto ok = check_heel(); !ok) return tl::unexpected(ok.error());
    if (d.half * 2 < narrowest() - 1e-9) return wrong(ErrorCode::kTooSmall, "width", rounded_up(narrowest()));
    const double seat_from = std::max(side.seat, 0.0) + plan_.common.breadth.in() / 2 + limits::kShortestJack;
    if (!d.flush && d.face < seat_from) return wrong(ErrorCode::kTooSmall, "face", rounded_up(seat_from));
    if (d.plate < lowest_plate(told_) - 1e-9)
      return wrong(ErrorCode::kTooSmall, "plate_height", rounded_up(lowest_plate(told_) - side.plate));
    if (!(d.meets > d.face && d.meets < 1e6)) return wrong(ErrorCode::kImpossible, "meet");
    if (fits(told_)) return d;
    return tl::unexpected(cure(d));
  }

 private:
  [[nodiscard]] tl::unexpected<Error> wrong(ErrorCode code, const char* field, Length limit = {}) const {
    return fail(code, "dormers." + std::to_string(index_) + "." + field, -1, limit.count);
  }

  /// The plan's seat or heel must leave wood in this pitch too.
  [[nodiscard]] Result<void> check_heel() const {
    const double heel = heel_of(plan_, told_.pitch), plumb = plumb_depth(plan_, told_.pitch.cos());
    if (!(heel > 1e-3))
      return fail(ErrorCode::kSeatTooLong, "dormers." + std::to_string(index_) + ".seat", -1,
                  rounded_down((plumb - 1e-3) / told_.pitch.tan()).count);
    if (!(heel < plumb + 1e-9))
      return fail(ErrorCode::kHeelTooLarge, "dormers." + std::to_string(index_) + ".heel", -1,
                  Length::from_inches(plumb).count);
    return {};
  }

  /// Between its trimmers, between its plates, and a ridge that passes over the plate of its face.
  [[nodiscard]] double narrowest() const {
    const double trimmers = plan_.common.breadth.in() * (told_.doubled ? 2 : 1);
    double least = 2 * std::max(trimmers, plan_.dormer_post.breadth.in()) + limits::kNarrowestOpening;
    if (told_.kind == DormerKind::kGable) {
      const double under = plan_.ridge.depth.in() - heel_of(plan_, told_.pitch);
      least = std::max(least, 2 * (under / told_.pitch.tan() + plan_.ridge.breadth.in() / 2));
    }
    return least;
  }

  /// So that its posts have a height, and its tails end over the roof.
  [[nodiscard]] double lowest_plate(const Dormer& told) const {
    const RoofPlane& side = roof_.planes[at(told.side)];
    const Section& post = plan_.dormer_post;
    const double under_face = side.base + side.tan * told.face.in(), heel = heel_of(plan_, told.pitch);
    const double behind_post = under_face + side.tan * post.depth.in();
    const double tail = told.kind == DormerKind::kGable ? 0 : plumb_depth(plan_, told.pitch.cos());
    return std::max(behind_post + post.depth.in() + limits::kShortestDormerPost,
                    under_face + limits::kUnderDormerTails + told.pitch.tan() * told.overhang.in() + tail - heel);
  }

  /// Half of what it takes along the wall, overhang and all.
  [[nodiscard]] static double reach(const DormerShape& d) { return d.half + (d.gable ? d.overhang : 0); }

  [[nodiscard]] bool fits(const Dormer& told) const {
    const DormerShape d = shape_of(plan_, roof_, told, index_);
    if (!(d.meets > d.face) || !(d.past < 1e6)) return false;
    if (d.plate < lowest_plate(told) - 1e-9) return false;
    for (const DormerShape& other : *before_)
      if (other.side == d.side && libm::fabs(other.middle - d.middle) < reach(other) + reach(d) + margin_) return false;
    if (!clear_of_walls(d)) return false;
    // All of it with its margin, from the wall line up to past its header.
    const double wide = reach(d) + margin_;
    return is_clear({d.middle - wide, 0}, {d.middle + wide, d.past + margin_});
  }

  /// Of the corners of its wall, and of the rafters over a gable's wall.
  [[nodiscard]] bool clear_of_walls(const DormerShape& d) const {
    const int n = roof_.sides;
    const RoofPlane &own = roof_.planes[at(d.side)], &last = roof_.planes[at(d.side == 0 ? n - 1 : d.side - 1)],
                    &next = roof_.planes[at(d.side + 1 == n ? 0 : d.side + 1)];
    const double over_wall = plan_.common.breadth.in() + 1;
    return d.middle - d.half >= (last.gable ? over_wall : 0) &&
           d.middle + d.half <= own.length - (next.gable ? over_wall : 0);
  }

  [[nodiscard]] Vec2 own(Vec2 p) const {
    const RoofPlane& side = roof_.planes[at(told_.side)];
    return {dot(side.along, p - side.from), side.depth(p)};
  }

  [[nodiscard]] bool is_clear(Vec2 low, Vec2 high) const {
    const RoofPlane& side = roof_.planes[at(told_.side)];
    const Polygon2& outline = roof_.faces[at(told_.side)].outline;
    const Vec2 middle = 0.5 * (low + high);
    if (!inside_outline(outline, side.from + middle.x * side.along + middle.y * side.in)) return false;
    for (std::size_t i = 0; i < outline.size(); ++i)
      if (enters(own(outline[i]), own(outline[i + 1 == outline.size() ? 0 : i + 1]), low, high)) return false;
    return true;
  }

  /// Whether it is too high over its very middle.
  [[nodiscard]] bool passes_ridge(const DormerShape& d) const {
    return is_clear({d.middle - 1e-3, 0}, {d.middle + 1e-3, 1}) &&
           !is_clear({d.middle - 1e-3, 0}, {d.middle + 1e-3, d.past + margin_});
  }

  /// What alone would do: a lower plate where it is too high in its middle, else another place, else less width.
  [[nodiscard]] Error cure(const DormerShape& d) const {
    const std::string path = "dormers." + std::to_string(index_) + ".";
    const bool high = passes_ridge(d);
    if (high)
      if (const Length plate = highest_plate(); plate.count != 0)
        return {ErrorCode::kTooLarge, path + "plate_height", -1, plate.count};
    if (const Length centre = nearest_centre(); centre.count != 0)
      return {ErrorCode::kConflict, path + "centre", -1, centre.count};
    if (const Length width = widest(); width.count != 0) return {ErrorCode::kTooLarge, path + "width", -1, width.count};
    if (!high)
      if (const Length plate = highest_plate(); plate.count != 0)
        return {ErrorCode::kTooLarge, path + "plate_height", -1, plate.count};
    return {ErrorCode::kImpossible, path + "room", -1, 0};
  }

  /// The largest that fits between one that does and one that does not; 0: the least does not.
  template <class Put>
  [[nodiscard]] Length largest(double least, double most, Put&& put) const {
    const auto good = [&](double inches) {
      Dormer tried = told_;
      put(tried, Length::from_inches(inches));
      return fits(tried);
    };
    double low = rounded_up(least).in(), high = most;
    if (!(low < high) || !good(low)) return {};
    while (high - low > 1 / (4 * kSixteenths)) {
      const double middle = 0.5 * (low + high);
      (good(middle) ? low : high) = middle;
    }
    const Length found = rounded_down(low);
    return good(found.in()) ? found : rounded_up(least);
  }
  [[nodiscard]] Length highest_plate() const {
    const double zero = roof_.planes[at(told_.side)].plate;
    return largest(lowest_plate(told_) - zero, told_.plate_height.in(),
                   [](Dormer& d, Length value) { d.plate_height = value; });
  }
  [[nodiscard]] Length widest() const {
    return largest(narrowest(), told_.width.in(), [](Dormer& d, Length value) { d.width = value; });
  }

  /// 0: nowhere.
  [[nodiscard]] Length nearest_centre() const {
    const double length = roof_.planes[at(told_.side)].length, step = std::max(1.0, length / 2000);
    const double asked = std::clamp(told_.centre.in(), 0.0, length);
    for (double off = 0; off < length; off += step)
      for (const double sign : {-1.0, 1.0}) {
        const double u = asked + sign * off;
        if (u <= 0 || u >= length) continue;
        Dormer tried = told_;
        tried.centre = rounded_up(u);
        if (fits(tried)) return tried.centre;
      }
    return {};
  }

  const RoofPlan& plan_;
  const RoofShape& roof_;
  double margin_ = 0;  ///< about half of a line's timber
  const std::vector<DormerShape>* before_ = nullptr;
  Dormer told_;
  int index_ = 0;
};

/// A wall's plane of a dormer: its wall from one place to another, u and v of the side, itself on the left of it.
RoofPlane dormer_plane(const DormerShape& d, const RoofPlane& side, Vec2 from, Vec2 to) {
  RoofPlane p;
  p.from = side.from + from.x * side.along + from.y * side.in;
  p.to = side.from + to.x * side.along + to.y * side.in;
  p.length = norm(p.to - p.from);
  p.along = unit(p.to - p.from);
  p.in = left_of(p.along);
  p.tan = d.tan;
  p.cos = d.cos;
  p.sin = d.sin;
  p.plate = d.plate;
  p.seat = d.seat;
  p.base = d.base;
  p.overhang = d.overhang;
  p.eave_z = d.base - d.tan * d.overhang;
  return p;
}

class DormerAdder {
 public:
  DormerAdder(DormerShape& d, RoofShape& roof) : d_(d), roof_(roof), side_(roof.planes[at(d.side)]) {}

  void add() {
    d_.plane = static_cast<int>(roof_.planes.size());
    d_.line = static_cast<int>(roof_.lines.size());
    if (d_.gable)
      add_gable();
    else
      add_shed();
  }

 private:
  [[nodiscard]] Vec2 spot(double u, double v) const { return side_.from + u * side_.along + v * side_.in; }
  [[nodiscard]] Vec3 place(double u, double v, double z) const {
    const Vec2 p = spot(u, v);
    return {p.x, p.y, z};
  }
  int node(Vec3 p) {
    roof_.nodes.push_back(p);
    return static_cast<int>(roof_.nodes.size()) - 1;
  }
  void line(RoofLineKind kind, Vec3 a, Vec3 b, int left, int right) {
    RoofLine line;
    line.kind = kind;
    line.a = a;
    line.b = b;
    line.node_a = node(a);
    line.node_b = node(b);
    line.left = left;
    line.right = right;
    line.dormer = d_.dormer;
    roof_.lines.push_back(line);
  }
  void face(Polygon2 outline) {
    RoofFace face;
    face.plan_area = area_of(outline);
    face.slope_area = face.plan_area / d_.cos;
    face.outline = std::move(outline);
    roof_.faces.push_back(std::move(face));
  }
  void hole(Polygon2 outline) {
    RoofFace& own = roof_.faces[at(d_.side)];
    const double area = area_of(outline);
    own.plan_area -= area;
    own.slope_area -= area / side_.cos;
    own.holes.push_back(std::move(outline));
  }
  /// Where the roof ends below: at the face, or, flush with the wall, at the tails.
  [[nodiscard]] double hole_from() const { return d_.flush ? -side_.overhang : d_.face; }

  void add_gable() {
    const double c = d_.middle, h = d_.half, out = h + d_.overhang, front = d_.face - d_.overhang;
    const double eave = d_.base - d_.tan * d_.overhang;
    const int left = d_.plane, right = d_.plane + 1;
    const RoofPlane side = side_;
    roof_.planes.push_back(dormer_plane(d_, side, {c - h, d_.wall_end}, {c - h, d_.face}));
    roof_.planes.push_back(dormer_plane(d_, side, {c + h, d_.face}, {c + h, d_.wall_end}));
    const Vec3 peak = place(c, d_.meets, d_.top), gable = place(c, front, d_.top);
    const Vec3 foot_l = place(c - out, d_.eave_end, eave), foot_r = place(c + out, d_.eave_end, eave);
    const Vec3 tail_l = place(c - out, front, eave), tail_r = place(c + out, front, eave);
    line(RoofLineKind::kRidge, gable, peak, left, right);
    line(RoofLineKind::kValley, foot_l, peak, d_.side, left);
    line(RoofLineKind::kValley, foot_r, peak, right, d_.side);
    line(RoofLineKind::kRake, tail_l, gable, -1, left);
    line(RoofLineKind::kRake, tail_r, gable, right, -1);
    line(RoofLineKind::kEave, foot_l, tail_l, left, -1);
    line(RoofLineKind::kEave, tail_r, foot_r, right, -1);
    face({flat(tail_l), flat(gable), flat(peak), flat(foot_l)});
    face({flat(gable), flat(tail_r), flat(foot_r), flat(peak)});
    hole({spot(c - h, hole_from()), spot(c + h, hole_from()), spot(c + h, d_.wall_end), flat(peak),
          spot(c - h, d_.wall_end)});
  }

  void add_shed() {
    const double c = d_.middle, h = d_.half, front = d_.face - d_.overhang;
    const double eave = d_.base - d_.tan * d_.overhang;
    const RoofPlane side = side_;
    roof_.planes.push_back(dormer_plane(d_, side, {c - h, d_.face}, {c + h, d_.face}));
    const Vec3 top_l = place(c - h, d_.meets, d_.top), top_r = place(c + h, d_.meets, d_.top);
    const Vec3 tail_l = place(c - h, front, eave), tail_r = place(c + h, front, eave);
    line(RoofLineKind::kBreak, top_l, top_r, d_.side, d_.plane);
    line(RoofLineKind::kRake, tail_l, top_l, -1, d_.plane);
    line(RoofLineKind::kRake, tail_r, top_r, d_.plane, -1);
    line(RoofLineKind::kEave, tail_l, tail_r, d_.plane, -1);
    face({flat(tail_l), flat(tail_r), flat(top_r), flat(top_l)});
    hole({spot(c - h, hole_from()), spot(c + h, hole_from()), flat(top_r), flat(top_l)});
  }

  DormerShape& d_;
  RoofShape& roof_;
  RoofPlane side_;
};

}  // namespace

Result<std::vector<DormerShape>> solve_dormers(const RoofPlan& plan, const RoofShape& roof) {
  std::vector<DormerShape> dormers;
  dormers.reserve(plan.dormers.size());
  DormerRoom room(plan, roof);
  for (std::size_t i = 0; i < plan.dormers.size(); ++i) {
    auto solved = room.solve(static_cast<int>(i), dormers);
    if (!solved) return tl::unexpected(solved.error());
    dormers.push_back(*solved);
  }
  return dormers;
}

void add_dormers(std::vector<DormerShape>& dormers, RoofShape& roof) {
  for (DormerShape& d : dormers) DormerAdder(d, roof).add();
}

double opening_length(const DormerShape& dormer, const RoofPlane& side) {
  return (dormer.meets - (dormer.flush ? -side.overhang : dormer.face)) / side.cos;
}

double ridge_length(const DormerShape& dormer) {
  return dormer.gable ? dormer.meets - dormer.face + dormer.overhang : 0;
}

}  // namespace bentbook
