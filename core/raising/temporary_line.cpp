#include "raising/temporary_line.h"

#include <algorithm>

#include "frame/facts.h"
#include "numeric/index.h"

namespace bentbook {
namespace {

std::optional<Vec3> on_axis(const Frame& frame, const TimberPoint& point) {
  const int t = timber_by_mark(frame, point.mark);
  if (t < 0 || !frame.timbers[at(t)].placed) return std::nullopt;
  const Timber& timber = frame.timbers[at(t)];
  return timber.at.origin + std::clamp(point.station.in(), 0.0, timber.length) * timber.at.x;
}

}  // namespace

std::optional<TemporaryLine> temporary_line(const Frame& frame, const Temporary& temporary) {
  const bool ground = temporary.to.mark.empty();
  if (!ground && temporary.to.mark == temporary.from.mark) return std::nullopt;
  const auto from = on_axis(frame, temporary.from);
  const auto to = ground
                      ? std::optional(Vec3{temporary.ground_x.in(), temporary.ground_y.in(), temporary.ground_z.in()})
                      : on_axis(frame, temporary.to);
  if (!from || !to) return std::nullopt;
  return TemporaryLine{*from, *to};
}

}  // namespace bentbook
