#pragma once
/// What pages about a face are put together from.

#include <string>

#include "draw/tape_page.h"
#include "frame/sheet/face_marks.h"
#include "ui/widgets.h"

namespace bentbook::screens {

[[nodiscard]] inline std::string face_number(Face face) { return std::to_string(static_cast<int>(face)); }

/// The face's number in a box, black where it is a reference face.
void face_box(Ui& ui, const Rect& box, Face face, bool reference);

/// A face at full length, small, as it lies on the horses: end A left, the near edge down.
void paint_face_strip(Ui& ui, const FaceMarks& marks, const Rect& box);

/// The timber's section to its proportion, in the middle of a square of the box's width, with `up` on top and its left
/// and right as the page has them; where its two reference faces meet is black.
void paint_section(Ui& ui, const Timber& timber, Face up, const Rect& box);
/// What the section's face numbers want around its box.
[[nodiscard]] float section_margin(const Ui& ui);

/// Over a tape's page: which faces lie left and right (the reference one heavy), and from where the tape runs.
/// `unit`: of the numbers, where they do not say it.
void face_columns(Ui& ui, const FaceMarks& marks, const draw::TapePage& page, const Rect& box, std::string_view unit);

/// Every number and every word of the page, for who cannot see it. Keys "<prefix>.row.<n>", "<prefix>.block.<n>".
void read_tape(Ui& ui, const std::string& prefix, const draw::TapeStrip& strip, const draw::TapePage& page,
               const Rect& box);

}  // namespace bentbook::screens
