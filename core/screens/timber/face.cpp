#include "screens/timber/face.h"

#include <algorithm>

#include "screens/form/foot.h"
#include "screens/timber/face_parts.h"
#include "screens/timber/sheet.h"
#include "screens/timber/tape_picture.h"
#include "words/face_words.h"

namespace bentbook::screens {
namespace {

constexpr float kWidest = 620;   // px: wider, the words stand too far from the numbers
constexpr int kLastPart = 1000;  // of a face, however many it has

struct Subject {
  std::string mark;
  int face = 1, part = 0;
};
Subject subject_of(const std::string& text) {
  const std::size_t bar = text.find('|'), second = text.find('|', bar + 1);
  return {text.substr(0, bar), std::stoi(text.substr(bar + 1)), std::stoi(text.substr(second + 1))};
}

struct ShownFace {
  Context& context;
  const ShownFrame& frame;
  const Timber& timber;
  const FaceMarks& marks;
  Voice voice;
};

float head_height(const Ui& ui) { return std::max(2 * kGrid + 48, 2 * ui.fonts.body->FontSize + kGrid); }

/// Which face is up, where to gauge from, and the section as it lies.
void head(ShownFace& s, std::size_t part, std::size_t parts) {
  Ui& ui = s.context.ui;
  const float height = head_height(ui);
  const Rect row = take_box(ui, height);
  const float side = 48;
  face_box(ui, {row.x, row.y, side, side}, s.marks.face, s.marks.reference);
  const float icon = 30, around = section_margin(ui);
  const Rect section{row.x + row.w - icon - around - 2, row.y + std::max(around - 4, (height - icon) / 2 - 4), icon,
                     icon};
  paint_section(ui, s.timber, s.marks.face, section);
  const Column whole = ui.column;
  ui.column.x = row.x + side + 12;
  ui.column.y = row.y;
  ui.column.width = section.x - around - 6 - ui.column.x;
  body(ui, "face.up", s.timber.mark + " · " + face_up_text(s.marks, s.voice.language));
  std::string gauge(s.context.say(gauge_from(s.marks)));
  if (parts > 1)
    gauge += " · " +
             say(Msg::kFacePart, s.voice.language, {{"n", std::to_string(part + 1)}, {"all", std::to_string(parts)}});
  note(ui, "face.gauge", gauge);
  const float foot = ui.column.y;
  ui.column = whole;
  ui.column.y = std::max(whole.y, foot);
}

/// As few parts as can be: a face that one page does not hold goes on beside it where the width allows.
void lay_out_parts(ShownFace& s, TapeMemory& kept, double room) {
  // Narrower, words have no room beside the piece.
  const float least = 300 * static_cast<float>(s.context.kit.settings.text_percent) / 100;
  Ui& ui = s.context.ui;
  const Column whole = ui.column;
  for (kept.beside = 1;; ++kept.beside) {
    ui.column.width = std::min(tape_column(whole.width, kept.beside), kWidest);
    lay_out(s.context, kept, std::clamp(static_cast<double>(ui.column.width) * 0.31, 76.0, 200.0), room);
    if (kept.pages.size() <= kept.beside || tape_column(whole.width, kept.beside + 1) < least) break;
  }
  ui.column = whole;
}

/// In the middle of a page that is wider than its tapes.
void narrow(Ui& ui, std::size_t tapes) {
  if (tapes > 1) return;
  const float spare = std::max(0.0F, ui.column.width - kWidest);
  ui.column.x += spare / 2;
  ui.column.width -= spare;
}

/// Laid out anew only when the page, the timber or the words changed. Which of its parts is shown.
std::size_t face_content(ShownFace& s, const Subject& subject, float room) {
  Ui& ui = s.context.ui;
  TapeMemory& kept = s.context.frame_memory.face;
  const float left = room - head_height(ui) - tape_head_height(ui) - 4 * kGrid;
  std::string key = tape_key(
      s.context, s.timber.mark + '|' + face_number(s.marks.face) + '|' + std::to_string(static_cast<int>(left)));
  if (kept.of != s.frame.solved || kept.key != key) {
    kept = {s.frame.solved, std::move(key), s.marks, face_strip(*s.frame.frame(), s.timber, s.marks, s.voice), {}, 1};
    lay_out_parts(s, kept, static_cast<double>(left));
  }
  const auto part = std::min(static_cast<std::size_t>(std::max(0, subject.part)), kept.parts() - 1);
  narrow(ui, kept.beside);
  head(s, part, kept.parts());
  show_part(s.context, "face", kept, part);
  return part;
}

/// On with the face, to the next one, and at the end to the cuts; back the same way.
void face_foot(Context& context, const Subject& subject, const Rect& box) {
  Ui& ui = context.ui;
  foot_ground(ui, box);
  const float side = ui.theme.target;
  const Rect back{box.x + kMargin, box.y + kGap, side, side};
  const bool first = subject.face == 1 && subject.part == 0;
  if (icon_button(ui, "face.before", back, Icon::kBefore, context.say(Msg::kFaceBefore), !first)) {
    if (subject.part > 0) return context.pages.turn_to(frame_face_page(subject.mark, subject.face, subject.part - 1));
    return context.pages.turn_to(frame_face_page(subject.mark, subject.face - 1, kLastPart));
  }
  const Rect on{back.x + side + kGap, back.y, box.w - 2 * kMargin - side - kGap, side};
  const bool more = static_cast<std::size_t>(subject.part) + 1 < context.frame_memory.face.parts();
  const std::string label = more               ? std::string(context.say(Msg::kFaceOn))
                            : subject.face < 4 ? say(Msg::kFaceRoll, ui.language, std::to_string(subject.face + 1))
                                               : std::string(context.say(Msg::kFaceWork));
  if (!button_in(ui, "face.on", on, label, Weight::kPrimary)) return;
  if (more) return context.pages.turn_to(frame_face_page(subject.mark, subject.face, subject.part + 1));
  if (subject.face < 4) return context.pages.turn_to(frame_face_page(subject.mark, subject.face + 1));
  context.pages.pop();
  to_the_cuts(context, subject.mark);
}

void face_screen(Context& context) {
  Subject subject = subject_of(context.subject);
  bool there = false;
  const Rect strip = above_foot(context, keys_height(context.ui), [&] {
    frame_page(context, "face.page", [&](const ShownFrame& shown) {
      if (!shown.frame()) return frame_refused(context, shown);
      const int timber = timber_by_mark(*shown.frame(), subject.mark);
      if (timber < 0) return note(context.ui, "face.gone", say(Msg::kBookNoMark, context.ui.language, subject.mark));
      const FrameMemory::Shown& sheet = sheet_shown(context, shown, timber);
      ShownFace s{context, shown, shown.frame()->timbers[static_cast<std::size_t>(timber)],
                  sheet.faces[static_cast<std::size_t>(subject.face - 1)], voice_of(context)};
      subject.part = static_cast<int>(face_content(s, subject, context.page.h));
      there = true;
    });
  });
  if (there) face_foot(context, subject, strip);
}

}  // namespace

Page frame_face_page(const std::string& mark, int face, int part) {
  return {"frame.face", Msg::kFacePage, face_screen, mark + '|' + std::to_string(face) + '|' + std::to_string(part)};
}

}  // namespace bentbook::screens
