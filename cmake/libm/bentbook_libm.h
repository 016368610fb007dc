#ifndef BENTBOOK_LIBM_H
#define BENTBOOK_LIBM_H
/* The one libm: musl's mathematics under our own prefix, bit for bit the same on every compiler and target.
   Angles in radians, arguments as in C's <math.h>. */
#ifdef __cplusplus
extern "C" {
#endif

double bbm_sin(double x);
double bbm_cos(double x);
double bbm_tan(double x);
double bbm_asin(double x);
double bbm_acos(double x);
double bbm_atan(double x);
double bbm_sqrt(double x);
double bbm_fabs(double x);
double bbm_floor(double x);
double bbm_ceil(double x);
double bbm_round(double x);
double bbm_exp(double x);
double bbm_log(double x);
double bbm_cbrt(double x);
double bbm_atan2(double y, double x);
double bbm_fmod(double x, double y);
double bbm_hypot(double x, double y);
double bbm_pow(double x, double y);

#ifdef __cplusplus
}
#endif

#endif
