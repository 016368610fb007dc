#include "roof/cut_section.h"

#include "numeric/libm.h"

namespace bentbook {

Section crossed_by(const Rafter& rafter, const CutAngle& cut, const Section& section) {
  if (cut.name != CutName::kSeat && cut.name != CutName::kBeamSeat) return section;
  const Length line = cut.name == CutName::kSeat ? rafter.seat : rafter.beam_seat;
  const Length across = Length::from_inches(line.in() * libm::cos(cut.off_square.rad()));
  return across > Length{} && across < section.depth ? Section{section.breadth, across} : section;
}

}  // namespace bentbook
