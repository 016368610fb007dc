#include "screens/frame/face.h"

#include <algorithm>

#include "screens/frame/sheet.h"
#include "ui/drawing/line_pen.h"
#include "ui/drawing/tape_canvas.h"
#include "ui/measure_text.h"
#include "words/face_words.h"
#include "words/frame_words.h"

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

struct Shown {
  Context& context;
  const ShownFrame& frame;
  const Timber& timber;
  const FaceMarks& marks;
  Voice voice;
};

std::string face_number(Face face) { return std::to_string(static_cast<int>(face)); }

float head_height(const Ui& ui) { return std::max(2 * kGrid + 48, 2 * ui.fonts.body->FontSize + kGrid); }

/// Which face is up, where to gauge from, and the section as it lies.
void head(Shown& s, std::size_t part, std::size_t parts) {
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
  const std::string up = s.marks.reference ? std::string(s.context.say(Msg::kFaceReferenceUp))
                                           : say(Msg::kFaceUp, s.voice.language, face_number(s.marks.face));
  body(ui, "face.up", s.timber.mark + " · " + up);
  std::string gauge(s.context.say(s.marks.gauge_left ? Msg::kFaceGaugeLeft : Msg::kFaceGaugeRight));
  if (parts > 1)
    gauge += " · " +
             say(Msg::kFacePart, s.voice.language, {{"n", std::to_string(part + 1)}, {"all", std::to_string(parts)}});
  note(ui, "face.gauge", gauge);
  const float foot = ui.column.y;
  ui.column = whole;
  ui.column.y = std::max(whole.y, foot);
}

draw::Size measured(const Ui& ui, std::string_view text, draw::TapeText size) {
  return tape_text_size(ui.fonts, text, size);
}

/// Laid out anew only when the page, the timber or the words changed.
const FrameMemory::FacePages& pages_of(Shown& s, float room) {
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
  kept.pages = draw::lay_out_tape(kept.strip, options,
                                  [&](std::string_view text, draw::TapeText size) { return measured(ui, text, size); });
  return kept;
}

void small_text(Ui& ui, ImFont& font, float x, float y, std::string_view text) {
  draw_text(pen(ui), font, {x, y}, ui.theme.ink, text);
}

/// Over the drawing: which faces lie left and right (the reference one heavy), and from where the tape runs.
void columns_head(Shown& s, const draw::TapePage& page, const Rect& box) {
  Ui& ui = s.context.ui;
  ImFont& quiet = *ui.fonts.note;
  ImFont& heavy = *ui.fonts.strong;
  const std::string left = face_number(s.marks.left), right = face_number(s.marks.right);
  const auto width = [](ImFont& font, std::string_view text) { return text_size(font, text).x; };
  ImFont& of_left = s.marks.gauge_left ? heavy : quiet;
  ImFont& of_right = s.marks.gauge_left ? quiet : heavy;
  const float x = box.x + static_cast<float>(page.left), to = box.x + static_cast<float>(page.right);
  small_text(ui, of_left, x + 2, box.y, left);
  small_text(ui, of_right, to - 2 - width(of_right, right), box.y, right);
  const std::string_view end = s.context.say(page.starts ? Msg::kFaceEndA : Msg::kFaceToA);
  if (const float wide = width(quiet, end); wide < static_cast<float>(page.left) - 12)
    small_text(ui, quiet, x - 16 - wide, box.y, end);
  const std::string_view from = s.context.say(Msg::kFaceFromA);
  small_text(ui, quiet, std::min(box.x + static_cast<float>(page.numbers), box.x + box.w - width(quiet, from)), box.y,
             from);
}

/// Every number and every word of the page, for who cannot see it.
void read_page(Shown& s, const FrameMemory::FacePages& laid, const draw::TapePage& page, const Rect& box) {
  Ui& ui = s.context.ui;
  const auto rect_of = [&](const draw::TapePlaced& t) {
    return Rect{box.x + static_cast<float>(t.at.x), box.y + static_cast<float>(t.at.y), static_cast<float>(t.extent.w),
                static_cast<float>(t.extent.h)};
  };
  int last = -1;
  for (const draw::TapePlaced& t : page.texts) {
    if (t.row >= 0 && t.row != last) {
      const draw::TapeRow& row = laid.strip.rows[static_cast<std::size_t>(t.row)];
      std::string name(s.context.say(Msg::kFaceNumber));
      if (!row.tag.empty()) name += ", " + row.tag;
      figure_read(ui, "face.row." + std::to_string(t.row), name, row.number, rect_of(t));
    }
    if (t.block >= 0 && t.row < 0 && t.block != last) {
      std::string said;
      for (const draw::TapeLine& line : laid.strip.blocks[static_cast<std::size_t>(t.block)].lines)
        for (const std::string& part : line.parts) (said += said.empty() ? "" : " ") += part;
      figure_read(ui, "face.block." + std::to_string(t.block), said, "", rect_of(t));
    }
    last = t.row >= 0 ? t.row : t.block;
  }
}

void face_content(Shown& s, const Subject& subject, float room) {
  Ui& ui = s.context.ui;
  const float label = ui.fonts.strong->FontSize + 4;
  const FrameMemory::FacePages& laid = pages_of(s, room - head_height(ui) - label - 4 * kGrid);
  const auto part = std::min(static_cast<std::size_t>(std::max(0, subject.part)), laid.pages.size() - 1);
  head(s, part, laid.pages.size());
  const draw::TapePage& page = laid.pages[part];
  const Rect labels = take_box(ui, label);
  columns_head(s, page, labels);
  const Rect box = take_box(ui, static_cast<float>(page.height) + kGrid);
  picture(ui, "face.picture", say(Msg::kFacePicture, s.voice.language, face_number(s.marks.face)), box);
  paint_tape(pen(ui), ui.theme, ui.fonts, page, box);
  read_page(s, laid, page, box);
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
    Shown s{context, shown, shown.frame()->timbers[static_cast<std::size_t>(timber)],
            sheet.faces[static_cast<std::size_t>(subject.face - 1)], voice_of(context)};
    face_content(s, subject, context.page.h);
    parts = context.frame_memory.face_pages.pages.size();
    shown_face = true;
  });
  context.page = page;
  if (shown_face) face_foot(context, subject, parts, {page.x, page.y + page.h - height, page.w, height});
}

}  // namespace

void face_box(Ui& ui, const Rect& box, Face face, bool reference) {
  ImDrawList& list = pen(ui);
  const ImVec2 low{box.x, box.y}, high{box.x + box.w, box.y + box.h};
  if (reference)
    list.AddRectFilled(low, high, ui.theme.ink);
  else
    list.AddRect(low, high, ui.theme.ink, 0, 0, 2);
  ImFont& font = box.h >= ui.fonts.answer->FontSize - 6 ? *ui.fonts.answer : *ui.fonts.strong;
  const std::string number = face_number(face);
  const ImVec2 size = text_size(font, number);
  draw_text(list, font, {box.x + (box.w - size.x) / 2, box.y + (box.h - size.y) / 2},
            reference ? ui.theme.ground : ui.theme.ink, number);
}

void paint_face_strip(Ui& ui, const FaceMarks& marks, const Rect& box) {
  ImDrawList& list = pen(ui);
  crisp(list);
  LinePen line(list, ui.theme, box);
  const double along = static_cast<double>(box.w) / marks.length, across = static_cast<double>(box.h) / marks.width;
  const auto at = [&](Vec2 p) { return draw::Point{p.x * along, static_cast<double>(box.h) - p.y * across}; };
  const auto fill = [&](const std::vector<Vec2>& points, draw::Fill with) {
    std::vector<draw::Point> px;
    px.reserve(points.size());
    for (const Vec2& p : points) px.push_back(at(p));
    draw::Polygon polygon;
    polygon.fill = with;
    polygon.outlined = false;
    line.polygon(px, polygon);
  };
  for (const FaceLanding& l : marks.landings)
    fill({l.low, {l.high.x, l.low.y}, l.high, {l.low.x, l.high.y}}, draw::Fill::kShade);
  for (const FaceMark& mark : marks.marks) {
    for (const auto& waste : mark.waste) fill(waste, draw::Fill::kSection);
    for (const FaceLine& l : mark.lines) list.AddLine(line.at(at(l.a)), line.at(at(l.b)), ui.theme.cut, 2);
    for (const FaceHole& hole : mark.holes) list.AddCircleFilled(line.at(at(hole.centre)), 2.5F, ui.theme.ink, 12);
  }
  list.AddRect({box.x, box.y}, {box.x + box.w, box.y + box.h}, ui.theme.ink, 0, 0, 2);
  const float edge = marks.gauge_left ? box.y + box.h + 1 : box.y - 5;
  list.AddRectFilled({box.x, edge}, {box.x + box.w, edge + 4}, ui.theme.ink);
}

void paint_section(Ui& ui, const Timber& timber, Face up, const Rect& box) {
  ImDrawList& list = pen(ui);
  const Face left = rolled(up), under = rolled(left), right = rolled(under);
  const struct {
    Face face;
    float x, y;
  } sides[] = {{up, 0, -1}, {left, -1, 0}, {under, 0, 1}, {right, 1, 0}};
  const float r = box.w / 2, cx = box.x + r, cy = box.y + r;
  float x = 0, y = 0;
  ImFont& font = *ui.fonts.note;
  for (const auto& side : sides) {
    const bool reference = is_reference(timber.wood, side.face);
    if (reference) x += side.x, y += side.y;
    const std::string number = face_number(side.face);
    const ImVec2 size = text_size(font, number);
    draw_text(list, font, {cx + side.x * (r + 9) - size.x / 2, cy + side.y * (r + 9) - size.y / 2}, ui.theme.ink,
              number);
  }
  list.AddRect({box.x, box.y}, {box.x + box.w, box.y + box.w}, ui.theme.ink, 0, 0, 2);
  list.AddTriangleFilled({cx + x * r, cy + y * r}, {cx, cy + y * r}, {cx + x * r, cy}, ui.theme.ink);
}

Page frame_face_page(const std::string& mark, int face, int part) {
  return {"frame.face", Msg::kFacePage, face_screen, mark + '|' + std::to_string(face) + '|' + std::to_string(part)};
}

}  // namespace bentbook::screens
