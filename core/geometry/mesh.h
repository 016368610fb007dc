#pragma once
/// The surface of a solid, for pictures and for other programs' models. Inches.

#include <vector>

#include "geometry/solid.h"

namespace bentbook {

/// A closed surface: every edge belongs to two triangles, no corner lies inside another triangle's edge.
struct Mesh {
  std::vector<Vec3> corners;
  struct Triangle {
    int a, b, c;    ///< counterclockwise seen from outside
    int plane = 0;  ///< triangles of one flat face share this number
  };
  std::vector<Triangle> triangles;
  /// Edges where two flat faces meet: what is drawn as a line.
  struct Edge {
    int a, b;
  };
  std::vector<Edge> edges;
};
[[nodiscard]] Mesh mesh_of(const Solid& solid);

}  // namespace bentbook
