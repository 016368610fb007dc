#include "frame/placing/place_braces.h"

#include "frame/joints/end_joint.h"
#include "frame/metric_sizes.h"
#include "numeric/index.h"

namespace bentbook {
namespace {

struct Corner {
  int post = -1, beam = -1;
  Vec3 at;                                ///< where the post's face and the beam's underside meet, in the brace's plane
  Vec3 outward;                           ///< from the post along the beam
  double clear_post = 0, clear_beam = 0;  ///< how long the legs may be
  double longer = 0;                      ///< than the plan's legs
  GridPlace place;
  bool opposed = false;
};

void place_brace(Work& work, const Corner& c) {
  if (c.post < 0 || c.beam < 0) return;
  const FramePlan& plan = work.plan;
  const double a = plan.brace_leg_post.in() + c.longer, b = plan.brace_leg_beam.in() + c.longer;
  Placing p;
  p.kind = TimberKind::kBrace;
  p.place = c.place;
  p.mark = make_mark(p.kind, c.place.line, c.place.bent, c.place.number);
  p.section = plan.sections.brace;
  const double long_side = libm::sqrt(a * a + b * b), depth = p.section.depth.in();
  const double rise = a * b / long_side;  // corner to the outer edge
  // A king post in a low roof is too short for braces to the ridge and has none.
  if (a > c.clear_post && work.timber(c.post).kind == TimberKind::kKingPost) return;
  if (a > c.clear_post || b > c.clear_beam || depth > rise - 1) {
    work.add_finding(FindingId::kNoRoom, p.mark);
    return;
  }
  const Vec3 foot = c.at - a * kZ, head = c.at + b * c.outward;
  p.x = (1 / long_side) * (head - foot);
  p.z = (1 / rise) * (c.at - (foot + (a * a / long_side) * p.x));
  p.through = foot + (depth / 2) * p.z;
  p.a = 0;
  p.b = long_side;
  const int brace = place_timber(work, p);
  join_end(work, {Meeting::kBraceEnd, brace, End::kA, c.post, c.outward, c.opposed, 1e9});
  join_end(work, {Meeting::kBraceEnd, brace, End::kB, c.beam, -1 * kZ, false, 1e9});
}

/// How much longer a hipped end's braces are than the wall's at the same height, so that their pegs in a corner post
/// pass each other.
double past_other(const FramePlan& plan) {
  constexpr Length kPast = Length::inches(3);
  return (is_by_millimetres(plan.sections.common) ? metric_size(kPast) : kPast).in();
}

/// Post and tie, or a hipped end's plate, across the building.
void brace_bent(Work& work, const Layout& l, int bent, bool is_right) {
  const FramePlan& plan = work.plan;
  const RoofSide& side = l.side(is_right);
  const bool end = l.hipped_at(bent);
  const double under = end ? side.plate_top - plan.sections.plate.depth.in() : l.tie_top - plan.sections.tie.depth.in();
  const double post = plan.sections.post.depth.in();
  Corner c;
  c.longer = end ? past_other(plan) : 0;
  c.post = (is_right ? l.post_right : l.post_left)[at(bent)];
  c.beam = end ? l.end_plates[bent == 0 ? 0 : 1] : l.tie[at(bent)];
  c.at = {side.out_x(post), l.bents[at(bent)], under};
  c.outward = side.dir * kX;
  c.clear_post = under - 6;
  c.clear_beam = (plan.span.in() - 2 * post) / 2 - 2;
  if (end && !l.end_posts[bent == 0 ? 0 : 1].empty())
    c.clear_beam = (plan.span.in() - post) / static_cast<double>(l.end_posts[bent == 0 ? 0 : 1].size() + 1) - post - 2;
  c.place = {l.labels[at(bent)], -1, side.line, 1};
  place_brace(work, c);
}

/// Post and the long timber over it, both ways along the building.
void brace_run(Work& work, const Layout& l, int bent, char line, int post, const Run& run, double x, double under,
               double foot, double half) {
  const double y = l.bents[at(bent)];
  for (const int way : {-1, 1}) {
    const int next = bent + way;
    if (next < 0 || next >= l.bent_count()) continue;
    Corner c;
    c.post = post;
    c.at = {x, y + way * half, under};
    // Past a hip roof's peak there is no ridge.
    const double head = c.at.y + way * work.plan.brace_leg_beam.in();
    if (line == 'C' && l.hip && (head < l.peak_from || head > l.peak_to)) continue;
    c.outward = way * kY;
    c.beam = run.under_at(c.at.y + way * work.plan.brace_leg_beam.in());
    c.clear_post = under - foot - 6;
    c.clear_beam = libm::fabs(l.bents[at(next)] - y) / 2 - half - 2;
    c.place = {l.labels[at(bent)], way < 0 ? bent - 1 : bent, line, way < 0 ? 2 : 3};
    c.opposed = true;
    place_brace(work, c);
  }
}

/// Across a corner of the plates, its top level with theirs.
void place_dragon_tie(Work& work, const Layout& l, int bent, bool is_right) {
  const FramePlan& plan = work.plan;
  const RoofSide& side = l.side(is_right);
  const int end = bent == 0 ? 0 : 1;
  const double plate = plan.sections.plate.breadth.in(), leg = plan.hips.dragon_leg.in();
  const double in = end == 0 ? 1 : -1, out = end == 0 ? l.first_out : l.last_out;
  Placing p;
  p.kind = TimberKind::kDragonTie;
  p.mark = make_mark(p.kind, side.line, l.labels[at(bent)]);
  p.place = {l.labels[at(bent)], -1, side.line, 0};
  p.section = plan.hips.dragon_tie;
  const double half = p.section.breadth.in() / 2, long_side = leg * libm::sqrt(2.0);
  const double clear_side = libm::fabs(l.bents[at(bent == 0 ? 1 : bent - 1)] - l.bents[at(bent)]) - plate;
  if (leg > plan.span.in() / 2 - plate || leg > clear_side || leg < 4 * half) {
    work.add_finding(FindingId::kNoRoom, p.mark);
    return;
  }
  const double top = side.plate_top - p.section.depth.in() / 2;
  const Vec3 corner{side.out_x(plate), out + in * plate, top};
  const Vec3 on_side = corner + leg * in * kY, on_end = corner + leg * side.dir * kX;
  p.x = (1 / long_side) * (on_end - on_side);
  p.z = kZ;
  // Its outer face, toward the middle of the building, runs from shoulder to shoulder.
  const Vec3 toward = unit(side.dir * kX + in * kY);
  p.through = on_side - half * toward;
  p.a = 0;
  p.b = long_side;
  const int tie = place_timber(work, p);
  const Run& run = is_right ? l.plate_right : l.plate_left;
  join_end(work, {Meeting::kBraceEnd, tie, End::kA, run.at(on_side.y), side.dir * kX, false, 1e9});
  join_end(work, {Meeting::kBraceEnd, tie, End::kB, l.end_plates[at(end)], in * kY, false, 1e9});
}

}  // namespace

void place_dragon_ties(Work& work, Layout& l) {
  const FramePlan& plan = work.plan;
  if (!l.hip || !plan.hips.dragon_ties) return;
  for (const int bent : {0, l.bent_count() - 1})
    for (const bool is_right : {false, true}) place_dragon_tie(work, l, bent, is_right);
}

void place_braces(Work& work, Layout& l) {
  const FramePlan& plan = work.plan;
  if (!plan.braces) return;
  const double post_half = plan.sections.post.breadth.in() / 2;
  for (int bent = 0; bent < l.bent_count(); ++bent)
    for (const bool is_right : {false, true}) {
      const RoofSide& side = l.side(is_right);
      if (plan.ties || l.hipped_at(bent)) brace_bent(work, l, bent, is_right);
      const int post = (is_right ? l.post_right : l.post_left)[at(bent)];
      const double x = side.out_x(plan.sections.plate.breadth.in() / 2);
      brace_run(work, l, bent, side.line, post, is_right ? l.plate_right : l.plate_left, x,
                side.plate_top - plan.sections.plate.depth.in(), 0, post_half);
    }
  for (int bent = 0; bent < l.bent_count(); ++bent) {
    const int king = l.king[at(bent)];
    if (king < 0 || l.ridge.pieces.empty()) continue;
    const Timber& post = work.timber(king);
    const int ridge = l.ridge.under_at(l.bents[at(bent)]);
    if (ridge < 0) continue;
    const Timber& beam = work.timber(ridge);
    brace_run(work, l, bent, 'C', king, l.ridge, post.at.origin.x, beam.at.origin.z + beam.sides.z_lo, l.tie_top,
              plan.sections.king_post.breadth.in() / 2);
  }
}

}  // namespace bentbook
