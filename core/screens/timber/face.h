#pragma once
/// A face of a timber on a page of its own: what is marked on it, with the tape's numbers in one pull from end A.

#include <string>

#include "screens/app/pages.h"
#include "screens/frame/form.h"

namespace bentbook::screens {

/// `face` 1 to 4; `part`: which of its pages, from 0.
[[nodiscard]] Page frame_face_page(const std::string& mark, int face, int part = 0);

}  // namespace bentbook::screens
