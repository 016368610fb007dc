#include "frame/placing/place_walls.h"

#include "frame/joints/end_joint.h"
#include "frame/limits.h"
#include "numeric/index.h"

namespace bentbook {
namespace {

double x_of_line(const RoofSide& side, Length size) { return side.out_x(size.in() / 2); }

/// Floors and pier: where a post's foot stands.
double foot_level(const FramePlan& plan, const std::string& mark) {
  double pier = 0;
  for (const Override& o : plan.overrides)
    if (o.mark == mark) pier = o.pier_level.in();
  return plan.sills ? 0 : pier + plan.stand_off.in();
}

void place_post(Work& work, Layout& l, int bent, bool is_right) {
  const FramePlan& plan = work.plan;
  const RoofSide& side = l.side(is_right);
  const int label = l.labels[at(bent)];
  Placing p;
  p.kind = TimberKind::kPost;
  p.mark = make_mark(p.kind, side.line, label);
  p.place = {label, -1, side.line, 0};
  p.section = plan.sections.post;
  p.through = {x_of_line(side, p.section.depth), l.bents[at(bent)], 0};
  p.x = kZ;
  p.z = (is_right ? 1 : -1) * kX;
  p.a = foot_level(plan, p.mark);
  p.b = side.plate_top - plan.sections.plate.depth.in();
  const int post = place_timber(work, p);
  (is_right ? l.post_right : l.post_left)[at(bent)] = post;
  if (post < 0) return;
  work.timber(post).pier_level = p.a - plan.stand_off.in();
  if (!plan.sills) return;
  const bool end = bent == 0 || bent + 1 == l.bent_count();
  const Run& sill = is_right ? l.sill_right : l.sill_left;
  const int cross = end ? l.cross_sills[bent == 0 ? 0 : 1] : -1;
  EndMeeting foot{
      Meeting::kPostFoot, post, End::kA, cross >= 0 ? cross : sill.top_at(l.bents[at(bent)]), kZ, false, 1e9};
  if (cross >= 0 || sill.joined_at(l.bents[at(bent)])) foot.most = plan.sections.sill.depth.in() / 2 - 0.75;
  join_end(work, foot);
}

/// Posts under an end plate, between the corner posts.
void place_end_posts(Work& work, Layout& l, int bent) {
  const FramePlan& plan = work.plan;
  const int end = bent == 0 ? 0 : 1;
  const double post = plan.sections.post.depth.in(), wide = plan.span.in() - post;
  const int gaps = plan.hips.end_posts ? static_cast<int>(libm::ceil(wide / limits::kUsualBay.in() - 1e-9)) : 1;
  const int count = gaps - 1, label = l.labels[at(bent)];
  for (int i = 1; i < gaps; ++i) {
    Placing p;
    p.kind = TimberKind::kPost;
    const char line = count == 1 || count > 3 ? 'C' : i == 1 ? 'B' : i == count ? 'D' : 'C';
    const int number = count > 3 ? i : 0;
    p.mark = make_mark(p.kind, line, label, number);
    p.place = {label, -1, line, number};
    p.section = plan.sections.post;
    const double out = end == 0 ? l.first_out : l.last_out, in = end == 0 ? 1 : -1;
    p.through = {l.left.wall_x + post / 2 + wide * i / gaps, out + in * post / 2, 0};
    p.x = kZ;
    p.z = -in * kY;
    p.a = foot_level(plan, p.mark);
    p.b = l.left.plate_top - plan.sections.plate.depth.in();
    const int timber = place_timber(work, p);
    l.end_posts[at(end)].push_back(timber);
    if (timber < 0) continue;
    work.timber(timber).pier_level = p.a - plan.stand_off.in();
    if (plan.sills) join_end(work, {Meeting::kPostFoot, timber, End::kA, l.cross_sills[at(end)], kZ, false, 1e9});
  }
}

/// From wall line to wall line at a bent, in a corner joint with what runs along each wall.
int place_across(Work& work, const Layout& l, TimberKind kind, int bent, const Section& section, double y, double top,
                 int left, int right) {
  Placing p;
  p.kind = kind;
  p.mark = make_mark(p.kind, 0, l.labels[at(bent)]);
  p.place = {l.labels[at(bent)], -1, 0, 0};
  p.section = section;
  p.through = {0, y, top - section.depth.in() / 2};
  p.x = kX;
  p.z = kZ;
  p.a = l.left.wall_x;
  p.b = l.right.wall_x;
  const int timber = place_timber(work, p);
  join_end(work, {Meeting::kSillCorner, timber, End::kA, left, kX, false, 1e9});
  join_end(work, {Meeting::kSillCorner, timber, End::kB, right, -1 * kX, false, 1e9});
  return timber;
}

/// Over the ends of the wall plates, which it lies across, and over the posts of its end.
void place_end_plate(Work& work, Layout& l, int bent) {
  const FramePlan& plan = work.plan;
  const int end = bent == 0 ? 0 : 1;
  const Section& section = plan.sections.plate;
  const double half = section.breadth.in() / 2, y = end == 0 ? l.first_out + half : l.last_out - half;
  const int plate = place_across(work, l, TimberKind::kPlate, bent, section, y, l.left.plate_top, l.plate_left.at(y),
                                 l.plate_right.at(y));
  l.end_plates[at(end)] = plate;
  for (const int post : l.end_posts[at(end)])
    join_end(work, {Meeting::kPostTop, post, End::kB, plate, -1 * kZ, false, 1e9});
}

/// A post that something level ends against, and its inner or outer face there.
struct Stop {
  int post = -1;
  double face = 0;
  bool between = false;  ///< another one ends against its far face
};

int place_between(Work& work, const Layout& l, int bent, TimberKind kind, const Section& section, double top,
                  int number, Stop left, Stop right) {
  Placing p;
  p.kind = kind;
  p.mark = make_mark(kind, 0, l.labels[at(bent)], number);
  p.place = {l.labels[at(bent)], -1, 0, number};
  p.section = section;
  p.through = {0, l.bents[at(bent)], top - section.depth.in() / 2};
  p.x = kX;
  p.z = kZ;
  p.a = left.face;
  p.b = right.face;
  const int timber = place_timber(work, p);
  const Meeting meeting = kind == TimberKind::kTie ? Meeting::kTiePost : Meeting::kGirtPost;
  join_end(work, {meeting, timber, End::kA, left.post, kX, left.between, 1e9});
  join_end(work, {meeting, timber, End::kB, right.post, -1 * kX, right.between, 1e9});
  return timber;
}

/// A level timber across one bent, between its posts.
int place_between_posts(Work& work, Layout& l, int bent, TimberKind kind, const Section& section, double top,
                        int number) {
  const double post = work.plan.sections.post.depth.in();
  return place_between(work, l, bent, kind, section, top, number, {l.post_left[at(bent)], l.left.out_x(post)},
                       {l.post_right[at(bent)], l.right.out_x(post)});
}

/// From post to post across a hipped end; numbered on from `number`.
void place_along_end(Work& work, Layout& l, int bent, const Section& section, double top, int number) {
  const double post = work.plan.sections.post.depth.in(), half = work.plan.sections.post.breadth.in() / 2;
  Stop from{l.post_left[at(bent)], l.left.out_x(post)};
  for (const int between : l.end_posts[bent == 0 ? 0 : 1]) {
    if (between < 0) continue;
    const double x = work.timber(between).at.origin.x;
    place_between(work, l, bent, TimberKind::kGirt, section, top, number++, from, {between, x - half, true});
    from = {between, x + half, true};
  }
  place_between(work, l, bent, TimberKind::kGirt, section, top, number, from,
                {l.post_right[at(bent)], l.right.out_x(post)});
}

void place_wall_girt(Work& work, Layout& l, int bay, bool is_right, double top, int number) {
  const FramePlan& plan = work.plan;
  const RoofSide& side = l.side(is_right);
  const auto& posts = is_right ? l.post_right : l.post_left;
  const int label = l.labels[at(bay)];
  Placing p;
  p.kind = TimberKind::kGirt;
  p.mark = make_mark(p.kind, side.line, label, number);
  p.place = {label, bay, side.line, number};
  p.section = plan.sections.girt;
  if (top > side.plate_top - plan.sections.plate.depth.in() - 1 || top - p.section.depth.in() < 0) {
    work.add_finding(FindingId::kNoRoom, p.mark);
    return;
  }
  p.through = {x_of_line(side, p.section.breadth), 0, top - p.section.depth.in() / 2};
  p.x = kY;
  p.z = kZ;
  const double half = plan.sections.post.breadth.in() / 2;
  p.a = l.bents[at(bay)] + half;
  p.b = l.bents[at(bay + 1)] - half;
  const int girt = place_timber(work, p);
  join_end(work, {Meeting::kGirtPost, girt, End::kA, posts[at(bay)], kY, true, 1e9});
  join_end(work, {Meeting::kGirtPost, girt, End::kB, posts[at(bay + 1)], -1 * kY, true, 1e9});
}

}  // namespace

void place_sills(Work& work, Layout& l) {
  l.cross_sills = {-1, -1};
  const FramePlan& plan = work.plan;
  if (!plan.sills) return;
  const Section& section = plan.sections.sill;
  const double half = section.breadth.in() / 2;
  const double from = l.bents.front() - half, to = l.bents.back() + half;
  for (const bool is_right : {false, true}) {
    const RoofSide& side = l.side(is_right);
    (is_right ? l.sill_right : l.sill_left) = place_run(
        work, l,
        {TimberKind::kSill, side.line, section, x_of_line(side, section.breadth), 0, from, to, Meeting::kSillScarf});
  }
  for (const int end : {0, 1}) {
    const int bent = end == 0 ? 0 : l.bent_count() - 1;
    l.cross_sills[at(end)] =
        place_across(work, l, TimberKind::kSill, bent, section, l.bents[at(bent)], 0,
                     l.sill_left.under_at(l.bents[at(bent)]), l.sill_right.under_at(l.bents[at(bent)]));
  }
}

void place_posts(Work& work, Layout& l) {
  for (int bent = 0; bent < l.bent_count(); ++bent) {
    for (const bool is_right : {false, true}) place_post(work, l, bent, is_right);
    if (l.hipped_at(bent)) place_end_posts(work, l, bent);
  }
}

void place_plates(Work& work, Layout& l) {
  const FramePlan& plan = work.plan;
  for (const bool is_right : {false, true}) {
    const RoofSide& side = l.side(is_right);
    const Section& section = plan.sections.plate;
    Run& plate = is_right ? l.plate_right : l.plate_left;
    plate = place_run(work, l,
                      {TimberKind::kPlate, side.line, section, x_of_line(side, section.breadth), side.plate_top,
                       l.run_from, l.run_to, Meeting::kPlateScarf});
    const auto& posts = is_right ? l.post_right : l.post_left;
    for (int bent = 0; bent < l.bent_count(); ++bent) {
      const double y = l.bents[at(bent)];
      EndMeeting top{Meeting::kPostTop, posts[at(bent)], End::kB, plate.under_at(y), -1 * kZ, false, 1e9};
      if (plate.joined_at(y) || (l.hipped_at(bent) && lapped_plates(plan))) top.most = section.depth.in() / 2 - 0.75;
      if (l.hipped_at(bent)) top.relish = limits::kRelish.in();
      join_end(work, top);
    }
  }
  for (const int bent : {0, l.bent_count() - 1})
    if (l.hipped_at(bent)) place_end_plate(work, l, bent);
}

void place_ties(Work& work, Layout& l) {
  if (!work.plan.ties) return;
  for (int bent = 0; bent < l.bent_count(); ++bent)
    if (!l.hipped_at(bent))
      l.tie[at(bent)] = place_between_posts(work, l, bent, TimberKind::kTie, work.plan.sections.tie, l.tie_top, 0);
}

void place_girts(Work& work, Layout& l) {
  const FramePlan& plan = work.plan;
  for (int bay = 0; bay + 1 < l.bent_count(); ++bay)
    for (const bool is_right : {false, true})
      for (std::size_t g = 0; g < plan.girts.size(); ++g)
        place_wall_girt(work, l, bay, is_right, plan.girts[g].in(), static_cast<int>(g) + 1);
  if (!plan.end_girts) return;
  // Across the ends they lie lower by their depth and an inch, so that the mortises of a corner post do not meet.
  const double down = plan.sections.girt.depth.in() + 1;
  const double tie_under = l.hip       ? l.left.plate_top - plan.sections.plate.depth.in() - 1
                           : plan.ties ? l.tie_top - plan.sections.tie.depth.in() - 1
                                       : l.tie_top;
  for (const int bent : {0, l.bent_count() - 1})
    for (std::size_t g = 0; g < plan.girts.size(); ++g) {
      const double top = plan.girts[g].in() - down;
      const int number = static_cast<int>(g) + 1;
      if (top > tie_under || top - plan.sections.girt.depth.in() < 0)
        work.add_finding(FindingId::kNoRoom, make_mark(TimberKind::kGirt, 0, l.labels[at(bent)], number));
      else if (l.hip)
        place_along_end(work, l, bent, plan.sections.girt, top,
                        static_cast<int>(g * (l.end_posts[bent == 0 ? 0 : 1].size() + 1)) + 1);
      else
        place_between_posts(work, l, bent, TimberKind::kGirt, plan.sections.girt, top, number);
    }
}

void place_joists(Work& work, Layout& l) {
  const FramePlan& plan = work.plan;
  if (!plan.loft) return;
  const Section& section = plan.sections.joist;
  const double half_tie = plan.sections.tie.breadth.in() / 2, post = plan.sections.post.depth.in();
  const double from = l.left.out_x(post), to = l.right.out_x(post);
  const int gaps = static_cast<int>(libm::ceil((to - from) / plan.joist_spacing.in() - 1e-9));
  for (int bay = 0; bay + 1 < l.bent_count(); ++bay) {
    if (l.tie[at(bay)] < 0 || l.tie[at(bay + 1)] < 0) continue;
    for (int i = 1; i < gaps; ++i) {
      Placing p;
      p.kind = TimberKind::kJoist;
      p.mark = make_mark(p.kind, 0, l.labels[at(bay)], i);
      p.place = {l.labels[at(bay)], bay, 0, i};
      p.section = section;
      p.through = {from + (to - from) * i / gaps, 0, l.tie_top - section.depth.in() / 2};
      p.x = kY;
      p.z = kZ;
      p.a = l.bents[at(bay)] + half_tie;
      p.b = l.bents[at(bay + 1)] - half_tie;
      const int joist = place_timber(work, p);
      join_end(work, {Meeting::kJoistTie, joist, End::kA, l.tie[at(bay)], kY, true, 1e9});
      join_end(work, {Meeting::kJoistTie, joist, End::kB, l.tie[at(bay + 1)], -1 * kY, true, 1e9});
    }
  }
}

}  // namespace bentbook
