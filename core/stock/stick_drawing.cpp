#include "stock/stick_drawing.h"

#include <algorithm>

#include "draw/sketch.h"

namespace bentbook {

draw::Drawing stick_drawing(const Section& section, const PlannedStick& stick, Length trim) {
  using draw::Fill;
  draw::Sketch sketch;
  // High enough to be hit with a finger, whatever the section.
  const double length = stick.length.in(), high = std::max(section.depth.in(), length / 16);
  const auto part = [&](Length from, Length to, Fill fill, draw::Stroke stroke) {
    sketch.rectangle({from.in(), 0}, {to.in(), high}, fill, stroke);
  };
  if (trim.count > 0) {
    part({}, trim, Fill::kWaste, draw::Stroke::kThin);
    part(stick.length - trim, stick.length, Fill::kWaste, draw::Stroke::kThin);
  }
  for (const StickDefect& defect : stick.defects)
    part(defect.from, std::min(defect.to, stick.length), Fill::kWaste, draw::Stroke::kThin);
  int n = 0;
  for (const Offcut& offcut : stick.offcuts) {
    part(offcut.from, offcut.from + offcut.length, offcut.kept ? Fill::kPaper : Fill::kWaste, draw::Stroke::kThin);
    if (offcut.kept)
      sketch.drawing.notes.push_back({{(offcut.from + offcut.length).in() - offcut.length.in() / 2, high / 2},
                                      "offcut:" + std::to_string(n),
                                      draw::Meaning::kFact});
    ++n;
  }
  n = 0;
  for (const StickPiece& piece : stick.pieces) {
    part(piece.from, piece.from + piece.length, stick.used ? Fill::kSection : Fill::kShade, draw::Stroke::kVisible);
    sketch.drawing.notes.push_back(
        {{piece.from.in() + piece.length.in() / 2, high / 2}, "piece:" + std::to_string(n++), draw::Meaning::kGiven});
  }
  sketch.rectangle({0, 0}, {length, high}, Fill::kNone);
  return sketch.drawing;
}

}  // namespace bentbook
