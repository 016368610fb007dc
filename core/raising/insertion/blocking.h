#pragma once
/// What can go in where others stand: the frame's blocking graph. Entry and the ways tried: entry.h.

#include <memory>
#include <span>
#include <vector>

#include "frame/plan.h"
#include "raising/insertion/entry.h"
#include "raising/insertion/move_cells.h"

namespace bentbook {

/// A part-by-part order in which an assembly goes together lying down, each part along a straight way (or two).
struct AssemblySequence {
  bool possible = false;
  std::vector<int> order;  ///< of its timbers
  std::vector<int> stuck;  ///< not possible: those that hold each other
};

/// Directional blocking graph of a frame: which timbers are in the way of which, by direction. Worked out as it is
/// asked for and then kept; answers do not depend on what was asked before.
class Blocking {
 public:
  /// The frame must outlive it.
  explicit Blocking(const Frame& frame);
  ~Blocking();
  Blocking(Blocking&&) noexcept;
  Blocking& operator=(Blocking&&) noexcept;

  [[nodiscard]] int count() const;
  /// Timbers out of range, not placed, or already standing are passed over.
  [[nodiscard]] Entry entry(std::span<const int> coming, std::span<const int> standing, const EntryLimits& limits = {});
  /// Whether it can come in by straight ways alone. The second question about a timber is cheap.
  [[nodiscard]] bool straight(std::span<const int> coming, std::span<const int> standing);
  /// The same; `in_it`: all timbers of the frame, standing or not, that lie in the way found. It stays free as long as
  /// none of them stands.
  [[nodiscard]] bool clear_way(std::span<const int> coming, std::span<const int> standing, std::vector<int>& in_it);
  [[nodiscard]] AssemblySequence assemble(std::span<const int> timbers);
  [[nodiscard]] const MoveBody& body(int timber);
  /// Whether two timbers take the same room where they belong.
  [[nodiscard]] bool clash(int a, int b);

  struct Graph;  ///< blocking_graph.h
  [[nodiscard]] const Graph& graph() const { return *graph_; }

 private:
  std::unique_ptr<Graph> graph_;
};

}  // namespace bentbook
