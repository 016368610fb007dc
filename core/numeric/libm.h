#pragma once
/// The one libm. Every transcendental call of the core goes through here, so that gcc, clang and WebAssembly print the
/// same bytes. Angles in radians, as in C. Square root and magnitude are exact everywhere.

#include <bentbook_libm.h>

namespace bentbook::libm {

inline constexpr double kPi = 3.14159265358979323846;
inline constexpr double kDegree = kPi / 180;  ///< in radians

inline double sin(double x) { return bbm_sin(x); }
inline double cos(double x) { return bbm_cos(x); }
inline double tan(double x) { return bbm_tan(x); }
inline double asin(double x) { return bbm_asin(x); }
inline double acos(double x) { return bbm_acos(x); }
inline double atan(double x) { return bbm_atan(x); }
inline double atan2(double y, double x) { return bbm_atan2(y, x); }
inline double sqrt(double x) { return __builtin_sqrt(x); }
inline double hypot(double x, double y) { return bbm_hypot(x, y); }
inline double fabs(double x) { return __builtin_fabs(x); }
inline double floor(double x) { return bbm_floor(x); }
inline double ceil(double x) { return bbm_ceil(x); }

}  // namespace bentbook::libm
