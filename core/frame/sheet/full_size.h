#pragma once
/// Full-size patterns of one timber: the stretches of its faces that are easier laid out from a sheet at 1:1 than with
/// rule and square: ends cut askew, tenons, notches, recesses, holes. What is square across the whole face needs none.
///
/// Inches on the face as it is looked at with end A at the left: x from the pattern's zero toward end B, y from the
/// face's edge below to the one above (face_marks.h, turned a quarter).

#include <optional>
#include <string>
#include <vector>

#include "frame/sheet/face_marks.h"

namespace bentbook {

/// inches of wood that a pattern shows beyond what is cut: enough to lay it along both arrises. What lies nearer
/// together than twice this stands on one pattern.
inline constexpr double kPatternMargin = 2;

struct FullSizePattern {
  Face face = Face::kTop;
  double from = 0, to = 0;          ///< the stretch, x
  double zero = 0;                  ///< station of x = 0: a tip, or where the joint begins
  bool at_a = false, at_b = false;  ///< zero is that end's tip
  double width = 0;
  bool reference_below = false;  ///< the reference edge is the one at y = 0
  bool open_right = true;        ///< the wood goes on at the right, else at the left: there words and figures stand
  bool turned = false;           ///< turned over it is the pattern of the opposite face
  struct Work {
    WorkOn on = WorkOn::kEndCut;
    int index = 0;  ///< in Timber::cuts or Timber::features
    friend bool operator==(const Work&, const Work&) = default;
  };
  std::vector<Work> work;
  /// The wood that stays, what goes right through taken out of it: counterclockwise; an opening inside it clockwise.
  std::vector<std::vector<Vec2>> outlines;
  std::vector<std::vector<Vec2>> openings;    ///< of what does not go through
  std::vector<std::optional<double>> depths;  ///< of each opening, under the face; nothing: not told (told_depth())
  std::vector<std::vector<Vec2>> hidden;      ///< cut from other faces
  std::vector<std::vector<Vec2>> waste;
  std::vector<FaceLine> lines;  ///< to be drawn and cut to
  std::vector<FaceHole> holes;
};

/// Face by face, from end A on. Of two opposite faces that mirror each other the reference face's alone. `margin`: of
/// wood beyond what is cut, inches.
[[nodiscard]] std::vector<FullSizePattern> full_size_patterns(const Timber& timber, const Sheet& sheet,
                                                              double margin = kPatternMargin);

/// x of the last line or middle of a hole.
[[nodiscard]] double last_mark(const FullSizePattern& pattern);
/// As a mirror across the timber shows it: what was at end A is at end B. Between the ends the zero line is the first
/// again, of the original the one at last_mark().
[[nodiscard]] FullSizePattern end_for_end(FullSizePattern pattern);
/// As a mirror along the timber shows it: the reference edge is the other one.
[[nodiscard]] FullSizePattern edge_for_edge(FullSizePattern pattern);

/// The mean of an outline's corners.
[[nodiscard]] Vec2 middle_of(const std::vector<Vec2>& outline);

/// Two patterns whose texts are equal are one sheet of paper: what is drawn on them, to a ten-thousandth of an inch.
[[nodiscard]] std::string pattern_key(const FullSizePattern& pattern);

}  // namespace bentbook
