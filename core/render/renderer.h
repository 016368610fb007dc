#pragma once
/// Paints ImGui's draw lists with OpenGL ES 3.0 (WebGL 2). State is set, never asked for: a query waits for the GPU.
/// Needs a current context in every call but lost().

#include <imgui.h>

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>

namespace bentbook::render {

/// Colour the frame starts from, straight (not premultiplied), 0 to 1.
struct ClearColour {
  float r = 1, g = 1, b = 1;
};

/// Bakes the fonts that were added to the atlas. False if there are none. Called instead of ImFontAtlas::Build(), which
/// links ImGui's own font too: a ninth of all the data that a phone downloads.
bool bake(ImFontAtlas& atlas);

class Renderer {
 public:
  /// Makes shaders, buffers and the texture of the atlas (ImGui::GetIO().Fonts, whose TexID it sets). False with the
  /// reason in failure() if the context cannot do it. After lost() or destroy() it may be called again.
  bool create(ImFontAtlas& atlas);
  /// The same for a second renderer in the context, which paints with the texture that the first one made.
  bool create_without_atlas();
  /// The atlas was built again: its texture is made anew.
  bool upload_atlas(ImFontAtlas& atlas);
  /// The context is gone, and every object with it.
  void lost();
  void destroy();
  /// Clears the framebuffer of width × height device pixels and paints. Positions in `data` are CSS px times
  /// data.FramebufferScale. Nothing is painted before create().
  void paint(const ImDrawData& data, int width, int height, ClearColour clear);

  /// The same on top of what is there.
  void paint_over(const ImDrawData& data, int width, int height);

  [[nodiscard]] bool ready() const { return program_ != 0; }
  [[nodiscard]] const std::string& failure() const { return failure_; }

 private:
  bool make_program();
  void make_buffers();
  void set_state(const ImDrawData& data, int width, int height) const;
  void paint_lists(const ImDrawData& data, int height) const;
  void paint_commands(const ImDrawList& list, const ImDrawData& data, int height, std::size_t first_index) const;

  unsigned program_ = 0, vertex_array_ = 0, vertices_ = 0, indices_ = 0, atlas_ = 0;
  std::string failure_;
};

}  // namespace bentbook::render
