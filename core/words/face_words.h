#pragma once
/// What is marked on a face, in words and numbers, as it is laid out on a page (draw/tape_page.h).

#include <string>
#include <utility>
#include <vector>

#include "draw/tape_page.h"
#include "frame/sheet/face_marks.h"
#include "frame/sheet/layout_marks.h"
#include "words/words.h"

namespace bentbook {

/// Numbers run from end A; offsets are gauged from the reference edge. Marks that are alike and near each other are
/// said once.
[[nodiscard]] draw::TapeStrip face_strip(const Frame& frame, const Timber& timber, const FaceMarks& marks,
                                         const Voice& voice);

/// The same without words and without the tips: the picture of one step. What the step makes is cut, the rest is seen.
[[nodiscard]] draw::TapeStrip step_strip(const Frame& frame, const Timber& timber, const FaceMarks& marks,
                                         const Voice& voice);

/// "Reference face up", "Face 3 up".
[[nodiscard]] std::string face_up_text(const FaceMarks& marks, Language language);
/// From which edge of the page offsets are gauged.
[[nodiscard]] Msg gauge_from(const FaceMarks& marks);

/// What there is to mark, in a line: "Tenon · 2 × Mortise · 3 × Hole".
[[nodiscard]] std::string face_summary(const Timber& timber, const FaceMarks& marks, Language language);

/// What a tape finds on the finished timber, each with its length: along the arrises, across faces 1 and 2 by both
/// diagonals. What reads the same is one row, and one length.
[[nodiscard]] std::vector<std::pair<std::string, std::string>> tape_check_texts(const CheckMeasures& check,
                                                                                const Voice& voice);

/// The unit that stands once over the page, not behind each number: "mm", "m"; "" where the numbers carry their marks.
[[nodiscard]] std::string_view page_unit(const Voice& voice);

/// A number as it stands beside the tape: every number on the page is rounded alike, so none carries an about sign.
[[nodiscard]] std::string tape_number_text(double inches, const Voice& voice);
/// What a marking gauge is set to: as fine as a tool, or a plate's slot loses its play on one side.
[[nodiscard]] std::string tape_gauge_text(double inches, const Voice& voice);
/// A depth: as fine as a tool, with the about sign, just as the card says it.
[[nodiscard]] std::string tape_depth_text(double inches, const Voice& voice);

/// A tick for each inch with a longer one for each foot, or for each centimetre with a longer one for each tenth.
void set_ticks(draw::TapeOptions& options, const Voice& voice);

}  // namespace bentbook
