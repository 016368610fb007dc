#include <array>
#include <catch_amalgamated.hpp>
#include <cmath>
#include <set>

#include "frame/common_rafter.h"
#include "frame/facts.h"
#include "frame/joinery.h"
#include "frame/mark.h"
#include "frame/metric_sizes.h"
#include "frame/placing/hand_timber.h"
#include "frame/placing/solve_frame.h"
#include "frame/plan_fields.h"
#include "measure/field.h"
#include "roof/rafter.h"
#include "words/frame_words.h"

using namespace bentbook;
using Catch::Approx;

namespace {

FramePlan small_plan() {
  return default_plan(Length::feet(20), Length::feet(24), Length::feet(10), Slope::in_12(Length::inches(8)));
}

const Timber& timber(const Frame& frame, const char* mark) {
  const int i = timber_by_mark(frame, mark);
  REQUIRE(i >= 0);
  return frame.timbers[static_cast<std::size_t>(i)];
}

bool has(const Frame& frame, FindingId id) {
  for (const Finding& f : frame.findings)
    if (f.id == id) return true;
  return false;
}

}  // namespace

TEST_CASE("four numbers make a frame that stands, and it says that nobody engineered it", "[frame]") {
  const auto frame = solve_frame(small_plan());
  REQUIRE(frame);
  CHECK(has(*frame, FindingId::kNotEngineered));
  CHECK_FALSE(has(*frame, FindingId::kThrust));
  CHECK_FALSE(has(*frame, FindingId::kClash));
  CHECK_FALSE(has(*frame, FindingId::kNoRoom));
  std::set<std::string> marks;
  for (const Timber& t : frame->timbers) {
    CHECK(marks.insert(t.mark).second);
    CHECK(t.length > 0);
    for (const TimberWarning& w : t.warnings) {
      INFO(t.mark);
      CHECK(w.id != WarningId::kFeaturesMeet);
      CHECK(w.id != WarningId::kContactCut);
    }
  }
  CHECK(marks.count("P-A1") == 1);
  CHECK(marks.count("K-C2") == 1);
  CHECK(marks.count("B-A1.1") == 1);
}

// Source: trade geometry. Post length = beam underside − pier level − stand-off + tenons (trade.md; common practice).
TEST_CASE("a post is as long as plate, pier, stand-off and tenon say", "[frame]") {
  FramePlan plan = small_plan();
  plan.stand_off = Length::inches(1);
  plan.stock_most = Length::feet(40);  // no scarf: over one a tenon is shorter
  plan.overrides.push_back({});
  plan.overrides[0].mark = "P-E2";
  plan.overrides[0].pier_level = Length::inches(-3, 2);
  const auto frame = solve_frame(plan);
  REQUIRE(frame);
  // plate top 120, plate 8 deep, tenon 3
  CHECK(timber(*frame, "P-A1").length == Approx(120 - 8 - 1 + 3));
  CHECK(timber(*frame, "P-E2").length == Approx(120 - 8 - 1 + 1.5 + 3));
  CHECK(timber(*frame, "P-E2").pier_level == Approx(-1.5));
}

// Source: brace by its legs, √(a² + b²), atan(a/b) (plane geometry).
TEST_CASE("a brace's outer edge is the root of the sum of its legs' squares", "[frame]") {
  FramePlan plan = small_plan();
  plan.brace_leg_post = Length::inches(30);
  plan.brace_leg_beam = Length::inches(40);
  const auto frame = solve_frame(plan);
  REQUIRE(frame);
  const Timber& brace = timber(*frame, "B-A1.1");
  double shoulder[2] = {0, 0};  // where the outer edge meets each shoulder
  for (const Feature& f : brace.features) {
    if (f.kind != FeatureKind::kTenon) continue;
    const CutPlane& s = f.shoulder;
    shoulder[f.end == End::kB ? 1 : 0] = (s.offset - s.normal.z * brace.sides.z_lo) / s.normal.x;
    // 30 over 40: 36.87° and 53.13° off square
    CHECK(std::acos(std::fabs(s.normal.x)) * 180 / std::acos(-1.0) ==
          Approx(f.end == End::kA ? 36.8698976 : 53.1301024).epsilon(1e-8));
  }
  CHECK(shoulder[1] - shoulder[0] == Approx(50).epsilon(1e-12));
}

// Source: common rafter per foot of run at 8 in 12 is 14.42 in (NAVEDTRA 14044 ch. 2; Griffith, Carpentry, 1916).
TEST_CASE("common rafters are cut to the handbook's length per foot", "[frame]") {
  FramePlan plan = small_plan();
  plan.eave_overhang = {};
  const auto frame = solve_frame(plan);
  REQUIRE(frame);
  const Timber& rafter = timber(*frame, "C-A1");
  // Level run from the wall line to the ridge beam's face: 10 ft less half of 8 in. The table's two decimals are half a
  // hundredth a foot of run.
  const double run_feet = 10 - 4 / 12.0, plumb_cut = 6 * 8 / 12.0;
  CHECK((rafter.length - plumb_cut) / run_feet == Approx(14.42).margin(0.005));
  CHECK(rafter.length == Approx(run_feet * std::sqrt(208.0) + plumb_cut).epsilon(1e-9));
}

// run_A = (span tan B + heel_B − heel_A + plate_B − plate_A) / (tan A + tan B) (trade.md).
TEST_CASE("with unlike pitches and eaves both roofs meet at the ridge", "[frame]") {
  FramePlan plan = small_plan();
  plan.pitch_right = Slope::in_12(Length::inches(12));
  plan.plate_right = Length::inches(126);
  plan.peak = Peak::kPair;
  plan.on_ties = OnTies::kNothing;
  const auto frame = solve_frame(plan);
  REQUIRE(frame);
  double tops[2];
  int i = 0;
  for (const char* mark : {"C-A2", "C-E2"}) {
    const Timber& t = timber(*frame, mark);
    const Vec3 top = t.at.origin + t.sides.z_hi * t.at.z;
    tops[i++] = top.z + (frame->ridge_x - top.x) * t.at.x.z / t.at.x.x;
  }
  CHECK(tops[0] == Approx(frame->ridge_z).epsilon(1e-12));
  CHECK(tops[1] == Approx(frame->ridge_z).epsilon(1e-12));
}

// Source: statics of a three-hinged frame: w · span / (4 tan θ) per foot, times the spacing.
TEST_CASE("neither tie nor carried ridge: the thrust is said", "[frame]") {
  FramePlan plan = small_plan();
  plan.ties = false;
  plan.on_ties = OnTies::kNothing;
  plan.peak = Peak::kPair;
  plan.rafter_spacing = Length::feet(2);
  plan.load_psf = 30;
  const auto frame = solve_frame(plan);
  REQUIRE(frame);
  REQUIRE(has(*frame, FindingId::kThrust));
  CHECK(frame->thrust_lb == Approx(30 * 2 * 20 / (4 * 8 / 12.0)).epsilon(1e-12));
  plan.collars = true;
  const auto with_collars = solve_frame(plan);
  REQUIRE(with_collars);
  CHECK(has(*with_collars, FindingId::kHighCollar));
}

TEST_CASE("a bay put in between leaves every other timber its mark", "[frame]") {
  FramePlan plan = small_plan();
  const auto before = solve_frame(plan);
  insert_bay(plan, 0, Length::feet(10));
  CHECK(plan.bays[1].label == 4);
  const auto after = solve_frame(plan);
  REQUIRE(before);
  REQUIRE(after);
  for (const Timber& t : before->timbers) {
    if (t.kind != TimberKind::kPost && t.kind != TimberKind::kTie) continue;
    const Timber& same = timber(*after, t.mark.c_str());
    CHECK(same.place.bent == t.place.bent);
    CHECK(same.length == t.length);
  }
  CHECK(timber(*after, "P-A4").at.origin.y > timber(*after, "P-A2").at.origin.y);
  CHECK(timber(*after, "P-A4").at.origin.y < timber(*after, "P-A3").at.origin.y);
}

TEST_CASE("overrides: taken out, another section, a mark that is nobody's", "[frame]") {
  FramePlan plan = small_plan();
  Override out, thick, lost;
  out.mark = "B-A1.1";
  out.removed = true;
  thick.mark = "T-2";
  thick.has_section = true;
  thick.section = {Length::inches(8), Length::inches(12)};
  lost.mark = "P-Z9";
  plan.overrides = {out, thick, lost};
  const auto frame = solve_frame(plan);
  REQUIRE(frame);
  CHECK(timber_by_mark(*frame, "B-A1.1") == -1);
  const Timber& tie = timber(*frame, "T-2");
  CHECK(tie.overridden.section);
  CHECK(tie.sides.z_hi == Approx(5));  // its top stays where the plan's 10 in tie has it
  CHECK(tie.sides.z_lo == Approx(-7));
  CHECK(has(*frame, FindingId::kUnknownMark));
}

TEST_CASE("left and right are handed pairs; pieces alike are told", "[frame]") {
  const auto frame = solve_frame(small_plan());
  REQUIRE(frame);
  const Timber &a = timber(*frame, "P-A1"), &e = timber(*frame, "P-E1");
  CHECK(a.handed_pair == e.handed_pair);
  CHECK(a.handed_pair >= 0);
  CHECK(a.alike != e.alike);
  // In the middle of the frame left and right are each other's turn about, cut alike.
  CHECK(timber(*frame, "P-A2").alike == timber(*frame, "P-E2").alike);
  CHECK(timber(*frame, "C-A1.1").alike == timber(*frame, "C-A1.2").alike);
  CHECK(timber(*frame, "B-A1.1").alike == timber(*frame, "B-E1.1").alike);  // its own mirror image
}

// Source: Wood Handbook ch. 4 formula with FIA species data: Douglas-fir green 38 lb/ft³, white oak 63, E. white pine
// 35, W. redcedar 27, black locust 58, loblolly 53.
TEST_CASE("green weights of the handbook", "[facts]") {
  const struct {
    Species species;
    double lb;
  } rows[] = {{{"Douglas-fir", .45, .48, 35.33}, 38},   {{"white oak", .60, .68, 68.27}, 63},
              {{"E. white pine", .34, .35, 64.97}, 35}, {{"W. redcedar", .31, .32, 39.58}, 27},
              {{"black locust", .66, .69, 40.83}, 58},  {{"loblolly", .47, .51, 80.72}, 53}};
  for (const auto& row : rows) {
    INFO(row.species.name);
    CHECK(density_at(row.species, row.species.green_moisture) == Approx(row.lb).margin(0.6));
  }
}

// Source: US Army subcourse EN5155: 8 pieces 1 × 4 × 14 ft are 37 1/3 board feet.
TEST_CASE("board feet on the nominal size", "[facts]") {
  FramePlan plan = small_plan();
  HandTimber hand;
  hand.mark = "X-1";
  hand.wood.nominal = hand.wood.design = hand.wood.actual = {Length::inches(1), Length::inches(4)};
  hand.length = Length::inches(14 * 12 - 2);
  plan.added.push_back(hand);
  const auto frame = solve_frame(plan);
  REQUIRE(frame);
  CHECK(8 * facts_of(timber(*frame, "X-1")).board_feet == Approx(37 + 1 / 3.0).epsilon(1e-12));
}

TEST_CASE("rafters at the verges keep their marks when a bay is put at either end", "[frame]") {
  FramePlan plan = small_plan();
  plan.gable_overhang = Length::inches(24);
  const auto verges = [](const Frame& frame) {
    std::vector<std::string> marks;
    for (const Timber& t : frame.timbers)
      if (t.place.number < 0) marks.push_back(t.mark);
    return marks;
  };
  const std::vector<std::string> all{"C-AV1", "C-EV1", "C-AV2", "C-EV2"};
  CHECK(verges(*solve_frame(plan)) == all);
  insert_bay(plan, -1, Length::feet(10));
  insert_bay(plan, static_cast<int>(plan.bays.size()) - 1, Length::feet(10));
  CHECK(verges(*solve_frame(plan)) == all);
}

TEST_CASE("a timber entered by hand is cut the same beside a plan as on its own", "[frame]") {
  FramePlan plan = small_plan();
  HandTimber hand;
  hand.mark = "X-1";
  hand.length = Length::feet(8);
  hand.b.angle = Angle::degrees(30);
  HandFeature tenon;
  tenon.kind = FeatureKind::kTenon;
  tenon.offset = Length::inches(4);
  tenon.along = Length::inches(3);
  tenon.across = Length::inches(2);
  hand.features.push_back(tenon);
  plan.added.push_back(hand);
  const auto frame = solve_frame(plan);
  REQUIRE(frame);
  Timber alone = *solve_hand_timber(hand);
  alone.moisture = plan.moisture;
  alone.alike = timber_by_mark(*frame, "X-1");
  CHECK(timber(*frame, "X-1") == alone);
  // 3 in of the end lose all but 2 of 8 in of the breadth (plane geometry).
  hand.b = {};
  plan.added.back() = hand;
  CHECK(facts_of(timber(*solve_frame(plan), "X-1")).volume == Approx(96 * 64 - 3 * 6 * 8));
}

TEST_CASE("a plan that cannot stand is refused by its field", "[frame]") {
  FramePlan plan = small_plan();
  plan.bays.clear();
  CHECK(solve_frame(plan).error().where == "bays");
  plan = small_plan();
  plan.span = Length::inches(-1);
  CHECK(solve_frame(plan).error().where == "span");
  plan = small_plan();
  plan.pitch_left = Slope::of_angle(Angle::degrees(85));
  CHECK(solve_frame(plan).error().code == ErrorCode::kSteep);
  plan = small_plan();
  plan.plate_right = Length::feet(40);
  CHECK(solve_frame(plan).error().code == ErrorCode::kImpossible);
}

// 36 ft less an 8 in post, in three: 141 1/3 in. By hand: two of 141 1/4, the middle one 141 1/2.
TEST_CASE("bays that do not divide to a tape's marks give the rest to the middle one", "[frame]") {
  const FramePlan plan =
      default_plan(Length::feet(24), Length::feet(36), Length::feet(10), Slope::in_12(Length::inches(9)));
  REQUIRE(plan.bays.size() == 3);
  CHECK(plan.bays[0].width == Length::inches(565, 4));
  CHECK(plan.bays[1].width == Length::inches(283, 2));
  CHECK(plan.bays[2].width == plan.bays[0].width);
  // 24 ft divides.
  CHECK(small_plan().bays == std::vector<Bay>{{Length::inches(140), 2}, {Length::inches(140), 3}});
}

// What yards and plate shops of metric countries sell: common practice.
TEST_CASE("inch sizes have their counterparts in millimetres", "[frame]") {
  const auto mm = [](Length usual) { return metric_size(usual).to_mm(); };
  CHECK(mm(Length::inches(8)) == 200);
  CHECK(mm(Length::inches(10)) == 250);
  CHECK(mm(Length::inches(4)) == 100);
  CHECK(mm(Length::inches(16)) == 400);
  CHECK(mm(Length::feet(2)) == 600);
  CHECK(mm(Length::inches(3, 2)) == 40);
  CHECK(mm(Length::inches(1)) == 25);
  CHECK(mm(Length::inches(3, 4)) == 20);
  CHECK(mm(Length::inches(1, 2)) == 12);
  CHECK(mm(Length::inches(3, 8)) == 10);
  CHECK(mm(Length{}) == 0);
}

TEST_CASE("a metric frame is whole millimetres throughout, and nothing is said against it", "[frame]") {
  for (const auto& [span, length, height] :
       {std::array{4000, 5000, 2400}, {5000, 7500, 2750}, {7200, 11000, 3000}, {9000, 18000, 3600}})
    for (const int degrees : {25, 35, 40, 45})
      for (const Joinery joinery : {Joinery::kWooden, Joinery::kPlates}) {
        CAPTURE(span, degrees, static_cast<int>(joinery));
        const FramePlan plan =
            with_joinery(default_plan(Length::mm(span), Length::mm(length), Length::mm(height),
                                      Slope::of_angle(Angle::degrees(degrees)), SizedBy::kMillimetres),
                         joinery);
        for (const std::string& path : field_paths(described_as_is(plan))) {
          const auto field = find_field(described_as_is(plan), path);
          const auto* value = field ? std::get_if<Length>(&field->value) : nullptr;
          CAPTURE(path);
          if (value != nullptr) CHECK(value->count % Length::kPerMm == 0);
        }
        for (const Bay& bay : plan.bays) CHECK(bay.width.count % Length::kPerMm == 0);
        const auto frame = solve_frame(plan);
        REQUIRE(frame);
        for (const Timber& t : frame->timbers) {
          CAPTURE(t.mark);
          for (const TimberWarning& w : t.warnings) FAIL_CHECK(warning_text(w, {}));
        }
        CHECK(frame->findings.size() == 1);
      }
}

TEST_CASE("a frame's common rafter worked out alone is the one that the frame has", "[frame][rafter]") {
  for (const int pitch : {4, 8, 9, 12})
    for (const bool over : {false, true})
      for (const bool unlike : {false, true}) {
        FramePlan plan =
            default_plan(Length::feet(24), Length::feet(36), Length::feet(10), Slope::in_12(Length::inches(pitch)));
        if (unlike) {
          plan.pitch_right = Slope::in_12(Length::inches(pitch + 2));
          plan.plate_right = plan.plate_right + Length::inches(5);
        }
        if (over) plan.joints[static_cast<std::size_t>(Meeting::kRafterRidge)] = BirdsMouth{Length::inches(2)};
        RafterPeak plumb;  // a tongue would stand past the plumb cut
        plumb.tongue_and_fork = false;
        plan.joints[static_cast<std::size_t>(Meeting::kRafterPeak)] = plumb;
        const auto frame = solve_frame(plan);
        REQUIRE(frame);
        const auto input = common_rafter_of(plan);
        REQUIRE(input);
        const auto pair = solve_rafters(*input);
        REQUIRE(pair);
        INFO(pitch << " " << over << " " << unlike);
        CHECK(pair->left.longest.in() == Approx(timber(*frame, "C-A2.1").length).margin(1e-6));
        const Rafter& right = pair->alike ? pair->left : pair->right;
        CHECK(right.longest.in() == Approx(timber(*frame, "C-E2.1").length).margin(1e-6));
      }
  FramePlan plan = small_plan();
  plan.form = RoofForm::kLeanTo;
  CHECK_FALSE(common_rafter_of(plan));
  plan = small_plan();
  plan.roof = RoofFrame::kPrincipals;
  CHECK_FALSE(common_rafter_of(plan));
}

TEST_CASE("a lean-to is as wide as its span, and its rafters sit on both plates", "[frame]") {
  for (const int pitch : {3, 4, 8, 12}) {
    FramePlan plan =
        default_plan(Length::feet(12), Length::feet(24), Length::feet(9), Slope::in_12(Length::inches(pitch)));
    plan.form = RoofForm::kLeanTo;
    const auto frame = solve_frame(plan);
    REQUIRE(frame);
    INFO(pitch);
    CHECK_FALSE(has(*frame, FindingId::kNoRoom));
    CHECK_FALSE(has(*frame, FindingId::kClash));
    // Walls stand inside the span, so rafters rise from outside to inside of the plates.
    for (const char* mark : {"P-E1", "L-E1"}) CHECK(timber(*frame, mark).at.origin.x == Approx(72 - 4));
    for (const char* mark : {"P-A1", "L-A1"}) CHECK(timber(*frame, mark).at.origin.x == Approx(4 - 72));
    CHECK(timber(*frame, "L-E1").at.origin.z - timber(*frame, "L-A1").at.origin.z == Approx((144 - 8) * pitch / 12.0));
    // Braces stay inside too.
    for (const Timber& t : frame->timbers) {
      if (t.kind != TimberKind::kBrace) continue;
      for (const double x : {t.at.origin.x, (t.at.origin + t.length * t.at.x).x}) CHECK(std::fabs(x) < 72);
    }
    int rafters = 0, seats = 0;
    for (const Timber& t : frame->timbers) rafters += t.kind == TimberKind::kCommonRafter ? 1 : 0;
    for (const Joint& j : frame->joints) seats += j.kind == JointKind::kBirdsMouth ? 1 : 0;
    CHECK(seats == 2 * rafters);
  }
}
