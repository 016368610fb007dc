#include "roof/plan/roof_plan.h"

#include <algorithm>
#include <array>
#include <initializer_list>

#include "measure/fields.h"
#include "numeric/index.h"
#include "roof/plan/flat.h"
#include "roof/plan/limits.h"
#include "roof/rafter_fields.h"

namespace bentbook {
namespace {

constexpr std::array<std::string_view, 2> kSideWords = {"eave", "gable"}, kHeelWords = {"seat", "heel"},
                                          kTopWords = {"dropped", "backed"}, kTailWords = {"plumb", "square"},
                                          kFeetWords = {"tied", "loose"}, kDormerWords = {"gable", "shed"};

struct Spot {
  Length x, y;
};

RoofPlan roof_over(std::initializer_list<Spot> corners, Slope pitch) {
  RoofPlan plan;
  for (const Spot& corner : corners) {
    PlanSide side;
    side.x = corner.x;
    side.y = corner.y;
    side.pitch = pitch;
    plan.sides.push_back(side);
  }
  return plan;
}

std::string path_of(std::size_t side, const char* field) { return "sides." + std::to_string(side) + "." + field; }

Result<void> within(const std::string& where, Length value, Length least, Length most) {
  if (value < least) return fail(ErrorCode::kTooSmall, where, -1, least.count);
  if (value > most) return fail(ErrorCode::kTooLarge, where, -1, most.count);
  return {};
}

Result<void> check_side(const PlanSide& side, std::size_t i) {
  constexpr Length kFar = limits::kFarthestCorner, kHigh = limits::kHighestPlate;
  if (auto ok = within(path_of(i, "x"), side.x, -kFar, kFar); !ok) return ok;
  if (auto ok = within(path_of(i, "y"), side.y, -kFar, kFar); !ok) return ok;
  if (auto ok = within(path_of(i, "overhang"), side.overhang, {}, limits::kMostOverhang); !ok) return ok;
  if (side.kind == SideKind::kGable) return {};
  if (auto ok = within(path_of(i, "plate_height"), side.plate_height, -kHigh, kHigh); !ok) return ok;
  if (!(side.pitch.deg() > limits::kFlattestPlane)) return fail(ErrorCode::kTooSmall, path_of(i, "pitch"));
  if (!(side.pitch.deg() < limits::kSteepestPlane)) return fail(ErrorCode::kSteep, path_of(i, "pitch"));
  return {};
}

/// Seat or heel must leave wood for the other on every side.
Result<void> check_heel(const RoofPlan& plan, const PlanSide& side, std::size_t i) {
  if (side.kind == SideKind::kGable) return {};
  const double depth = plan.common.depth.in(), cos = side.pitch.cos(), sin = side.pitch.sin();
  if (plan.heel_by == HeelBy::kSeat && !(plan.seat.in() * sin < depth - 1e-3))
    return fail(ErrorCode::kSeatTooLong, path_of(i, "seat"), -1, Length::from_inches((depth - 1e-3) / sin).count);
  if (plan.heel_by == HeelBy::kHeel && !(plan.heel.in() < depth / cos + 1e-9))
    return fail(ErrorCode::kHeelTooLarge, path_of(i, "heel"), -1, Length::from_inches(depth / cos).count);
  return {};
}

Result<void> check_measures(const RoofPlan& plan) {
  const struct {
    const char* name;
    Length value, least, most;
  } all[] = {
      {"common.breadth", plan.common.breadth, limits::kThinnestTimber, limits::kThickestTimber},
      {"common.depth", plan.common.depth, limits::kThinnestTimber, limits::kThickestTimber},
      {"hip.breadth", plan.hip.breadth, limits::kThinnestTimber, limits::kThickestTimber},
      {"hip.depth", plan.hip.depth, limits::kThinnestTimber, limits::kThickestTimber},
      {"valley.breadth", plan.valley.breadth, limits::kThinnestTimber, limits::kThickestTimber},
      {"valley.depth", plan.valley.depth, limits::kThinnestTimber, limits::kThickestTimber},
      {"ridge.breadth", plan.ridge.breadth, limits::kThinnestTimber, limits::kThickestTimber},
      {"ridge.depth", plan.ridge.depth, limits::kThinnestTimber, limits::kThickestTimber},
      {"header.breadth", plan.header.breadth, limits::kThinnestTimber, limits::kThickestTimber},
      {"header.depth", plan.header.depth, limits::kThinnestTimber, limits::kThickestTimber},
      {"dormer_post.breadth", plan.dormer_post.breadth, limits::kThinnestTimber, limits::kThickestTimber},
      {"dormer_post.depth", plan.dormer_post.depth, limits::kThinnestTimber, limits::kThickestTimber},
      {"spacing", plan.spacing, std::max(limits::kLeastSpacing, plan.common.breadth), limits::kMostSpacing},
      {"seat", plan.seat, Length::inches(1, 4), limits::kThickestTimber},
      {"heel", plan.heel, Length::inches(1, 4), limits::kThickestTimber},
  };
  for (const auto& it : all)
    if (auto ok = within(it.name, it.value, it.least, it.most); !ok) return ok;
  return {};
}

Result<void> check_dormers(const RoofPlan& plan) {
  if (plan.dormers.size() > static_cast<std::size_t>(limits::kMostDormers))
    return fail(ErrorCode::kTooLarge, "dormers");
  for (std::size_t i = 0; i < plan.dormers.size(); ++i) {
    const Dormer& dormer = plan.dormers[i];
    const std::string path = "dormers." + std::to_string(i) + ".";
    const bool on_eave =
        dormer.side >= 0 && at(dormer.side) < plan.sides.size() && plan.sides[at(dormer.side)].kind == SideKind::kEave;
    if (!on_eave) return fail(ErrorCode::kConflict, path + "side");
    if (!(dormer.pitch.deg() > limits::kFlattestPlane)) return fail(ErrorCode::kTooSmall, path + "pitch");
    if (!(dormer.pitch.deg() < limits::kSteepestPlane)) return fail(ErrorCode::kSteep, path + "pitch");
    if (auto ok = within(path + "overhang", dormer.overhang, {}, limits::kMostOverhang); !ok) return ok;
  }
  return {};
}

Result<void> check_outline(const RoofPlan& plan) {
  Polygon2 corners;
  corners.reserve(plan.sides.size());
  for (const PlanSide& side : plan.sides) corners.push_back({side.x.in(), side.y.in()});
  const std::size_t n = corners.size();
  for (std::size_t i = 0; i < n; ++i)
    if (const double length = norm(corners[(i + 1) % n] - corners[i]); !(length >= limits::kShortestSide.in()))
      return fail(ErrorCode::kTooSmall, path_of(i, "length"), -1, limits::kShortestSide.count);
  for (std::size_t i = 0; i < n; ++i) {
    const Vec2 last = unit(corners[i] - corners[(i + n - 1) % n]), own = unit(corners[(i + 1) % n] - corners[i]);
    if (!(libm::fabs(cross(last, own)) >= limits::kLeastCorner))
      return fail(ErrorCode::kConflict, path_of(i, "corner"));
  }
  if (crosses_itself(corners)) return fail(ErrorCode::kImpossible, "outline");
  if (!(area_of(corners) > 0)) return fail(ErrorCode::kConflict, "outline");
  double length = 0;
  for (std::size_t i = 0; i < n; ++i) length += norm(corners[(i + 1) % n] - corners[i]);
  if (length / plan.spacing.in() > limits::kMostRafters)
    return fail(ErrorCode::kTooSmall, "spacing", -1, Length::from_inches(length / limits::kMostRafters).count);
  return {};
}

}  // namespace

RoofPlan rectangle_roof(Length along, Length across, Slope pitch) {
  return roof_over({{{}, {}}, {along, {}}, {along, across}, {{}, across}}, pitch);
}

RoofPlan l_roof(Length along, Length across, Length wing, Length out, Slope pitch) {
  const Length top = across + out, inner = along - wing;
  return roof_over({{{}, {}}, {along, {}}, {along, top}, {inner, top}, {inner, across}, {{}, across}}, pitch);
}

RoofPlan t_roof(Length along, Length across, Length wing, Length out, Slope pitch) {
  const Length top = across + out, left{(along - wing).count / 2}, right = left + wing;
  return roof_over({{{}, {}},
                    {along, {}},
                    {along, across},
                    {right, across},
                    {right, top},
                    {left, top},
                    {left, across},
                    {{}, across}},
                   pitch);
}

RoofPlan u_roof(Length along, Length across, Length wing, Length out, Slope pitch) {
  const Length top = across + out, right = along - wing;
  return roof_over(
      {{{}, {}}, {along, {}}, {along, top}, {right, top}, {right, across}, {wing, across}, {wing, top}, {{}, top}},
      pitch);
}

RoofPlan bay_roof(Length along, Length across, Length bay, Length out, Slope pitch) {
  const Length left{(along - bay).count / 2}, right = left + bay;
  // The slanted sides run at 45°, as an octagon's do: as far along the wall as out of it.
  return roof_over({{{}, {}},
                    {left, {}},
                    {left + out, -out},
                    {right - out, -out},
                    {right, {}},
                    {along, {}},
                    {along, across},
                    {{}, across}},
                   pitch);
}

std::string side_letters(int side) {
  std::string letters(1, static_cast<char>('A' + side % 26));
  if (side >= 26) letters.insert(letters.begin(), static_cast<char>('A' + side / 26 - 1));
  return letters;
}

std::string dormer_letters(int dormer) { return "DM" + std::to_string(dormer + 1); }

static void describe(Fields& fields, Dormer& d) {
  fields.choice("kind", d.kind, kDormerWords);
  fields.integer("side", d.side, 0, limits::kMostSides - 1);
  fields.length("centre", d.centre, kOnBuilding);
  fields.length("width", d.width, kOnBuilding);
  fields.length("face", d.face, kOnBuilding);
  fields.length("plate_height", d.plate_height, kOnSite);
  fields.slope("pitch", d.pitch);
  fields.length("overhang", d.overhang);
  fields.flag("doubled", d.doubled);
}

static void describe(Fields& fields, PlanSide& s) {
  fields.length("x", s.x, kOnSite);
  fields.length("y", s.y, kOnSite);
  fields.choice("kind", s.kind, kSideWords);
  fields.slope("pitch", s.pitch);
  fields.length("plate_height", s.plate_height, kOnSite);
  fields.length("overhang", s.overhang);
}

void describe(Fields& fields, RoofPlan& p) {
  fields.list("sides", p.sides, limits::kMostSides);
  fields.choice("heel_by", p.heel_by, kHeelWords);
  fields.length("seat", p.seat);
  fields.length("heel", p.heel);
  fields.choice("hip_top", p.hip_top, kTopWords);
  fields.choice("tail", p.tail, kTailWords);
  fields.length("spacing", p.spacing);
  fields.object("common_rafter", p.common);
  fields.object("hip_rafter", p.hip);
  fields.object("valley_rafter", p.valley);
  fields.object("ridge", p.ridge);
  fields.choice("feet", p.feet, kFeetWords);
  fields.number("load_psf", p.load_psf, 0, 100'000, 1000);
  // Roofs without dormers are written as before there were any.
  if (!fields.reads() && p.dormers.empty()) return;
  fields.list("dormers", p.dormers, limits::kMostDormers);
  fields.object("header", p.header);
  fields.object("dormer_post", p.dormer_post);
}

Result<void> check_roof_plan(const RoofPlan& plan) {
  if (plan.sides.size() < static_cast<std::size_t>(limits::kLeastSides)) return fail(ErrorCode::kMissing, "sides");
  if (plan.sides.size() > static_cast<std::size_t>(limits::kMostSides)) return fail(ErrorCode::kTooLarge, "sides");
  if (auto ok = check_measures(plan); !ok) return ok;
  for (std::size_t i = 0; i < plan.sides.size(); ++i) {
    if (auto ok = check_side(plan.sides[i], i); !ok) return ok;
    if (auto ok = check_heel(plan, plan.sides[i], i); !ok) return ok;
  }
  if (!(plan.load_psf >= 0 && plan.load_psf < 100'000)) return fail(ErrorCode::kTooLarge, "load_psf");
  if (auto ok = check_outline(plan); !ok) return ok;
  return check_dormers(plan);
}

}  // namespace bentbook
