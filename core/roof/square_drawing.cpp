#include "roof/square_drawing.h"

namespace bentbook {
namespace {

// A framing square of the trade: body 24 by 2 in, tongue 16 by 1 1/2 in.
constexpr double kBody = 24, kBodyBreadth = 2, kTongue = 16, kTongueBreadth = 1.5;
constexpr int kSteps = 3;

draw::Point along(draw::Point from, double u, draw::Point unit_u, double t, draw::Point unit_t) {
  return {from.x + u * unit_u.x + t * unit_t.x, from.y + u * unit_u.y + t * unit_t.y};
}

}  // namespace

Length square_run(bool metric) { return metric ? Length::mm(300) : Length::inches(12); }

SquareSteps square_steps(const Rafter& rafter, Length run) {
  const auto whole = [&](Length level) { return static_cast<int>(level.count / run.count); };
  const auto odd = [&](Length level) { return Length{level.count % run.count}; };
  return {run,
          Length::from_inches(run.in() * rafter.tan),
          Length::from_inches(run.in() / rafter.cos),
          whole(rafter.run),
          whole(rafter.overhang),
          odd(rafter.run),
          odd(rafter.overhang)};
}

draw::Drawing square_drawing(const Rafter& rafter, Length depth) {
  draw::Drawing drawing;
  const double run = 12, step = run / rafter.cos;
  const double left = -0.3 * step, right = (kSteps + 0.3) * step, bottom = -depth.in();
  drawing.lines.push_back({{left, 0}, {right, 0}, draw::Stroke::kVisible});
  drawing.lines.push_back({{left, bottom}, {right, bottom}, draw::Stroke::kVisible});

  // Each step is a triangle whose long side lies on the edge; its right angle points into the timber.
  const draw::Point heel{run * rafter.cos, -run * rafter.sin};
  for (int i = 1; i < kSteps; ++i) {
    const double x = i * step;
    drawing.lines.push_back({{x, 0}, {x + heel.x, heel.y}, draw::Stroke::kThin});
    drawing.lines.push_back({{x + heel.x, heel.y}, {x + step, 0}, draw::Stroke::kThin});
  }
  const draw::Point body{-rafter.cos, rafter.sin}, tongue{rafter.sin, rafter.cos};
  const auto at = [&](double u, double t) { return along(heel, u, body, t, tongue); };
  drawing.polygons.push_back({{at(0, 0), at(kBody, 0), at(kBody, kBodyBreadth), at(kTongueBreadth, kBodyBreadth),
                               at(kTongueBreadth, kTongue), at(0, kTongue)},
                              draw::Stroke::kVisible,
                              draw::Fill::kPaper,
                              true});
  drawing.dimensions.push_back({heel, {0, 0}, 1, {}, "square_run", draw::Meaning::kAnswer});
  drawing.dimensions.push_back({{step, 0}, heel, 1, {}, "square_rise", draw::Meaning::kAnswer});
  drawing.dimensions.push_back({{step, 0}, {2 * step, 0}, 1, {}, "step_length", draw::Meaning::kFact});
  return drawing;
}

}  // namespace bentbook
