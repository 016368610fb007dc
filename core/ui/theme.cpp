#include "ui/theme.h"

#include "numeric/libm.h"

namespace bentbook::screens {
namespace {

constexpr ImU32 rgb(unsigned hex) { return IM_COL32((hex >> 16) & 0xFF, (hex >> 8) & 0xFF, hex & 0xFF, 0xFF); }

double channel(ImU32 colour, int shift) { return static_cast<double>((colour >> shift) & 0xFF) / 255.0; }

double linear(double c) { return c <= 0.04045 ? c / 12.92 : bbm_pow((c + 0.055) / 1.055, 2.4); }

double luminance(ImU32 colour) {
  return 0.2126 * linear(channel(colour, IM_COL32_R_SHIFT)) + 0.7152 * linear(channel(colour, IM_COL32_G_SHIFT)) +
         0.0722 * linear(channel(colour, IM_COL32_B_SHIFT));
}

Theme sun() {
  Theme t;
  t.ground = rgb(0xFFFFFF);
  t.panel = rgb(0xF1F3F5);
  t.ink = rgb(0x111111);
  t.quiet = rgb(0x3A3A3A);
  t.rule = rgb(0x6B7075);
  t.edit = rgb(0x0B4F9E);
  t.on_edit = rgb(0xFFFFFF);
  t.pressed = rgb(0xCFE0F3);
  t.cut = rgb(0xC4311B);
  t.caution = rgb(0x704500);
  t.caution_ground = rgb(0xFFF3D6);
  return t;
}

Theme night() {
  Theme t;
  t.dark = true;
  t.ground = rgb(0x101214);
  t.panel = rgb(0x1C2024);
  t.ink = rgb(0xF2F2F2);
  t.quiet = rgb(0xCFD3D7);
  t.rule = rgb(0x8A9198);
  t.edit = rgb(0x8EC5FF);
  t.on_edit = rgb(0x101214);
  t.pressed = rgb(0x24384D);
  t.cut = rgb(0xFF8A73);
  t.caution = rgb(0xFFD58A);
  t.caution_ground = rgb(0x33260A);
  return t;
}

}  // namespace

Theme make_theme(bool dark, bool glove) {
  Theme theme = dark ? night() : sun();
  theme.target = glove ? 64 : 48;
  return theme;
}

void apply_theme(const Theme& theme, ImGuiStyle& style) {
  style = ImGuiStyle{};
  style.WindowPadding = style.FramePadding = style.CellPadding = {0, 0};
  style.ItemSpacing = style.ItemInnerSpacing = {kGap, kGap};
  style.WindowBorderSize = style.ChildBorderSize = style.PopupBorderSize = style.FrameBorderSize = 0;
  style.WindowRounding = style.ChildRounding = style.PopupRounding = style.FrameRounding = style.ScrollbarRounding = 0;
  style.WindowMinSize = {1, 1};
  style.ScrollbarSize = kGrid / 2;
  style.TouchExtraPadding = {0, 0};
  style.AntiAliasedLinesUseTex = false;
  style.CircleTessellationMaxError = 0.1F;
  const auto set = [&](ImGuiCol which, ImU32 colour) { style.Colors[which] = ImGui::ColorConvertU32ToFloat4(colour); };
  set(ImGuiCol_Text, theme.ink);
  set(ImGuiCol_WindowBg, theme.ground);
  set(ImGuiCol_ChildBg, 0);
  set(ImGuiCol_PopupBg, theme.ground);
  set(ImGuiCol_ScrollbarBg, 0);
  set(ImGuiCol_ScrollbarGrab, theme.rule);
  set(ImGuiCol_ScrollbarGrabHovered, theme.rule);
  set(ImGuiCol_ScrollbarGrabActive, theme.rule);
  set(ImGuiCol_NavHighlight, theme.edit);
}

double contrast(ImU32 a, ImU32 b) {
  const double la = luminance(a), lb = luminance(b);
  return la > lb ? (la + 0.05) / (lb + 0.05) : (lb + 0.05) / (la + 0.05);
}

ImU32 mix(ImU32 under, ImU32 over, float opacity) {
  const ImVec4 u = ImGui::ColorConvertU32ToFloat4(under), o = ImGui::ColorConvertU32ToFloat4(over);
  const auto blend = [&](float x, float y) { return x + (y - x) * opacity; };
  return ImGui::ColorConvertFloat4ToU32({blend(u.x, o.x), blend(u.y, o.y), blend(u.z, o.z), 1});
}

void crisp(ImDrawList& list) {
  const float density = ImGui::GetIO().DisplayFramebufferScale.x;
  list._FringeScale = density > 1 ? 1 / density : 1;
}

}  // namespace bentbook::screens
