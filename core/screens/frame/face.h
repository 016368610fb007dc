#pragma once
/// A face of a timber on a page of its own: what is marked on it, with the tape's numbers in one pull from end A.

#include <string>

#include "screens/app/pages.h"
#include "screens/frame/form.h"

namespace bentbook::screens {

/// `face` 1 to 4; `part`: which of its pages, from 0.
[[nodiscard]] Page frame_face_page(const std::string& mark, int face, int part = 0);

/// The face's number in a box, black where it is a reference face.
void face_box(Ui& ui, const Rect& box, Face face, bool reference);

/// A face at full length, small, as it lies on the horses: end A left, the near edge down.
void paint_face_strip(Ui& ui, const FaceMarks& marks, const Rect& box);

/// The timber's section with `up` on top and its left and right as the page has them; where its two reference faces
/// meet is black.
void paint_section(Ui& ui, const Timber& timber, Face up, const Rect& box);

}  // namespace bentbook::screens
