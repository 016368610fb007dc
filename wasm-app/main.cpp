/// The phone page: an SDL window over the page's canvas, drawn only when something changes.
///
/// Scheduling is one-shot. wake(n) says that n more frames are wanted and asks for one animation frame; the frame draws
/// and asks again only while frames are still wanted, else sets the timer that the screens wished for, else nothing.
/// Whatever may change the picture wakes: DOM listeners (web/page.js), answers of the platform, timers.
///
/// Exported bb_* functions are called by web/*.js. Bytes come in through bb_buffer(): the page asks for room, writes,
/// and calls with the sizes.

#include <SDL.h>
#include <emscripten.h>
#include <emscripten/html5.h>

#include <algorithm>
#include <deque>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <variant>

#include "input.h"
#include "page.h"
#include "registry_json.h"
#include "screens/app/app.h"
#include "tasks/border.h"

namespace bentbook::page {
namespace {

using screens::Action;
using screens::App;
using screens::EventKind;
using screens::PlatformEvent;
using screens::Viewport;

struct KeyPress {
  screens::Key key{};
  bool down = false, shift = false, ctrl = false;
};

/// What the mirror and the keyboard asked for, in their order. A frame takes at most one action, since an action is
/// only answered by the widget that the frame draws, and what follows may mean what it brings up.
using Wish = std::variant<Action, KeyPress, std::uint32_t>;

struct Page {
  PagePlatform platform;
  App app{platform};
  SDL_Window* window = nullptr;

  Viewport viewport;
  bool viewport_changed = true;
  bool started = false;
  bool gl_usable = false;

  std::deque<Wish> wishes;
  int frames_wanted = 0;
  bool frame_asked = false;
  long timer = 0;

  std::uint64_t mirrored_revision = 0;
  std::string looks;  ///< language and theme last told to the page
  std::string words;  ///< the language whose words the page was last asked for
  std::string inbox, outbox;
};

Page* page = nullptr;  ///< made by main(), lives as long as the document

EM_BOOL on_animation_frame(double, void*);

void ask_for_frame() {
  if (page->frame_asked || !page->started || !page->gl_usable) return;
  page->frame_asked = true;
  emscripten_request_animation_frame(on_animation_frame, nullptr);
}

void wake(int frames) {
  page->frames_wanted = std::max(page->frames_wanted, frames);
  if (page->timer != 0) {
    emscripten_clear_timeout(page->timer);
    page->timer = 0;
  }
  ask_for_frame();
}

void on_timer(void*) {
  page->timer = 0;
  wake(1);
}

void apply_viewport() {
  if (!page->viewport_changed) return;
  page->viewport_changed = false;
  resize_canvas();
  page->app.set_viewport(page->viewport);
}

void add_wish(Wish wish) {
  auto* next = std::get_if<Action>(&wish);
  auto* last = page->wishes.empty() ? nullptr : std::get_if<Action>(&page->wishes.back());
  const bool setting = next && (next->kind == Action::Kind::kSetText || next->kind == Action::Kind::kSetNumber);
  if (setting && last && last->kind == next->kind && last->key == next->key)
    *last = std::move(*next);  // a later value of the same field says it all
  else
    page->wishes.push_back(std::move(wish));
  wake(3);
}

void take_wishes() {
  while (!page->wishes.empty()) {
    Wish wish = std::move(page->wishes.front());
    page->wishes.pop_front();
    if (auto* action = std::get_if<Action>(&wish)) {
      page->app.act(std::move(*action));
      return;
    }
    if (const auto* k = std::get_if<KeyPress>(&wish))
      page->app.key(k->key, k->down, k->shift, k->ctrl);
    else
      page->app.character(std::get<std::uint32_t>(wish));
  }
}

/// Input in, layout out; nothing painted. Returns the screens' wish for the next frame.
double lay_out() {
  const double now = emscripten_get_now();
  take_input(page->app, page->viewport.width, page->viewport.height, now);
  take_wishes();
  return page->app.frame(now);
}

/// Asks the page for the words of the language that is wanted; once, since it may not have them.
void ask_for_words() {
  const std::string_view wanted = page->app.wanted_language();
  if (wanted == page->words) return;
  page->words = wanted;
  if (wanted != page->app.language()) bring_words(wanted);
}

void tell_page() {
  ask_for_words();
  if (page->app.registry().revision() != page->mirrored_revision) registry_changed();
  std::string looks(page->app.language());
  const bool dark = page->app.dark();
  looks += dark ? '1' : '0';
  if (looks != page->looks) {
    page->looks = looks;
    page_looks(page->app.language(), dark);
  }
}

void schedule(double wish_ms) {
  if (wish_ms == 0 || !page->wishes.empty()) page->frames_wanted = std::max(page->frames_wanted, 1);
  if (page->frames_wanted > 0) {
    ask_for_frame();
  } else if (wish_ms > 0) {
    page->timer = emscripten_set_timeout(on_timer, wish_ms, nullptr);
  }
}

EM_BOOL on_animation_frame(double, void*) {
  page->frame_asked = false;
  if (!page->gl_usable) return EM_FALSE;
  const double began = emscripten_get_now();
  if (page->frames_wanted > 0) --page->frames_wanted;
  apply_viewport();
  const double wish = lay_out();
  page->app.gl_paint();
  tell_page();
  schedule(wish);
  frame_drawn(emscripten_get_now() - began);
  return EM_FALSE;
}

bool make_window() {
  // Touches reach the screens as touches; SDL must not make mouse events of them. And SDL must not eat Backspace and
  // arrows that belong to real text fields.
  SDL_SetHint(SDL_HINT_TOUCH_MOUSE_EVENTS, "0");
  SDL_SetHint(SDL_HINT_EMSCRIPTEN_KEYBOARD_ELEMENT, "#canvas");
  if (SDL_Init(SDL_INIT_VIDEO) != 0) return false;
  page->window =
      SDL_CreateWindow("Bentbook", 0, 0, static_cast<int>(page->viewport.width),
                       static_cast<int>(page->viewport.height), SDL_WINDOW_RESIZABLE | SDL_WINDOW_ALLOW_HIGHDPI);
  return page->window != nullptr;
}

/// Not by SDL, which would link every GL function there is (cmake/deps/sdl2_wasm.sh).
bool make_context() {
  EmscriptenWebGLContextAttributes wanted;
  emscripten_webgl_init_context_attributes(&wanted);
  wanted.majorVersion = 2;
  wanted.alpha = wanted.depth = wanted.stencil = wanted.antialias = EM_FALSE;
  wanted.enableExtensionsByDefault = EM_FALSE;
  const EMSCRIPTEN_WEBGL_CONTEXT_HANDLE context = emscripten_webgl_create_context("#canvas", &wanted);
  return context > 0 && emscripten_webgl_make_context_current(context) == EMSCRIPTEN_RESULT_SUCCESS;
}

std::string inbox_part(int from, int size) {
  return page->inbox.substr(static_cast<std::size_t>(from), static_cast<std::size_t>(size));
}

void tell_task(TaskEvent event) {
  page->app.on({EventKind::kTask, {}, {}, 0, std::make_shared<const TaskEvent>(std::move(event))});
  wake(3);
}

}  // namespace
}  // namespace bentbook::page

using namespace bentbook::page;  // for the exported functions below, which cannot stand in a namespace

extern "C" {

/// Room for `size` bytes from the page; valid until the next call.
EMSCRIPTEN_KEEPALIVE char* bb_buffer(int size) {
  page->inbox.resize(static_cast<std::size_t>(size));
  return page->inbox.data();
}

/// Makes window and context: waits for the GPU, so it comes first, while stored values are still being read. False when
/// there is no WebGL 2.
EMSCRIPTEN_KEEPALIVE bool bb_open_window() { return make_window() && make_context(); }

/// Stored bytes: kit, then places.
EMSCRIPTEN_KEEPALIVE void bb_load(int kit_size, int places_size) {
  page->app.load(inbox_part(0, kit_size), inbox_part(kit_size, places_size));
  wake(3);
}

/// The language that the stored values, else the device, ask for. Valid until the next call.
EMSCRIPTEN_KEEPALIVE const char* bb_wanted_language() {
  page->app.set_viewport(page->viewport);
  page->words = page->app.wanted_language();
  return page->words.c_str();
}

/// Begins to draw. The viewport goes in first: fonts are baked for its scale, once.
EMSCRIPTEN_KEEPALIVE bool bb_start() {
  page->app.set_viewport(page->viewport);
  if (!page->app.gl_create()) return false;
  page->gl_usable = page->started = true;
  wake(3);
  return true;
}

/// No frame is on its way. (A timer may be.)
EMSCRIPTEN_KEEPALIVE bool bb_idle() { return !page->frame_asked; }

EMSCRIPTEN_KEEPALIVE void bb_wake(int frames) { wake(frames); }

/// The language tag of the device lies in the buffer.
EMSCRIPTEN_KEEPALIVE void bb_viewport(int language_size, float width, float height, float scale, float top, float right,
                                      float bottom, float left, bool reduced_motion, bool prefers_dark) {
  page->viewport = {width,  height, scale,          top,          right,
                    bottom, left,   reduced_motion, prefers_dark, inbox_part(0, language_size)};
  page->viewport_changed = true;
  wake(3);
}

/// `kind` is EventKind's number; key and text lie in the buffer.
EMSCRIPTEN_KEEPALIVE void bb_event(int kind, int key_size, int text_size, double number) {
  page->app.on(PlatformEvent{static_cast<EventKind>(kind), inbox_part(0, key_size), inbox_part(key_size, text_size),
                             static_cast<std::int64_t>(number)});
  wake(3);
}

/// A task's name lies in the buffer, as the page was given it.
EMSCRIPTEN_KEEPALIVE void bb_task_progress(int name_size, int per_mille) {
  if (const auto id = bentbook::read_task_name(inbox_part(0, name_size))) tell_task({*id, per_mille, std::nullopt});
}

/// …and behind it the bytes of its answer.
EMSCRIPTEN_KEEPALIVE void bb_task_done(int name_size, int size) {
  if (const auto id = bentbook::read_task_name(inbox_part(0, name_size)))
    tell_task({*id, 1000, bentbook::read_answer(id->kind, inbox_part(name_size, size))});
}

/// Its Worker ended without an answer; `loaded`: its module was there.
EMSCRIPTEN_KEEPALIVE void bb_task_failed(int name_size, bool loaded) {
  using bentbook::ErrorCode;
  if (const auto id = bentbook::read_task_name(inbox_part(0, name_size)))
    tell_task({*id, 0, bentbook::fail(loaded ? ErrorCode::kEmpty : ErrorCode::kMissing, "worker")});
}

/// `kind` is Action::Kind's number.
EMSCRIPTEN_KEEPALIVE void bb_act(int kind, int key_size, int text_size, double number) {
  add_wish(Action{static_cast<Action::Kind>(kind), inbox_part(0, key_size), inbox_part(key_size, text_size), number});
}

/// `key` is screens::Key's number.
EMSCRIPTEN_KEEPALIVE void bb_key(int key, bool down, bool shift, bool ctrl) {
  add_wish(KeyPress{static_cast<bentbook::screens::Key>(key), down, shift, ctrl});
}

EMSCRIPTEN_KEEPALIVE void bb_character(int code_point) { add_wish(static_cast<std::uint32_t>(code_point)); }

/// The registry as JSON; the mirror then shows this revision. Valid until the next call.
EMSCRIPTEN_KEEPALIVE const char* bb_registry() {
  page->mirrored_revision = page->app.registry().revision();
  page->outbox = registry_json(page->app.registry());
  return page->outbox.data();
}
EMSCRIPTEN_KEEPALIVE int bb_registry_size() { return static_cast<int>(page->outbox.size()); }

/// The page is being hidden and may never draw again: let what was just entered reach the platform's save().
EMSCRIPTEN_KEEPALIVE void bb_settle() {
  if (!page->started) return;
  do {
    static_cast<void>(lay_out());
  } while (!page->wishes.empty());
}

EMSCRIPTEN_KEEPALIVE void bb_context_lost() {
  page->gl_usable = false;
  page->app.gl_lost();
}

EMSCRIPTEN_KEEPALIVE bool bb_context_restored() {
  page->gl_usable = page->app.gl_create();
  page->frame_asked = false;
  wake(3);
  return page->gl_usable;
}

}  // extern "C"

int main() {
  page = new Page;
  return 0;
}
