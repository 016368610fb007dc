#pragma once
/// What a screen may use: the values it shows, the widgets, the keypad, and the few ways to change something.

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "book/kit.h"
#include "book/places.h"
#include "render/solid_painter.h"
#include "screens/app/aloud.h"
#include "screens/desks/backup_desk.h"
#include "screens/desks/books_desk.h"
#include "screens/desks/pieces_desk.h"
#include "screens/desks/raising_desk.h"
#include "screens/desks/shop_desk.h"
#include "screens/frame/memory.h"
#include "screens/printing/memory.h"
#include "screens/rafter/memory.h"
#include "screens/raising/memory.h"
#include "screens/shop/memory.h"
#include "ui/keypad/keypad.h"
#include "ui/platform.h"
#include "ui/widgets.h"

namespace bentbook::screens {

class Pages;

/// A field that the user changed or looked at in the keypad, under the name that its page calls it by.
struct NamedField {
  std::string path, name;
};

struct Context {
  Ui& ui;
  Keypad& keypad;
  Pages& pages;
  Platform& platform;
  const Viewport& viewport;
  /// What is shown. Change a copy and hand it to change(); it is stored at once and can be undone.
  const Kit& kit;
  const Places& places;
  BooksDesk& desk;     ///< the books; the open one is changed by change_book()
  ShopDesk& shop;      ///< the log of the open book, once a page of the shop opened it
  BackupDesk& backup;  ///< all that is kept, for a copy of it or against one that came in
  PiecesDesk& pieces;  ///< codes that a camera has read of another phone's log
  ShopMemory& shop_memory;
  RaisingDesk& raising;  ///< what is worked out about the open book's raising
  RaisingMemory& raising_memory;
  RafterMemory& rafter_memory;
  PrintingMemory& printing;
  render::SolidPainter& solids;
  FrameMemory& frame_memory;
  std::vector<NamedField>& touched;  ///< the latest first
  Aloud& aloud;
  const PlatformEvent& file;  ///< opened last: key = its name, text = its bytes
  Rect page;                  ///< the page's box: what is left between the bars and the keypad
  bool landscape = false;
  std::string subject;  ///< what this page is about (Page::subject)
  float foot = 0;       ///< height of the page's own strip of keys at its foot: no short word lies over it

  std::function<void(Places)> change;
  std::function<void(Kit)> change_kit;
  /// The open book as it is to be: takes its place when the page is drawn, so that what the page holds of the old one
  /// stays good.
  std::function<void(Book)> change_book;
  /// Kit and places as they would be stored now, or as they lie there where they cannot be read.
  std::function<BackupDesk::Parts()> parts;
  /// Leaves this page and hands the one below it to somebody, as a picture of the whole of it.
  std::function<void()> share_page;
  /// A short word at the bottom that goes by itself; with `undo` it offers to take the last change back.
  std::function<void(std::string text, bool undo)> toast;

  [[nodiscard]] std::string_view say(Msg msg) const { return ui.say(msg); }
  /// Lengths as the settings want them printed.
  [[nodiscard]] LengthStyle style() const;
};

}  // namespace bentbook::screens
