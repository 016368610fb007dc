#pragma once
/// Inside the raising's pages: pictures of a frame as it goes up, seen from a corner of the building, from above.

#include <span>
#include <vector>

#include "frame/plan.h"
#include "paper/page.h"
#include "raising/plan.h"

namespace bentbook {

/// Steps that bring the same kind of small timbers one after the other (rafters, braces, joists) are one picture.
struct PicturedSteps {
  std::size_t first = 0, last = 0;  ///< in RaisingPlan::steps
};
[[nodiscard]] std::vector<PicturedSteps> pictured_steps(const Frame& frame, const RaisingPlan& plan);

/// All placed timbers have room in `width` by `height` mm at one scale, whatever of them stands; `stands` is drawn in
/// thin lines, `comes` in wide ones, its sides tinted.
class RaisingPicture {
 public:
  RaisingPicture(const Frame& frame, double width, double height);
  [[nodiscard]] paper::Page of(std::span<const int> stands, std::span<const int> comes) const;

 private:
  struct Drawn {
    std::vector<draw::Point> outline;  ///< mm from the picture's left and top edges
    double depth = 0;                  ///< farther is larger
  };
  std::vector<Drawn> timbers_;  ///< by timber; no outline: it stands nowhere
};

}  // namespace bentbook
