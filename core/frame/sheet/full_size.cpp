#include "frame/sheet/full_size.h"

#include <algorithm>
#include <string>
#include <utility>

#include "geometry/outline.h"
#include "text/print_fixed.h"

namespace bentbook {
namespace {

constexpr double kAtEdge = 1e-4;  ///< inches: nearer to an edge is on it
/// Radians: less off square is what a square gives.
constexpr double kSquareEnough = 0.02 * libm::kPi / 180;

constexpr double kTipShown = 4;       ///< inches: a tip no farther off is shown, the best place to measure from
constexpr double kWasteShown = 0.75;  ///< inches of waste past the last line

struct PatternSpan {
  double from = 0, to = 0;
  double zero = 1e300;  ///< the first line or middle of a hole
  std::vector<const FaceMark*> marks;
};

PatternSpan pattern_span(const FaceMark& mark) {
  PatternSpan s{1e300, -1e300, 1e300, {&mark}};
  const auto add = [&](double x) {
    s.from = std::min(s.from, x);
    s.to = std::max(s.to, x);
  };
  for (const FaceLine& line : mark.lines) {
    add(line.a.x), add(line.b.x);
    s.zero = std::min({s.zero, line.a.x, line.b.x});
  }
  for (const FaceHole& hole : mark.holes) s.zero = std::min(s.zero, hole.centre.x);
  for (const FaceHole& hole : mark.holes)
    add(hole.centre.x - hole.diameter / 2), add(hole.centre.x + hole.diameter / 2);
  for (const auto& waste : mark.waste)
    for (const Vec2& p : waste) add(p.x);
  return s;
}

std::vector<PatternSpan> pattern_spans(const FaceMarks& marks, double margin) {
  std::vector<PatternSpan> all, out;
  all.reserve(marks.marks.size());
  for (const FaceMark& mark : marks.marks)
    if (PatternSpan s = pattern_span(mark); s.from <= s.to) all.push_back(std::move(s));
  std::stable_sort(all.begin(), all.end(), [](const PatternSpan& a, const PatternSpan& b) { return a.from < b.from; });
  for (PatternSpan& s : all) {
    if (out.empty() || s.from > out.back().to + 2 * margin) {
      out.push_back(std::move(s));
      continue;
    }
    out.back().to = std::max(out.back().to, s.to);
    out.back().zero = std::min(out.back().zero, s.zero);
    out.back().marks.push_back(s.marks.front());
  }
  return out;
}

class PatternMaker {
 public:
  PatternMaker(const Timber& timber, const Sheet& sheet, const FaceMarks& marks, double margin)
      : timber_(timber), sheet_(sheet), marks_(marks), margin_(margin), frame_(frame_of(marks.face, timber.sides)) {}

  FullSizePattern make(const PatternSpan& stretch) {
    begin(stretch);
    for (const FaceMark* mark : stretch.marks) add(*mark);
    recesses();
    for (const auto& outline : marks_.hidden) add_clipped(out_.hidden, outline);
    leave_waste_out();
    out_.open_right = !out_.at_b && (out_.at_a || wood_at(out_.to) >= wood_at(out_.from));
    // From zero.
    for (auto* all : {&out_.outlines, &out_.openings, &out_.hidden, &out_.waste})
      for (auto& outline : *all)
        for (Vec2& p : outline) p.x -= out_.zero;
    for (FaceLine& line : out_.lines) line.a.x -= out_.zero, line.b.x -= out_.zero;
    for (FaceHole& hole : out_.holes) hole.centre.x -= out_.zero;
    out_.from -= out_.zero;
    out_.to -= out_.zero;
    return std::move(out_);
  }

 private:
  void begin(const PatternSpan& stretch) {
    out_ = {};
    out_.face = marks_.face;
    out_.width = marks_.width;
    out_.reference_below = marks_.gauge_left;
    out_.from = std::max(0.0, stretch.from - margin_);
    out_.to = std::min(marks_.length, stretch.to + margin_);
    if (out_.from < kTipShown) out_.from = 0;
    if (out_.to > marks_.length - kTipShown) out_.to = marks_.length;
    out_.at_a = out_.from == 0;
    out_.at_b = !out_.at_a && out_.to == marks_.length;
    out_.zero = out_.at_a ? 0 : out_.at_b ? marks_.length : std::min(stretch.zero, stretch.to);
  }

  /// Its part in the stretch, counterclockwise.
  [[nodiscard]] std::vector<Vec2> clipped(std::vector<Vec2> outline) const {
    if (signed_area(outline) < 0) std::reverse(outline.begin(), outline.end());
    return clipped_to(outline, out_.from, out_.to);
  }

  /// Past the last wood and the last line there is nothing to lay out; the tip may lie on another face.
  void leave_waste_out() {
    double low = 1e300, high = -1e300, first = 1e300;
    const auto add = [&](double x) {
      low = std::min(low, x);
      high = std::max(high, x);
    };
    for (const auto* all : {&out_.outlines, &out_.openings})
      for (const auto& outline : *all)
        for (const Vec2& p : outline) add(p.x);
    for (const FaceLine& line : out_.lines) {
      add(line.a.x);
      add(line.b.x);
      first = std::min({first, line.a.x, line.b.x});
    }
    for (const FaceHole& hole : out_.holes) {
      add(hole.centre.x - hole.diameter / 2);
      add(hole.centre.x + hole.diameter / 2);
      first = std::min(first, hole.centre.x);
    }
    out_.from = std::max(out_.from, low - kWasteShown);
    out_.to = std::min(out_.to, high + kWasteShown);
    const bool was_at_tip = out_.at_a || out_.at_b;
    out_.at_a = out_.at_a && low < kAtEdge;
    out_.at_b = out_.at_b && high > marks_.length - kAtEdge;
    if (was_at_tip && !out_.at_a && !out_.at_b) out_.zero = first;
    std::vector<std::vector<Vec2>> waste = std::exchange(out_.waste, {});
    for (const auto& outline : waste) add_clipped(out_.waste, outline);
    std::vector<std::vector<Vec2>> hidden = std::exchange(out_.hidden, {});
    for (const auto& outline : hidden) add_clipped(out_.hidden, outline);
  }

  /// How much of the outline runs across at a station.
  [[nodiscard]] double wood_at(double x) const {
    double sum = 0;
    for (const auto& outline : out_.outlines)
      for (std::size_t i = 0; i < outline.size(); ++i) {
        const Vec2 a = outline[i], b = outline[i + 1 == outline.size() ? 0 : i + 1];
        if (libm::fabs(a.x - x) < kAtEdge && libm::fabs(b.x - x) < kAtEdge) sum += libm::fabs(b.y - a.y);
      }
    return sum;
  }

  void add_clipped(std::vector<std::vector<Vec2>>& to, const std::vector<Vec2>& outline) const {
    if (auto part = clipped(outline); part.size() > 2) to.push_back(std::move(part));
  }

  void add(const FaceMark& mark) {
    out_.work.push_back({mark.work, mark.index});
    out_.lines.insert(out_.lines.end(), mark.lines.begin(), mark.lines.end());
    out_.holes.insert(out_.holes.end(), mark.holes.begin(), mark.holes.end());
    for (const auto& waste : mark.waste) add_clipped(out_.waste, waste);
  }

  [[nodiscard]] std::vector<Vec2> on_page(const std::vector<Vec2>& polygon) const {
    std::vector<Vec2> out;
    out.reserve(polygon.size());
    const bool low_left = marks_.face == Face::kTop || marks_.face == Face::kNear;
    for (const Vec2& p : polygon) out.push_back({p.x, low_left ? p.y - frame_.lo : frame_.hi - p.y});
    return out;
  }

  [[nodiscard]] bool in_work(int feature) const {
    return std::find(out_.work.begin(), out_.work.end(), FullSizePattern::Work{WorkOn::kFeature, feature}) !=
           out_.work.end();
  }

  /// The face between the end cuts without what goes through; holes are bored and stay out of it.
  void recesses() {
    std::vector<std::vector<Vec2>> through;
    for (const RecessMarks& recess : sheet_.marks.recesses) {
      if (recess.diameter > 0) continue;
      for (const RecessOnFace& on : recess.faces) {
        if (on.face != marks_.face) continue;
        std::vector<Vec2> part = clipped(on_page(on.outline));
        if (part.size() < 3) continue;
        if (on.through) {
          through.push_back(std::move(part));
        } else if (in_work(recess.feature)) {
          out_.openings.push_back(std::move(part));
          out_.depths.push_back(told_depth(timber_, recess, on));
        }
      }
    }
    const std::vector<Vec2> whole = clipped(on_page(kept_face(timber_, marks_.face)));
    out_.outlines = left_over(whole, through);
  }

  const Timber& timber_;
  const Sheet& sheet_;
  const FaceMarks& marks_;
  double margin_;
  FaceFrame frame_;
  FullSizePattern out_;
};

bool askew(const FaceLine& line) {
  return line.off_square > kSquareEnough && line.off_square < libm::kPi / 2 - kSquareEnough;
}

/// Rule and square alone do not lay it out.
bool wanted(const Timber& timber, const FullSizePattern& p) {
  // Of pins one is enough: it has to meet the plate's.
  const bool pins = std::any_of(p.work.begin(), p.work.end(), [&](const FullSizePattern::Work& work) {
    return work.on == WorkOn::kFeature && timber.features[static_cast<std::size_t>(work.index)].use == HoleUse::kPin;
  });
  if (pins) return true;
  const auto within = [&](double y) { return y > kAtEdge && y < p.width - kAtEdge; };
  constexpr std::size_t kJig = 2;  // one hole is a rule and a square's
  return p.holes.size() >= kJig || std::any_of(p.lines.begin(), p.lines.end(), [&](const FaceLine& line) {
           return askew(line) || within(line.a.y) || within(line.b.y);
         });
}

/// Of two that mirror each other the reference face's stays.
void drop_mirrored(std::vector<FullSizePattern>& all, const Wood& wood) {
  for (std::size_t i = 0; i < all.size(); ++i) {
    for (std::size_t k = i + 1; k < all.size(); ++k) {
      if (all[k].face != rolled(rolled(all[i].face)) || all[i].turned || all[k].turned) continue;
      if (libm::fabs(all[i].zero - all[k].zero) > kAtEdge || pattern_key(all[i]) != pattern_key(edge_for_edge(all[k])))
        continue;
      if (is_reference(wood, all[k].face)) all[i] = all[k];
      all[i].turned = true;
      all.erase(all.begin() + static_cast<std::ptrdiff_t>(k));
      break;
    }
  }
}

std::string key_of_place(double x, double y) {
  // So many to an inch that fractions of a rule fall on one, not between two; a zero has one sign.
  constexpr double kPerInch = 9984;
  const auto number = [](double v) { return print_fixed(libm::fabs(v * kPerInch) < 0.5 ? 0 : v * kPerInch, 0); };
  return number(x) + " " + number(y);
}

/// Sorted, each outline from its lowest corner: where it begins is no difference.
std::string key_of_outlines(const std::vector<std::vector<Vec2>>& outlines) {
  std::vector<std::string> texts;
  texts.reserve(outlines.size());
  for (const auto& outline : outlines) {
    std::vector<std::string> corners;
    corners.reserve(outline.size());
    for (const Vec2& p : outline) corners.push_back(key_of_place(p.x, p.y));
    std::rotate(corners.begin(), std::min_element(corners.begin(), corners.end()), corners.end());
    std::string text;
    for (const std::string& corner : corners) text += corner + ",";
    texts.push_back(std::move(text));
  }
  std::sort(texts.begin(), texts.end());
  std::string all;
  for (const std::string& text : texts) all += text + ";";
  return all + "|";
}

/// Every place mirrored; the outlines keep their sense.
template <class Flip>
void flip_all(FullSizePattern& p, Flip flip) {
  for (auto* all : {&p.outlines, &p.openings, &p.hidden, &p.waste})
    for (auto& outline : *all) {
      for (Vec2& at : outline) flip(at);
      std::reverse(outline.begin(), outline.end());
    }
  for (FaceLine& line : p.lines) flip(line.a), flip(line.b);
  for (FaceHole& hole : p.holes) flip(hole.centre);
}

}  // namespace

double last_mark(const FullSizePattern& p) {
  double last = 0;
  for (const FaceLine& line : p.lines) last = std::max({last, line.a.x, line.b.x});
  for (const FaceHole& hole : p.holes) last = std::max(last, hole.centre.x);
  return last;
}

FullSizePattern end_for_end(FullSizePattern p) {
  const double zero = p.at_a || p.at_b ? 0 : last_mark(p);
  flip_all(p, [&](Vec2& at) { at.x = zero - at.x; });
  const double from = zero - p.to;
  p.to = zero - p.from;
  p.from = from;
  std::swap(p.at_a, p.at_b);
  p.open_right = !p.open_right;
  return p;
}

FullSizePattern edge_for_edge(FullSizePattern p) {
  flip_all(p, [&](Vec2& at) { at.y = p.width - at.y; });
  p.reference_below = !p.reference_below;
  return p;
}

Vec2 middle_of(const std::vector<Vec2>& outline) {
  Vec2 sum;
  for (const Vec2& p : outline) sum = {sum.x + p.x, sum.y + p.y};
  const double n = std::max(static_cast<double>(outline.size()), 1.0);
  return {sum.x / n, sum.y / n};
}

std::vector<FullSizePattern> full_size_patterns(const Timber& timber, const Sheet& sheet, double margin) {
  std::vector<FullSizePattern> out;
  for (const Face face : kFaces) {
    const FaceMarks marks = face_marks(timber, sheet, face);
    PatternMaker maker(timber, sheet, marks, margin);
    for (const PatternSpan& stretch : pattern_spans(marks, margin))
      if (FullSizePattern pattern = maker.make(stretch); wanted(timber, pattern)) out.push_back(std::move(pattern));
  }
  drop_mirrored(out, timber.wood);
  return out;
}

std::string pattern_key(const FullSizePattern& p) {
  std::string out = p.at_a ? "A" : p.at_b ? "B" : "-";
  if (p.turned) out += "t";  // what serves two faces is another one than its equal that serves one
  out += p.reference_below ? "v " : "^ ";
  out += key_of_place(p.from, p.to) + " " + key_of_place(p.width, 0) + "|";
  out += key_of_outlines(p.outlines) + key_of_outlines(p.openings) + key_of_outlines(p.hidden);
  std::vector<std::string> lines;
  lines.reserve(p.lines.size() + p.openings.size() + p.holes.size());
  for (const FaceLine& line : p.lines) {
    std::string a = key_of_place(line.a.x, line.a.y), b = key_of_place(line.b.x, line.b.y);
    if (b < a) std::swap(a, b);
    lines.push_back(a + " " + b);
  }
  for (std::size_t i = 0; i < p.openings.size(); ++i) {
    const Vec2 middle = middle_of(p.openings[i]);
    lines.push_back(key_of_place(middle.x, middle.y) + " d" + (p.depths[i] ? " " + key_of_place(*p.depths[i], 0) : ""));
  }
  for (const FaceHole& hole : p.holes)
    lines.push_back(key_of_place(hole.centre.x, hole.centre.y) + " o " + key_of_place(hole.diameter, 0));
  std::sort(lines.begin(), lines.end());
  for (const std::string& line : lines) out += line + ";";
  return out;
}

}  // namespace bentbook
