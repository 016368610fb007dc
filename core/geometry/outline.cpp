#include "geometry/outline.h"

#include <algorithm>
#include <utility>

#include "numeric/sorting.h"

namespace bentbook {
namespace {

/// Off an edge when it is asked what lies beside it: more than kOutlineSame, less than anything that is cut.
constexpr double kBeside = 1e-5;

struct Edge {
  Vec2 a, b;
};

double cross_of(Vec2 a, Vec2 b) { return a.x * b.y - a.y * b.x; }
Vec2 minus(Vec2 a, Vec2 b) { return {a.x - b.x, a.y - b.y}; }
double length_of(Vec2 a) { return libm::hypot(a.x, a.y); }
bool same(Vec2 a, Vec2 b) { return length_of(minus(a, b)) < kOutlineSame; }

bool inside_convex(const std::vector<Vec2>& polygon, Vec2 p) {
  const double sense = signed_area(polygon) < 0 ? -1 : 1;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Vec2 a = polygon[i], b = polygon[i + 1 == polygon.size() ? 0 : i + 1];
    if (sense * cross_of(minus(b, a), minus(p, a)) < 0) return false;
  }
  return polygon.size() > 2;
}

class Parting {
 public:
  Parting(const std::vector<Vec2>& whole, std::span<const std::vector<Vec2>> taken) : whole_(whole), taken_(taken) {
    add(whole);
    for (const std::vector<Vec2>& piece : taken) add(piece);
  }

  std::vector<std::vector<Vec2>> outlines() {
    for (const Edge& edge : edges_) split(edge);
    std::vector<std::vector<Vec2>> out;
    std::vector<bool> used(bounds_.size(), false);
    for (std::size_t i = 0; i < bounds_.size(); ++i) {
      if (used[i]) continue;
      std::vector<Vec2> loop = chained(i, used);
      tidy(loop);
      if (loop.size() > 2) out.push_back(std::move(loop));
    }
    return out;
  }

 private:
  void add(const std::vector<Vec2>& polygon) {
    for (std::size_t i = 0; i < polygon.size(); ++i) {
      const Edge edge{polygon[i], polygon[i + 1 == polygon.size() ? 0 : i + 1]};
      if (!same(edge.a, edge.b)) edges_.push_back(edge);
    }
  }

  [[nodiscard]] bool left(Vec2 p) const {
    return inside_convex(whole_, p) &&
           std::none_of(taken_.begin(), taken_.end(), [&](const auto& piece) { return inside_convex(piece, p); });
  }

  /// Where the edge meets others, by its share.
  [[nodiscard]] std::vector<double> meetings(const Edge& edge) const {
    std::vector<double> at{0, 1};
    const Vec2 d = minus(edge.b, edge.a);
    const double square = d.x * d.x + d.y * d.y;
    const auto share = [&](Vec2 p) { return ((p.x - edge.a.x) * d.x + (p.y - edge.a.y) * d.y) / square; };
    for (const Edge& other : edges_) {
      const Vec2 e = minus(other.b, other.a);
      const double turn = cross_of(d, e);
      if (libm::fabs(turn) > 1e-12 * libm::sqrt(square) * length_of(e))
        at.push_back(cross_of(minus(other.a, edge.a), e) / turn);
      at.push_back(share(other.a));
      at.push_back(share(other.b));
    }
    sort_up(at);
    return at;
  }

  /// Keeps of an edge what has wood at one side alone, that side at its left.
  void split(const Edge& edge) {
    const std::vector<double> at = meetings(edge);
    const Vec2 d = minus(edge.b, edge.a);
    const double length = length_of(d);
    const Vec2 off{-d.y / length * kBeside, d.x / length * kBeside};
    const auto point = [&](double share) { return Vec2{edge.a.x + share * d.x, edge.a.y + share * d.y}; };
    double from = 0;
    for (const double to : at) {
      if (to <= from || to > 1 || (to - from) * length < kOutlineSame) continue;
      const Vec2 middle = point((from + to) / 2);
      const bool at_left = left({middle.x + off.x, middle.y + off.y});
      const bool at_right = left({middle.x - off.x, middle.y - off.y});
      if (at_left != at_right) keep(at_left ? Edge{point(from), point(to)} : Edge{point(to), point(from)});
      from = to;
    }
  }

  void keep(const Edge& edge) {
    const bool known = std::any_of(bounds_.begin(), bounds_.end(),
                                   [&](const Edge& e) { return same(e.a, edge.a) && same(e.b, edge.b); });
    if (!known) bounds_.push_back(edge);
  }

  /// On from edge to edge; where several go on, the sharpest turn to the left, so that outlines which touch in a corner
  /// stay apart.
  std::vector<Vec2> chained(std::size_t first, std::vector<bool>& used) const {
    std::vector<Vec2> loop;
    std::size_t at = first;
    while (!used[at]) {
      used[at] = true;
      loop.push_back(bounds_[at].a);
      const Vec2 came = minus(bounds_[at].b, bounds_[at].a);
      double sharpest = -10;
      std::size_t next = at;
      for (std::size_t i = 0; i < bounds_.size(); ++i) {
        if ((used[i] && i != first) || !same(bounds_[i].a, bounds_[at].b)) continue;
        const Vec2 goes = minus(bounds_[i].b, bounds_[i].a);
        const double turn = libm::atan2(cross_of(came, goes), came.x * goes.x + came.y * goes.y);
        if (turn > sharpest) sharpest = turn, next = i;
      }
      if (next == at) return {};  // an end without a partner: thinner than can be told
      at = next;
    }
    return loop;
  }

  /// Without corners on a straight edge.
  static void tidy(std::vector<Vec2>& loop) {
    for (std::size_t i = 0; i < loop.size() && loop.size() > 2;) {
      const Vec2 before = loop[(i + loop.size() - 1) % loop.size()], after = loop[(i + 1) % loop.size()];
      const Vec2 d = minus(after, before);
      const double away = libm::fabs(cross_of(d, minus(loop[i], before)));
      if (away < kOutlineSame * std::max(length_of(d), kOutlineSame))
        loop.erase(loop.begin() + static_cast<std::ptrdiff_t>(i));
      else
        ++i;
    }
  }

  const std::vector<Vec2>& whole_;
  std::span<const std::vector<Vec2>> taken_;
  std::vector<Edge> edges_, bounds_;
};

}  // namespace

std::vector<std::vector<Vec2>> left_over(const std::vector<Vec2>& whole, std::span<const std::vector<Vec2>> taken) {
  return Parting(whole, taken).outlines();
}

bool inside_outline(std::span<const Vec2> outline, Vec2 p) {
  bool odd = false;
  for (std::size_t i = 0, k = outline.size() - 1; i < outline.size(); k = i++) {
    const Vec2 a = outline[i], b = outline[k];
    if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x)) odd = !odd;
  }
  return odd;
}

double signed_area(const std::vector<Vec2>& outline) {
  double twice = 0;
  for (std::size_t i = 0; i < outline.size(); ++i)
    twice += cross_of(outline[i], outline[i + 1 == outline.size() ? 0 : i + 1]);
  return twice / 2;
}

}  // namespace bentbook
