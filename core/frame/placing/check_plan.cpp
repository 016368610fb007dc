#include "frame/placing/check_plan.h"

#include <initializer_list>

#include "frame/joints/joint_table.h"
#include "frame/limits.h"
#include "measure/fields.h"
#include "roof/plan/limits.h"

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

/// Finds the first measure of a joint that is outside of what its description lets one type.
class Limits final : public Fields {
 public:
  Limits(std::string path, Result<void>& found) : path_(std::move(path)), found_(found) {}
  [[nodiscard]] bool reads() const override { return false; }
  void fail(ErrorCode code, const char* key, std::int64_t limit) override {
    if (found_) found_ = bentbook::fail(code, path_ + key, -1, limit);
  }
  void text(const char*, std::string&, std::size_t) override {}
  void flag(const char*, bool&) override {}
  void integer(const char* key, int& value, int low, int high) override { within(key, value, low, high); }
  void whole(const char* key, std::int64_t& value, std::int64_t low, std::int64_t high) override {
    within(key, value, low, high);
  }
  void number(const char*, double&, double, double, double) override {}
  void length(const char* key, Length& value, const LengthEntry& entry) override {
    within(key, value.count, entry.min.count, entry.max.count);
  }
  void angle(const char*, Angle&, const AngleEntry&) override {}
  void slope(const char*, Slope&) override {}
  void weight(const char*, Weight&) override {}
  void word(const char*, int&, std::span<const std::string_view>) override {}
  void inner(const char* key, Described value) override {
    Limits inside(path_ + key + ".", found_);
    value.describe(inside, value.value);
  }
  void items(const char*, DescribedList&, unsigned) override {}

 private:
  void within(const char* key, std::int64_t value, std::int64_t low, std::int64_t high) {
    if (value < low) fail(ErrorCode::kTooSmall, key, low);
    if (value > high) fail(ErrorCode::kTooLarge, key, high);
  }
  std::string path_;
  Result<void>& found_;
};

/// An error's `where` is the joint's word and the path in it, "mortise_tenon.peg.diameter".
Result<void> check_joint(const JointType& type) {
  Result<void> found;
  Limits limits(std::string(row_of(kind_of(type)).word) + ".", found);
  const Described joint = described_as_is(type);
  joint.describe(limits, joint.value);
  return found;
}

Result<void> check_pitch(const char* name, const Slope& pitch) {
  const double deg = pitch.deg();
  if (!(deg > limits::kFlattestRoof)) return fail(ErrorCode::kTooSmall, name);
  if (!(deg < limits::kSteepestRoof)) return fail(ErrorCode::kSteep, name);
  return {};
}

Result<void> check_bays(const FramePlan& plan) {
  if (plan.bays.empty()) return fail(ErrorCode::kMissing, "bays");
  if (plan.bays.size() > 1000) return fail(ErrorCode::kTooLarge, "bays");
  Length length{};
  for (const Bay& bay : plan.bays) {
    if (auto ok = check_fields({{"bay", bay.width, least_bay(plan), kMost}}); !ok) return ok;
    length = length + bay.width;
  }
  // So many timbers that the app would stand still: 10 000 rafters.
  if (length.in() / plan.rafter_spacing.in() > 5000) return fail(ErrorCode::kTooSmall, "rafter_spacing");
  return {};
}

/// What a hip roof asks for besides, or more narrowly.
Result<void> check_hips(const FramePlan& p) {
  if (auto ok = check_pitch("hips.pitch", p.hips.pitch); !ok) return ok;
  if (auto ok = check_section("hips.hip_rafter", p.hips.hip); !ok) return ok;
  if (auto ok = check_section("hips.dragon_tie", p.hips.dragon_tie); !ok) return ok;
  return check_fields({{"hips.dragon_leg", p.hips.dragon_leg, Length::inches(12), Length::feet(20)},
                       {"eave_overhang", p.eave_overhang, {}, limits::kMostOverhang},
                       {"rafter_spacing", p.rafter_spacing, limits::kLeastSpacing, limits::kMostSpacing},
                       {"plate_left", p.plate_left, {}, limits::kHighestPlate}});
}

}  // namespace

Result<void> check_plan(const FramePlan& p) {
  if (auto ok = check_sections(p.sections); !ok) return ok;
  for (const JointType& joint : p.joints)
    if (auto ok = check_joint(joint); !ok) return ok;
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
      if (auto ok = check_joint(*joint); !ok) return ok;
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
  if (p.form == RoofForm::kHip)
    if (auto ok = check_hips(p); !ok) return ok;
  return check_bays(p);
}

}  // namespace bentbook
