#pragma once
/// What drawings of joints are put together from. Inside frame/drawings alone.
///
/// A member's end is drawn as coming from the right: x away from the receiver, y up along its face, the member's lower
/// edge meeting its shoulder at (0, 0). A leaning member falls to the right. In the end, the whole is turned to how it
/// lies.

#include "draw/drawing.h"
#include "draw/sketch.h"
#include "frame/drawings/joint_wood.h"

namespace bentbook {

using draw::Sketch;

struct PinPattern;

/// The member's end and the receiver as they stand in the sketch.
struct EndSketch {
  explicit EndSketch(const JointWood& wood);

  JointWood wood;
  double cos = 1;
  double tall = 0;   ///< the member's height along the face
  double above = 0;  ///< how far the receiver is drawn past the member, up and down
  /// From a point of the shoulder along the member.
  [[nodiscard]] draw::Point on(double x, double y) const { return {x, y - wood.lean * x}; }
  /// Along the member, a unit vector; square to it, up.
  [[nodiscard]] draw::Point axis() const { return {cos, -wood.lean * cos}; }
  [[nodiscard]] draw::Point square() const { return {wood.lean * cos, cos}; }

  /// Both timbers, the member let in by `housing` and drawn to `length` from its shoulder.
  void draw_timbers(Sketch& sketch, double housing, double length) const;
  /// The depth of the housing; told aside where there is none.
  void draw_housing(Sketch& sketch, Length housing) const;
};

/// Where pegs are bored: the lowest, and the way up to the next.
struct PegPlace {
  draw::Point first;
  double step = 0;
};
[[nodiscard]] PegPlace place_of(const EndSketch& end, const PinPattern& peg, int pegs, double drawbore, double low,
                                double high, double length);
/// Pegs through the receiver's cheeks and a tenon between `low` and `high` (at the shoulder), as they are bored, with
/// their figures: pegs, peg.diameter, peg.from_shoulder, peg.spacing; told, of a square end: first_peg.
void draw_pegs(Sketch& sketch, const EndSketch& end, const PinPattern& peg, int pegs, double drawbore, double low,
               double high, double length);

/// Turned as the member comes.
[[nodiscard]] draw::Drawing turned(draw::Drawing drawing, MemberFrom from);

}  // namespace bentbook
