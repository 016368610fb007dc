#include "screens/frame/fields.h"

#include <algorithm>
#include <charconv>
#include <utility>

#include "book/book_edit.h"
#include "frame/facts.h"
#include "frame/joints/joint_table.h"
#include "frame/keys.h"
#include "measure/fields.h"
#include "words/frame_words.h"

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

/// By TimberKind.
constexpr Section PlanSections::*kSections[] = {
    &PlanSections::sill,   &PlanSections::post,       &PlanSections::plate,     &PlanSections::tie,
    &PlanSections::girt,   &PlanSections::joist,      &PlanSections::king_post, &PlanSections::queen_post,
    &PlanSections::collar, &PlanSections::ridge_beam, &PlanSections::principal, &PlanSections::common,
    &PlanSections::purlin, &PlanSections::brace};

int number(std::string_view digits) {
  int value = -1;
  std::from_chars(digits.data(), digits.data() + digits.size(), value);
  return value;
}

/// Gathers the measures that are asked for: those that have a name in the string table.
class Measures final : public Fields {
 public:
  Measures(std::string path, std::vector<JointMeasure>& out) : path_(std::move(path)), out_(out) {}
  [[nodiscard]] bool reads() const override { return false; }
  void fail(ErrorCode, const char*, std::int64_t) override {}
  void text(const char*, std::string&, std::size_t) override {}
  void flag(const char* key, bool& value) override { add({path_ + key, nullptr, nullptr, &value}); }
  void integer(const char* key, int& value, int, int high) override {
    add({path_ + key, nullptr, &value, nullptr, high});
  }
  void whole(const char*, std::int64_t&, std::int64_t, std::int64_t) override {}
  void number(const char*, double&, double, double) override {}
  void length(const char* key, Length& value, const LengthEntry&) override { add({path_ + key, &value}); }
  void angle(const char*, Angle&, const AngleEntry&) override {}
  void slope(const char*, Slope&) override {}
  void weight(const char*, bentbook::Weight&) override {}
  void word(const char*, int&, std::span<const std::string_view>) override {}
  void inner(const char* key, Described value) override {
    Measures inside(path_ + key + ".", out_);
    value.describe(inside, value.value);
  }
  void items(const char*, DescribedList&, unsigned) override {}

 private:
  void add(JointMeasure measure) {
    if (!joint_measure_name(measure.name, Language{}).empty()) out_.push_back(std::move(measure));
  }
  std::string path_;
  std::vector<JointMeasure>& out_;
};

std::optional<JointMeasure> measure_named(JointType& type, std::string_view name) {
  for (JointMeasure& measure : measures_of(type))
    if (measure.name == name) return std::move(measure);
  return std::nullopt;
}

// Finders work on a book to be changed and on one that is only read alike.

/// The item of a list whose mark it is; nullptr: none.
template <class List>
auto* item_of(List& list, std::string_view mark) {
  const auto it = std::find_if(list.begin(), list.end(), [&](const auto& item) { return item.mark == mark; });
  return it == list.end() ? nullptr : &*it;
}

template <class List>
auto* item_at(List& list, std::string_view index) {
  const int i = number(index);
  return i < 0 || i >= static_cast<int>(list.size()) ? nullptr : &list[static_cast<std::size_t>(i)];
}

/// The joint that "joint:<meeting>:…" or "end:<mark>:<a|b>:…" names, and what follows.
template <class AnyBook>
auto find_joint(AnyBook& book, std::string_view field) {
  const auto [what, rest] = split_key(field);
  const auto [first, second] = split_key(rest);
  auto* joint = book.frame.joints.data();
  if (what == "joint") {
    const int index = keys::index_of(keys::kMeeting, first);
    joint = index < 0 ? nullptr : joint + index;
    return std::pair{joint, second};
  }
  const auto [end, name] = split_key(second);
  auto* apart = what == "end" ? item_of(book.frame.overrides, first) : nullptr;
  joint = nullptr;
  if (apart != nullptr && end == "a" && apart->has_joint_a) joint = &apart->joint_a;
  if (apart != nullptr && end == "b" && apart->has_joint_b) joint = &apart->joint_b;
  return std::pair{joint, name};
}

template <class AnySection>
auto* find_section_part(AnySection& section, std::string_view part) {
  return part == "breadth" ? &section.breadth : part == "depth" ? &section.depth : nullptr;
}

template <class AnyTimber>
auto* find_feature_part(AnyTimber& timber, std::string_view path) {
  const auto [index, part] = split_key(path);
  auto* f = item_at(timber.features, index);
  auto* at = f == nullptr ? nullptr : &f->station;
  if (f == nullptr || part == "station") return at;
  if (part == "offset") return &f->offset;
  if (part == "along") return &f->along;
  if (part == "across") return &f->across;
  if (part == "feature_depth") return &f->depth;
  return part == "diameter" ? &f->diameter : nullptr;
}

template <class AnyBook>
auto* find_defect_part(AnyBook& book, std::string_view path) {
  const auto [mark, rest] = split_key(path);
  const auto [index, part] = split_key(rest);
  auto* apart = item_of(book.frame.overrides, mark);
  auto* defect = apart == nullptr ? nullptr : item_at(apart->defects, index);
  auto* from = defect == nullptr ? nullptr : &defect->from;
  return from == nullptr || part == "from" ? from : part == "to" ? &defect->to : nullptr;
}

template <class AnyBook>
auto* find_hand_length(AnyBook& book, std::string_view path) {
  const auto [mark, what] = split_key(path);
  auto* timber = item_of(book.frame.added, mark);
  auto* length = timber == nullptr ? nullptr : &timber->length;
  if (timber == nullptr || what == "length") return length;
  if (what == "x") return &timber->origin[0];
  if (what == "y") return &timber->origin[1];
  if (what == "z") return &timber->origin[2];
  const auto [first, rest] = split_key(what);
  return first == "feature" ? find_feature_part(*timber, rest) : find_section_part(timber->wood.nominal, what);
}

/// All but the measures of joints.
template <class AnyBook>
auto* find_plain_length(AnyBook& book, std::string_view field) {
  auto& plan = book.frame;
  auto* at = &plan.span;
  for (const PlanLength& known : kPlanLengths)
    if (known.key == field) return &(plan.*known.at);
  const auto [what, rest] = split_key(field);
  if (what == "bay") {
    for (auto& bay : plan.bays)
      if (bay.label == number(rest)) return &bay.width;
  } else if (what == "girt") {
    return item_at(plan.girts, rest);
  } else if (what == "section") {
    const auto [kind, part] = split_key(rest);
    const int i = keys::index_of(keys::kTimberKind, kind);
    if (i >= 0 && i < static_cast<int>(std::size(kSections)))
      return find_section_part(plan.sections.*kSections[i], part);
  } else if (what == "defect") {
    return find_defect_part(book, rest);
  } else if (what == "hand") {
    return find_hand_length(book, rest);
  }
  at = nullptr;
  return at;
}

template <class AnyBook>
auto* find_any_angle(AnyBook& book, std::string_view field) {
  const auto [what, rest] = split_key(field);
  const auto [mark, part] = split_key(rest);
  auto* timber = what == "hand" ? item_of(book.frame.added, mark) : nullptr;
  auto* at = timber == nullptr ? nullptr : &timber->a.angle;
  if (timber == nullptr || part == "a_angle") return at;
  if (part == "a_tilt") return &timber->a.tilt;
  if (part == "b_angle") return &timber->b.angle;
  if (part == "b_tilt") return &timber->b.tilt;
  if (part == "turn") return &timber->turn;
  if (part == "rise") return &timber->rise;
  return part == "roll" ? &timber->roll : nullptr;
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
  Measures measures({}, out);
  describe(measures, type);
  return out;
}

Length* find_length(Book& book, std::string_view field) {
  const auto [joint, name] = find_joint(book, field);
  if (joint == nullptr) return find_plain_length(book, field);
  const auto measure = measure_named(*joint, name);
  return measure ? measure->length : nullptr;
}

std::optional<Length> length_at(const Book& book, std::string_view field) {
  if (const auto [joint, name] = find_joint(book, field); joint != nullptr) {
    JointType type = *joint;
    const auto measure = measure_named(type, name);
    return measure && measure->length != nullptr ? std::optional(*measure->length) : std::nullopt;
  }
  const Length* at = find_plain_length(book, field);
  return at == nullptr ? std::nullopt : std::optional(*at);
}

Angle* find_angle(Book& book, std::string_view field) { return find_any_angle(book, field); }
std::optional<Angle> angle_at(const Book& book, std::string_view field) {
  const Angle* at = find_any_angle(book, field);
  return at == nullptr ? std::nullopt : std::optional(*at);
}

std::optional<std::int64_t> count_at(const Book& book, std::string_view field) {
  if (field == "moisture") return static_cast<std::int64_t>(book.frame.moisture + 0.5);
  if (field == "load_psf") return static_cast<std::int64_t>(book.frame.load_psf + 0.5);
  const auto [joint, name] = find_joint(book, field);
  if (joint == nullptr) return std::nullopt;
  JointType type = *joint;
  const auto measure = measure_named(type, name);
  return measure && measure->count != nullptr ? std::optional<std::int64_t>(*measure->count) : std::nullopt;
}

void set_count(Book& book, std::string_view field, std::int64_t value) {
  if (field == "moisture") book.frame.moisture = static_cast<double>(value);
  if (field == "load_psf") book.frame.load_psf = static_cast<double>(value);
  const auto [joint, name] = find_joint(book, field);
  const auto measure = joint == nullptr ? std::nullopt : measure_named(*joint, name);
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
  if (HandTimber* timber = item_of(book.frame.added, split_key(rest).first))
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
