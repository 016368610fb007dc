#pragma once
/// Solids as they are shown: one array of faces and one of edges for the whole building, a camera, and what lies under
/// a finger. Pure values, no OpenGL (solid_painter.h). World axes and inches as everywhere; the picture is
/// orthographic: parallel edges stay parallel.

#include <cstdint>
#include <span>
#include <vector>

#include "geometry/mesh.h"
#include "geometry/solid.h"

namespace bentbook::render {

/// A corner of a face. `part`: number of the solid; `shade`: 0 to 255, light from above and from the viewer's left.
struct FaceCorner {
  float x = 0, y = 0, z = 0;
  std::uint16_t part = 0, shade = 255;
};
struct EdgeLine {
  float a[3] = {}, b[3] = {};
  std::uint16_t part = 0, unused = 0;
};

struct SolidScene {
  std::vector<FaceCorner> corners;
  std::vector<std::uint32_t> triangles;  ///< three corners each; a part's triangles lie together
  std::vector<EdgeLine> edges;
  struct Part {
    std::size_t first_triangle = 0, triangles = 0;  ///< counted in triangles
    Vec3 lo, hi;                                    ///< bounds
    Vec3 middle;                                    ///< of its length: where its mark stands
  };
  std::vector<Part> parts;
  Vec3 lo, hi;  ///< bounds of all

  /// Adds one solid's surface, placed; its number is the last part's.
  void add(const Mesh& mesh, const Placement& at, Vec3 middle);
  /// After the last add(): makes the bounds.
  void finish();
};

/// Turned about Z by `yaw` (0: looking along +Y, X to the right) and tipped down by `tip` (π/2: from above). Radians.
struct Camera {
  double yaw = 0, tip = 0;
  double zoom = 1;        ///< 1: all of it in sight
  double dx = 0, dy = 0;  ///< px, right and down
  bool turning = true;    ///< fitted so that it stays in sight however it is turned; false: fitted as it stands
  friend bool operator==(const Camera&, const Camera&) = default;
};

/// `camera` moved and zoomed so that the parts that are seen (not 0) fill that share of the rectangle; itself where
/// none is seen.
[[nodiscard]] Camera fitted(const SolidScene& scene, Camera camera, std::span<const std::uint8_t> seen, double width,
                            double height, double share);

/// A camera over a rectangle of px: world to px and back.
class View {
 public:
  View(const SolidScene& scene, const Camera& camera, double width, double height);
  [[nodiscard]] Vec2 to_px(Vec3 p) const;
  /// Distance along the direction of sight: smaller is nearer.
  [[nodiscard]] double depth(Vec3 p) const { return dot(p - middle_, forward_); }
  /// px per inch.
  [[nodiscard]] double scale() const { return scale_; }
  [[nodiscard]] Vec3 forward() const { return forward_; }
  /// Number of the nearest part under a point of the rectangle for which `seen[part]` is not 0; −1: none.
  [[nodiscard]] int pick(const SolidScene& scene, std::span<const std::uint8_t> seen, Vec2 px) const;
  /// Clip depth of one inch along the direction of sight.
  [[nodiscard]] double depth_step() const { return 0.95 / reach_; }
  /// Rows of the map to clip space: x, y, z; each dot (point, 1).
  struct Rows {
    float x[4], y[4], z[4];
  };
  [[nodiscard]] Rows rows() const;

 private:
  Vec3 right_, up_, forward_, middle_;
  double scale_ = 1, width_ = 1, height_ = 1, dx_ = 0, dy_ = 0, reach_ = 1;
};

}  // namespace bentbook::render
