#include "printed/pages/patterns.h"

#include <algorithm>
#include <map>
#include <utility>

#include "numeric/index.h"
#include "paper/dxf.h"
#include "paper/letters.h"
#include "paper/page_part.h"
#include "paper/tiles.h"
#include "printed/page_head.h"
#include "words/frame_words.h"

namespace bentbook {
namespace {

using draw::Point;

constexpr double kBarStrip = 7;  // mm left of and under the window, for the bars
constexpr double kMapWide = 26;  // mm
constexpr double kMapHigh = 14;
constexpr double kLead = 1.35;  // ems from line to line
constexpr double kHeadGap = 2;  // mm between head and window

double line_of(double size) { return size * kLead; }

/// The words over a pattern's pages: the first line names it.
struct PatternHead {
  std::string title;
  std::vector<std::string> lines;
};

/// "Common rafter: Plumb cut, Bird's mouth"; of all places, which may be called differently.
std::string title_of(const Frame& frame, const PatternGroup& group, Language language) {
  std::vector<std::string_view> kinds, names;
  for (const PatternPlace& place : group.places) {
    const Timber& timber = frame.timbers[at(place.timber)];
    const std::string_view kind = kind_name(timber.kind, language);
    if (std::find(kinds.begin(), kinds.end(), kind) == kinds.end()) kinds.push_back(kind);
    add_work_names(names, timber, place.work, language);
  }
  return names.empty() ? names_text(kinds) : names_text(kinds) + ": " + names_text(names);
}

std::string group_marks(const Frame& frame, const PatternGroup& group) {
  std::string out;
  int last = -1;
  for (const PatternPlace& place : group.places) {
    if (place.timber == last) continue;
    last = place.timber;
    if (!out.empty()) out += ", ";
    out += frame.timbers[static_cast<std::size_t>(place.timber)].mark;
  }
  return out;
}

/// A line for each face and station: "Face 2, zero 7′ 2″ from end A: P-A1, P-B1".
std::vector<std::string> places_text(const Frame& frame, const PatternGroup& group, const Voice& voice) {
  std::vector<std::pair<std::string, std::string>> lines;  // where, marks
  for (const PatternPlace& place : group.places) {
    const PatternSpot spot{place.face, group.pattern.turned, group.pattern.at_a, group.pattern.at_b};
    std::string where = pattern_where_text(spot, say_inches(place.station, voice), voice.language);
    const std::string& mark = frame.timbers[static_cast<std::size_t>(place.timber)].mark;
    const auto known = std::find_if(lines.begin(), lines.end(), [&](const auto& line) { return line.first == where; });
    if (known == lines.end())
      lines.emplace_back(std::move(where), mark);
    else
      known->second += ", " + mark;
  }
  std::vector<std::string> out;
  out.reserve(lines.size());
  for (const auto& line : lines)
    out.push_back(say(Msg::kPatternFor, voice.language, {{"where", line.first}, {"marks", line.second}}));
  return out;
}

/// A side of the check: a round measure of the book's own unit.
struct CheckBar {
  double mm = 100;
  std::string said;
};
CheckBar check_bar(const Voice& voice) {
  const Length length = is_metric(voice.lengths.form) ? Length::mm(100) : Length::inches(4);
  const LengthStyle style{is_metric(voice.lengths.form) ? LengthForm::kMm : LengthForm::kInchFraction, 16, 0};
  return {length.in() * 25.4, print_length(length, style, voice.marks).text};
}

PatternHead head_of(const Frame& frame, const PatternGroup& group, const Voice& voice, const CheckBar& bar) {
  PatternHead head{title_of(frame, group, voice.language), places_text(frame, group, voice)};
  std::string lie(text(Msg::kPatternLie, voice.language));
  if (group.pattern.turned) lie += " " + std::string(text(Msg::kPatternTurned, voice.language));
  head.lines.push_back(std::move(lie));
  head.lines.push_back(say(Msg::kPatternBars, voice.language, bar.said));
  return head;
}

class PatternPages {
 public:
  PatternPages(paper::Document& document, const Voice& voice)
      : document_(document), voice_(voice), bar_(check_bar(voice)) {}

  void add(const Frame& frame, const PatternGroup& group) {
    const PatternHead head = head_of(frame, group, voice_, bar_);
    const PatternLayers sheet = pattern_sheet(group.pattern, group_marks(frame, group), voice_);
    // Wrapped to an upright page's width; a lying one has room left.
    const double room = paper::measure_of(document_.size).width - 2 * kPageMargin;
    lines_.clear();
    for (const std::string& line : head.lines) {
      const auto parts = paper::wrapped_lines(line, kSmallLetters, false, room - kMapWide - 4);
      lines_.insert(lines_.end(), parts.begin(), parts.end());
    }
    // The last line says how sheets are joined.
    const double words = line_of(kStrongLetters) + static_cast<double>(lines_.size() + 1) * line_of(kSmallLetters);
    const paper::TileFrame frame_of_page{std::max(words, kMapHigh + line_of(kSmallLetters)) + kHeadGap, kBarStrip,
                                         kBarStrip};
    paper::TilePlan plan = paper::plan_tiles(document_.size, sheet.width, sheet.height, frame_of_page);
    paper::Page whole = sheet.whole();
    const paper::TilePlan turned = paper::plan_tiles(document_.size, sheet.height, sheet.width, frame_of_page);
    if (turned.pages() < plan.pages()) {
      plan = turned;
      whole = paper::quarter_turned(std::move(whole), sheet.width);
    }
    for (int row = 0; row < plan.rows; ++row)
      for (int column = 0; column < plan.columns; ++column) {
        paper::Page page = paper::tile_page(whole, plan, column, row);
        add_head(page, head.title, plan, column, row);
        const Point corner{kPageMargin + kBarStrip - 2, plan.corner.y + plan.height + 2};
        paper::add_check_bars(page, corner, bar_.mm, bar_.said);
        document_.pages.push_back(std::move(page));
      }
  }

 private:
  void add_head(paper::Page& page, const std::string& title, const paper::TilePlan& plan, int column, int row) const {
    const PageRoom room = room_of(document_.size, plan.lying);
    double y = room.top + kStrongLetters * paper::kCapital;
    page.texts.push_back({{room.left, y},
                          kStrongLetters,
                          true,
                          paper::Align::kLeft,
                          0,
                          paper::shortened(title, kStrongLetters, true, room.width() - kMapWide - 4)});
    y += line_of(kStrongLetters);
    for (const std::string& line : lines_) {
      page.texts.push_back({{room.left, y}, kSmallLetters, false, paper::Align::kLeft, 0, line});
      y += line_of(kSmallLetters);
    }
    if (plan.pages() == 1) return;
    const std::string which =
        say(Msg::kPatternSheet, voice_.language,
            {{"name", paper::tile_name(column, row)}, {"last", paper::tile_name(plan.columns - 1, plan.rows - 1)}});
    const std::string join = which + " " + std::string(text(Msg::kPatternJoin, voice_.language));
    page.texts.push_back({{room.left, y},
                          kSmallLetters,
                          true,
                          paper::Align::kLeft,
                          0,
                          paper::shortened(join, kSmallLetters, true, room.width())});
    paper::add_tile_map(page, plan, column, row, {room.right - kMapWide, room.top, room.right, room.top + kMapHigh});
  }

  paper::Document& document_;
  const Voice& voice_;
  CheckBar bar_;
  std::vector<std::string> lines_;
};

/// Letters, digits, dots and hyphens alone: a name on any disk.
std::string file_name(std::string_view mark) {
  std::string out;
  for (const char c : mark) {
    const bool plain =
        (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || c == '.' || c == '-';
    out += plain ? c : '-';
  }
  return out;
}

/// What one unit of a DXF file is, and whose pattern it is, under the drawing.
paper::Layer file_words(const PatternHead& head, double top, const std::string& unit) {
  paper::Layer layer{"notes", {}};
  double y = top + line_of(kStrongLetters);
  layer.page.texts.push_back({{0, y}, kStrongLetters, true, paper::Align::kLeft, 0, head.title});
  for (const std::string& line : head.lines) {
    y += line_of(kSmallLetters);
    layer.page.texts.push_back({{0, y}, kSmallLetters, false, paper::Align::kLeft, 0, line});
  }
  if (unit.empty()) return layer;
  y += line_of(kSmallLetters);
  layer.page.texts.push_back({{0, y}, kSmallLetters, true, paper::Align::kLeft, 0, unit});
  return layer;
}

PatternFile file_of(const Frame& frame, const PatternGroup& group, PatternForm form, const Voice& voice) {
  const bool metric = is_metric(voice.lengths.form);
  PatternLayers sheet = pattern_sheet(group.pattern, group_marks(frame, group), voice);
  std::erase_if(sheet.layers, [](const paper::Layer& layer) { return layer.name == "waste"; });
  // A square of the same side as the bars on paper proves a plot.
  const CheckBar bar = check_bar(voice);
  const PatternHead head = head_of(frame, group, voice, bar);
  paper::Layer check{"check", {}};
  const double top = sheet.height + kBarStrip;
  paper::add_check_bars(check.page, {kBarStrip, top + bar.mm}, bar.mm, bar.said);
  sheet.layers.push_back(std::move(check));
  const std::string unit =
      form == PatternForm::kDxf ? say(Msg::kPatternUnit, voice.language, metric ? "mm" : "in") : "";
  sheet.layers.push_back(file_words(head, top + bar.mm + kBarStrip, unit));
  const paper::Window all = paper::bounds_of(sheet.whole());
  const Timber& timber = frame.timbers[static_cast<std::size_t>(group.places.front().timber)];
  PatternFile file{file_name(timber.mark), {}};
  if (form == PatternForm::kDxf) {
    file.bytes = paper::write_dxf(sheet.layers, sheet.zero, metric ? paper::DxfUnit::kMm : paper::DxfUnit::kInch,
                                  head.title + ". " + unit);
    return file;
  }
  const paper::PageMeasure measure{std::max(sheet.width, all.right + 2), all.bottom + 2};
  file.bytes = paper::layers_svg(sheet.layers, measure, head.title, language_tag(voice.language));
  return file;
}

}  // namespace

Result<std::vector<PatternGroup>> pattern_groups(const Book& book, const BookModel& model,
                                                 const PrintOptions& options) {
  const Result<Frame>& frame = *model.frame;
  if (!frame) return tl::unexpected(frame.error());
  const Result<std::vector<int>> timbers = timbers_asked(*frame, options);
  if (!timbers) return tl::unexpected(timbers.error());
  std::vector<PatternGroup> groups;
  std::map<std::string, std::size_t> known;  // by pattern_key
  for (const int i : *timbers) {
    const Timber& timber = frame->timbers[at(i)];
    const Result<Sheet> sheet = sheet_of(book, model, timber.mark);
    if (!sheet) return tl::unexpected(sheet.error());
    for (FullSizePattern& pattern : full_size_patterns(timber, *sheet)) {
      PatternPlace place{i, pattern.face, pattern.zero, pattern.work};
      const auto [known_at, fresh] = known.emplace(pattern_key(pattern), groups.size());
      if (fresh)
        groups.push_back({std::move(pattern), {std::move(place)}});
      else
        groups[known_at->second].places.push_back(std::move(place));
    }
  }
  if (groups.empty()) return fail(ErrorCode::kEmpty, "paper");
  return groups;
}

Result<paper::Document> print_patterns(const Book& book, const BookModel& model, const PrintOptions& options,
                                       const Voice& voice) {
  const Result<std::vector<PatternGroup>> groups = pattern_groups(book, model, options);
  if (!groups) return tl::unexpected(groups.error());
  paper::Document document;
  document.size = options.page;
  PatternPages pages(document, voice);
  for (const PatternGroup& group : *groups) pages.add(**model.frame, group);
  return document;
}

Result<std::vector<PatternFile>> pattern_files(const Book& book, const BookModel& model, const PrintOptions& options,
                                               PatternForm form, const Voice& voice) {
  const Result<std::vector<PatternGroup>> groups = pattern_groups(book, model, options);
  if (!groups) return tl::unexpected(groups.error());
  std::vector<PatternFile> files;
  files.reserve(groups->size());
  for (const PatternGroup& group : *groups) {
    PatternFile file = file_of(**model.frame, group, form, voice);
    // One timber may have several.
    const auto alike = std::count_if(files.begin(), files.end(), [&](const PatternFile& other) {
      return other.name.starts_with(file.name + "_") && other.name.find('_', file.name.size() + 1) == std::string::npos;
    });
    file.name += "_" + std::to_string(alike + 1) + (form == PatternForm::kDxf ? ".dxf" : ".svg");
    files.push_back(std::move(file));
  }
  return files;
}

}  // namespace bentbook
