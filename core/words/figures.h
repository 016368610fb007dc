#pragma once
/// The text of each figure on a drawing, by its key: what stands there and what it is called.

#include <string>
#include <string_view>

#include "cut/mitre.h"
#include "cut/triangle.h"
#include "words/words.h"

namespace bentbook {

struct FigureText {
  std::string text;  ///< "12′ 7 3⁄8″", "39.8°", "8:12"
  std::string name;  ///< "Span", "Plumb cut", …
  /// What stands on the drawing, where that is less or more: "8" on the rise of a pitch's triangle (not at its arc).
  std::string drawn{};
};

/// The same, drawn without a minus sign: the drawing shows on which side it lies.
[[nodiscard]] FigureText drawn_unsigned(FigureText figure);
/// A pitch; on the rise of its triangle (draw/pitch_mark.h) its rise alone.
[[nodiscard]] FigureText pitch_figure(const Slope& pitch, const Voice& voice);
/// The level side of that triangle: "12".
[[nodiscard]] FigureText pitch_run_figure(const Voice& voice);
/// Keys of roof/rafter_drawing.h and roof/pattern.h.
[[nodiscard]] FigureText rafter_figure(std::string_view key, const RafterInput& input, const RafterPair& pair,
                                       const Voice& voice);
/// Keys of cut/angle_drawing.h.
[[nodiscard]] FigureText triangle_figure(std::string_view key, const TriangleInput& input, const Triangle& triangle,
                                         const Voice& voice);
[[nodiscard]] FigureText setting_figure(std::string_view key, const Setting& setting, const Section& section,
                                        const Voice& voice);
[[nodiscard]] FigureText mitre_figure(std::string_view key, Angle between, Length depth_a, Length depth_b,
                                      const Mitre& mitre, const Voice& voice);
[[nodiscard]] FigureText flip_figure(std::string_view key, Length gap, Length depth, Angle error, const Voice& voice);

}  // namespace bentbook
