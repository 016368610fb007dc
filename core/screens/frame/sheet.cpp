#include "screens/frame/sheet.h"

#include <algorithm>
#include <charconv>
#include <string>

#include "book/book_edit.h"
#include "screens/frame/apart.h"
#include "screens/frame/form.h"
#include "screens/settings/saws.h"
#include "words/frame_text.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

/// Inches of a timber that one drawing with all its measures shows.
constexpr double kStretch = 42;

struct Shown {
  Context& context;
  const ShownFrame& frame;
  const Timber& timber;
  FrameMemory::Shown& kept;
  Voice voice;
  [[nodiscard]] const Sheet& sheet() const { return *kept.sheet; }
  [[nodiscard]] std::string mark_of(int i) const { return frame.frame()->timbers[static_cast<std::size_t>(i)].mark; }
  [[nodiscard]] std::string marks_of(const std::vector<int>& timbers) const {
    std::string out;
    for (const int i : timbers) out += (out.empty() ? "" : ", ") + mark_of(i);
    return out;
  }
};

/// The parts of a figure's key: "line_7_2_0" → "line", 7, 2, 0.
struct KeyParts {
  std::string_view what;
  int n[3] = {};
};
KeyParts parts_of(std::string_view key) {
  KeyParts out;
  std::size_t at = key.find('_');
  out.what = key.substr(0, at);
  for (int& n : out.n) {
    if (at == std::string_view::npos) break;
    key.remove_prefix(at + 1);
    if (out.what == "arris" && &n == &out.n[1]) key.remove_prefix(std::min(key.size(), std::size_t{4}));  // "cut_"
    std::from_chars(key.data(), key.data() + key.size(), n);
    at = key.find('_');
  }
  return out;
}

/// What a figure of the drawings is, for who cannot see where it stands.
std::string figure_name(const Shown& s, std::string_view key) {
  const KeyParts parts = parts_of(key);
  const auto named = [&](Msg msg, int n) { return say(msg, s.voice.language, std::to_string(n)); };
  if (parts.what == "step" && parts.n[0] >= 1 && parts.n[0] <= static_cast<int>(s.sheet().steps.size()))
    return step_text(s.timber, s.sheet(), s.sheet().steps[static_cast<std::size_t>(parts.n[0] - 1)], s.voice);
  if (parts.what == "mate") return named(Msg::kSheetLands, parts.n[1]);
  if (parts.what == "arris") return named(Msg::kSheetCutOnArris, parts.n[0]);
  if (parts.what == "line") return named(Msg::kSheetLineOnFace, parts.n[1]);
  if (parts.what == "angle") return named(Msg::kSheetOffSquare, parts.n[1]);
  return std::string(s.context.say(Msg::kSheetLength));
}

/// Leaves one of those figures that say the same of the same recess: the corners of a mortise are two stations, not
/// eight. A key stands once. Where much is cut, what lands on the faces is left to the list of joints.
void thin_out(SheetDrawing& drawn) {
  constexpr std::size_t kCrowded = 12;
  const bool crowded = drawn.drawing.notes.size() > kCrowded;
  std::vector<std::string> said;
  const auto again = [&](const draw::Note& note) {
    const KeyParts parts = parts_of(note.key);
    if (crowded && parts.what == "mate") return true;
    std::string what = note.key;
    if (parts.what == "line")
      what = "line_" + std::to_string(parts.n[0]) + "_" + std::to_string(parts.n[1]) + "_" +
             std::to_string(find_figure(drawn, note.key)->length.count);
    if (std::find(said.begin(), said.end(), what) != said.end()) return true;
    said.push_back(std::move(what));
    return false;
  };
  auto& notes = drawn.drawing.notes;
  notes.erase(std::remove_if(notes.begin(), notes.end(), again), notes.end());
}

void solve_into(FrameMemory::Shown& kept, const ShownFrame& shown, int timber) {
  const std::string& mark = shown.frame()->timbers[static_cast<std::size_t>(timber)].mark;
  const Saw& saw = saw_of(shown.book);
  if (kept.of == shown.solved && kept.mark == mark && kept.saw == saw.name && kept.sheet) return;
  const int part = kept.mark == mark ? kept.part : 0;
  kept = {shown.solved, mark, saw.name, solve_sheet(*shown.frame(), timber, saw), {}, {}, part};
  const Timber& own = shown.frame()->timbers[static_cast<std::size_t>(timber)];
  kept.whole = whole_drawing(own, *kept.sheet);
  thin_out(kept.whole);
  kept.parts = std::max(1, static_cast<int>(own.length / kStretch + 0.999));
  kept.part = std::min(kept.part, kept.parts - 1);
}

void drawing_of(Shown& s, ItemKey prefix, Msg name, float height, const SheetDrawing& drawn) {
  const auto words = [&](std::string_view key) -> bentbook::FigureText {
    const SheetFigure* figure = find_figure(drawn, key);
    if (figure == nullptr) return {};
    return {sheet_figure_text(*figure, *s.frame.frame(), s.voice), figure_name(s, key)};
  };
  (void)drawing_form(s.context, prefix, s.context.say(name), drawing_height(s.context, height), drawn.drawing, words);
}

void drawings(Shown& s) {
  Ui& ui = s.context.ui;
  drawing_of(s, "sheet.whole", Msg::kSheetPicture, 170, s.kept.whole);
  if (s.kept.stretch_part != s.kept.part) {
    s.kept.stretch_part = s.kept.part;
    const double each = s.timber.length / s.kept.parts;
    s.kept.stretch = stretch_drawing(s.timber, s.sheet(), each * s.kept.part, each * (s.kept.part + 1));
    thin_out(s.kept.stretch);
  }
  drawing_of(s, "sheet.stretch", Msg::kSheetStretchPicture, 340, s.kept.stretch);
  if (s.kept.parts == 1) return;
  const Column whole = ui.column;
  const float side = ui.theme.target;
  const Rect row = take_box(ui, side);
  if (icon_button(ui, "sheet.back", {row.x, row.y, side, side}, Icon::kBack, s.context.say(Msg::kSheetPartBack),
                  s.kept.part > 0))
    --s.kept.part;
  if (icon_button(ui, "sheet.on", {row.x + row.w - side, row.y, side, side}, Icon::kForward,
                  s.context.say(Msg::kSheetPartOn), s.kept.part + 1 < s.kept.parts))
    ++s.kept.part;
  ui.column = {row.x + side + kGap, row.y + (side - ui.fonts.body->FontSize) / 2, row.w - 2 * (side + kGap),
               whole.scroll, whole.clip};
  fact(ui, "sheet.part", s.context.say(Msg::kSheetPart),
       std::to_string(s.kept.part + 1) + " / " + std::to_string(s.kept.parts), true);
  ui.column = {whole.x, row.y + row.h + kGap, whole.width, whole.scroll, whole.clip};
}

// ── The bench ─────────────────────────────────────────────────────────────────────────────────────────────────────

void saw_cut(Shown& s, const std::string& key, const SawCut& cut) {
  Ui& ui = s.context.ui;
  if (cut.along) return body(ui, key, saw_cut_text(cut, s.voice));
  side_by_side(
      ui, 16, 120,
      [&](Ui& half) {
        answer(half, key + ".swing", s.context.say(Msg::kSheetTable),
               say_angle(Angle::from_radians(cut.blade.swing), s.voice));
      },
      [&](Ui& half) {
        answer(half, key + ".tilt", s.context.say(Msg::kSheetTilt),
               say_angle(Angle::from_radians(cut.blade.tilt), s.voice));
      });
  note(ui, key + ".ride", saw_cut_text(cut, s.voice));
  if (cut.pass.faces != Faces::kOne) note(ui, key + ".pass", pass_text(cut.pass, saw_of(s.frame.book), s.voice));
}

void steps(Shown& s) {
  Ui& ui = s.context.ui;
  heading(ui, "sheet.steps", s.context.say(Msg::kSheetSteps));
  fact(ui, "sheet.saw", s.context.say(Msg::kSheetSawUsed), shown_name(saw_of(s.frame.book).name, s.voice.language));
  int number = 0;
  for (const BenchStep& step : s.sheet().steps) {
    const std::string key = "sheet.step." + std::to_string(++number);
    body(ui, key, std::to_string(number) + ". " + step_text(s.timber, s.sheet(), step, s.voice));
    for (const int i : step.saw_cuts)
      saw_cut(s, key + ".saw." + std::to_string(i), s.sheet().saw_cuts[static_cast<std::size_t>(i)]);
    space(ui, kGap);
  }
}

void saw_choice(Shown& s) {
  std::vector<std::string_view> names;
  int chosen = 0;
  for (const Saw& saw : s.frame.book.saws) {
    if (saw.name == saw_of(s.frame.book).name) chosen = static_cast<int>(names.size());
    names.push_back(shown_name(saw.name, s.voice.language));
  }
  if (names.size() < 2) return;
  const auto picked = choice(s.context.ui, "sheet.saws", s.context.say(Msg::kSheetSawUsed), names, chosen);
  if (picked) edit_book(s.context, [&](Book& book) { book.saw = book.saws[static_cast<std::size_t>(*picked)].name; });
}

void checks(Shown& s) {
  Ui& ui = s.context.ui;
  const CheckMeasures& check = s.sheet().check;
  heading(ui, "sheet.checks", s.context.say(Msg::kSheetChecks));
  for (std::size_t i = 0; i < 4; ++i)
    fact(ui, "sheet.arris." + std::to_string(i + 1), say(Msg::kSheetArris, s.voice.language, std::to_string(i + 1)),
         say_inches(check.arrises[i], s.voice));
  for (std::size_t i = 0; i < 2; ++i)
    fact(ui, "sheet.diagonals." + std::to_string(i + 1),
         say(Msg::kSheetDiagonals, s.voice.language, std::to_string(i + 1)),
         say_inches(check.rising[i], s.voice) + " · " + say_inches(check.falling[i], s.voice));
}

void joints(Shown& s) {
  Ui& ui = s.context.ui;
  heading(ui, "sheet.joints", s.context.say(Msg::kFrameJoints));
  const Frame& frame = *s.frame.frame();
  for (const int j : joints_of(frame, s.sheet().timber)) {
    const Joint& joint = frame.joints[static_cast<std::size_t>(j)];
    const int other = joint.member == s.sheet().timber ? joint.receiver : joint.member;
    if (list_row(ui, "sheet.joint." + std::to_string(j), contact_text(frame, joint, s.sheet().timber, s.voice.language),
                 joint_name(joint.kind, s.voice.language)))
      s.context.pages.push(frame_sheet_page(s.mark_of(other)));
  }
}

void facts(Shown& s) {
  Ui& ui = s.context.ui;
  const TimberFacts f = facts_of(s.timber);
  fact(ui, "sheet.weight", s.context.say(Msg::kSheetWeight), say_weight(f.weight_lb, s.voice));
  fact(ui, "sheet.stock", s.context.say(Msg::kSheetStock), say_length(f.stock, s.voice));
  fact(ui, "sheet.volume", s.context.say(Msg::kSheetVolume), say_wood(f.board_feet, s.voice));
  fact(ui, "sheet.balance", s.context.say(Msg::kSheetBalance), say_inches(f.cg.x, s.voice));
  if (s.sheet().hand != Hand::kNone)
    caution(ui, "sheet.hand",
            say(s.sheet().hand == Hand::kLeft ? Msg::kSheetLeft : Msg::kSheetRight, s.voice.language,
                s.marks_of(s.sheet().mirrored)));
  if (!s.sheet().alike.empty()) fact(ui, "sheet.alike", s.context.say(Msg::kSheetAlike), s.marks_of(s.sheet().alike));
}

void head(Shown& s) {
  Ui& ui = s.context.ui;
  heading(ui, "sheet.heading", s.timber.mark + " · " + std::string(kind_name(s.timber.kind, s.voice.language)));
  if (s.timber.overridden.any())
    caution(ui, "sheet.overridden",
            s.context.say(s.timber.overridden.added ? Msg::kSheetAdded : Msg::kSheetOverridden));
  answer(ui, "sheet.length", s.context.say(Msg::kSheetLength), say_inches(s.timber.length, s.voice),
         section_text(s.timber.wood.nominal, s.voice));
  int count = 0;
  for (const TimberWarning& warning : s.sheet().warnings)
    caution(ui, "sheet.warning." + std::to_string(count++), warning_text(warning, s.voice));
}

void sheet_screen(Context& context) {
  const std::string mark = context.subject;
  frame_page(context, "sheet.page", [&](const ShownFrame& shown) {
    if (!shown.frame()) return frame_refused(context, shown);
    const int timber = timber_by_mark(*shown.frame(), mark);
    if (timber < 0) return note(context.ui, "sheet.gone", say(Msg::kBookNoMark, context.ui.language, mark));
    FrameMemory::Shown& kept = context.frame_memory.sheet;
    solve_into(kept, shown, timber);
    Shown s{context, shown, shown.frame()->timbers[static_cast<std::size_t>(timber)], kept, voice_of(context)};
    head(s);
    drawings(s);
    steps(s);
    saw_choice(s);
    checks(s);
    facts(s);
    joints(s);
    if (const auto text = text_field(context.ui, "sheet.note", context.say(Msg::kSheetNote), note_of(shown.book, mark)))
      edit_book(context, [&](Book& book) { book = with_note(std::move(book), mark, *text); });
    timber_apart(context, shown, s.timber);
  });
}

}  // namespace

Page frame_sheet_page(std::string mark) { return {"frame.sheet", Msg::kFrameSheet, sheet_screen, std::move(mark)}; }

}  // namespace bentbook::screens
