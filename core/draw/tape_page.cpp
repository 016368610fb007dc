#include "draw/tape_page.h"

#include <algorithm>
#include <iterator>
#include <utility>

#include "draw/tape_fit.h"
#include "numeric/libm.h"

namespace bentbook::draw {
namespace {

constexpr double kEdge = 5;  // px: the heavy line of the reference edge

/// A drawn stretch of the piece.
struct Piece {
  double from = 0, to = 0;  // stations, with what is kept at each side
  double at = 0, top = 0;   // station `at` lies at `top`
};

class TapeMaker {
 public:
  TapeMaker(const TapeStrip& strip, const TapeOptions& options, TapeMeasure measure)
      : strip_(strip), options_(options), measure_(measure), fit_(fit_tape(strip, options, measure)) {}

  std::vector<TapePage> make() {
    std::vector<TapePage> pages;
    pages.reserve(fit_.pages.size());
    for (std::size_t k = 0; k < fit_.pages.size(); ++k)
      pages.push_back(page(fit_.pages[k], k == 0, k + 1 == fit_.pages.size()));
    return pages;
  }

 private:
  [[nodiscard]] double height_of(TapeText size) const { return measure_("0", size).h; }

  // ── One page ────────────────────────────────────────────────────────────────────────────────────────────────────
  [[nodiscard]] double page_x(double across) const { return fit_.columns.left + across * fit_.columns.scale; }
  [[nodiscard]] double page_y(double station, const Piece& piece) const {
    return piece.top + (station - piece.at) * fit_.columns.scale;
  }
  [[nodiscard]] Point to_page(Point p, const Piece& piece) const { return {page_x(p.y), page_y(p.x, piece)}; }

  TapePage page(const std::vector<TapeIsland>& part, bool starts, bool ends) {
    TapePage out;
    out.starts = starts;
    out.ends = ends;
    out.left = fit_.columns.left;
    out.right = fit_.columns.right;
    out.numbers = fit_.columns.right + kTapeToNumbers;
    std::vector<std::size_t> rows;
    std::vector<double> at;  // y of each row's station
    std::vector<Piece> pieces;
    double y = kTapeLead, foot = -kTapeBlockGap;  // of the words so far
    for (std::size_t k = 0; k < part.size(); ++k) {
      const auto [first, last] = part[k];
      const double from = strip_.rows[first].x, to = strip_.rows[last].x;
      y = beside_words(part, k, starts, ends, y, foot);
      const double kept = kTapeLead / fit_.columns.scale;
      pieces.push_back({std::max(0.0, from - kept), std::min(strip_.length, to + kept), from, y});
      for (std::size_t r = first; r <= last; ++r) {
        rows.push_back(r);
        at.push_back(y + (strip_.rows[r].x - from) * fit_.columns.scale);
      }
      y = at.back() + kTapeBreak;
    }
    out.height = at.back() + kTapeLead;
    for (const Piece& piece : pieces) draw_piece(out, piece);
    numbers(out, rows, at);
    words(out, rows, pieces);
    return out;
  }

  /// Where stretch `k` begins so that its words, which may be higher than it is, stand beside it and clear of those
  /// before, whose `foot` goes on to its own: not above `y`. Pages are packed with that much room.
  [[nodiscard]] double beside_words(const std::vector<TapeIsland>& part, std::size_t k, bool starts, bool ends,
                                    double y, double& foot) const {
    const TapeIsland& island = part[k];
    const double begin = strip_.rows[island.first].x, end = strip_.rows[island.last].x;
    const double from = k == 0 && starts ? -1e9 : begin - 1e-6;
    const double to = k + 1 == part.size() && ends ? 1e9 : next_start(island.last);
    std::vector<double> wanted, heights;
    for (const std::size_t b : blocks_between(strip_, from, to)) {
      const double middle = (strip_.blocks[b].from + strip_.blocks[b].to) / 2;
      wanted.push_back(y + (std::clamp(middle, begin, end) - begin) * fit_.columns.scale);
      heights.push_back(fit_.words[b].height);
    }
    if (wanted.empty()) return y;
    const std::vector<double> centres = spread(wanted, heights, -1e9, kTapeBlockGap);
    const double lower = std::max(0.0, foot + kTapeBlockGap - (centres.front() - heights.front() / 2));
    foot = centres.back() + heights.back() / 2 + lower;
    return y + lower;
  }

  void line(TapePage& out, Point a, Point b, Stroke stroke, bool ordinary = true) const {
    PlacedLine placed;
    placed.a = a;
    placed.b = b;
    placed.stroke = stroke;
    placed.ordinary = ordinary;
    out.lines.push_back(placed);
  }

  void draw_piece(TapePage& out, const Piece& piece) const {
    for (const Polygon& area : strip_.areas) {
      Polygon placed = area;
      placed.points.clear();
      for (const Point& p : between(area.points, piece.from, piece.to)) placed.points.push_back(to_page(p, piece));
      if (placed.points.size() >= 3) out.areas.push_back(std::move(placed));
    }
    edges(out, piece);
    tape(out, piece);
    for (const Line& l : strip_.lines) {
      Point a = l.a, b = l.b;
      if (!bring_in(a, b, piece.from, piece.to)) continue;
      line(out, to_page(a, piece), to_page(b, piece), l.stroke);
    }
    for (const Arc& hole : strip_.holes) {
      if (hole.centre.x < piece.from || hole.centre.x > piece.to) continue;
      const Point c = to_page(hole.centre, piece);
      const double r = std::max(hole.radius * fit_.columns.scale, 3.0);
      out.arcs.push_back({c, r, 0, 2 * libm::kPi, hole.stroke});
      line(out, {c.x - r - 4, c.y}, {c.x + r + 4, c.y}, Stroke::kThin);
      line(out, {c.x, c.y - r - 4}, {c.x, c.y + r + 4}, Stroke::kThin);
    }
  }

  /// The piece's own edges, the reference edge heavy, and where it is broken or ends.
  void edges(TapePage& out, const Piece& piece) const {
    const double left = fit_.columns.left, right = fit_.columns.right;
    const double top = page_y(piece.from, piece), foot = page_y(piece.to, piece);
    line(out, {left, top}, {left, foot}, Stroke::kVisible);
    line(out, {right, top}, {right, foot}, Stroke::kVisible);
    const double edge = strip_.gauge_left ? left - kEdge : right;
    out.areas.push_back(
        {{{edge, top}, {edge + kEdge, top}, {edge + kEdge, foot}, {edge, foot}}, Stroke::kThin, Fill::kInk, false});
    for (const auto& [station, y] : {std::pair{piece.from, top}, std::pair{piece.to, foot}}) {
      if (station > 1e-6 && station < strip_.length - 1e-6) {
        broken(out, y);
        continue;
      }
      // The stock goes on past the tip.
      const double past = station <= 1e-6 ? y - 10 : y + 10;
      out.areas.push_back({{{left, y}, {right, y}, {right, past}, {left, past}}, Stroke::kThin, Fill::kSection, false});
      line(out, {left, y}, {left, past}, Stroke::kThin);
      line(out, {right, y}, {right, past}, Stroke::kThin);
      line(out, {left, y}, {right, y}, Stroke::kThin);
    }
  }

  void broken(TapePage& out, double y) const {
    const double left = fit_.columns.left, side = fit_.columns.side;
    const Point path[] = {
        {left - 9, y},           {left + side * 0.42, y},    {left + side * 0.46, y - 6}, {left + side * 0.54, y + 6},
        {left + side * 0.58, y}, {fit_.columns.right + 9, y}};
    for (std::size_t i = 0; i + 1 < std::size(path); ++i) line(out, path[i], path[i + 1], Stroke::kThin);
  }

  void tape(TapePage& out, const Piece& piece) const {
    const double x = fit_.columns.right + 12;
    line(out, {x, page_y(piece.from, piece)}, {x, page_y(piece.to, piece)}, Stroke::kThin);
    const auto first = static_cast<int>(libm::ceil(piece.from / options_.tick - 1e-6));
    const auto last = static_cast<int>(libm::floor(piece.to / options_.tick + 1e-6));
    for (int i = first; i <= last; ++i) {
      const bool longer = i % options_.long_tick == 0;
      if (!longer && options_.tick * fit_.columns.scale < 3) continue;
      const double y = page_y(i * options_.tick, piece);
      line(out, {x, y}, {x + (longer ? 9 : 5), y}, longer ? Stroke::kVisible : Stroke::kThin);
    }
  }

  void text(TapePage& out, std::string said, TapeText size, Point at, int row, int block) const {
    const Size extent = measure_(said, size);
    out.height = std::max(out.height, at.y + extent.h);
    out.texts.push_back({std::move(said), size, at, extent, row, block});
  }

  void numbers(TapePage& out, const std::vector<std::size_t>& rows, const std::vector<double>& at) const {
    std::vector<double> heights;
    heights.reserve(rows.size());
    for (const std::size_t r : rows) heights.push_back(row_height(strip_.rows[r], fit_.columns.number, measure_));
    const std::vector<double> centres = spread(at, heights, 0, kTapeRowGap);
    const double own = height_of(fit_.columns.number), right = fit_.columns.right;
    for (std::size_t i = 0; i < rows.size(); ++i) {
      const TapeRow& row = strip_.rows[rows[i]];
      const double top = centres[i] - heights[i] / 2, middle = top + own / 2;
      line(out, {page_x(row.y), at[i]}, {right + 22, at[i]}, Stroke::kThin, false);
      line(out, {right + 22, at[i]}, {right + 32, middle}, Stroke::kThin, false);
      line(out, {right + 32, middle}, {right + 35, middle}, Stroke::kThin, false);
      const int r = static_cast<int>(rows[i]);
      text(out, row.number, fit_.columns.number, {right + kTapeToNumbers, top}, r, -1);
      if (!row.tag.empty()) text(out, row.tag, TapeText::kNote, {right + kTapeToNumbers, top + own + 2}, r, -1);
    }
  }

  [[nodiscard]] double on_pieces(double station, const std::vector<Piece>& pieces) const {
    for (const Piece& piece : pieces)
      if (station <= piece.to + 1e-9) return page_y(std::max(station, piece.from), piece);
    return page_y(pieces.back().to, pieces.back());
  }

  void words(TapePage& out, const std::vector<std::size_t>& rows, const std::vector<Piece>& pieces) const {
    const double from = out.starts ? -1e9 : strip_.rows[rows.front()].x - 1e-6;
    const double to = out.ends ? 1e9 : next_start(rows.back());
    const std::vector<std::size_t> mine = blocks_between(strip_, from, to);
    std::vector<double> wanted, heights;
    for (const std::size_t b : mine) {
      wanted.push_back(on_pieces((strip_.blocks[b].from + strip_.blocks[b].to) / 2, pieces));
      heights.push_back(fit_.words[b].height);
    }
    const std::vector<double> centres = spread(wanted, heights, 0, kTapeBlockGap);
    std::vector<Reach> brackets;
    brackets.reserve(mine.size());
    for (const std::size_t b : mine)
      brackets.push_back({on_pieces(strip_.blocks[b].from, pieces), on_pieces(strip_.blocks[b].to, pieces)});
    const std::vector<double> starts = leader_starts(brackets, centres);
    for (std::size_t i = 0; i < mine.size(); ++i) {
      const std::size_t b = mine[i];
      bracket(out, brackets[i].from, brackets[i].to);
      leader(out, starts[i], centres[i]);
      double y = centres[i] - heights[i] / 2;
      for (const auto& [said, size] : fit_.words[b].lines) {
        const Size extent = measure_(said, size);
        text(out, said, size, {fit_.columns.left - kTapeToWords - extent.w, y}, -1, static_cast<int>(b));
        y += height_of(size) + kTapeLineGap;
      }
    }
    if (fit_.columns.numbered) below(out, mine);
  }

  [[nodiscard]] double next_start(std::size_t row) const {
    return row + 1 < strip_.rows.size() ? strip_.rows[row + 1].x - 1e-6 : 1e9;
  }

  struct Reach {
    double from = 0, to = 0;
  };
  /// On each bracket as near beside its words as can be, in the order of the words, so that no leader crosses another,
  /// however brackets overlap: between the last begin up to it and the first end from it on. Middles rise, so there
  /// is such a place.
  static std::vector<double> leader_starts(const std::vector<Reach>& brackets, const std::vector<double>& centres) {
    std::vector<double> starts(brackets.size()), ends(brackets.size());
    double end = 1e9, begin = -1e9;
    for (std::size_t i = brackets.size(); i-- > 0;) ends[i] = end = std::min(end, brackets[i].to);
    for (std::size_t i = 0; i < brackets.size(); ++i) {
      begin = std::max(begin, brackets[i].from);
      starts[i] = std::max(begin, std::min(centres[i], ends[i]));
    }
    return starts;
  }

  void leader(TapePage& out, double from, double centre) const {
    const double x = fit_.columns.left - 9;
    line(out, {x, from}, {x - 4, centre}, Stroke::kThin, false);
  }

  void bracket(TapePage& out, double top, double foot) const {
    const double x = fit_.columns.left - 9;
    if (foot - top > 1) {
      line(out, {x + 3, top}, {x, top}, Stroke::kThin, false);
      line(out, {x, top}, {x, foot}, Stroke::kThin, false);
      line(out, {x, foot}, {x + 3, foot}, Stroke::kThin, false);
    } else {
      line(out, {x, top}, {x + 3, top}, Stroke::kThin, false);  // not past x, where leaders run
    }
  }

  /// The words in full under the piece, after their letters.
  void below(TapePage& out, const std::vector<std::size_t>& mine) const {
    const double label = measure_("mm", TapeText::kStrong).w + kTapeToWords;
    double y = out.height + kTapeToWords;
    for (const std::size_t b : mine) {
      const int block = static_cast<int>(b);
      text(out, block_letter(b), TapeText::kStrong, {0, y}, -1, block);
      for (const auto& [said, size] : wrap_words(strip_.blocks[b], options_.width - label, measure_).lines) {
        text(out, said, size, {label, y}, -1, block);
        y += height_of(size) + kTapeLineGap;
      }
      y += kTapeBlockGap;
    }
  }

  // ── Clipping to a stretch ───────────────────────────────────────────────────────────────────────────────────────
  static bool bring_in(Point& a, Point& b, double from, double to) {
    if (std::max(a.x, b.x) < from - 1e-9 || std::min(a.x, b.x) > to + 1e-9) return false;
    const auto move = [&](Point& p, const Point& q) {
      const double x = std::clamp(p.x, from, to);
      if (x != p.x && q.x != p.x) p = {x, p.y + (x - p.x) / (q.x - p.x) * (q.y - p.y)};
    };
    move(a, b);
    move(b, a);
    return true;
  }

  /// Sutherland and Hodgman, against two stations.
  static std::vector<Point> between(std::vector<Point> polygon, double from, double to) {
    for (const double sign : {-1.0, 1.0}) {
      const double limit = sign > 0 ? to : -from;
      std::vector<Point> out;
      for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Point p = polygon[i], q = polygon[i + 1 == polygon.size() ? 0 : i + 1];
        const double dp = sign * p.x - limit, dq = sign * q.x - limit;
        if (dp <= 0) out.push_back(p);
        if ((dp <= 0) == (dq <= 0)) continue;
        const double t = dp / (dp - dq);
        out.push_back({p.x + t * (q.x - p.x), p.y + t * (q.y - p.y)});
      }
      polygon = std::move(out);
    }
    return polygon;
  }

  const TapeStrip& strip_;
  const TapeOptions& options_;
  TapeMeasure measure_;
  TapeFit fit_;
};

}  // namespace

std::vector<double> spread(const std::vector<double>& wanted, const std::vector<double>& heights, double top,
                           double gap) {
  std::vector<double> packed;  // centres, one touching the next
  double height = 0;
  for (const double h : heights) {
    packed.push_back(height + h / 2);
    height += h + gap;
  }
  struct Pool {
    double mean;
    std::size_t count;
  };
  std::vector<Pool> pools;
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    pools.push_back({wanted[i] - packed[i], 1});
    while (pools.size() > 1 && pools[pools.size() - 2].mean > pools.back().mean) {
      const Pool low = pools.back();
      pools.pop_back();
      Pool& up = pools.back();
      const auto a = static_cast<double>(up.count), b = static_cast<double>(low.count);
      up = {(up.mean * a + low.mean * b) / (a + b), up.count + low.count};
    }
  }
  std::vector<double> centres;
  for (const Pool& pool : pools)
    for (std::size_t i = 0; i < pool.count; ++i) centres.push_back(std::max(top, pool.mean) + packed[centres.size()]);
  return centres;
}

std::vector<TapePage> lay_out_tape(const TapeStrip& strip, const TapeOptions& options, TapeMeasure measure) {
  return TapeMaker(strip, options, measure).make();
}

}  // namespace bentbook::draw
