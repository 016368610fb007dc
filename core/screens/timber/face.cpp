#include "screens/timber/face.h"

#include <algorithm>

#include "screens/timber/face_parts.h"
#include "screens/timber/sheet.h"
#include "ui/drawing/tape_canvas.h"
#include "words/face_words.h"

namespace bentbook::screens {
namespace {

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
  const float icon = 30;
  const Rect section{row.x + row.w - icon - 20, row.y + (height - icon) / 2 - 4, icon, icon};
  paint_section(ui, s.timber, s.marks.face, section);
  const Column whole = ui.column;
  ui.column.x = row.x + side + 12;
  ui.column.y = row.y;
  ui.column.width = section.x - 24 - ui.column.x;
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

/// Laid out anew only when the page, the timber or the words changed.
const FrameMemory::FacePages& pages_of(ShownFace& s, float room) {
  const Ui& ui = s.context.ui;
  FrameMemory::FacePages& kept = s.context.frame_memory.face_pages;
  const auto& lengths = s.voice.lengths;
  std::string key = s.timber.mark;
  for (const int n : {static_cast<int>(s.marks.face), static_cast<int>(ui.column.width), static_cast<int>(room),
                      s.context.kit.settings.text_percent, static_cast<int>(s.voice.language),
                      static_cast<int>(lengths.form), lengths.denominator, lengths.decimals})
    (key += '|') += std::to_string(n);
  if (kept.of == s.frame.solved && kept.key == key) return kept;
  kept.of = s.frame.solved;
  kept.key = std::move(key);
  kept.strip = face_strip(*s.frame.frame(), s.timber, s.marks, s.voice);
  draw::TapeOptions options;
  options.width = static_cast<double>(ui.column.width);
  options.room = static_cast<double>(room);
  options.side = std::clamp(options.width * 0.31, 76.0, 160.0);
  set_ticks(options, s.voice);
  kept.pages = draw::lay_out_tape(kept.strip, options, [&](std::string_view text, draw::TapeText size) {
    return tape_text_size(ui.fonts, text, size);
  });
  return kept;
}

void face_content(ShownFace& s, const Subject& subject, float room) {
  Ui& ui = s.context.ui;
  const float label = ui.fonts.strong->FontSize + 4;
  const FrameMemory::FacePages& laid = pages_of(s, room - head_height(ui) - label - 4 * kGrid);
  const auto part = std::min(static_cast<std::size_t>(std::max(0, subject.part)), laid.pages.size() - 1);
  head(s, part, laid.pages.size());
  const draw::TapePage& page = laid.pages[part];
  const Rect labels = take_box(ui, label);
  face_columns(ui, s.marks, page, labels, page_unit(s.voice));
  const Rect box = take_box(ui, static_cast<float>(page.height) + kGrid);
  picture(ui, "face.picture", say(Msg::kFacePicture, s.voice.language, face_number(s.marks.face)), box);
  paint_tape(pen(ui), ui.theme, ui.fonts, page, box);
  read_tape(ui, "face", laid.strip, page, box);
}

void turn_to(Context& context, const Page& page) {
  context.pages.pop();
  context.pages.push(page);
}

/// On with the face, to the next one, and at the end to the cuts; back the same way.
void face_foot(Context& context, const Subject& subject, std::size_t parts, const Rect& box) {
  Ui& ui = context.ui;
  foot_ground(ui, box);
  const float side = ui.theme.target;
  const Rect back{box.x + kMargin, box.y + kGap, side, side};
  const bool first = subject.face == 1 && subject.part == 0;
  if (icon_button(ui, "face.before", back, Icon::kBack, context.say(Msg::kFaceBefore), !first)) {
    if (subject.part > 0) return turn_to(context, frame_face_page(subject.mark, subject.face, subject.part - 1));
    return turn_to(context, frame_face_page(subject.mark, subject.face - 1));
  }
  const Rect on{back.x + side + kGap, back.y, box.w - 2 * kMargin - side - kGap, side};
  const bool more = static_cast<std::size_t>(subject.part) + 1 < parts;
  const std::string label = more               ? std::string(context.say(Msg::kFaceOn))
                            : subject.face < 4 ? say(Msg::kFaceRoll, ui.language, std::to_string(subject.face + 1))
                                               : std::string(context.say(Msg::kFaceWork));
  if (!button_in(ui, "face.on", on, label, Weight::kPrimary)) return;
  if (more) return turn_to(context, frame_face_page(subject.mark, subject.face, subject.part + 1));
  if (subject.face < 4) return turn_to(context, frame_face_page(subject.mark, subject.face + 1));
  context.pages.pop();
  to_the_cuts(context, subject.mark);
}

void face_screen(Context& context) {
  const Rect page = context.page;
  const Subject subject = subject_of(context.subject);
  const float height = context.ui.theme.target + 2 * kGap;
  context.page.h -= height;
  context.foot = height;
  std::size_t parts = 1;
  bool shown_face = false;
  frame_page(context, "face.page", [&](const ShownFrame& shown) {
    if (!shown.frame()) return frame_refused(context, shown);
    const int timber = timber_by_mark(*shown.frame(), subject.mark);
    if (timber < 0) return note(context.ui, "face.gone", say(Msg::kBookNoMark, context.ui.language, subject.mark));
    const FrameMemory::Shown& sheet = sheet_shown(context, shown, timber);
    ShownFace s{context, shown, shown.frame()->timbers[static_cast<std::size_t>(timber)],
                sheet.faces[static_cast<std::size_t>(subject.face - 1)], voice_of(context)};
    face_content(s, subject, context.page.h);
    parts = context.frame_memory.face_pages.pages.size();
    shown_face = true;
  });
  context.page = page;
  if (shown_face) face_foot(context, subject, parts, {page.x, page.y + page.h - height, page.w, height});
}

}  // namespace

Page frame_face_page(const std::string& mark, int face, int part) {
  return {"frame.face", Msg::kFacePage, face_screen, mark + '|' + std::to_string(face) + '|' + std::to_string(part)};
}

}  // namespace bentbook::screens
