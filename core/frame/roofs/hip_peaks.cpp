#include "frame/roofs/hip_peaks.h"

#include <algorithm>

#include "frame/limits.h"
#include "frame/placing/place_roof.h"
#include "numeric/index.h"

namespace bentbook {
namespace {

constexpr double kAtPeak = 1e-6;  ///< inches: the same place

/// A ridge that is shorter than its king post is broad.
bool is_narrow(const FramePlan& plan, const Layout& l) {
  return l.peak_to - l.peak_from < (plan.sections.king_post.breadth - limits::kPastRidge * 2).in();
}

/// Whether a king post that reaches past both ends of its ridge has its joint there, and clears the hips.
bool takes_narrow(const FramePlan& plan, const Layout& l) {
  const Section &king = plan.sections.king_post, &ridge = plan.sections.ridge_beam;
  if (l.peak_to - l.peak_from < limits::kShortestRidge.in() - kAtPeak) return false;
  const double top = l.left.top_at(l.ridge_x - ridge.breadth.in() / 2) - ridge.depth.in();
  const double middle = (l.peak_from + l.peak_to) / 2;
  return std::none_of(l.roof.timbers.begin(), l.roof.timbers.end(), [&](const RoofTimber& t) {
    if (t.kind != RoofTimberKind::kHip) return false;
    // The corner of the post that lies under it farthest down.
    const double x = (t.at.x.x > 0 ? -1 : 1) * king.depth.in() / 2, y = (t.at.x.y > 0 ? -1 : 1) * king.breadth.in() / 2;
    const double under = dot(t.at.z, t.at.origin) - t.section.depth.in() / 2;
    return meet({l.ridge_x + x, middle + y, 0}, kZ, t.at.z, under).z < top + kAtPeak;
  });
}

/// Whether a bent's king post, which stands or would, carries an end's peak.
bool under_peak(const FramePlan& plan, const Layout& l, int bent, bool last) {
  if (!king_stands(plan, l, bent)) return false;
  if (!has_hip_ridge(l)) return true;
  const double y = l.bents[at(bent)], half = plan.sections.king_post.breadth.in() / 2;
  return (last ? l.peak_to - y : y - l.peak_from) - half < limits::kPeakPast.in() + kAtPeak;
}

bool carried_peak(const FramePlan& plan, const Layout& l, bool last) {
  for (int bent = 0; bent < l.bent_count(); ++bent)
    if (l.king[at(bent)] >= 0 && under_peak(plan, l, bent, last)) return true;
  return false;
}

/// Whether a king post stands on a bent's tie wherever the peaks let it.
bool takes_king(const Work& work, const Layout& l, int bent) {
  return bears_king(work.plan, l, bent) &&
         !is_taken_out(work, make_mark(TimberKind::kKingPost, 'C', l.labels[at(bent)]));
}

/// The end bay that sets a king post under its peak, whatever the other bays are; 0: none does.
Length bay_under_peak(const Work& work, const Layout& l, bool last) {
  const FramePlan& plan = work.plan;
  const int bent = last ? l.bent_count() - 2 : 1;
  if (l.bent_count() < 3 || !takes_king(work, l, bent) || under_peak(plan, l, bent, last)) return {};
  const Length bay = end_bay_under_peak(plan), was = last ? plan.bays.back().width : plan.bays.front().width;
  const double ridge = l.peak_to - l.peak_from + (bay - was).in();
  return bay < least_bay(plan) || ridge < plan.sections.king_post.breadth.in() - kAtPeak ? Length{} : bay;
}

/// Where one king post carries all hips: each of two bays that set it there; 0: none do.
Length bays_at_middle(const Work& work, const Layout& l) {
  const FramePlan& plan = work.plan;
  for (int bent = 1; bent + 1 < l.bent_count(); ++bent)
    if (!takes_king(work, l, bent) || (l.king[at(bent)] < 0 && king_stands(plan, l, bent))) return {};
  const Length half{(outside_length(plan) - plan.sections.post.breadth).count / 2};
  // The building stays as long as it is, if it can and if that is what will be read.
  const bool on_tape = half.count % Length::inches(1, 8).count == 0 || half.count % Length::mm(1).count == 0;
  const bool stays = on_tape && !(has_hip_ridge(l) && is_narrow(plan, l));
  const Length bay = stays ? half : end_bay_under_peak(plan);
  return l.bent_count() < 3 || bay < least_bay(plan) ? Length{} : bay;
}

/// Whether the hips meet at one peak, or so near to it that one king post carries all.
bool has_one_post(const FramePlan& plan, const Layout& l) {
  const double ridge = l.peak_to - l.peak_from, king = plan.sections.king_post.breadth.in();
  return is_narrow(plan, l) || (l.bent_count() == 3 && ridge < king + 2 * limits::kPeakPast.in() + kAtPeak);
}

void say_uncarried(Work& work, const Layout& l, FindingId id, bool last, Length bay) {
  const int label = last ? l.labels.back() : l.labels.front();
  work.add_finding(id, make_mark(TimberKind::kHipRafter, 'A', label), make_mark(TimberKind::kHipRafter, 'E', label),
                   bay.in());
}

}  // namespace

bool has_hip_ridge(const Layout& l) { return l.peak_to - l.peak_from > kAtPeak; }

bool king_stands(const FramePlan& plan, const Layout& l, int bent) {
  const double y = l.bents[at(bent)], half = plan.sections.king_post.breadth.in() / 2;
  const double past = limits::kPastRidge.in() + kAtPeak, off = libm::fabs(y - (l.peak_from + l.peak_to) / 2);
  if (!has_hip_ridge(l)) return off < kAtPeak;
  if (is_narrow(plan, l)) return off < past && takes_narrow(plan, l);
  return y - half > l.peak_from - past && y + half < l.peak_to + past;
}

bool carries_peak(const FramePlan& plan, const Layout& l, int bent) {
  return under_peak(plan, l, bent, false) || under_peak(plan, l, bent, true);
}

double under_hips(const Layout& l, Vec3 place) {
  double top = 1e300;
  for (const RoofTimber& t : l.roof.timbers) {
    if (t.kind != RoofTimberKind::kHip) continue;
    const double offset = dot(t.at.z, t.at.origin) - t.section.depth.in() / 2;
    top = std::min(top, meet(place, kZ, t.at.z, offset).z);
  }
  return top;
}

double under_one_peak(const Layout& l) { return under_hips(l, {l.ridge_x, (l.peak_from + l.peak_to) / 2, 0}); }

bool say_peaks(Work& work, const Layout& l) {
  const FramePlan& plan = work.plan;
  const bool first = carried_peak(plan, l, false), last = carried_peak(plan, l, true);
  if (first && last) return true;
  if (has_one_post(plan, l)) {
    say_uncarried(work, l, FindingId::kMiddleUncarried, first, bays_at_middle(work, l));
    return false;
  }
  if (!first) say_uncarried(work, l, FindingId::kPeakUncarried, false, bay_under_peak(work, l, false));
  if (!last) say_uncarried(work, l, FindingId::kPeakUncarried, true, bay_under_peak(work, l, true));
  return false;
}

}  // namespace bentbook
