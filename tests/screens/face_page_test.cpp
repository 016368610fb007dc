// Faces of timbers as they are laid out on a page, with the fonts that they are drawn with.
#include <algorithm>
#include <catch_amalgamated.hpp>
#include <set>

#include "draw/tape_page.h"
#include "frame/placing/solve_frame.h"
#include "frame/sheet/sheet.h"
#include "letters.h"
#include "plans.h"
#include "random.h"
#include "shop/step_marks.h"
#include "shop/steps.h"
#include "ui/drawing/tape_canvas.h"
#include "ui/measure_text.h"
#include "words/face_words.h"

using namespace bentbook;
using namespace bentbook::screens;

namespace {

draw::Bounds bounds_of(const draw::TapePlaced& t) {
  draw::Bounds b;
  b.add(t.at);
  b.add(draw::Point{t.at.x + t.extent.w, t.at.y + t.extent.h});
  return b;
}

bool overlap(const draw::Bounds& a, const draw::Bounds& b) {
  constexpr double kTouch = 0.01;
  return a.left < b.right - kTouch && b.left < a.right - kTouch && a.top < b.bottom - kTouch &&
         b.top < a.bottom - kTouch;
}

bool crossed(const draw::Bounds& b, const draw::PlacedLine& line) {
  const draw::Box box{{(b.left + b.right) / 2, (b.top + b.bottom) / 2}, b.width() - 0.02, b.height() - 0.02, 0};
  return draw::crosses(box, line.a, line.b);
}

/// What is wrong with a page: "" where nothing is.
std::string fault_of(const draw::TapePage& page, double width) {
  std::vector<draw::Bounds> boxes;
  for (const draw::TapePlaced& t : page.texts) {
    const draw::Bounds b = bounds_of(t);
    if (b.left < -0.01 || b.right > width + 0.01 || b.top < -0.01 || b.bottom > page.height + 0.01)
      return "off the page: " + t.text;
    for (const draw::Bounds& other : boxes)
      if (overlap(b, other)) return "on another text: " + t.text;
    for (const draw::PlacedLine& line : page.lines)
      if (line.stroke == draw::Stroke::kCut && crossed(b, line)) return "on a cut line: " + t.text;
    boxes.push_back(b);
  }
  return {};
}

bool all_drawn(const draw::TapePage& page, const Fonts& fonts) {
  ImFont* const by_size[] = {fonts.measure_strong, fonts.strong, fonts.note};
  return std::all_of(page.texts.begin(), page.texts.end(), [&](const draw::TapePlaced& t) {
    return has_glyphs(*by_size[static_cast<std::size_t>(t.size)], t.text);
  });
}

bool cross(draw::Point a, draw::Point b, draw::Point c, draw::Point d) {
  const auto side = [](draw::Point p, draw::Point q, draw::Point r) {
    return (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  };
  return side(a, b, c) * side(a, b, d) < -1e-6 && side(c, d, a) * side(c, d, b) < -1e-6;
}

/// Two leaders that cross: to numbers past the tape, or to words before the piece.
bool leaders_cross(const draw::TapePage& page) {
  std::vector<draw::PlacedLine> leaders;
  for (const draw::PlacedLine& line : page.lines) {
    const bool to_number = line.a.x > page.right && line.b.x > page.right;
    const bool to_words = line.a.x < page.left && line.b.x < page.left;
    if (!line.ordinary && (to_number || to_words)) leaders.push_back(line);
  }
  for (std::size_t i = 0; i < leaders.size(); ++i)
    for (std::size_t k = 0; k < i; ++k)
      if (cross(leaders[i].a, leaders[i].b, leaders[k].a, leaders[k].b)) return true;
  return false;
}

/// The numbers stand in the order of the pull.
bool in_order(const draw::TapePage& page) {
  double last = -1;
  for (const draw::TapePlaced& t : page.texts) {
    if (t.row < 0) continue;
    if (t.at.y < last) return false;
    last = t.at.y;
  }
  return true;
}

Saw chainsaw() {
  Saw saw;
  saw.kind = SawKind::kChainsawBar;
  saw.reach = Length::inches(16);
  return saw;
}

constexpr LengthForm kForms[] = {LengthForm::kFeetInches, LengthForm::kInchFraction, LengthForm::kDecimalInch,
                                 LengthForm::kMm, LengthForm::kMetre};

struct Asked {
  double width, room;
  Voice voice;
};
Asked asked_on(bool small, LengthForm form, Random& random) {
  Asked asked;
  asked.width = small ? 288 : 358;
  asked.room = small ? 240 : 500;
  asked.voice.lengths.form = form;
  asked.voice.lengths.denominator = 1 << random.whole(3, 6);
  asked.voice.language = static_cast<Language>(random.whole(0, static_cast<std::int64_t>(kLanguageCount) - 1));
  return asked;
}
/// Any phone and form; under `tests/run long` both phones with each form.
std::vector<Asked> asked_of(Random& random) {
  std::vector<Asked> all;
  if (is_long())
    for (const bool small : {false, true})
      for (const LengthForm form : kForms) all.push_back(asked_on(small, form, random));
  else
    all.push_back(asked_on(chance(random, 50), kForms[random.whole(0, 4)], random));
  return all;
}

std::vector<draw::TapePage> pages_of(const draw::TapeStrip& strip, const Asked& asked, const Fonts& fonts) {
  draw::TapeOptions options;
  options.width = asked.width;
  options.room = asked.room;
  options.side = asked.width * 0.31;
  set_ticks(options, asked.voice);
  return draw::lay_out_tape(
      strip, options, [&](std::string_view text, draw::TapeText size) { return tape_text_size(fonts, text, size); });
}

}  // namespace

namespace {

void check_pages(const std::vector<draw::TapePage>& pages, const draw::TapeStrip& strip, const Asked& asked,
                 const Fonts& fonts) {
  std::set<int> rows, blocks;
  for (const draw::TapePage& page : pages) {
    const std::string fault = fault_of(page, asked.width);
    INFO(fault);
    CHECK(fault.empty());
    CHECK_FALSE(leaders_cross(page));
    CHECK(in_order(page));
    CHECK(all_drawn(page, fonts));
    for (const draw::TapePlaced& t : page.texts) (t.row >= 0 ? rows : blocks).insert(t.row >= 0 ? t.row : t.block);
  }
  CHECK(rows.size() == strip.rows.size());
  CHECK(blocks.size() == strip.blocks.size());
}

/// Every face, and the picture of every step.
void check_timber(const Frame& frame, int t, Random& random, const Fonts& fonts) {
  const Timber& timber = frame.timbers[static_cast<std::size_t>(t)];
  const Sheet sheet = solve_sheet(frame, t, chainsaw());
  for (const Asked& asked : asked_of(random)) {
    CAPTURE(timber.mark, asked.width, static_cast<int>(asked.voice.lengths.form));
    for (const Face face : kFaces) {
      CAPTURE(static_cast<int>(face));
      const draw::TapeStrip strip = face_strip(frame, timber, face_marks(timber, sheet, face), asked.voice);
      check_pages(pages_of(strip, asked, fonts), strip, asked, fonts);
    }
    for (const WorkStep& step : work_steps(frame, sheet)) {
      const auto marks = step_marks(timber, sheet, step);
      if (!marks) continue;
      CAPTURE(step.id);
      const draw::TapeStrip strip = step_strip(frame, timber, *marks, asked.voice);
      check_pages(pages_of(strip, asked, fonts), strip, asked, fonts);
    }
  }
}

}  // namespace

TEST_CASE("on a face's page each text is whole, on the page, clear of other texts and of what is cut", "[faces]") {
  const float scale = GENERATE(1.0F, 2.0F);
  CAPTURE(scale);
  const Letters letters(scale);
  Random random(1107);
  const int most = is_long() ? 500 : 250;
  int timbers = 0;
  while (timbers < most) {
    const auto frame = solve_frame(random_plan(random));
    if (!frame) continue;
    for (int i = 0; i < static_cast<int>(frame->timbers.size()) && timbers < most; i += 3, ++timbers)
      check_timber(*frame, i, random, letters.fonts);
  }
}

TEST_CASE("boxes are spread as near to where they are wanted as their order and gaps allow", "[faces]") {
  Random random(4);
  for (int round = 0; round < 300; ++round) {
    std::vector<double> wanted, heights;
    double at = 0;
    for (int n = static_cast<int>(random.whole(1, 9)); n > 0; --n) {
      at += static_cast<double>(random.whole(0, 40));
      wanted.push_back(at);
      heights.push_back(static_cast<double>(random.whole(8, 30)));
    }
    const std::vector<double> centres = draw::spread(wanted, heights, -1e9, 5);
    const auto cost = [&](const std::vector<double>& c) {
      double sum = 0;
      for (std::size_t i = 0; i < c.size(); ++i) sum += (c[i] - wanted[i]) * (c[i] - wanted[i]);
      return sum;
    };
    const auto keeps_apart = [&](const std::vector<double>& c) {
      for (std::size_t i = 0; i + 1 < c.size(); ++i)
        if (c[i + 1] - c[i] < (heights[i] + heights[i + 1]) / 2 + 5 - 1e-9) return false;
      return true;
    };
    REQUIRE(keeps_apart(centres));
    // A convex cost over a convex set: where no run of neighbours moved together makes it less, nothing does.
    for (std::size_t from = 0; from < centres.size(); ++from)
      for (std::size_t to = from; to < centres.size(); ++to)
        for (const double by : {-0.01, 0.01}) {
          std::vector<double> other = centres;
          for (std::size_t i = from; i <= to; ++i) other[i] += by;
          if (keeps_apart(other)) REQUIRE(cost(other) >= cost(centres) - 1e-9);
        }
  }
}

TEST_CASE("the numbers of a post's face run from its foot, once each", "[faces]") {
  // 24 × 36 ft, plates at 10 ft, 9 in 12, from a new book. The girt's and the brace's mortises, the tie's housing
  // and the tenon under the plate, by arithmetic: plate's top 120 − plate 8 + tenon 3 = 115; its shoulder at 112.
  const auto frame =
      solve_frame(default_plan(Length::feet(24), Length::feet(36), Length::feet(10), Slope::in_12(Length::inches(9))));
  REQUIRE(frame);
  int post = -1;
  for (int i = 0; i < static_cast<int>(frame->timbers.size()); ++i)
    if (frame->timbers[static_cast<std::size_t>(i)].mark == "P-A2") post = i;
  REQUIRE(post >= 0);
  const Timber& timber = frame->timbers[static_cast<std::size_t>(post)];
  const Sheet sheet = solve_sheet(*frame, post, chainsaw());
  const FaceMarks marks = face_marks(timber, sheet, Face::kNear);
  CHECK(marks.reference);
  CHECK_FALSE(marks.gauge_left);  // face 1, the other reference face, lies at the right
  std::string numbers;
  Voice voice;
  for (const draw::TapeRow& row : face_strip(*frame, timber, marks, voice).rows) numbers += row.number + " | ";
  CHECK(numbers ==
        "0″ | 3′ 6″ | 4′ 0″ | 5′ 9 1⁄2″ | 6′ 10″ | 7′ 6 1⁄2″ | 8′ 0″ | 8′ 3 1⁄2″ | 8′ 6 1⁄2″ | 8′ 10″ | 9′ 4″ | "
        "9′ 7″ | ");
}
