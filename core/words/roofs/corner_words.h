#pragma once
/// Hips, valleys and jacks in words.

#include "roof/corner/corner_cuts.h"
#include "words/figures.h"

namespace bentbook {

[[nodiscard]] std::string_view corner_roof_text(int roof, Language language);
[[nodiscard]] std::string_view corner_kind_text(CornerKind kind, Language language);
[[nodiscard]] std::string_view corner_cut_text(CornerCutName name, Language language);
[[nodiscard]] std::string corner_caution_text(const CornerCaution& caution, const Voice& voice);
/// How a framing square gives a cut's line: "Square: 12 and 9 31⁄32, line along the 12"; against 300 mm to a metric
/// crew.
[[nodiscard]] std::string on_square_text(Angle off_square, const Voice& voice);
/// What a framing square's body and tongue hold for the hip's plumb and seat cuts: its run for a foot of the first
/// roof's run, and that roof's rise in 12; half of both where a leg is too short for them, and so on.
[[nodiscard]] std::string hold_square_text(const CornerInput& input, const RoofCorner& corner, const Voice& voice);
/// How an unbacked hip is moved and lowered, that a valley is not; "" where its top is planed.
[[nodiscard]] std::string drop_text(const CornerInput& input, const RoofCorner& corner, const Voice& voice);

/// Keys of roof/corner/corner_drawing.h.
[[nodiscard]] FigureText corner_figure(std::string_view key, const CornerInput& input, const RoofCorner& corner,
                                       const Voice& voice);
/// …of its corner_cut_drawing.
[[nodiscard]] FigureText corner_cut_figure(std::string_view key, const CornerCut& cut, const Voice& voice);

}  // namespace bentbook
