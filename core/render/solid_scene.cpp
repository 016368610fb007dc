#include "render/solid_scene.h"

#include <algorithm>

#include "numeric/sorting.h"

namespace bentbook::render {
namespace {

constexpr double kNear = 1e-9;
/// Faces that meet more flatly than this show no edge: the sides of a round hole (15° apart) are one surface.
constexpr double kFlatCosine = 0.94;

void widen(Vec3& lo, Vec3& hi, Vec3 p) {
  lo = {std::min(lo.x, p.x), std::min(lo.y, p.y), std::min(lo.z, p.z)};
  hi = {std::max(hi.x, p.x), std::max(hi.y, p.y), std::max(hi.z, p.z)};
}

std::uint16_t shade_of(Vec3 normal) {
  const double light = 0.90 + 0.10 * normal.z - 0.03 * normal.x - 0.02 * normal.y;
  return static_cast<std::uint16_t>(std::clamp(light, 0.75, 1.0) * 255);
}

struct Surface {
  std::vector<Vec3> places;   ///< of the mesh's corners, in the world
  std::vector<Vec3> normals;  ///< of each triangle
};

Surface surface_of(const Mesh& mesh, const Placement& at) {
  Surface out;
  out.places.reserve(mesh.corners.size());
  for (const Vec3& corner : mesh.corners) out.places.push_back(to_world(at, corner));
  out.normals.reserve(mesh.triangles.size());
  const auto place = [&](int i) { return out.places[static_cast<std::size_t>(i)]; };
  for (const Mesh::Triangle& t : mesh.triangles) {
    const Vec3 n = cross(place(t.b) - place(t.a), place(t.c) - place(t.a));
    const double length = norm(n);
    out.normals.push_back(length > 0 ? (1 / length) * n : Vec3{0, 0, 1});
  }
  return out;
}

/// The two triangles beside each side of a triangle, sorted by the side's corners.
struct SideOf {
  int low = 0, high = 0, triangle = 0;
};
std::vector<SideOf> sides_of(const Mesh& mesh) {
  std::vector<SideOf> sides;
  sides.reserve(mesh.triangles.size() * 3);
  for (std::size_t i = 0; i < mesh.triangles.size(); ++i) {
    const Mesh::Triangle& t = mesh.triangles[i];
    for (const auto& [a, b] : {std::pair{t.a, t.b}, std::pair{t.b, t.c}, std::pair{t.c, t.a}})
      sides.push_back({std::min(a, b), std::max(a, b), static_cast<int>(i)});
  }
  sort_by(sides, [](const SideOf& a, const SideOf& b) {
    if (a.low != b.low) return a.low < b.low;
    return a.high != b.high ? a.high < b.high : a.triangle < b.triangle;
  });
  return sides;
}

bool sharp(const std::vector<SideOf>& sides, const Surface& surface, const Mesh::Edge& edge) {
  const int low = std::min(edge.a, edge.b), high = std::max(edge.a, edge.b);
  const auto first = std::lower_bound(sides.begin(), sides.end(), SideOf{low, high, -1}, [](auto& a, auto& b) {
    return a.low != b.low ? a.low < b.low : a.high < b.high;
  });
  if (first == sides.end() || first + 1 == sides.end() || first->low != low || first->high != high) return true;
  const auto normal = [&](auto it) { return surface.normals[static_cast<std::size_t>(it->triangle)]; };
  return dot(normal(first), normal(first + 1)) < kFlatCosine;
}

/// Where a ray from `from` along `forward` meets the triangle; a negative number where it does not.
double hit(Vec3 from, Vec3 forward, Vec3 a, Vec3 b, Vec3 c) {
  const Vec3 ab = b - a, ac = c - a, p = cross(forward, ac);
  const double det = dot(ab, p);
  if (det < kNear && det > -kNear) return -1;
  const Vec3 s = from - a, q = cross(s, ab);
  const double u = dot(s, p) / det, v = dot(forward, q) / det;
  if (u < 0 || v < 0 || u + v > 1) return -1;
  return dot(ac, q) / det;
}

bool crosses_box(Vec3 from, Vec3 forward, Vec3 lo, Vec3 hi) {
  double enter = -1e300, leave = 1e300;
  const auto slab = [&](double p, double d, double l, double h) {
    if (d < kNear && d > -kNear) return p >= l - 1e-6 && p <= h + 1e-6;
    enter = std::max(enter, std::min((l - p) / d, (h - p) / d));
    leave = std::min(leave, std::max((l - p) / d, (h - p) / d));
    return enter <= leave + 1e-6;
  };
  return slab(from.x, forward.x, lo.x, hi.x) && slab(from.y, forward.y, lo.y, hi.y) &&
         slab(from.z, forward.z, lo.z, hi.z);
}

Vec3 place_of(const FaceCorner& c) {
  return {static_cast<double>(c.x), static_cast<double>(c.y), static_cast<double>(c.z)};
}

}  // namespace

void SolidScene::add(const Mesh& mesh, const Placement& at, Vec3 middle) {
  const Surface surface = surface_of(mesh, at);
  Part part{triangles.size() / 3, mesh.triangles.size(), {1e300, 1e300, 1e300}, {-1e300, -1e300, -1e300}, middle};
  const auto number = static_cast<std::uint16_t>(parts.size());
  // A corner is stored once for each flat face that it belongs to.
  std::vector<std::pair<int, std::uint32_t>> stored(mesh.corners.size(), {-1, 0});
  for (std::size_t i = 0; i < mesh.triangles.size(); ++i) {
    const Mesh::Triangle& t = mesh.triangles[i];
    for (const int corner : {t.a, t.b, t.c}) {
      auto& [plane, index] = stored[static_cast<std::size_t>(corner)];
      if (plane != t.plane) {
        plane = t.plane;
        index = static_cast<std::uint32_t>(corners.size());
        const Vec3 p = surface.places[static_cast<std::size_t>(corner)];
        corners.push_back({static_cast<float>(p.x), static_cast<float>(p.y), static_cast<float>(p.z), number,
                           shade_of(surface.normals[i])});
        widen(part.lo, part.hi, p);
      }
      triangles.push_back(index);
    }
  }
  const std::vector<SideOf> sides = sides_of(mesh);
  for (const Mesh::Edge& edge : mesh.edges) {
    if (!sharp(sides, surface, edge)) continue;
    const Vec3 a = surface.places[static_cast<std::size_t>(edge.a)],
               b = surface.places[static_cast<std::size_t>(edge.b)];
    edges.push_back({{static_cast<float>(a.x), static_cast<float>(a.y), static_cast<float>(a.z)},
                     {static_cast<float>(b.x), static_cast<float>(b.y), static_cast<float>(b.z)},
                     number});
  }
  parts.push_back(part);
}

void SolidScene::finish() {
  lo = {1e300, 1e300, 1e300};
  hi = {-1e300, -1e300, -1e300};
  for (const Part& part : parts) {
    if (part.triangles == 0) continue;
    widen(lo, hi, part.lo);
    widen(lo, hi, part.hi);
  }
  if (lo.x > hi.x) lo = hi = {};
}

View::View(const SolidScene& scene, const Camera& camera, double width, double height)
    : middle_(0.5 * (scene.lo + scene.hi)),
      width_(std::max(1.0, width)),
      height_(std::max(1.0, height)),
      dx_(camera.dx),
      dy_(camera.dy) {
  const double cos_yaw = libm::cos(camera.yaw), sin_yaw = libm::sin(camera.yaw);
  const double cos_tip = libm::cos(camera.tip), sin_tip = libm::sin(camera.tip);
  right_ = {cos_yaw, sin_yaw, 0};
  const Vec3 ahead{-sin_yaw, cos_yaw, 0}, z{0, 0, 1};
  forward_ = cos_tip * ahead - sin_tip * z;
  up_ = sin_tip * ahead + cos_tip * z;
  const Vec3 half = 0.5 * (scene.hi - scene.lo);
  const auto across = [&](Vec3 axis) {
    return libm::fabs(axis.x) * half.x + libm::fabs(axis.y) * half.y + libm::fabs(axis.z) * half.z;
  };
  reach_ = std::max(1.0, norm(half));
  // However it is turned, the plan's diagonal is the widest that it gets.
  const double wide = camera.turning ? libm::sqrt(half.x * half.x + half.y * half.y) : across(right_);
  const double high = camera.turning ? std::max(across(up_), 0.85 * reach_) : across(up_);
  const double room = 1.08;
  scale_ =
      camera.zoom * std::min(width_ / (2 * room * std::max(1.0, wide)), height_ / (2 * room * std::max(1.0, high)));
}

Vec2 View::to_px(Vec3 p) const {
  const Vec3 from = p - middle_;
  return {width_ / 2 + dx_ + scale_ * dot(from, right_), height_ / 2 + dy_ - scale_ * dot(from, up_)};
}

int View::pick(const SolidScene& scene, std::span<const std::uint8_t> seen, Vec2 px) const {
  const double x = (px.x - width_ / 2 - dx_) / scale_, y = -(px.y - height_ / 2 - dy_) / scale_;
  const Vec3 from = middle_ + x * right_ + y * up_ - (2 * reach_) * forward_;
  int found = -1;
  double nearest = 1e300;
  for (std::size_t i = 0; i < scene.parts.size(); ++i) {
    const SolidScene::Part& part = scene.parts[i];
    if ((i < seen.size() && seen[i] == 0) || !crosses_box(from, forward_, part.lo, part.hi)) continue;
    for (std::size_t t = 3 * part.first_triangle; t < 3 * (part.first_triangle + part.triangles); t += 3) {
      const auto corner = [&](std::size_t k) { return place_of(scene.corners[scene.triangles[t + k]]); };
      const double at = hit(from, forward_, corner(0), corner(1), corner(2));
      if (at < 0 || at >= nearest) continue;
      nearest = at;
      found = static_cast<int>(i);
    }
  }
  return found;
}

View::Rows View::rows() const {
  Rows rows{};
  const auto put = [&](float* row, Vec3 axis, double factor, double shift) {
    row[0] = static_cast<float>(axis.x * factor);
    row[1] = static_cast<float>(axis.y * factor);
    row[2] = static_cast<float>(axis.z * factor);
    row[3] = static_cast<float>(shift - dot(axis, middle_) * factor);
  };
  put(rows.x, right_, 2 * scale_ / width_, 2 * dx_ / width_);
  put(rows.y, up_, 2 * scale_ / height_, -2 * dy_ / height_);
  put(rows.z, forward_, depth_step(), 0);
  return rows;
}

Camera fitted(const SolidScene& scene, Camera camera, std::span<const std::uint8_t> seen, double width, double height,
              double share) {
  camera.zoom = 1;
  camera.dx = camera.dy = 0;
  const View view(scene, camera, width, height);
  Vec2 lo{1e300, 1e300}, hi{-1e300, -1e300};
  for (std::size_t i = 0; i < scene.parts.size() && i < seen.size(); ++i) {
    if (seen[i] == 0) continue;
    const Vec3 a = scene.parts[i].lo, b = scene.parts[i].hi;
    for (int corner = 0; corner < 8; ++corner) {
      const Vec2 p = view.to_px({corner & 1 ? b.x : a.x, corner & 2 ? b.y : a.y, corner & 4 ? b.z : a.z});
      lo = {std::min(lo.x, p.x), std::min(lo.y, p.y)};
      hi = {std::max(hi.x, p.x), std::max(hi.y, p.y)};
    }
  }
  if (hi.x <= lo.x || hi.y <= lo.y) return camera;
  constexpr double kMostZoom = 8;
  camera.zoom = std::min({kMostZoom, share * width / (hi.x - lo.x), share * height / (hi.y - lo.y)});
  camera.dx = (width / 2 - (lo.x + hi.x) / 2) * camera.zoom;
  camera.dy = (height / 2 - (lo.y + hi.y) / 2) * camera.zoom;
  return camera;
}

}  // namespace bentbook::render
