#include "screens/app/app.h"

#include <imgui_internal.h>

#include <utility>

#include "book/demo.h"
#include "screens/angles/screen.h"
#include "screens/app/app_inside.h"
#include "screens/books/backup.h"
#include "screens/books/screen.h"
#include "screens/frame/screen.h"
#include "screens/rafter/screen.h"
#include "screens/raising/screen.h"
#include "screens/shop/form.h"
#include "screens/shop/pass.h"
#include "screens/shop/screen.h"

namespace bentbook::screens {
namespace {

ImGuiKey imgui_key(Key key) {
  switch (key) {
    case Key::kTab:
      return ImGuiKey_Tab;
    case Key::kEnter:
      return ImGuiKey_Enter;
    case Key::kEscape:
      return ImGuiKey_Escape;
    case Key::kBackspace:
      return ImGuiKey_Backspace;
    case Key::kDelete:
      return ImGuiKey_Delete;
    case Key::kLeft:
      return ImGuiKey_LeftArrow;
    case Key::kRight:
      return ImGuiKey_RightArrow;
    case Key::kUp:
      return ImGuiKey_UpArrow;
    case Key::kDown:
      return ImGuiKey_DownArrow;
    case Key::kHome:
      return ImGuiKey_Home;
    case Key::kEnd:
      return ImGuiKey_End;
    case Key::kPageUp:
      return ImGuiKey_PageUp;
    case Key::kPageDown:
      return ImGuiKey_PageDown;
  }
  return ImGuiKey_None;
}

/// Enter, Escape and the erasing and slot keys of a real keyboard; true if the keypad took it.
bool keypad_key(Keypad& keypad, Key key) {
  using Kind = Stroke::Kind;
  switch (key) {
    case Key::kEnter:
      keypad.press({Kind::kDone});
      return true;
    case Key::kEscape:
      keypad.press({Kind::kCancel});
      return true;
    case Key::kBackspace:
    case Key::kDelete:
      keypad.press({Kind::kErase});
      return true;
    case Key::kTab:
      if (keypad.has_next()) keypad.press({Kind::kNext});
      return true;
    case Key::kLeft:
    case Key::kRight:
      keypad.press({Kind::kSlot, keypad.active_slot() + (key == Key::kLeft ? -1 : 1)});
      return true;
    default:
      return false;
  }
}

/// Whether the app can be used with no signal from now on, or why not.
Msg offline_words(const PlatformEvent& event) {
  if (event.number != 0) return Msg::kOfflineReady;
  if (event.text == "room") return Msg::kOfflineNoRoom;
  return event.text == "build" ? Msg::kOfflineOtherBuild : Msg::kOfflineNoSignal;
}

}  // namespace

LengthStyle Context::style() const { return kit.settings.lengths; }

App::Impl::Impl(Platform& to) : platform(to), kit(first_kit()), places(demo_places()) {
  imgui = ImGui::CreateContext();
  current();
  ImGuiIO& io = ImGui::GetIO();
  io.IniFilename = nullptr;
  io.LogFilename = nullptr;
  io.ConfigFlags |= ImGuiConfigFlags_NavEnableKeyboard;
  imgui->ConfigNavWindowingKeyNext = imgui->ConfigNavWindowingKeyPrev = 0;
  memory.platform = &platform;
  pages.add_place(Place::kAngles, Icon::kAngles, {"angles", Msg::kPlaceAngles, angles_screen});
  pages.add_place(Place::kRafter, Icon::kRafter, {"rafter", Msg::kPlaceRafter, rafter_screen});
  pages.add_place(Place::kFrame, Icon::kFrame, {"frame", Msg::kPlaceFrame, frame_screen});
  pages.add_place(Place::kShop, Icon::kShop, {"shop", Msg::kPlaceShop, shop_screen});
  pages.add_place(Place::kRaising, Icon::kRaising, {"raising", Msg::kPlaceRaising, raising_screen});
  pages.go(places.now().active);
}

App::Impl::~Impl() { ImGui::DestroyContext(imgui); }

App::App(Platform& platform) : impl_(std::make_unique<Impl>(platform)) {}
App::~App() = default;

void App::load(std::string_view kit_bytes, std::string_view places_bytes) {
  impl_->load(kit_bytes, places_bytes);
  impl_->woken();
}

void App::set_viewport(const Viewport& viewport) {
  if (viewport == impl_->viewport) return;
  const bool resized = viewport.width != impl_->viewport.width || viewport.height != impl_->viewport.height;
  impl_->viewport = viewport;
  if (resized) {
    impl_->current();
    impl_->gesture.reset();
    // What is being edited stays in sight.
    impl_->memory.reveal = impl_->memory.editing;
  }
  impl_->woken();
}

void App::touch(TouchPhase phase, std::int64_t finger, float x, float y, double now_ms) {
  impl_->memory.focus.clear();
  impl_->gesture.touch(phase, finger, x, y, now_ms, impl_->registry);
  impl_->woken();
}

void App::mouse_move(float x, float y) {
  impl_->current();
  ImGui::GetIO().AddMouseSourceEvent(ImGuiMouseSource_Mouse);
  ImGui::GetIO().AddMousePosEvent(x, y);
  impl_->woken();
}

void App::mouse_button(MouseButton button, bool down) {
  impl_->current();
  impl_->memory.focus.clear();
  ImGui::GetIO().AddMouseButtonEvent(static_cast<int>(button), down);
  impl_->woken();
}

void App::mouse_wheel(float dx, float dy) {
  impl_->current();
  ImGui::GetIO().AddMouseWheelEvent(dx, dy);
  impl_->woken();
}

void App::key(Key key, bool down, bool shift, bool ctrl) {
  Impl& app = *impl_;
  app.current();
  app.woken();
  if (app.locked) return;
  if (app.keypad.is_open() && !app.read_only) {
    if (down && keypad_key(app.keypad, key)) return;
  } else if (key == Key::kEscape && down) {
    // What a finger or the mouse holds is let go of first, without a press.
    if (ImGui::GetIO().MouseDown[0] && app.imgui->ActiveId != 0) {
      app.gesture.reset();
      return ImGui::ClearActiveID();
    }
    return app.pages.pop();
  }
  ImGuiIO& io = ImGui::GetIO();
  io.AddKeyEvent(ImGuiMod_Shift, shift);
  io.AddKeyEvent(ImGuiMod_Ctrl, ctrl);
  io.AddKeyEvent(imgui_key(key), down);
}

void App::character(std::uint32_t code_point) {
  Impl& app = *impl_;
  app.current();
  app.woken();
  if (app.locked || app.read_only) return;
  if (app.keypad.is_open()) return app.keypad.character(code_point);
  if (code_point != ' ') return;
  ImGui::GetIO().AddKeyEvent(ImGuiKey_Space, true);
  ImGui::GetIO().AddKeyEvent(ImGuiKey_Space, false);
}

void App::act(Action action) {
  impl_->registry.queue(std::move(action));
  impl_->woken();
}

void App::on(const PlatformEvent& event) {
  Impl& app = *impl_;
  app.woken();
  switch (event.kind) {
    case EventKind::kSaved:
    case EventKind::kSaveFailed:
    case EventKind::kLoaded:
    case EventKind::kAppended:
    case EventKind::kAppendFailed:
    case EventKind::kLogRead:
      return app.stored_event(event);
    case EventKind::kReadOnly:
      app.hindrance = static_cast<Hindrance>(event.number);
      app.read_only = app.hindrance != Hindrance::kNone;
      app.desk.set_read_only(app.read_only);
      app.shop.set_read_only(app.read_only);
      if (app.read_only) app.keypad.close();
      return;
    case EventKind::kNotPersistent:
      app.not_persistent = true;
      return;
    case EventKind::kNewVersion:
      app.new_version = true;
      return;
    case EventKind::kTextCommitted:
      app.memory.committed_texts.push_back(event);
      return;
    case EventKind::kOffline:
      app.toast = {std::string(text(offline_words(event), app.language())), Toast::Undoes::kNothing, app.now_ms + 5000};
      return;
    case EventKind::kTextCancelled:
    case EventKind::kAwake:
      return;
    case EventKind::kShared:
      return app.shared(event);
    case EventKind::kCopied:
      app.toast = {std::string(text(event.number == 1 ? Msg::kAnswerCopied : Msg::kAnswerRefused, app.language())),
                   Toast::Undoes::kNothing, app.now_ms + 5000};
      return;
    case EventKind::kFileOpened:
      return app.opened(event);
    case EventKind::kVoices:
    case EventKind::kSpoken:
      return app.aloud.take(event);
    case EventKind::kTask:
      app.raising.take(*event.task);
      for (auto& pattern : app.rafter_memory.patterns) (void)pattern.take(*event.task);
      (void)app.printing.file.take(*event.task);
      return;
    case EventKind::kScanned:
    case EventKind::kScanEnded:
      app.shop_memory.scan.events.push_back(event);
      return;
  }
}

void App::Impl::opened(const PlatformEvent& event) {
  file = event;
  shop_memory.scan.received.clear();
  const bool is_log = is_log_file(event.text), is_backup = is_backup_file(event.text);
  if (is_backup) backup.look_at(event.text);
  pages.go(is_log ? Place::kShop : Place::kFrame);
  pages.push(is_log ? shop_receive_page() : is_backup ? books_take_in_page() : books_import_page());
}

double App::frame(double now_ms) {
  impl_->now_ms = now_ms;
  return impl_->frame();
}

bool App::gl_create() {
  impl_->current();
  impl_->bake_fonts();
  impl_->woken();
  // Without solids all but the view of the frame is there.
  (void)impl_->solids.create();
  return impl_->renderer.create(*ImGui::GetIO().Fonts);
}

void App::gl_lost() {
  impl_->renderer.lost();
  impl_->solids.lost();
}

void App::gl_paint() {
  impl_->current();
  const ImDrawData* data = ImGui::GetDrawData();
  if (!data) return;
  const ImVec4 ground = ImGui::ColorConvertU32ToFloat4(impl_->theme.ground);
  const Viewport& v = impl_->viewport;
  if (impl_->shot.drawing && !impl_->shot.ready) return;  // laid out for a picture: the screen keeps what it shows
  impl_->solids.paint();
  if (impl_->shot.ready) return impl_->hand_picture(*data, {ground.x, ground.y, ground.z});
  impl_->renderer.paint(*data, static_cast<int>(v.width * v.scale + 0.5F), static_cast<int>(v.height * v.scale + 0.5F),
                        {ground.x, ground.y, ground.z});
}

const Registry& App::registry() const { return impl_->registry; }
std::string_view App::language() const { return language_tag(impl_->language()); }
std::string_view App::wanted_language() const { return language_tag(impl_->wanted_language()); }
bool App::dark() const { return impl_->dark(); }

}  // namespace bentbook::screens
