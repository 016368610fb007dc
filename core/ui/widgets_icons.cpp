#include <algorithm>
#include <initializer_list>
#include <string>

#include "ui/widgets_inside.h"

namespace bentbook::screens {
namespace {

/// Draws on a square of 24 units fitted into the box.
struct Sheet {
  ImDrawList& list;
  ImVec2 origin;
  float unit;
  ImU32 colour;
  float stroke;

  ImVec2 at(float x, float y) const { return {origin.x + x * unit, origin.y + y * unit}; }
  void line(std::initializer_list<ImVec2> points, bool closed = false) const {
    for (const ImVec2& p : points) list.PathLineTo(at(p.x, p.y));
    list.PathStroke(colour, closed ? ImDrawFlags_Closed : ImDrawFlags_None, stroke);
  }
  void arc(float x, float y, float r, float from, float to) const {
    list.PathArcTo(at(x, y), r * unit, from, to, 24);
    list.PathStroke(colour, ImDrawFlags_None, stroke);
  }
};

void draw_place_icon(const Sheet& s, Icon icon) {
  switch (icon) {
    case Icon::kAngles:
      s.line({{3, 19}, {21, 19}, {21, 6}}, true);
      s.arc(3, 19, 8, -0.62F, 0);
      return;
    case Icon::kRafter:
      s.line({{2, 18}, {12, 5}, {22, 18}});
      s.line({{5, 20}, {5, 14}});
      s.line({{19, 20}, {19, 14}});
      s.line({{5, 20}, {19, 20}});
      return;
    case Icon::kFrame:
      s.line({{4, 21}, {4, 10}, {12, 3}, {20, 10}, {20, 21}});
      s.line({{4, 12}, {20, 12}});
      s.line({{4, 17}, {9, 12}});
      s.line({{20, 17}, {15, 12}});
      return;
    case Icon::kShop:
      s.line({{2, 9}, {22, 9}, {22, 14}, {2, 14}}, true);
      s.line({{6, 14}, {4, 21}});
      s.line({{18, 14}, {20, 21}});
      s.line({{10, 9}, {10, 14}});
      return;
    default:  // kRaising
      s.line({{3, 21}, {21, 21}});
      s.line({{4, 20}, {12, 6}, {20, 20}});
      s.line({{12, 6}, {12, 2}});
      s.line({{8, 13}, {16, 13}});
      return;
  }
}

void draw_mark_icon(const Sheet& s, Icon icon) {
  switch (icon) {
    case Icon::kShare:
      s.line({{12, 15}, {12, 3}});
      s.line({{8, 7}, {12, 3}, {16, 7}});
      s.line({{8, 11}, {5, 11}, {5, 21}, {19, 21}, {19, 11}, {16, 11}});
      return;
    case Icon::kPen:
      s.line({{4, 20}, {5, 15}, {16, 4}, {20, 8}, {9, 19}}, true);
      return;
    case Icon::kBin:
      s.line({{4, 6}, {20, 6}});
      s.line({{6, 6}, {7, 21}, {17, 21}, {18, 6}});
      s.line({{9, 6}, {9, 3}, {15, 3}, {15, 6}});
      return;
    case Icon::kLock:
      s.line({{5, 11}, {19, 11}, {19, 21}, {5, 21}}, true);
      s.line({{8, 11}, {8, 7}});
      s.line({{16, 11}, {16, 7}});
      s.arc(12, 7, 4, 3.14159265F, 6.2831853F);
      s.line({{12, 14}, {12, 18}});
      return;
    case Icon::kFind:
      s.arc(10, 10, 6.5F, 0, 6.2831853F);
      s.line({{15, 15}, {21, 21}});
      return;
    case Icon::kMenu:
      s.line({{4, 9}, {12, 16}, {20, 9}});
      return;
    case Icon::kErase:
      s.line({{8, 5}, {21, 5}, {21, 19}, {8, 19}, {2, 12}}, true);
      s.line({{11, 9}, {17, 15}});
      s.line({{17, 9}, {11, 15}});
      return;
    case Icon::kMove:
      s.line({{12, 3}, {12, 21}});
      s.line({{7, 8}, {12, 3}, {17, 8}});
      s.line({{7, 16}, {12, 21}, {17, 16}});
      return;
    case Icon::kTick:
      s.line({{4, 13}, {10, 19}, {20, 6}});
      return;
    default:
      return draw_place_icon(s, icon);
  }
}

}  // namespace

void draw_icon(ImDrawList& list, Icon icon, const Rect& box, ImU32 colour, float stroke) {
  const float side = box.w < box.h ? box.w : box.h;
  const Sheet s{list, {box.x + (box.w - side) / 2, box.y + (box.h - side) / 2}, side / 24, colour, stroke};
  switch (icon) {
    case Icon::kBack:
      return s.line({{15, 4}, {7, 12}, {15, 20}});
    case Icon::kForward:
      return s.line({{9, 4}, {17, 12}, {9, 20}});
    case Icon::kBefore:
      s.line({{21, 12}, {4, 12}});
      return s.line({{11, 5}, {4, 12}, {11, 19}});
    case Icon::kAfter:
      s.line({{3, 12}, {20, 12}});
      return s.line({{13, 5}, {20, 12}, {13, 19}});
    case Icon::kTurnLeft:
      s.arc(12, 13, 8, -1.5707963F, 3.1415927F);
      return s.line({{16, 1}, {11, 5}, {16, 9}});
    case Icon::kTurnRight:
      s.arc(12, 13, 8, 0, 4.7123890F);
      return s.line({{8, 1}, {13, 5}, {8, 9}});
    case Icon::kClose:
      s.line({{5, 5}, {19, 19}});
      return s.line({{19, 5}, {5, 19}});
    case Icon::kPlus:
      s.line({{12, 4}, {12, 20}});
      return s.line({{4, 12}, {20, 12}});
    case Icon::kMinus:
      return s.line({{4, 12}, {20, 12}});
    case Icon::kTimes:
      s.line({{6, 6}, {18, 18}});
      return s.line({{18, 6}, {6, 18}});
    case Icon::kDivide:
      s.line({{4, 12}, {20, 12}});
      list.AddCircleFilled(s.at(12, 6), 1.7F * s.unit, colour, 12);
      return list.AddCircleFilled(s.at(12, 18), 1.7F * s.unit, colour, 12);
    case Icon::kUndo:
      s.line({{8, 4}, {3, 9}, {8, 14}});
      s.line({{3, 9}, {14, 9}});
      return s.arc(14, 14.5F, 5.5F, -1.5707963F, 1.5707963F);
    case Icon::kRedo:
      s.line({{16, 4}, {21, 9}, {16, 14}});
      s.line({{21, 9}, {10, 9}});
      return s.arc(10, 14.5F, 5.5F, 1.5707963F, 4.7123890F);
    default:
      return draw_mark_icon(s, icon);
  }
}

void draw_triangle_sign(ImDrawList& list, const Rect& box, ImU32 colour) {
  const float side = box.w < box.h ? box.w : box.h;
  const Sheet s{list, {box.x, box.y}, side / 24, colour, 2};
  s.line({{12, 3}, {22, 21}, {2, 21}}, true);
  s.line({{12, 9}, {12, 15}});
  list.AddCircleFilled(s.at(12, 18), 1.4F * s.unit, colour, 12);
}

void draw_focus(Ui& ui, const Look& look, const Rect& box) {
  if (!look.focused) return;
  const Rect ring = shrunk(box, 1.5F);
  pen(ui).AddRect(top_left(ring), bottom_right(ring), ui.theme.edit, 0, ImDrawFlags_None, 3);
}

void draw_dotted_line(ImDrawList& list, ImVec2 from, float width, ImU32 colour) {
  for (float x = 0; x + 2 <= width; x += 4)
    list.AddRectFilled({from.x + x, from.y}, {from.x + x + 2, from.y + 2}, colour);
}

namespace {

/// Of the font's size, at which the text's lines have room in the box.
float share_with_room(ImFont& font, const Rect& box, std::string_view text) {
  constexpr float kLeast = 0.6F;
  for (const float share : {1.0F, 0.85F, 0.7F}) {
    const auto lines = wrap_text(font, text, box.w / share);
    // Letters are lower than their line.
    const float height = font.FontSize * (static_cast<float>(lines.size()) - 0.2F) * share;
    if (height <= box.h && std::all_of(lines.begin(), lines.end(), [&](const std::string& line) {
          return text_size(font, line).x * share <= box.w;
        }))
      return share;
  }
  return kLeast;
}

}  // namespace

void draw_centred(ImDrawList& list, ImFont& font, const Rect& box, ImU32 colour, std::string_view text) {
  const float share = share_with_room(font, box, text);
  const auto lines = wrap_text(font, text, box.w / share);
  const float line = font.FontSize * share;
  float y = box.y + (box.h - line * static_cast<float>(lines.size())) / 2;
  for (const std::string& l : lines) {
    draw_text(list, font, {box.x + (box.w - text_size(font, l).x * share) / 2, y}, colour, l, share);
    y += line;
  }
}

float wrapped_height(ImFont& font, std::string_view text, float width) {
  return font.FontSize * static_cast<float>(wrap_text(font, text, width).size());
}

}  // namespace bentbook::screens
