#include "raising/insertion/blocking.h"

#include <algorithm>

#include "raising/insertion/straight_path.h"

namespace bentbook {

Blocking::Blocking(const Frame& frame) : graph_(std::make_unique<Graph>(frame)) {}
Blocking::~Blocking() = default;
Blocking::Blocking(Blocking&&) noexcept = default;
Blocking& Blocking::operator=(Blocking&&) noexcept = default;

int Blocking::count() const { return graph_->count; }
const MoveBody& Blocking::body(int timber) { return graph_->body(timber); }
bool Blocking::clash(int a, int b) {
  return a != b && has_bit(graph_->slide_blockers(a, 0, 0), b) && runs_into(body(a), {}, {}, body(b));
}

bool Blocking::straight(std::span<const int> coming, std::span<const int> standing) {
  EntryCase entry = case_of(*graph_, coming, standing);
  set_bit(entry.against, graph_->count);
  return entry.coming.empty() || find_straight(*graph_, entry).free;
}

bool Blocking::clear_way(std::span<const int> coming, std::span<const int> standing, std::vector<int>& in_it) {
  Graph& in = *graph_;
  in_it.clear();
  EntryCase entry = case_of(in, coming, standing);
  set_bit(entry.against, in.count);
  if (entry.coming.empty()) return true;
  const PathFound found = find_straight(in, entry);
  if (!found.free) return false;
  TimberBits all(in.words, 0);
  const StraightPath& path = found.path;
  const auto gather = [&all](const TimberBits& bits) {
    for (std::size_t w = 0; w < all.size(); ++w) all[w] |= bits[w];
  };
  for (const int t : entry.coming) {
    gather(in.far_blockers(t, path.far, path.slide, path.reach));
    if (path.slide >= 0) gather(in.slide_blockers(t, path.slide, path.reach));
  }
  for (const int t : entry.coming) clear_bit(all, t);
  in_it = listed(all, in.count);
  return true;
}

AssemblySequence Blocking::assemble(std::span<const int> timbers) {
  // Taken apart piece by piece: what can be taken off last can be put on first. Taking one off never blocks another.
  AssemblySequence result;
  std::vector<int> left = case_of(*graph_, timbers, {}).coming;
  while (left.size() > 1) {
    bool off = false;
    for (std::size_t i = left.size(); i-- > 0 && !off;) {
      std::vector<int> rest = left;
      rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(i));
      const int one[] = {left[i]};
      if (!find_straight(*graph_, case_of(*graph_, one, rest)).free) continue;
      result.order.push_back(left[i]);
      left = std::move(rest);
      off = true;
    }
    if (!off) break;
  }
  if (left.size() > 1) {
    result.stuck = left;
    result.order.clear();
    return result;
  }
  result.possible = true;
  for (const int last : left) result.order.push_back(last);
  std::reverse(result.order.begin(), result.order.end());
  return result;
}

}  // namespace bentbook
