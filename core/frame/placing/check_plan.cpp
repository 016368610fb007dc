#include <initializer_list>

#include "frame/limits.h"
#include "frame/placing/layout.h"

namespace bentbook {
namespace {

constexpr Length kMost = limits::kMostBuilding;

struct Field {
  const char* name;
  Length value, least, most;
};

Result<void> check_fields(std::initializer_list<Field> fields) {
  for (const Field& f : fields) {
    if (f.value < f.least) return fail(ErrorCode::kTooSmall, f.name, -1, f.least.count);
    if (f.value > f.most) return fail(ErrorCode::kTooLarge, f.name, -1, f.most.count);
  }
  return {};
}

Result<void> check_section(const char* name, const Section& section) {
  return check_fields({{name, section.breadth, limits::kLeastSide, limits::kMostSide},
                       {name, section.depth, limits::kLeastSide, limits::kMostSide}});
}

Result<void> check_sections(const PlanSections& s) {
  const struct {
    const char* name;
    const Section& section;
  } all[] = {{"sill", s.sill},           {"post", s.post},
             {"plate", s.plate},         {"tie", s.tie},
             {"girt", s.girt},           {"joist", s.joist},
             {"king_post", s.king_post}, {"queen_post", s.queen_post},
             {"collar", s.collar},       {"ridge_beam", s.ridge_beam},
             {"principal", s.principal}, {"common", s.common},
             {"purlin", s.purlin},       {"brace", s.brace}};
  for (const auto& it : all)
    if (auto ok = check_section(it.name, it.section); !ok) return ok;
  return {};
}

Result<void> check_pins(const PinPattern& pins) {
  if (pins.count < 0 || pins.count > 20) return fail(ErrorCode::kTooLarge, "pins");
  return check_fields({{"pin_diameter", pins.diameter, Length::inches(1, 8), Length::inches(4)},
                       {"pin_from_shoulder", pins.from_shoulder, {}, Length::inches(48)},
                       {"pin_spacing", pins.spacing, {}, Length::inches(48)},
                       {"pin_plug", pins.plug, {}, Length::inches(48)}});
}

struct CheckJoint {
  Result<void> operator()(const HousedButt& j) const {
    return check_fields({{"housing", j.housing, {}, Length::inches(12)}});
  }
  Result<void> operator()(const KnifePlate& j) const {
    const Length most = Length::inches(48);
    if (auto ok = check_pins(j.pins); !ok) return ok;
    return check_fields({{"plate_thickness", j.thickness, Length::inches(1, 16), Length::inches(4)},
                         {"plate_reach", j.reach, Length::inches(1), most},
                         {"plate_width", j.width, Length::inches(1), most},
                         {"slot_clearance", j.slot_clearance, {}, Length::inches(1)},
                         {"depth_clearance", j.depth_clearance, {}, Length::inches(4)},
                         {"relief_leg", j.relief_leg, {}, Length::inches(4)},
                         {"root_radius", j.root_radius, {}, Length::inches(4)},
                         {"weld_crown", j.weld_crown, {}, Length::inches(4)},
                         {"base_thickness", j.base_thickness, {}, Length::inches(4)},
                         {"base_width", j.base_width, Length::inches(1), most},
                         {"base_height", j.base_height, Length::inches(1), most}});
  }
  Result<void> operator()(const MortiseTenon& j) const {
    const Length most = Length::inches(48);
    if (j.pegs < 0 || j.pegs > 8) return fail(ErrorCode::kTooLarge, "pegs");
    if (auto ok = check_pins(j.peg); !ok) return ok;
    return check_fields({{"tenon_thickness", j.thickness, Length::inches(1, 2), most},
                         {"tenon_length", j.length, Length::inches(1, 2), most},
                         {"shoulder_top", j.shoulder_top, {}, most},
                         {"shoulder_bottom", j.shoulder_bottom, {}, most},
                         {"housing", j.housing, {}, Length::inches(12)},
                         {"depth_clearance", j.depth_clearance, {}, Length::inches(4)},
                         {"drawbore", j.drawbore, {}, Length::inches(1, 2)}});
  }
  Result<void> operator()(const BirdsMouth& j) const {
    return check_fields({{"seat", j.seat, Length::inches(1, 4), Length::inches(48)}});
  }
  Result<void> operator()(const RafterPeak& j) const {
    if (auto ok = check_pins(j.peg); !ok) return ok;
    return check_fields(
        {{"tongue", j.thickness, {}, Length::inches(48)}, {"tongue_clearance", j.clearance, {}, Length::inches(1)}});
  }
  Result<void> operator()(const HalfLap& j) const { return check_pins(j.peg); }
  Result<void> operator()(const Scarf& j) const {
    if (j.pegs < 0 || j.pegs > 8) return fail(ErrorCode::kTooLarge, "pegs");
    if (auto ok = check_pins(j.peg); !ok) return ok;
    return check_fields({{"scarf_length", j.length, Length::inches(4), Length::feet(6)}});
  }
};

Result<void> check_pitch(const char* name, const Slope& pitch) {
  const double deg = pitch.deg();
  if (!(deg > limits::kFlattestRoof)) return fail(ErrorCode::kTooSmall, name);
  if (!(deg < limits::kSteepestRoof)) return fail(ErrorCode::kSteep, name);
  return {};
}

Result<void> check_bays(const FramePlan& plan) {
  if (plan.bays.empty()) return fail(ErrorCode::kMissing, "bays");
  if (plan.bays.size() > 1000) return fail(ErrorCode::kTooLarge, "bays");
  const Length least = plan.sections.post.breadth + Length::inches(24);
  Length length{};
  for (const Bay& bay : plan.bays) {
    if (auto ok = check_fields({{"bay", bay.width, least, kMost}}); !ok) return ok;
    length = length + bay.width;
  }
  // So many timbers that the app would stand still: 10 000 rafters.
  if (length.in() / plan.rafter_spacing.in() > 5000) return fail(ErrorCode::kTooSmall, "rafter_spacing");
  return {};
}

}  // namespace

Result<void> check_plan(const FramePlan& p) {
  if (auto ok = check_sections(p.sections); !ok) return ok;
  for (const JointType& joint : p.joints)
    if (auto ok = std::visit(CheckJoint{}, joint); !ok) return ok;
  for (int i = 0; i < kMeetings; ++i)
    if (!fits(static_cast<Meeting>(i), kind_of(p.joints[static_cast<std::size_t>(i)])))
      return fail(ErrorCode::kConflict, "joint");
  if (auto ok = check_pitch("pitch_left", p.pitch_left); !ok) return ok;
  if (auto ok = check_pitch("pitch_right", p.pitch_right); !ok) return ok;
  const Length post_room = p.sections.plate.depth + Length::feet(2);
  const Length foot = Length::inches(6);
  if (auto ok =
          check_fields({{"span", p.span, Length::feet(4), kMost},
                        {"plate_left", p.plate_left, post_room, kMost},
                        {"plate_right", p.plate_right, post_room, kMost},
                        {"eave_overhang", p.eave_overhang, {}, Length::feet(20)},
                        {"gable_overhang", p.gable_overhang, {}, Length::feet(20)},
                        {"rafter_spacing", p.rafter_spacing, p.sections.common.breadth + Length::inches(4), kMost},
                        {"purlin_spacing", p.purlin_spacing, p.sections.purlin.breadth + Length::inches(4), kMost},
                        {"joist_spacing", p.joist_spacing, p.sections.joist.breadth + Length::inches(4), kMost},
                        {"collar_rise", p.collar_rise, {}, kMost},
                        {"queen_inset", p.queen_inset, {}, kMost},
                        {"brace_leg_post", p.brace_leg_post, foot, Length::feet(20)},
                        {"brace_leg_beam", p.brace_leg_beam, foot, Length::feet(20)},
                        {"stock_most", p.stock_most, Length::feet(4), kMost},
                        {"stand_off", p.stand_off, {}, Length::feet(2)}});
      !ok)
    return ok;
  if (p.ties)
    if (auto ok = check_fields({{"tie_drop", p.tie_drop, p.sections.plate.depth, kMost}}); !ok) return ok;
  for (const Override& o : p.overrides) {
    for (const JointType* joint : {&o.joint_a, &o.joint_b})
      if (auto ok = std::visit(CheckJoint{}, *joint); !ok) return ok;
    if (o.pier_level > kMost || -o.pier_level > kMost) return fail(ErrorCode::kTooLarge, "pier_level");
    if (auto ok = o.has_section ? check_section("override", o.section) : Result<void>{}; !ok) return ok;
    if (!o.has_wood) continue;
    if (auto ok = check_section("override", o.wood.nominal); !ok) return ok;
    if (auto ok = check_section("override", o.wood.actual); !ok) return ok;
  }
  for (const Length girt : p.girts)
    if (auto ok = check_fields({{"girt", girt, {}, kMost}}); !ok) return ok;
  if (p.girts.size() > 20) return fail(ErrorCode::kTooLarge, "girts");
  if (!(p.moisture >= 0 && p.moisture <= limits::kMostMoisture)) return fail(ErrorCode::kTooLarge, "moisture");
  if (!(p.load_psf >= 0 && p.load_psf <= limits::kMostRoofLoad)) return fail(ErrorCode::kTooLarge, "load_psf");
  return check_bays(p);
}

}  // namespace bentbook
