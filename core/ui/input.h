#pragma once
/// What a shell tells of its window, its fingers, mouse and keys.

#include <cstdint>
#include <string>

namespace bentbook::screens {

/// CSS px, from the window's top left.
struct Rect {
  float x = 0, y = 0, w = 0, h = 0;
  friend constexpr bool operator==(const Rect&, const Rect&) = default;
};

/// The drawable area. Layout is in CSS px; `scale` = device pixels per CSS px.
struct Viewport {
  float width = 390, height = 844, scale = 1;
  float inset_top = 0, inset_right = 0, inset_bottom = 0, inset_left = 0;  ///< safe areas
  bool reduced_motion = false;
  bool prefers_dark = false;
  std::string language;  ///< BCP 47 tag that the device is set to; "" unknown
  friend bool operator==(const Viewport&, const Viewport&) = default;
};

enum class TouchPhase : std::uint8_t { kDown, kMove, kUp, kCancel };
enum class MouseButton : std::uint8_t { kLeft, kRight, kMiddle };
/// Keys that the screens use; text comes through the platform's text field, digits and marks as characters.
enum class Key : std::uint8_t {
  kTab,
  kEnter,
  kEscape,
  kBackspace,
  kDelete,
  kLeft,
  kRight,
  kUp,
  kDown,
  kHome,
  kEnd,
  kPageUp,
  kPageDown
};

}  // namespace bentbook::screens
