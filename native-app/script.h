#pragma once
/// Steps for tests and pictures, one a line; # starts a comment. A step that cannot be done ends the run with status 1.
///
///   press KEY            the item's button, as the mirror would press it
///   tap X Y              a finger, CSS px
///   drag X Y X2 Y2       a finger, in ten moves
///   type TEXT            on the keyboard
///   key NAME             as SDL names it: Return, Escape, Backspace, Left, Page Down, …
///   set KEY TEXT         a text field
///   number KEY VALUE     a slider
///   hold KEY             a button that wants a long press
///   size W H             the window, CSS px
///   wait MS              let so much time go by (the clock of a script is its own: nothing sleeps)
///   expect KEY TEXT      the item's name or value holds the text
///   shot FILE            a picture of the window, PPM
///   list FILE            key, role, name, value, rectangle of every item, tab separated

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "screens/app/app.h"

namespace bentbook::desktop {

/// What a script needs of the window.
struct Stage {
  screens::App& app;
  double& clock_ms;
  std::function<void()> settle;                  ///< frames until nothing moves
  std::function<bool(const std::string&)> shot;  ///< writes a picture
  std::function<void(float, float)> resize;
  std::function<void(std::string_view)> type;
  std::function<bool(const std::string&)> key;  ///< false: no such key
};

/// Does all steps; false with the line and the reason on stderr at the first that fails.
bool run_script(const std::string& path, const Stage& stage);

}  // namespace bentbook::desktop
