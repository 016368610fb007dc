#pragma once
/// Vectors in double, for geometry only. Unit and axes are the caller's.

#include "numeric/libm.h"

namespace bentbook {

struct Vec2 {
  double x = 0, y = 0;
  friend bool operator==(const Vec2&, const Vec2&) = default;
};

struct Vec3 {
  double x = 0, y = 0, z = 0;
  friend bool operator==(const Vec3&, const Vec3&) = default;
  friend constexpr Vec3 operator+(Vec3 a, Vec3 b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
  friend constexpr Vec3 operator-(Vec3 a, Vec3 b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
  friend constexpr Vec3 operator*(double k, Vec3 a) { return {k * a.x, k * a.y, k * a.z}; }
};

constexpr double dot(Vec3 a, Vec3 b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
constexpr Vec3 cross(Vec3 a, Vec3 b) { return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x}; }
inline double norm(Vec3 a) { return libm::sqrt(dot(a, a)); }
inline Vec3 unit(Vec3 a) { return (1 / norm(a)) * a; }

}  // namespace bentbook
