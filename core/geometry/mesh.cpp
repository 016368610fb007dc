#include "geometry/mesh.h"

#include <algorithm>
#include <utility>

#include "geometry/cell.h"
#include "numeric/sorting.h"

namespace bentbook {
namespace {

using Polygon = std::vector<Vec3>;

struct FlatPiece {
  Polygon corners;
  int plane = 0;
};

/// Welding: corners nearer than this become one. Larger than what clipping's rounding can part.
constexpr double kWeld = 1e-7;

bool in_plane(const Polygon& polygon, const Plane& plane) {
  for (const Vec3& p : polygon)
    if (libm::fabs(above(plane, p)) > 10 * kSamePlace) return false;
  return true;
}

/// How a polygon that lies in a face of the solid taken away is counted, by whether the normals agree.
struct Flush {
  bool same_is_inside, opposite_is_inside;
};

/// Appends what of `polygon` lies outside of the convex set.
void subtract(Polygon polygon, Vec3 normal, const FixedList<Plane, kHoleSides + 2>& planes, Flush flush,
              std::vector<Polygon>& out) {
  for (const Plane& plane : planes) {
    if (!in_plane(polygon, plane)) continue;
    if (!(dot(normal, plane.normal) > 0 ? flush.same_is_inside : flush.opposite_is_inside)) {
      out.push_back(std::move(polygon));
      return;
    }
  }
  // Nothing is cut unless something of it really lies inside: fewer splinters.
  Polygon rest = polygon, outside, inside;
  std::vector<Polygon> cut_off;
  for (const Plane& plane : planes) {
    if (in_plane(rest, plane)) continue;
    split(rest, plane, outside, inside);
    if (!outside.empty()) cut_off.push_back(outside);
    rest.swap(inside);
    if (rest.empty()) {
      out.push_back(std::move(polygon));
      return;
    }
  }
  for (Polygon& p : cut_off) out.push_back(std::move(p));
}

/// The part inside of all body planes, none where it lies on the body's surface.
Polygon within_body(Polygon polygon, const std::vector<Plane>& body) {
  Polygon outside, inside;
  for (const Plane& plane : body) {
    if (in_plane(polygon, plane)) return {};
    split(polygon, plane, outside, inside);
    polygon.swap(inside);
    if (polygon.empty()) return {};
  }
  return polygon;
}

std::vector<std::pair<Plane, Polygon>> faces_of(const Cell& cell) {
  std::vector<std::pair<Plane, Polygon>> faces;
  int begin = 0;
  for (std::size_t f = 0; f < cell.planes.size(); ++f) {
    faces.emplace_back(cell.planes[f], Polygon(cell.corners.begin() + begin, cell.corners.begin() + cell.ends[f]));
    begin = cell.ends[f];
  }
  return faces;
}

class Surface {
 public:
  /// `polygon` with `normal` outward from the wood.
  void add(const Plane& plane, Polygon polygon) { pieces_.push_back({std::move(polygon), number_of(plane)}); }
  [[nodiscard]] std::vector<FlatPiece>& pieces() { return pieces_; }

 private:
  int number_of(const Plane& plane) {
    for (std::size_t i = 0; i < planes_.size(); ++i)
      if (dot(planes_[i].normal, plane.normal) > 1 - 1e-12 && libm::fabs(planes_[i].offset - plane.offset) < kWeld)
        return static_cast<int>(i);
    planes_.push_back(plane);
    return static_cast<int>(planes_.size()) - 1;
  }
  std::vector<Plane> planes_;
  std::vector<FlatPiece> pieces_;
};

void subtract_all(Surface& surface, const Plane& plane, Polygon polygon, const std::vector<Pocket>& pockets, int own) {
  std::vector<Polygon> pieces{std::move(polygon)}, next;
  const Vec3 normal = plane.normal;
  for (std::size_t k = 0; k < pockets.size(); ++k) {
    const int other = static_cast<int>(k);
    if (other == own) continue;
    const auto planes = planes_of(pockets[k]);
    // On the body a pocket that ends flush with the face takes it away. Of two pockets with a face in common the first
    // keeps it; where they face each other the wall between them is gone.
    const Flush flush = own < 0 ? Flush{true, false} : Flush{other < own, true};
    next.clear();
    for (Polygon& p : pieces) subtract(std::move(p), normal, planes, flush, next);
    pieces.swap(next);
  }
  const bool body = own < 0;
  for (Polygon& p : pieces) {
    if (!body) std::reverse(p.begin(), p.end());
    surface.add(body ? plane : Plane{-1 * plane.normal, -plane.offset}, std::move(p));
  }
}

/// Corners in order of x, so that neighbours are found without comparing all with all.
class Welder {
 public:
  explicit Welder(const std::vector<FlatPiece>& pieces) {
    for (const FlatPiece& piece : pieces) sorted_.insert(sorted_.end(), piece.corners.begin(), piece.corners.end());
    sort_by(sorted_, before);
    for (const Vec3& p : sorted_)
      if (find(p) < 0) corners_.push_back(p);
  }
  [[nodiscard]] int find(Vec3 p) const {
    for (std::size_t i = first_at(p.x - kWeld); i < corners_.size() && corners_[i].x <= p.x + kWeld; ++i)
      if (libm::fabs(corners_[i].y - p.y) <= kWeld && libm::fabs(corners_[i].z - p.z) <= kWeld)
        return static_cast<int>(i);
    return -1;
  }
  /// Corners strictly between two others, on the straight line, in order from a to b.
  void between(int a, int b, std::vector<std::pair<double, int>>& found) const {
    found.clear();
    const Vec3 p = corners_[static_cast<std::size_t>(a)], q = corners_[static_cast<std::size_t>(b)];
    const Vec3 d = q - p;
    const double length = norm(d);
    const double lo = (p.x < q.x ? p.x : q.x) - kWeld, hi = (p.x < q.x ? q.x : p.x) + kWeld;
    for (std::size_t i = first_at(lo); i < corners_.size() && corners_[i].x <= hi; ++i) {
      const int c = static_cast<int>(i);
      if (c == a || c == b) continue;
      const Vec3 e = corners_[i] - p;
      const double t = dot(e, d) / length;
      if (t <= 0 || t >= length || norm(e - (t / length) * d) > 2 * kWeld) continue;
      found.emplace_back(t, c);
    }
    sort_up(found);
  }
  [[nodiscard]] std::vector<Vec3>& corners() { return corners_; }

 private:
  static bool before(const Vec3& a, const Vec3& b) {
    if (a.x != b.x) return a.x < b.x;
    if (a.y != b.y) return a.y < b.y;
    return a.z < b.z;
  }
  [[nodiscard]] std::size_t first_at(double x) const {
    return static_cast<std::size_t>(
        std::lower_bound(corners_.begin(), corners_.end(), x, [](const Vec3& p, double v) { return p.x < v; }) -
        corners_.begin());
  }
  std::vector<Vec3> sorted_, corners_;
};

/// Triangles of one convex piece, all corners that lie on its edges taken in.
void fill(Mesh& mesh, const Welder& welder, std::vector<Vec3>& extra, int base, const FlatPiece& piece) {
  std::vector<int> ring;
  for (const Vec3& p : piece.corners) {
    const int c = welder.find(p);
    if (ring.empty() || (ring.back() != c && ring.front() != c)) ring.push_back(c);
  }
  if (ring.size() < 3) return;
  std::vector<int> full;
  std::vector<std::pair<double, int>> on_edge;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    full.push_back(ring[i]);
    welder.between(ring[i], ring[i + 1 == ring.size() ? 0 : i + 1], on_edge);
    for (const auto& [t, c] : on_edge) full.push_back(c);
  }
  if (full.size() == ring.size()) {
    for (std::size_t i = 1; i + 1 < full.size(); ++i)
      mesh.triangles.push_back({full[0], full[i], full[i + 1], piece.plane});
    return;
  }
  // A corner in the middle keeps every triangle from being flat.
  Vec3 middle{};
  for (const Vec3& p : piece.corners) middle = middle + p;
  const int centre = base + static_cast<int>(extra.size());
  extra.push_back((1 / static_cast<double>(piece.corners.size())) * middle);
  for (std::size_t i = 0; i < full.size(); ++i)
    mesh.triangles.push_back({centre, full[i], full[i + 1 == full.size() ? 0 : i + 1], piece.plane});
}

void add_edges(Mesh& mesh) {
  struct Half {
    int a, b, plane;
  };
  std::vector<Half> halves;
  for (const Mesh::Triangle& t : mesh.triangles)
    for (const auto& [a, b] : {std::pair{t.a, t.b}, {t.b, t.c}, {t.c, t.a}})
      halves.push_back({a < b ? a : b, a < b ? b : a, t.plane});
  sort_by(halves, [](const Half& p, const Half& q) {
    return p.a != q.a ? p.a < q.a : p.b != q.b ? p.b < q.b : p.plane < q.plane;
  });
  for (std::size_t i = 0; i < halves.size();) {
    std::size_t j = i;
    while (j < halves.size() && halves[j].a == halves[i].a && halves[j].b == halves[i].b) ++j;
    if (halves[i].plane != halves[j - 1].plane) mesh.edges.push_back({halves[i].a, halves[i].b});
    i = j;
  }
}

}  // namespace

Mesh mesh_of(const Solid& solid) {
  const Cell body = body_of(solid);
  Surface surface;
  for (auto& [plane, polygon] : faces_of(body)) subtract_all(surface, plane, std::move(polygon), solid.pockets, -1);
  for (std::size_t j = 0; j < solid.pockets.size(); ++j)
    for (auto& [plane, polygon] : faces_of(cell_of(solid.pockets[j]))) {
      Polygon inside = within_body(std::move(polygon), body.planes);
      if (!inside.empty()) subtract_all(surface, plane, std::move(inside), solid.pockets, static_cast<int>(j));
    }
  Mesh mesh;
  Welder welder(surface.pieces());
  std::vector<Vec3> extra;
  for (const FlatPiece& piece : surface.pieces())
    fill(mesh, welder, extra, static_cast<int>(welder.corners().size()), piece);
  mesh.corners = std::move(welder.corners());
  mesh.corners.insert(mesh.corners.end(), extra.begin(), extra.end());
  add_edges(mesh);
  return mesh;
}

}  // namespace bentbook
