#include "roof/rafter_fields.h"

#include <array>

namespace bentbook {
namespace {

constexpr std::string_view kPlanBy[] = {"span", "run", "span_and_run"};
constexpr std::string_view kHeld[] = {"heels_and_plates", "ridge_and_plates", "ridge_and_heels"};
constexpr std::string_view kPeaks[] = {"against_each_other", "ridge_board", "over_beam"};
constexpr std::string_view kTails[] = {"plumb", "square", "level_and_plumb"};
constexpr std::string_view kHeelBy[] = {"seat", "heel"};
constexpr std::string_view kFeet[] = {"tied", "loose"};

constexpr std::string_view kKeys[] = {"span",
                                      "run",
                                      "depth",
                                      "breadth",
                                      "plate",
                                      "ridge",
                                      "ridge_depth",
                                      "ridge_beam",
                                      "ridge_seat",
                                      "tail_plumb",
                                      "sheathing",
                                      "trim",
                                      "spacing",
                                      "seat_left",
                                      "seat_right",
                                      "heel_left",
                                      "heel_right",
                                      "overhang_left",
                                      "overhang_right",
                                      "plate_height_left",
                                      "plate_height_right",
                                      "measured_rise_left",
                                      "measured_rise_right",
                                      "measured_run_left",
                                      "measured_run_right"};

struct RoofField {
  std::string_view key;
  Length RafterInput::*at;
};
constexpr RoofField kRoofFields[] = {
    {"span", &RafterInput::span},
    {"run", &RafterInput::run},
    {"plate", &RafterInput::plate_breadth},
    {"ridge", &RafterInput::ridge_thickness},
    {"ridge_depth", &RafterInput::ridge_depth},
    {"ridge_beam", &RafterInput::beam_breadth},
    {"ridge_seat", &RafterInput::beam_seat},
    {"tail_plumb", &RafterInput::tail_plumb},
    {"sheathing", &RafterInput::sheathing},
    {"trim", &RafterInput::trim},
    {"spacing", &RafterInput::spacing},
};

struct SideField {
  std::string_view stem;
  Length RafterSide::*at;
};
constexpr SideField kSideFields[] = {
    {"seat", &RafterSide::seat},
    {"heel", &RafterSide::heel},
    {"overhang", &RafterSide::overhang},
    {"plate_height", &RafterSide::plate_height},
    {"measured_rise", &RafterSide::measured_rise},
    {"measured_run", &RafterSide::measured_run},
};

struct SplitKey {
  std::string_view stem;
  bool right = false;
};
SplitKey split(std::string_view key) {
  if (key.ends_with("_left")) return {key.substr(0, key.size() - 5), false};
  if (key.ends_with("_right")) return {key.substr(0, key.size() - 6), true};
  return {};
}

const SideField* side_field(std::string_view stem) {
  for (const SideField& f : kSideFields)
    if (f.stem == stem) return &f;
  return nullptr;
}

/// The field's place in an input that may be const or not; nullptr for an unknown key.
template <class Input>
auto find(Input& input, std::string_view key) -> decltype(&input.span) {
  if (key == "depth") return &input.section.depth;
  if (key == "breadth") return &input.section.breadth;
  for (const RoofField& f : kRoofFields)
    if (f.key == key) return &(input.*f.at);
  const SplitKey k = split(key);
  const SideField* f = side_field(k.stem);
  if (!f) return nullptr;
  auto& side = k.right && !input.alike ? input.right : input.left;
  return &(side.*f->at);
}

void note_side(RafterSide& side, std::string_view stem) {
  if (stem == "seat") side.heel_by = HeelBy::kSeat;
  if (stem == "heel") side.heel_by = HeelBy::kHeel;
  if (stem == "measured_rise" || stem == "measured_run") side.measured = true;
}

}  // namespace

static void describe(Fields& fields, RafterSide& s) {
  fields.slope("pitch", s.pitch);
  fields.choice("heel_by", s.heel_by, kHeelBy);
  fields.length("seat", s.seat);
  fields.length("heel", s.heel);
  fields.length("plate_height", s.plate_height, {Length::feet(-100), {Length::kLimit}, BareUnit::kFoot});
  fields.length("overhang", s.overhang);
  fields.flag("measured", s.measured);
  fields.length("measured_rise", s.measured_rise, kOnBuilding);
  fields.length("measured_run", s.measured_run, kOnBuilding);
}

void describe(Fields& fields, RafterInput& r) {
  fields.choice("plan_by", r.plan_by, kPlanBy);
  fields.length("span", r.span, kOnBuilding);
  fields.length("run", r.run, kOnBuilding);
  fields.flag("alike", r.alike);
  fields.object("left", r.left);
  fields.object("right", r.right);
  fields.choice("held", r.held, kHeld);
  fields.object("section", r.section);
  fields.length("plate", r.plate_breadth);
  fields.choice("peak", r.peak, kPeaks);
  fields.length("ridge", r.ridge_thickness);
  fields.length("ridge_depth", r.ridge_depth);
  fields.length("ridge_beam", r.beam_breadth);
  fields.length("ridge_seat", r.beam_seat);
  fields.choice("tail", r.tail, kTails);
  fields.length("tail_plumb", r.tail_plumb);
  fields.length("sheathing", r.sheathing);
  fields.length("trim", r.trim);
  fields.choice("feet", r.feet, kFeet);
  fields.number("load_psf", r.load_psf, std::numeric_limits<double>::lowest(), std::numeric_limits<double>::max(),
                1000);
  fields.length("spacing", r.spacing);
}

std::string rafter_path(const RafterInput& input, std::string_view key) {
  if (key == "depth" || key == "breadth") return "section." + std::string(key);
  const SplitKey k = split(key);
  if (k.stem.empty()) return std::string(key);
  return (k.right && !input.alike ? "right." : "left.") + std::string(k.stem);
}

std::span<const std::string_view> rafter_length_keys() { return kKeys; }

bool is_rafter_length(std::string_view key) {
  const RafterInput any;
  return find(any, key) != nullptr;
}

Length rafter_length(const RafterInput& input, std::string_view key) {
  const Length* at = find(input, key);
  return at ? *at : Length{};
}

bool set_rafter_length(RafterInput& input, std::string_view key, Length value) {
  Length* at = find(input, key);
  if (!at) return false;
  *at = value;
  if (key == "span" && input.plan_by == PlanBy::kRun) input.plan_by = PlanBy::kSpan;
  if (key == "run" && input.plan_by == PlanBy::kSpan) input.plan_by = PlanBy::kRun;
  if (key == "ridge") input.peak = PeakKind::kRidgeBoard;
  if (key == "ridge_beam" || key == "ridge_seat") input.peak = PeakKind::kOverBeam;
  if (key == "tail_plumb") input.tail = TailCut::kLevelAndPlumb;
  const SplitKey k = split(key);
  if (!k.stem.empty()) note_side(k.right && !input.alike ? input.right : input.left, k.stem);
  return true;
}

Slope rafter_pitch(const RafterInput& input, Side side) {
  return (side == Side::kRight && !input.alike ? input.right : input.left).pitch;
}

void set_rafter_pitch(RafterInput& input, Side side, Slope pitch) {
  RafterSide& s = side == Side::kRight && !input.alike ? input.right : input.left;
  s.pitch = pitch;
  s.measured = false;
}

}  // namespace bentbook
