#include "paper/tiles.h"

#include <algorithm>
#include <array>
#include <utility>

#include "draw/fill.h"
#include "numeric/libm.h"
#include "paper/clip.h"
#include "paper/page_part.h"

namespace bentbook::paper {
namespace {

using draw::Point;
using draw::Stroke;

constexpr double kFine = 0.18;   // mm, the width of what is not the drawing's own
constexpr double kHatch = 5;     // mm between strokes of a hatch
constexpr double kRing = 2;      // radius of a cross's ring
constexpr double kName = 3.4;    // em of a neighbour’s name and of a bar’s length
constexpr double kFromEnd = 25;  // of a join to its outermost crosses
constexpr double kTick = 2;      // half an end stroke of a check bar

int count_over(double length, double window) {
  if (length <= window) return 1;
  return static_cast<int>(libm::ceil((length - kTileOverlap) / (window - kTileOverlap) - 1e-9));
}

TilePlan planned(PageSize size, bool lying, double width, double height, const TileFrame& frame) {
  const PageMeasure page = measure_of(size, lying);
  TilePlan plan;
  plan.size = size;
  plan.lying = lying;
  plan.corner = {kTileMargin + frame.left, kTileMargin + frame.top};
  plan.width = page.width - 2 * kTileMargin - frame.left;
  plan.height = page.height - 2 * kTileMargin - frame.top - frame.bottom;
  plan.columns = count_over(width, plan.width);
  plan.rows = count_over(height, plan.height);
  const auto first = [](double length, double window, int count) {
    const double all = window + (count - 1) * (window - kTileOverlap);
    return (length - all) / 2;
  };
  plan.start = {first(width, plan.width, plan.columns), first(height, plan.height, plan.rows)};
  return plan;
}

PageLine fine_line(Point a, Point b, Stroke stroke = Stroke::kThin) { return {a, b, stroke, kFine}; }

class Tile {
 public:
  Tile(const Page& drawing, const TilePlan& plan, int column, int row)
      : drawing_(drawing), plan_(plan), column_(column), row_(row), window_(plan.window(column, row)) {
    page_.lying = plan.lying;
  }

  Page made() {
    for (const PagePolygon& polygon : drawing_.polygons) add(polygon);
    for (const PageLine& line : drawing_.lines) add(line);
    for (const PageArc& arc : drawing_.arcs) {
      const std::vector<PageArc> parts = clipped_arc(arc, window_);
      page_.arcs.insert(page_.arcs.end(), parts.begin(), parts.end());
    }
    for (const PageText& text : drawing_.texts) add(text);
    joins();
    crosses();
    move_by(page_, plan_.corner.x - window_.left, plan_.corner.y - window_.top);
    return std::move(page_);
  }

 private:
  void add(const PageLine& line) {
    if (const auto part = clipped_line(line, window_)) page_.lines.push_back(*part);
  }

  /// Hatching becomes strokes before it is clipped: so they run on over a join.
  void add(const PagePolygon& polygon) {
    const std::size_t n = polygon.points.size();
    if (polygon.fill == draw::Fill::kSection || polygon.fill == draw::Fill::kWaste) {
      for (const bool down : {false, true}) {
        if (down && polygon.fill == draw::Fill::kSection) break;
        for (const draw::Segment& s : draw::hatch(polygon.points, kHatch, down)) add(fine_line(s.a, s.b));
      }
    } else if (polygon.fill != draw::Fill::kNone) {
      if (auto area = clipped_area(polygon.points, window_); area.size() > 2)
        page_.polygons.push_back({std::move(area), polygon.fill, false, polygon.stroke});
    }
    if (!polygon.outlined) return;
    for (std::size_t i = 0; i < n; ++i)
      add(PageLine{polygon.points[i], polygon.points[i + 1 == n ? 0 : i + 1], polygon.stroke,
                   polygon.stroke == Stroke::kThin ? kFine : 0});
  }

  [[nodiscard]] static bool within(const Window& in, const Window& out) {
    return in.left >= out.left && in.right <= out.right && in.top >= out.top && in.bottom <= out.bottom;
  }

  void add(const PageText& text) {
    const Window box = bounds_of(text);
    if (within(box, window_)) return page_.texts.push_back(text);
    // The page that has its middle takes it, unless another one has it whole.
    const Point middle{(box.left + box.right) / 2, (box.top + box.bottom) / 2};
    for (int r = 0; r < plan_.rows; ++r)
      for (int c = 0; c < plan_.columns; ++c)
        if (within(box, plan_.window(c, r))) return;
    const auto nearest = [](double at, double start, double step, int count) {
      return std::clamp(static_cast<int>(libm::floor((at - start) / step)), 0, count - 1);
    };
    if (column_ != nearest(middle.x, plan_.start.x + kTileOverlap / 2, plan_.width - kTileOverlap, plan_.columns))
      return;
    if (row_ != nearest(middle.y, plan_.start.y + kTileOverlap / 2, plan_.height - kTileOverlap, plan_.rows)) return;
    const auto shift = [](double low, double high, double from, double to) {
      return low < from ? from - low : std::min(0.0, std::max(to - high, from - low));
    };
    PageText moved = text;
    moved.at.x += shift(box.left, box.right, window_.left, window_.right);
    moved.at.y += shift(box.top, box.bottom, window_.top, window_.bottom);
    page_.texts.push_back(std::move(moved));
  }

  void name(Point at, int column, int row) {
    page_.texts.push_back({{at.x, at.y + kName * 0.36}, kName, false, Align::kMiddle, 0, tile_name(column, row)});
  }

  /// Where to cut, and who lies beyond.
  void joins() {
    const double x = (window_.left + window_.right) / 2, y = (window_.top + window_.bottom) / 2;
    const double aside = kTileOverlap / 4;
    for (const int side : {-1, 1}) {
      const int beside = column_ + side, beyond = row_ + side;
      if (beside >= 0 && beside < plan_.columns) {
        const double at = plan_.join_x(std::min(beside, column_));
        page_.lines.push_back(fine_line({at, window_.top}, {at, window_.bottom}, Stroke::kHidden));
        name({at + side * aside, y}, beside, row_);
      }
      if (beyond >= 0 && beyond < plan_.rows) {
        const double at = plan_.join_y(std::min(beyond, row_));
        page_.lines.push_back(fine_line({window_.left, at}, {window_.right, at}, Stroke::kHidden));
        name({x, at + side * aside}, column_, beyond);
      }
    }
  }

  void cross(Point at) {
    if (at.x - kCrossArm < window_.left - 1e-6 || at.x + kCrossArm > window_.right + 1e-6) return;
    if (at.y - kCrossArm < window_.top - 1e-6 || at.y + kCrossArm > window_.bottom + 1e-6) return;
    page_.lines.push_back(fine_line({at.x - kCrossArm, at.y}, {at.x + kCrossArm, at.y}));
    page_.lines.push_back(fine_line({at.x, at.y - kCrossArm}, {at.x, at.y + kCrossArm}));
    page_.arcs.push_back({at, kRing, 0, 360, Stroke::kThin});
  }

  /// Places of the drawing, the same for all pages that show them: two on the way along each side, one where four meet.
  void crosses() {
    for (int c = 0; c + 1 < plan_.columns; ++c)
      for (int r = 0; r < plan_.rows; ++r) {
        const Window beside = plan_.window(c, r);
        cross({plan_.join_x(c), beside.top + kFromEnd});
        cross({plan_.join_x(c), beside.bottom - kFromEnd});
        if (r + 1 < plan_.rows) cross({plan_.join_x(c), plan_.join_y(r)});
      }
    for (int r = 0; r + 1 < plan_.rows; ++r)
      for (int c = 0; c < plan_.columns; ++c) {
        const Window above = plan_.window(c, r);
        cross({above.left + kFromEnd, plan_.join_y(r)});
        cross({above.right - kFromEnd, plan_.join_y(r)});
      }
  }

  const Page& drawing_;
  const TilePlan& plan_;
  int column_, row_;
  Window window_;
  Page page_;
};

}  // namespace

Window TilePlan::window(int column, int row) const {
  const double left = start.x + column * (width - kTileOverlap), top = start.y + row * (height - kTileOverlap);
  return {left, top, left + width, top + height};
}
double TilePlan::join_x(int before) const { return window(before, 0).right - kTileOverlap / 2; }
double TilePlan::join_y(int before) const { return window(0, before).bottom - kTileOverlap / 2; }

TilePlan plan_tiles(PageSize size, double width, double height, const TileFrame& frame) {
  const TilePlan upright = planned(size, false, width, height, frame),
                 lying = planned(size, true, width, height, frame);
  return lying.pages() < upright.pages() ? lying : upright;
}

std::string tile_name(int column, int row) {
  std::string letters;
  for (int c = column; c >= 0; c = c / 26 - 1) letters.insert(letters.begin(), static_cast<char>('A' + c % 26));
  return letters + std::to_string(row + 1);
}

Page tile_page(const Page& drawing, const TilePlan& plan, int column, int row) {
  return Tile(drawing, plan, column, row).made();
}

void add_tile_map(Page& page, const TilePlan& plan, int column, int row, Window room) {
  const double cell_w = plan.width / plan.height;  // to a height of 1
  const double high =
      std::min((room.bottom - room.top) / plan.rows, (room.right - room.left) / (plan.columns * cell_w));
  const double wide = high * cell_w;
  const double left = room.right - wide * plan.columns;
  for (int r = 0; r < plan.rows; ++r)
    for (int c = 0; c < plan.columns; ++c) {
      const Point a{left + c * wide, room.top + r * high}, b{a.x + wide, a.y + high};
      const bool here = c == column && r == row;
      page.polygons.push_back({{a, {b.x, a.y}, b, {a.x, b.y}}, here ? draw::Fill::kInk : draw::Fill::kNone, false});
      for (const PageLine& side :
           {fine_line(a, {b.x, a.y}), fine_line({b.x, a.y}, b), fine_line(b, {a.x, b.y}), fine_line({a.x, b.y}, a)})
        page.lines.push_back(side);
    }
}

void add_check_bars(Page& page, Point corner, double side, const std::string& said) {
  const Point right{corner.x + side, corner.y}, up{corner.x, corner.y - side};
  for (const Point end : {right, up}) page.lines.push_back({corner, end, Stroke::kVisible, 0.25});
  for (const double x : {corner.x, right.x})
    page.lines.push_back({{x, corner.y - kTick}, {x, corner.y + kTick}, Stroke::kVisible, 0.25});
  for (const double y : {corner.y, up.y})
    page.lines.push_back({{corner.x - kTick, y}, {corner.x + kTick, y}, Stroke::kVisible, 0.25});
  page.texts.push_back({{corner.x + side / 2, corner.y + 3.6}, kName, false, Align::kMiddle, 0, said});
  page.texts.push_back({{corner.x - 1.2, corner.y - side / 2}, kName, false, Align::kMiddle, 90, said});
}

}  // namespace bentbook::paper
