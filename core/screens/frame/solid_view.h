#pragma once
/// The building in 3D as more than one page shows it: turned by one finger (across the page where that scrolls), zoomed
/// and moved by two, a timber lit by a tap, marks written where there is room for them. The page says how each timber
/// looks.

#include <string>
#include <vector>

#include "draw/box.h"
#include "numeric/function_ref.h"
#include "render/solid_painter.h"
#include "screens/app/context.h"
#include "screens/frame/form.h"
#include "screens/frame/solid_memory.h"

namespace bentbook::screens {

/// By part of the scene, which is by placed timber. Empty patterns or motions: none.
struct SolidLooks {
  std::vector<std::uint8_t> looks, patterns;
  std::vector<render::PartMotion> motions;
};

[[nodiscard]] render::Camera camera_of(int kind);
/// Solids of the frame that is shown, made once for each solve.
void make_scene(SolidMemory&, const ShownFrame&);

struct SolidPage {
  std::string key;   ///< with ".picture" and ".fit" behind it
  std::string name;  ///< read aloud
  std::string of;    ///< changes when the looks do: marks are placed anew
  bool labels = true;
};
/// Draws it into `box` and follows the fingers; `looks` is asked again when a tap changed what is lit. True: a tap
/// landed on nothing.
bool draw_solids(Context&, const ShownFrame&, SolidMemory&, Rect box, const SolidPage&,
                 FunctionRef<SolidLooks()> looks);

/// What the timbers that are lit cover on a picture: a box along each, px from its top left.
[[nodiscard]] std::vector<draw::Box> lit_boxes(const Frame&, const SolidMemory&, const std::vector<std::uint8_t>& looks,
                                               const render::View&);

/// From which side it is seen, as four keys.
void view_choice(Context&, ItemKey key, SolidMemory&);
/// The page parted for a building and what stands below it, or beside it on a wide page.
struct BesidePicture {
  Rect picture, below;
};
[[nodiscard]] BesidePicture beside_picture(const Context&);

/// A small box filled as such a pattern is, for a legend.
void draw_pattern(Ui&, Rect, render::PartPattern);
/// Colour of a pattern in the theme.
[[nodiscard]] ImU32 pattern_colour(const Theme&, render::PartPattern);

}  // namespace bentbook::screens
