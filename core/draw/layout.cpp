#include "draw/layout.h"

#include <algorithm>

#include "draw/draft.h"
#include "numeric/libm.h"

namespace bentbook::draw {
namespace {

/// Bounds of the thing itself, in inches.
Bounds thing(const Drawing& drawing) {
  Bounds bounds;
  const auto add = [&](Point p) {
    if (finite(p)) bounds.add(p);
  };
  for (const Polygon& polygon : drawing.polygons)
    for (const Point& p : polygon.points) add(p);
  for (const Line& line : drawing.lines) {
    add(line.a);
    add(line.b);
  }
  for (const Arc& arc : drawing.arcs) {
    constexpr int kParts = 24;
    for (int i = 0; i <= kParts; ++i) {
      const double angle = (arc.from_deg + (arc.to_deg - arc.from_deg) * i / kParts) * libm::kPi / 180;
      add({arc.centre.x + arc.radius * libm::cos(angle), arc.centre.y + arc.radius * libm::sin(angle)});
    }
  }
  for (const Dimension& dimension : drawing.dimensions) {
    add(dimension.a);
    add(dimension.b);
  }
  for (const AngleDimension& angle : drawing.angles) add(angle.vertex);
  for (const Note& note : drawing.notes) add(note.at);
  return bounds;
}

struct Fit {
  double scale = 1;
  Point origin;
  double height = 0;  ///< that is needed
};

/// The largest scale at which the draft goes into the rectangle; 0 if it never does. Figures keep their size, so the
/// scale is searched for; a little larger may need more room than a little smaller (a figure that finds a place beside
/// its line takes more than one on it), so it is looked for from the top down.
double largest_scale(const Drawing& drawing, std::span<const Size> sizes, const LayoutOptions& options, Size room,
                     double most, Bounds& best_bounds) {
  constexpr double kLeast = 0.1;  // of `most`
  constexpr double kStep = 0.9;
  constexpr int kRefine = 3;
  const auto fits = [&](double scale) {
    const Bounds bounds = bounds_of(make_draft(drawing, sizes, options, scale, {}, false));
    const bool in = bounds.width() <= room.w && bounds.height() <= room.h;
    if (in) best_bounds = bounds;
    return in;
  };
  double best = most;
  while (!fits(best)) {
    best *= kStep;
    if (best < most * kLeast) return 0;
  }
  double high = std::min(most, best / kStep);
  for (int i = 0; i < kRefine && high > best; ++i) {
    const double middle = (best + high) / 2;
    (fits(middle) ? best : high) = middle;
  }
  return best;
}

/// `options.row` is made smaller where dimension rows take too much of the rectangle.
Fit fit(const Drawing& drawing, std::span<const Size> sizes, LayoutOptions& options) {
  const Bounds world = thing(drawing);
  if (world.empty()) return {1, {options.rect.w / 2, options.rect.h / 2}, options.rect.h};
  const Size room{std::max(options.rect.w - 2 * options.padding, 1.0),
                  std::max(options.rect.h - 2 * options.padding, 1.0)};
  const double most = std::min(
      {room.w / std::max(world.width(), 1e-6), room.h / std::max(world.height(), 1e-6), options.max_scale, 1e7});
  Bounds bounds;
  double scale = 0;
  const double row = options.row;
  for (const double part : {1.0, 0.75, 0.5}) {
    options.row = row * part;
    scale = largest_scale(drawing, sizes, options, room, most, bounds);
    if (scale > 0) break;
  }
  double height = options.rect.h;
  if (scale > 0) {
    height = std::min(bounds.height() + 2 * options.padding, height);
  } else {  // more figures than room: keep_inside() packs them
    scale = most * 0.4;
    bounds = {world.left * scale, -world.bottom * scale, world.right * scale, -world.top * scale};
  }
  return {scale,
          {options.rect.w / 2 - (bounds.left + bounds.right) / 2, height / 2 - (bounds.top + bounds.bottom) / 2},
          height};
}

Box finger_target(const Box& box, const LayoutOptions& options) {
  const Box u = upright(box);
  Box target{u.centre, std::max(u.w, options.target), std::max(u.h, options.target), 0};
  // Pushed back into the rectangle where it is large enough.
  const auto inside = [](double centre, double size, double room) {
    return size >= room ? room / 2 : std::clamp(centre, size / 2, room - size / 2);
  };
  target.centre = {inside(target.centre.x, target.w, options.rect.w),
                   inside(target.centre.y, target.h, options.rect.h)};
  return target;
}

const std::string& key_of(const Drawing& drawing, std::size_t index) {
  const std::size_t dimensions = drawing.dimensions.size(), angles = drawing.angles.size();
  if (index < dimensions) return drawing.dimensions[index].key;
  if (index < dimensions + angles) return drawing.angles[index - dimensions].key;
  return drawing.notes[index - dimensions - angles].key;
}

}  // namespace

Layout lay_out(const Drawing& drawing, std::span<const Size> sizes, const LayoutOptions& wanted) {
  LayoutOptions options = wanted;
  Fit found = fit(drawing, sizes, options);
  options.rect.h = found.height;
  const bool zoomed = !(options.view == View{});
  if (zoomed) {
    const View& view = options.view;
    const Point middle{options.rect.w / 2, options.rect.h / 2};
    found.scale *= view.zoom;
    found.origin = {middle.x + (found.origin.x - middle.x) * view.zoom + view.dx,
                    middle.y + (found.origin.y - middle.y) * view.zoom + view.dy};
  }
  Draft draft = make_draft(drawing, sizes, options, found.scale, found.origin, zoomed);
  keep_inside(draft.places, draft.requests, options.rect, zoomed ? 2 : options.padding);
  Layout layout = std::move(draft.layout);
  layout.size = options.rect;
  for (Place& place : draft.places) {
    if (place.visible) layout.lines.insert(layout.lines.end(), place.strokes.begin(), place.strokes.end());
    layout.figures.push_back({place.index, key_of(drawing, place.index), place.meaning, place.box,
                              finger_target(place.box, options), place.visible});
  }
  return layout;
}

}  // namespace bentbook::draw
