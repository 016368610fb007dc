#pragma once
/// Paints a draw::Drawing into a rectangle: fitted at one scale, line types by ISO 128, dimensions by ISO 129 with
/// slashes at their ends, figures placed so that none lies on another and none is clipped (draw/layout.h).

#include <imgui.h>

#include <string>
#include <string_view>
#include <vector>

#include "draw/drawing.h"
#include "draw/layout.h"
#include "numeric/function_ref.h"
#include "ui/fonts.h"
#include "ui/input.h"
#include "ui/theme.h"

namespace bentbook::screens {

/// A figure as it was drawn. Those of Meaning::kGiven are to be made buttons over `target`.
struct CanvasFigure {
  std::string key;
  draw::Meaning meaning = draw::Meaning::kFact;
  std::string text;  ///< as the screen gave it
  Rect rect;         ///< bounding box of the text
  Rect target;       ///< for a finger: at least theme.target on each side, clipped to the canvas
};

/// The text of a figure: what stands on the drawing for its key ("" leaves the figure out).
using FigureText = FunctionRef<std::string(std::string_view key, draw::Meaning meaning)>;

/// What the fingers did to the view: a zoom about the canvas' middle and a shift in CSS px. {1, 0, 0} is the fit.
using CanvasView = draw::View;

/// One drawing on a screen. Keeps the last layout and makes it again only when the drawing, the texts, the rectangle
/// or the view changed.
class Canvas {
 public:
  /// What is to be drawn, `room` wide and at most as high. Returns the height that it takes.
  float set(const Theme& theme, const Fonts& fonts, const draw::Drawing& drawing, draw::Size room,
            const FigureText& text, const CanvasView& view = {});
  /// Draws what was set, in the middle of `rect`; the figures lie in figures() until the next call.
  void paint(ImDrawList& list, const Theme& theme, const Fonts& fonts, const draw::Drawing& drawing, const Rect& rect);
  /// The drawing's point that lies at (x, y) on the screen; `rect`: what it was painted in.
  [[nodiscard]] draw::Point point_at(const Rect& rect, float x, float y) const;
  [[nodiscard]] const std::vector<CanvasFigure>& figures() const { return figures_; }

 private:
  std::vector<CanvasFigure> figures_;
  draw::Layout layout_;
  std::vector<std::string> texts_;
  std::string fingerprint_;  ///< what layout_ was made of
};

}  // namespace bentbook::screens
