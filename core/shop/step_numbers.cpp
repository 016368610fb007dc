#include "shop/step_numbers.h"

#include <algorithm>

#include "frame/keys.h"
#include "measure/print.h"
#include "numeric/libm.h"
#include "shop/limits.h"
#include "shop/log/record.h"

namespace bentbook {
namespace {

using Name = StepNumberName;

std::int64_t nearest(double value) { return static_cast<std::int64_t>(libm::floor(value + 0.5)); }
double degrees(double radians) { return Angle::from_radians(radians).deg(); }

void saw_numbers(const SawCut& cut, std::vector<StepNumber>& out) {
  out.push_back({Name::kTable, degrees(cut.blade.swing)});
  out.push_back({Name::kTilt, degrees(cut.blade.tilt)});
}

/// The first pass that the table is set for.
const SawCut* across(const Sheet& sheet, const BenchStep& step) {
  for (const int i : step.saw_cuts)
    if (!sheet.saw_cuts[static_cast<std::size_t>(i)].along) return &sheet.saw_cuts[static_cast<std::size_t>(i)];
  return nullptr;
}

void tool(const Frame& frame, int timber, int joint, ToolSetting setting, Name name, std::vector<StepNumber>& out) {
  if (joint < 0) return;
  for (const ToolNumber& number : frame.joints[static_cast<std::size_t>(joint)].tools)
    if (number.timber == timber && number.setting == setting) {
      out.push_back({name, number.value});
      return;
    }
}

void span(const Feature& f, std::vector<StepNumber>& out) {
  out.push_back({Name::kFrom, f.from});
  out.push_back({Name::kTo, f.to});
}

void hole_numbers(const Frame& frame, int timber, const Feature& f, std::vector<StepNumber>& out) {
  out.push_back({Name::kDiameter, f.diameter});
  out.push_back({Name::kFrom, (f.from + f.to) / 2});
  out.push_back({Name::kDepth, f.depth});
  if (f.use != HoleUse::kPeg || f.joint < 0) return;
  const Joint& joint = frame.joints[static_cast<std::size_t>(f.joint)];
  if (joint.member == timber && joint.drawbore > 0) out.push_back({Name::kDrawbore, joint.drawbore});
}

std::optional<double> read_fixed(std::string_view text) {
  const bool minus = text.starts_with('-');
  if (minus) text.remove_prefix(1);
  const std::size_t point = text.find('.');
  if (point == std::string_view::npos || text.size() - point != 5) return std::nullopt;
  const auto whole = read_decimal(text.substr(0, point));
  if (!whole || *whole > 1'000'000'000) return std::nullopt;
  std::uint64_t count = *whole;
  for (const char c : text.substr(point + 1)) {
    if (c < '0' || c > '9') return std::nullopt;
    count = 10 * count + static_cast<std::uint64_t>(c - '0');
  }
  const double size = static_cast<double>(count) / 10'000;
  return minus ? -size : size;
}

}  // namespace

std::vector<StepNumber> end_cut_numbers(const Sheet& sheet, const BenchStep& step, End end) {
  std::vector<StepNumber> out;
  const SawCut* cut = across(sheet, step);
  if (cut == nullptr) return out;
  saw_numbers(*cut, out);
  if (end == End::kB) out.push_back({Name::kStop, cut->from});
  out.push_back({Name::kReach, cut->pass.needed.in()});
  return out;
}

std::vector<SawSetup> setups_of(const Sheet& sheet, const BenchStep& step, bool end_a) {
  std::vector<SawSetup> out;
  for (const int i : step.saw_cuts) {
    const SawCut& cut = sheet.saw_cuts[static_cast<std::size_t>(i)];
    if (cut.along) continue;
    const SawSetup setup{nearest(degrees(cut.blade.swing) * 100), nearest(degrees(cut.blade.tilt) * 100),
                         end_a ? 0 : nearest(cut.from * 64)};
    if (std::find(out.begin(), out.end(), setup) == out.end()) out.push_back(setup);
  }
  return out;
}

std::vector<StepNumber> feature_numbers(const Frame& frame, const Sheet& sheet, const BenchStep& step) {
  const Feature& f =
      frame.timbers[static_cast<std::size_t>(sheet.timber)].features[static_cast<std::size_t>(step.index)];
  std::vector<StepNumber> out;
  if (f.kind == FeatureKind::kHole) {
    hole_numbers(frame, sheet.timber, f, out);
    return out;
  }
  const SawCut* cut = across(sheet, step);
  if (cut != nullptr) {
    saw_numbers(*cut, out);
    out.push_back({Name::kStop, cut->from});
    // A bird's mouth is laid out on the side: its depth is what it takes of the timber's own.
    const bool mouth = f.kind == FeatureKind::kBirdsMouth;
    out.push_back({Name::kDepth, mouth                           ? f.across_hi - f.across_lo
                                 : f.kind == FeatureKind::kTenon ? cut->depth
                                                                 : f.depth});
  } else {
    out.push_back({Name::kDepth, f.depth});
    if (!f.at_end) span(f, out);
  }
  switch (f.kind) {
    case FeatureKind::kSlot:
    case FeatureKind::kMortise:
    case FeatureKind::kTenon:
    case FeatureKind::kTongue:
    case FeatureKind::kFork:
      out.push_back({Name::kAcross, f.across_hi - f.across_lo});
      tool(frame, sheet.timber, f.joint, ToolSetting::kFence, Name::kFence, out);
      break;
    default:
      break;
  }
  if (f.kind == FeatureKind::kTenon || f.kind == FeatureKind::kMortise) {
    tool(frame, sheet.timber, f.joint, ToolSetting::kFall, Name::kFall, out);
    tool(frame, sheet.timber, f.joint, ToolSetting::kWedge, Name::kWedge, out);
  }
  if (f.kind == FeatureKind::kSlot) tool(frame, sheet.timber, f.joint, ToolSetting::kShimToCentre, Name::kShim, out);
  return out;
}

std::vector<StepNumber> plate_numbers(const Frame& frame, int timber, int joint, StepWork work) {
  std::vector<StepNumber> out;
  if (work < StepWork::kJig || work == StepWork::kReturnPlate) return out;
  const Feature* pin = nullptr;
  for (const Feature& f : frame.timbers[static_cast<std::size_t>(timber)].features)
    if (f.joint == joint && f.kind == FeatureKind::kHole && pin == nullptr) pin = &f;
  if (pin == nullptr) return out;
  if (work == StepWork::kJig) {
    tool(frame, timber, joint, ToolSetting::kJigOffset, Name::kJigOffset, out);
    out.push_back({Name::kFrom, (pin->from + pin->to) / 2});
  } else if (work == StepWork::kDrillPlate) {
    out.push_back({Name::kDiameter, pin->diameter + limits::kOverInSteel});
  } else {
    out.push_back({Name::kDiameter, pin->diameter});
  }
  if (work == StepWork::kDrillThrough) out.push_back({Name::kDepth, pin->depth});
  return out;
}

std::string numbers_text(std::span<const StepNumber> numbers) {
  std::string out;
  for (const StepNumber& n : numbers) {
    if (!out.empty()) out += ' ';
    out += keys::word(kStepNumberWords, n.name);
    out += '=';
    out += print_fixed(n.value, 4);
  }
  return out;
}

std::vector<StepNumber> read_numbers(std::string_view text) {
  std::vector<StepNumber> out;
  for (const std::string_view word : words_of(text)) {
    const std::size_t equals = word.find('=');
    if (equals == std::string_view::npos) continue;
    const int name = keys::index_of(kStepNumberWords, word.substr(0, equals));
    const auto value = read_fixed(word.substr(equals + 1));
    if (name >= 0 && value) out.push_back({static_cast<StepNumberName>(name), *value});
  }
  return out;
}

}  // namespace bentbook
