#include "words/shop_words.h"

#include <array>

#include "frame/keys.h"
#include "shop/log/conflicts.h"
#include "text/invisible.h"
#include "words/error_words.h"
#include "words/frame_words.h"

namespace bentbook {
namespace {

constexpr std::array<std::string_view, 4> kCautions = {"kickback", "eyes_ears", "cords", "held"};

/// What lies along the timber: a face beside it says at which edge.
bool is_station(StepNumberName name) {
  return name == StepNumberName::kStop || name == StepNumberName::kBottom || name == StepNumberName::kShoulder ||
         name == StepNumberName::kFrom || name == StepNumberName::kTo;
}

/// A bit of inches among metric ones by both: 19.1 mm (3/4″). It is sold and stamped by the inch.
std::string bit_text(double diameter, const Voice& voice) {
  constexpr double kHair = 1e-6;
  std::string out = say_tool_inches(diameter, voice);
  const double sixteenths = diameter * 16;
  const bool by_the_inch = libm::fabs(sixteenths - libm::floor(sixteenths + 0.5)) < kHair;
  if (!is_metric(voice.lengths.form) || !by_the_inch || is_metric_bit(diameter)) return out;
  Voice inches = voice;
  inches.lengths = {LengthForm::kInchFraction, 16, 0};
  return out + " (" + say_inches(diameter, inches) + ")";
}

std::string two_digits(std::int64_t n) { return (n < 10 ? "0" : "") + std::to_string(n); }

std::string value_text(const Conflict& c, const std::string& value, const Voice& voice) {
  if (c.kind != ConflictKind::kValuesDiffer) return value;
  const auto reading = read_reading(value);
  return reading ? say_length(reading->measured, voice) : value;
}

std::string sides_text(const Conflict& c, Language language) {
  const std::string n = std::to_string(c.sides);
  std::string who;
  for (const std::string& name : c.who) {
    if (!who.empty()) who += ", ";
    who += name.empty() ? std::string(text(Msg::kShopNobody, language)) : made_visible(name);
  }
  if (who.empty()) return say(Msg::kConflictMore, language, {{"n", n}});
  return say(Msg::kConflictSides, language, {{"n", n}, {"who", who}});
}

struct Moment {
  std::int64_t year = 1970, month = 1, day = 1, minute = 0;  ///< minute of the day
};

Moment moment_of(std::int64_t wall_ms, int ahead_minutes) {
  // Days since 1970 to a date of the Gregorian calendar, counted from a March 1st so that leap days come last.
  const std::int64_t minutes = std::max<std::int64_t>(0, wall_ms / 60'000 + ahead_minutes);
  const std::int64_t z = minutes / 1440 + 719'468, era = z / 146'097, doe = z - era * 146'097;
  const std::int64_t yoe = (doe - doe / 1460 + doe / 36'524 - doe / 146'096) / 365;
  const std::int64_t doy = doe - (365 * yoe + yoe / 4 - yoe / 100), mp = (5 * doy + 2) / 153;
  const std::int64_t month = mp < 10 ? mp + 3 : mp - 9;
  return {era * 400 + yoe + (month < 3 ? 1 : 0), month, doy - (153 * mp + 2) / 5 + 1, minutes % 1440};
}

}  // namespace

std::string_view work_text(StepWork work, Language language) {
  return key_text("work_", keys::word(kStepWorkWords, work), language);
}

std::string step_text(const WorkStep& step, Language language) {
  std::string out = step.name.empty() ? std::string(work_text(step.work, language)) : step.name;
  if (step.end) out += ", " + say(Msg::kStepAtEnd, language, *step.end == End::kA ? "A" : "B");
  if (!step.end && !step.mate.empty()) out += ", " + step.mate;
  const bool bores = step.work == StepWork::kHole || step.work == StepWork::kPegHole;
  if (step.part != StepPart::kWhole) {
    out += ": ";
    out += key_text("step_part_", keys::word(kStepPartWords, step.part), language);
  }
  if (const auto up = step.face_up(); up && (bores || step.id != step.of))
    out += ", " + say(Msg::kStepFaceUp, language, std::to_string(static_cast<int>(*up)));
  return out;
}

std::string step_id_text(std::string_view id, Language language) {
  const std::size_t slash = id.find('/');
  const std::string_view word = id.substr(0, slash);
  if (word.empty() || keys::index_of(kStepWorkWords, word) < 0) return made_visible(id);
  std::string out(key_text("work_", word, language));
  if (slash == std::string_view::npos) return out;
  std::string_view of = id.substr(slash + 1);
  of = of.substr(0, of.find('#'));
  constexpr std::string_view kFromFace = "from_face";
  if (of.starts_with(kFromFace))
    return out + ", " + say(Msg::kStepFaceUp, language, made_visible(of.substr(kFromFace.size())));
  const bool end = !of.empty() && (of[0] == 'a' || of[0] == 'b') && (of.size() == 1 || of[1] == '.');
  return out + ", " + (end ? say(Msg::kStepAtEnd, language, of[0] == 'a' ? "A" : "B") : made_visible(of));
}

std::string_view workplace_text(Workplace place, Language language) {
  return key_text("workplace_", keys::word(kWorkplaceWords, place), language);
}
std::string_view tick_text(Tick tick, Language language) {
  return key_text("tick_", keys::word(kTickWords, tick), language);
}
std::string_view did_text(EventAction action, Language language) {
  return key_text("did_", keys::word(kActionWords, action), language);
}

std::string_view step_number_text(StepNumberName name, Language language) {
  const std::string_view word = keys::word(kStepNumberWords, name);
  return key_text("step_number_", name == StepNumberName::kFaceUp ? word : word.substr(0, word.rfind('_')), language);
}

std::string step_number_from_text(const StepNumber& number, Language language) {
  // What goes into an end is as deep as it is long.
  if (number.name == StepNumberName::kDepth && !number.from) return std::string(text(Msg::kStepInFromEnd, language));
  std::string out(step_number_text(number.name, language));
  if (!number.from) return out;
  const Msg msg = is_station(number.name)                ? Msg::kStepAtEdge
                  : number.name == StepNumberName::kFall ? Msg::kStepTowardFace
                                                         : Msg::kStepFromFace;
  return out + ", " + say(msg, language, std::to_string(static_cast<int>(*number.from)));
}

std::string step_value_text(StepNumberName name, double value, const Voice& voice) {
  if (name == StepNumberName::kFaceUp) return std::to_string(static_cast<int>(value));
  if (name == StepNumberName::kLeanFrom || name == StepNumberName::kLeanTo)
    return say(value < 0 ? Msg::kStepLeanA : Msg::kStepLeanB, voice.language,
               say_angle(Angle::from_degrees(libm::fabs(value)), voice));
  if (is_degrees(name)) return say_angle(Angle::from_degrees(value), voice);
  if (name == StepNumberName::kDiameter) return bit_text(value, voice);
  return is_tool_setting(name) ? say_tool_inches(value, voice) : say_inches(value, voice);
}

std::string step_value_text(const StepNumber& number, const Voice& voice) {
  if (number.through) return std::string(text(Msg::kStepThrough, voice.language));
  return step_value_text(number.name, number.value, voice);
}

std::string_view work_caution_text(WorkCaution caution, Language language) {
  for (std::size_t i = 0; i < kCautions.size(); ++i)
    if (caution == 1u << i) return key_text("work_caution_", kCautions[i], language);
  return {};
}

std::string_view work_caution_head(WorkCaution caution, Language language) {
  for (std::size_t i = 0; i < kCautions.size(); ++i)
    if (caution == 1u << i) return key_text("work_head_", kCautions[i], language);
  return {};
}

std::vector<std::string> caution_keys(std::uint8_t cautions) {
  std::vector<std::string> out;
  for (std::size_t i = 0; i < kCautions.size(); ++i)
    if ((cautions >> i & 1) != 0) out.emplace_back(kCautions[i]);
  return out;
}

std::string worked_text(std::string_view kept, const Voice& voice) {
  std::string out;
  for (const StepNumber& n : read_numbers(kept)) {
    if (!out.empty()) out += " · ";
    out += step_value_text(n.name, n.value, voice);
  }
  return out;
}

std::string moment_text(std::int64_t wall_ms, int ahead_minutes) {
  const Moment m = moment_of(wall_ms, ahead_minutes);
  return two_digits(m.month) + '-' + two_digits(m.day) + ' ' + two_digits(m.minute / 60) + ':' +
         two_digits(m.minute % 60);
}

std::string day_text(std::int64_t wall_ms, int ahead_minutes, Language language) {
  const Moment m = moment_of(wall_ms, ahead_minutes);
  return say(Msg::kDayOfMonth, language,
             {{"day", std::to_string(m.day)}, {"month", key_text("month_", std::to_string(m.month), language)}});
}

std::string date_text(std::int64_t wall_ms, int ahead_minutes) {
  const Moment m = moment_of(wall_ms, ahead_minutes);
  return std::to_string(m.year) + '-' + two_digits(m.month) + '-' + two_digits(m.day);
}

std::string coming_text(const ComingBook& book, Language language) {
  std::string what(key_text("backup_", kComingWords[static_cast<std::size_t>(book.coming)], language));
  if (book.coming == Coming::kNew && book.deleted) what = text(Msg::kBackupNewDeleted, language);
  if (book.unreadable) (what += " · ") += text(Msg::kBackupNotRead, language);
  return what;
}

std::string foreign_title(std::string_view title, Language language) {
  return made_visible(shown_name(title, language));
}

std::string coming_log_name(const Backup& file, const std::string& identity, Language language) {
  std::string title = identity;
  for (const BackupBook& book : file.books)
    if (book.identity == identity && !book.title.empty()) title = foreign_title(book.title, language);
  return say(Msg::kBackupLogOf, language, title);
}

std::string conflict_text(const Conflict& c, const Voice& voice) {
  const auto msg = find_msg("conflict_" + std::string(keys::word(kConflictWords, c.kind)));
  if (!msg) return {};
  const bool ids = c.kind == ConflictKind::kNumberTwice || c.kind == ConflictKind::kEventsMissing;
  const std::string first = ids ? id_text(c.first) : value_text(c, c.first_value, voice);
  const std::string second = ids ? id_text(c.second) : value_text(c, c.second_value, voice);
  std::string out = say(*msg, voice.language,
                        {{"timber", made_visible(c.timber)},
                         {"step", step_id_text(c.step, voice.language)},
                         {"first", made_visible(first)},
                         {"second", made_visible(second)},
                         {"other", made_visible(c.other_timber) + ", " + step_id_text(c.other_step, voice.language)}});
  if (c.sides > (ids ? 1 : 2)) out += " " + sides_text(c, voice.language);
  return out;
}

std::string flag_text(const StepFlag& flag, const Voice& voice) {
  if (flag.gone) return say(Msg::kFlagGone, voice.language, {{"step", step_id_text(flag.step, voice.language)}});
  const auto said = [&](const std::optional<double>& value) {
    return value ? step_value_text(flag.number, *value, voice) : std::string("-");
  };
  const std::string was = said(flag.was), now = said(flag.now);
  return say(Msg::kFlagNumber, voice.language,
             {{"step", step_id_text(flag.step, voice.language)},
              {"number", step_number_text(flag.number, voice.language)},
              {"was", was},
              {"now", now}});
}

std::string log_trouble_text(const LogTrouble& trouble, const Voice& voice) {
  const Error& e = trouble.error;
  const std::string line = std::to_string(trouble.line);
  if (e.where == "log" && e.code == ErrorCode::kSyntax)
    return std::string(text(trouble.line == 1 ? Msg::kLogNoLog : Msg::kLogCutShort, voice.language));
  if (e.where == "event")
    return say(e.code == ErrorCode::kConflict ? Msg::kLogLineOrder : Msg::kLogLineDamaged, voice.language,
               {{"line", line}});
  if (e.where == "event.explained") return say(Msg::kLogLineUnexplained, voice.language, {{"line", line}});
  Error plain = e;
  if (plain.where.starts_with("event.")) {
    plain.where.erase(0, 6);
    plain.at = -1;
    plain.limit = 0;
    return say(Msg::kLogLineBad, voice.language, {{"line", line}, {"reason", error_text(plain, voice)}});
  }
  return error_text(plain, voice);
}

}  // namespace bentbook
