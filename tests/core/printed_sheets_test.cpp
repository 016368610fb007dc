#include <algorithm>
#include <catch_amalgamated.hpp>

#include "frame/joinery.h"
#include "frame/sheet/full_size.h"
#include "numeric/index.h"
#include "page_judge.h"
#include "printed/pages/details.h"
#include "printed/pages/pattern_sheet.h"
#include "printed/printed.h"

using namespace bentbook;
using Catch::Matchers::WithinAbs;

namespace {

Book barn(SizedBy by) {
  return new_book("Barn", Length::feet(24), Length::feet(36), Length::feet(10), Slope::in_12(Length::inches(9)), by);
}

/// Frames that have little alike: those of the app's own sizes in both units, steel at every meeting, hipped ends.
std::vector<Book> books() {
  std::vector<Book> all{demo_book(), barn(SizedBy::kInches), barn(SizedBy::kMillimetres), barn(SizedBy::kInches)};
  all.back().frame = with_joinery(all.back().frame, Joinery::kPlates);
  all.push_back(barn(SizedBy::kInches));
  all.back().frame = default_hip_plan(Length::feet(24), Length::feet(36), Length::feet(10),
                                      Slope::in_12(Length::inches(9)), SizedBy::kInches, std::nullopt);
  return all;
}

std::string texts_of(const paper::Page& page) {
  std::string out;
  for (const paper::PageText& text : page.texts) out += text.text + "\n";
  return out;
}

Sheet sheet_of_timber(const Frame& frame, std::size_t timber) {
  return solve_sheet(frame, static_cast<int>(timber), saw_of(demo_book()));
}

}  // namespace

TEST_CASE("sheets with joints enlarged are read: several frames, both units, all languages", "[printed][details]") {
  int i = 0;
  for (const Book& book : books()) {
    Voice voice{static_cast<Language>(i % 3), book.lengths, Marks::kScreen};
    PrintOptions options;
    options.page = static_cast<paper::PageSize>(i++ % 2);
    const auto document = print(book, solve(book), options, voice);
    REQUIRE(document);
    const std::vector<std::string> faults = faults_of(*document);
    INFO(said(faults));
    CHECK(faults.empty());
  }
}

TEST_CASE("a joint enlarged is to its scale, end A on top and the face's left edge at the left", "[printed][details]") {
  constexpr double kScale = 0.25;
  int lines = 0;
  for (const Book& book : books()) {
    const BookModel model = solve(book);
    const Frame& frame = **model.frame;
    for (std::size_t t = 0; t < frame.timbers.size(); t += 5)
      for (const FullSizePattern& pattern : full_size_patterns(frame.timbers[t], sheet_of_timber(frame, t))) {
        const PatternLayers drawn = pattern_sheet(pattern, {}, {}, {kScale, 5, true, true});
        const auto cuts = std::find_if(drawn.layers.begin(), drawn.layers.end(),
                                       [](const paper::Layer& layer) { return layer.name == "cut"; });
        REQUIRE(cuts->page.lines.size() == pattern.lines.size());
        for (std::size_t i = 0; i < pattern.lines.size(); ++i, ++lines) {
          const FaceLine& cut = pattern.lines[i];
          const paper::PageLine& line = cuts->page.lines[i];
          CHECK_THAT(line.a.x - drawn.zero.x, WithinAbs(cut.a.y * 25.4 * kScale, 1e-6));
          CHECK_THAT(line.a.y - drawn.zero.y, WithinAbs(cut.a.x * 25.4 * kScale, 1e-6));
          CHECK_THAT(line.b.y - line.a.y, WithinAbs((cut.b.x - cut.a.x) * 25.4 * kScale, 1e-6));
        }
      }
  }
  CHECK(lines > 400);
}

TEST_CASE("each end and joint is enlarged once, at a round scale that is told", "[printed][details]") {
  for (const Book& book : books()) {
    const BookModel model = solve(book);
    const Frame& frame = **model.frame;
    const Voice voice{Language::kEn, book.lengths, Marks::kScreen};
    for (std::size_t t = 0; t < frame.timbers.size(); t += 3) {
      const Sheet sheet = sheet_of_timber(frame, t);
      const auto patterns = full_size_patterns(frame.timbers[t], sheet, 1);
      std::string all;
      for (const PagePart& part : detail_rows(drawn_details({book, frame, sheet, voice}, 186), 186)) {
        CHECK(paper::bounds_of(part.drawn).right <= 186.01);
        CHECK(paper::bounds_of(part.drawn).bottom <= part.height + 0.01);
        all += texts_of(part.drawn);
      }
      std::size_t scales = 0;
      for (const char* scale : {" · 1:2", " · 1:4", " · 1:5", " · 1:10"})
        for (std::size_t at = all.find(scale); at != std::string::npos; at = all.find(scale, at + 1))
          scales += scale[5] != '1' && all[at + 6] == '0' ? 0 : 1;
      INFO(frame.timbers[t].mark << ": " << patterns.size() << " patterns\n" << all);
      const auto wood = [](const FullSizePattern& p) { return !p.lines.empty(); };
      CHECK((scales > 0 || std::none_of(patterns.begin(), patterns.end(), wood)));
      CHECK(scales <= patterns.size());
    }
  }
}

TEST_CASE("what is at end B as a mirror shows it at end A is the same turned twice", "[printed][details]") {
  const Book book = demo_book();
  const BookModel model = solve(book);
  const Frame& frame = **model.frame;
  int mirrored = 0;
  for (std::size_t t = 0; t < frame.timbers.size(); ++t) {
    const auto patterns = full_size_patterns(frame.timbers[t], sheet_of_timber(frame, t));
    for (const FullSizePattern& p : patterns) {
      const FullSizePattern other = end_for_end(p);
      CHECK_FALSE(pattern_key(other).empty());
      CHECK(pattern_key(end_for_end(other)) == pattern_key(p));
      CHECK((other.at_a == p.at_b && other.at_b == p.at_a));
      mirrored += std::any_of(patterns.begin(), patterns.end(),
                              [&](const FullSizePattern& q) { return p.at_a && pattern_key(q) == pattern_key(other); })
                      ? 1
                      : 0;
    }
  }
  CHECK(mirrored > 0);
}

TEST_CASE("a bird's mouth that lies alike on both sides is one pattern: a fraction of a rule rounds one way only",
          "[printed][details]") {
  const Book book = books().back();
  const BookModel model = solve(book);
  const Frame& frame = **model.frame;
  int jacks = 0;
  for (std::size_t t = 0; t < frame.timbers.size(); ++t) {
    const Timber& timber = frame.timbers[t];
    if (!timber.mark.starts_with("JR-")) continue;
    ++jacks;
    int mouths = 0;
    for (const FullSizePattern& pattern : full_size_patterns(timber, sheet_of_timber(frame, t)))
      mouths += std::any_of(pattern.work.begin(), pattern.work.end(),
                            [&](const FullSizePattern::Work& work) {
                              return work.on == WorkOn::kFeature &&
                                     timber.features[at(work.index)].kind == FeatureKind::kBirdsMouth;
                            }) &&
                        !pattern.at_a && !pattern.at_b
                    ? 1
                    : 0;
    INFO(timber.mark);
    CHECK(mouths == 1);
  }
  CHECK(jacks > 8);
}
