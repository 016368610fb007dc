#pragma once
/// The fonts that screens are drawn with, without a window.

#include <imgui.h>

#include "ui/fonts.h"

namespace bentbook::screens {

struct Letters {
  explicit Letters(float text_scale) {
    ImGui::CreateContext();
    ImGui::GetIO().IniFilename = nullptr;
    ImGui::GetIO().DisplaySize = {390, 844};
    fonts = build_fonts(*ImGui::GetIO().Fonts, text_scale, 1);
    ImGui::NewFrame();
  }
  ~Letters() {
    ImGui::EndFrame();
    ImGui::DestroyContext();
  }
  Letters(const Letters&) = delete;
  Letters& operator=(const Letters&) = delete;
  Fonts fonts;
};

}  // namespace bentbook::screens
