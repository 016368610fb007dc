#include "printed/pages/sheet_parts.h"

#include <algorithm>
#include <utility>

#include "book/book_edit.h"
#include "frame/facts.h"
#include "frame/sheet/rough.h"
#include "numeric/index.h"
#include "paper/letters.h"
#include "paper/page_part.h"
#include "paper/tape_part.h"
#include "printed/page_head.h"
#include "words/face_words.h"
#include "words/frame_words.h"
#include "words/shop_words.h"
#include "words/steps/step_lines.h"

namespace bentbook {
namespace {

using paper::Letters;

constexpr double kSectionSide = 11, kSectionNumber = 4;  // mm: the section in the head, room for a number beside it
constexpr double kFaceBox = 8.5;
constexpr double kTick = 4.2;   // mm, a step's box
constexpr double kBetween = 5;  // mm between words on one line

std::string number_text(Face face) { return std::to_string(static_cast<int>(face)); }

void put_box(paper::Page& page, draw::Point at, Vec2 size, double width) {
  const draw::Point corners[] = {at, {at.x + size.x, at.y}, {at.x + size.x, at.y + size.y}, {at.x, at.y + size.y}};
  for (std::size_t i = 0; i < 4; ++i)
    page.lines.push_back({corners[i], corners[(i + 1) % 4], draw::Stroke::kVisible, width});
}

/// The section as it lies with `up` on top, seen from end A, its faces' numbers around it and the reference arris
/// solid.
void put_section(paper::Page& page, const Timber& timber, Face up, draw::Point at, double side) {
  const Face left = rolled(up), under = rolled(left), right = rolled(under);
  const struct {
    Face face;
    double x, y;
  } sides[] = {{up, 0, -1}, {left, -1, 0}, {under, 0, 1}, {right, 1, 0}};
  const Vec2 size = section_within(timber.sides, up, side), r{size.x / 2, size.y / 2};
  const draw::Point middle{at.x + side / 2, at.y + side / 2};
  double x = 0, y = 0;
  for (const auto& s : sides) {
    if (is_reference(timber.wood, s.face)) x += s.x, y += s.y;
    paper::put_words(page,
                     {middle.x + s.x * (r.x + kSectionNumber / 2),
                      middle.y + s.y * (r.y + kSectionNumber / 2) - kSmallLetters * 0.45},
                     number_text(s.face), {kSmallLetters, false}, paper::Align::kMiddle);
  }
  put_box(page, {middle.x - r.x, middle.y - r.y}, size, 0);
  const double leg = std::min(r.x, r.y);  // of the black corner, alike along both faces
  const draw::Point corner{middle.x + x * r.x, middle.y + y * r.y};
  paper::PagePolygon arris{{corner, {corner.x - x * leg, corner.y}, {corner.x, corner.y - y * leg}},
                           draw::Fill::kInk,
                           false,
                           draw::Stroke::kVisible};
  page.polygons.push_back(std::move(arris));
}

/// Words on one line after another, those of one kind beside each other; what has no room begins a line.
class Line {
 public:
  Line(paper::Page& page, draw::Point at, double width) : page_(page), left_(at.x), at_(at), right_(at.x + width) {}

  /// `name` quietly and `value` strongly behind it.
  void pair(std::string_view name, std::string_view value, Letters letters) {
    const Letters strong{letters.size, true}, quiet{std::min(letters.size, kBodyLetters), letters.bold};
    const double blank = name.empty() || value.empty() ? 0 : quiet.size * 0.4;
    const double own =
        paper::text_width(name, quiet.size, quiet.bold) + blank + paper::text_width(value, strong.size, strong.bold);
    if (at_.x > left_ && at_.x + own > right_) down();
    high_ = std::max(high_, letters.size);
    if (own > right_ - left_) {  // longer than any line
      std::string all(name);
      if (!value.empty()) (all += ' ') += value;
      at_.y += paper::put_lines(page_, at_, all, quiet, right_ - left_) - letters.size * paper::kLineStep;
      at_.x = right_;
      return;
    }
    const double lower = at_.y + (letters.size - quiet.size) * paper::kOverLine;
    at_.x += paper::put_words(page_, {at_.x, lower}, name, quiet) + blank;
    at_.x += paper::put_words(page_, at_, value, strong) + kBetween;
  }
  /// The next word begins a line.
  void down() {
    if (at_.x > left_) at_.y += high_ * paper::kLineStep;
    at_.x = left_;
    high_ = 0;
  }
  /// Its lower edge.
  [[nodiscard]] double bottom() {
    down();
    return at_.y;
  }

 private:
  paper::Page& page_;
  double left_;
  draw::Point at_;
  double right_, high_ = 0;
};

std::string marks_of(const Frame& frame, const std::vector<int>& timbers) {
  std::string out;
  for (const int i : timbers) out += (out.empty() ? "" : ", ") + frame.timbers[at(i)].mark;
  return out;
}

/// Over the tape: which face lies at the left and at the right, where end A is, what the numbers are.
void put_tape_head(paper::Page& page, const FaceMarks& marks, const draw::TapePage& tape, double y, double width,
                   const Voice& voice) {
  const auto words = [&](double x, std::string_view said, bool bold, paper::Align align) {
    paper::put_words(page, {x, y}, said, {kSmallLetters, bold}, align);
  };
  const double left = tape.left * paper::kTapePx, right = tape.right * paper::kTapePx;
  words(left + 0.5, number_text(marks.left), marks.gauge_left, paper::Align::kLeft);
  words(right - 0.5, number_text(marks.right), !marks.gauge_left, paper::Align::kRight);
  const std::string_view end = text(tape.starts ? Msg::kFaceEndA : Msg::kFaceToA, voice.language);
  if (paper::text_width(end, kSmallLetters, false) < left - 3) words(left - 3, end, false, paper::Align::kRight);
  std::string from(text(Msg::kFaceFromA, voice.language));
  if (const std::string_view unit = page_unit(voice); !unit.empty()) (from += ", ") += unit;
  const double at = std::min(tape.numbers * paper::kTapePx, width - paper::text_width(from, kSmallLetters, false));
  if (at > right + 1) words(at, from, false, paper::Align::kLeft);
}

bool read_large(const StepLine& line) { return line.kind == StepLineKind::kLarge || line.kind == StepLineKind::kWord; }

PagePart step_part(const SheetSubject& s, const WorkStep& step, int number, double width) {
  PagePart part;
  const double left = kTick + 2.5;
  put_box(part.drawn, {0, 0.2}, {kTick, kTick}, 0);
  std::string title = std::to_string(number) + ". " + step_text(step, s.voice.language);
  const bool said = step.work == StepWork::kHole || step.work == StepWork::kPegHole || step.id != step.of;
  if (const auto up = step.face_up(); up && !said && step.work != StepWork::kLayout)
    title += " · " + say(Msg::kFaceUp, s.voice.language, number_text(*up));
  double y = paper::put_lines(part.drawn, {left, 0}, title, {kBodyLetters, true}, width - left);
  const std::vector<StepLine> lines = step_lines(step, s.sheet, saw_of(s.book), s.voice);
  for (const StepLine& line : lines) {
    if (!read_large(line)) continue;
    // The number first: the eye finds it at the edge.
    const double value = paper::put_words(part.drawn, {left, y}, line.value, {kStrongLetters, true}) + 3;
    const double lower = y + (kStrongLetters - kSmallLetters) * paper::kOverLine;
    std::string name = line.name;
    if (!line.note.empty()) name += " · " + line.note;
    const auto rows = paper::wrapped_lines(name, kSmallLetters, false, width - left - value);
    double down = lower;
    for (const std::string& row : rows) {
      paper::put_words(part.drawn, {left + value, down}, row, {kSmallLetters, false});
      down += kSmallLetters * paper::kLineStep;
    }
    y = std::max(y + kStrongLetters * paper::kLineStep, down + 0.5);
  }
  Line rest(part.drawn, {left, y}, width - left);
  for (const StepLine& line : lines) {
    if (read_large(line)) continue;
    rest.pair(line.name, line.note.empty() ? line.value : line.value + ": " + line.note, {kSmallLetters, false});
  }
  y = rest.bottom();
  part.height = std::max(y, kTick + 0.4);
  return part;
}

PagePart checks_part(const SheetSubject& s, double width) {
  PagePart part;
  Line line(part.drawn, {0, 0}, width);
  line.pair(text(Msg::kSheetChecks, s.voice.language), {}, {kBodyLetters, true});
  line.down();
  for (const auto& [what, length] : tape_check_texts(s.sheet.check, s.voice))
    line.pair(what, length, {kSmallLetters, false});
  part.height = line.bottom();
  return part;
}

PagePart facts_part(const SheetSubject& s, double width) {
  PagePart part;
  const Language language = s.voice.language;
  const TimberFacts facts = facts_of(s.timber(), stock_step(s.voice));
  Line line(part.drawn, {0, 0}, width);
  const Letters letters{kSmallLetters, false};
  line.pair(text(Msg::kSheetStock, language), say_length(facts.stock, s.voice), letters);
  line.pair(text(Msg::kSheetVolume, language), say_wood(facts.board_feet, s.voice), letters);
  line.pair(text(Msg::kSheetBalance, language), say_inches(facts.cg.x, s.voice), letters);
  if (s.timber().kind == TimberKind::kPost)
    line.pair(text(Msg::kSheetPier, language), say_inches(s.timber().pier_level, s.voice), letters);
  line.down();
  // Each kind of joint once, with all whom it meets: "Bird’s mouth carries JR-A1, JR-A2".
  std::vector<std::pair<std::string, std::string>> met;
  for (const int j : joints_of(s.frame, s.sheet.timber)) {
    const Joint& joint = s.frame.joints[at(j)];
    std::string kind(joint_name(joint.kind, language));
    const std::string how = contact_text(s.frame, joint, s.sheet.timber, language);
    const int other = other_timber(joint, s.sheet.timber);
    const std::string& mark = s.frame.timbers[at(other)].mark;
    const bool ends = how.size() > mark.size() && how.ends_with(mark);
    if (ends) (kind += ' ') += how.substr(0, how.size() - mark.size() - 1);
    const auto found = std::find_if(met.begin(), met.end(), [&](const auto& m) { return m.first == kind; });
    if (found == met.end())
      met.emplace_back(std::move(kind), ends ? mark : how);
    else
      (found->second += ", ") += ends ? mark : how;
  }
  for (const auto& [kind, marks] : met) {
    line.down();
    line.pair(kind, marks, letters);
  }
  if (const std::string_view note = note_of(s.book, s.timber().mark); !note.empty()) {
    line.down();
    line.pair(text(Msg::kSheetNote, language), note, letters);
  }
  part.height = line.bottom();
  return part;
}

}  // namespace

PagePart sheet_head(const SheetSubject& s, double width) {
  PagePart part;
  const Timber& timber = s.timber();
  const Language language = s.voice.language;
  const double words = width - kSectionSide - 2 * kSectionNumber - 4;
  put_section(part.drawn, timber, Face::kTop, {width - kSectionSide - kSectionNumber, kSectionNumber}, kSectionSide);

  // The marks, as many as there are, then what they are.
  double x = paper::put_words(part.drawn, {0, 0}, timber.mark, {kMarkLetters, true}) + kBetween;
  part.height = kMarkLetters * 1.1;
  std::string kind(kind_name(timber.kind, language));
  const std::string others = marks_of(s.frame, s.sheet.alike);
  if (!others.empty()) kind += " · " + say(Msg::kPaperCount, language, std::to_string(s.sheet.alike.size() + 1));
  const auto beside = [&](std::string_view said, Letters letters) {
    const double line = (kMarkLetters - letters.size) * paper::kOverLine;
    const bool room = x + paper::text_width(said, letters.size, letters.bold) <= words;
    if (room)
      x += paper::put_words(part.drawn, {x, line}, said, letters) + kBetween;
    else
      part.height += paper::put_lines(part.drawn, {0, part.height}, said, {kStrongLetters, letters.bold}, words);
  };
  beside(others, {kAnswerLetters, true});
  beside(kind, {kStrongLetters, false});
  Line facts(part.drawn, {0, part.height}, words);
  facts.pair(text(Msg::kSheetLength, language), say_inches(timber.length, s.voice), {kAnswerLetters, false});
  std::string section = section_text(timber.wood.nominal, s.voice);
  if (!(timber.wood.actual == timber.wood.nominal))
    section += ", " + say(Msg::kSheetMeasures, language, section_text(timber.wood.actual, s.voice));
  facts.pair(text(Msg::kSheetSection, language), section, {kStrongLetters, false});
  facts.pair(text(Msg::kSheetWeight, language), say_weight(facts_of(timber).weight_lb, s.voice),
             {kStrongLetters, false});
  part.height = std::max(facts.bottom(), kSectionSide + 2 * kSectionNumber);

  const auto minded = [&](std::string_view said) {
    part.height += paper::put_lines(part.drawn, {0, part.height}, said, {kBodyLetters, true}, width);
  };
  if (s.sheet.hand != Hand::kNone)
    minded(say(s.sheet.hand == Hand::kLeft ? Msg::kSheetLeft : Msg::kSheetRight, language,
               marks_of(s.frame, s.sheet.mirrored)));
  if (timber.overridden.any())
    minded(text(timber.overridden.added ? Msg::kSheetAdded : Msg::kSheetOverridden, language));
  for (const FloatingFace& floating : s.sheet.floating)
    minded(say(Msg::kSheetFloating, language,
               {{"face", number_text(floating.face)}, {"over", say_inches(floating.over, s.voice)}}));
  if (timber.wood.bow != Length{}) minded(say(Msg::kSheetBow, language, say_length(timber.wood.bow, s.voice)));
  for (const TimberWarning& warning : s.sheet.warnings) minded(warning_text(warning, s.voice));
  part.height += 0.5;
  part.drawn.lines.push_back({{0, part.height}, {width, part.height}, draw::Stroke::kVisible, 0});
  part.height += 1.5;
  return part;
}

PagePart sheet_head_again(const SheetSubject& s, double width) {
  PagePart part;
  const double x = paper::put_words(part.drawn, {0, 0}, s.timber().mark, {kAnswerLetters, true}) + kBetween;
  paper::put_words(part.drawn, {x, (kAnswerLetters - kBodyLetters) * paper::kOverLine},
                   text(Msg::kPaperGoesOn, s.voice.language), {kBodyLetters, false});
  part.height = kAnswerLetters * 1.2;
  part.drawn.lines.push_back({{0, part.height}, {width, part.height}, draw::Stroke::kVisible, 0});
  part.height += 2;
  return part;
}

namespace {

std::vector<PagePart> one_face(const SheetSubject& s, Face face, double width, double height, double side) {
  const FaceMarks marks = face_marks(s.timber(), s.sheet, face);
  const double words = width - kFaceBox - 2.5, tape_head = kSmallLetters * 1.3;
  const std::string up = face_up_text(marks, s.voice.language);
  const std::string gauge(text(gauge_from(marks), s.voice.language));
  const auto in_lines = [&](paper::Page& page, std::string_view part) {
    const double x = kFaceBox + 2.5;
    const double y = paper::put_lines(page, {x, 0}, up + std::string(part), {kBodyLetters, true}, words);
    return std::max(kFaceBox, y + paper::put_lines(page, {x, y}, gauge, {kBodyLetters, false}, words)) + 1.5;
  };
  const auto which = [&](const std::string& n, const std::string& all) {
    return " · " + say(Msg::kFacePart, s.voice.language, {{"n", n}, {"all", all}});
  };
  paper::Page measured;
  const double most_head = in_lines(measured, which("88", "88"));
  draw::TapeOptions options;
  options.width = width / paper::kTapePx;
  options.room = (height - most_head - tape_head) / paper::kTapePx;
  options.side = side / paper::kTapePx;
  set_ticks(options, s.voice);
  const std::vector<draw::TapePage> tapes =
      draw::lay_out_tape(face_strip(s.frame, s.timber(), marks, s.voice), options,
                         [](std::string_view said, draw::TapeText size) { return paper::tape_text_size(said, size); });
  std::vector<PagePart> parts;
  parts.reserve(tapes.size());
  for (const draw::TapePage& tape : tapes) {
    PagePart part;
    put_box(part.drawn, {0, 0}, {kFaceBox, kFaceBox}, marks.reference ? 1.4 : 0);
    paper::put_words(part.drawn,
                     {kFaceBox / 2, kFaceBox / 2 + (paper::kCapital / 2 - paper::kOverLine) * kAnswerLetters},
                     number_text(face), {kAnswerLetters, true}, paper::Align::kMiddle);
    const double head =
        in_lines(part.drawn, tapes.size() == 1 ? std::string{}
                                               : which(std::to_string(parts.size() + 1), std::to_string(tapes.size())));
    put_tape_head(part.drawn, marks, tape, head, width, s.voice);
    paper::put(part.drawn, paper::tape_part(tape), {0, head + tape_head});
    part.height = head + tape_head + tape.height * paper::kTapePx;
    parts.push_back(std::move(part));
  }
  return parts;
}

}  // namespace

std::vector<std::vector<PagePart>> face_parts(const SheetSubject& s, double width, double height, double side) {
  std::vector<std::vector<PagePart>> faces;
  for (Face face = Face::kTop;; face = rolled(face)) {
    faces.push_back(one_face(s, face, width, height, side));
    if (face == Face::kFar) return faces;
  }
}

std::vector<PagePart> work_parts(const SheetSubject& s, double width) {
  std::vector<PagePart> parts;
  int number = 0, cautions = 0;
  for (const WorkStep& step : work_steps(s.frame, s.sheet)) {
    parts.push_back(step_part(s, step, ++number, width));
    cautions |= step.cautions;
  }
  std::string minded;
  for (int bit = kKickback; bit <= kWorkHeld; bit *= 2) {
    if ((cautions & bit) == 0) continue;
    if (!minded.empty()) minded += ' ';
    minded += work_caution_text(static_cast<WorkCaution>(bit), s.voice.language);
  }
  PagePart part;
  part.height = paper::put_lines(part.drawn, {0, 0}, minded, {kBodyLetters, true}, width);
  if (part.height > 0) parts.push_back(std::move(part));
  parts.push_back(checks_part(s, width));
  parts.push_back(facts_part(s, width));
  return parts;
}

}  // namespace bentbook
