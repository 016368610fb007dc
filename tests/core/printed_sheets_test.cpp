#include <algorithm>
#include <catch_amalgamated.hpp>
#include <set>

#include "frame/facts.h"
#include "frame/joinery.h"
#include "frame/sheet/full_size.h"
#include "numeric/index.h"
#include "page_judge.h"
#include "printed/pages/details.h"
#include "printed/pages/pattern_sheet.h"
#include "printed/printed.h"
#include "words/frame_words.h"

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
        const PatternLayers drawn = pattern_sheet(pattern, {}, {}, {kScale, kDetailRow, true, true});
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
      INFO(frame.timbers[t].mark << ": " << patterns.size() << " patterns\n" << all);
      std::size_t scales = 0;
      const auto digit = [&](std::size_t i) { return i < all.size() && all[i] >= '0' && all[i] <= '9'; };
      for (std::size_t i = all.find("1:"); i != std::string::npos; i = all.find("1:", i + 2)) {
        if ((i > 0 && digit(i - 1)) || !digit(i + 2)) continue;
        std::size_t end = i + 2;
        while (digit(end)) ++end;
        CHECK(std::set<std::string>{"2", "4", "5", "10", "20", "50"}.count(all.substr(i + 2, end - i - 2)) == 1);
        ++scales;
      }
      const std::vector<Detail> details = details_of({book, frame, sheet, voice});
      CHECK(scales == details.size());
      const auto wood = [](const FullSizePattern& p) { return !p.lines.empty(); };
      CHECK((!details.empty() || std::none_of(patterns.begin(), patterns.end(), wood)));
      for (std::size_t i = 0; i < details.size(); ++i) {
        std::set<std::string> keys;
        for (const Lie lie : kLies) keys.insert(pattern_key(laid(details[i].pattern, lie)));
        for (std::size_t k = i + 1; k < details.size(); ++k) CHECK(keys.count(pattern_key(details[k].pattern)) == 0);
      }
    }
  }
}

TEST_CASE("a place that an enlarged joint serves is the drawing itself, laid on as its words say",
          "[printed][details]") {
  int laid_ones[4] = {};
  for (const Book& book : books()) {
    const BookModel model = solve(book);
    const Frame& frame = **model.frame;
    for (std::size_t t = 0; t < frame.timbers.size(); ++t) {
      const Sheet sheet = sheet_of_timber(frame, t);
      const auto patterns = full_size_patterns(frame.timbers[t], sheet, 1);
      for (const Detail& detail : details_of({book, frame, sheet, {}})) {
        CHECK(detail.places.front().lie == Lie::kAsDrawn);
        for (const Detail::Place& place : detail.places) {
          ++laid_ones[static_cast<int>(place.lie)];
          const FullSizePattern lying = laid(detail.pattern, place.lie);
          // Counted back toward A, the zero line is the one farther from A.
          const bool back = place.lie == Lie::kEnds || place.lie == Lie::kHalfTurn;
          const bool at_end = place.spot.at_a || place.spot.at_b;
          CHECK(std::any_of(patterns.begin(), patterns.end(), [&](const FullSizePattern& p) {
            return p.face == place.spot.face && pattern_key(p) == pattern_key(lying) &&
                   libm::fabs(p.zero + (back && !at_end ? last_mark(p) : 0) - place.station) < 1e-9;
          }));
        }
      }
    }
  }
  for (const int count : laid_ones) CHECK(count > 0);
}

TEST_CASE("what lies half turned is not drawn again: a hip rafter's ends, a king post's equal tenons",
          "[printed][details]") {
  const auto details = [](const Book& book, std::string_view mark) {
    const BookModel model = solve(book);
    const Frame& frame = **model.frame;
    const int t = timber_by_mark(frame, mark);
    REQUIRE(t >= 0);
    return details_of({book, frame, sheet_of_timber(frame, static_cast<std::size_t>(t)), {}});
  };
  const auto half_turned = [&](const Book& book, std::string_view mark) {
    std::ptrdiff_t turned = 0;
    for (const Detail& detail : details(book, mark))
      turned += std::count_if(detail.places.begin(), detail.places.end(),
                              [](const Detail::Place& place) { return place.lie == Lie::kHalfTurn; });
    return turned;
  };
  CHECK(details(books().back(), "HR-A1").size() < 7);
  CHECK(half_turned(books().back(), "HR-A1") > 0);
  CHECK(half_turned(books()[1], "K-C1") > 0);
}

TEST_CASE("words say how a drawing is laid on: which edge, and toward which end it is counted", "[printed][details]") {
  const auto said = [](Lie lie, PatternSpot spot) { return lie_text(lie, spot, Language::kEn); };
  CHECK(said(Lie::kAsDrawn, {}).empty());
  CHECK(said(Lie::kEdges, {}) == "left and right changed");
  CHECK(said(Lie::kEnds, {}) == "counted toward A");
  CHECK(said(Lie::kEnds, {Face::kTop, false, true, false}) == "counted toward B");
  CHECK(said(Lie::kEnds, {Face::kTop, false, false, true}) == "counted toward A");
  CHECK(said(Lie::kHalfTurn, {}) == "turned half round");
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

TEST_CASE("a drawing that serves ends with different cuts names them all", "[printed][details]") {
  int different = 0;
  for (const Book& book : books()) {
    const BookModel model = solve(book);
    const Frame& frame = **model.frame;
    for (std::size_t t = 0; t < frame.timbers.size(); ++t) {
      const Sheet sheet = sheet_of_timber(frame, t);
      const SheetSubject subject{book, frame, sheet, {}};
      std::string titles;
      for (const DrawnDetail& drawn : drawn_details(subject, 186)) titles += drawn.title + "\n";
      for (const Detail& detail : details_of(subject)) {
        std::vector<std::string_view> first, all;
        for (const Detail::Place& place : detail.places) {
          add_work_names(all, frame.timbers[t], place.work, Language::kEn);
          if (first.empty()) first = all;
        }
        different += all.size() > first.size() ? 1 : 0;
        INFO(frame.timbers[t].mark << "\n" << titles);
        CHECK(titles.find(names_text(all) + " · 1:") != std::string::npos);
      }
    }
  }
  CHECK(different > 0);
}

TEST_CASE("the four arrises to check are one row where the tape reads the same along them", "[printed]") {
  int alike = 0, different = 0;
  for (const Book& book : books()) {
    const BookModel model = solve(book);
    const Frame& frame = **model.frame;
    const Voice voice{Language::kEn, book.lengths, Marks::kScreen};
    for (std::size_t t = 0; t < frame.timbers.size(); ++t) {
      const Sheet sheet = sheet_of_timber(frame, t);
      std::string all;
      for (const PagePart& part : work_parts({book, frame, sheet, voice}, 186)) all += texts_of(part.drawn);
      std::set<std::string> read;
      for (const double arris : sheet.check.arrises) read.insert(say_inches(arris, voice));
      INFO(frame.timbers[t].mark << "\n" << all);
      CHECK((all.find("Along every arris") != std::string::npos) == (read.size() == 1));
      for (int arris = 1; arris <= 4; ++arris)
        CHECK((all.find("Along arris " + std::to_string(arris)) != std::string::npos) == (read.size() > 1));
      ++(read.size() == 1 ? alike : different);
    }
  }
  CHECK(alike > 0);
  CHECK(different > 0);
}
