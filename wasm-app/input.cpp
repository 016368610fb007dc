#include "input.h"

#include <SDL.h>

namespace bentbook::page {
namespace {

using screens::MouseButton;
using screens::TouchPhase;

MouseButton button_of(std::uint8_t sdl_button) {
  if (sdl_button == SDL_BUTTON_RIGHT) return MouseButton::kRight;
  return sdl_button == SDL_BUTTON_MIDDLE ? MouseButton::kMiddle : MouseButton::kLeft;
}

TouchPhase phase_of(std::uint32_t type) {
  if (type == SDL_FINGERDOWN) return TouchPhase::kDown;
  return type == SDL_FINGERUP ? TouchPhase::kUp : TouchPhase::kMove;
}

}  // namespace

void take_input(screens::App& app, float width, float height, double now_ms) {
  SDL_Event e;
  while (SDL_PollEvent(&e) != 0) {
    switch (e.type) {
      case SDL_FINGERDOWN:
      case SDL_FINGERMOTION:
      case SDL_FINGERUP:
        app.touch(phase_of(e.type), e.tfinger.fingerId, e.tfinger.x * width, e.tfinger.y * height, now_ms);
        break;
      case SDL_MOUSEMOTION:
        app.mouse_move(static_cast<float>(e.motion.x), static_cast<float>(e.motion.y));
        break;
      case SDL_MOUSEBUTTONDOWN:
      case SDL_MOUSEBUTTONUP:
        app.mouse_move(static_cast<float>(e.button.x), static_cast<float>(e.button.y));
        app.mouse_button(button_of(e.button.button), e.type == SDL_MOUSEBUTTONDOWN);
        break;
      case SDL_MOUSEWHEEL:
        app.mouse_wheel(e.wheel.preciseX, e.wheel.preciseY);
        break;
      default:
        break;
    }
  }
}

}  // namespace bentbook::page
