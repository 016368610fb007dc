#include "shop/step_numbers.h"

#include <algorithm>
#include <utility>

#include "frame/keys.h"
#include "frame/sheet/cut_polygon.h"
#include "geometry/pocket.h"
#include "measure/print.h"
#include "numeric/libm.h"
#include "shop/limits.h"
#include "shop/log/record.h"
#include "shop/step_sawn.h"
#include "shop/step_walls.h"

namespace bentbook {
namespace {

using Name = StepNumberName;
using Numbers = std::vector<StepNumber>;

constexpr double kNoTurn = 1e-9, kSameBore = 1e-6, kLeastShim = 1.0 / 128;

void face_up(Face face, Numbers& out) { out.push_back({Name::kFaceUp, static_cast<double>(face)}); }

void tool(const Frame& frame, int timber, int joint, ToolSetting setting, Name name, Numbers& out) {
  if (joint < 0) return;
  for (const ToolNumber& number : frame.joints[static_cast<std::size_t>(joint)].tools)
    if (number.timber == timber && number.setting == setting) {
      out.push_back({name, number.value, number.from});
      return;
    }
}

// ── Hollowed: slots, mortises, housings ───────────────────────────────────────────────────────────────────────────

/// The floor of a fork: its line on the side, and from where.
void fork_floor(const Timber& timber, const Feature& f, Numbers& out) {
  const auto planes = planes_of(timber.pockets[static_cast<std::size_t>(f.first_pocket)]);
  for (int i = 0; i < planes.count; ++i) {
    const CutPlane plane{planes[i].normal, planes[i].offset};
    if (libm::fabs(plane.normal.x) < kNoTurn || libm::fabs(plane.normal.y) > kNoTurn || !is_wall(timber, planes, i))
      continue;
    Numbers floor;
    saw_numbers(blade_angles(plane, Face::kNear), stop_at(timber, plane, Face::kNear, true), floor);
    out.insert(out.end(), floor.begin(), floor.end());
    return;
  }
}

/// A face that the work can be reached from: a plate's slot that is open below alone is cut with face 3 up.
Face reached_from(const Timber& timber, const Feature& f) {
  if (f.kind == FeatureKind::kFork) return Face::kNear;
  if (f.kind != FeatureKind::kSlot && f.kind != FeatureKind::kRelief) return f.face;
  const bool below = std::any_of(timber.features.begin(), timber.features.end(), [&](const Feature& slot) {
    return slot.kind == FeatureKind::kSlot && slot.joint == f.joint && slot.end == f.end &&
           slot.open == SlotOpen::kBottom;
  });
  return below && f.face == Face::kTop ? Face::kBottom : f.face;
}

StepSetting hollow_setting(const Frame& frame, int index, const Feature& f) {
  const Timber& timber = frame.timbers[static_cast<std::size_t>(index)];
  const bool in_end = f.at_end && f.kind != FeatureKind::kHousing && f.kind != FeatureKind::kMortise;
  StepSetting out;
  out.numbers = in_end ? end_recess_numbers(timber, f) : recess_numbers(timber, f);
  if (f.kind == FeatureKind::kMortise) {
    tool(frame, index, f.joint, ToolSetting::kFall, Name::kFall, out.numbers);
    tool(frame, index, f.joint, ToolSetting::kWedge, Name::kWedge, out.numbers);
  }
  if (f.kind == FeatureKind::kSlot) {
    tool(frame, index, f.joint, ToolSetting::kShimToCentre, Name::kShim, out.numbers);
    if (out.numbers.back().name == Name::kShim && libm::fabs(out.numbers.back().value) < kLeastShim)
      out.numbers.pop_back();
  }
  if (f.kind == FeatureKind::kFork) fork_floor(timber, f, out.numbers);
  face_up(reached_from(timber, f), out.numbers);
  return out;
}

double reference_offset(const Timber& timber, const Feature& hole, Face& from) {
  const Axis axis = hole.face == Face::kTop || hole.face == Face::kBottom ? Axis::kY : Axis::kZ;
  from = reference_face(timber.wood, axis);
  return under_face(timber.sides, from, (hole.across_lo + hole.across_hi) / 2);
}

void add_bore(const Timber& timber, const Feature& hole, Numbers& out) {
  Face from = Face::kTop;
  const double off = reference_offset(timber, hole, from);
  out.push_back({Name::kAt, (hole.from + hole.to) / 2});
  out.push_back({Name::kOff, off, from});
}

/// A value and, where it is measured from a face, "@" and its number.
std::optional<StepNumber> read_value(std::string_view text) {
  StepNumber out;
  if (const std::size_t at = text.find('@'); at != std::string_view::npos) {
    const auto face = read_decimal(text.substr(at + 1));
    if (!face || *face < 1 || *face > 4) return std::nullopt;
    out.from = static_cast<Face>(*face);
    text = text.substr(0, at);
  }
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
  out.value = minus ? -size : size;
  return out;
}

}  // namespace

StepSetting end_cut_setting(const Sheet& sheet, const Timber& timber, const BenchStep& step) {
  StepSetting out;
  out.saw_cuts = step.saw_cuts;
  if (step.saw_cuts.empty()) return out;
  const SawCut& cut = sheet.saw_cuts[static_cast<std::size_t>(step.saw_cuts.front())];
  const bool end_a = timber.cuts[static_cast<std::size_t>(step.index)].end == End::kA;
  Stop stop = stop_of(timber, cut);
  // At an edge where there is wood: a tenon's tip may be skew to the end.
  const auto on_wood = [&](const Stop& s) { return s.at >= -kNoTurn && s.at <= timber.length + kNoTurn; };
  if (const Stop other = stop_at(timber, cut.plane, cut.face, false); !on_wood(stop) && on_wood(other)) stop = other;
  out.setup = setup_of(cut, end_a ? nullptr : &stop);
  saw_numbers(cut.blade, stop, out.numbers);
  // End A's own cut is where the tape is hooked.
  if (end_a && libm::fabs(stop.at) < kNoTurn) out.numbers.pop_back();
  out.numbers.push_back({Name::kReach, cut.pass.needed.in()});
  face_up(cut.face, out.numbers);
  return out;
}

std::vector<StepSetting> feature_settings(const Frame& frame, const Sheet& sheet, const BenchStep& step) {
  const Timber& timber = frame.timbers[static_cast<std::size_t>(sheet.timber)];
  const Feature& f = timber.features[static_cast<std::size_t>(step.index)];
  if (!step.saw_cuts.empty()) return sawn_settings(sheet, timber, f, step);
  StepSetting hollow = hollow_setting(frame, sheet.timber, f);
  // A recess of which no side is wood lies past the timber's end.
  const auto says_side = [](const StepNumber& n) {
    return n.name != Name::kDepth && n.name != Name::kStart && n.name != Name::kFaceUp && n.name != Name::kFall &&
           n.name != Name::kWedge;
  };
  if (std::none_of(hollow.numbers.begin(), hollow.numbers.end(), says_side)) return {};
  return {std::move(hollow)};
}

BoreSetting bore_setting(const Frame& frame, int timber, const Feature& hole) {
  BoreSetting out{hole.use, hole.face, hole.diameter, hole.depth, 0};
  if (hole.use != HoleUse::kPeg || hole.joint < 0) return out;
  const Joint& joint = frame.joints[static_cast<std::size_t>(hole.joint)];
  if (joint.member == timber) out.drawbore = joint.drawbore;
  return out;
}

bool same_setting(const BoreSetting& a, const BoreSetting& b) {
  const auto same = [](double x, double y) { return libm::fabs(x - y) < kSameBore; };
  return a.use == b.use && a.face == b.face && same(a.diameter, b.diameter) && same(a.depth, b.depth) &&
         same(a.drawbore, b.drawbore);
}

Numbers bore_numbers(const Timber& timber, const BoreSetting& setting, std::span<const Feature* const> holes) {
  const bool through = goes_through(timber, setting.face, setting.depth);
  Numbers out{{Name::kDiameter, setting.diameter}, {Name::kDepth, setting.depth, setting.face, through}};
  if (setting.drawbore > 0) out.push_back({Name::kDrawbore, setting.drawbore});
  for (const Feature* hole : holes) add_bore(timber, *hole, out);
  face_up(setting.face, out);
  return out;
}

Numbers plate_numbers(const Frame& frame, int index, int joint, StepWork work) {
  Numbers out;
  if (work < StepWork::kJig || work == StepWork::kReturnPlate) return out;
  const Timber& timber = frame.timbers[static_cast<std::size_t>(index)];
  std::vector<const Feature*> pins;
  for (const Feature& f : timber.features)
    if (f.joint == joint && f.kind == FeatureKind::kHole) pins.push_back(&f);
  if (pins.empty()) return out;
  if (work == StepWork::kDrillThrough) {
    out = bore_numbers(timber, bore_setting(frame, index, *pins.front()), pins);
    return out;
  }
  if (work == StepWork::kDrillPlate) {
    const double pin = pins.front()->diameter;
    out.push_back({Name::kDiameter, pin + (is_metric_bit(pin) ? limits::kOverInSteelMetric : limits::kOverInSteel)});
    return out;
  }
  if (work == StepWork::kJig)
    tool(frame, index, joint, ToolSetting::kJigOffset, Name::kJigOffset, out);
  else
    out.push_back({Name::kDiameter, pins.front()->diameter});
  for (const Feature* pin : pins) add_bore(timber, *pin, out);
  face_up(pins.front()->face, out);
  return out;
}

std::string numbers_text(std::span<const StepNumber> numbers) {
  // An event's value is short: what tells most comes first.
  const auto rank = [](Name name) { return name == Name::kFaceUp ? 0 : name == Name::kOff ? 2 : 1; };
  std::string out;
  for (int now = 0; now < 3; ++now)
    for (const StepNumber& n : numbers) {
      if (n.follows || rank(n.name) != now) continue;
      std::string one(keys::word(kStepNumberWords, n.name));
      one += '=';
      one += print_fixed(n.value, 4);
      if (n.from) (one += '@') += std::to_string(static_cast<int>(*n.from));
      if (out.size() + 1 + one.size() > kLongestValue) return out;
      if (!out.empty()) out += ' ';
      out += one;
    }
  return out;
}

std::vector<StepNumber> read_numbers(std::string_view text) {
  std::vector<StepNumber> out;
  for (const std::string_view word : words_of(text)) {
    const std::size_t equals = word.find('=');
    if (equals == std::string_view::npos) continue;
    const int name = keys::index_of(kStepNumberWords, word.substr(0, equals));
    auto value = read_value(word.substr(equals + 1));
    if (name < 0 || !value) continue;
    value->name = static_cast<StepNumberName>(name);
    out.push_back(*value);
  }
  return out;
}

}  // namespace bentbook
