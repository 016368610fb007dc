// Words, figures, the command line's brain and the task.

#include <catch_amalgamated.hpp>
#include <initializer_list>
#include <string>
#include <vector>

#include "book/demo.h"
#include "command/command.h"
#include "cut/angle_drawing.h"
#include "cut/flip_test.h"
#include "roof/pattern.h"
#include "roof/rafter_drawing.h"
#include "tasks/border.h"
#include "tasks/pattern_task.h"
#include "tasks/worker_pattern.h"
#include "words/error_words.h"
#include "words/figures.h"

using namespace bentbook;

namespace {

CommandOutput run(std::initializer_list<std::string_view> words) {
  const std::vector<std::string_view> args(words);
  return run_command(args);
}

/// Every figure of a drawing has a text and a name.
template <class Words>
void check_figures(const draw::Drawing& drawing, const Words& words) {
  const auto check = [&](const std::string& key) {
    INFO(key);
    CHECK_FALSE(words(key).text.empty());
    CHECK_FALSE(words(key).name.empty());
    CHECK(words(key).name != key);
  };
  for (const auto& d : drawing.dimensions) check(d.key);
  for (const auto& a : drawing.angles) check(a.key);
  for (const auto& n : drawing.notes) check(n.key);
}

std::vector<RafterInput> many_roofs() {
  std::vector<RafterInput> roofs;
  for (int i = 0; i < 36; ++i) {
    RafterInput input;
    input.left.overhang = Length::feet(2);
    input.peak = static_cast<PeakKind>(i % 3);
    input.tail = static_cast<TailCut>(i / 3 % 3);
    input.alike = i / 9 % 2 == 0;
    if (i / 18 == 1) input.left.heel_by = HeelBy::kHeel;
    input.right = input.left;
    input.right.pitch = Slope::in_12(Length::inches(7));
    roofs.push_back(input);
  }
  return roofs;
}

}  // namespace

TEST_CASE("every figure of every drawing can be said, in every language", "[answers]") {
  for (std::size_t l = 0; l < kLanguageCount; ++l) {
    const auto language = static_cast<Language>(l);
    const Voice voice{language, {}, Marks::kScreen};
    for (const RafterInput& input : many_roofs()) {
      const auto pair = solve_rafters(input);
      REQUIRE(pair);
      const auto words = [&](std::string_view key) { return rafter_figure(key, input, *pair, voice); };
      check_figures(roof_drawing(input, *pair), words);
      for (const Side side : {Side::kLeft, Side::kRight}) {
        const Rafter& rafter = side == Side::kLeft ? pair->left : pair->right;
        check_figures(foot_drawing(input, *pair, side), words);
        check_figures(peak_drawing(input, *pair, side), words);
        check_figures(pattern_drawing(input, rafter, side), words);
        for (const PatternPart part : {PatternPart::kPeak, PatternPart::kBirdsmouth, PatternPart::kTail})
          check_figures(pattern_part(input, rafter, side, part), words);
      }
    }
    const TriangleInput triangle;
    const auto solved = solve_triangle(triangle);
    check_figures(triangle_drawing(triangle, *solved),
                  [&](std::string_view key) { return triangle_figure(key, triangle, *solved, voice); });
    const Section section{Length::inches(11, 2), Length::inches(15, 2)};
    const auto setting = saw_setting(Saw{}, section, solved->angle);
    const auto say = [&](std::string_view key) { return setting_figure(key, *setting, section, voice); };
    check_figures(cut_on_timber_drawing(*setting, section), say);
    const Length a = Length::inches(6), b = Length::inches(8);
    const auto mitre = solve_mitre(Angle::degrees(100), a, b);
    check_figures(mitre_drawing(Angle::degrees(100), a, b, *mitre),
                  [&](std::string_view key) { return mitre_figure(key, Angle::degrees(100), a, b, *mitre, voice); });
    const auto error = scale_error_from_flip(Length::inches(1, 8), a);
    check_figures(flip_drawing(Length::inches(1, 8), a, *error),
                  [&](std::string_view key) { return flip_figure(key, Length::inches(1, 8), a, *error, voice); });
  }
}

TEST_CASE("a saw's setting is said by its own scale, and how far past or shy of the mark it cuts", "[answers]") {
  const Section section{Length::inches(11, 2), Length::inches(15, 2)};
  const auto said = [&](const Slope& slope, LengthForm form) {
    LengthStyle lengths;
    lengths.form = form;
    return say_missed(saw_setting(Saw{}, section, slope_facts(slope).angle)->graduations.best(),
                      {Language::kEn, lengths, Marks::kAscii});
  };
  // 7 1/2 in x (tan 40 - 10/12) = 0.043 in, 7 1/2 in x (8/12 - tan 34) = -0.059 in.
  CHECK(said(Slope::in_12(Length::inches(10)), LengthForm::kFeetInches) == "3/64\" past the mark at the far arris");
  CHECK(said(Slope::in_12(Length::inches(10)), LengthForm::kMm) == "1.1 mm past the mark at the far arris");
  CHECK(said(Slope::in_12(Length::inches(8)), LengthForm::kDecimalInch) == "0.059\" past the mark at the far arris");

  Saw saw;
  saw.square_reads = SquareReads::kNinety;
  const auto setting = saw_setting(saw, section, slope_facts(Slope::in_12(Length::inches(10))).angle);
  const draw::Drawing scale = scale_drawing(saw, setting->graduations.best());
  CHECK(say_reading(setting->graduations.best().reads, {}) == "50\u00b0");
  REQUIRE(scale.notes.size() == 4);
  CHECK(scale.notes.front().key == "scale_90");
  CHECK(scale.notes.back().key == "scale_30");
}

TEST_CASE("given figures of the drawings are inputs", "[answers]") {
  RafterInput input;
  const auto pair = solve_rafters(input);
  REQUIRE(pair);
  const auto given = [&](bool triangle) {
    int count = 0;
    for (const auto& d : roof_drawing(input, *pair, triangle).dimensions) count += d.meaning == draw::Meaning::kGiven;
    return count;
  };
  CHECK(given(true) == 3);   // span, overhang and the pitch's rise
  CHECK(given(false) == 2);  // the pitch is an angle
}

TEST_CASE("limits round to the safe side", "[answers]") {
  const Voice voice;
  CHECK(say_length_at_most(Length::inches(1023, 64), voice) == "1′ 3 15⁄16″");
  CHECK(say_length_at_least(Length::inches(1021, 64), voice) == "1′ 4″");
  CHECK(say_length_at_most(Length::inches(16), voice) == "1′ 4″");
  const Voice metric{Language::kEn, {LengthForm::kMm, 16, 0}, Marks::kScreen};
  CHECK(say_length_at_most(Length::inches(1), metric) == "25 mm");
  CHECK(say_length_at_least(Length::inches(1), metric) == "26 mm");
}

TEST_CASE("a refusal says what would work", "[answers]") {
  RafterInput input;
  input.left.seat = Length::feet(2);
  const auto pair = solve_rafters(input);
  REQUIRE_FALSE(pair);
  CHECK(error_text(pair.error(), {}) == "The seat is longer than the rafter allows: 1′ 1 1⁄2″ at most.");
  CHECK(error_text(pair.error(), {Language::kEs, {}, Marks::kScreen}) ==
        "El asiento es más largo de lo que da el par: 1′ 1 1⁄2″ como máximo.");
}

TEST_CASE("no error is without words", "[answers]") {
  for (int code = 0; code <= static_cast<int>(ErrorCode::kUnknownOption); ++code)
    for (std::size_t l = 0; l < kLanguageCount; ++l) {
      const auto language = static_cast<Language>(l);
      const std::string said = error_text({static_cast<ErrorCode>(code), "span", 3, 0}, {language, {}, Marks::kScreen});
      CHECK(said.size() > 5);
      CHECK(said.find('{') == std::string::npos);
    }
}

TEST_CASE("commands answer 0, refusals 2 with the spot", "[answers][cli]") {
  CHECK(run({"length", "12' 7-3/8 + 3 1/2"}).out == "12' 10-7/8\"\n");
  CHECK(run({"length", "3200", "--unit", "mm"}).out == "3200 mm\n");
  const CommandOutput bad = run({"angle", "--pitch", "10:x"});
  CHECK(bad.exit_code == 2);
  CHECK(bad.out.empty());
  CHECK(bad.err.find("10:x\n     ^") != std::string::npos);
  CHECK(run({"rafter", "--span", "24'"}).err.find("--pitch") != std::string::npos);
  CHECK(run({"rafter", "--colour", "red"}).err.find("--colour") != std::string::npos);
  CHECK(run({"rafter", "--span", "24'", "--pitch", "8", "--depth", "7.5", "--seat", "3", "--heel", "6"}).exit_code ==
        2);
  CHECK(run({"draw"}).exit_code == 2);
  CHECK(run({}).exit_code == 2);
  CHECK(run({"--help"}).exit_code == 0);
}

TEST_CASE("the task draws the pattern true to the millimetre", "[answers][task]") {
  const RafterInput input = demo_places().rafter;
  std::vector<int> told;
  const PatternRequest left{input, Side::kLeft, Language::kEn, 16}, right{input, Side::kRight, Language::kEs, 16};
  const auto sheet = run_pattern(left, [&](int per_mille) {
    told.push_back(per_mille);
    return true;
  });
  REQUIRE(sheet);
  CHECK(sheet->svg.starts_with("<svg "));
  CHECK(sheet->svg.find("100 mm") != std::string::npos);
  CHECK(told.back() == 1000);
  const auto stopped = run_pattern(right, [](int per_mille) { return per_mille < 300; });
  REQUIRE_FALSE(stopped);
  CHECK(stopped.error().where == "cancelled");
  const auto go_on = [](int) { return true; };
  const auto crossed = read_answer(TaskKind::kPattern, answer_pattern(write_request(left), go_on));
  REQUIRE(crossed);
  CHECK(std::get<PatternSheet>(*crossed).svg == sheet->svg);
  CHECK(read_answer(TaskKind::kPattern, answer_pattern("{", go_on)).error().where == "task");
  PatternRequest broken = left;
  broken.rafter.span = {};
  CHECK(read_answer(TaskKind::kPattern, answer_pattern(write_request(broken), go_on)).error().where == "span");
}
