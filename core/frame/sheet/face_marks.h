#pragma once
/// What is marked on one face, as the face is looked at with end A up: x is the station from end A's tip, y runs across
/// the page from the face's left edge to its right. Rolled away from whoever stands at the left, the face at the left
/// comes up next: 1, 2, 3, 4. Inches and radians.

#include <optional>
#include <vector>

#include "frame/sheet/sheet.h"

namespace bentbook {

/// A line to draw and cut to. off_square: 0 square across the face, π/2 along the timber; never negative.
struct FaceLine {
  Vec2 a, b;
  double off_square = 0;
  bool now = true;  ///< made by the step that is shown (shop/step_marks.h)
};

struct FaceHole {
  Vec2 centre;
  double diameter = 0;
};

/// All that one end cut or one feature marks on the face.
struct FaceMark {
  WorkOn work = WorkOn::kEndCut;
  int index = 0;  ///< in Timber::cuts or Timber::features
  std::vector<FaceLine> lines;
  std::vector<std::vector<Vec2>> waste;
  std::vector<FaceHole> holes;
  std::vector<double> gauges;   ///< of lines along the timber, from the reference edge, rising
  std::optional<double> depth;  ///< under the face; nothing: right through, no floor, or an end cut
};

/// Where another timber lands on the face: the box around it.
struct FaceLanding {
  int joint = 0, mate = 0;  ///< in Frame::joints, Frame::timbers
  Vec2 low, high;
};

struct FaceMarks {
  Face face = Face::kTop;
  Face left = Face::kNear, right = Face::kFar;  ///< the faces next to it, as the page has them
  double length = 0, width = 0;
  bool reference = false;   ///< the face is one of the timber's two reference faces
  bool gauge_left = false;  ///< its reference edge, where it meets a reference face, is the left one
  std::vector<FaceMark> marks;
  std::vector<std::vector<Vec2>> hidden;  ///< outlines of what is cut from other faces
  std::vector<FaceLanding> landings;
  /// From the reference edge.
  [[nodiscard]] double gauge(double y) const { return gauge_left ? y : width - y; }
};

/// Width and height of the section as it lies with `up` on top, the greater of them `side`.
[[nodiscard]] Vec2 section_within(const Sides& sides, Face up, double side);

/// The face that comes up when the timber is rolled on from `face`.
[[nodiscard]] constexpr Face rolled(Face face) {
  return face == Face::kFar ? Face::kTop : static_cast<Face>(static_cast<int>(face) + 1);
}

[[nodiscard]] FaceMarks face_marks(const Timber& timber, const Sheet& sheet, Face face);

}  // namespace bentbook
