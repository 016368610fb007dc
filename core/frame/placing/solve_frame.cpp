#include "frame/placing/solve_frame.h"

#include <utility>

#include "frame/limits.h"
#include "frame/placing/find_clashes.h"
#include "frame/placing/finish.h"
#include "frame/placing/layout.h"
#include "frame/placing/place_added.h"
#include "frame/placing/place_braces.h"
#include "frame/placing/place_roof.h"
#include "frame/placing/place_walls.h"
#include "frame/placing/warn_timbers.h"
#include "frame/roofs/hip_peaks.h"
#include "frame/roofs/hip_roof.h"
#include "numeric/index.h"

namespace bentbook {
namespace {

/// Outward push at the feet of one pair: w · span / (2 (tan A + tan B)). Source: SOURCES.md, "thrust".
void say_thrust(Work& work, const Layout& l) {
  const FramePlan& plan = work.plan;
  if (l.lean_to || l.hip) return;
  bool tied = plan.ties && plan.tie_drop <= limits::kLowTie;
  for (const int tie : l.tie) tied = tied && tie >= 0;
  const bool carried = plan.peak == Peak::kRidgeBeam && plan.on_ties == OnTies::kKingPosts && plan.ties;
  if (tied || carried) return;
  double spacing = plan.rafter_spacing.in();
  if (plan.roof == RoofFrame::kPrincipals) {
    spacing = 0;
    for (const Bay& bay : plan.bays) spacing = bay.width.in() > spacing ? bay.width.in() : spacing;
  }
  const double per_foot = plan.load_psf * spacing / 12;
  work.frame.thrust_lb = per_foot * plan.span.in() / 12 / (2 * (l.left.tan + l.right.tan));
  work.add_finding(FindingId::kThrust, {}, {}, work.frame.thrust_lb);
  if (plan.collars) work.add_finding(FindingId::kHighCollar);
}

/// A bent that the ridge passes over and that holds no king post under it. What hangs at a hip roof's peaks is theirs
/// to say.
bool leaves_ridge(const FramePlan& plan, const Layout& l, int bent) {
  if (l.king[at(bent)] >= 0) return false;
  return !l.hip || (has_hip_ridge(l) && king_stands(plan, l, bent) && !carries_peak(plan, l, bent));
}

void say_ridge(Work& work, const Layout& l) {
  if (l.lean_to || (!l.hip && work.plan.peak != Peak::kRidgeBeam)) return;
  for (int bent = 0; bent < l.bent_count(); ++bent)
    if (leaves_ridge(work.plan, l, bent)) {
      work.add_finding(FindingId::kRidgeUnsupported);
      return;
    }
}

void say_overrides(Work& work) {
  for (std::size_t i = 0; i < work.plan.overrides.size(); ++i)
    if (!work.override_met[i]) work.add_finding(FindingId::kUnknownMark, work.plan.overrides[i].mark);
}

Result<Frame> solved(const FramePlan& plan, const Frame* before) {
  auto layout = lay_out(plan);
  if (!layout) return tl::unexpected(layout.error());
  Work work = begin_work(plan, before);
  Layout& l = *layout;
  work.add_finding(FindingId::kNotEngineered);
  work.frame.ridge_x = l.ridge_x;
  work.frame.ridge_z = l.ridge_z;
  place_sills(work, l);
  place_posts(work, l);
  place_plates(work, l);
  place_ties(work, l);
  place_girts(work, l);
  place_joists(work, l);
  place_king_posts(work, l);
  place_queen_posts(work, l);
  place_ridge(work, l);
  place_rafters(work, l);
  place_braces(work, l);
  place_dragon_ties(work, l);
  place_added(work);
  say_thrust(work, l);
  say_ridge(work, l);
  if (l.hip) say_hips(work, l);
  say_overrides(work);
  finish(work);
  find_clashes(work);
  warn_timbers(work);
  return std::move(work.frame);
}

}  // namespace

Result<void> check_frame(const FramePlan& plan) {
  if (const auto layout = lay_out(plan); !layout) return tl::unexpected(layout.error());
  return {};
}

Result<Frame> solve_frame(const FramePlan& plan) { return solved(plan, nullptr); }

Result<Frame> solve_frame_again(const FramePlan& plan, const Frame& before) { return solved(plan, &before); }

}  // namespace bentbook
