#include "printed/pages/raising_picture.h"

#include <algorithm>
#include <iterator>
#include <optional>
#include <utility>

#include "draw/box.h"
#include "frame/drawings/elevation.h"
#include "numeric/index.h"
#include "raising/order.h"

namespace bentbook {
namespace {

/// Isometric, from the side where x and y are least: all three axes are foreshortened alike. Source: SOURCES.md,
/// "isometric".
Vec3 onto_paper(Vec3 p) {
  constexpr double kCos30 = 0.86602540378443864676, kSin30 = 0.5;
  return {(p.x - p.y) * kCos30, 0, p.z + (p.x + p.y) * kSin30};
}
double depth_of(Vec3 p) { return p.x + p.y - p.z; }

/// The one kind of small timbers that a step brings; nothing: other timbers come.
std::optional<TimberKind> small_kind(const Frame& frame, const RaisingStep& step) {
  constexpr TimberKind kSmall[] = {TimberKind::kCommonRafter, TimberKind::kJackRafter, TimberKind::kBrace,
                                   TimberKind::kJoist, TimberKind::kPurlin};
  std::optional<TimberKind> kind;
  for (const int timber : timbers_of(frame, step.marks)) {
    const TimberKind own = frame.timbers[at(timber)].kind;
    if (std::count(std::begin(kSmall), std::end(kSmall), own) == 0 || (kind && *kind != own)) return std::nullopt;
    kind = own;
  }
  return kind;
}

}  // namespace

std::vector<PicturedSteps> pictured_steps(const Frame& frame, const RaisingPlan& plan) {
  std::vector<PicturedSteps> pictures;
  std::optional<TimberKind> before;
  for (std::size_t s = 0; s < plan.steps.size(); ++s) {
    const RaisingStep& step = plan.steps[s];
    if (timbers_of(frame, marks_in(step)).empty()) continue;
    const std::optional<TimberKind> kind = small_kind(frame, step);
    if (kind && before == kind && !pictures.empty())
      pictures.back().last = s;
    else
      pictures.push_back({s, s});
    before = kind;
  }
  return pictures;
}

RaisingPicture::RaisingPicture(const Frame& frame, double width, double height) : timbers_(frame.timbers.size()) {
  draw::Bounds bounds;
  for (std::size_t i = 0; i < timbers_.size(); ++i) {
    const Timber& timber = frame.timbers[i];
    if (!timber.placed) continue;
    std::vector<Vec3> corners = corners_of(timber);
    if (corners.empty()) continue;
    for (Vec3& corner : corners) {
      timbers_[i].depth += depth_of(corner) / static_cast<double>(corners.size());
      corner = onto_paper(corner);
    }
    timbers_[i].outline = elevation_of(corners, Elevation::kAcross, draw::Fill::kNone).points;
    for (const draw::Point& p : timbers_[i].outline) bounds.add(p);
  }
  if (bounds.empty()) return;
  const double scale = std::min(width / std::max(bounds.width(), 1.0), height / std::max(bounds.height(), 1.0));
  const double left = (width - bounds.width() * scale) / 2, top = (height - bounds.height() * scale) / 2;
  for (Drawn& timber : timbers_)
    for (draw::Point& p : timber.outline) p = {left + (p.x - bounds.left) * scale, top + (bounds.bottom - p.y) * scale};
}

paper::Page RaisingPicture::of(std::span<const int> stands, std::span<const int> comes) const {
  std::vector<std::pair<int, bool>> shown;  // and whether it comes
  shown.reserve(stands.size() + comes.size());
  for (const int timber : stands)
    if (std::count(comes.begin(), comes.end(), timber) == 0) shown.emplace_back(timber, false);
  for (const int timber : comes) shown.emplace_back(timber, true);
  std::stable_sort(shown.begin(), shown.end(), [&](const auto& a, const auto& b) {
    return timbers_[at(a.first)].depth > timbers_[at(b.first)].depth;
  });
  paper::Page page;
  for (const auto& [timber, new_one] : shown) {
    const Drawn& drawn = timbers_[at(timber)];
    if (drawn.outline.size() < 3) continue;
    page.polygons.push_back({drawn.outline, new_one ? draw::Fill::kShade : draw::Fill::kPaper, true,
                             new_one ? draw::Stroke::kVisible : draw::Stroke::kThin});
  }
  return page;
}

}  // namespace bentbook
