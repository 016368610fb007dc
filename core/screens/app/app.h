#pragma once
/// The whole front end behind one value: a shell feeds it input, asks for a frame, and paints what it drew.
/// Nothing here blocks; nothing here asks for a clock: `now_ms` is any monotonic time in milliseconds.

#include <cstdint>
#include <memory>
#include <string_view>

#include "ui/input.h"
#include "ui/platform.h"
#include "ui/registry.h"

namespace bentbook::screens {

class App {
 public:
  /// The platform must outlive the app. Makes the ImGui context; needs no GL context yet.
  explicit App(Platform& platform);
  ~App();
  App(const App&) = delete;
  App& operator=(const App&) = delete;

  /// What was stored (empty: first launch). Damaged or newer bytes are reported on screen, left alone in storage and
  /// never overwritten by a later save of that key until the user says so.
  void load(std::string_view kit_bytes, std::string_view places_bytes);

  void set_viewport(const Viewport& viewport);
  void touch(TouchPhase phase, std::int64_t finger, float x, float y, double now_ms);
  void mouse_move(float x, float y);
  void mouse_button(MouseButton button, bool down);
  void mouse_wheel(float dx, float dy);
  void key(Key key, bool down, bool shift, bool ctrl);
  void character(std::uint32_t code_point);  ///< typed on a real keyboard: digits and marks go to an open keypad
  void act(Action action);                   ///< from the mirror
  void on(const PlatformEvent& event);

  /// Lay out and build one frame. Returns when the next is wanted: 0 = at once, t > 0 = in t ms, < 0 = only after
  /// input.
  double frame(double now_ms);
  /// Make or make again the GL objects (start, context restored). False with the reason in the log if GL is unusable.
  bool gl_create();
  void gl_lost();  ///< forget GL objects without deleting them
  /// Paint the last frame. Needs the GL context current. Never queries GL state.
  void gl_paint();

  [[nodiscard]] const Registry& registry() const;
  /// Language of the interface as a BCP 47 tag, for the page's lang attribute.
  [[nodiscard]] std::string_view language() const;
  /// The one that it would be with its words there (words/strings.h).
  [[nodiscard]] std::string_view wanted_language() const;
  /// True in the dark theme, for the page's theme colour.
  [[nodiscard]] bool dark() const;

 private:
  struct Impl;
  std::unique_ptr<Impl> impl_;
};

}  // namespace bentbook::screens
