#include "text_overlay.h"

#include <imgui_internal.h>

#include "text/utf8.h"

namespace bentbook::desktop {
namespace {

void type(TextEdit& edit, const char* utf8) {
  const std::string_view text(utf8);
  for (std::size_t at = 0; at < text.size();) {  // whole characters, as many as fit; no line breaks
    const std::size_t end = end_of_character(text, at);
    if (edit.text.size() + end - at > static_cast<std::size_t>(edit.request.max_bytes)) return;
    if (static_cast<unsigned char>(text[at]) >= 0x20) edit.text.append(text.substr(at, end - at));
    at = end;
  }
}

void paste(TextEdit& edit) {
  char* text = SDL_GetClipboardText();
  if (text == nullptr) return;
  type(edit, text);
  SDL_free(text);
}

bool takes_key(Desktop& desktop, const SDL_KeyboardEvent& key) {
  switch (key.keysym.sym) {
    case SDLK_RETURN:
    case SDLK_KP_ENTER:
    case SDLK_TAB:
      desktop.commit_text();
      break;
    case SDLK_ESCAPE:
      desktop.cancel_text();
      break;
    case SDLK_BACKSPACE:
      drop_last_character(desktop.text()->text);
      break;
    case SDLK_v:
      if ((key.keysym.mod & KMOD_CTRL) != 0) paste(*desktop.text());
      break;
    default:
      break;
  }
  return true;
}

}  // namespace

bool text_takes(Desktop& desktop, const SDL_Event& event, float scale) {
  if (!desktop.text()) return false;
  switch (event.type) {
    case SDL_TEXTINPUT:
      type(*desktop.text(), event.text.text);
      return true;
    case SDL_KEYDOWN:
      return takes_key(desktop, event.key);
    case SDL_KEYUP:
      return true;
    case SDL_MOUSEBUTTONDOWN: {
      const screens::Rect& r = desktop.text()->request.rect;
      const float x = static_cast<float>(event.button.x) / scale, y = static_cast<float>(event.button.y) / scale;
      if (x >= r.x && y >= r.y && x < r.x + r.w && y < r.y + r.h) return true;
      desktop.commit_text();
      return false;
    }
    default:
      return false;
  }
}

void paint_text(const Desktop& desktop, render::Renderer& renderer, const screens::Theme& theme) {
  const std::optional<TextEdit>& edit = desktop.text();
  if (!edit) return;
  const ImGuiIO& io = ImGui::GetIO();
  ImDrawList list(ImGui::GetDrawListSharedData());
  list._ResetForNewFrame();
  list.PushTextureID(io.Fonts->TexID);
  list.PushClipRectFullScreen();
  const screens::Rect& r = edit->request.rect;
  const ImVec2 from{r.x, r.y}, to{r.x + r.w, r.y + r.h};
  list.AddRectFilled(from, to, theme.ground);
  list.AddRect(from, to, theme.edit, 0, 0, 2);
  ImFont* font = ImGui::GetFont();
  const ImVec2 size = font->CalcTextSizeA(font->FontSize, FLT_MAX, 0, edit->text.c_str());
  // A text wider than the field shows its end.
  const float x = r.x + std::min(screens::kGrid, r.w - 2 * screens::kGrid - size.x);
  list.PushClipRect(from, to, true);
  list.AddText(font, font->FontSize, {x, r.y + (r.h - size.y) / 2}, theme.ink, edit->text.c_str());
  const ImVec2 caret{x + size.x + 2, r.y + (r.h - size.y) / 2};
  list.AddRectFilled(caret, {caret.x + 2, caret.y + size.y}, theme.edit);
  list.PopClipRect();

  ImDrawData data;
  data.Valid = true;
  data.DisplaySize = io.DisplaySize;
  data.FramebufferScale = io.DisplayFramebufferScale;
  data.AddDrawList(&list);
  renderer.paint_over(data, static_cast<int>(io.DisplaySize.x * io.DisplayFramebufferScale.x + 0.5F),
                      static_cast<int>(io.DisplaySize.y * io.DisplayFramebufferScale.y + 0.5F));
}

}  // namespace bentbook::desktop
