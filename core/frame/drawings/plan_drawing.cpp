#include "frame/drawings/plan_drawing.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include "draw/pitch_mark.h"
#include "frame/drawings/elevation.h"

namespace bentbook {
namespace {

using draw::Fill;
using draw::Meaning;
using draw::Point;
using draw::Stroke;

struct Reach {
  double lo = 1e300, hi = -1e300;
  void take(double v) {
    lo = std::min(lo, v);
    hi = std::max(hi, v);
  }
};

/// Timbers in drawing order for which `wanted` holds, as polygons.
template <class Wanted>
void add_timbers(draw::Drawing& d, const Frame& frame, Wanted&& wanted) {
  for (const TimberKind kind : kDrawnInOrder)
    for (const Timber& timber : frame.timbers)
      if (timber.kind == kind && timber.placed) wanted(d, timber);
}

bool runs_along(const Timber& timber) { return libm::fabs(timber.at.x.y) > 0.9; }

double middle_y(const Timber& timber) { return timber.at.origin.y + timber.length / 2 * timber.at.x.y; }

/// How far from the bent the nearest common rafter stands.
double nearest_rafter(const Frame& frame, double y) {
  double nearest = 1e300;
  for (const Timber& timber : frame.timbers)
    if (timber.kind == TimberKind::kCommonRafter) nearest = std::min(nearest, libm::fabs(middle_y(timber) - y));
  return nearest;
}

double bent_at(const FramePlan& plan, int label) {
  double y = 0;
  for (const Bay& bay : plan.bays) {
    if (label == 1) break;
    y += bay.width.in();
    if (bay.label == label) return y;
  }
  return 0;
}

/// The roof's slope over its left side (−1) or right side (1): the triangle of a rise in 12, else the angle at the
/// plate. `peak`: the roof's highest point.
void draw_pitch(draw::Drawing& d, const Slope& pitch, const FramePlan& plan, Point peak, int side, bool triangle,
                const std::string& key) {
  const double half = plan.span.in() / 2;
  if (!triangle || !draw::has_triangle(pitch)) {
    const double plate = (side < 0 ? plan.plate_left : plan.plate_right).in(), slope = pitch.deg();
    d.angles.push_back(
        {{side * half, plate}, side < 0 ? 0 : 180 - slope, side < 0 ? slope : 180, 2, key, Meaning::kGiven});
    return;
  }
  // Of half the span. The small gable over a long side has its triangle larger, and no overhang's figure beside it.
  const bool small = key == "pitch";
  const double from_wall = small ? 0.1 : 0.24, long_side = small ? 0.62 : 0.4;
  constexpr double kOver = 0.03;
  const double low = side * half * (1 - from_wall);
  const double top = peak.y - libm::fabs(peak.x - low) * pitch.tan() + kOver * half;
  draw::add_pitch_mark(d, draw::pitch_mark({low, top}, -side * long_side * half, pitch.tan(), true), key,
                       side < 0 ? "in_12_left" : "in_12_right");
}

void roof_figures(draw::Drawing& d, const FramePlan& plan, Point peak, bool triangle) {
  const double half = plan.span.in() / 2, over = plan.eave_overhang.in();
  const double left = plan.plate_left.in(), right = plan.plate_right.in();
  const bool gable = plan.form == RoofForm::kGable;
  d.dimensions.push_back({{-half, 0}, {half, 0}, -1, {1, 0}, "span", Meaning::kGiven});
  d.dimensions.push_back({{-half, 0}, {-half, left}, 1, {0, 1}, "plate_left", Meaning::kGiven});
  draw_pitch(d, plan.pitch_left, plan, peak, -1, triangle, "pitch_left");
  if (over > 0)
    d.dimensions.push_back({{-half - over, left}, {-half, left}, 1, {1, 0}, "eave_overhang", Meaning::kGiven});
  if (gable && !(plan.plate_right == plan.plate_left))
    d.dimensions.push_back({{half, 0}, {half, right}, -1, {0, 1}, "plate_right", Meaning::kGiven});
  if (gable && !(plan.pitch_right == plan.pitch_left))
    draw_pitch(d, plan.pitch_right, plan, peak, 1, triangle, "pitch_right");
}

draw::Drawing draw_bent(const FramePlan& plan, const Frame& frame, int label, bool triangle) {
  draw::Drawing d;
  const double y = bent_at(plan, label), rafter = nearest_rafter(frame, y) + 1;
  Reach top;
  add_timbers(d, frame, [&](draw::Drawing& drawing, const Timber& timber) {
    const bool along = runs_along(timber);
    const bool common = timber.kind == TimberKind::kCommonRafter;
    if (!along && (common ? libm::fabs(middle_y(timber) - y) > rafter : libm::fabs(middle_y(timber) - y) > 12)) return;
    const std::vector<Vec3> corners = corners_of(timber);
    Reach reach;
    for (const Vec3& p : corners) reach.take(p.y);
    const bool here = reach.lo < y + 6 && reach.hi > y - 6;
    if (along && (!here || timber.kind == TimberKind::kJoist || timber.kind == TimberKind::kBrace)) return;
    drawing.polygons.push_back(elevation_of(corners, Elevation::kAcross, along ? Fill::kSection : Fill::kPaper));
    for (const Vec3& p : corners) top.take(p.z);
  });
  const double half = plan.span.in() / 2;
  d.lines.push_back({{-half - 18, 0}, {half + 18, 0}, Stroke::kThin});
  const Point peak{frame.ridge_x, top.hi > 0 ? top.hi : frame.ridge_z};
  roof_figures(d, plan, peak, triangle);
  if (top.hi > 0) d.notes.push_back({peak, "peak_top", Meaning::kAnswer, draw::Stands::kAside});
  return d;
}

}  // namespace

draw::Drawing bent_drawing(const FramePlan& plan, const Frame& frame, int label) {
  return draw_bent(plan, frame, label, true);
}

namespace {

/// Inches from the middle of the first bent to the middle of the last.
double along_bents(const FramePlan& plan) { return (outside_length(plan) - plan.sections.post.breadth).in(); }

/// The bent that shows most: of a hip roof the first one with a tie.
int telling_bent(const FramePlan& plan) {
  return plan.form == RoofForm::kHip && plan.bays.size() > 1 ? plan.bays.front().label : 1;
}

}  // namespace

draw::Drawing options_drawing(const FramePlan& plan, const Frame& frame) {
  // No room for a triangle among what is drawn there.
  draw::Drawing d = draw_bent(plan, frame, telling_bent(plan), false);
  std::erase_if(d.dimensions, [](const draw::Dimension& one) { return one.key == "span"; });
  d.notes.clear();
  const bool gable = plan.form == RoofForm::kGable;
  // Ties hang under the lower plate, a lean-to's left one; collars stand over the higher.
  const Length low = gable ? std::min(plan.plate_left, plan.plate_right) : plan.plate_left;
  const double half = plan.span.in() / 2, plate = low.in(), tie = plate - plan.tie_drop.in();
  const auto level = [&](double from, double to, double y, double row, const char* key) {
    d.dimensions.push_back({{from, y}, {to, y}, row, {1, 0}, key, Meaning::kGiven});
  };
  const auto plumb = [&](double x, double from, double to, double row, const char* key) {
    d.dimensions.push_back({{x, from}, {x, to}, row, {0, 1}, key, Meaning::kGiven});
  };
  if (plan.ties) {
    plumb(-half / 2, tie, plate, 0, "tie_drop");
    if (plan.on_ties == OnTies::kQueenPosts && plan.form != RoofForm::kHip) {
      const double inset = plan.queen_inset.count > 0 ? plan.queen_inset.in() : half / 2;
      level(half - inset, half, tie, 1, "queen_inset");
    }
    if (plan.braces) {
      const double post = half - plan.sections.post.depth.in(), under = tie - plan.sections.tie.depth.in();
      plumb(post, under - plan.brace_leg_post.in(), under, 1, "brace_leg_post");
      level(post - plan.brace_leg_beam.in(), post, under - plan.brace_leg_post.in(), -1, "brace_leg_beam");
    }
  }
  if (plan.collars && gable) {
    const double high = std::max(plan.plate_left, plan.plate_right).in();
    plumb(half / 4, high, high + plan.collar_rise.in(), 0, "collar_rise");
  }
  return d;
}

draw::Drawing wall_drawing(const FramePlan& plan, const Frame& frame) {
  draw::Drawing d;
  Reach posts, all, top;
  add_timbers(d, frame, [&](draw::Drawing& drawing, const Timber& timber) {
    const bool wall = timber.place.line == 'E' || timber.place.line == 'D';
    if (!wall && timber.kind != TimberKind::kRidgeBeam && timber.kind != TimberKind::kSill) return;
    if (timber.kind == TimberKind::kQueenPost || timber.kind == TimberKind::kJoist) return;
    const std::vector<Vec3> corners = corners_of(timber);
    drawing.polygons.push_back(elevation_of(corners, Elevation::kAlong, Fill::kPaper));
    for (const Vec3& p : corners) {
      all.take(p.y);
      top.take(p.z);
      if (timber.kind == TimberKind::kPost) posts.take(p.y);
    }
  });
  const double length = along_bents(plan);
  d.lines.push_back({{-18, 0}, {length + 18, 0}, Stroke::kThin});
  double y = 0;
  for (const Bay& bay : plan.bays) {
    const double next = y + bay.width.in();
    if (plan.bays.size() <= kMostBaysShown)
      d.dimensions.push_back({{y, 0}, {next, 0}, -1, {1, 0}, "bay:" + std::to_string(bay.label), Meaning::kGiven});
    y = next;
  }
  const double past = plan.sections.post.breadth.in() / 2;
  if (plan.bays.size() > 1)
    d.dimensions.push_back({{-past, 0}, {length + past, 0}, -2.2, {1, 0}, "length", Meaning::kAnswer});
  const double over = plan.gable_overhang.in();
  if (over > 0 && posts.lo < posts.hi && plan.form != RoofForm::kHip)
    d.dimensions.push_back(
        {{posts.lo - over, top.hi}, {posts.lo, top.hi}, 1, {1, 0}, "gable_overhang", Meaning::kGiven});
  return d;
}

draw::Drawing building_drawing(const FramePlan& plan, const Frame& frame) {
  draw::Drawing d = bent_drawing(plan, frame, telling_bent(plan)), side = wall_drawing(plan, frame);
  Point peak{frame.ridge_x, frame.ridge_z};
  for (const draw::Note& note : d.notes) peak = note.at;
  d.dimensions.clear();
  d.angles.clear();
  d.notes.clear();
  const double length = along_bents(plan), past = plan.sections.post.breadth.in() / 2;
  const double half = plan.span.in() / 2, height = plan.plate_left.in();
  Reach top;
  for (const draw::Polygon& polygon : side.polygons)
    for (const Point& p : polygon.points) top.take(p.y);
  // Below the gable's ground with room for its span, one middle over the other.
  const double down = std::max(top.hi, 0.0) + 0.2 * std::max(length, 2 * half);
  const auto moved = [&](Point p) { return Point{p.x - length / 2, p.y - down}; };
  for (draw::Polygon& polygon : side.polygons) {
    for (Point& p : polygon.points) p = moved(p);
    d.polygons.push_back(std::move(polygon));
  }
  for (const draw::Line& line : side.lines) d.lines.push_back({moved(line.a), moved(line.b), line.stroke});
  d.dimensions.push_back({{-half, 0}, {half, 0}, -1, {1, 0}, "span", Meaning::kGiven});
  d.dimensions.push_back({{-half, 0}, {-half, height}, 1, {0, 1}, "plate", Meaning::kGiven});
  d.dimensions.push_back({moved({-past, 0}), moved({length + past, 0}), -1, {1, 0}, "length", Meaning::kGiven});
  draw_pitch(d, plan.pitch_left, plan, peak, -1, true, "pitch");
  return d;
}

}  // namespace bentbook
