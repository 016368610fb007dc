#include "printed/pages/details.h"

#include <algorithm>
#include <utility>

#include "frame/sheet/full_size.h"
#include "numeric/index.h"
#include "numeric/libm.h"
#include "paper/page_part.h"
#include "printed/page_head.h"
#include "printed/pages/pattern_sheet.h"
#include "words/face_words.h"

namespace bentbook {
namespace {

constexpr double kDetailGap = 3;                  // mm between two side by side
constexpr double kDetailLeast = 44;               // mm of width, for the words
constexpr double kDetailWood = 1;                 // inches beyond what is cut
constexpr int kEnlarged[] = {2, 4, 5};            // 1:…, easily read
constexpr int kDetailScales[] = {5, 10, 20, 50};  // of what has no room so

std::vector<int> mates_of(const SheetSubject& s, const FullSizePattern& pattern) {
  std::vector<int> mates;
  for (const FullSizePattern::Work& work : pattern.work) {
    if (work.on != WorkOn::kFeature) continue;
    const int mate = mate_of(s.frame, s.sheet.timber, s.timber().features[at(work.index)]);
    if (mate >= 0 && std::count(mates.begin(), mates.end(), mate) == 0) mates.push_back(mate);
  }
  return mates;
}

/// The tape tells all of them.
bool pegs_alone(const Timber& timber, const FullSizePattern& pattern) {
  return std::all_of(pattern.work.begin(), pattern.work.end(), [&](const FullSizePattern::Work& work) {
    return work.on == WorkOn::kFeature && timber.features[at(work.index)].use == HoleUse::kPeg &&
           timber.features[at(work.index)].kind == FeatureKind::kHole;
  });
}

/// Between the ends, every line square to the timber or along it: rule and square lay it out from the tape's numbers.
bool is_plain(const FullSizePattern& pattern) {
  constexpr double kSame = 1e-6;  // inches
  return !pattern.at_a && !pattern.at_b &&
         std::all_of(pattern.lines.begin(), pattern.lines.end(), [](const FaceLine& line) {
           return libm::fabs(line.a.x - line.b.x) < kSame || libm::fabs(line.a.y - line.b.y) < kSame;
         });
}

/// A line for each face and end, with the stations on it: "Face 2, zero line 1′ 4″, 7′ 2″ from end A: B-A1.1, B-A1.2".
std::vector<std::string> where_lines(const Frame& frame, const Detail& detail, const Voice& voice) {
  std::vector<std::string> out;
  std::vector<bool> done(detail.places.size());
  for (std::size_t i = 0; i < done.size(); ++i) {
    if (done[i]) continue;
    const Detail::Place& first = detail.places[i];
    std::string stations, marks;
    std::vector<int> mates;
    for (std::size_t k = i; k < done.size(); ++k) {
      const Detail::Place& p = detail.places[k];
      if (p.spot != first.spot || p.lie != first.lie) continue;
      done[k] = true;
      stations += (stations.empty() ? "" : ", ") + tape_number_text(p.station, voice);
      for (const int mate : p.mates) {
        if (std::count(mates.begin(), mates.end(), mate) > 0) continue;
        mates.push_back(mate);
        marks += (marks.empty() ? "" : ", ") + frame.timbers[at(mate)].mark;
      }
    }
    if (const std::string_view unit = page_unit(voice); !unit.empty()) (stations += ' ') += unit;
    std::string where = pattern_where_text(first.spot, stations, voice.language);
    if (const std::string lie = lie_text(first.lie, first.spot, voice.language); !lie.empty()) where += ", " + lie;
    if (!marks.empty()) where = say(Msg::kPatternFor, voice.language, {{"where", where}, {"marks", marks}});
    out.push_back(std::move(where));
  }
  return out;
}

/// In a third of the page where it is easily read there, the largest scale; else across the page, as large as there is
/// room.
DrawnDetail drawn_detail(const SheetSubject& s, const Detail& detail, double width) {
  constexpr double kHigh = 75, kHighest = 95;  // mm
  DrawnDetail out;
  int scale = 0;
  const auto drawn_at = [&](std::span<const int> scales, double wide, double high) {
    return std::any_of(scales.begin(), scales.end(), [&](int one_to) {
      scale = one_to;
      out.drawn = pattern_sheet(detail.pattern, {}, s.voice, {1.0 / scale, kDetailRow, true, true});
      return out.drawn.width <= wide && out.drawn.height <= high;
    });
  };
  if (!drawn_at(kEnlarged, (width - 2 * kDetailGap) / 3, kHigh)) drawn_at(kDetailScales, width, kHighest);
  std::vector<std::string_view> names;  // of all places: alike ends may be called differently
  for (const Detail::Place& place : detail.places) add_work_names(names, s.timber(), place.work, s.voice.language);
  out.title = names_text(names) + " · 1:" + std::to_string(scale);
  if (const std::string_view unit = page_unit(s.voice); !unit.empty()) (out.title += " · ") += unit;
  out.where = where_lines(s.frame, detail, s.voice);
  return out;
}

/// The height of the words.
double put_detail_words(paper::Page& page, double x, const DrawnDetail& detail, double width) {
  double y = paper::put_lines(page, {x, 0}, detail.title, {kBodyLetters, true}, width);
  for (const std::string& line : detail.where) y += paper::put_lines(page, {x, y}, line, {kSmallLetters, false}, width);
  return y;
}

double cell_of(const DrawnDetail& detail, double width) {
  return std::min(width, std::max(detail.drawn.width, kDetailLeast));
}

/// Words of a row stand on one level, the drawings under them on another.
PagePart row_of_details(std::span<const DrawnDetail> row, double width) {
  PagePart part;
  double x = 0, words = 0;
  for (const DrawnDetail& detail : row) {
    words = std::max(words, put_detail_words(part.drawn, x, detail, cell_of(detail, width)));
    x += cell_of(detail, width) + kDetailGap;
  }
  x = 0;
  for (const DrawnDetail& detail : row) {
    paper::put(part.drawn, detail.drawn.whole(), {x, words});
    part.height = std::max(part.height, words + detail.drawn.height);
    x += cell_of(detail, width) + kDetailGap;
  }
  return part;
}

}  // namespace

FullSizePattern laid(FullSizePattern pattern, Lie lie) {
  if (lie == Lie::kEdges || lie == Lie::kHalfTurn) pattern = edge_for_edge(std::move(pattern));
  if (lie == Lie::kEnds || lie == Lie::kHalfTurn) pattern = end_for_end(std::move(pattern));
  return pattern;
}

std::string lie_text(Lie lie, const PatternSpot& spot, Language language) {
  if (lie == Lie::kEdges) return std::string(text(Msg::kPaperEdgesChanged, language));
  if (lie == Lie::kEnds) return say(Msg::kPaperCountedToward, language, spot.at_a ? "B" : "A");
  return lie == Lie::kHalfTurn ? std::string(text(Msg::kPaperHalfTurned, language)) : std::string{};
}

std::vector<Detail> details_of(const SheetSubject& s) {
  std::vector<Detail> out;
  std::vector<std::string> keys, kinds;  // of each
  for (FullSizePattern& pattern : full_size_patterns(s.timber(), s.sheet, kDetailWood)) {
    if (pegs_alone(s.timber(), pattern)) continue;
    Detail::Place place{{pattern.face, pattern.turned, pattern.at_a, pattern.at_b},
                        pattern.zero,
                        {},
                        mates_of(s, pattern),
                        pattern.work};
    auto found = keys.end();
    for (const Lie lie : kLies) {
      found = std::find(keys.begin(), keys.end(), pattern_key(laid(pattern, lie)));
      place.lie = lie;
      if (found != keys.end()) break;
    }
    if (found != keys.end()) {
      const bool back = place.lie == Lie::kEnds || place.lie == Lie::kHalfTurn;
      if (back && !pattern.at_a && !pattern.at_b) place.station += last_mark(pattern);
      out[static_cast<std::size_t>(found - keys.begin())].places.push_back(std::move(place));
      continue;
    }
    place.lie = Lie::kAsDrawn;
    // Of plain joints of one kind the first shows how.
    std::vector<std::string_view> names;
    add_work_names(names, s.timber(), pattern.work, s.voice.language);
    std::string kind = names_text(names);
    if (is_plain(pattern) && std::count(kinds.begin(), kinds.end(), kind) > 0) continue;
    kinds.push_back(is_plain(pattern) ? std::move(kind) : std::string{});
    keys.push_back(pattern_key(pattern));
    out.push_back({std::move(pattern), {std::move(place)}});
  }
  return out;
}

std::vector<DrawnDetail> drawn_details(const SheetSubject& s, double width) {
  const std::vector<Detail> details = details_of(s);
  std::vector<DrawnDetail> drawn;
  drawn.reserve(details.size());
  for (const Detail& detail : details) drawn.push_back(drawn_detail(s, detail, width));
  // Those that are as high side by side.
  std::stable_sort(drawn.begin(), drawn.end(),
                   [](const DrawnDetail& a, const DrawnDetail& b) { return a.drawn.height > b.drawn.height; });
  return drawn;
}

PagePart detail_part(const DrawnDetail& detail, double width) {
  PagePart part;
  const double words = put_detail_words(part.drawn, 0, detail, width);
  paper::put(part.drawn, detail.drawn.whole(), {0, words});
  part.height = words + detail.drawn.height;
  return part;
}

std::vector<PagePart> detail_rows(std::span<const DrawnDetail> details, double width) {
  std::vector<PagePart> parts;
  for (std::size_t i = 0; i < details.size();) {
    std::size_t end = i;
    for (double x = 0; end < details.size() && x + cell_of(details[end], width) <= width + 0.01; ++end)
      x += cell_of(details[end], width) + kDetailGap;
    parts.push_back(row_of_details(details.subspan(i, end - i), width));
    i = end;
  }
  return parts;
}

}  // namespace bentbook
