#include "words/face_words.h"

#include <algorithm>
#include <array>
#include <span>
#include <utility>

#include "words/frame_words.h"

namespace bentbook {
namespace {

using draw::TapeBlock;
using draw::TapeLine;
using draw::TapeText;

constexpr double kOffSquare = kSquareWithin * libm::kPi / 180;
constexpr double kNearby = 16;  // inches: alike marks that are farther apart are said one by one

/// Without the unit that stands once over the page.
std::string number_alone(std::string said, const Voice& voice) {
  if (const std::string_view unit = page_unit(voice); !unit.empty() && said.ends_with(unit))
    said.resize(said.size() - unit.size() - 1);
  return said;
}

bool askew(const FaceLine& l) { return l.off_square > kOffSquare && l.off_square < libm::kPi / 2 - kOffSquare; }

TapeLine line_of(std::string_view text, TapeText size) {
  TapeLine line{{}, size};
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t blank = std::min(text.find(' ', at), text.size());
    if (blank > at) line.parts.emplace_back(text.substr(at, blank - at));
    at = blank + 1;
  }
  return line;
}

/// One line that is not broken.
TapeLine whole_line(std::string text, TapeText size) { return {{std::move(text)}, size}; }

std::string_view short_name(const Timber& timber, const FaceMark& mark, Language language) {
  const auto i = static_cast<std::size_t>(mark.index);
  if (mark.work == WorkOn::kEndCut) return end_cut_name(timber.cuts[i].name, language);
  const FeatureKind kind = timber.features[i].kind;
  if (kind == FeatureKind::kRelief) return text(Msg::kFaceRelief, language);
  if (kind == FeatureKind::kLetIn) return text(Msg::kFaceLetIn, language);
  return feature_name(kind, language);
}

/// The tape's number says all of it.
bool is_square_end(const Timber& timber, const FaceMark& mark) {
  return mark.work == WorkOn::kEndCut &&
         timber.cuts[static_cast<std::size_t>(mark.index)].name == EndCutName::kSquare &&
         std::none_of(mark.lines.begin(), mark.lines.end(), askew);
}

class StripMaker {
 public:
  StripMaker(const Frame& frame, const Timber& timber, const FaceMarks& marks, const Voice& voice)
      : frame_(frame), timber_(timber), marks_(marks), voice_(voice) {}

  draw::TapeStrip all() {
    begin();
    blocks();
    const Vec2 tips[] = {{0, marks_.width}, {marks_.length, marks_.width}};
    rows(tips);
    return std::move(out_);
  }

  draw::TapeStrip step() {
    begin();
    rows({});
    return std::move(out_);
  }

 private:
  void begin() {
    out_.length = marks_.length;
    out_.width = marks_.width;
    out_.gauge_left = marks_.gauge_left;
    areas();
  }

  void polygon(const std::vector<Vec2>& points, draw::Stroke stroke, draw::Fill fill, bool outlined) {
    draw::Polygon area;
    for (const Vec2& p : points) area.points.push_back({p.x, p.y});
    area.stroke = stroke;
    area.fill = fill;
    area.outlined = outlined;
    out_.areas.push_back(std::move(area));
  }

  void areas() {
    for (const FaceLanding& l : marks_.landings) {
      polygon({l.low, {l.high.x, l.low.y}, l.high, {l.low.x, l.high.y}}, draw::Stroke::kThin, draw::Fill::kShade, true);
      out_.whole.push_back({l.low.x, l.high.x});
    }
    for (const auto& outline : marks_.hidden) polygon(outline, draw::Stroke::kHidden, draw::Fill::kNone, true);
    for (const FaceMark& mark : marks_.marks) {
      double from = 1e300, to = -1e300;
      for (const auto& waste : mark.waste) polygon(waste, draw::Stroke::kThin, draw::Fill::kSection, false);
      for (const FaceLine& l : mark.lines) {
        out_.lines.push_back({{l.a.x, l.a.y}, {l.b.x, l.b.y}, l.now ? draw::Stroke::kCut : draw::Stroke::kVisible});
        from = std::min({from, l.a.x, l.b.x});
        to = std::max({to, l.a.x, l.b.x});
        if (askew(l)) out_.whole.push_back({std::min(l.a.x, l.b.x), std::max(l.a.x, l.b.x)});
      }
      for (const FaceHole& hole : mark.holes)
        out_.holes.push_back({{hole.centre.x, hole.centre.y}, hole.diameter / 2, 0, 360, draw::Stroke::kCut});
      if (mark.work == WorkOn::kFeature && to > from) out_.whole.push_back({from, to});
    }
  }

  // ── Words ───────────────────────────────────────────────────────────────────────────────────────────────────────
  [[nodiscard]] int mate_of(int joint) const {
    const Joint& j = frame_.joints[static_cast<std::size_t>(joint)];
    return &frame_.timbers[static_cast<std::size_t>(j.member)] == &timber_ ? j.receiver : j.member;
  }
  [[nodiscard]] int joint_of(const FaceMark& mark) const {
    return mark.work == WorkOn::kFeature ? timber_.features[static_cast<std::size_t>(mark.index)].joint : -1;
  }
  [[nodiscard]] const std::string& mark_of(int timber) const {
    return frame_.timbers[static_cast<std::size_t>(timber)].mark;
  }

  /// "2 1⁄4″ – 3 3⁄4″", to be broken after a dash.
  [[nodiscard]] TapeLine gauges(const std::vector<double>& offsets, TapeText size) const {
    TapeLine line{{}, size};
    for (const double g : offsets) {
      if (!line.parts.empty()) line.parts.back() += " –";
      line.parts.push_back(tape_gauge_text(g, voice_));
    }
    return line;
  }

  void deep(const FaceMark& mark, TapeBlock& block) const {
    if (mark.depth)
      block.lines.push_back(
          line_of(say(Msg::kFaceDeep, voice_.language, tape_depth_text(*mark.depth, voice_)), TapeText::kNote));
  }

  [[nodiscard]] TapeBlock feature_block(const FaceMark& mark) const {
    TapeBlock block{1e300, -1e300, {}};
    std::vector<std::string> angles;
    for (const FaceLine& l : mark.lines) {
      block.from = std::min({block.from, l.a.x, l.b.x});
      block.to = std::max({block.to, l.a.x, l.b.x});
      if (!askew(l)) continue;
      std::string angle = say_angle(Angle::from_radians(l.off_square), voice_);
      if (std::find(angles.begin(), angles.end(), angle) == angles.end()) angles.push_back(std::move(angle));
    }
    block.lines.push_back(line_of(short_name(timber_, mark, voice_.language), TapeText::kNote));
    if (const int joint = joint_of(mark); joint >= 0)
      block.lines.push_back(whole_line(mark_of(mate_of(joint)), TapeText::kStrong));
    for (std::string& angle : angles) block.lines.push_back(whole_line(std::move(angle), TapeText::kStrong));
    if (!mark.gauges.empty()) block.lines.push_back(gauges(mark.gauges, TapeText::kStrong));
    deep(mark, block);
    return block;
  }

  void landing_block(const FaceLanding& l) {
    for (const FaceMark& mark : marks_.marks)
      if (mark.holes.empty() && joint_of(mark) == l.joint) return;
    TapeBlock block{l.low.x, l.high.x, {}};
    block.lines.push_back(whole_line(mark_of(l.mate), TapeText::kStrong));
    block.lines.push_back(line_of(text(Msg::kFaceLands, voice_.language), TapeText::kNote));
    if (l.low.y > 0.02 || l.high.y < marks_.width - 0.02) {
      const auto ends = std::minmax({marks_.gauge(l.low.y), marks_.gauge(l.high.y)});  // values, not references
      block.lines.push_back(gauges({ends.first, ends.second}, TapeText::kNote));
    }
    out_.blocks.push_back(std::move(block));
  }

  void blocks() {
    for (const FaceMark& mark : marks_.marks) {
      if (!mark.lines.empty() && !is_square_end(timber_, mark)) out_.blocks.push_back(feature_block(mark));
    }
    for (const FaceLanding& l : marks_.landings) landing_block(l);
    hole_blocks();
    std::stable_sort(out_.blocks.begin(), out_.blocks.end(), [](const TapeBlock& a, const TapeBlock& b) {
      return std::pair(a.from + a.to, a.from) < std::pair(b.from + b.to, b.from);
    });
  }

  /// Holes of one bit and depth that lie near each other: "4 × 3⁄4″ holes at 1 1⁄2″, 6 1⁄2″".
  struct Bores {
    double from = 0, to = 0, diameter = 0;
    std::optional<double> depth;
    std::vector<double> gauges;  // rising
    int count = 0;
  };

  void hole_blocks() {
    struct Bore {
      FaceHole hole;
      std::optional<double> depth;
    };
    std::vector<Bore> bores;
    for (const FaceMark& mark : marks_.marks)
      for (const FaceHole& hole : mark.holes) bores.push_back({hole, mark.depth});
    std::stable_sort(bores.begin(), bores.end(),
                     [](const Bore& a, const Bore& b) { return a.hole.centre.x < b.hole.centre.x; });
    std::vector<Bores> groups;
    for (const auto& [hole, depth] : bores) {
      auto group = std::find_if(groups.rbegin(), groups.rend(), [&, &h = hole, &d = depth](const Bores& g) {
        return g.diameter == h.diameter && g.depth == d && h.centre.x - g.to < kNearby;
      });
      if (group == groups.rend()) {
        groups.push_back({hole.centre.x, hole.centre.x, hole.diameter, depth, {}, 0});
        group = groups.rbegin();
      }
      group->to = hole.centre.x;
      ++group->count;
      const double gauge = marks_.gauge(hole.centre.y);
      const auto at = std::lower_bound(group->gauges.begin(), group->gauges.end(), gauge - 1e-3);
      if (at == group->gauges.end() || *at > gauge + 1e-3) group->gauges.insert(at, gauge);
    }
    for (const Bores& group : groups) hole_block(group);
  }

  void hole_block(const Bores& bores) {
    TapeBlock block{bores.from, bores.to, {}};
    std::string size = tape_number_text(bores.diameter, voice_);
    if (bores.count > 1) size = std::to_string(bores.count) + " × " + size;
    block.lines.push_back(whole_line(std::move(size), TapeText::kStrong));
    block.lines.push_back(
        line_of(text(bores.count > 1 ? Msg::kFaceHolesAt : Msg::kFaceHoleAt, voice_.language), TapeText::kNote));
    TapeLine at{{}, TapeText::kStrong};
    for (const double gauge : bores.gauges) {
      if (!at.parts.empty()) at.parts.back() += ',';
      at.parts.push_back(tape_gauge_text(gauge, voice_));
    }
    block.lines.push_back(std::move(at));
    if (bores.depth)
      block.lines.push_back(
          line_of(say(Msg::kFaceDeep, voice_.language, tape_depth_text(*bores.depth, voice_)), TapeText::kNote));
    out_.blocks.push_back(std::move(block));
  }

  // ── Numbers ─────────────────────────────────────────────────────────────────────────────────────────────────────
  struct Station {
    double x = 0, y = 0;
    bool askew = false;
  };

  void rows(std::span<const Vec2> tips) {
    std::vector<Station> all;
    for (const Vec2& tip : tips) all.push_back({tip.x, tip.y, false});
    for (const FaceMark& mark : marks_.marks) {
      for (const FaceLine& l : mark.lines)
        for (const Vec2& p : {l.a, l.b}) all.push_back({p.x, p.y, askew(l)});
      for (const FaceHole& hole : mark.holes) all.push_back({hole.centre.x, hole.centre.y, false});
    }
    for (const FaceLanding& l : marks_.landings)
      for (const double x : {l.low.x, l.high.x}) all.push_back({x, l.high.y, false});
    std::stable_sort(all.begin(), all.end(), [](const Station& a, const Station& b) { return a.x < b.x; });
    std::vector<Station> alike;
    for (std::size_t i = 0; i < all.size(); ++i) {
      alike.push_back(all[i]);
      const std::string here = tape_number_text(all[i].x, voice_);
      if (i + 1 < all.size() && tape_number_text(all[i + 1].x, voice_) == here) continue;
      row(alike, here);
      alike.clear();
    }
  }

  void row(const std::vector<Station>& stations, const std::string& number) {
    draw::TapeRow row{stations.front().x, 0, number, {}};
    double low = 1e300, high = -1e300;
    bool all_askew = true;
    for (const Station& s : stations) {
      row.y = std::max(row.y, s.y);
      all_askew = all_askew && s.askew;
      if (!s.askew) continue;
      low = std::min(low, s.y);
      high = std::max(high, s.y);
    }
    const bool tip = row.x < 0.03 || row.x > marks_.length - 0.03;
    if (high >= low && high - low < 0.1 && (all_askew || tip)) row.tag = where_across(low, tip);
    out_.rows.push_back(std::move(row));
  }

  /// Where on the face a slanting line's end lies.
  [[nodiscard]] std::string where_across(double y, bool tip) const {
    const bool left = y<0.05, right = y> marks_.width - 0.05;
    if (left || right)
      return tip ? std::string{} : std::string(text(left ? Msg::kFaceLeftEdge : Msg::kFaceRightEdge, voice_.language));
    return say(Msg::kFaceIn, voice_.language, tape_number_text(marks_.gauge(y), voice_));
  }

  const Frame& frame_;
  const Timber& timber_;
  const FaceMarks& marks_;
  const Voice& voice_;
  draw::TapeStrip out_;
};

}  // namespace

draw::TapeStrip face_strip(const Frame& frame, const Timber& timber, const FaceMarks& marks, const Voice& voice) {
  return StripMaker(frame, timber, marks, voice).all();
}

draw::TapeStrip step_strip(const Frame& frame, const Timber& timber, const FaceMarks& marks, const Voice& voice) {
  return StripMaker(frame, timber, marks, voice).step();
}

std::string face_up_text(const FaceMarks& marks, Language language) {
  const std::string number = std::to_string(static_cast<int>(marks.face));
  return marks.reference ? say(Msg::kFaceReferenceUp, language, number) : say(Msg::kFaceUp, language, number);
}

Msg gauge_from(const FaceMarks& marks) { return marks.gauge_left ? Msg::kFaceGaugeLeft : Msg::kFaceGaugeRight; }

std::string face_summary(const Timber& timber, const FaceMarks& marks, Language language) {
  std::vector<std::pair<std::string_view, int>> counts;
  for (const FaceMark& mark : marks.marks) {
    if (is_square_end(timber, mark)) continue;
    const std::string_view name = short_name(timber, mark, language);
    const auto known = std::find_if(counts.begin(), counts.end(), [&](const auto& c) { return c.first == name; });
    if (known == counts.end())
      counts.emplace_back(name, 1);
    else
      ++known->second;
  }
  std::string out;
  for (const auto& [name, count] : counts) {
    if (!out.empty()) out += " · ";
    if (count > 1) out += std::to_string(count) + " × ";
    out += name;
  }
  if (!out.empty()) return out;
  return std::string(text(marks.landings.empty() ? Msg::kFaceNothing : Msg::kFaceLandingsOnly, language));
}

std::vector<std::pair<std::string, std::string>> tape_check_texts(const CheckMeasures& check, const Voice& voice) {
  std::vector<std::pair<std::string, std::string>> rows;
  rows.reserve(check.arrises.size() + 2);
  for (std::size_t i = 0; i < check.arrises.size(); ++i)
    rows.emplace_back(say(Msg::kSheetArris, voice.language, std::to_string(i + 1)),
                      say_inches(check.arrises[i], voice));
  const auto read_alike = [&](const auto& row) { return row.second == rows.front().second; };
  if (std::all_of(rows.begin(), rows.end(), read_alike)) {
    rows.resize(1);
    rows.front().first = text(Msg::kSheetEveryArris, voice.language);
  }
  std::array<std::string, 2> across;
  for (std::size_t i = 0; i < across.size(); ++i) {
    const std::string rising = say_inches(check.rising[i], voice), falling = say_inches(check.falling[i], voice);
    across[i] = rising == falling ? rising : rising + " · " + falling;
  }
  if (across[0] == across[1]) {
    rows.emplace_back(text(Msg::kSheetAllDiagonals, voice.language), across[0]);
    return rows;
  }
  for (std::size_t i = 0; i < across.size(); ++i)
    rows.emplace_back(say(Msg::kSheetDiagonals, voice.language, std::to_string(i + 1)), across[i]);
  return rows;
}

std::string_view page_unit(const Voice& voice) {
  if (voice.lengths.form == LengthForm::kMm) return "mm";
  return voice.lengths.form == LengthForm::kMetre ? "m" : "";
}

std::string tape_number_text(double inches, const Voice& voice) {
  return number_alone(print_length(Length::from_inches(inches), voice.lengths, voice.marks).text, voice);
}

std::string tape_gauge_text(double inches, const Voice& voice) {
  return number_alone(print_length(Length::from_inches(inches), tool_style(voice.lengths), voice.marks).text, voice);
}

std::string tape_depth_text(double inches, const Voice& voice) {
  return number_alone(say_tool_inches(inches, voice), voice);
}

void set_ticks(draw::TapeOptions& options, const Voice& voice) {
  const bool metric = is_metric(voice.lengths.form);
  options.tick = metric ? 1 / 2.54 : 1;
  options.long_tick = metric ? 10 : 12;
}

}  // namespace bentbook
