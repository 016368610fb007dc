#pragma once
/// The App's parts, shared by the files that make it: app.cpp (input, events), app_store.cpp (what is kept),
/// app_steps.cpp (undo in words), app_frame.cpp (one frame), app_bars.cpp (bars, toast, rain lock), app_picture.cpp (a
/// page as a picture), app_notices.cpp (what must be said).

#include <optional>
#include <string>
#include <vector>

#include "book/history.h"
#include "render/renderer.h"
#include "render/solid_painter.h"
#include "screens/app/aloud.h"
#include "screens/app/app.h"
#include "screens/app/context.h"
#include "screens/app/pages.h"
#include "screens/app/stored.h"
#include "screens/desks/backup_desk.h"
#include "screens/desks/books_desk.h"
#include "screens/desks/pieces_desk.h"
#include "screens/desks/raising_desk.h"
#include "screens/desks/shop_desk.h"
#include "screens/rafter/memory.h"
#include "screens/raising/memory.h"
#include "screens/shop/memory.h"
#include "ui/keypad/keypad.h"
#include "ui/widgets_inside.h"

namespace bentbook::screens {

struct Toast {
  std::string text;
  enum class Undoes : std::uint8_t { kNothing, kPlaces, kKit, kBook } undoes = Undoes::kNothing;
  double until_ms = -1;  ///< < 0: none
  [[nodiscard]] float key_width() const { return undoes != Undoes::kNothing ? 112.0F : 0.0F; }
};

struct App::Impl {
  explicit Impl(Platform& to);
  ~Impl();
  Impl(const Impl&) = delete;
  Impl& operator=(const Impl&) = delete;

  Platform& platform;
  ImGuiContext* imgui = nullptr;
  Fonts fonts;
  render::Renderer renderer;
  render::SolidPainter solids;
  Theme theme;
  Viewport viewport;
  Registry registry;
  Gesture gesture;
  Keypad keypad;
  Pages pages;
  Ui::Memory memory;

  History<Kit> kit;
  History<Places> places;  ///< with `active` as it was loaded; what is shown is in `pages`
  Stored kit_store{"kit"}, places_store{"places"};
  BooksDesk desk{platform};
  ShopDesk shop{platform};
  BackupDesk backup{platform, desk, shop};
  PiecesDesk pieces{platform};
  ShopMemory shop_memory;
  RaisingDesk raising{platform};
  RaisingMemory raising_memory;
  RafterMemory rafter_memory;
  PrintingMemory printing;
  Aloud aloud{platform};

  bool locked = false, read_only = false;
  Hindrance hindrance = Hindrance::kNone;
  bool new_version = false, not_persistent = false;
  Toast toast;
  Toast::Undoes last_change = Toast::Undoes::kNothing;
  FrameMemory frame_memory;
  std::vector<NamedField> touched;
  struct StepWords {  ///< what undo and redo do; "" where it is not the change of one field
    std::string of;   ///< the state that they are for
    std::string undo, redo;
  } step_words;
  std::optional<Book> next_book;  ///< what a page made of the open book; it takes its place when the page is drawn
  PlatformEvent file;             ///< opened last: its name and bytes

  struct Shot {        ///< the page as a picture
    int round = 0;     ///< times it was laid out for it; 0: none is wanted
    float height = 0;  ///< of the page with its head, px
    bool drawing = false, ready = false;
    Viewport seen;                            ///< the screen's own
    std::vector<Ui::Memory::Scroll> scrolls;  ///< as they are on the screen
  } shot;

  double now_ms = 0, last_frame_ms = -1;
  int settle = 3;  ///< frames still to be drawn before resting
  float baked_text = 0, baked_scale = 0;
  bool told_awake = false, told_speech = false;
  unsigned seen_turns = 0;
  std::string seen_keypad;

  // app.cpp
  void woken(int frames = 3) { settle = settle < frames ? frames : settle; }
  void opened(const PlatformEvent& event);
  void current() const { ImGui::SetCurrentContext(imgui); }
  // app_store.cpp
  void load(std::string_view kit_bytes, std::string_view places_bytes);
  void save(Stored&);
  void change(Places next);
  void change_kit(Kit next);
  void apply_book();
  /// What the keys at the top take back: the book's edits where the place is about the book, else those of the places.
  [[nodiscard]] bool edits_book() const;
  [[nodiscard]] bool can_undo() const;
  [[nodiscard]] bool can_redo() const;
  void undo();
  void redo();
  // app_steps.cpp
  void word_steps();
  void say_step(std::string words);
  [[nodiscard]] std::vector<Stored*> stores();
  [[nodiscard]] std::string bytes_of(const Stored&) const;
  void take_back(Toast::Undoes);
  void stored_event(const PlatformEvent&);
  [[nodiscard]] BackupDesk::Parts parts() const;
  void take_stored(const PlatformEvent&);
  void shared(const PlatformEvent&);
  [[nodiscard]] Language wanted_language() const;
  [[nodiscard]] Language language() const;
  [[nodiscard]] bool dark() const;
  // app_frame.cpp
  void bake_fonts();
  void tell_pointer(const GestureStep&);
  double frame();
  void draw_root(Ui&);
  void draw_page(Ui&, Context&, Rect area);
  [[nodiscard]] double wish() const;
  // app_bars.cpp
  [[nodiscard]] Rect draw_bars(Ui&, Rect area, bool landscape);
  void draw_title(Ui&, Rect box, bool stacked);
  [[nodiscard]] bool finds(bool room);
  void draw_top_keys(Ui&, Rect box, bool stacked);
  void draw_places(Ui&, Rect box, bool stacked);
  void draw_back(Ui&, const Rect& box, bool worded);
  void draw_lock_strip(Ui&, Rect box);
  [[nodiscard]] Rect toast_box(const Ui&, Rect page);
  void draw_toast(Ui&, Rect page);
  [[nodiscard]] std::string_view state_words(const Ui&);
  [[nodiscard]] bool subject_is_book() const;
  [[nodiscard]] std::string_view subject_name(const Ui&) const;
  // app_picture.cpp
  void ask_picture();
  void begin_picture();
  void end_picture();
  [[nodiscard]] Rect draw_picture_head(Ui&, Rect area);
  void hand_picture(const ImDrawData&, render::ClearColour ground);
  // app_notices.cpp
  [[nodiscard]] Rect draw_notice(Ui&, Rect page);
  void keep_seen(bool Settings::*words);
  void draw_hindrance(Ui&, Rect& page);
};

}  // namespace bentbook::screens
