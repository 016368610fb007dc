#include "roof/plan/dormer_timbers.h"

#include <algorithm>
#include <string>
#include <utility>

#include "numeric/index.h"
#include "roof/plan/limits.h"

namespace bentbook {
namespace {

constexpr double kPastCuts = 300;  ///< inches that a timber is longer than it needs before its ends are cut

class DormerFramer {
 public:
  DormerFramer(const RoofPlan& plan, const RoofShape& shape, const DormerShape& dormer,
               std::vector<RoofTimber>& timbers)
      : plan_(plan),
        shape_(shape),
        d_(dormer),
        side_(shape.planes[at(dormer.side)]),
        letters_(dormer_letters(dormer.dormer)),
        half_(plan.common.breadth.in() / 2),
        reach_(kPastCuts + dormer.half + dormer.past + dormer.overhang + dormer.plate - side_.plate),
        timbers_(timbers) {}

  [[nodiscard]] RoofOpening open(std::vector<LineRoom>& rooms) {
    RoofOpening opening;
    opening.side = d_.side;
    opening.from = d_.middle - d_.inner;
    opening.to = d_.middle + d_.inner;
    const double pack = d_.half - d_.inner;
    for (double in = half_; in < pack; in += 2 * half_) {
      opening.trimmers.push_back(d_.middle - d_.half + in);
      opening.trimmers.push_back(d_.middle + d_.half - in);
    }
    opening.placed.assign(opening.trimmers.size(), -1);
    opening.low = d_.face;
    opening.high = d_.meets;
    opening.past = d_.past;
    opening.high_header = header(d_.meets, "U");
    if (!d_.flush) opening.low_header = header(d_.face, "L");
    if (!d_.gable) return opening;
    const int ridge = ridge_piece(rooms, opening.high_header);
    valley(rooms, 1, "L", ridge, opening.high_header);
    valley(rooms, 2, "R", ridge, opening.high_header);
    opening.valleys = {d_.line + 1, d_.line + 2};
    opening.ridge_room = plan_.ridge.breadth.in() / 2 + half_;
    return opening;
  }

  void frame(const RoofOpening& opening, const std::vector<LineRoom>& rooms) {
    fit_to_trimmers(opening);
    if (d_.gable)
      frame_gable(opening, rooms);
    else
      frame_shed(opening);
  }

 private:
  [[nodiscard]] Vec2 spot(double u, double v) const { return side_.from + u * side_.along + v * side_.in; }
  [[nodiscard]] static Vec3 level(Vec2 v) { return {v.x, v.y, 0}; }

  [[nodiscard]] RoofTimber begin(RoofTimberKind kind, const Section& section, const std::string& mark) const {
    RoofTimber t;
    t.kind = kind;
    t.section = section;
    t.mark = mark + letters_;
    t.dormer = d_.dormer;
    t.left = t.right = d_.side;
    return t;
  }
  /// Settled; −1: the cuts left no wood.
  int keep(RoofTimber t, double least_top = 0) {
    if (!settle_timber(t, least_top)) return -1;
    timbers_.push_back(std::move(t));
    return static_cast<int>(timbers_.size()) - 1;
  }

  /// A level timber through a place of its axis, along a level direction.
  void lay(RoofTimber& t, Vec3 middle, Vec2 along) const {
    const Vec3 x = level(along), y = level(left_of(along));
    t.at = {middle - reach_ * x, x, y, cross(x, y)};
    t.length = 2 * reach_;
  }
  void end(RoofTimber& t, Vec2 waste, Vec2 through, RoofCutName name, int against) const {
    t.cuts.push_back(upright_cut(t.at, waste, through, name, against));
  }

  /// Its lower face at v, its top there in the roof's plane.
  int header(double v, const char* which) {
    RoofTimber t = begin(RoofTimberKind::kHeader, plan_.header, "HD-");
    t.mark += which;
    const Vec2 middle = spot(d_.middle, v + t.section.breadth.in() / 2);
    const double top = side_.base + side_.tan * v;
    lay(t, {middle.x, middle.y, top - t.section.depth.in() / 2}, side_.along);
    end(t, -1.0 * side_.along, spot(d_.middle - d_.inner, v), RoofCutName::kPlumb, -1);
    end(t, side_.along, spot(d_.middle + d_.inner, v), RoofCutName::kPlumb, -1);
    t.run = t.line_length = 2 * d_.inner;
    return keep(std::move(t));
  }

  /// A timber along a line, its top lowered plumb by `drop`; uncut.
  [[nodiscard]] RoofTimber along_line(RoofTimber t, int index, double drop, LineRoom& room) const {
    const RoofLine& line = shape_.lines[at(index)];
    room.line = index;
    room.timber = static_cast<int>(timbers_.size());
    room.from = flat(line.a);
    room.length = norm(flat(line.b - line.a));
    room.along = unit(flat(line.b - line.a));
    room.left = room.right = t.section.breadth.in() / 2;
    const Vec3 x = unit(line.b - line.a), y = level(left_of(room.along)), z = cross(x, y);
    t.line = index;
    t.left = line.left;
    t.right = line.right;
    t.drop = drop;
    t.slope = libm::atan2(line.b.z - line.a.z, room.length);
    t.at = {line.a - drop * Vec3{0, 0, 1} - (t.section.depth.in() / 2) * z - reach_ * x, x, y, z};
    t.length = norm(line.b - line.a) + 2 * reach_;
    return t;
  }

  int ridge_piece(std::vector<LineRoom>& rooms, int header) {
    LineRoom room;
    RoofTimber t = along_line(begin(RoofTimberKind::kRidge, plan_.ridge, "R-"), d_.line,
                              d_.tan * plan_.ridge.breadth.in() / 2, room);
    end(t, -1.0 * side_.in, spot(d_.middle, d_.face - d_.overhang), RoofCutName::kPlumb, -1);
    end(t, side_.in, spot(d_.middle, d_.meets), RoofCutName::kPlumb, header);
    const int index = keep(std::move(t));
    if (index >= 0) rooms.push_back(room);
    return index;
  }

  /// From its trimmer, fitted later, into the corner of ridge and header.
  void valley(std::vector<LineRoom>& rooms, int line, const char* hand, int ridge, int header) {
    LineRoom room;
    RoofTimber t = along_line(begin(RoofTimberKind::kValley, plan_.valley, "VR-"), d_.line + line, 0, room);
    t.mark += hand;
    const double sign = line == 1 ? -1 : 1;
    const Vec2 out = sign * side_.along;
    end(t, out, spot(d_.middle + sign * d_.inner, 0), RoofCutName::kCheek, -1);
    end(t, -1.0 * out, spot(d_.middle + sign * plan_.ridge.breadth.in() / 2, 0), RoofCutName::kCheek, ridge);
    end(t, side_.in, spot(d_.middle, d_.meets), RoofCutName::kCheek, header);
    if (keep(std::move(t)) >= 0) rooms.push_back(room);
  }

  /// The trimmer on a hand, the one at the opening or the one under the wall's outside.
  [[nodiscard]] static int trimmer(const RoofOpening& opening, bool right, bool inner) {
    const std::size_t pairs = opening.placed.size() / 2, pair = inner ? pairs - 1 : 0;
    return opening.placed[2 * pair + (right ? 1 : 0)];
  }

  void fit_to_trimmers(const RoofOpening& opening) {
    for (RoofTimber& t : timbers_) {
      if (t.dormer != d_.dormer) continue;
      for (RoofEndCut& cut : t.cuts) {
        if (cut.against >= 0) continue;
        const double toward = dot(flat(to_world_direction(t.at, cut.plane.normal)), side_.along);
        if (libm::fabs(toward) > 1 - 1e-9) cut.against = trimmer(opening, toward > 0, true);
      }
    }
  }

  // Walls.

  /// Along the roof's plane; the wood lies above.
  [[nodiscard]] RoofEndCut on_roof(const Placement& at, int against) const {
    const Vec3 down{side_.sin * side_.in.x, side_.sin * side_.in.y, -side_.cos};
    RoofEndCut cut;
    cut.name = RoofCutName::kOnRoof;
    cut.plane.normal = to_local_direction(at, down);
    cut.plane.offset = dot(down, Vec3{side_.from.x, side_.from.y, side_.base} - at.origin);
    cut.at_b = cut.plane.normal.x > 0;
    cut.against = against;
    return cut;
  }

  void post(bool right, int trimmer, int plate) {
    const Section& section = plan_.dormer_post;
    RoofTimber t = begin(RoofTimberKind::kPost, section, "P-");
    t.mark += right ? "R" : "L";
    const double u = d_.middle + (right ? 1 : -1) * (d_.half - section.breadth.in() / 2);
    const Vec2 foot = spot(u, d_.face + section.depth.in() / 2);
    const Vec3 up{0, 0, 1}, y = level(side_.along);
    t.at = {Vec3{foot.x, foot.y, d_.plate} - reach_ * up, up, y, cross(up, y)};
    t.length = 2 * reach_;
    t.cuts.push_back(on_roof(t.at, trimmer));
    RoofEndCut top;
    top.at_b = true;
    top.plane = {{1, 0, 0}, reach_ - section.depth.in()};
    top.against = plate;
    t.cuts.push_back(top);
    t.run = t.line_length = d_.plate - section.depth.in() - (side_.base + side_.tan * d_.face);
    (void)keep(std::move(t));
  }

  /// From the roof to the front, under the rafters' feet.
  int side_plate(bool right, int trimmer) {
    const Section& section = plan_.dormer_post;
    const int index = d_.plane + (right ? 1 : 0);
    const RoofPlane& plane = shape_.planes[at(index)];
    RoofTimber t = begin(RoofTimberKind::kPlate, section, "L-");
    t.mark += right ? "R" : "L";
    t.left = t.right = index;
    const Vec2 middle = plane.from + (section.breadth.in() / 2) * plane.in;
    lay(t, {middle.x, middle.y, d_.plate - section.depth.in() / 2}, plane.along);
    t.cuts.push_back(on_roof(t.at, trimmer));
    end(t, -1.0 * side_.in, spot(d_.middle, d_.face - d_.overhang), RoofCutName::kPlumb, -1);
    t.run = t.line_length = d_.plate_end - d_.face + d_.overhang;
    return keep(std::move(t));
  }

  /// Across the face: between the side plates, or, of a shed, over the posts.
  int face_plate(int left, int right) {
    const Section& section = plan_.dormer_post;
    RoofTimber t = begin(RoofTimberKind::kPlate, section, "L-");
    t.mark += "F";
    if (!d_.gable) t.left = t.right = d_.plane;
    const Vec2 middle = spot(d_.middle, d_.face + section.breadth.in() / 2);
    lay(t, {middle.x, middle.y, d_.plate - section.depth.in() / 2}, side_.along);
    const double reach = d_.half - (d_.gable ? section.breadth.in() : 0);
    end(t, -1.0 * side_.along, spot(d_.middle - reach, 0), RoofCutName::kPlumb, left);
    end(t, side_.along, spot(d_.middle + reach, 0), RoofCutName::kPlumb, right);
    t.run = t.line_length = 2 * reach;
    return keep(std::move(t));
  }

  // Rafters.

  /// In one of its planes, its middle at `s` along that plane's wall, from one level depth to another; its ends uncut.
  [[nodiscard]] RoofTimber rafter(RoofTimberKind kind, int index, double s, double low, double high) const {
    const RoofPlane& plane = shape_.planes[at(index)];
    RoofTimber t = begin(kind, plan_.common, kind == RoofTimberKind::kCommon ? "C-" : "JR-");
    t.left = t.right = index;
    t.slope = libm::atan(plane.tan);
    const Vec3 x{plane.cos * plane.in.x, plane.cos * plane.in.y, plane.sin}, y = -1 * level(plane.along),
                                                                             z = cross(x, y);
    const Vec2 foot = plane.from + s * plane.along + low * plane.in;
    t.at = {Vec3{foot.x, foot.y, plane.height(foot)} - (t.section.depth.in() / 2) * z - reach_ * x, x, y, z};
    t.length = (high - low) / plane.cos + 2 * reach_;
    t.run = high - std::max(low, 0.0);
    t.line_length = t.run / plane.cos;
    return t;
  }

  void seat(RoofTimber& t, const RoofPlane& plane, double s) const {
    t.seat.heel = plane.base - plane.plate;
    if (!(plane.seat > 0.05)) return;
    const Vec2 wall = plane.from + s * plane.along, inside = wall + plane.seat * plane.in;
    const double under = plane.base - t.section.depth.in() / plane.cos;
    cut_seat(t, {wall.x, wall.y, plane.plate}, {inside.x, inside.y, plane.plate}, {wall.x, wall.y, under});
  }

  void frame_gable(const RoofOpening& opening, const std::vector<LineRoom>& rooms) {
    const int left = side_plate(false, trimmer(opening, false, false)),
              right = side_plate(true, trimmer(opening, true, false));
    (void)face_plate(left, right);
    post(false, trimmer(opening, false, false), left);
    post(true, trimmer(opening, true, false), right);
    int ridge = -1;
    for (std::size_t i = 0; i < timbers_.size(); ++i)
      if (timbers_[i].line == d_.line) ridge = static_cast<int>(i);
    const std::vector<double> stations = gable_stations();
    for (const bool is_right : {false, true}) {
      int number = 0;
      for (const double v : stations) gable_rafter(is_right, v, ridge, rooms, number);
    }
  }

  /// v of the middles of its rafters: from its face on, and at the front of an overhang that has room for them.
  [[nodiscard]] std::vector<double> gable_stations() const {
    const double clear = 2 * half_ + 1, wall = d_.plate_end - half_, jacks = d_.trimmer_end + half_,
                 last = d_.meets - half_, step = plan_.spacing.in();
    std::vector<double> found;
    if (d_.overhang > 4 * half_ + 1) found.push_back(d_.face - d_.overhang + half_);
    found.push_back(std::min(d_.face + half_, wall));
    const auto put = [&](double v) {
      if (v - found.back() >= clear) found.push_back(v);
    };
    bool between = false;
    for (double v = d_.face + half_ + step; v < last; v += step) {
      if (v > wall && v < jacks) {
        put(wall);
        between = true;
        continue;
      }
      if (v >= jacks && between) {
        if (v - jacks >= clear) put(jacks);
        between = false;
      }
      put(v);
    }
    if (between && last - jacks >= clear) put(jacks);
    return found;
  }

  void gable_rafter(bool right, double v, int ridge, const std::vector<LineRoom>& rooms, int& number) {
    const int index = d_.plane + (right ? 1 : 0);
    const RoofPlane& plane = shape_.planes[at(index)];
    const double s = dot(plane.along, spot(d_.middle, v) - plane.from);
    const bool common = v <= d_.plate_end - half_ + 1e-9;
    const double foot = (v - d_.wall_end) * side_.tan / d_.tan;  // of a jack: in from the wall line
    RoofTimber t = rafter(common ? RoofTimberKind::kCommon : RoofTimberKind::kValleyJack, index, s,
                          common ? -d_.overhang : foot, d_.half);
    if (common) {
      const double tail = d_.base - d_.tan * d_.overhang - plan_.common.depth.in() / d_.cos,
                   roof = side_.base + side_.tan * (v + half_);
      if (tail >= roof + limits::kUnderDormerTails)
        t.cuts.push_back(tail_cut(t.at, plane, plan_.tail));
      else
        end(t, -1.0 * plane.in, plane.from, RoofCutName::kPlumb, -1);
    } else {
      const int line = d_.line + (right ? 2 : 1);
      const auto room = std::find_if(rooms.begin(), rooms.end(), [&](const LineRoom& r) { return r.line == line; });
      if (room == rooms.end()) return;
      const Vec2 away = right ? left_of(room->along) : -1.0 * left_of(room->along);
      end(t, -1.0 * away, room->from + room->left * away, RoofCutName::kCheek, room->timber);
    }
    t.cuts.back().at_b = false;
    const double to_ridge = d_.half - plan_.ridge.breadth.in() / 2;
    end(t, plane.in, plane.from + to_ridge * plane.in, RoofCutName::kPlumb, ridge);
    t.shortening = plan_.ridge.breadth.in() / 2 / plane.cos;
    if (common) seat(t, plane, s);
    t.mark += (right ? "R" : "L") + std::to_string(number + 1);
    if (keep(std::move(t), limits::kShortestJack) >= 0) ++number;
  }

  void frame_shed(const RoofOpening& opening) {
    const int plate = face_plate(-1, -1);
    post(false, trimmer(opening, false, false), plate);
    post(true, trimmer(opening, true, false), plate);
    std::vector<double> stations{opening.from + half_};
    stations.reserve(opening.stations.size() + 2);
    for (const double u : opening.stations)
      if (u - stations.back() >= 2 * half_ + 1 && opening.to - u >= 3 * half_ + 1) stations.push_back(u);
    stations.push_back(opening.to - half_);
    const RoofPlane& plane = shape_.planes[at(d_.plane)];
    int number = 0;
    for (const double u : stations) {
      const double s = dot(plane.along, spot(u, d_.face) - plane.from);
      RoofTimber t = rafter(RoofTimberKind::kCommon, d_.plane, s, -d_.overhang, d_.meets - d_.face);
      t.cuts.push_back(tail_cut(t.at, plane, plan_.tail));
      end(t, side_.in, spot(u, d_.meets), RoofCutName::kPlumb, opening.high_header);
      seat(t, plane, s);
      t.mark += "-" + std::to_string(number + 1);
      if (keep(std::move(t), limits::kShortestJack) >= 0) ++number;
    }
  }

  const RoofPlan& plan_;
  const RoofShape& shape_;
  const DormerShape& d_;
  const RoofPlane& side_;
  std::string letters_;
  double half_;
  double reach_;  ///< that no part of it lies farther off
  std::vector<RoofTimber>& timbers_;
};

}  // namespace

RoofOpening place_dormer_opening(const RoofPlan& plan, const RoofShape& shape, const DormerShape& dormer,
                                 std::vector<RoofTimber>& timbers, std::vector<LineRoom>& rooms) {
  return DormerFramer(plan, shape, dormer, timbers).open(rooms);
}

void place_dormer(const RoofPlan& plan, const RoofShape& shape, const DormerShape& dormer, const RoofOpening& opening,
                  const std::vector<LineRoom>& rooms, std::vector<RoofTimber>& timbers) {
  DormerFramer(plan, shape, dormer, timbers).frame(opening, rooms);
}

}  // namespace bentbook
