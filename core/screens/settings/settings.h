#pragma once
/// How the app is set: units, theme, gloves, text size, language, screen, rain lock.

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page settings_page();

}  // namespace bentbook::screens
