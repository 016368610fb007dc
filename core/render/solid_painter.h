#pragma once
/// Paints a SolidScene into a texture of its own with OpenGL ES 3.0: faces with a depth buffer, ink edges over them, so
/// that what is hidden stays hidden. State is set, never asked for. The texture goes on the screen as any picture does
/// (ImDrawList::AddImage, upside down: rows come from the bottom).

#include <imgui.h>

#include <cstdint>
#include <memory>
#include <vector>

#include "render/solid_scene.h"

namespace bentbook::render {

/// How a part is drawn. kHidden: not at all; kGhost: pale edges alone; kLit: filled with the accent.
enum class PartLook : std::uint8_t { kHidden, kPlain, kGhost, kLit };

/// Straight colours, 0 to 1.
struct SolidInk {
  float ground[3] = {1, 1, 1};  ///< behind all
  float face[3] = {1, 1, 1};    ///< of a face in full light
  float edge[3] = {0, 0, 0};
  float lit[3] = {0.1F, 0.3F, 0.6F};  ///< edges of what is lit; its faces take a tint of it
  friend bool operator==(const SolidInk&, const SolidInk&) = default;
};

struct SolidPicture {
  std::shared_ptr<const SolidScene> scene;
  Camera camera;
  std::vector<std::uint8_t> looks;  ///< PartLook by part
  SolidInk ink;
  float width = 0, height = 0, scale = 1;  ///< CSS px, device pixels per CSS px
  friend bool operator==(const SolidPicture&, const SolidPicture&) = default;
};

class SolidPainter {
 public:
  /// Needs a current context. False where it cannot do it.
  bool create();
  /// The context is gone, and every object with it.
  void lost();
  [[nodiscard]] bool ready() const { return faces_program_ != 0; }

  /// What the next paint() makes; needs no context.
  void show(SolidPicture picture);
  [[nodiscard]] ImTextureID texture() const;
  /// Makes the picture again if it changed. Needs a current context; leaves the screen's framebuffer bound.
  void paint();

 private:
  void upload();
  void size_target();
  void upload_looks() const;
  void set_frame(float width, float height) const;

  unsigned faces_program_ = 0, edges_program_ = 0;
  unsigned faces_array_ = 0, edges_array_ = 0, corners_ = 0, triangles_ = 0, edges_ = 0;
  unsigned framebuffer_ = 0, colour_ = 0, depth_ = 0, looks_ = 0;
  SolidPicture picture_;
  std::shared_ptr<const SolidScene> uploaded_;
  int target_width_ = 0, target_height_ = 0;
  bool stale_ = false;
};

}  // namespace bentbook::render
