#include "screens/frame_fields.h"

#include <algorithm>
#include <charconv>
#include <utility>

#include "book/book_edit.h"
#include "frame/facts.h"
#include "frame/keys.h"

namespace bentbook::screens {
namespace {

struct PlanLength {
  std::string_view key;
  Length FramePlan::*at;
};
constexpr PlanLength kPlanLengths[] = {
    {"span", &FramePlan::span},
    {"plate_left", &FramePlan::plate_left},
    {"plate_right", &FramePlan::plate_right},
    {"eave_overhang", &FramePlan::eave_overhang},
    {"gable_overhang", &FramePlan::gable_overhang},
    {"rafter_spacing", &FramePlan::rafter_spacing},
    {"purlin_spacing", &FramePlan::purlin_spacing},
    {"queen_inset", &FramePlan::queen_inset},
    {"tie_drop", &FramePlan::tie_drop},
    {"collar_rise", &FramePlan::collar_rise},
    {"joist_spacing", &FramePlan::joist_spacing},
    {"brace_leg_post", &FramePlan::brace_leg_post},
    {"brace_leg_beam", &FramePlan::brace_leg_beam},
    {"stock_most", &FramePlan::stock_most},
    {"stand_off", &FramePlan::stand_off},
};

int number(std::string_view digits) {
  int value = -1;
  std::from_chars(digits.data(), digits.data() + digits.size(), value);
  return value;
}

void add_pins(std::vector<JointMeasure>& out, PinPattern& pins) {
  out.push_back({"pin_diameter", &pins.diameter});
  out.push_back({"pin_from_shoulder", &pins.from_shoulder});
  out.push_back({"pin_spacing", &pins.spacing});
}

void add_measures(std::vector<JointMeasure>& out, HousedButt& j) { out.push_back({"housing", &j.housing}); }

void add_measures(std::vector<JointMeasure>& out, KnifePlate& j) {
  out.push_back({"plate_thickness", &j.thickness});
  out.push_back({"plate_reach", &j.reach});
  out.push_back({"plate_width", &j.width});
  out.push_back({"slot_clearance", &j.slot_clearance});
  out.push_back({"depth_clearance", &j.depth_clearance});
  out.push_back({"relief_leg", &j.relief_leg});
  out.push_back({"root_radius", &j.root_radius});
  out.push_back({"weld_crown", &j.weld_crown});
  out.push_back({"base_thickness", &j.base_thickness});
  out.push_back({"base_width", &j.base_width});
  out.push_back({"base_height", &j.base_height});
  out.push_back({"let_in", nullptr, nullptr, &j.let_in});
  out.push_back({"pins", nullptr, &j.pins.count});
  add_pins(out, j.pins);
  out.push_back({"pin_plug", &j.pins.plug});
  out.push_back({"temporary_screws", nullptr, &j.temporary_screws});
}

void add_measures(std::vector<JointMeasure>& out, MortiseTenon& j) {
  out.push_back({"tenon_thickness", &j.thickness});
  out.push_back({"tenon_length", &j.length});
  out.push_back({"shoulder_top", &j.shoulder_top});
  out.push_back({"shoulder_bottom", &j.shoulder_bottom});
  out.push_back({"housing", &j.housing});
  out.push_back({"depth_clearance", &j.depth_clearance});
  out.push_back({"pegs", nullptr, &j.pegs});
  add_pins(out, j.peg);
  out.push_back({"drawbore", &j.drawbore});
}

void add_measures(std::vector<JointMeasure>& out, BirdsMouth& j) { out.push_back({"seat", &j.seat}); }

void add_measures(std::vector<JointMeasure>& out, RafterPeak& j) {
  out.push_back({"tongue_and_fork", nullptr, nullptr, &j.tongue_and_fork});
  out.push_back({"tongue", &j.thickness});
  out.push_back({"tongue_clearance", &j.clearance});
  add_pins(out, j.peg);
}

void add_measures(std::vector<JointMeasure>& out, HalfLap& j) {
  out.push_back({"pegs", nullptr, &j.pegs});
  add_pins(out, j.peg);
}

void add_measures(std::vector<JointMeasure>& out, Scarf& j) {
  out.push_back({"scarf_length", &j.length});
  out.push_back({"scarf_clearance", &j.clearance});
  out.push_back({"pegs", nullptr, &j.pegs});
  add_pins(out, j.peg);
}

std::optional<JointMeasure> find_measure(Book& book, std::string_view path) {
  const auto [meeting, name] = split_key(path);
  const int index = keys::index_of(keys::kMeeting, meeting);
  if (index < 0) return std::nullopt;
  for (const JointMeasure& measure : measures_of(book.frame.joints[static_cast<std::size_t>(index)]))
    if (measure.name == name) return measure;
  return std::nullopt;
}

Length* find_section_part(Section& section, std::string_view part) {
  return part == "breadth" ? &section.breadth : part == "depth" ? &section.depth : nullptr;
}

Length* find_feature_part(HandTimber& timber, std::string_view path) {
  const auto [index, part] = split_key(path);
  const int i = number(index);
  if (i < 0 || i >= static_cast<int>(timber.features.size())) return nullptr;
  HandFeature& f = timber.features[static_cast<std::size_t>(i)];
  const std::pair<std::string_view, Length*> parts[] = {{"station", &f.station},     {"offset", &f.offset},
                                                        {"along", &f.along},         {"across", &f.across},
                                                        {"feature_depth", &f.depth}, {"diameter", &f.diameter}};
  for (const auto& [name, at] : parts)
    if (name == part) return at;
  return nullptr;
}

HandTimber* find_hand(Book& book, std::string_view mark) {
  auto& added = book.frame.added;
  const auto it = std::find_if(added.begin(), added.end(), [&](const HandTimber& t) { return t.mark == mark; });
  return it == added.end() ? nullptr : &*it;
}

Length* find_hand_length(Book& book, std::string_view path) {
  const auto [mark, what] = split_key(path);
  HandTimber* timber = find_hand(book, mark);
  if (timber == nullptr) return nullptr;
  if (what == "length") return &timber->length;
  if (what == "x") return &timber->origin[0];
  if (what == "y") return &timber->origin[1];
  if (what == "z") return &timber->origin[2];
  const auto [first, rest] = split_key(what);
  return first == "feature" ? find_feature_part(*timber, rest) : find_section_part(timber->wood.nominal, what);
}

void set_override(Book& book, std::string_view path, Length value, const Frame* frame) {
  const auto [mark, what] = split_key(path);
  Override o = filled_override(book, mark, frame);
  if (what == "pier_level") {
    o.pier_level = value;
  } else if (what == "bow") {
    o.has_wood = true;
    o.wood.bow = value;
  } else if (what == "actual_breadth" || what == "actual_depth") {
    o.has_wood = true;
    (what == "actual_breadth" ? o.wood.actual.breadth : o.wood.actual.depth) = value;
  } else if (Length* part = find_section_part(o.section, what)) {
    o.has_section = true;
    *part = value;
  }
  book = with_override(std::move(book), o);
}

}  // namespace

std::pair<std::string_view, std::string_view> split_key(std::string_view field) {
  const std::size_t colon = field.find(':');
  if (colon == std::string_view::npos) return {field, {}};
  return {field.substr(0, colon), field.substr(colon + 1)};
}

std::vector<JointMeasure> measures_of(JointType& type) {
  std::vector<JointMeasure> out;
  std::visit([&](auto& joint) { add_measures(out, joint); }, type);
  return out;
}

JointType joint_of_kind(JointKind kind) {
  switch (kind) {
    case JointKind::kHousedButt:
      return HousedButt{};
    case JointKind::kKnifePlate:
      return KnifePlate{};
    case JointKind::kMortiseTenon:
      return MortiseTenon{};
    case JointKind::kBirdsMouth:
      return BirdsMouth{};
    case JointKind::kRafterPeak:
      return RafterPeak{};
    case JointKind::kHalfLap:
      return HalfLap{};
    case JointKind::kScarf:
      return Scarf{};
  }
  return HousedButt{};
}

Section& section_of(PlanSections& s, TimberKind kind) {
  Section* const all[] = {&s.sill,       &s.post,   &s.plate,      &s.tie,       &s.girt,   &s.joist,  &s.king_post,
                          &s.queen_post, &s.collar, &s.ridge_beam, &s.principal, &s.common, &s.purlin, &s.brace};
  const auto i = static_cast<std::size_t>(kind);
  return *all[i < std::size(all) ? i : 0];
}

Length* find_length(Book& book, std::string_view field) {
  FramePlan& plan = book.frame;
  for (const PlanLength& known : kPlanLengths)
    if (known.key == field) return &(plan.*known.at);
  const auto [what, rest] = split_key(field);
  if (what == "bay") {
    for (Bay& bay : plan.bays)
      if (bay.label == number(rest)) return &bay.width;
  } else if (what == "girt") {
    const int i = number(rest);
    if (i >= 0 && i < static_cast<int>(plan.girts.size())) return &plan.girts[static_cast<std::size_t>(i)];
  } else if (what == "section") {
    const auto [kind, part] = split_key(rest);
    const int i = keys::index_of(keys::kTimberKind, kind);
    if (i >= 0) return find_section_part(section_of(plan.sections, static_cast<TimberKind>(i)), part);
  } else if (what == "joint") {
    const auto measure = find_measure(book, rest);
    return measure ? measure->length : nullptr;
  } else if (what == "hand") {
    return find_hand_length(book, rest);
  }
  return nullptr;
}

Angle* find_angle(Book& book, std::string_view field) {
  const auto [what, rest] = split_key(field);
  const auto [mark, part] = split_key(rest);
  HandTimber* timber = what == "hand" ? find_hand(book, mark) : nullptr;
  if (timber == nullptr) return nullptr;
  const std::pair<std::string_view, Angle*> parts[] = {{"a_angle", &timber->a.angle}, {"a_tilt", &timber->a.tilt},
                                                       {"b_angle", &timber->b.angle}, {"b_tilt", &timber->b.tilt},
                                                       {"turn", &timber->turn},       {"rise", &timber->rise},
                                                       {"roll", &timber->roll}};
  for (const auto& [name, at] : parts)
    if (name == part) return at;
  return nullptr;
}

std::optional<std::int64_t> find_count(const Book& book, std::string_view field) {
  if (field == "moisture") return static_cast<std::int64_t>(book.frame.moisture + 0.5);
  if (field == "load_psf") return static_cast<std::int64_t>(book.frame.load_psf + 0.5);
  const auto [what, rest] = split_key(field);
  if (what != "joint") return std::nullopt;
  const auto [meeting, name] = split_key(rest);
  const int index = keys::index_of(keys::kMeeting, meeting);
  if (index < 0) return std::nullopt;
  JointType type = book.frame.joints[static_cast<std::size_t>(index)];
  for (const JointMeasure& measure : measures_of(type))
    if (measure.name == name && measure.count != nullptr) return *measure.count;
  return std::nullopt;
}

void set_count(Book& book, std::string_view field, std::int64_t value) {
  if (field == "moisture") book.frame.moisture = static_cast<double>(value);
  if (field == "load_psf") book.frame.load_psf = static_cast<double>(value);
  const auto [what, rest] = split_key(field);
  if (what != "joint") return;
  const auto measure = find_measure(book, rest);
  if (measure && measure->count != nullptr) *measure->count = static_cast<int>(value);
}

Override filled_override(const Book& book, std::string_view mark, const Frame* frame) {
  Override o = override_of(book, mark);
  const int i = frame == nullptr ? -1 : timber_by_mark(*frame, mark);
  if (i < 0) return o;
  const Timber& timber = frame->timbers[static_cast<std::size_t>(i)];
  if (!o.has_section) o.section = timber.wood.nominal;
  if (!o.has_wood) o.wood = timber.wood;
  if (!o.has_species) o.species = timber.species;
  return o;
}

void set_length(Book& book, std::string_view field, Length value, const Frame* frame) {
  const auto [what, rest] = split_key(field);
  if (what == "timber") return set_override(book, rest, value, frame);
  Length* at = find_length(book, field);
  if (at == nullptr) return;
  if (field == "plate_left" && book.frame.plate_right == *at) book.frame.plate_right = value;
  *at = value;
  if (what != "hand") return;
  if (HandTimber* timber = find_hand(book, split_key(rest).first))
    timber->wood.design = timber->wood.actual = timber->wood.nominal;
}

void set_slope(Book& book, std::string_view field, const Slope& value) {
  FramePlan& plan = book.frame;
  if (field == "pitch_left") {
    if (plan.pitch_right == plan.pitch_left) plan.pitch_right = value;
    plan.pitch_left = value;
  } else if (field == "pitch_right") {
    plan.pitch_right = value;
  }
}

const Slope& slope_of(const FramePlan& plan, std::string_view field) {
  return field == "pitch_right" ? plan.pitch_right : plan.pitch_left;
}

}  // namespace bentbook::screens
