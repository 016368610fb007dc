/// The emptiest page of the same stack: an SDL window, Dear ImGui with one font at one size, the project's renderer,
/// one frame. What the app's start is measured against.

#include <SDL.h>
#include <emscripten.h>
#include <emscripten/html5.h>
#include <imgui.h>

#include "render/renderer.h"
#include "ui/fonts.gen.h"

namespace {

bentbook::render::Renderer renderer;
float width = 0, height = 0, scale = 1;

EM_BOOL on_animation_frame(double, void*) {
  SDL_Event e;
  while (SDL_PollEvent(&e) != 0) {
  }
  ImGuiIO& io = ImGui::GetIO();
  io.DisplaySize = {width, height};
  io.DisplayFramebufferScale = {scale, scale};
  io.DeltaTime = 1.0F / 60.0F;
  ImGui::NewFrame();
  ImGui::SetNextWindowPos({0, 0});
  ImGui::SetNextWindowSize(io.DisplaySize);
  ImGui::Begin("empty", nullptr, ImGuiWindowFlags_NoDecoration);
  ImGui::TextUnformatted("Nothing here");
  ImGui::Button("A button");
  ImGui::End();
  ImGui::Render();
  renderer.paint(*ImGui::GetDrawData(), static_cast<int>(width * scale), static_cast<int>(height * scale), {});
  return EM_FALSE;
}

bool make_window() {
  if (SDL_Init(SDL_INIT_VIDEO) != 0) return false;
  SDL_CreateWindow("empty", 0, 0, static_cast<int>(width), static_cast<int>(height),
                   SDL_WINDOW_RESIZABLE | SDL_WINDOW_ALLOW_HIGHDPI);
  EmscriptenWebGLContextAttributes wanted;
  emscripten_webgl_init_context_attributes(&wanted);
  wanted.majorVersion = 2;
  wanted.alpha = wanted.depth = wanted.stencil = wanted.antialias = EM_FALSE;
  wanted.enableExtensionsByDefault = EM_FALSE;
  const EMSCRIPTEN_WEBGL_CONTEXT_HANDLE context = emscripten_webgl_create_context("#canvas", &wanted);
  return context > 0 && emscripten_webgl_make_context_current(context) == EMSCRIPTEN_RESULT_SUCCESS;
}

}  // namespace

extern "C" EMSCRIPTEN_KEEPALIVE bool bb_start(float css_width, float css_height, float density) {
  width = css_width;
  height = css_height;
  scale = density;
  ImGui::CreateContext();
  ImGuiIO& io = ImGui::GetIO();
  io.IniFilename = nullptr;
  ImFontConfig config;
  config.FontDataOwnedByAtlas = false;
  config.OversampleH = config.OversampleV = 1;
  config.RasterizerDensity = density;
  using bentbook::screens::kRegularFont;
  io.Fonts->AddFontFromMemoryTTF(const_cast<unsigned char*>(kRegularFont), static_cast<int>(sizeof kRegularFont), 22,
                                 &config, bentbook::screens::kTypedGlyphs);
  if (!make_window() || !renderer.create(*io.Fonts)) return false;
  emscripten_request_animation_frame(on_animation_frame, nullptr);
  return true;
}

int main() { return 0; }
