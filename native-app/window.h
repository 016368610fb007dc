#pragma once
/// The screens in a desktop window: SDL2, OpenGL ES 3. Nothing is drawn while nothing changes.
///
/// Options for tests and pictures, not told to users:
///   --size WxH       CSS px (default 420x860)
///   --scale S        device pixels per CSS px (default: the display's own)
///   --dark           as if the desktop asked for dark
///   --language TAG   as if the desktop were set to it
///   --script FILE    steps to do, then the window closes (script.h)

namespace bentbook::desktop {

/// Returns the exit status: 0, or 1 when there is no window, no OpenGL ES 3, or a step of the script failed.
int run_window(int argc, char** argv);

}  // namespace bentbook::desktop
