#include "words/step_words.h"

#include <algorithm>
#include <array>
#include <span>
#include <utility>
#include <vector>

#include "frame/facts.h"
#include "numeric/index.h"
#include "raising/order.h"
#include "words/frame_words.h"
#include "words/raising_words.h"

namespace bentbook {
namespace {

constexpr double kFromOutside = 96;  ///< inches: so far away it does not matter how far

/// The bent that all of these stand in; 0: none, or not a whole one.
int bent_of(const Frame& frame, std::span<const int> timbers) {
  int posts = 0;
  const int bent = frame.timbers[at(timbers[0])].place.bent;
  for (const int t : timbers) {
    if (!stands_in_bent(frame.timbers[at(t)], bent)) return 0;
    posts += frame.timbers[at(t)].kind == TimberKind::kPost ? 1 : 0;
  }
  return posts > 1 ? bent : 0;
}

std::string joined(std::span<const std::string> marks, std::string_view by) {
  std::string out;
  for (const std::string& mark : marks) out += (out.empty() ? "" : std::string(by)) + mark;
  return out;
}

/// The kind that all of these are; empty where they are of different ones.
std::string kind_of_all(const Frame& frame, std::span<const int> timbers, Language language) {
  const TimberKind kind = frame.timbers[at(timbers[0])].kind;
  const auto is_kind = [&](int t) { return frame.timbers[at(t)].kind == kind; };
  return std::all_of(timbers.begin(), timbers.end(), is_kind) ? std::string(kind_name(kind, language)) : "";
}

/// ", 4 girts caught": what is set first, but for what was named with the main pieces.
std::string caught_text(const Frame& frame, std::span<const int> set, Language language) {
  constexpr std::array<std::pair<TimberKind, Msg>, 5> kNamed = {{{TimberKind::kPost, Msg::kStepPostsFirst},
                                                                 {TimberKind::kQueenPost, Msg::kStepQueensCaught},
                                                                 {TimberKind::kGirt, Msg::kStepGirtsCaught},
                                                                 {TimberKind::kKingPost, Msg::kStepKingsCaught},
                                                                 {TimberKind::kBrace, Msg::kStepBracesCaught}}};
  std::string out;
  std::int64_t others = static_cast<std::int64_t>(set.size());
  for (const auto& named : kNamed) {
    const auto is_one = [&](int t) { return frame.timbers[at(t)].kind == named.first; };
    const auto n = std::count_if(set.begin(), set.end(), is_one);
    if (n > 0) out += ", " + say_count(named.second, language, n);
    others -= n;
  }
  if (others > 0) out += ", " + say_count(Msg::kStepPiecesCaught, language, others);
  return out;
}

/// Marks of what stands under the pieces, each once.
std::vector<std::string> carriers_of(const Frame& frame, std::span<const int> timbers) {
  std::vector<std::string> marks;
  for (const Joint& joint : frame.joints) {
    const auto comes = [&](int t) { return std::find(timbers.begin(), timbers.end(), t) != timbers.end(); };
    if (!comes(joint.carried) || comes(joint.carrier) || joint.bearing != Bearing::kBearsOn) continue;
    const std::string& mark = frame.timbers[at(joint.carrier)].mark;
    if (joint.carrier != joint.carried && std::find(marks.begin(), marks.end(), mark) == marks.end())
      marks.push_back(mark);
  }
  return marks;
}

}  // namespace

std::optional<StepNameParts> step_name_parts(const RaisingStep& step, const Frame& frame, Language language) {
  const std::vector<int> main = timbers_of(frame, step.marks);
  if (main.empty()) return std::nullopt;
  std::vector<int> set;
  StepNameParts parts;
  parts.marks = step.marks;
  for (const SetPiece& piece : step.set_first) {
    const int t = timber_by_mark(frame, piece.mark);
    if (t < 0) continue;
    // The rafter opposite is as much what comes as the one that closes on it.
    if (main.size() == 1 && frame.timbers[at(t)].kind == frame.timbers[at(main[0])].kind)
      parts.marks.insert(parts.marks.begin(), piece.mark);
    else
      set.push_back(t);
  }
  parts.bent = bent_of(frame, main);
  parts.kind = kind_of_all(frame, main, language);
  parts.caught = caught_text(frame, set, language);
  return parts;
}

std::string step_name(const RaisingStep& step, const Frame& frame, Language language) {
  if (step.marks.empty() && step.set_first.empty()) return std::string(text(Msg::kRaisingTemporaries, language));
  const std::optional<StepNameParts> parts = step_name_parts(step, frame, language);
  if (!parts) return marks_text(marks_in(step));
  if (parts->bent > 0) return say(Msg::kStepBentUp, language, std::to_string(parts->bent)) + parts->caught;
  const std::vector<std::string>& marks = parts->marks;
  const std::string named =
      marks.size() <= kMostMarksNamed
          ? joined(marks, " + ")
          : say(Msg::kStepAndMore, language, {{"mark", marks[0]}, {"n", std::to_string(marks.size() - 1)}});
  return parts->kind + (parts->kind.empty() ? "" : " ") + named + parts->caught;
}

std::string driven_text(std::span<const Driven> driven, const Voice& voice) {
  std::string out;
  for (const Driven& d : driven) {
    const Msg msg = d.diameter <= 0              ? Msg::kDriveScrews
                    : d.kind == Fasteners::kPins ? Msg::kDrivePins
                                                 : Msg::kDrivePegs;
    const std::string size = say_near(Length::from_inches(d.diameter), voice);
    if (!out.empty()) out += ", ";
    out += say_count(msg, voice.language, d.count, {{"size", size}});
  }
  return out;
}

std::string way_text(const Entry& entry, const RaisingStep& step, LiftBy by, const Frame& frame, const Voice& voice) {
  if (!entry.free) return {};
  const std::vector<std::string> under = carriers_of(frame, timbers_of(frame, step.marks));
  Entry one = entry;
  std::string out;
  const bool tipped = by == LiftBy::kTipUp;
  if (tipped) out = text(Msg::kMoveTipUp, voice.language);
  for (const Move& move : entry.path) {
    if (tipped && move.kind == MoveKind::kLower) continue;
    if (!out.empty()) out += ' ';
    if (move.kind == MoveKind::kLower && !under.empty() && under.size() <= kMostMarksNamed) {
      out += say(Msg::kMoveLowerOnto, voice.language, marks_text(under));
    } else if (move.kind == MoveKind::kSlide && move.distance > kFromOutside) {
      out += say(Msg::kMoveFromOutside, voice.language, toward_text(move.direction, voice.language));
    } else {
      one.path = {move};
      out += path_text(one, frame, voice);
    }
  }
  return out;
}

std::string goes_up_text(const Pick& pick, const Voice& voice) {
  const Language language = voice.language;
  const std::string people = say_count(Msg::kBriefPeople, language, pick.needed());
  if (pick.beyond_hands()) return std::string(text(Msg::kBriefOpenHigh, language));
  if (pick.open) return say(Msg::kBriefOpen, language, people);
  const std::string left = pick.rated ? say(Msg::kBriefLeft, language, say_weight(pick.margin_lb(), voice))
                                      : std::string(text(Msg::kStepNotRated, language));
  return std::string(lift_by_text(pick.by, language)) + ", " + (hangs(pick.by) ? left : people);
}

std::string temporaries_text(const RaisingStep& step) {
  std::string out;
  for (const std::string& name : step.put_up) out += (out.empty() ? "+" : " +") + name;
  for (const std::string& name : step.take_out) out += (out.empty() ? "−" : " −") + name;
  return out;
}

std::string joints_text(std::span<const JointName> joints, Language language) {
  std::string out;
  for (const JointName& joint : joints) {
    if (!out.empty()) out += ", ";
    out += say(Msg::kJointOfTwo, language, {{"one", joint.one}, {"other", joint.other}});
  }
  return out;
}

std::vector<std::string> whole_raising_texts(const RaisingPlan& plan, const Voice& voice) {
  const Language language = voice.language;
  std::vector<std::string> out;
  if (plan.fasten == FastenWhen::kWithStep)
    out.push_back(plan.later.empty() ? std::string(text(Msg::kRaiseFastened, language))
                                     : say(Msg::kRaiseFastenedBut, language, joints_text(plan.later, language)));
  const FastenerRatings& rated = plan.ratings;
  if (plan.fasten == FastenWhen::kWithStep && rated.peg.count == 0 && rated.pin.count == 0 && rated.screw.count == 0)
    out.emplace_back(text(Msg::kRaiseUnrated, language));
  out.push_back(lifting_entered(plan) ? say(Msg::kBriefCrew, language, std::to_string(plan.crew.people))
                                      : std::string(text(Msg::kRaiseOpen, language)));
  if (!plan.crew.on_lines.empty()) out.push_back(say(Msg::kBriefOnLines, language, plan.crew.on_lines));
  if (!plan.crew.on_poles.empty()) out.push_back(say(Msg::kBriefOnPoles, language, plan.crew.on_poles));
  return out;
}

}  // namespace bentbook
