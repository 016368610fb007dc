#include "frame/placing/place_roof.h"

#include "frame/joints/end_joint.h"
#include "frame/limits.h"
#include "frame/roofs/hip_peaks.h"
#include "frame/roofs/hip_roof.h"
#include "numeric/index.h"

namespace bentbook {
namespace {

template <class Type>
const Type* joint_at(const FramePlan& plan, Meeting meeting) {
  return std::get_if<Type>(&plan.joints[static_cast<std::size_t>(meeting)]);
}

/// Top of the ridge beam: flush with the lower of the two rafters at its faces, or under the rafters' seats.
double ridge_top(const FramePlan& plan, const Layout& l) {
  const double half = plan.sections.ridge_beam.breadth.in() / 2;
  const double a = l.ridge_x - half, b = l.ridge_x + half;
  const auto* mouth = joint_at<BirdsMouth>(plan, Meeting::kRafterRidge);
  if (mouth != nullptr && !l.hip) {
    const double most = half < mouth->seat.in() ? half : mouth->seat.in();
    const double left = l.left.under_at(a) + most * l.left.tan, right = l.right.under_at(b) + most * l.right.tan;
    return left < right ? left : right;
  }
  const double left = l.left.top_at(a), right = l.right.top_at(b);
  return left < right ? left : right;
}

bool has_ridge(const FramePlan& plan, const Layout& l) {
  return l.hip ? has_hip_ridge(l) : !l.lean_to && plan.peak == Peak::kRidgeBeam;
}

Placing standing(const Layout& l, TimberKind kind, char line, int bent, const Section& section, double x, double top) {
  Placing p;
  p.kind = kind;
  p.mark = make_mark(kind, line, l.labels[at(bent)]);
  p.place = {l.labels[at(bent)], -1, line, 0};
  p.section = section;
  p.through = {x, l.bents[at(bent)], 0};
  p.x = kZ;
  p.z = (line == 'D' ? 1 : -1) * kX;
  p.a = l.tie_top;
  p.b = top;
  return p;
}

/// X of the queen posts' axis on one side.
double queen_x(const FramePlan& plan, const RoofSide& side) {
  return side.out_x(plan.queen_inset.in() > 0 ? plan.queen_inset.in() : plan.span.in() / 4);
}

/// A purlin under the common rafters on the queen posts: its top, so that the rafters' seats come out as asked.
double seated_purlin_top(const FramePlan& plan, const RoofSide& side) {
  const Section& section = plan.sections.purlin;
  double seat = joint_at<BirdsMouth>(plan, Meeting::kRafterPurlin)->seat.in();
  if (seat > section.breadth.in()) seat = section.breadth.in();
  const double face = queen_x(plan, side) - side.dir * section.breadth.in() / 2;
  return side.under_at(face) + seat * side.tan;
}

bool queen_has_room(const FramePlan& plan, const Layout& l, const RoofSide& side) {
  const double from_wall = side.dir * (queen_x(plan, side) - side.wall_x);
  const double wide = plan.sections.purlin.breadth.in() + plan.sections.queen_post.depth.in();
  return from_wall > plan.sections.post.depth.in() + wide &&
         side.run - from_wall > wide + plan.sections.ridge_beam.breadth.in() &&
         side.under_at(queen_x(plan, side)) > l.tie_top + plan.sections.purlin.depth.in() + 12;
}

void place_queen(Work& work, Layout& l, int bent, bool is_right) {
  const FramePlan& plan = work.plan;
  const RoofSide& side = l.side(is_right);
  const int tie = l.tie[at(bent)];
  if (tie < 0) return;
  const double x = queen_x(plan, side);
  const bool seated = plan.roof == RoofFrame::kCommons;
  const double top = seated ? seated_purlin_top(plan, side) - plan.sections.purlin.depth.in() : side.under_at(x);
  if (!queen_has_room(plan, l, side)) {
    work.add_finding(FindingId::kNoRoom, make_mark(TimberKind::kQueenPost, side.inner, l.labels[at(bent)]));
    return;
  }
  const int queen =
      place_timber(work, standing(l, TimberKind::kQueenPost, side.inner, bent, plan.sections.queen_post, x, top));
  (is_right ? l.queen_right : l.queen_left)[at(bent)] = queen;
  join_end(work, {Meeting::kKingFoot, queen, End::kA, tie, kZ, false, 1e9});
}

int place_rafter(Work& work, const Layout& l, bool is_right, TimberKind kind, const std::string& mark, GridPlace place,
                 double y) {
  const FramePlan& plan = work.plan;
  const RoofSide& side = l.side(is_right);
  Placing p;
  p.kind = kind;
  p.mark = mark;
  p.place = place;
  p.section = kind == TimberKind::kCommonRafter ? plan.sections.common : plan.sections.principal;
  p.x = {side.dir * side.cos, 0, side.sin};
  p.z = {-side.dir * side.sin, 0, side.cos};
  p.through = Vec3{side.wall_x, y, side.plate_top + side.heel} - (p.section.depth.in() / 2) * p.z;
  const double tail = plan.eave_overhang.in();
  p.a = -tail / side.cos;
  p.b = side.run / side.cos;
  const int rafter = place_timber(work, p);
  if (rafter < 0) return -1;
  cut_plumb(work, rafter, End::kA, side.wall_x - side.dir * tail, -side.dir);
  join_birdsmouth(work, Meeting::kRafterPlate, rafter, (is_right ? l.plate_right : l.plate_left).top_at(y));
  return rafter;
}

/// Between the two rafters of a pair; `king`: the post that stands there, −1 if none.
void place_collar(Work& work, const Layout& l, int left, int right, double y, int king) {
  const FramePlan& plan = work.plan;
  if (left < 0 || right < 0) return;
  const Timber& rafter = work.timber(left);
  Placing p;
  p.kind = TimberKind::kCollar;
  p.mark = make_mark(p.kind, 0, rafter.place.bent, rafter.place.number);
  p.place = {rafter.place.bent, rafter.place.bay, 0, rafter.place.number};
  p.section = plan.sections.collar;
  const double high = l.left.plate_top > l.right.plate_top ? l.left.plate_top : l.right.plate_top;
  const double under = high + plan.collar_rise.in();
  p.through = {l.ridge_x, y, under + p.section.depth.in() / 2};
  p.x = kX;
  p.z = kZ;
  // Where its own top meets the rafters' undersides: there must be a foot of it left.
  const double top = under + p.section.depth.in();
  p.a = -((l.left.under_at(l.ridge_x) - top) / l.left.tan);
  p.b = (l.right.under_at(l.ridge_x) - top) / l.right.tan;
  if (!(p.b - p.a > 12) || (king >= 0 && work.tip(king).b > under)) {
    work.add_finding(FindingId::kNoRoom, p.mark);
    return;
  }
  const int tie = place_timber(work, p);
  join_end(work, {Meeting::kCollarRafter, tie, End::kA, left, kX, false, 1e9});
  join_end(work, {Meeting::kCollarRafter, tie, End::kB, right, -1 * kX, false, 1e9});
}

/// Both rafters at one y, their peak, and what lies under them.
void join_pair(Work& work, const Layout& l, int left, int right, double y, int king) {
  const FramePlan& plan = work.plan;
  const int beam = has_ridge(plan, l) ? l.ridge.top_at(y) : -1;
  const bool over = beam >= 0 && joint_at<BirdsMouth>(plan, Meeting::kRafterRidge) != nullptr;
  const int against = beam >= 0 ? (over ? -1 : beam) : king;
  if (over) {
    join_birdsmouth(work, Meeting::kRafterRidge, left, beam);
    join_birdsmouth(work, Meeting::kRafterRidge, right, beam);
    join_peak(work, left, right, l.ridge_x);
  } else if (against >= 0) {
    const bool plain = against == beam && l.ridge.joined_at(y);
    join_end(work, {Meeting::kRafterRidge, left, End::kB, against, -1 * kX, true, 1e9, plain});
    join_end(work, {Meeting::kRafterRidge, right, End::kB, against, kX, true, 1e9, plain});
  } else {
    join_peak(work, left, right, l.ridge_x);
  }
  if (plan.roof == RoofFrame::kCommons && plan.on_ties == OnTies::kQueenPosts) {
    join_birdsmouth(work, Meeting::kRafterPurlin, left, l.purlin_left.top_at(y));
    join_birdsmouth(work, Meeting::kRafterPurlin, right, l.purlin_right.top_at(y));
  }
  if (plan.collars) place_collar(work, l, left, right, y, king);
}

/// A lean-to's rafter lies over the high plate too and ends with a tail.
void join_lean_to(Work& work, const Layout& l, int rafter, double y) {
  if (rafter < 0) return;
  join_birdsmouth(work, Meeting::kRafterPlate, rafter, l.plate_right.top_at(y));
  cut_plumb(work, rafter, End::kB, l.right.wall_x + work.plan.eave_overhang.in(), 1);
}

void place_pair(Work& work, const Layout& l, TimberKind kind, int label, int bay, int number, double y,
                std::vector<int>* lefts, std::vector<int>* rights, int bent) {
  const int left =
      place_rafter(work, l, false, kind, make_mark(kind, 'A', label, number), {label, bay, 'A', number}, y);
  if (lefts != nullptr) (*lefts)[at(bent)] = left;
  if (l.lean_to) {
    join_lean_to(work, l, left, y);
    return;
  }
  const int right =
      place_rafter(work, l, true, kind, make_mark(kind, 'E', label, number), {label, bay, 'E', number}, y);
  if (rights != nullptr) (*rights)[at(bent)] = right;
  join_pair(work, l, left, right, y, number == 0 ? l.king[at(bent)] : -1);
}

void place_commons(Work& work, Layout& l) {
  const FramePlan& plan = work.plan;
  const TimberKind kind = TimberKind::kCommonRafter;
  const double half = plan.sections.common.breadth.in() / 2;
  for (int bent = 0; bent < l.bent_count(); ++bent) {
    const double y = l.bents[at(bent)];
    const int label = l.labels[at(bent)];
    place_pair(work, l, kind, label, -1, 0, y, nullptr, nullptr, bent);
    if (bent + 1 == l.bent_count()) break;
    const double width = l.bents[at(bent + 1)] - y;
    const int gaps = static_cast<int>(libm::ceil(width / plan.rafter_spacing.in() - 1e-9));
    for (int i = 1; i < gaps; ++i)
      place_pair(work, l, kind, label, bent, i, y + width * i / gaps, nullptr, nullptr, bent);
  }
  // Verge rafters at the ends of plates and ridge.
  const double lowest = l.run_from + half, highest = l.run_to - half;
  if (l.bents.front() - lowest > 2 * half + 1)
    place_pair(work, l, kind, l.labels.front(), -1, kFirstVerge, lowest, nullptr, nullptr, 0);
  if (highest - l.bents.back() > 2 * half + 1)
    place_pair(work, l, kind, l.labels.back(), -1, kLastVerge, highest, nullptr, nullptr, 0);
}

void place_purlins(Work& work, const Layout& l, int bay, bool is_right, const std::vector<int>& rafters) {
  const FramePlan& plan = work.plan;
  const RoofSide& side = l.side(is_right);
  const int a = rafters[at(bay)], b = rafters[at(bay + 1)];
  if (a < 0 || b < 0) return;
  const Section& section = plan.sections.purlin;
  const double slope = side.run / side.cos;
  const int gaps = static_cast<int>(libm::ceil(slope / plan.purlin_spacing.in() - 1e-9));
  const Vec3 up{side.dir * side.cos, 0, side.sin}, out{-side.dir * side.sin, 0, side.cos};
  const Vec3 wall{side.wall_x, 0, side.plate_top + side.heel};
  for (int i = 1; i < gaps; ++i) {
    Placing p;
    p.kind = TimberKind::kPurlin;
    p.mark = make_mark(p.kind, side.line, l.labels[at(bay)], i);
    p.place = {l.labels[at(bay)], bay, side.line, i};
    p.section = section;
    p.through = wall + (slope * i / gaps) * up - (section.depth.in() / 2) * out;
    p.x = kY;
    p.z = out;
    const double half = plan.sections.principal.breadth.in() / 2;
    p.a = l.bents[at(bay)] + half;
    p.b = l.bents[at(bay + 1)] - half;
    const int purlin = place_timber(work, p);
    join_end(work, {Meeting::kPurlinRafter, purlin, End::kA, a, kY, true, 1e9});
    join_end(work, {Meeting::kPurlinRafter, purlin, End::kB, b, -1 * kY, true, 1e9});
  }
}

void place_principals(Work& work, Layout& l) {
  const auto none = std::vector<int>(l.bents.size(), -1);
  std::vector<int> left = none, right = none;
  for (int bent = 0; bent < l.bent_count(); ++bent) {
    place_pair(work, l, TimberKind::kPrincipalRafter, l.labels[at(bent)], -1, 0, l.bents[at(bent)], &left, &right,
               bent);
    join_end(work, {Meeting::kQueenTop, l.queen_left[at(bent)], End::kB, left[at(bent)], -1 * kZ, false, 1e9});
    join_end(work, {Meeting::kQueenTop, l.queen_right[at(bent)], End::kB, right[at(bent)], -1 * kZ, false, 1e9});
  }
  for (int bay = 0; bay + 1 < l.bent_count(); ++bay) {
    place_purlins(work, l, bay, false, left);
    if (!l.lean_to) place_purlins(work, l, bay, true, right);
  }
}

bool has_king_posts(const FramePlan& plan, const Layout& l) { return !l.lean_to && plan.on_ties == OnTies::kKingPosts; }

}  // namespace

bool bears_king(const FramePlan& plan, const Layout& l, int bent) {
  return has_king_posts(plan, l) && l.tie[at(bent)] >= 0;
}

void place_king_posts(Work& work, Layout& l) {
  const FramePlan& plan = work.plan;
  if (!has_king_posts(plan, l)) return;
  const bool ridge = has_ridge(plan, l);
  // Without a beam only principals can end against the king post.
  if (!ridge && !l.hip && plan.roof == RoofFrame::kCommons) {
    work.add_finding(FindingId::kNoRoom, make_mark(TimberKind::kKingPost, 'C', l.labels.front()));
    return;
  }
  const double top = ridge   ? ridge_top(plan, l) - plan.sections.ridge_beam.depth.in()
                     : l.hip ? under_one_peak(l)
                             : l.ridge_z;
  for (int bent = 0; bent < l.bent_count(); ++bent) {
    if (!bears_king(plan, l, bent) || (l.hip && !king_stands(plan, l, bent))) continue;
    const int king =
        place_timber(work, standing(l, TimberKind::kKingPost, 'C', bent, plan.sections.king_post, l.ridge_x, top));
    l.king[at(bent)] = king;
    join_end(work, {Meeting::kKingFoot, king, End::kA, l.tie[at(bent)], kZ, false, 1e9});
  }
}

void place_queen_posts(Work& work, Layout& l) {
  if (l.lean_to || l.hip || work.plan.on_ties != OnTies::kQueenPosts) return;
  for (int bent = 0; bent < l.bent_count(); ++bent)
    for (const bool is_right : {false, true}) place_queen(work, l, bent, is_right);
}

void place_ridge(Work& work, Layout& l) {
  const FramePlan& plan = work.plan;
  if (has_ridge(plan, l)) {
    l.ridge = place_run(
        work, l,
        {TimberKind::kRidgeBeam, 'C', plan.sections.ridge_beam, l.ridge_x, ridge_top(plan, l),
         l.hip ? l.peak_from : l.run_from, l.hip ? l.peak_to : l.run_to, Meeting::kRidgeScarf, l.hip ? 2 : 1});
    for (int bent = 0; bent < l.bent_count(); ++bent) {
      const double y = l.bents[at(bent)];
      EndMeeting top{Meeting::kKingTop, l.king[at(bent)], End::kB, l.ridge.under_at(y), -1 * kZ, false, 1e9};
      if (l.ridge.joined_at(y)) top.most = plan.sections.ridge_beam.depth.in() / 2 - 0.75;
      if (l.hip) top.relish = limits::kRelish.in();
      join_end(work, top);
    }
  }
  if (l.lean_to || l.hip || plan.on_ties != OnTies::kQueenPosts || plan.roof != RoofFrame::kCommons) return;
  for (const bool is_right : {false, true}) {
    const RoofSide& side = l.side(is_right);
    const auto& queens = is_right ? l.queen_right : l.queen_left;
    bool any = false;
    for (const int queen : queens) any = any || queen >= 0;
    if (!any) continue;
    Run& purlin = is_right ? l.purlin_right : l.purlin_left;
    purlin = place_run(work, l,
                       {TimberKind::kPurlin, side.inner, plan.sections.purlin, queen_x(plan, side),
                        seated_purlin_top(plan, side), l.run_from, l.run_to, Meeting::kPurlinScarf});
    for (int bent = 0; bent < l.bent_count(); ++bent) {
      const double y = l.bents[at(bent)];
      EndMeeting top{Meeting::kQueenTop, queens[at(bent)], End::kB, purlin.under_at(y), -1 * kZ, false, 1e9};
      if (purlin.joined_at(y)) top.most = plan.sections.purlin.depth.in() / 2 - 0.75;
      join_end(work, top);
    }
  }
}

void place_rafters(Work& work, Layout& l) {
  if (l.hip)
    place_hip_rafters(work, l);
  else if (work.plan.roof == RoofFrame::kPrincipals)
    place_principals(work, l);
  else
    place_commons(work, l);
}

}  // namespace bentbook
