#include "draw/figures.h"

#include <algorithm>

#include "numeric/libm.h"
#include "numeric/sorting.h"

// Every figure has a list of spots, the best first, each with a price. A spot pays for every line that runs through the
// text and, heavily, for a finger's target that lies on another's; a spot that lies on another figure cannot be had.
// The cheapest is taken. A price is about "how much worse to read", in lines crossed.

namespace bentbook::draw {
namespace {

constexpr double kAir = 3;          // px between a line and the figure above it
constexpr double kClearance = 2;    // px kept free around a figure
constexpr double kTargetPrice = 6;  // for fingers' targets that overlap
constexpr double kTaken = 1e6;

struct Spot {
  Box box;
  double price = 0;
  std::vector<PlacedLine> strokes;
};

Point unit(double angle) { return {libm::cos(angle), libm::sin(angle)}; }
Point between(Point a, Point b, double t) { return {a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t}; }
double distance(Point a, Point b) { return libm::hypot(b.x - a.x, b.y - a.y); }

/// Half of what an upright w × h box measures in a direction.
double support(Size size, Point direction) {
  return size.w / 2 * libm::fabs(direction.x) + size.h / 2 * libm::fabs(direction.y);
}

Box finger_target(const Box& box, double least) {
  const Box u = upright(box);
  return {u.centre, std::max(u.w, least), std::max(u.h, least), 0};
}

PlacedLine leader(Point from, const Box& box) {
  const Box u = upright(box);
  const Point to{std::clamp(from.x, u.centre.x - u.w / 2, u.centre.x + u.w / 2),
                 std::clamp(from.y, u.centre.y - u.h / 2, u.centre.y + u.h / 2)};
  return {from, to, Stroke::kThin, false, false, true};
}

double price_of_line(const PlacedLine& line) {
  if (!line.ordinary) return 1.5;
  return line.stroke == Stroke::kVisible || line.stroke == Stroke::kCut ? 4 : 1;
}

class Placing {
 public:
  Placing(const std::vector<PlacedLine>& lines, double target) : lines_(lines), target_(target) {}

  void offer(const FigureRequest& request, Box box, double base, std::vector<PlacedLine> strokes = {}) {
    if (base >= best_.price) return;
    double price = base;
    for (const Place& other : placed_) {
      if (!other.visible) continue;
      if (overlap(grown(box, kClearance), other.box)) return;
      if (request.meaning == Meaning::kGiven && other.meaning == Meaning::kGiven &&
          overlap(finger_target(box, target_), other.target))
        price += kTargetPrice;
    }
    const Box roomy = grown(box, 1);
    for (const std::vector<PlacedLine>* list : {&lines_, static_cast<const std::vector<PlacedLine>*>(&own_)})
      for (const PlacedLine& line : *list) {
        if (price >= best_.price) return;
        if (crosses(roomy, line.a, line.b)) price += price_of_line(line);
      }
    for (const PlacedLine& stroke : strokes) price += price_of_stroke(stroke);
    if (price < best_.price) best_ = {box, price, std::move(strokes)};
  }

  /// A line carried on over a neighbour's line would make the figure look like the neighbour's.
  [[nodiscard]] double price_of_stroke(const PlacedLine& stroke) const {
    double price = 0;
    for (const Place& other : placed_)
      if (crosses(other.box, stroke.a, stroke.b)) price += 2;
    const double length = distance(stroke.a, stroke.b);
    if (stroke.leader || length < 16) return price;
    const Box track{between(stroke.a, stroke.b, 0.5 + 5 / length), length - 10, 4, reading_angle(stroke.a, stroke.b)};
    for (const PlacedLine& line : lines_)
      if (!line.ordinary && !line.oblique && crosses(track, line.a, line.b)) price += 2;
    return price;
  }

  [[nodiscard]] double best_price() const { return best_.price; }
  void start() { best_ = {{}, kTaken, {}}; }
  void take(const FigureRequest& request) {
    Place place{request.index, request.meaning, best_.box, finger_target(best_.box, target_),
                best_.strokes, request.visible};
    if (request.visible) own_.insert(own_.end(), place.strokes.begin(), place.strokes.end());
    placed_.push_back(std::move(place));
  }
  std::vector<Place>& placed() { return placed_; }

 private:
  const std::vector<PlacedLine>& lines_;
  std::vector<PlacedLine> own_;  // strokes that came with figures
  double target_;
  std::vector<Place> placed_;
  Spot best_;
};

/// Rings of spots around a point, each joined to it by a leader.
void offer_set_aside(Placing& placing, const FigureRequest& request, Point anchor, double first, double base) {
  constexpr int kRings = 9, kWays = 12;
  for (int ring = 0; ring < kRings; ++ring) {
    if (base + ring >= placing.best_price()) return;
    for (int way = 0; way < kWays; ++way) {
      // Upward ways first, then ever more to the side.
      const int turn = way % 2 == 0 ? way / 2 : -(way + 1) / 2;
      const Point direction = unit(-libm::kPi / 2 + turn * 2 * libm::kPi / kWays);
      const double reach = first + ring * (request.size.h + 4) + support(request.size, direction);
      const Box box{moved(anchor, direction, reach), request.size.w, request.size.h, 0};
      placing.offer(request, box, base + ring + 0.02 * way, {leader(anchor, box)});
    }
  }
}

/// Text stands upright whichever way its line runs.
void offer_on_line(Placing& placing, const FigureRequest& request) {
  const double length = distance(request.a, request.b), angle = reading_angle(request.a, request.b);
  const Point along = unit(angle), up{along.y, -along.x};
  const double off = support(request.size, up) + kAir, extent = 2 * support(request.size, along);
  const auto box = [&](Point at, double side) {
    return Box{moved(at, up, side * off), request.size.w, request.size.h, 0};
  };
  const Point middle = between(request.a, request.b, 0.5);
  const double slack = (length - extent) / 2 - 4;
  if (slack >= 0) {
    placing.offer(request, box(middle, 1), 0);
    for (const double part : {0.5, -0.5, 1.0, -1.0}) {
      placing.offer(request, box(moved(middle, along, part * slack), 1), 0.3 + 0.3 * libm::fabs(part));
      placing.offer(request, box(moved(middle, along, part * slack), -1), 0.9 + 0.3 * libm::fabs(part));
    }
    placing.offer(request, box(middle, -1), 0.8);
  }
  // Beside the line, which is carried on under the figure.
  const double ahead = length / 2 + extent / 2 + 8;
  for (const double way : {1.0, -1.0}) {
    const Point end = moved(middle, along, way * length / 2);
    const PlacedLine on{end, moved(middle, along, way * (ahead + extent / 2)), Stroke::kThin, false, false};
    for (const double side : {1.0, -1.0})
      placing.offer(request, box(moved(middle, along, way * ahead), side), (way > 0 ? 1.2 : 1.4) + (side > 0 ? 0 : 0.6),
                    {on});
  }
  offer_set_aside(placing, request, middle, 14, 2.5);
}

void offer_on_arc(Placing& placing, const FigureRequest& request) {
  const double middle = (request.from + request.to) / 2, half = (request.to - request.from) / 2;
  const auto spot = [&](double angle, double radius, double sign) {
    const Point direction = unit(angle);
    return Box{moved(request.a, direction, radius + sign * (support(request.size, direction) + kAir + 1)),
               request.size.w, request.size.h, 0};
  };
  for (const double part : {0.0, 0.4, -0.4, 0.8, -0.8})
    placing.offer(request, spot(middle + part * half, request.radius, 1), 0.3 * libm::fabs(part));
  // Inside the angle where it is wide, else just past its rays.
  placing.offer(request, spot(middle, request.radius, -1), 0.6);
  for (const double past : {0.25, 0.5})
    for (const double way : {1.0, -1.0})
      placing.offer(request, spot(middle + way * (half + past), request.radius, 1), 1.2 + past);
  offer_set_aside(placing, request, moved(request.a, unit(middle), request.radius), 12, 2);
}

void offer_at_point(Placing& placing, const FigureRequest& request) {
  placing.offer(request, {request.a, request.size.w, request.size.h, 0}, 0);
  for (int way = 0; way < 8; ++way) {
    const Point direction = unit(-libm::kPi / 2 + way * libm::kPi / 4);
    const Box box{moved(request.a, direction, support(request.size, direction) + 6), request.size.w, request.size.h, 0};
    placing.offer(request, box, 0.8 + 0.02 * way);
  }
  offer_set_aside(placing, request, request.a, 16, 2);
}

Point anchor_of(const FigureRequest& request) {
  switch (request.seat) {
    case Seat::kLine:
      return between(request.a, request.b, 0.5);
    case Seat::kArc:
      return moved(request.a, unit((request.from + request.to) / 2), request.radius);
    case Seat::kPoint:
    case Seat::kAside:
      break;
  }
  return request.a;
}

bool free_at(const std::vector<Place>& places, std::size_t self, const Box& box) {
  for (std::size_t i = 0; i < places.size(); ++i)
    if (i != self && places[i].visible && overlap(box, places[i].box)) return false;
  return true;
}

/// The free spot nearest to `anchor`, looked for on a grid; nothing if the rectangle is full.
bool find_free(const std::vector<Place>& places, std::size_t self, Size size, Point anchor, Size rect, double padding,
               Box& found) {
  constexpr double kStep = 6;
  double nearest = 1e300;
  for (double y = padding + size.h / 2; y <= rect.h - padding - size.h / 2 + 1e-9; y += kStep)
    for (double x = padding + size.w / 2; x <= rect.w - padding - size.w / 2 + 1e-9; x += kStep) {
      const double far = distance({x, y}, anchor);
      const Box box{{x, y}, size.w, size.h, 0};
      if (far >= nearest || !free_at(places, self, box)) continue;
      nearest = far;
      found = box;
    }
  return nearest < 1e300;
}

}  // namespace

double reading_angle(Point a, Point b) {
  const double angle = libm::atan2(b.y - a.y, b.x - a.x);
  constexpr double kTurn = libm::kPi / 2, kNear = 1e-6;
  if (angle < -kTurn - kNear) return angle + libm::kPi;
  if (angle >= kTurn - kNear) return angle - libm::kPi;
  return angle;
}

std::vector<Place> place_figures(const std::vector<FigureRequest>& requests, const std::vector<PlacedLine>& lines,
                                 double target) {
  // Those with the least choice first: figures that fit on their line, then angles, then notes, then the tight ones.
  std::vector<std::size_t> order(requests.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  const auto rank = [&](std::size_t i) {
    const FigureRequest& w = requests[i];
    if (w.seat == Seat::kLine)
      return distance(w.a, w.b) > 2 * support(w.size, unit(reading_angle(w.a, w.b))) + 8 ? 0 : 3;
    return w.seat == Seat::kArc ? 1 : 2;
  };
  sort_by(order, [&](std::size_t a, std::size_t b) { return rank(a) < rank(b); });
  Placing placing(lines, target);
  for (const std::size_t i : order) {
    const FigureRequest& request = requests[i];
    placing.start();
    if (request.seat == Seat::kLine) offer_on_line(placing, request);
    if (request.seat == Seat::kArc) offer_on_arc(placing, request);
    if (request.seat == Seat::kPoint) offer_at_point(placing, request);
    if (request.seat == Seat::kAside) offer_set_aside(placing, request, request.a, 16, 0);
    if (placing.best_price() >= kTaken) {  // hemmed in on all sides; keep_inside() finds another place
      placing.start();
      placing.take(request);
      placing.placed().back().box = {anchor_of(request), request.size.w, request.size.h, 0};
    } else {
      placing.take(request);
    }
  }
  std::vector<Place> out = std::move(placing.placed());
  sort_by(out, [](const Place& a, const Place& b) { return a.index < b.index; });
  return out;
}

void keep_inside(std::vector<Place>& places, const std::vector<FigureRequest>& requests, Size rect, double padding) {
  for (std::size_t i = 0; i < places.size(); ++i) {
    Place& place = places[i];
    if (!place.visible) continue;
    Bounds bounds;
    bounds.add(place.box);
    constexpr double kSlack = 0.01;
    const bool in = bounds.left >= padding - kSlack && bounds.top >= padding - kSlack &&
                    bounds.right <= rect.w - padding + kSlack && bounds.bottom <= rect.h - padding + kSlack;
    if (in && free_at(places, i, place.box)) continue;
    const FigureRequest& request =
        *std::find_if(requests.begin(), requests.end(), [&](const FigureRequest& w) { return w.index == place.index; });
    Box found;
    if (!find_free(places, i, request.size, anchor_of(request), rect, padding, found)) continue;
    place.box = found;
    place.strokes = {leader(anchor_of(request), found)};
  }
}

}  // namespace bentbook::draw
