#pragma once
/// Inside the frame solver: the plan's numbers as lines, and the timbers that meet there, by bent and side.

#include <array>
#include <vector>

#include "frame/mark.h"
#include "frame/placing/work.h"
#include "roof/plan/solve_roof.h"

namespace bentbook {

/// One roof side. x counts inward from the wall line: X = wall_x + dir · x.
struct RoofSide {
  double dir = 1, wall_x = 0;
  double tan = 0, cos = 1, sin = 0;
  double plate_top = 0, seat = 0, heel = 0, run = 0;
  char line = 'A', inner = 'B';
  [[nodiscard]] double out_x(double x) const { return wall_x + dir * x; }
  /// Height of the rafters' top and underside at X.
  [[nodiscard]] double top_at(double x) const { return plate_top + heel + dir * (x - wall_x) * tan; }
  [[nodiscard]] double under_at(double x) const { return plate_top + (dir * (x - wall_x) - seat) * tan; }
};

/// A long timber of pieces that are joined at some bents.
struct Run {
  std::vector<int> pieces;
  std::vector<double> from;  ///< where each piece's joint with the one before stands; the first: its end
  double half_joint = 0;
  /// The piece whose top or underside is at y.
  [[nodiscard]] int top_at(double y) const { return at(y + half_joint); }
  [[nodiscard]] int under_at(double y) const { return at(y - half_joint); }
  [[nodiscard]] int at(double y) const {
    if (pieces.empty()) return -1;
    std::size_t i = 0;
    while (i + 1 < pieces.size() && y >= from[i + 1] - 1e-9) ++i;
    return pieces[i];
  }
  /// Whether two pieces meet within reach of y: half a foot more than the joint.
  [[nodiscard]] bool joined_at(double y) const {
    for (std::size_t i = 1; i < from.size(); ++i)
      if (libm::fabs(from[i] - y) < half_joint + 6) return true;
    return false;
  }
};

struct Layout {
  RoofSide left, right;
  bool lean_to = false;
  double ridge_x = 0, ridge_z = 0;
  std::vector<double> bents;
  std::vector<int> labels;
  double first_out = 0, last_out = 0;  ///< outside of the end bents' posts
  double run_from = 0, run_to = 0;     ///< ends of plates and ridge
  double rafter_depth = 0, rafter_breadth = 0;
  double tie_top = 0;

  // Indices of placed timbers, −1 where there is none. By bent.
  std::vector<int> post_left, post_right, tie, king, queen_left, queen_right;
  Run sill_left, sill_right, plate_left, plate_right, ridge, purlin_left, purlin_right;
  std::vector<int> cross_sills;  ///< first and last bent

  // RoofForm::kHip.
  bool hip = false;
  double peak_from = 0, peak_to = 0;  ///< y of the ridge's ends, where the hips meet; alike: one peak
  RoofSolution roof;                  ///< in the frame's axes, sides in the order of HipSide
  std::array<int, 2> end_plates{-1, -1};
  std::array<std::vector<int>, 2> end_posts;  ///< between the corner posts, from left to right

  [[nodiscard]] int bent_count() const { return static_cast<int>(bents.size()); }
  [[nodiscard]] const RoofSide& side(bool is_right) const { return is_right ? right : left; }
  /// Of a hip roof: whether a bent stands at an end, under its own plate.
  [[nodiscard]] bool hipped_at(int bent) const { return hip && (bent == 0 || bent + 1 == bent_count()); }
};

/// Of a hip roof: whether its end plates lie over the ends of the wall plates, each with half of its depth.
[[nodiscard]] bool lapped_plates(const FramePlan& plan);

/// Errors as solve_frame.
[[nodiscard]] Result<Layout> lay_out(const FramePlan& plan);

/// A run along Y between two ends, of pieces no longer than stock that meet over bents but the `spare` outermost ones.
struct RunPlacing {
  TimberKind kind = TimberKind::kPlate;
  char line = 0;
  Section section;
  double x = 0, top = 0;
  double from = 0, to = 0;
  Meeting scarf = Meeting::kPlateScarf;
  int spare = 1;
};
[[nodiscard]] Run place_run(Work& work, const Layout& layout, const RunPlacing& placing);

/// Cuts an end plumb at X = x, the waste toward `side` (±1 along X), and sets its tip.
void cut_plumb(Work& work, int timber, End end, double x, double side);

}  // namespace bentbook
