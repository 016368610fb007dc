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

/// What is laid over a part's faces, so that it can be told without its colour: lines that grow denser, then all of it;
/// kBars run level, where all others lean.
enum class PartPattern : std::uint8_t { kNone, kSparse, kCrossed, kDense, kFull, kBars };
inline constexpr int kPartPatterns = 6;

/// Where a part is drawn against where it stands: turned about `centre` by `turn` (its length in radians), then moved.
/// World axes, inches.
struct PartMotion {
  float move[3] = {};
  float turn[3] = {};
  float centre[3] = {};
  friend bool operator==(const PartMotion&, const PartMotion&) = default;
};

/// Straight colours, 0 to 1.
struct SolidInk {
  float ground[3] = {1, 1, 1};  ///< behind all
  float face[3] = {1, 1, 1};    ///< of a face in full light
  float edge[3] = {0, 0, 0};
  float lit[3] = {0.1F, 0.3F, 0.6F};  ///< edges of what is lit; its faces take a tint of it
  float tint[kPartPatterns][3] = {};  ///< of each pattern
  friend bool operator==(const SolidInk&, const SolidInk&) = default;
};

struct SolidPicture {
  std::shared_ptr<const SolidScene> scene;
  Camera camera;
  std::vector<std::uint8_t> looks;     ///< PartLook by part
  std::vector<std::uint8_t> patterns;  ///< PartPattern by part; empty: none anywhere
  std::vector<PartMotion> motions;     ///< by part; empty: all stand
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
  void upload_parts();
  void set_frame(float width, float height) const;

  unsigned faces_program_ = 0, edges_program_ = 0;
  unsigned faces_array_ = 0, edges_array_ = 0, corners_ = 0, triangles_ = 0, edges_ = 0;
  unsigned framebuffer_ = 0, colour_ = 0, depth_ = 0, parts_ = 0;
  SolidPicture picture_;
  bool parts_stale_ = true;
  std::shared_ptr<const SolidScene> uploaded_;
  int target_width_ = 0, target_height_ = 0;
  bool stale_ = false;
};

}  // namespace bentbook::render
