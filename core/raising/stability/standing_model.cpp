/// What stands, as bodies and unit forces.

#include <algorithm>

#include "frame/facts.h"
#include "frame/joints/joint_table.h"
#include "numeric/sorting.h"
#include "raising/fasteners.h"
#include "raising/limits.h"
#include "raising/stability/joint_rows.h"
#include "raising/stability/standing.h"
#include "raising/temporary_line.h"

namespace bentbook {
namespace {

void ground_row(std::vector<HoldRow>& rows, int timber, Vec3 point, Vec3 direction, bool two_way) {
  HoldRow row{timber, kGround, point, direction, two_way};
  row.kind = HoldKind::kFoot;
  rows.push_back(row);
}

void post_on_ground(std::vector<HoldRow>& rows, int i, const Timber& t, bool anchored) {
  const Vec3 o = t.at.origin;
  ground_row(rows, i, o, {0, 0, 1}, anchored);
  if (!anchored) return;
  const double half = (t.sides.y_hi - t.sides.y_lo) / 2;
  ground_row(rows, i, o, {1, 0, 0}, true);
  ground_row(rows, i, o + Vec3{half, 0, 0}, {0, 1, 0}, true);
  ground_row(rows, i, o - Vec3{half, 0, 0}, {0, 1, 0}, true);
}

void sill_on_ground(std::vector<HoldRow>& rows, int i, const Timber& t, bool anchored) {
  const Vec3 a = t.at.origin + t.sides.z_lo * t.at.z, b = a + t.length * t.at.x;
  for (const Vec3& end : {a, b}) {
    ground_row(rows, i, end + t.sides.y_lo * t.at.y, {0, 0, 1}, false);
    ground_row(rows, i, end + t.sides.y_hi * t.at.y, {0, 0, 1}, false);
  }
  if (!anchored) return;
  ground_row(rows, i, a, t.at.x, true);
  for (const Vec3& end : {a, b}) {
    ground_row(rows, i, end, t.at.y, true);
    ground_row(rows, i, end, {0, 0, -1}, false);
  }
}

constexpr double kEighths[8][2] = {
    {1, 0},  {0.70710678118654752, 0.70710678118654752},   {0, 1},  {-0.70710678118654752, 0.70710678118654752},
    {-1, 0}, {-0.70710678118654752, -0.70710678118654752}, {0, -1}, {0.70710678118654752, -0.70710678118654752}};

StandingBody body_of(const Timber& t, const RaisingLoads& loads) {
  StandingBody body;
  const TimberFacts facts = facts_of(t);
  body.cg = facts.cg_world;
  body.weight_lb = facts.weight_lb;
  body.placed = t.placed;
  body.end_a = t.at.origin;
  body.end_b = t.at.origin + t.length * t.at.x;
  const double b = t.sides.y_hi - t.sides.y_lo, d = t.sides.z_hi - t.sides.z_lo;
  const double pressure =
      limits::kTimberDrag * limits::kWindPressure * loads.wind_mph * loads.wind_mph / 144;  // lb/in²
  for (std::size_t k = 0; k < 8; ++k) {
    const Vec3 blow{kEighths[k][0], kEighths[k][1], 0};
    const double area = libm::fabs(dot(blow, t.at.x)) * b * d + libm::fabs(dot(blow, t.at.y)) * t.length * d +
                        libm::fabs(dot(blow, t.at.z)) * t.length * b;
    const double wind = pressure * area, share = body.weight_lb * loads.push_per_cent / 100;
    body.wind_rules[k] = wind > share;
    body.push_lb[k] = (wind > share ? wind : share) + body.weight_lb * loads.out_of_plumb_per_mille / 1000;
  }
  return body;
}

void keep_row(StandingModel& model, const HoldRow& row) {
  const int index = static_cast<int>(model.rows.size());
  model.rows.push_back(row);
  model.touches[static_cast<std::size_t>(row.a)].push_back(index);
  if (row.b != kGround) model.touches[static_cast<std::size_t>(row.b)].push_back(index);
}

}  // namespace

StandingModel make_standing_model(const Frame& frame, const RaisingPlan& plan) {
  StandingModel model;
  model.loads = plan.loads;
  model.ratings = plan.ratings;
  std::vector<char> carried(frame.timbers.size(), 0);
  std::vector<HoldRow> rows;
  for (std::size_t j = 0; j < frame.joints.size(); ++j) {
    const Joint& joint = frame.joints[j];
    add_joint_rows(frame, plan, static_cast<int>(j), rows);
    if (joint.meeting == Meeting::kPostFoot) carried[static_cast<std::size_t>(joint.member)] = 1;
    model.joint_at.push_back(joint.where);
    model.joint_member.push_back(joint.member);
    model.joint_receiver.push_back(joint.receiver);
    model.joint_carrier.push_back(joint.carrier);
    model.joint_pinned.push_back(row_of(joint.kind).fasteners == Fasteners::kPins ? 1 : 0);
  }
  // A roof alone: its plates lie on walls that stand already.
  const bool on_walls = std::none_of(frame.timbers.begin(), frame.timbers.end(),
                                     [](const Timber& t) { return t.kind == TimberKind::kPost; });
  bool first = true;
  for (std::size_t i = 0; i < frame.timbers.size(); ++i) {
    const Timber& t = frame.timbers[i];
    model.bodies.push_back(body_of(t, plan.loads));
    model.bent.push_back(t.place.bent);
    model.timber_kind.push_back(t.kind);
    model.axis.push_back(t.at.x);
    model.length.push_back(t.length);
    if (!t.placed) continue;
    const double low = t.at.origin.z < model.bodies.back().end_b.z ? t.at.origin.z : model.bodies.back().end_b.z;
    if (first || low < model.ground_z) model.ground_z = low;
    first = false;
    if (t.kind == TimberKind::kSill || (on_walls && t.kind == TimberKind::kPlate))
      sill_on_ground(rows, static_cast<int>(i), t, plan.posts_anchored);
    if (t.kind == TimberKind::kPost && carried[i] == 0)
      post_on_ground(rows, static_cast<int>(i), t, plan.posts_anchored);
  }
  model.touches.resize(frame.timbers.size());
  for (const HoldRow& row : rows)
    if (row.a >= 0 && model.bodies[static_cast<std::size_t>(row.a)].placed &&
        (row.b < 0 || model.bodies[static_cast<std::size_t>(row.b)].placed))
      keep_row(model, row);
  for (const Temporary& temporary : plan.temporaries) add_temporary(model, frame, temporary);
  return model;
}

int add_temporary(StandingModel& model, const Frame& frame, const Temporary& temporary) {
  const int index = static_cast<int>(model.temporaries.size());
  model.temporaries.push_back(temporary);
  model.temporary_row.push_back(-1);
  const auto line = temporary_line(frame, temporary);
  if (!line) return index;
  const int from = timber_by_mark(frame, temporary.from.mark);
  const int to = temporary.to.mark.empty() ? kGround : timber_by_mark(frame, temporary.to.mark);
  const Vec3 p = line->from, q = line->to;
  const double length = norm(q - p);
  if (!(length > 1)) return index;
  HoldRow row{from, to, p, (1 / length) * (q - p), false};
  if (temporary.kind == TemporaryKind::kProp) row.direction = -1 * row.direction;
  row.two_way =
      temporary.kind == TemporaryKind::kDiagonal && length <= limits::kMostSlenderness * temporary.thickness.in();
  const bool nailed = temporary.kind == TemporaryKind::kDiagonal && model.ratings.nailed_brace.count > 0;
  row.limit = temporary.rated.count > 0 ? temporary.rated.lb()
              : nailed                  ? model.ratings.nailed_brace.lb()
                                        : limits::kUnratedBraceLb;
  row.kind = HoldKind::kTemporary;
  row.temporary = index;
  model.temporary_row.back() = static_cast<int>(model.rows.size());
  keep_row(model, row);
  return index;
}

}  // namespace bentbook
