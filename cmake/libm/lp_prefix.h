#ifndef BENTBOOK_LP_PREFIX_H
#define BENTBOOK_LP_PREFIX_H
/* Included before every file of the linear program solver: its mathematics is the one libm's, or targets would take
   other pivots. floor, ceil, fabs and sqrt are exact everywhere. */
#include <math.h>

#include "bentbook_libm.h"

#define pow bbm_pow
#define exp bbm_exp
#define log bbm_log
#define fmod bbm_fmod
#endif
