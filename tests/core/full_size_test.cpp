#include "frame/sheet/full_size.h"

#include <algorithm>
#include <catch_amalgamated.hpp>

#include "frame/placing/hand_timber.h"
#include "frame/placing/solve_frame.h"
#include "frame/sheet/full_size_drawing.h"
#include "geometry/outline.h"
#include "numeric/libm.h"
#include "plans.h"
#include "random.h"

using namespace bentbook;

namespace {

using Polygon = std::vector<Vec2>;

bool in_convex(const Polygon& polygon, Vec2 p) {
  bool left = true, right = true;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Vec2 a = polygon[i], b = polygon[(i + 1) % polygon.size()];
    const double turn = (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
    left = left && turn > 0;
    right = right && turn < 0;
  }
  return left || right;
}

/// How often the outlines run around the point.
int winding(const std::vector<Polygon>& outlines, Vec2 p) {
  int turns = 0;
  for (const Polygon& outline : outlines)
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const Vec2 a = outline[i], b = outline[(i + 1) % outline.size()];
      const double turn = (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
      if (a.y <= p.y && b.y > p.y && turn > 0) ++turns;
      if (a.y > p.y && b.y <= p.y && turn < 0) --turns;
    }
  return turns;
}

Polygon box(double x0, double y0, double x1, double y1) { return {{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}; }

Saw hand_saw() {
  Saw saw;
  saw.kind = SawKind::kHand;
  return saw;
}

}  // namespace

TEST_CASE("what is left of a face has wood inside it and nothing else", "[full-size]") {
  Random random(81);
  for (int round = 0; round < 400; ++round) {
    const Polygon whole = box(0, 0, 20, 8);
    std::vector<Polygon> taken;
    for (auto n = random.whole(0, 5); n > 0; --n) {
      // On a grid now and then, so that edges run along each other.
      const auto place = [&](std::int64_t most) {
        return round % 2 == 0 ? static_cast<double>(random.whole(-2, most))
                              : random.real(-2, static_cast<double>(most));
      };
      const double x = place(20), y = place(8), w = 1 + static_cast<double>(random.whole(0, 6)), h = 2;
      if (random.whole(0, 1) == 0)
        taken.push_back(box(x, y, x + w, y + h));
      else
        taken.push_back({{x, y}, {x + w, y - 1}, {x + w / 2, y + h}});
    }
    const auto outlines = left_over(whole, taken);
    for (int i = 0; i < 200; ++i) {
      const Vec2 p{random.real(-1, 21), random.real(-1, 9)};
      const bool wood = in_convex(whole, p) &&
                        std::none_of(taken.begin(), taken.end(), [&](const Polygon& t) { return in_convex(t, p); });
      REQUIRE(winding(outlines, p) == (wood ? 1 : 0));
    }
  }
}

TEST_CASE("a notch at the edge makes one outline, an opening inside makes two", "[full-size]") {
  const std::vector<Polygon> notch{{{5, -1}, {9, -1}, {9, 2}}};
  const auto notched = left_over(box(0, 0, 20, 8), notch);
  REQUIRE(notched.size() == 1);
  CHECK(notched[0].size() == 7);
  const std::vector<Polygon> opening{box(5, 3, 9, 5)};
  const auto opened = left_over(box(0, 0, 20, 8), opening);
  REQUIRE(opened.size() == 2);
  CHECK(signed_area(opened[0]) + signed_area(opened[1]) == Catch::Approx(152));
  CHECK(left_over(box(0, 0, 20, 8), {}).size() == 1);
}

// A rise of 9 in 12 off square: over the depth a plumb cut runs back by three quarters of it (plane geometry).
TEST_CASE("a common rafter's pattern at the peak has its plumb cut and nothing on top", "[full-size]") {
  FramePlan plan = default_plan(Length::feet(24), Length::feet(24), Length::feet(10), Slope::in_12(Length::inches(9)));
  const auto frame = solve_frame(plan);
  REQUIRE(frame);
  const auto rafter = std::find_if(frame->timbers.begin(), frame->timbers.end(),
                                   [](const Timber& t) { return t.kind == TimberKind::kCommonRafter; });
  REQUIRE(rafter != frame->timbers.end());
  const Sheet sheet = solve_sheet(*frame, static_cast<int>(rafter - frame->timbers.begin()), hand_saw());
  const auto patterns = full_size_patterns(*rafter, sheet);
  REQUIRE(patterns.size() >= 2);
  const double depth = rafter->sides.z_hi - rafter->sides.z_lo;
  bool peak = false;
  for (const FullSizePattern& p : patterns) {
    CHECK((p.face == Face::kNear || p.face == Face::kFar));
    CHECK(p.turned);
    CHECK(p.to - p.from < 40);
    if (!p.at_b) continue;
    peak = true;
    CHECK(p.zero == Catch::Approx(rafter->length));
    double least = 0, most = -100;
    for (const FaceLine& line : p.lines)
      if (std::max(line.a.x, line.b.x) > -1e-9) {
        least = std::min({least, line.a.x, line.b.x});
        most = std::max({most, line.a.x, line.b.x});
      }
    CHECK(most - least == Catch::Approx(0.75 * depth));
  }
  CHECK(peak);
}

TEST_CASE("square ends and what lies square across a face want no pattern", "[full-size]") {
  HandTimber hand;
  hand.mark = "X-1";
  hand.wood.nominal = hand.wood.design = hand.wood.actual = {Length::inches(8), Length::inches(8)};
  hand.length = Length::feet(8);
  const auto timber = solve_hand_timber(hand);
  REQUIRE(timber);
  Frame frame;
  frame.timbers = {*timber};
  CHECK(full_size_patterns(*timber, solve_sheet(frame, 0, hand_saw())).empty());
  // 10° seen from the side alone: one of the two side faces, which mirror each other.
  hand.b.angle = Angle::degrees(10);
  frame.timbers = {*solve_hand_timber(hand)};
  const auto patterns = full_size_patterns(frame.timbers[0], solve_sheet(frame, 0, hand_saw()));
  REQUIRE(patterns.size() == 1);
  CHECK(patterns[0].at_b);
  CHECK(patterns[0].turned);
}

TEST_CASE("every pattern of random frames is closed, lies on its stretch and names what is cut", "[full-size]") {
  Random random(5);
  for (int round = 0; round < 12; ++round) {
    const auto frame = solve_frame(random_plan(random));
    if (!frame) continue;
    for (std::size_t i = 0; i < frame->timbers.size(); ++i) {
      const Timber& timber = frame->timbers[i];
      const Sheet sheet = solve_sheet(*frame, static_cast<int>(i), hand_saw());
      for (const FullSizePattern& p : full_size_patterns(timber, sheet)) {
        REQUIRE(!p.outlines.empty());
        REQUIRE(!p.work.empty());
        REQUIRE(p.to > p.from);
        double area = 0;
        for (const auto& outline : p.outlines) {
          area += signed_area(outline);
          for (const Vec2& corner : outline) {
            REQUIRE((corner.x > p.from - 1e-6 && corner.x < p.to + 1e-6));
            REQUIRE((corner.y > -1e-6 && corner.y < p.width + 1e-6));
          }
        }
        REQUIRE(area > 0);
        REQUIRE(area < (p.to - p.from) * p.width + 1e-6);
      }
    }
  }
}

TEST_CASE("a pattern tells the depths that the face's tape tells, no others: beside a tenon askew there is no floor",
          "[full-size]") {
  FramePlan plan = default_plan(Length::feet(24), Length::feet(24), Length::feet(10), Slope::in_12(Length::inches(9)));
  const auto frame = solve_frame(plan);
  REQUIRE(frame);
  int told = 0, not_told = 0, deepest = 0;
  for (std::size_t t = 0; t < frame->timbers.size(); ++t) {
    const Timber& timber = frame->timbers[t];
    const Sheet sheet = solve_sheet(*frame, static_cast<int>(t), hand_saw());
    for (const FullSizePattern& p : full_size_patterns(timber, sheet)) {
      REQUIRE(p.depths.size() == p.openings.size());
      const FaceMarks marks = face_marks(timber, sheet, p.face);
      const auto on_tape = [&](double depth) {
        return std::any_of(marks.marks.begin(), marks.marks.end(), [&](const FaceMark& mark) {
          return mark.depth && *mark.depth > depth - 1e-9 &&
                 std::find(p.work.begin(), p.work.end(), FullSizePattern::Work{mark.work, mark.index}) != p.work.end();
        });
      };
      std::ptrdiff_t depths = 0;
      for (const auto& depth : p.depths) {
        if (depth) CHECK(on_tape(*depth));
        depths += depth ? 1 : 0;
        ++(depth ? told : not_told);
      }
      // The deepest floor of each work is the one that the tape tells.
      for (const FaceMark& mark : marks.marks) {
        const FullSizePattern::Work work{mark.work, mark.index};
        if (!mark.depth || std::find(p.work.begin(), p.work.end(), work) == p.work.end()) continue;
        CAPTURE(timber.mark, p.face, mark.index);
        CHECK(std::any_of(p.depths.begin(), p.depths.end(), [&](const std::optional<double>& depth) {
          return depth && libm::fabs(*depth - *mark.depth) < 1e-9;
        }));
        ++deepest;
      }
      const auto figures = pattern_dimensions(p).figures;
      CHECK(std::count_if(figures.begin(), figures.end(), [](const PatternFigure& figure) {
              return figure.measure == PatternMeasure::kDepth;
            }) == depths);
    }
  }
  CHECK(told > 0);
  CHECK(not_told > 0);
  CHECK(deepest > 0);
}

TEST_CASE("depths of a housing and of the mortise in it are told in different places, each on its own floor",
          "[full-size]") {
  FullSizePattern p;
  p.to = 20;
  p.width = 8;
  p.outlines = {box(0, 0, 20, 8)};
  p.openings = {box(4, 0, 12, 8), box(5, 3, 11, 5), box(14, 2, 18, 6)};
  p.depths = {1.0, 4.0, 2.0};
  for (int round = 0; round < 2; ++round) {
    const draw::Drawing drawing = pattern_dimensions(p).drawing;
    REQUIRE(drawing.notes.size() == 3);
    const auto place = [&](std::size_t note) { return Vec2{drawing.notes[note].at.x, drawing.notes[note].at.y}; };
    const std::size_t outer = round == 0 ? 0 : 1, inner = 1 - outer;
    CHECK(in_convex(p.openings[outer], place(outer)));
    CHECK_FALSE(in_convex(p.openings[inner], place(outer)));
    CHECK(in_convex(p.openings[inner], place(inner)));
    CHECK((place(2).x == 16 && place(2).y == 4));
    // Of the four gaps the widest: 3 inches above and below the mortise, halfway.
    CHECK((place(outer).x == 8 && (place(outer).y == 1.5 || place(outer).y == 6.5)));
    std::swap(p.openings[0], p.openings[1]);
    std::swap(p.depths[0], p.depths[1]);
  }
}
