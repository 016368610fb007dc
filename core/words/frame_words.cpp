#include "words/frame_words.h"

#include <algorithm>
#include <array>

#include "frame/joints/joint_table.h"
#include "frame/keys.h"
#include "stock/plan.h"
#include "words/error_words.h"

namespace bentbook {
namespace {

constexpr std::array<std::string_view, 15> kFindings = {
    "not_engineered", "thrust",        "high_collar",  "no_room",         "clash",
    "unknown_mark",   "mark_taken",    "joint_unfit",  "bad_hand_timber", "ridge_unsupported",
    "wood_thin",      "corner_thrust", "hips_dropped", "peak_uncarried",  "middle_uncarried"};
constexpr std::array<std::string_view, 16> kWarnings = {
    "end_distance", "edge_distance", "share_left",    "relief_small", "pins_meet", "pin_spread",
    "tenon_short",  "notch_share",   "seat_short",    "open_top",     "defect",    "tenon_thin",
    "made_plain",   "contact_cut",   "features_meet", "housing_deep"};

static_assert(kFindings.size() == static_cast<std::size_t>(FindingId::kMiddleUncarried) + 1);
static_assert(kWarnings.size() == static_cast<std::size_t>(WarningId::kHousingDeep) + 1);

std::string percent(double share) { return print_fixed(share * 100, 0) + " %"; }

bool in_diameters(WarningId id) { return id == WarningId::kEndDistance || id == WarningId::kEdgeDistance; }
bool in_shares(WarningId id) { return id == WarningId::kShareLeft || id == WarningId::kNotchShare; }

constexpr double kCmPerInch = 2.54;

std::string say_area(double square_inches, const Voice& voice) {
  return is_metric(voice.lengths.form) ? print_fixed(square_inches * kCmPerInch * kCmPerInch, 1) + " cm²"
                                       : print_fixed(square_inches, 2) + " in²";
}
std::string say_volume(double cubic_inches, int decimals, const Voice& voice) {
  return is_metric(voice.lengths.form)
             ? print_fixed(cubic_inches * kCmPerInch * kCmPerInch * kCmPerInch, decimals) + " cm³"
             : print_fixed(cubic_inches, decimals) + " in³";
}

bool is_at_peak(const Finding& finding) {
  return finding.id == FindingId::kPeakUncarried || finding.id == FindingId::kMiddleUncarried;
}

/// The outward push of a pair, the wood that two timbers share, a bay's width; no other finding says a value.
std::string found_value(const Finding& finding, const Voice& voice) {
  if (is_at_peak(finding)) return say_inches(finding.value, voice);
  return finding.id == FindingId::kThrust ? say_weight(finding.value, voice) : say_volume(finding.value, 0, voice);
}

std::string warned(WarningId id, double value, const Voice& voice) {
  if (in_diameters(id)) return print_fixed(value, 1);
  if (in_shares(id)) return percent(value);
  if (id == WarningId::kFeaturesMeet) return say_volume(value, 2, voice);
  if (id == WarningId::kContactCut) return say_area(value, voice);
  return say_inches(value, voice);
}

}  // namespace

std::string_view kind_name(TimberKind kind, Language language) {
  return key_text("kind_", keys::word(keys::kTimberKind, kind), language);
}
std::string_view feature_name(FeatureKind kind, Language language) {
  return key_text("feature_", keys::word(keys::kFeatureKind, kind), language);
}
std::string_view end_cut_name(EndCutName name, Language language) {
  return key_text("end_cut_", keys::word(keys::kEndCut, name), language);
}
std::string_view joint_name(JointKind kind, Language language) {
  return key_text("joint_", row_of(kind).word, language);
}
std::string_view joint_measure_name(std::string_view path, Language language) {
  std::string id = "joint_measure_" + std::string(path);
  std::replace(id.begin(), id.end(), '.', '_');
  const auto msg = find_msg(id);
  return msg ? text(*msg, language) : std::string_view{};
}
std::string_view defect_name(DefectKind kind, Language language) {
  return key_text("defect_", keys::word(keys::kDefect, kind), language);
}

std::string contact_text(const Frame& frame, const Joint& joint, int timber, Language language) {
  const bool carried = joint.carried == timber;
  const std::string_view other = frame.timbers[static_cast<std::size_t>(carried ? joint.carrier : joint.carried)].mark;
  if (!carried) {
    const Msg takes = joint.bearing == Bearing::kBearsOn  ? Msg::kBearingCarries
                      : joint.bearing == Bearing::kBraces ? Msg::kBearingTakesBrace
                                                          : Msg::kBearingTakes;
    return say(takes, language, other);
  }
  if (joint.bearing == Bearing::kHangsFrom && joint.kind == JointKind::kMortiseTenon)
    return say(Msg::kBearingTenoned, language, other);
  const auto msg = find_msg("bearing_" + std::string(keys::word(keys::kBearing, joint.bearing)));
  return msg ? say(*msg, language, other) : std::string(other);
}

std::string finding_text(const Finding& finding, const Voice& voice) {
  const bool bare = is_at_peak(finding) && finding.value == 0;
  const auto msg = bare ? Msg::kFindingPeakBare : find_msg("finding_" + std::string(finding_key(finding.id)));
  if (!msg) return std::string(finding_key(finding.id));
  return say(*msg, voice.language,
             {{"mark", finding.mark}, {"other", finding.other}, {"value", found_value(finding, voice)}});
}

std::string warning_text(const TimberWarning& warning, const Voice& voice) {
  const auto msg = find_msg("warning_" + std::string(warning_key(warning.id)));
  if (!msg) return std::string(warning_key(warning.id));
  const bool defect = warning.id == WarningId::kDefect;
  const std::string value = defect ? std::string{} : warned(warning.id, warning.value, voice);
  const std::string limit = warned(warning.id, warning.value2, voice);
  const std::string at = say_inches(warning.station, voice);
  const std::string_view kind =
      defect ? defect_name(static_cast<DefectKind>(warning.value), voice.language) : std::string_view{};
  return say(*msg, voice.language, {{"value", value}, {"limit", limit}, {"at", at}, {"defect", kind}});
}

std::string_view finding_key(FindingId id) { return keys::word(kFindings, id); }
std::string_view warning_key(WarningId id) { return keys::word(kWarnings, id); }

std::string hardware_text(const HardwareRow& row, const Voice& voice) {
  if (row.what == Hardware::kKnifePlate) return std::string(text(Msg::kHardwareKnifePlate, voice.language));
  const Msg msg = row.what == Hardware::kPin   ? Msg::kHardwarePin
                  : row.what == Hardware::kPeg ? Msg::kHardwarePeg
                                               : Msg::kHardwareScrew;
  return say(msg, voice.language, {{"size", say_inches(row.diameter, voice)}}) + ", " +
         say(Msg::kHardwareThrough, voice.language, say_inches(row.through, voice));
}

std::string say_inches(double inches, const Voice& voice) { return say_length(Length::from_inches(inches), voice); }

LengthStyle tool_style(LengthStyle style) {
  constexpr int kFinest = 64, kMillimetres = 1, kPlaces = 3, kMetres = 4;
  style.denominator = std::max(style.denominator, kFinest);
  const int least = style.form == LengthForm::kMm ? kMillimetres : style.form == LengthForm::kMetre ? kMetres : kPlaces;
  style.decimals = std::max(style.decimals, least);
  return style;
}

std::string say_tool_inches(double inches, const Voice& voice) {
  Voice fine = voice;
  fine.lengths = tool_style(voice.lengths);
  return say_inches(inches, fine);
}

std::string section_text(const Section& section, const Voice& voice) {
  // Sections are said in inches, never in feet.
  Voice inches = voice;
  if (inches.lengths.form == LengthForm::kFeetInches) inches.lengths.form = LengthForm::kInchFraction;
  return say_length(section.breadth, inches) + (voice.marks == Marks::kScreen ? " × " : " x ") +
         say_length(section.depth, inches);
}

Length stock_step(const Voice& voice) {
  return is_metric(voice.lengths.form) ? metric_stock().step : limits::kStockStep;
}

std::string frame_error_text(const Error& error, const Voice& voice) {
  Error named = error;
  if (named.where == "plate_left" || named.where == "plate_right") named.where.insert(5, "_height");
  if (named.where.starts_with("hips.")) named.where[4] = '_';
  // A joint's measure: "mortise_tenon.peg.diameter".
  if (const std::size_t point = named.where.find('.'); point != std::string::npos) {
    const std::string_view word = std::string_view(error.where).substr(0, point);
    const std::string_view name = joint_measure_name(std::string_view(error.where).substr(point + 1), voice.language);
    if (const int kind = keys::index_of(joint_words(), word); kind >= 0 && !name.empty())
      named.where = std::string(joint_name(static_cast<JointKind>(kind), voice.language)) + ", " + std::string(name);
  }
  return error_text(named, voice);
}

}  // namespace bentbook
