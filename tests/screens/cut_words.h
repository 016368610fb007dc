#pragma once
/// What was drawn of words and is not whole, read from the letters that ImGui was handed.

#include <imgui.h>

#include <set>
#include <string>
#include <utility>

#include "bed.h"

namespace bentbook::screens {

/// Where words were shortened to "…" or run past the screen's left or right edge, by the item that lies there; ""
/// where all of them are whole. What says "…" by itself does not count.
inline std::string cut_words(const Bed& bed) {
  using Corner = std::pair<float, float>;
  std::set<Corner> letters, shortened;  // the letters' lower right corners in the fonts' picture
  for (ImFont* font : ImGui::GetIO().Fonts->Fonts)
    for (const ImFontGlyph& g : font->Glyphs)
      if (g.Visible != 0) (g.Codepoint == 0x2026 ? shortened : letters).insert({g.U1, g.V1});
  const float wide = ImGui::GetIO().DisplaySize.x;
  std::string wrong;
  const auto say = [&](std::string_view what, const ImVec2& at) {
    const Item* under = nullptr;
    for (const Item& item : bed.app.registry().items()) {
      const Rect& r = item.rect;
      const bool holds = at.x >= r.x - 1 && at.x <= r.x + r.w + 1 && at.y >= r.y && at.y <= r.y + r.h;
      if (holds) under = &item;
    }
    if (under != nullptr && (under->name + under->value).find("…") != std::string::npos) return;
    wrong += std::string(what) + " at " + std::to_string(static_cast<int>(at.x)) + ", " +
             std::to_string(static_cast<int>(at.y)) + (under != nullptr ? " on " + under->key : "") + "\n";
  };
  const ImDrawData& drawn = *ImGui::GetDrawData();
  for (const ImDrawList* list : drawn.CmdLists)
    for (const ImDrawCmd& cmd : list->CmdBuffer)
      for (unsigned i = 0; i < cmd.ElemCount; i += 3) {
        const ImDrawVert& v =
            list->VtxBuffer[static_cast<int>(list->IdxBuffer[static_cast<int>(cmd.IdxOffset + i + 2)] + cmd.VtxOffset)];
        const Corner corner{v.uv.x, v.uv.y};
        const ImVec4& clip = cmd.ClipRect;
        if (v.pos.y < clip.y || v.pos.y > clip.w) continue;
        if (shortened.contains(corner)) say("shortened", v.pos);
        if (letters.contains(corner) && (v.pos.x > wide + 0.5F || v.pos.x > clip.z + 0.5F)) say("past the edge", v.pos);
      }
  return wrong;
}

}  // namespace bentbook::screens
