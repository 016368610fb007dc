#pragma once
/// A frame's draw data as pixels, also what lies below a screen's edge.

#include <imgui.h>

#include <string>

#include "render/renderer.h"

namespace bentbook::render {

/// Four bytes a pixel: red, green, blue, opaque; rows from the top.
struct Pixels {
  int width = 0, height = 0;
  std::string rgba;
};
/// `scale`: pixels per CSS px. Needs a current context, reads back from it (and so waits for the GPU); leaves the
/// screen's framebuffer bound. Nothing where the context makes no picture.
[[nodiscard]] Pixels pixels_of(Renderer& renderer, const ImDrawData& data, float scale, ClearColour clear);

}  // namespace bentbook::render
