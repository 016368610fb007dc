// Drawings that are tapped, with the fonts that they are drawn with: every figure whole, on the page, clear of the
// others.
#include <algorithm>
#include <catch_amalgamated.hpp>

#include "cut/angle_drawing.h"
#include "drawn_phone.h"
#include "frame/drawings/hand_drawing.h"
#include "frame/drawings/joint_drawing.h"
#include "frame/drawings/plan_drawing.h"
#include "frame/drawings/sections_drawing.h"
#include "frame/joinery.h"
#include "frame/joints/joint_table.h"
#include "frame/keys.h"
#include "plans.h"
#include "raising/drawings/crane_drawing.h"
#include "raising/drawings/gear_drawing.h"
#include "raising/drawings/site_drawing.h"
#include "raising/drawings/temporary_drawing.h"
#include "raising/plan_edits.h"
#include "roof/pattern.h"
#include "roof/plan/roof_drawing.h"
#include "roof/rafter_drawing.h"
#include "screens/frame/hand.h"
#include "screens/frame/joint_form.h"
#include "screens/raising/given/temporaries.h"
#include "screens/raising/yard/figures.h"
#include "screens/roofs/form.h"
#include "words/figures.h"
#include "words/frame_words.h"

using namespace bentbook;
using namespace bentbook::screens;

namespace {

RafterInput random_roof(Random& random) {
  RafterInput input;
  input.span = random_inches(random, 96, 480, 16);
  input.section.depth = random_inches(random, 4, 12, 2);
  input.left.pitch = Slope::in_12(random_inches(random, 3, 18, 8));
  input.left.seat = random_inches(random, 2, 4, 4);
  input.left.overhang = random_inches(random, 0, 30, 1);
  input.right = input.left;
  input.alike = chance(random, 70);
  if (!input.alike) input.right.pitch = Slope::in_12(random_inches(random, 3, 18, 8));
  input.peak = static_cast<PeakKind>(random.whole(0, 2));
  return input;
}

JointType with_random_measures(Random& random, JointType type) {
  if (auto* plate = std::get_if<KnifePlate>(&type)) {
    plate->open = static_cast<SlotOpen>(random.whole(0, 3));
    plate->let_in = chance(random, 50);
    plate->reach = random_inches(random, 4, 9, 16);
    plate->pins.count = static_cast<int>(random.whole(0, 3));
    plate->weld_crown = chance(random, 50) ? Length{} : Length::inches(1, 16);
  }
  if (auto* tenon = std::get_if<MortiseTenon>(&type)) {
    tenon->pegs = static_cast<int>(random.whole(0, 3));
    tenon->housing = random_inches(random, 0, 1, 16);
    tenon->shoulder_top = chance(random, 50) ? Length{} : random_inches(random, 1, 2, 8);
    tenon->shoulder_bottom = chance(random, 50) ? Length{} : random_inches(random, 1, 2, 8);
  }
  if (auto* dovetail = std::get_if<HalfDovetail>(&type)) {
    dovetail->through = chance(random, 50);
    dovetail->pegs = static_cast<int>(random.whole(0, 2));
  }
  return type;
}

}  // namespace

TEST_CASE("every joint's figures stand whole on the page, clear of one another", "[drawings]") {
  const float scale = GENERATE(1.0F, 2.0F);
  CAPTURE(scale);
  Phone phone(scale);
  Random random(1912);
  for (int round = 0; round < 25;) {
    Book book;
    book.frame = random_plan(random);
    const auto frame = solve_frame(book.frame);
    if (!frame) continue;
    ++round;
    for (int m = 0; m < kMeetings; ++m) {
      const auto meeting = static_cast<Meeting>(m);
      const Joint* joint = joint_to_show(*frame, meeting);
      if (joint == nullptr) continue;
      const JointWood wood = joint_wood(*frame, *joint);
      const JointType type =
          with_random_measures(random, joint->kind == kind_of(book.frame.joints[static_cast<std::size_t>(m)])
                                           ? book.frame.joints[static_cast<std::size_t>(m)]
                                           : row_of(joint->kind).usual());
      book.frame.joints[static_cast<std::size_t>(m)] = type;
      const JointSpot spot{meeting, "frame.joints." + std::string(keys::word(keys::kMeeting, meeting)) + ".", type,
                           joint};
      const Shown shown(random);
      for (const JointDrawing& view : joint_drawings(type, wood)) {
        CAPTURE(row_of(kind_of(type)).word, static_cast<int>(view.view), shown.small,
                static_cast<int>(shown.voice.lengths.form));
        phone.draw(
            view.drawing,
            view.view == JointView::kSide  ? 340
            : view.view == JointView::kEnd ? 250
                                           : 190,
            shown.small,
            without_unit(
                [&](std::string_view key) { return joint_figure(key, book, spot, wood, view.drawing, shown.voice); },
                shown.voice));
      }
    }
  }
  CHECK(phone.drawn > 1000);
}

TEST_CASE("every frame's figures stand whole on the page, clear of one another", "[drawings]") {
  const float scale = GENERATE(1.0F, 2.0F);
  CAPTURE(scale);
  Phone phone(scale);
  Random random(77);
  for (int round = 0; round < 200;) {
    const FramePlan plan = random_plan(random);
    const auto frame = solve_frame(plan);
    if (!frame) continue;
    ++round;
    const Shown shown(random);
    CAPTURE(round, shown.small, static_cast<int>(shown.voice.lengths.form));
    const Said said = without_unit(
        [&](std::string_view key) -> bentbook::FigureText {
          if (key.starts_with("pitch")) return {print_slope(plan.pitch_left, shown.voice.marks), {}};
          if (key.starts_with("in_12")) return pitch_run_figure(shown.voice);
          if (key == "peak_top") {
            const std::string height = say_inches(frame->ridge_z, shown.voice);
            return {scale > 1.5F ? height : say(Msg::kAsidePeak, shown.voice.language, height), {}};  // as the page
          }
          return {say_length(plan.span + Length::inches(1, 16), shown.voice), {}};  // as long as any there
        },
        shown.voice);
    phone.draw(bent_drawing(plan, *frame, 1), 290, shown.small, said);
    phone.draw(wall_drawing(plan, *frame), 280, shown.small, said);
    phone.draw(building_drawing(plan, *frame), 480, shown.small, said);
    phone.draw(options_drawing(plan, *frame), 320, shown.small, said);
  }
  CHECK(phone.drawn > 1000);
}

TEST_CASE("a plan's sections stand whole on the page, clear of one another, with their names", "[drawings]") {
  const float scale = GENERATE(1.0F, 2.0F);
  CAPTURE(scale);
  Phone phone(scale);
  Random random(12);
  std::vector<TimberKind> kinds;
  kinds.reserve(kPlannedKinds);
  for (int k = 0; k < kPlannedKinds; ++k) kinds.push_back(static_cast<TimberKind>(k));
  for (int round = 0; round < 40; ++round) {
    const FramePlan plan = random_plan(random);
    const Voice voice = Shown(random).voice;
    CAPTURE(round, static_cast<int>(voice.lengths.form), static_cast<int>(voice.language));
    const Said said = without_unit(
        [&](std::string_view key) -> bentbook::FigureText {
          if (key.find('.') == std::string_view::npos)
            return {
                std::string(kind_name(static_cast<TimberKind>(keys::index_of(keys::kTimberKind, key)), voice.language)),
                {}};
          return {say_length(Length::inches(key.ends_with("depth") ? 12 : 8), voice), {}};
        },
        voice);
    // As the page asks for them (screens/frame/options.cpp).
    const int columns = std::max(1, static_cast<int>((358 - 32) / (150 * scale)));
    const int rows = (static_cast<int>(kinds.size()) + columns - 1) / columns;
    phone.draw_in(sections_drawing(plan, kinds, columns),
                  {0, 0, 358 - 32, static_cast<float>(rows) * (150 * scale + 48)}, said);
  }
  CHECK(phone.drawn > 1000);
}

TEST_CASE("every rafter's and angle's figures stand whole on the page, clear of one another", "[drawings]") {
  const float scale = GENERATE(1.0F, 2.0F);
  CAPTURE(scale);
  Phone phone(scale);
  Random random(5);
  for (int round = 0; round < 200;) {
    const RafterInput input = random_roof(random);
    const auto pair = solve_rafters(input);
    if (!pair) continue;
    ++round;
    const Shown shown(random);
    CAPTURE(round, shown.small, static_cast<int>(shown.voice.lengths.form));
    const Said said =
        without_unit([&](std::string_view key) { return rafter_figure(key, input, *pair, shown.voice); }, shown.voice);
    draw::Drawing roof = roof_drawing(input, *pair, scale <= 1.5F);
    if (scale < 1.5F && !shown.small) name_parts(roof, *pair);  // as the page does
    phone.draw(roof, 300, shown.small, said);
    phone.draw(foot_drawing(input, *pair, Side::kLeft), 300, shown.small, said);
    phone.draw(peak_drawing(input, *pair, Side::kLeft), 300, shown.small, said);
  }
  CHECK(phone.drawn > 1000);
}

namespace {

Crane random_crane(Random& random) {
  Crane crane;
  crane.present = true;
  const auto rows = static_cast<int>(random.whole(0, 9));
  Length radius = random_inches(random, 60, 200, 1);
  for (int i = 0; i < rows; ++i) {
    crane.chart.push_back({radius, bentbook::Weight::pounds(random.whole(900, 24'000))});
    radius = radius + random_inches(random, 40, 160, 1);
  }
  crane.hook_block = bentbook::Weight::pounds(random.whole(0, 400));
  crane.rigging = bentbook::Weight::pounds(random.whole(0, 200));
  crane.x = random_inches(random, -500, 500, 2);
  crane.y = random_inches(random, -200, 600, 2);
  return crane;
}

void draw_crane(Phone& phone, const Crane& crane, Machine machine, bool small, const Said& said) {
  const float width = small ? 288 : 358;
  const ChartSize size = chart_size(width, 48, phone.scale, crane.chart.size());
  phone.draw_in(crane_drawing(crane, machine, size.room), {0, 0, width, size.height}, said);
}

}  // namespace

TEST_CASE("every figure of what lifts, of gear, truck and yard stands whole on the page, clear of one another",
          "[drawings]") {
  const float scale = GENERATE(1.0F, 2.0F);
  CAPTURE(scale);
  Phone phone(scale);
  Random random(640);
  for (int round = 0; round < 60;) {
    Book book;
    book.frame = random_plan(random);
    const auto frame = solve_frame(book.frame);
    if (!frame) continue;
    ++round;
    RaisingPlan& plan = book.raising;
    plan.crane = random_crane(random);
    plan.telehandler = random_crane(random);
    plan.crane_two = random_crane(random);
    plan.telehandler.present = chance(random, 30);
    plan.crane_two.present = chance(random, 30);
    plan.stack_x = random_inches(random, -500, 500, 2);
    plan.stack_y = random_inches(random, -200, 600, 2);
    plan.gear = {{"", GearKind::kSling, Length::feet(8), bentbook::Weight::pounds(3200), {}, 12}};
    if (chance(random, 50)) plan.gear[0].choked = bentbook::Weight::pounds(2500);
    const Shown shown(random);
    const Voice& voice = shown.voice;
    CAPTURE(round, shown.small, static_cast<int>(voice.lengths.form), static_cast<int>(voice.language));
    const auto lifter = [&](std::string_view name) {
      return without_unit([&, name](std::string_view key) { return lifter_figure(key, book, name, voice); }, voice);
    };
    draw_crane(phone, plan.crane, Machine::kCrane, shown.small, lifter("crane"));
    draw_crane(phone, plan.telehandler, Machine::kTelehandler, shown.small, lifter("telehandler"));
    phone.draw(gin_pole_drawing(), 280, shown.small, lifter("gin_pole"));
    for (const GearKind kind : {GearKind::kSling, GearKind::kShackle, GearKind::kSpreader}) {
      plan.gear[0].kind = kind;
      phone.draw(gear_drawing(plan.gear[0]), 270, shown.small,
                 without_unit([&](std::string_view key) { return gear_figure(key, book, 0, voice); }, voice));
    }
    phone.draw(truck_drawing(plan.truck, 250), 230, shown.small,
               without_unit([&](std::string_view key) { return truck_figure(key, book, 250, voice); }, voice));
    for (const InYard what : {InYard::kCrane, InYard::kStack})
      phone.draw(site_drawing(*frame, plan, what), 380, shown.small,
                 without_unit([&](std::string_view key) { return site_figure(key, book, what, voice); }, voice));
  }
  CHECK(phone.drawn > 1000);
}

TEST_CASE("on a roof of any plan each side's name and each wall's length stands whole, clear of the others",
          "[drawings]") {
  const float scale = GENERATE(1.0F, 2.0F);
  CAPTURE(scale);
  Phone phone(scale);
  Random random(15);
  const auto feet = [&](int least, int most) { return Length::feet(random.whole(least, most)); };
  for (int round = 0; round < 60; ++round) {
    const Length along = feet(30, 60), across = feet(18, 30), wing = feet(12, 14), out = feet(8, 16);
    const Slope pitch = Slope::in_12(random_inches(random, 4, 14, 2));
    for (const RoofPlan& plan :
         {rectangle_roof(along, across, pitch), l_roof(along, across, wing, out, pitch),
          t_roof(along, across, wing, out, pitch), u_roof(along + along, across, wing, out, pitch),
          bay_roof(along, across, feet(12, 16), Length::feet(4), pitch)}) {
      const auto roof = solve_roof(plan);
      REQUIRE(roof);
      const Shown shown(random);
      CAPTURE(round, plan.sides.size(), shown.small, static_cast<int>(shown.voice.lengths.form),
              static_cast<int>(shown.voice.language));
      const RoofNames names = scale > 1.5F || shown.small ? RoofNames::kLetters : RoofNames::kPitches;
      phone.draw(roof_plan_drawing(plan, &*roof, -1, sides_measured(scale <= 1.5F)), 420, shown.small,
                 without_unit(
                     [&](std::string_view key) {
                       bentbook::FigureText figure = roof_figure(key, plan, names, shown.voice);
                       if (!figure.drawn.empty()) figure.text = figure.drawn;
                       return figure;
                     },
                     shown.voice));
    }
  }
  CHECK(phone.drawn > 1000);
}

TEST_CASE("every figure of a temporary brace stands whole on the page, clear of the others", "[drawings]") {
  const float scale = GENERATE(1.0F, 2.0F);
  CAPTURE(scale);
  Phone phone(scale);
  Random random(24);
  for (int round = 0; round < 200;) {
    const auto frame = solve_frame(random_plan(random));
    if (!frame) continue;
    ++round;
    const auto any = [&] {
      return frame
          ->timbers[static_cast<std::size_t>(random.whole(0, static_cast<std::int64_t>(frame->timbers.size()) - 1))]
          .mark;
    };
    Temporary temporary;
    temporary.kind = static_cast<TemporaryKind>(random.whole(0, 2));
    const Length step = Length::inches(1);
    hold_timber(*frame, temporary, any(), step);
    if (chance(random, 50)) lead_to(*frame, temporary, any(), step);
    const auto line = temporary_line(*frame, temporary);
    REQUIRE(line);
    const Shown shown(random);
    CAPTURE(round, temporary.from.mark, temporary.to.mark, shown.small, static_cast<int>(shown.voice.lengths.form),
            static_cast<int>(shown.voice.language));
    phone.draw(temporary_drawing(*frame, temporary), 380, shown.small,
               without_unit([&](std::string_view key) { return temporary_figure(key, temporary, *line, shown.voice); },
                            shown.voice));
  }
  CHECK(phone.drawn > 800);
}

TEST_CASE("every figure of a timber by hand stands whole on the page, clear of the others", "[drawings]") {
  const float scale = GENERATE(1.0F, 2.0F);
  CAPTURE(scale);
  Phone phone(scale);
  Random random(3);
  for (int round = 0; round < 200; ++round) {
    Book book;
    HandTimber timber;
    timber.mark = "X-1";
    timber.length = random_inches(random, 24, 400, 16);
    timber.wood.nominal = {random_inches(random, 4, 14, 2), random_inches(random, 4, 14, 2)};
    timber.a.angle = Angle::degrees(random.whole(-40, 40));
    if (chance(random, 50)) timber.b.angle = timber.a.angle;
    timber.b.tilt = Angle::degrees(random.whole(-30, 30));
    HandFeature f;
    f.kind = static_cast<FeatureKind>(keys::index_of(keys::kFeatureKind, chance(random, 50) ? "hole" : "mortise"));
    f.face = static_cast<Face>(random.whole(1, 4));
    f.station = chance(random, 20) ? Length{} : Length{timber.length.count / 100 * random.whole(1, 99)};
    f.offset = random_inches(random, 1, 4, 16);
    f.along = random_inches(random, 1, 14, 16);
    f.across = random_inches(random, 1, 3, 16);
    f.diameter = random_inches(random, 1, 2, 8);
    f.depth = chance(random, 50) ? Length{} : random_inches(random, 1, 4, 16);
    timber.features = {f};
    book.frame.added = {timber};
    const Shown shown(random);
    const std::string root = "frame.added.@X-1.";
    CAPTURE(round, shown.small, static_cast<int>(shown.voice.lengths.form), static_cast<int>(shown.voice.language));
    const auto said = [&](const std::string& under) {
      return without_unit(
          [&, under](std::string_view key) {
            bentbook::FigureText figure = hand_figure(key, book, under, shown.voice);
            if (!figure.drawn.empty() && (key != "station" || scale <= 1.5F)) figure.text = figure.drawn;
            return figure;
          },
          shown.voice);
    };
    phone.draw(hand_drawing(timber), 150, shown.small, said(root));
    phone.draw(hand_top_drawing(timber), 110, shown.small, said(root));
    phone.draw(hand_section_drawing(timber), 130, shown.small, said(root));
    phone.draw(hand_feature_drawing(timber, f), 210, shown.small, said(root + "features.0."));
  }
  CHECK(phone.drawn > 1000);
}
