#include "frame/placing/layout.h"

#include "frame/placing/check_plan.h"
#include "frame/roofs/hip_roof.h"

namespace bentbook {
namespace {

RoofSide make_side(const FramePlan& plan, bool is_right, double depth) {
  RoofSide s;
  const bool own = is_right && plan.form != RoofForm::kHip;
  const Slope& pitch = own ? plan.pitch_right : plan.pitch_left;
  s.dir = is_right ? -1 : 1;
  s.wall_x = (is_right ? 1 : -1) * plan.span.in() / 2;
  s.tan = pitch.tan();
  s.cos = pitch.cos();
  s.sin = pitch.sin();
  s.plate_top = (own ? plan.plate_right : plan.plate_left).in();
  s.seat = std::get<BirdsMouth>(plan.joints[static_cast<std::size_t>(Meeting::kRafterPlate)]).seat.in();
  s.heel = depth / s.cos - s.seat * s.tan;
  s.line = is_right ? 'E' : 'A';
  s.inner = is_right ? 'D' : 'B';
  return s;
}

Result<void> set_ridge(const FramePlan& plan, Layout& l) {
  if (l.lean_to) {
    const double breadth = plan.sections.plate.breadth.in();
    // The high wall looks the other way; the rafters over it go on as they come.
    RoofSide& high = l.right;
    high = l.left;
    high.dir = -1;
    high.wall_x = plan.span.in() / 2;
    high.line = 'E';
    high.inner = 'D';
    high.tan = -l.left.tan;
    high.sin = -l.left.sin;
    high.plate_top = l.left.plate_top + (plan.span.in() - breadth) * l.left.tan;
    high.seat = breadth - l.left.seat;
    high.heel = l.left.heel + breadth * l.left.tan;
    l.left.run = plan.span.in();
    l.ridge_x = l.right.wall_x;
    l.ridge_z = l.left.top_at(l.ridge_x);
    return {};
  }
  const RoofSide &a = l.left, &b = l.right;
  // Top lines meet: run_A = (span tan B + heel_B − heel_A + plate_B − plate_A) / (tan A + tan B).
  const double run = (plan.span.in() * b.tan + b.heel - a.heel + b.plate_top - a.plate_top) / (a.tan + b.tan);
  const double room = plan.sections.plate.breadth.in() + plan.sections.ridge_beam.breadth.in();
  if (!(run > room && plan.span.in() - run > room)) return fail(ErrorCode::kImpossible, "plate_right");
  l.left.run = run;
  l.right.run = plan.span.in() - run;
  l.ridge_x = a.wall_x + run;
  l.ridge_z = a.top_at(l.ridge_x);
  return {};
}

void set_bents(const FramePlan& plan, Layout& l) {
  double y = 0;
  l.bents.push_back(y);
  l.labels.push_back(1);
  for (const Bay& bay : plan.bays) {
    y += bay.width.in();
    l.bents.push_back(y);
    l.labels.push_back(bay.label);
  }
  const double half = plan.sections.post.breadth.in() / 2;
  l.first_out = -half;
  l.last_out = y + half;
  const double past = l.hip ? 0 : plan.gable_overhang.in();
  l.run_from = l.first_out - past;
  l.run_to = l.last_out + past;
  const auto none = std::vector<int>(l.bents.size(), -1);
  l.post_left = l.post_right = l.tie = l.king = l.queen_left = l.queen_right = none;
}

}  // namespace

bool lapped_plates(const FramePlan& plan) {
  return kind_of(plan.joints[static_cast<std::size_t>(Meeting::kSillCorner)]) == JointKind::kHalfLap;
}

Result<Layout> lay_out(const FramePlan& plan) {
  if (auto ok = check_plan(plan); !ok) return tl::unexpected(ok.error());
  Result<Layout> out{tl::in_place};
  Layout& l = *out;
  l.lean_to = plan.form == RoofForm::kLeanTo;
  l.hip = plan.form == RoofForm::kHip;
  const Section& rafter =
      plan.roof == RoofFrame::kPrincipals && !l.hip ? plan.sections.principal : plan.sections.common;
  l.rafter_depth = rafter.depth.in();
  l.rafter_breadth = rafter.breadth.in();
  l.left = make_side(plan, false, l.rafter_depth);
  l.right = make_side(plan, true, l.rafter_depth);
  for (const RoofSide* s : {&l.left, &l.right})
    if (!(s->heel > 0.5))
      return fail(ErrorCode::kSeatTooLong, "seat", -1,
                  Length::from_inches((l.rafter_depth / s->cos - 0.5) / s->tan).count);
  if (auto ok = set_ridge(plan, l); !ok) return tl::unexpected(ok.error());
  set_bents(plan, l);
  const double low = l.left.plate_top < l.right.plate_top ? l.left.plate_top : l.right.plate_top;
  l.tie_top = low - plan.tie_drop.in();
  if (l.hip)
    if (auto ok = lay_out_hips(plan, l); !ok) return tl::unexpected(ok.error());
  return out;
}

Run place_run(Work& work, const Layout& l, const RunPlacing& p) {
  Run run;
  const auto* scarf = std::get_if<Scarf>(&work.plan.joints[static_cast<std::size_t>(p.scarf)]);
  const double half = scarf != nullptr ? scarf->length.in() / 2 : 0;
  const double most = work.plan.stock_most.in();
  run.half_joint = half;
  std::vector<int> label{l.labels.front()};
  run.from.push_back(p.from);
  // As far as one stock length goes, then a joint over that bent.
  for (int i = p.spare; i + p.spare < l.bent_count(); ++i) {
    const double next = i + p.spare + 1 < l.bent_count() ? l.bents[static_cast<std::size_t>(i) + 1] + half : p.to;
    const double start = run.from.back() - (run.from.size() > 1 ? half : 0);
    if (next - start <= most + 1e-9) continue;
    run.from.push_back(l.bents[static_cast<std::size_t>(i)]);
    label.push_back(l.labels[static_cast<std::size_t>(i)]);
  }
  for (std::size_t i = 0; i < run.from.size(); ++i) {
    Placing t;
    t.kind = p.kind;
    t.mark = make_mark(p.kind, p.line, label[i]);
    t.place = {label[i], -1, p.line, 0};
    t.section = p.section;
    t.through = {p.x, 0, p.top - p.section.depth.in() / 2};
    t.x = {0, 1, 0};
    t.z = {0, 0, 1};
    t.a = run.from[i];
    t.b = i + 1 < run.from.size() ? run.from[i + 1] : p.to;
    run.pieces.push_back(place_timber(work, t));
  }
  for (std::size_t i = 1; i < run.pieces.size(); ++i)
    if (scarf != nullptr) join_scarf(work, p.scarf, run.pieces[i - 1], run.pieces[i], run.from[i], *scarf);
  return run;
}

void cut_plumb(Work& work, int i, End end, double x, double side) {
  if (i < 0) return;
  const Timber& it = work.timber(i);
  cut_end(work, i, end, EndCutName::kPlumb, {{side, 0, 0}, side * x});
  const double sign = end == End::kB ? 1 : -1;
  double tip = -1e300;
  for (const double z : {it.sides.z_lo, it.sides.z_hi}) {
    const Vec3 p = it.at.origin + z * it.at.z;
    const double reach = sign * (x - p.x) / it.at.x.x;
    tip = reach > tip ? reach : tip;
  }
  set_tip(work, i, end, sign * tip);
}

}  // namespace bentbook
