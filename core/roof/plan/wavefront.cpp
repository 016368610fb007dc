#include "roof/plan/wavefront.h"

#include <algorithm>
#include <utility>

#include "numeric/index.h"
#include "numeric/sorting.h"

namespace bentbook {
namespace {

/// One level line between two corners; the corner at its start, the other one is the next line's.
struct Front {
  int line = 0;
  Vec2 start;     ///< where the corner is at the height reached
  Vec2 velocity;  ///< of the corner, for each inch of height
  int node = 0;   ///< where the corner's way begins
};
using Loop = std::vector<Front>;

struct Corner {
  int point = 0;
  int line = 0;  ///< of the piece that begins here
};

class Follower {
 public:
  Follower(const std::vector<LevelLine>& lines, double bottom) : lines_(lines), z_(bottom), ways_(lines.size()) {}

  Result<Wavefronts> run() {
    if (auto ok = begin(); !ok) return tl::unexpected(ok.error());
    // A line ends or is parted once for each of its neighbours at most; more is our own mistake, and no hang.
    int left = 40 * static_cast<int>(lines_.size()) + 100;
    while (!loops_.empty()) {
      const double step = next_step();
      if (!(step < 1e17) || --left < 0) return fail(ErrorCode::kImpossible, "roof");
      z_ += step;
      std::vector<Loop> before;
      before.swap(loops_);
      for (Loop& loop : before) {
        for (Front& f : loop) f.start = f.start + step * f.velocity;
        settle(std::move(loop));
      }
    }
    close_faces();
    return std::move(found_);
  }

 private:
  [[nodiscard]] const LevelLine& line(int i) const { return lines_[at(i)]; }
  [[nodiscard]] double offset(int i) const { return line(i).offset + line(i).speed * z_; }
  static std::size_t after(std::size_t i, const Loop& loop) { return i + 1 == loop.size() ? 0 : i + 1; }
  static std::size_t before(std::size_t i, const Loop& loop) { return i == 0 ? loop.size() - 1 : i - 1; }

  /// How a corner between two lines moves: it stays on both.
  [[nodiscard]] Vec2 velocity(int a, int b) const {
    const LevelLine &p = line(a), &q = line(b);
    const double turn = cross(p.in, q.in);
    if (libm::fabs(turn) < 1e-12) return p.speed * p.in;  // one line goes on as the other
    return {(p.speed * q.in.y - q.speed * p.in.y) / turn, (q.speed * p.in.x - p.speed * q.in.x) / turn};
  }
  [[nodiscard]] Vec2 meeting(int a, int b) const {
    const LevelLine &p = line(a), &q = line(b);
    const double turn = cross(p.in, q.in), u = offset(a), v = offset(b);
    return {(u * q.in.y - v * p.in.y) / turn, (v * p.in.x - u * q.in.x) / turn};
  }

  int add_node(Vec2 p) {
    found_.nodes.push_back({p, z_});
    return static_cast<int>(found_.nodes.size()) - 1;
  }
  void bound(int face, int from, int to) {
    if (from == to) return;
    const Vec2 d = found_.nodes[at(to)].at - found_.nodes[at(from)].at;
    ways_[at(face)].push_back({from, to, norm(d) > 0 ? unit(d) : Vec2{1, 0}, 0});
  }
  /// The way of a corner between lines a (before it) and b (after it).
  void add_way(int a, int b, int from, int to) {
    if (from == to) return;
    found_.edges.push_back({from, to, a, b});
    bound(a, from, to);
    bound(b, to, from);
  }

  Result<void> begin() {
    Loop loop(lines_.size());
    for (std::size_t i = 0; i < loop.size(); ++i) {
      const int own = static_cast<int>(i), last = static_cast<int>(before(i, loop));
      loop[i] = {own, meeting(last, own), velocity(last, own), 0};
      loop[i].node = add_node(loop[i].start);
    }
    for (std::size_t i = 0; i < loop.size(); ++i) {
      const double length = dot(loop[after(i, loop)].start - loop[i].start, line(loop[i].line).along);
      if (!(length > 100 * kOnePlace)) return fail(ErrorCode::kImpossible, "plane", -1, static_cast<std::int64_t>(i));
      bound(loop[i].line, loop[i].node, loop[after(i, loop)].node);
    }
    loops_.push_back(std::move(loop));
    return {};
  }

  /// Height until something happens; the corners are where they are at z_.
  [[nodiscard]] double next_step() const {
    double least = 1e18;
    for (const Loop& loop : loops_)
      for (std::size_t i = 0; i < loop.size(); ++i) {
        const Front &f = loop[i], &g = loop[after(i, loop)];
        const Vec2 along = line(f.line).along;
        const double length = dot(g.start - f.start, along), grows = dot(g.velocity - f.velocity, along);
        if (grows < -1e-12) least = std::min(least, std::max(0.0, length / -grows));
        const Vec2 last = line(loop[before(i, loop)].line).along;
        if (cross(last, along) < -1e-9) least = std::min(least, first_hit(loop, i, least));
      }
    return least;
  }

  /// Height until an inward corner runs into a line that is not its own.
  [[nodiscard]] double first_hit(const Loop& loop, std::size_t corner, double least) const {
    const Front& f = loop[corner];
    for (std::size_t j = 0; j < loop.size(); ++j) {
      if (j == corner || j == before(corner, loop)) continue;
      const Front &e = loop[j], &g = loop[after(j, loop)];
      const LevelLine& other = line(e.line);
      const double away = dot(other.in, f.start - e.start), nearer = other.speed - dot(other.in, f.velocity);
      if (away < -10 * kOnePlace || nearer < 1e-12) continue;
      const double step = std::max(0.0, away / nearer);
      if (step >= least) continue;
      const Vec2 p = f.start + step * f.velocity;
      const double from = dot(other.along, e.start + step * e.velocity),
                   to = dot(other.along, g.start + step * g.velocity);
      const double where = dot(other.along, p);
      if (where > from - kOnePlace && where < to + kOnePlace) least = step;
    }
    return least;
  }

  /// Makes one point of what touches at this height, takes out what lies on itself, and joins the rest anew.
  void settle(Loop loop) {
    const std::size_t n = loop.size();
    points_.clear();
    std::vector<int> point(n);
    for (std::size_t i = 0; i < n; ++i) point[i] = point_at(loop[i].start);
    std::vector<int> met(points_.size(), 0);  // by point: corners that are there
    for (const int p : point) ++met[at(p)];
    std::vector<BoundaryPiece> pieces;
    pieces.reserve(2 * n);
    bool touched = false;
    for (std::size_t i = 0; i < n; ++i)
      touched = add_pieces(loop[i].line, point[i], point[after(i, loop)], met, pieces) || touched;
    for (const int m : met) touched = touched || m > 1;
    if (!touched) {
      loops_.push_back(std::move(loop));
      return;
    }
    node_of_.assign(points_.size(), -1);
    cancel(pieces);
    std::vector<std::vector<Corner>> rings;
    for (const std::vector<int>& traced : trace_loops(pieces)) {
      std::vector<Corner> ring;
      ring.reserve(traced.size());
      for (const int k : traced) ring.push_back({pieces[at(k)].from, pieces[at(k)].tag});
      smooth(ring);
      if (ring.size() > 2) rings.push_back(std::move(ring));
    }
    // A corner goes on where nothing but its own two lines is there.
    std::vector<int> goes_on(points_.size(), -1);
    for (const auto& ring : rings)
      for (std::size_t k = 0; k < ring.size(); ++k) {
        const int here = ring[k].point, own = ring[k].line, last = ring[k == 0 ? ring.size() - 1 : k - 1].line;
        if (met[at(here)] != 1) continue;
        for (std::size_t i = 0; i < n; ++i)
          if (point[i] == here && loop[i].line == own && loop[before(i, loop)].line == last)
            goes_on[at(here)] = static_cast<int>(i);
      }
    for (std::size_t i = 0; i < n; ++i)
      if (goes_on[at(point[i])] != static_cast<int>(i))
        add_way(loop[before(i, loop)].line, loop[i].line, loop[i].node, node_at(point[i]));
    for (const auto& ring : rings) {
      Loop next(ring.size());
      for (std::size_t k = 0; k < ring.size(); ++k) {
        const int here = ring[k].point, own = ring[k].line, last = ring[k == 0 ? ring.size() - 1 : k - 1].line;
        if (goes_on[at(here)] >= 0)
          next[k] = loop[at(goes_on[at(here)])];
        else
          next[k] = {own, points_[at(here)], velocity(last, own), node_at(here)};
      }
      loops_.push_back(std::move(next));
    }
  }

  int point_at(Vec2 p) {
    for (std::size_t i = 0; i < points_.size(); ++i)
      if (norm(points_[i] - p) < 4 * kOnePlace) return static_cast<int>(i);
    points_.push_back(p);
    return static_cast<int>(points_.size()) - 1;
  }
  int node_at(int point) {
    int& node = node_of_[at(point)];
    if (node < 0) node = add_node(points_[at(point)]);
    return node;
  }

  /// A line from point to point, parted at the points that lie on it; true where some do. They count as met twice.
  bool add_pieces(int own, int from, int to, std::vector<int>& met, std::vector<BoundaryPiece>& pieces) const {
    if (from == to) return true;
    const Vec2 a = points_[at(from)], along = line(own).along;
    const double length = dot(points_[at(to)] - a, along);
    std::vector<std::pair<double, int>> between;
    for (std::size_t i = 0; i < points_.size(); ++i) {
      const int p = static_cast<int>(i);
      if (p == from || p == to) continue;
      const double t = dot(points_[i] - a, along), off = cross(along, points_[i] - a);
      if (libm::fabs(off) < 4 * kOnePlace && t > 0 && t < length) between.emplace_back(t, p);
    }
    sort_up(between);
    int last = from;
    for (const auto& it : between) {
      ++met[at(it.second)];
      pieces.push_back({last, it.second, along, own});
      last = it.second;
    }
    pieces.push_back({last, to, along, own});
    return !between.empty();
  }

  /// Two pieces that run along each other, one each way, bound nothing: a ridge.
  void cancel(std::vector<BoundaryPiece>& pieces) {
    for (std::size_t i = 0; i < pieces.size(); ++i)
      for (std::size_t j = i + 1; j < pieces.size(); ++j) {
        if (pieces[i].from != pieces[j].to || pieces[i].to != pieces[j].from) continue;
        const BoundaryPiece a = pieces[i], b = pieces[j];
        pieces.erase(pieces.begin() + static_cast<std::ptrdiff_t>(j));
        pieces.erase(pieces.begin() + static_cast<std::ptrdiff_t>(i));
        const int from = node_at(a.from), to = node_at(a.to);
        found_.edges.push_back({from, to, b.tag, a.tag});
        bound(a.tag, to, from);
        bound(b.tag, from, to);
        --i;
        break;
      }
  }

  /// Takes out corners where one line goes on. Of two lines in one direction the flatter plane takes over.
  void smooth(std::vector<Corner>& ring) {
    for (std::size_t k = 0; k < ring.size() && ring.size() > 2;) {
      const std::size_t next = k + 1 == ring.size() ? 0 : k + 1;
      const int a = ring[k].line, b = ring[next].line;
      if (a == b) {
        ring.erase(ring.begin() + static_cast<std::ptrdiff_t>(next));
        k = 0;
        continue;
      }
      const bool same_way =
          dot(line(a).along, line(b).along) > 0 && libm::fabs(cross(line(a).along, line(b).along)) < 1e-9;
      if (same_way && libm::fabs(line(a).speed - line(b).speed) > 1e-9) {
        const std::size_t steep = line(a).speed < line(b).speed ? k : next;
        take_over(ring, steep, line(a).speed < line(b).speed ? b : a);
        k = 0;
        continue;
      }
      ++k;
    }
  }
  void take_over(std::vector<Corner>& ring, std::size_t steep, int flatter) {
    const int from = node_at(ring[steep].point), to = node_at(ring[steep + 1 == ring.size() ? 0 : steep + 1].point);
    if (from != to) {
      found_.edges.push_back({from, to, flatter, ring[steep].line});
      bound(ring[steep].line, to, from);
      bound(flatter, from, to);
    }
    ring[steep].line = flatter;
  }

  void close_faces() {
    found_.faces.resize(lines_.size());
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      std::vector<BoundaryPiece> pieces = ways_[i];
      double largest = -1;
      for (const std::vector<int>& loop : trace_loops(pieces)) {
        std::vector<int> face;
        Polygon2 corners;
        face.reserve(loop.size());
        corners.reserve(loop.size());
        for (const int k : loop) {
          face.push_back(pieces[at(k)].from);
          corners.push_back(found_.nodes[at(face.back())].at);
        }
        if (const double area = area_of(corners); area > largest) {
          largest = area;
          found_.faces[i] = std::move(face);
        }
      }
    }
  }

  const std::vector<LevelLine>& lines_;
  double z_;
  std::vector<Loop> loops_;
  std::vector<Vec2> points_;  ///< of the loop that is being settled
  std::vector<int> node_of_;  ///< by point, −1: no node yet
  std::vector<std::vector<BoundaryPiece>> ways_;
  Wavefronts found_;
};

}  // namespace

Result<Wavefronts> follow_up(const std::vector<LevelLine>& lines, double bottom) {
  return Follower(lines, bottom).run();
}

}  // namespace bentbook
