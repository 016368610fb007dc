#include "words/raising_words.h"

#include <algorithm>
#include <array>

#include "frame/facts.h"
#include "frame/keys.h"
#include "numeric/libm.h"
#include "raising/holding.h"
#include "words/frame_words.h"

namespace bentbook {
namespace {

std::string mark_of(const Frame& frame, int timber) {
  if (timber < 0 || static_cast<std::size_t>(timber) >= frame.timbers.size()) return "–";
  return frame.timbers[static_cast<std::size_t>(timber)].mark;
}

std::string move_text(const Move& move, const Frame& frame, const Voice& voice) {
  const std::string by = say_near(Length::from_inches(move.distance), voice);
  const std::string toward(toward_text(move.direction, voice.language));
  switch (move.kind) {
    case MoveKind::kLower:
      return std::string(text(Msg::kMoveLower, voice.language));
    case MoveKind::kSlide:
      if (libm::fabs(move.direction.z) > 0.9)
        return say(move.direction.z > 0 ? Msg::kMoveUp : Msg::kMoveDown, voice.language, {{"by", by}});
      return say(Msg::kMoveSlide, voice.language, {{"by", by}, {"toward", toward}});
    case MoveKind::kSpread:
      return say(Msg::kMoveSpread, voice.language, {{"who", marks_text(frame, move.who)}, {"by", by}});
    case MoveKind::kSwing:
      return say(Msg::kMoveSwing, voice.language, print_fixed(libm::fabs(move.distance) * 180 / libm::kPi, 0));
  }
  return {};
}

constexpr std::array<std::string_view, kOrderFaults> kFaultWords = {
    "unknown_mark",    "not_placed",       "twice",          "support_missing",   "wish_cycle",      "wish_broken",
    "cant_go_in",      "cant_stand",       "cant_pick",      "unknown_temporary", "temporary_twice", "temporary_not_up",
    "temporary_loose", "temporaries_left", "temporary_idle", "hangs_on_one",      "held_too_heavy",  "hands_short",
    "not_seated",      "not_caught",       "no_such_joint",  "held_falls",        "whole_falls"};
constexpr std::array<std::string_view, kPickNotes> kPickWords = {
    "angle_flat",   "angle_too_flat", "no_slings",  "sling_weak",    "sling_short", "slings_few", "needs_fitting",
    "shackle_weak", "no_shackles",    "spreader",   "take_up",       "slides",      "leans",      "turns_over",
    "no_points",    "two_of_four",    "no_machine", "over_capacity", "past_chart",  "near_limit", "more_people",
    "no_room",      "no_pikes",       "not_rated",  "not_tipped",    "up_high"};
static_assert(kPickWords.size() == static_cast<std::size_t>(PickNoteId::kUpHigh) + 1);
constexpr std::array<std::string_view, 7> kStuckWords = {"cycle",      "support",   "cant_go_in", "shuts_out",
                                                         "cant_stand", "cant_pick", "whole_falls"};
constexpr std::array<std::string_view, 7> kStandingWords = {
    "one_way_only", "on_one_brace", "hook_stays_on", "pins_not_in", "not_for_night", "no_rating", "loose"};
static_assert(kStandingWords.size() == static_cast<std::size_t>(StandingWarningId::kLoose) + 1);
static_assert(kStuckWords.size() == static_cast<std::size_t>(StuckReason::kWholeFalls) + 1);

std::string first_of(const std::vector<std::string>& marks) { return marks.empty() ? std::string("–") : marks[0]; }

std::string rest_of(const std::vector<std::string>& marks) {
  return marks.size() < 2 ? std::string("–") : marks_text({marks.begin() + 1, marks.end()});
}

}  // namespace

std::string say_near(Length length, const Voice& voice) {
  LengthStyle style = voice.lengths;
  if (style.form != LengthForm::kMm) return say_length(length, voice);
  style.decimals = 0;
  return print_length(length, style, voice.marks).text;
}

std::string say_sum(std::span<const double> parts_lb, const Voice& voice) {
  const WeightUnit unit = weight_unit(voice.lengths.form);
  std::int64_t units = 0;
  for (const double lb : parts_lb) units += whole_units(Weight::from_lb(lb), unit);
  return print_weight({units * per_unit(unit)}, voice.lengths.form);
}

std::string say_wet(std::span<const double> parts_lb, const Voice& voice) {
  return say(Msg::kWeightWet, voice.language, say_sum(parts_lb, voice));
}

std::string say_wet(double lb, const Voice& voice) { return say_wet(std::span(&lb, 1), voice); }

std::string_view toward_text(Vec3 d, Language language) {
  const double x = libm::fabs(d.x), y = libm::fabs(d.y), z = libm::fabs(d.z);
  if (z >= x && z >= y) return text(d.z < 0 ? Msg::kTowardDown : Msg::kTowardUp, language);
  if (x >= y) return text(d.x > 0 ? Msg::kTowardRight : Msg::kTowardLeft, language);
  return text(d.y > 0 ? Msg::kTowardLast : Msg::kTowardFirst, language);
}

std::string marks_text(const std::vector<std::string>& marks) {
  std::string out;
  for (const std::string& mark : marks) {
    if (!out.empty()) out += ", ";
    out += mark;
  }
  return out;
}

std::string marks_text(const Frame& frame, const std::vector<int>& timbers) {
  std::vector<std::string> marks;
  marks.reserve(timbers.size());
  for (const int t : timbers) marks.push_back(mark_of(frame, t));
  return marks_text(marks);
}

std::string_view checked_text(const OrderCheck* check, Language language) {
  if (check == nullptr) return text(Msg::kRaiseNotChecked, language);
  if (!check->good()) return text(Msg::kRaiseWholeBad, language);
  return text(check->left_out.empty() ? Msg::kRaiseGood : Msg::kRaiseGoodSoFar, language);
}

std::string mode_text(const Mode& mode, const Frame& frame, Language language) {
  constexpr std::array<Msg, 3> kAxes = {Msg::kAxisAcross, Msg::kAxisAlong, Msg::kAxisUp};
  const std::string mark = mark_of(frame, mode.timber);
  const std::string axis(text(kAxes[static_cast<std::size_t>(mode.axis)], language));
  switch (mode.kind) {
    case ModeKind::kRacks:
      // Out of its plane nothing in it resists.
      if (mode.bent >= 0 && mode.axis == WorldAxis::kAlong)
        return say(Msg::kModeBentFalls, language, std::to_string(mode.bent));
      if (mode.bent >= 0)
        return say(Msg::kModeBentRacks, language, {{"bent", std::to_string(mode.bent)}, {"axis", axis}});
      return say(Msg::kModeRacks, language, {{"mark", mark}, {"axis", axis}});
    case ModeKind::kSwings:
      return say(Msg::kModeSwings, language, {{"mark", mark}, {"end", mode.at_end_a ? "A" : "B"}, {"axis", axis}});
    case ModeKind::kTurns:
      return say(Msg::kModeTurns, language, mark);
    case ModeKind::kSlides:
      return say(Msg::kModeSlides, language, {{"mark", mark}, {"axis", axis}});
    case ModeKind::kMoves:
      return say(Msg::kModeMoves, language, {{"mark", mark}, {"axis", axis}});
  }
  return {};
}

std::vector<std::string> standing_warning_texts(std::span<const StandingWarning> warnings, const Frame& frame,
                                                const std::vector<Temporary>& temporaries, Language language) {
  struct Said {
    StandingWarningId id;
    std::vector<std::string> of;
  };
  std::vector<Said> kinds;
  for (const StandingWarning& warning : warnings) {
    const auto t = static_cast<std::size_t>(warning.temporary);
    const bool temporary = warning.temporary >= 0 && t < temporaries.size();
    std::string what = temporary ? temporaries[t].name : mark_of(frame, warning.timber);
    auto known = std::find_if(kinds.begin(), kinds.end(), [&](const Said& s) { return s.id == warning.id; });
    if (known == kinds.end() || warning.id == StandingWarningId::kOnOneBrace)
      known = kinds.insert(kinds.end(), {warning.id, {}});
    if (std::find(known->of.begin(), known->of.end(), what) == known->of.end()) known->of.push_back(std::move(what));
  }
  std::vector<std::string> texts;
  for (const Said& said : kinds)
    if (const auto msg = find_msg("standing_" + std::string(keys::word(kStandingWords, said.id))))
      texts.push_back(say(*msg, language, marks_text(said.of)));
  return texts;
}

bool margin_is_rated(std::span<const StandingWarning> warnings, const FastenerRatings& ratings) {
  return ratings.peg.count > 0 && ratings.pin.count > 0 && ratings.screw.count > 0 &&
         std::none_of(warnings.begin(), warnings.end(),
                      [](const StandingWarning& w) { return w.id == StandingWarningId::kNoRating; });
}

std::string load_text(const LoadCase& load, const Frame& frame, Language language) {
  if (load.kind == LoadKind::kPerson) return say(Msg::kLoadPerson, language, mark_of(frame, load.timber));
  const double turn = load.direction * libm::kPi / 4;
  const auto toward = [&](Vec3 d) { return std::string(toward_text(d, language)); };
  std::string where;
  if (load.direction % 4 != 2) where = toward({libm::cos(turn) > 0 ? 1.0 : -1.0, 0, 0});
  if (load.direction % 4 != 0) {
    if (!where.empty()) where += " + ";
    where += toward({0, libm::sin(turn) > 0 ? 1.0 : -1.0, 0});
  }
  return say(Msg::kLoadPush, language, where);
}

std::string path_text(const Entry& entry, const Frame& frame, const Voice& voice) {
  if (!entry.free) return {};
  std::string out;
  for (const Move& move : entry.path) {
    if (!out.empty()) out += ' ';
    out += move_text(move, frame, voice);
  }
  return out;
}

std::string remedy_text(const Remedy& remedy, const Frame& frame, Language language) {
  const std::string who = marks_text(frame, remedy.timbers);
  switch (remedy.kind) {
    case RemedyKind::kWithBent:
      return say(Msg::kRemedyWithBent, language, who);
    case RemedyKind::kLeaveLoose:
      return say(Msg::kRemedyLeaveLoose, language, who);
    case RemedyKind::kChangeJoint: {
      const auto j = static_cast<std::size_t>(remedy.joint);
      if (remedy.joint < 0 || j >= frame.joints.size()) return {};
      const Joint& joint = frame.joints[j];
      return say(Msg::kRemedyChangeJoint, language,
                 {{"kind", joint_name(joint.kind, language)},
                  {"member", mark_of(frame, joint.member)},
                  {"receiver", mark_of(frame, joint.receiver)}});
    }
    case RemedyKind::kMoveApart:
      return say(Msg::kRemedyMoveApart, language, who);
  }
  return {};
}

std::string order_fault_text(const OrderFault& fault, const Voice& voice) {
  if (fault.id == OrderFaultId::kCantGoIn && fault.marks.empty())
    return std::string(text(Msg::kFaultGround, voice.language));
  if (fault.id == OrderFaultId::kCantPick) return pick_note_text({fault.note, fault.value, fault.value2}, voice);
  const auto msg = find_msg("fault_" + std::string(keys::word(kFaultWords, fault.id)));
  if (!msg) return {};
  return say(*msg, voice.language,
             {{"mark", first_of(fault.marks)},
              {"others", rest_of(fault.marks)},
              {"marks", marks_text(fault.marks)},
              {"weight", say_wet(fault.value, voice)},
              {"most", say_weight(fault.value2, voice)},
              {"wanted", print_fixed(fault.value, 0)},
              {"there", print_fixed(fault.value2, 0)},
              {"step", std::to_string(static_cast<long long>(fault.value) + 1)}});
}

std::string held_text(const RaisingStep& step, const Frame& frame, const RaisingPlan& plan, const Voice& voice) {
  constexpr std::array<Msg, 4> kHeld = {Msg::kRaiseHeldHands, Msg::kRaiseHeldCleat, Msg::kRaiseHeldRope,
                                        Msg::kRaiseHeldPeg};
  const std::vector<PickBody> bodies = pick_bodies(frame, plan);
  std::string said;
  for (const SetPiece& piece : step.set_first) {
    const int t = timber_by_mark(frame, piece.mark);
    const int hands = t < 0 ? 0 : hands_for(frame, plan, bodies, t);
    if (!said.empty()) said += "; ";
    said += say(kHeld[static_cast<std::size_t>(piece.by)], voice.language,
                {{"mark", piece.mark}, {"hands", std::to_string(hands)}});
  }
  return said;
}

std::string stuck_text(const Stuck& stuck, const RaisingPlan& plan, Language language) {
  auto msg = find_msg("stuck_" + std::string(keys::word(kStuckWords, stuck.reason)));
  if (!msg) return {};
  // Who fastens with the steps is not told to.
  if (stuck.reason == StuckReason::kWholeFalls && plan.fasten == FastenWhen::kWithStep) {
    const auto moves = [&](const std::string& mark) {
      return std::find(stuck.piece.begin(), stuck.piece.end(), mark) != stuck.piece.end();
    };
    const bool left = std::any_of(plan.later.begin(), plan.later.end(),
                                  [&](const JointName& joint) { return moves(joint.one) || moves(joint.other); });
    msg = left ? Msg::kStuckWholeFallsLater : Msg::kStuckWholeFallsFastened;
  }
  return say(*msg, language, {{"piece", marks_text(stuck.piece)}, {"marks", marks_text(stuck.marks)}});
}

std::string_view stuck_advice(std::span<const Stuck> stuck, Language language) {
  const bool any =
      std::any_of(stuck.begin(), stuck.end(), [](const Stuck& one) { return one.reason == StuckReason::kShutsOut; });
  return any ? text(Msg::kStuckShutsOutHow, language) : std::string_view{};
}

std::string_view lift_by_text(LiftBy by, Language language) {
  return key_text("lift_by_", keys::word(kLiftByWords, by), language);
}

std::string pick_note_text(const PickNote& note, const Voice& voice) {
  const auto msg = find_msg("pick_" + std::string(keys::word(kPickWords, note.id)));
  if (!msg) return {};
  const auto said = [&](double value) -> std::string {
    switch (note.id) {
      case PickNoteId::kAngleFlat:
      case PickNoteId::kAngleTooFlat:
      case PickNoteId::kSlides:
      case PickNoteId::kLeans:
      case PickNoteId::kNoPikes:
        return print_fixed(value, 0);
      case PickNoteId::kSlingShort:
      case PickNoteId::kTakeUp:
      case PickNoteId::kTurnsOver:
      case PickNoteId::kPastChart:
        return say_inches(value, voice);
      case PickNoteId::kUpHigh:
        return say_near(Length::from_inches(value), voice);
      case PickNoteId::kSlingsFew:
      case PickNoteId::kMorePeople:
      case PickNoteId::kNoRoom:
        return print_fixed(value, 0);
      case PickNoteId::kNearLimit:
        return print_fixed(value * 100, 0);
      default:
        return say_weight(value, voice);
    }
  };
  const std::string second = note.id == PickNoteId::kNoSlings ? say_inches(note.value2, voice) : said(note.value2);
  return say(*msg, voice.language, {{"value", said(note.value)}, {"value2", second}});
}

namespace {

/// Where its foot is staked, from the timber that it holds.
std::string stake_text(const Temporary& temporary, const Frame& frame, const Voice& voice) {
  const int t = timber_by_mark(frame, temporary.from.mark);
  if (t < 0) return std::string(text(Msg::kTemporaryGround, voice.language));
  const Placement& held = frame.timbers[at(t)].at;
  const Vec3 out =
      Vec3{temporary.ground_x.in(), temporary.ground_y.in(), 0} - held.origin - temporary.from.station.in() * held.x;
  constexpr double kPlumb = 1;  // inches: nearer than this a foot is staked straight below, or straight out
  Vec3 one{out.x, 0, 0}, other{0, out.y, 0};
  if (norm(other) > norm(one)) std::swap(one, other);
  if (norm(one) < kPlumb) return std::string(text(Msg::kTemporaryGround, voice.language));
  // Nobody stakes to less than an inch.
  const auto away = [&](Vec3 v) { return say_near(Length::from_inches(libm::floor(norm(v) + 0.5)), voice); };
  const auto toward = [&](Vec3 v) { return std::string(toward_text(v, voice.language)); };
  if (norm(other) < kPlumb)
    return say(Msg::kTemporaryStake, voice.language, {{"away", away(one)}, {"toward", toward(one)}});
  return say(Msg::kTemporaryStakeTwo, voice.language,
             {{"away", away(one)}, {"toward", toward(one)}, {"beside", away(other)}, {"side", toward(other)}});
}

}  // namespace

std::string temporary_text(const Temporary& temporary, const Frame& frame, const Voice& voice) {
  const auto point = [&](const TimberPoint& p) {
    if (p.mark.empty()) return stake_text(temporary, frame, voice);
    return say(Msg::kTemporaryPoint, voice.language, {{"mark", p.mark}, {"at", say_near(p.station, voice)}});
  };
  std::string kind(key_text("temporary_", keys::word(kTemporaryWords, temporary.kind), voice.language));
  if (!temporary.name.empty()) kind += ' ' + temporary.name;
  return say(Msg::kTemporaryRuns, voice.language,
             {{"kind", kind}, {"from", point(temporary.from)}, {"to", point(temporary.to)}});
}

}  // namespace bentbook
