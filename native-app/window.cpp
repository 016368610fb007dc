#include "window.h"

#include <GLES3/gl3.h>
#include <SDL.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <cstring>

#include "desktop.h"
#include "hand_over.h"
#include "script.h"
#include "text/utf8.h"
#include "text_overlay.h"

namespace bentbook::desktop {
namespace {

using screens::App;
using screens::Hindrance;
using screens::Key;
using screens::MouseButton;
using screens::TouchPhase;

struct Options {
  int width = 420, height = 860;
  float scale = 0;  // 0: the display's own
  bool dark = false;
  std::string language, script;
};

bool read_options(int argc, char** argv, Options& options) {
  for (int i = 1; i < argc; ++i) {
    const std::string_view name = argv[i];
    if (name == "--dark") {
      options.dark = true;
      continue;
    }
    if (i + 1 == argc) return false;
    const char* value = argv[++i];
    if (name == "--size") {
      if (std::sscanf(value, "%dx%d", &options.width, &options.height) != 2) return false;
    } else if (name == "--scale") {
      options.scale = std::strtof(value, nullptr);
    } else if (name == "--language") {
      options.language = value;
    } else if (name == "--script") {
      options.script = value;
    } else {
      return false;
    }
  }
  return options.width > 0 && options.height > 0;
}

std::string desktop_language() {
  for (const char* name : {"LC_ALL", "LC_MESSAGES", "LANG"}) {
    const char* value = std::getenv(name);
    if (value == nullptr || *value == '\0') continue;
    std::string tag = value;  // "es_MX.UTF-8"
    tag.resize(std::min(tag.find_first_of(".@"), tag.size()));
    std::replace(tag.begin(), tag.end(), '_', '-');
    return tag;
  }
  return "";
}

bool key_of(SDL_Keycode code, Key& key) {
  constexpr struct {
    SDL_Keycode code;
    Key key;
  } kKeys[] = {{SDLK_TAB, Key::kTab},       {SDLK_RETURN, Key::kEnter},        {SDLK_KP_ENTER, Key::kEnter},
               {SDLK_ESCAPE, Key::kEscape}, {SDLK_BACKSPACE, Key::kBackspace}, {SDLK_DELETE, Key::kDelete},
               {SDLK_LEFT, Key::kLeft},     {SDLK_RIGHT, Key::kRight},         {SDLK_UP, Key::kUp},
               {SDLK_DOWN, Key::kDown},     {SDLK_HOME, Key::kHome},           {SDLK_END, Key::kEnd},
               {SDLK_PAGEUP, Key::kPageUp}, {SDLK_PAGEDOWN, Key::kPageDown}};
  for (const auto& entry : kKeys)
    if (entry.code == code) {
      key = entry.key;
      return true;
    }
  return false;
}

MouseButton button_of(std::uint8_t button) {
  if (button == SDL_BUTTON_RIGHT) return MouseButton::kRight;
  return button == SDL_BUTTON_MIDDLE ? MouseButton::kMiddle : MouseButton::kLeft;
}

class Window {
 public:
  explicit Window(const Options& options) : options_(options) {}
  ~Window();
  Window(const Window&) = delete;
  Window& operator=(const Window&) = delete;

  bool open();
  int run();
  bool play();

 private:
  void load();
  void tell(Hindrance hindrance);
  void look_again();
  void hand_over();
  void measure();
  void resize(float width, float height);
  double now() const { return options_.script.empty() ? static_cast<double>(SDL_GetTicks64()) : clock_ms_; }
  double frame();
  void settle();
  bool shot(const std::string& path);
  void type(std::string_view text);
  bool press_key(const std::string& name);
  /// False when the window is to close.
  bool take(const SDL_Event& event);
  void take_key(const SDL_KeyboardEvent& key);
  void take_text(const char* utf8);
  void take_answers();

  Options options_;
  Desktop desktop_;
  HandOver hand_over_;  // ends before the desktop lets go of the lock
  App app_{desktop_};
  render::Renderer overlay_;
  SDL_Window* window_ = nullptr;
  SDL_GLContext gl_ = nullptr;
  float scale_ = 1;        // device pixels per CSS px
  float event_scale_ = 1;  // SDL's window units per CSS px
  double clock_ms_ = 1000;
  Hindrance hindrance_ = Hindrance::kNone;  // as the screens were told
};

Window::~Window() {
  if (gl_ != nullptr) SDL_GL_DeleteContext(gl_);
  if (window_ != nullptr) SDL_DestroyWindow(window_);
  SDL_Quit();
}

bool Window::open() {
  SDL_SetHint(SDL_HINT_TOUCH_MOUSE_EVENTS, "0");
  SDL_SetHint(SDL_HINT_MOUSE_TOUCH_EVENTS, "0");
  SDL_SetHint(SDL_HINT_VIDEO_ALLOW_SCREENSAVER, "1");
  if (SDL_Init(SDL_INIT_VIDEO) != 0) return false;
  SDL_GL_SetAttribute(SDL_GL_CONTEXT_PROFILE_MASK, SDL_GL_CONTEXT_PROFILE_ES);
  SDL_GL_SetAttribute(SDL_GL_CONTEXT_MAJOR_VERSION, 3);
  SDL_GL_SetAttribute(SDL_GL_CONTEXT_MINOR_VERSION, 0);
  SDL_GL_SetAttribute(SDL_GL_DEPTH_SIZE, 0);
  const float scale = options_.scale > 0 ? options_.scale : 1;
  window_ = SDL_CreateWindow("Bentbook", SDL_WINDOWPOS_UNDEFINED, SDL_WINDOWPOS_UNDEFINED,
                             static_cast<int>(static_cast<float>(options_.width) * scale),
                             static_cast<int>(static_cast<float>(options_.height) * scale),
                             SDL_WINDOW_OPENGL | SDL_WINDOW_RESIZABLE | SDL_WINDOW_ALLOW_HIGHDPI);
  if (window_ == nullptr) return false;
  SDL_SetWindowMinimumSize(window_, static_cast<int>(320 * scale), static_cast<int>(480 * scale));
  gl_ = SDL_GL_CreateContext(window_);
  if (gl_ == nullptr) return false;
  SDL_GL_SetSwapInterval(1);
  SDL_StartTextInput();  // the keypad takes digits from a real keyboard
  measure();
  load();
  return app_.gl_create() && overlay_.create_without_atlas();
}

void Window::measure() {
  int width = 0, height = 0, device_width = 0, device_height = 0;
  SDL_GetWindowSize(window_, &width, &height);
  SDL_GL_GetDrawableSize(window_, &device_width, &device_height);
  const float dense = width > 0 ? static_cast<float>(device_width) / static_cast<float>(width) : 1;
  scale_ = options_.scale > 0 ? options_.scale : dense;
  event_scale_ = scale_ / dense;
  screens::Viewport viewport;
  viewport.width = static_cast<float>(device_width) / scale_;
  viewport.height = static_cast<float>(device_height) / scale_;
  viewport.scale = scale_;
  viewport.prefers_dark = options_.dark;
  viewport.language = options_.language.empty() ? desktop_language() : options_.language;
  app_.set_viewport(viewport);
}

void Window::resize(float width, float height) {
  SDL_SetWindowSize(window_, static_cast<int>(width * event_scale_), static_cast<int>(height * event_scale_));
  SDL_PumpEvents();
  measure();
}

void Window::load() {
  const bool writes = desktop_.storage().take_writing();
  if (writes) hand_over_.listen(desktop_.storage().folder(), wake);
  const auto kit = desktop_.storage().read("kit"), places = desktop_.storage().read("places");
  app_.load(kit.value_or(""), places.value_or(""));
  tell(!kit || !places ? Hindrance::kUnread : writes ? Hindrance::kNone : Hindrance::kOther);
}

void Window::tell(Hindrance hindrance) {
  if (hindrance == hindrance_) return;
  hindrance_ = hindrance;
  app_.on({screens::EventKind::kReadOnly, "", "", static_cast<std::int64_t>(hindrance)});
}

/// What kept this window from writing may be gone. What is stored is read before anything is written over it: another
/// window may have changed it.
void Window::look_again() {
  if (hindrance_ == Hindrance::kNone) return;
  if (hindrance_ == Hindrance::kOther && !desktop_.storage().take_writing()) return;
  load();
}

/// Another window wants to write. What was changed here is stored: every save is on the disk when it returns.
void Window::hand_over() {
  hand_over_.stop();
  desktop_.storage().leave_writing();
  hand_over_.answer();
  tell(Hindrance::kOther);
}

double Window::frame() {
  if (hand_over_.is_asked()) hand_over();
  take_answers();
  const double wish = app_.frame(now());
  app_.gl_paint();
  paint_text(desktop_, overlay_, screens::make_theme(app_.dark(), false));
  return wish;
}

void Window::take_answers() {
  for (const screens::PlatformEvent& event : desktop_.take_answers()) {
    if (event.kind == screens::EventKind::kReadOnly)
      tell(static_cast<Hindrance>(event.number));
    else
      app_.on(event);
  }
  if (!desktop_.take_wish_to_write()) return;
  if (hindrance_ == Hindrance::kOther) ask_to_hand_over(desktop_.storage().folder());
  look_again();
}

/// Sleeps until something happens or the screens' wish falls due; draws only then.
int Window::run() {
  double wish = 0, due = now();
  for (bool open = true; open;) {
    SDL_Event event;
    const double left = due - now();
    const int wait = wish < 0 ? -1 : left > 0 ? static_cast<int>(left) + 1 : 0;
    bool happened = wait < 0 ? SDL_WaitEvent(&event) != 0 : SDL_WaitEventTimeout(&event, wait) != 0;
    const bool any = happened;
    while (happened && open) {
      open = take(event);
      happened = SDL_PollEvent(&event) != 0;
    }
    if (!open || (!any && (wish < 0 || now() < due))) continue;
    wish = frame();
    due = now() + (wish > 0 ? wish : 0);
    SDL_GL_SwapWindow(window_);
  }
  return 0;
}

bool Window::take(const SDL_Event& event) {
  if (text_takes(desktop_, event, event_scale_)) return true;
  const auto css = [&](int v) { return static_cast<float>(v) / event_scale_; };
  const auto touch = [&](TouchPhase phase) {
    int width = 0, height = 0;
    SDL_GetWindowSize(window_, &width, &height);
    app_.touch(phase, event.tfinger.fingerId, event.tfinger.x * css(width), event.tfinger.y * css(height), now());
  };
  switch (event.type) {
    case SDL_QUIT:
      return false;
    case SDL_WINDOWEVENT:
      if (event.window.event == SDL_WINDOWEVENT_SIZE_CHANGED) measure();
      if (event.window.event == SDL_WINDOWEVENT_FOCUS_GAINED) look_again();
      break;
    case SDL_FINGERDOWN:
      touch(TouchPhase::kDown);
      break;
    case SDL_FINGERMOTION:
      touch(TouchPhase::kMove);
      break;
    case SDL_FINGERUP:
      touch(TouchPhase::kUp);
      break;
    case SDL_MOUSEMOTION:
      app_.mouse_move(css(event.motion.x), css(event.motion.y));
      break;
    case SDL_MOUSEBUTTONDOWN:
    case SDL_MOUSEBUTTONUP:
      app_.mouse_move(css(event.button.x), css(event.button.y));
      app_.mouse_button(button_of(event.button.button), event.type == SDL_MOUSEBUTTONDOWN);
      break;
    case SDL_MOUSEWHEEL:
      app_.mouse_wheel(event.wheel.preciseX, event.wheel.preciseY);
      break;
    case SDL_KEYDOWN:
    case SDL_KEYUP:
      take_key(event.key);
      break;
    case SDL_TEXTINPUT:
      take_text(event.text.text);
      break;
    case SDL_DROPFILE:
      desktop_.drop_file(event.drop.file);
      SDL_free(event.drop.file);
      break;
    default:
      break;
  }
  return true;
}

void Window::take_key(const SDL_KeyboardEvent& key) {
  const bool down = key.type == SDL_KEYDOWN, ctrl = (key.keysym.mod & KMOD_CTRL) != 0;
  if (Key known; key_of(key.keysym.sym, known)) {
    app_.key(known, down, (key.keysym.mod & KMOD_SHIFT) != 0, ctrl);
  }
}

void Window::take_text(const char* utf8) {
  const std::string_view text(utf8);
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = end_of_character(text, at);
    app_.character(code_point(text.substr(at, end - at)));
    at = end;
  }
}

/// A script's clock runs only while it draws, so animations and timers end at once.
void Window::settle() {
  constexpr int kMostFrames = 400;
  for (int i = 0; i < kMostFrames; ++i) {
    const double wish = frame();
    clock_ms_ += wish > 0 && wish < 500 ? wish : 16;
    if (desktop_.busy()) {
      SDL_Delay(2);
      continue;
    }
    if (wish != 0 && i > 2) return;
  }
}

bool Window::shot(const std::string& path) {
  frame();
  int width = 0, height = 0;
  SDL_GL_GetDrawableSize(window_, &width, &height);
  const auto row = static_cast<std::size_t>(width) * 4;
  std::vector<unsigned char> pixels(row * static_cast<std::size_t>(height));
  glPixelStorei(GL_PACK_ALIGNMENT, 1);
  glReadPixels(0, 0, width, height, GL_RGBA, GL_UNSIGNED_BYTE, pixels.data());
  std::FILE* file = std::fopen(path.c_str(), "wb");
  if (file == nullptr) return false;
  std::fprintf(file, "P6 %d %d 255\n", width, height);
  for (int y = height - 1; y >= 0; --y)
    for (int x = 0; x < width; ++x)
      std::fwrite(&pixels[static_cast<std::size_t>(y) * row + static_cast<std::size_t>(x) * 4], 1, 3, file);
  return std::fclose(file) == 0;
}

void Window::type(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = end_of_character(text, at);
    SDL_Event event{};
    event.type = SDL_TEXTINPUT;
    text.substr(at, end - at).copy(event.text.text, sizeof event.text.text - 1);
    take(event);
    settle();
    at = end;
  }
}

bool Window::press_key(const std::string& name) {
  SDL_Event event{};
  event.key.keysym.sym = SDL_GetKeyFromName(name.c_str());
  for (const std::uint32_t type : {SDL_KEYDOWN, SDL_KEYUP}) {
    event.type = type;
    take(event);
    settle();
  }
  return event.key.keysym.sym != SDLK_UNKNOWN;
}

bool Window::play() {
  settle();
  const Stage stage{app_,
                    clock_ms_,
                    [this] { settle(); },
                    [this](const std::string& path) { return shot(path); },
                    [this](float width, float height) { resize(width, height); },
                    [this](std::string_view text) { type(text); },
                    [this](const std::string& name) { return press_key(name); }};
  const bool done = run_script(options_.script, stage);
  SDL_GL_SwapWindow(window_);
  return done;
}

}  // namespace

int run_window(int argc, char** argv) {
  Options options;
  if (!read_options(argc, argv, options)) {
    std::fprintf(stderr, "bentbook: unknown option; bentbook --help tells the commands\n");
    return 2;
  }
  Window window(options);
  if (!window.open()) {
    std::fprintf(stderr, "bentbook: no window with OpenGL ES 3: %s\n", SDL_GetError());
    return 1;
  }
  if (options.script.empty()) return window.run();
  return window.play() ? 0 : 1;
}

}  // namespace bentbook::desktop
