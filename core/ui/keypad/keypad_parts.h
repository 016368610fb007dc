#pragma once
/// What the two halves of the keypad's panel share. Only they include this.

#include "ui/keypad/keypad.h"
#include "ui/widgets_inside.h"

namespace bentbook::screens {

inline constexpr float kTapeHeight = 56;
inline constexpr float kWideStrip = 560;  ///< from here the tape stands beside the slots

/// Figures on keys and in slots: as large as the boxes take.
[[nodiscard]] inline ImFont& figure_font(const Ui& ui, float height) {
  return ui.fonts.measure->FontSize <= height ? *ui.fonts.measure : *ui.fonts.strong;
}
/// Title, and below it the echo; at large text an error takes the title's place too.
[[nodiscard]] inline float words_height(const Ui& ui) {
  const float two = ui.fonts.note->FontSize + ui.fonts.strong->FontSize;
  return ui.fonts.note->FontSize > 26 ? two : two + ui.fonts.note->FontSize;
}
[[nodiscard]] inline bool shows_forms(const Keypad& keypad) { return keypad.quantity() == Quantity::kSlope; }

void keypad_strip(Ui&, Keypad&, const Rect& strip);

}  // namespace bentbook::screens
