#include "draw/pitch_mark.h"

#include <utility>

namespace bentbook::draw {

void add_pitch_mark(Drawing& drawing, const PitchMark& mark, std::string rise, std::string run) {
  drawing.lines.push_back({mark.low, mark.high, Stroke::kThin});
  const bool over = mark.corner.x == mark.low.x;
  const auto plumb = [](Point a, Point b) { return a.y <= b.y ? std::pair(a, b) : std::pair(b, a); };
  const auto level = [](Point a, Point b) { return a.x <= b.x ? std::pair(a, b) : std::pair(b, a); };
  const auto [foot, top] = plumb(over ? mark.low : mark.high, mark.corner);
  const auto [left, right] = level(over ? mark.high : mark.low, mark.corner);
  drawing.dimensions.push_back({foot, top, 0, {0, 1}, std::move(rise), Meaning::kGiven, true});
  drawing.dimensions.push_back({left, right, 0, {1, 0}, std::move(run), Meaning::kFact, true});
}

}  // namespace bentbook::draw
