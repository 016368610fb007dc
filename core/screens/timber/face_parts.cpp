#include "screens/timber/face_parts.h"

#include <algorithm>
#include <set>

#include "frame/sheet/rough.h"
#include "ui/drawing/line_pen.h"
#include "ui/measure_text.h"

namespace bentbook::screens {

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

float section_margin(const Ui& ui) { return std::max(18.0F, ui.fonts.note->FontSize * 0.9F); }

void paint_section(Ui& ui, const Timber& timber, Face up, const Rect& box) {
  ImDrawList& list = pen(ui);
  const Face left = rolled(up), under = rolled(left), right = rolled(under);
  const struct {
    Face face;
    float x, y;
  } sides[] = {{up, 0, -1}, {left, -1, 0}, {under, 0, 1}, {right, 1, 0}};
  const Vec2 size_in = section_within(timber.sides, up, static_cast<double>(box.w));
  const float wide = static_cast<float>(size_in.x) / 2, high = static_cast<float>(size_in.y) / 2;
  const float cx = box.x + box.w / 2, cy = box.y + box.w / 2;
  float x = 0, y = 0;
  ImFont& font = *ui.fonts.note;
  const float out = section_margin(ui) / 2;
  for (const auto& side : sides) {
    const bool reference = is_reference(timber.wood, side.face);
    if (reference) x += side.x, y += side.y;
    const std::string number = face_number(side.face);
    const ImVec2 size = text_size(font, number);
    draw_text(list, font, {cx + side.x * (wide + out) - size.x / 2, cy + side.y * (high + out) - size.y / 2},
              ui.theme.ink, number);
  }
  list.AddRect({cx - wide, cy - high}, {cx + wide, cy + high}, ui.theme.ink, 0, 0, 2);
  const float leg = std::min(wide, high);  // of the black corner, alike along both faces
  const ImVec2 corner{cx + x * wide, cy + y * high};
  list.AddTriangleFilled(corner, {corner.x - x * leg, corner.y}, {corner.x, corner.y - y * leg}, ui.theme.ink);
}

void face_columns(Ui& ui, const FaceMarks& marks, const draw::TapePage& page, const Rect& box, std::string_view unit) {
  ImFont& quiet = *ui.fonts.note;
  ImFont& heavy = *ui.fonts.strong;
  const auto width = [](ImFont& font, std::string_view text) { return text_size(font, text).x; };
  const auto write = [&](ImFont& font, float x, std::string_view text) {
    draw_text(pen(ui), font, {x, box.y}, ui.theme.ink, text);
  };
  ImFont& of_left = marks.gauge_left ? heavy : quiet;
  ImFont& of_right = marks.gauge_left ? quiet : heavy;
  const float x = box.x + static_cast<float>(page.left), to = box.x + static_cast<float>(page.right);
  const std::string right = face_number(marks.right);
  write(of_left, x + 2, face_number(marks.left));
  write(of_right, to - 2 - width(of_right, right), right);
  const std::string_view end = ui.say(page.starts ? Msg::kFaceEndA : Msg::kFaceToA);
  if (const float wide = width(quiet, end); wide < static_cast<float>(page.left) - 12)
    write(quiet, x - 16 - wide, end);
  else if (page.starts)
    write(heavy, x - 16 - width(heavy, "A"), "A");  // in large type
  std::string from(ui.say(Msg::kFaceFromA));
  if (!unit.empty()) (from += ", ") += unit;
  // In large type there may be no room for it beside the right face's number.
  const float at = std::min(box.x + static_cast<float>(page.numbers), box.x + box.w - width(quiet, from));
  if (at > to + 4) write(quiet, at, from);
}

void read_tape(Ui& ui, const std::string& prefix, const draw::TapeStrip& strip, const draw::TapePage& page,
               const Rect& box) {
  const auto rect_of = [&](const draw::TapePlaced& t) {
    return Rect{box.x + static_cast<float>(t.at.x), box.y + static_cast<float>(t.at.y), static_cast<float>(t.extent.w),
                static_cast<float>(t.extent.h)};
  };
  int row = -1;
  std::set<int> blocks;
  for (const draw::TapePlaced& t : page.texts) {
    if (t.row >= 0 && t.row != row) {
      row = t.row;
      const draw::TapeRow& at = strip.rows[static_cast<std::size_t>(row)];
      std::string name(ui.say(Msg::kFaceNumber));
      if (!at.tag.empty()) name += ", " + at.tag;
      figure_read(ui, prefix + ".row." + std::to_string(row), name, at.number, rect_of(t));
    }
    // In large type a block's letter stands beside the piece and its words stand below.
    if (t.block < 0 || !blocks.insert(t.block).second) continue;
    const std::string key = prefix + ".block." + std::to_string(t.block);
    std::string said;
    for (const draw::TapeLine& line : strip.blocks[static_cast<std::size_t>(t.block)].lines)
      for (const std::string& part : line.parts) (said += said.empty() ? "" : " ") += part;
    figure_read(ui, key, said, "", rect_of(t));
  }
}

}  // namespace bentbook::screens
