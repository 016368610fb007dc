#ifndef BENTBOOK_MUSL_PREFIX_H
#define BENTBOOK_MUSL_PREFIX_H
/* Included before every musl file of the one libm: gives all its symbols our own prefix, so that neither the host's
   libm nor the compiler's built-ins can take their place. The host's headers come first, under their own names. */
#include <endian.h>
#include <float.h>
#include <math.h>
#include <stdint.h>

#include "bentbook_libm.h"

#define hidden __attribute__((__visibility__("hidden")))

/* exp, pow and log have a second path for processors with a fused multiply-add; it rounds differently. */
#undef __FP_FAST_FMA
#undef TOINT_INTRINSICS

#define sin bbm_sin
#define cos bbm_cos
#define tan bbm_tan
#define asin bbm_asin
#define acos bbm_acos
#define atan bbm_atan
#define atan2 bbm_atan2
#define sqrt bbm_sqrt
#define fabs bbm_fabs
#define floor bbm_floor
#define ceil bbm_ceil
#define round bbm_round
#define fmod bbm_fmod
#define hypot bbm_hypot
#define pow bbm_pow
#define exp bbm_exp
#define log bbm_log
#define cbrt bbm_cbrt
#define scalbn bbm_scalbn
#define __sin bbm_sin_
#define __cos bbm_cos_
#define __tan bbm_tan_
#define __rem_pio2 bbm_rem_pio2_
#define __rem_pio2_large bbm_rem_pio2_large_
#define __rsqrt_tab bbm_rsqrt_tab_
#define __exp_data bbm_exp_data_
#define __pow_log_data bbm_pow_log_data_
#define __log_data bbm_log_data_
#define __math_oflow bbm_math_oflow_
#define __math_uflow bbm_math_uflow_
#define __math_xflow bbm_math_xflow_
#define __math_divzero bbm_math_divzero_
#define __math_invalid bbm_math_invalid_

/* Declared in musl's libm.h, never built; glibc has other functions of these names. */
#define __sinl bbm_sinl_
#define __cosl bbm_cosl_
#define __tanl bbm_tanl_

double bbm_scalbn(double x, int n);

#endif
