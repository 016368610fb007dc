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
constexpr double kDetailRow = 3.9;                // mm from one line of dimensions to the next
constexpr double kDetailLeast = 44;               // mm of width, for the words
constexpr double kDetailWood = 1;                 // inches beyond what is cut
constexpr int kEnlarged[] = {2, 4, 5};            // 1:…, easily read
constexpr int kDetailScales[] = {5, 10, 20, 50};  // of what has no room so

/// A pattern and all places of the timber that it is drawn for.
struct Detail {
  FullSizePattern pattern;
  struct Place {
    PatternSpot spot;
    double station = 0;
    bool mirrored = false;
    std::vector<int> mates;  ///< in Frame::timbers
  };
  std::vector<Place> places;
};

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

std::vector<Detail> details_of(const SheetSubject& s) {
  std::vector<Detail> out;
  std::vector<std::string> keys, kinds;  // of each
  for (FullSizePattern& pattern : full_size_patterns(s.timber(), s.sheet, kDetailWood)) {
    if (pegs_alone(s.timber(), pattern)) continue;
    const auto known = [&](const FullSizePattern& as) { return std::find(keys.begin(), keys.end(), pattern_key(as)); };
    Detail::Place place{
        {pattern.face, pattern.turned, pattern.at_a, pattern.at_b}, pattern.zero, false, mates_of(s, pattern)};
    auto found = known(pattern);
    if (found == keys.end()) {
      found = known(edge_for_edge(pattern));
      place.mirrored = found != keys.end();
    }
    if (found == keys.end()) {
      found = known(end_for_end(pattern));
      place.mirrored = found != keys.end();
      if (place.mirrored && !pattern.at_a && !pattern.at_b) place.station += last_mark(pattern);
    }
    if (found == keys.end()) {
      // Of plain joints of one kind the first shows how.
      std::string kind = pattern_work_text(s.timber(), pattern, s.voice.language);
      if (is_plain(pattern) && std::count(kinds.begin(), kinds.end(), kind) > 0) continue;
      kinds.push_back(is_plain(pattern) ? std::move(kind) : std::string{});
      keys.push_back(pattern_key(pattern));
      out.push_back({std::move(pattern), {std::move(place)}});
    } else {
      out[static_cast<std::size_t>(found - keys.begin())].places.push_back(std::move(place));
    }
  }
  return out;
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
      if (p.spot != first.spot || p.mirrored != first.mirrored) continue;
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
    if (first.mirrored) where += ", " + std::string(text(Msg::kPaperMirrored, voice.language));
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
  out.title = pattern_work_text(s.timber(), detail.pattern, s.voice.language) + " · 1:" + std::to_string(scale);
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
