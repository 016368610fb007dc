#include "book/demo.h"

namespace bentbook {

Places demo_places() {
  // An open wood shed, 16 ft wide, 10 in 12, 6 x 8 rafters against a ridge board.
  Places p;
  p.rafter.span = Length::feet(16);
  p.rafter.run = Length::feet(8);
  p.rafter.left.pitch = Slope::in_12(Length::inches(10));
  p.rafter.left.seat = Length::inches(7, 4);
  p.rafter.left.overhang = Length::inches(18);
  p.rafter.right = p.rafter.left;
  p.rafter.plate_breadth = Length::inches(11, 2);
  p.rafter.peak = PeakKind::kRidgeBoard;
  p.rafter.tail = TailCut::kPlumb;
  p.angles.saw = "Circular saw";
  return p;
}

}  // namespace bentbook
