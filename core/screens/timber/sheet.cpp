#include "screens/timber/sheet.h"

#include <algorithm>
#include <charconv>
#include <string>

#include "book/book_edit.h"
#include "frame/facts.h"
#include "screens/form/foot.h"
#include "screens/frame/form.h"
#include "screens/printing/printing.h"
#include "screens/settings/saws.h"
#include "screens/shop/card.h"
#include "screens/timber/apart.h"
#include "screens/timber/face.h"
#include "screens/timber/face_parts.h"
#include "ui/measure_text.h"
#include "words/face_words.h"
#include "words/frame_text.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

struct Shown {
  Context& context;
  const ShownFrame& frame;
  const Timber& timber;
  const FrameMemory::Shown& kept;
  Voice voice;
  [[nodiscard]] const Sheet& sheet() const { return *kept.sheet; }
  [[nodiscard]] std::string mark_of(int i) const { return frame.frame()->timbers[static_cast<std::size_t>(i)].mark; }
  [[nodiscard]] std::string marks_of(const std::vector<int>& timbers) const {
    std::string out;
    for (const int i : timbers) out += (out.empty() ? "" : ", ") + mark_of(i);
    return out;
  }
};

/// Faces in small, as the timber is rolled on its horses; a press leads to the face's page.
void faces(Shown& s) {
  Ui& ui = s.context.ui;
  const float strip = s.context.page.h > 560 ? 44 : 28;
  const float words = ui.fonts.note->FontSize;
  for (const FaceMarks& marks : s.kept.faces) {
    const std::string number = std::to_string(static_cast<int>(marks.face));
    const std::string said = face_summary(s.timber, marks, s.voice.language);
    const float box = 32;
    const float wide = ui.column.width - box - 9;
    const auto lines = static_cast<float>(wrap_text(*ui.fonts.note, said, wide).size());
    const Rect row = take_box(ui, std::max(ui.theme.target, strip + 10 + lines * words));
    face_box(ui, {row.x, row.y + 5 + (strip - box) / 2, box, box}, marks.face, marks.reference);
    const Rect drawn{row.x + box + 8, row.y + 5, wide, strip};
    paint_face_strip(ui, marks, drawn);
    draw_wrapped(pen(ui), *ui.fonts.note, {drawn.x, drawn.y + strip + 5}, ui.theme.ink, said, wide);
    if (figure(ui, "sheet.face." + number, say(Msg::kFaceMark, s.voice.language, number), said, row))
      s.context.pages.push(frame_face_page(s.timber.mark, static_cast<int>(marks.face)));
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
  heading(ui, "sheet.checks", s.context.say(Msg::kSheetChecks));
  int row = 0;
  for (const auto& [what, length] : tape_check_texts(s.sheet().check, s.voice))
    fact(ui, "sheet.check." + std::to_string(++row), what, length);
}

void joints(Shown& s) {
  Ui& ui = s.context.ui;
  heading(ui, "sheet.joints", s.context.say(Msg::kFrameJoints));
  const Frame& frame = *s.frame.frame();
  for (const int j : joints_of(frame, s.sheet().timber)) {
    const Joint& joint = frame.joints[static_cast<std::size_t>(j)];
    const int other = other_timber(joint, s.sheet().timber);
    if (list_row(ui, "sheet.joint." + std::to_string(j), contact_text(frame, joint, s.sheet().timber, s.voice.language),
                 joint_name(joint.kind, s.voice.language)))
      s.context.pages.push(frame_sheet_page(s.mark_of(other)));
  }
}

void on_paper(Shown& s) {
  if (list_row(s.context.ui, "sheet.paper", s.context.say(Msg::kPrintTitle), s.context.say(Msg::kPrintTimberNote)))
    s.context.pages.push(printing_page(s.timber.mark));
}

void facts(Shown& s) {
  Ui& ui = s.context.ui;
  const TimberFacts f = facts_of(s.timber, stock_step(s.voice));
  fact(ui, "sheet.weight", s.context.say(Msg::kSheetWeight), say_weight(f.weight_lb, s.voice));
  fact(ui, "sheet.stock", s.context.say(Msg::kSheetStock), say_length(f.stock, s.voice));
  fact(ui, "sheet.volume", s.context.say(Msg::kSheetVolume), say_wood(f.board_feet, s.voice));
  fact(ui, "sheet.balance", s.context.say(Msg::kSheetBalance), say_inches(f.cg.x, s.voice));
}

/// A few by their marks, many by how many there are.
std::string alike_in_short(const Shown& s) {
  constexpr std::size_t kNamed = 4;
  std::vector<int> alike = s.sheet().alike;
  if (alike.size() <= kNamed + 1) return s.marks_of(alike);
  const std::string more = std::to_string(alike.size() - kNamed);
  alike.resize(kNamed);
  return say(Msg::kMarksAndMore, s.voice.language, {{"marks", s.marks_of(alike)}, {"n", more}});
}

void head(Shown& s) {
  Ui& ui = s.context.ui;
  heading(ui, "sheet.heading", s.timber.mark + " · " + std::string(kind_name(s.timber.kind, s.voice.language)));
  if (s.timber.overridden.any())
    note(ui, "sheet.overridden", s.context.say(s.timber.overridden.added ? Msg::kSheetAdded : Msg::kSheetOverridden));
  const float top = ui.column.y;
  answer(ui, "sheet.length", s.context.say(Msg::kSheetLength), say_inches(s.timber.length, s.voice),
         section_text(s.timber.wood.nominal, s.voice));
  const float icon = 36, around = section_margin(ui), left = ui.column.x + ui.column.width - icon - around - 4;
  const float wide = text_size(*ui.fonts.answer, say_inches(s.timber.length, s.voice)).x;
  if (ui.column.x + wide + around + 6 < left)
    paint_section(ui, s.timber, Face::kTop, {left, top + around + 8, icon, icon});
  if (s.sheet().hand != Hand::kNone)
    body(ui, "sheet.hand",
         say(s.sheet().hand == Hand::kLeft ? Msg::kSheetLeft : Msg::kSheetRight, s.voice.language,
             s.marks_of(s.sheet().mirrored)));
  if (!s.sheet().alike.empty()) fact(ui, "sheet.alike", s.context.say(Msg::kSheetAlike), alike_in_short(s));
}

void warnings(Shown& s) {
  int count = 0;
  for (const TimberWarning& warning : s.sheet().warnings)
    caution(s.context.ui, "sheet.warning." + std::to_string(count++), warning_text(warning, s.voice));
}

void sheet_content(Shown& s) {
  head(s);
  faces(s);
  warnings(s);
  checks(s);
  saw_choice(s);
  facts(s);
  joints(s);
  on_paper(s);
  const std::string& mark = s.timber.mark;
  if (const auto text =
          text_field(s.context.ui, "sheet.note", s.context.say(Msg::kSheetNote), note_of(s.frame.book, mark)))
    edit_book(s.context, [&](Book& book) { book = with_note(std::move(book), mark, *text); });
  timber_apart(s.context, s.frame, s.timber);
}

void sheet_foot(Context& context, const std::string& mark, const Rect& box) {
  Ui& ui = context.ui;
  foot_ground(ui, box);
  const float side = (box.w - 2 * kMargin - kGap) / 2;
  const Rect left{box.x + kMargin, box.y + kGap, side, ui.theme.target};
  const Rect right{left.x + side + kGap, left.y, side, left.h};
  if (button_in(ui, "sheet.mark", left, say(Msg::kFaceMark, ui.language, "1"), Weight::kPrimary))
    context.pages.push(frame_face_page(mark, 1));
  if (button_in(ui, "sheet.cuts", right, context.say(Msg::kFaceWork))) to_the_cuts(context, mark);
}

void sheet_screen(Context& context) {
  const std::string mark = context.subject;
  bool there = false;
  const Rect strip = above_foot(context, keys_height(context.ui), [&] {
    frame_page(context, "sheet.page", [&](const ShownFrame& shown) {
      if (!shown.frame()) return frame_refused(context, shown);
      const int timber = timber_by_mark(*shown.frame(), mark);
      if (timber < 0) return note(context.ui, "sheet.gone", say(Msg::kBookNoMark, context.ui.language, mark));
      there = !context.keypad.is_open();
      Shown s{context, shown, shown.frame()->timbers[static_cast<std::size_t>(timber)],
              sheet_shown(context, shown, timber), voice_of(context)};
      sheet_content(s);
    });
  });
  if (there) sheet_foot(context, mark, strip);
}

}  // namespace

const FrameMemory::Shown& sheet_shown(Context& context, const ShownFrame& shown, int timber) {
  FrameMemory::Shown& kept = context.frame_memory.sheet;
  const Timber& own = shown.frame()->timbers[static_cast<std::size_t>(timber)];
  const Saw& saw = saw_of(shown.book);
  if (kept.of == shown.solved && kept.mark == own.mark && kept.saw == saw.name && kept.sheet) return kept;
  kept = {shown.solved, own.mark, saw.name, solve_sheet(*shown.frame(), timber, saw), {}};
  for (const Face face : kFaces) kept.faces.push_back(face_marks(own, *kept.sheet, face));
  return kept;
}

void to_the_cuts(Context& context, const std::string& mark) { context.pages.push(shop_card_page(mark, {})); }

Page frame_sheet_page(std::string mark) { return {"frame.sheet", Msg::kFrameSheet, sheet_screen, std::move(mark)}; }

}  // namespace bentbook::screens
