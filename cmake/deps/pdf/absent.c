/* In the place of what the library is built without: no font but our own is ever asked for. */
#include "hpdf_fontdef.h"

HPDF_FontDef HPDF_Base14FontDef_New(HPDF_MMgr mmgr, const char *font_name) {
  (void)mmgr, (void)font_name;
  return NULL;
}
