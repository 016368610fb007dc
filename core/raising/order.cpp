#include "raising/order.h"

#include <algorithm>

#include "frame/facts.h"
#include "numeric/index.h"
#include "numeric/sorting.h"

namespace bentbook {
namespace {

void add_once(std::vector<int>& list, int value) {
  const auto place = std::lower_bound(list.begin(), list.end(), value);
  if (place == list.end() || *place != value) list.insert(place, value);
}

void add_start(const Frame& frame, const Wish& wish, int index, std::vector<Edge>& edges) {
  const int count = static_cast<int>(frame.timbers.size());
  const auto post = [&](int t) { return frame.timbers[at(t)].kind == TimberKind::kPost; };
  for (int a = 0; a < count; ++a) {
    if (!post(a) || frame.timbers[at(a)].place.bent != wish.number) continue;
    for (int b = 0; b < count; ++b)
      if (post(b) && frame.timbers[at(b)].place.bent != wish.number) edges.push_back({a, b, index});
  }
}

/// Earlier days before later ones.
void add_days(const Frame& frame, const RaisingPlan& plan, std::vector<Edge>& edges) {
  for (std::size_t i = 0; i < plan.wishes.size(); ++i)
    for (std::size_t j = 0; j < plan.wishes.size(); ++j) {
      const Wish &a = plan.wishes[i], &b = plan.wishes[j];
      if (a.kind != WishKind::kDay || b.kind != WishKind::kDay || a.number >= b.number) continue;
      for (const int first : timbers_of(frame, a.marks))
        for (const int second : timbers_of(frame, b.marks)) edges.push_back({first, second, static_cast<int>(j)});
    }
}

/// Depth first; the first edge back into the path closes a cycle.
class CycleFinder {
 public:
  CycleFinder(int pieces, const std::vector<int>& piece_of, const std::vector<Edge>& edges)
      : out_(at(pieces)), state_(at(pieces), 0) {
    for (const Edge& e : edges) {
      const int a = piece_of[at(e.first)], b = piece_of[at(e.second)];
      // A support within a piece is no contradiction, a wish within one is.
      if (a >= 0 && b >= 0 && (a != b || e.wish >= 0)) out_[at(a)].push_back({b, e});
    }
  }

  std::vector<Edge> find() {
    for (std::size_t p = 0; p < out_.size(); ++p)
      if (state_[p] == 0 && from(static_cast<int>(p))) return cycle_;
    return {};
  }

 private:
  struct Visit {
    int piece = 0;
    std::size_t next = 0;
  };
  bool from(int start) {
    std::vector<Visit> path{{start, 0}};
    state_[at(start)] = 1;
    while (!path.empty()) {
      Visit& visit = path.back();
      if (visit.next == out_[at(visit.piece)].size()) {
        state_[at(visit.piece)] = 2;
        path.pop_back();
        continue;
      }
      const int to = out_[at(visit.piece)][visit.next++].first;
      if (state_[at(to)] == 1) {
        close(path, to);
        return true;
      }
      if (state_[at(to)] == 0) {
        state_[at(to)] = 1;
        path.push_back({to, 0});
      }
    }
    return false;
  }
  void close(const std::vector<Visit>& path, int to) {
    bool in = false;
    for (const Visit& s : path) {
      in = in || s.piece == to;
      if (in) cycle_.push_back(out_[at(s.piece)][s.next - 1].second);
    }
  }

  std::vector<std::vector<std::pair<int, Edge>>> out_;
  std::vector<char> state_;
  std::vector<Edge> cycle_;
};

}  // namespace

std::vector<int> timbers_of(const Frame& frame, std::span<const std::string> marks) {
  std::vector<int> found;
  for (const std::string& mark : marks)
    if (const int t = timber_by_mark(frame, mark); t >= 0) found.push_back(t);
  return found;
}

std::vector<std::string> marks_in(const RaisingStep& step) {
  std::vector<std::string> marks;
  marks.reserve(step.set_first.size() + step.marks.size());
  for (const SetPiece& piece : step.set_first) marks.push_back(piece.mark);
  marks.insert(marks.end(), step.marks.begin(), step.marks.end());
  return marks;
}

std::vector<int> standing_before(const Frame& frame, const RaisingPlan& plan, std::size_t step) {
  std::vector<int> stands;
  for (std::size_t i = 0; i < step; ++i)
    for (const int t : timbers_of(frame, marks_in(plan.steps[i]))) stands.push_back(t);
  sort_up(stands);
  stands.erase(std::unique(stands.begin(), stands.end()), stands.end());
  return stands;
}

std::vector<std::string> temporaries_up(const RaisingPlan& plan, std::size_t step) {
  std::vector<std::string> up;
  for (std::size_t i = 0; i <= step; ++i) {
    up.insert(up.end(), plan.steps[i].put_up.begin(), plan.steps[i].put_up.end());
    if (i < step)
      for (const std::string& name : plan.steps[i].take_out) std::erase(up, name);
  }
  return up;
}

std::vector<Support> supports_of(const Frame& frame) {
  std::vector<Support> supports(frame.timbers.size()), ends(frame.timbers.size());
  for (const Joint& joint : frame.joints) {
    Support& s = supports[at(joint.carried)];
    if (joint.bearing == Bearing::kBearsOn) add_once(s.all, joint.carrier);
    if (joint.bearing == Bearing::kHangsFrom) add_once(s.any, joint.carrier);
    if (joint.bearing == Bearing::kBraces || joint.bearing == Bearing::kButts)
      add_once(ends[at(joint.carried)].any, joint.carrier);
  }
  for (std::size_t t = 0; t < supports.size(); ++t)
    if (supports[t].all.empty() && supports[t].any.empty() && frame.timbers[t].kind != TimberKind::kPost)
      supports[t].any = ends[t].any;
  return supports;
}

std::vector<int> missing_support(const Support& support, std::span<const char> stands) {
  std::vector<int> missing;
  for (const int t : support.all)
    if (stands[at(t)] == 0) missing.push_back(t);
  const bool any =
      support.any.empty() || std::any_of(support.any.begin(), support.any.end(), [&](int t) { return stands[at(t)]; });
  if (!any)
    for (const int t : support.any) add_once(missing, t);
  return missing;
}

std::vector<Edge> edges_of(const Frame& frame, const RaisingPlan& plan) {
  std::vector<Edge> edges;
  const std::vector<Support> supports = supports_of(frame);
  for (std::size_t t = 0; t < supports.size(); ++t) {
    for (const int carrier : supports[t].all) edges.push_back({carrier, static_cast<int>(t), -1});
    if (supports[t].any.size() == 1) edges.push_back({supports[t].any[0], static_cast<int>(t), -1});
  }
  for (std::size_t w = 0; w < plan.wishes.size(); ++w) {
    const Wish& wish = plan.wishes[w];
    if (wish.kind == WishKind::kStartFrom) add_start(frame, wish, static_cast<int>(w), edges);
    if (wish.kind != WishKind::kBefore) continue;
    for (const int first : timbers_of(frame, wish.marks))
      for (const int second : timbers_of(frame, wish.others)) edges.push_back({first, second, static_cast<int>(w)});
  }
  add_days(frame, plan, edges);
  return edges;
}

std::vector<Piece> pieces_of(const Frame& frame, const RaisingPlan& plan) {
  const int count = static_cast<int>(frame.timbers.size());
  std::vector<int> group(at(count));
  for (int t = 0; t < count; ++t) group[at(t)] = t;
  const auto join = [&](int a, int b) {
    const int from = std::max(group[at(a)], group[at(b)]), to = std::min(group[at(a)], group[at(b)]);
    for (int& g : group)
      if (g == from) g = to;
  };
  std::vector<char> taken(at(count), 0);
  for (const Assembly& assembly : plan.assemblies) {
    int first = -1;
    for (const int t : timbers_of(frame, assembly.marks)) {
      if (taken[at(t)] != 0 || !frame.timbers[at(t)].placed) continue;
      taken[at(t)] = 1;
      if (first >= 0) join(first, t);
      first = first >= 0 ? first : t;
    }
  }
  for (const Wish& wish : plan.wishes) {
    if (wish.kind != WishKind::kTogether) continue;
    const std::vector<int> them = timbers_of(frame, wish.marks);
    for (std::size_t i = 1; i < them.size(); ++i) join(them[0], them[i]);
  }
  std::vector<Piece> pieces;
  std::vector<int> piece_of(at(count), -1);
  for (int t = 0; t < count; ++t) {
    if (!frame.timbers[at(t)].placed) continue;
    int& p = piece_of[at(group[at(t)])];
    if (p < 0) {
      p = static_cast<int>(pieces.size());
      pieces.emplace_back();
    }
    pieces[at(p)].push_back(t);
  }
  return pieces;
}

Precedence precedence_of(const Frame& frame, const RaisingPlan& plan, std::vector<Piece> pieces) {
  Precedence graph;
  graph.pieces = std::move(pieces);
  graph.piece_of.assign(frame.timbers.size(), -1);
  for (std::size_t p = 0; p < graph.pieces.size(); ++p)
    for (const int t : graph.pieces[p]) graph.piece_of[at(t)] = static_cast<int>(p);
  graph.before.resize(graph.pieces.size());
  graph.any.resize(graph.pieces.size());
  graph.day.assign(graph.pieces.size(), 0);
  const std::vector<Edge> edges = edges_of(frame, plan);
  for (const Edge& e : edges) {
    const int a = graph.piece_of[at(e.first)], b = graph.piece_of[at(e.second)];
    if (a >= 0 && b >= 0 && a != b) add_once(graph.before[at(b)], a);
  }
  const std::vector<Support> supports = supports_of(frame);
  for (std::size_t t = 0; t < supports.size(); ++t) {
    const int own = graph.piece_of[t];
    if (own < 0 || supports[t].any.size() < 2) continue;
    std::vector<int> any;
    for (const int carrier : supports[t].any) add_once(any, graph.piece_of[at(carrier)]);
    const bool met = std::binary_search(any.begin(), any.end(), own);
    if (!met) graph.any[at(own)].push_back(any);
  }
  for (const Wish& wish : plan.wishes)
    if (wish.kind == WishKind::kDay)
      for (const int t : timbers_of(frame, wish.marks))
        if (graph.piece_of[at(t)] >= 0) graph.day[at(graph.piece_of[at(t)])] = wish.number;
  graph.cycle = CycleFinder(static_cast<int>(graph.pieces.size()), graph.piece_of, edges).find();
  return graph;
}

bool may_come(const Precedence& graph, int p, std::span<const char> stands) {
  const auto there = [&](int q) { return q >= 0 && stands[at(q)] != 0; };
  return std::all_of(graph.before[at(p)].begin(), graph.before[at(p)].end(), there) &&
         std::all_of(graph.any[at(p)].begin(), graph.any[at(p)].end(),
                     [&](const std::vector<int>& any) { return std::any_of(any.begin(), any.end(), there); });
}

}  // namespace bentbook
