#pragma once
/// What must stand before what: supports and the lead's wishes as a graph over pieces (a timber, or timbers that come
/// in as one), and the contradictions in it.
///
/// Supports (Joint::bearing): what bears on others (a plate on posts, a king post on a tie) wants all of its carriers
/// standing or coming with it; what only hangs from others (a tie, a joist, a purlin in its ends) wants one of them:
/// the other may be brought onto it. What is held by its ends alone (a brace, a girt, a collar) wants one of those.
/// Wishes: `before` and `day` are edges, `start_from` puts that bent's posts before all other posts, `together` makes
/// one piece. Marks that the frame does not have are passed over here; check.h names them.

#include <span>
#include <string>
#include <utility>
#include <vector>

#include "frame/plan.h"
#include "raising/plan.h"

namespace bentbook {

/// Timbers of these marks, in their order; what the frame does not have is passed over.
[[nodiscard]] std::vector<int> timbers_of(const Frame& frame, std::span<const std::string> marks);
/// Marks that a step brings, what is set first before the main pieces.
[[nodiscard]] std::vector<std::string> marks_in(const RaisingStep& step);
/// What the plan's steps before `step` bring, in order, each once.
[[nodiscard]] std::vector<int> standing_before(const Frame& frame, const RaisingPlan& plan, std::size_t step);
/// Names of the temporaries that are up in that step before anything is taken out at its end.
[[nodiscard]] std::vector<std::string> temporaries_up(const RaisingPlan& plan, std::size_t step);

/// Timbers that come in with one pick. Indices in Frame::timbers, in order.
using Piece = std::vector<int>;

/// By timber: its carriers, all of them wanted or (only hanging) one.
struct Support {
  std::vector<int> all, any;
};
[[nodiscard]] std::vector<Support> supports_of(const Frame& frame);

/// Which of a timber's carriers are missing where `stands` (by timber) says what stands or comes with it.
[[nodiscard]] std::vector<int> missing_support(const Support& support, std::span<const char> stands);

/// Timber before timber, from supports that are wanted in any case and from the wishes.
struct Edge {
  int first = 0, second = 0;
  int wish = -1;  ///< index in RaisingPlan::wishes; −1: a support
  friend bool operator==(const Edge&, const Edge&) = default;
};
[[nodiscard]] std::vector<Edge> edges_of(const Frame& frame, const RaisingPlan& plan);

/// All placed timbers as pieces: the plan's assemblies, timbers that wishes want together (assemblies grow by that),
/// each other timber by itself. In order of their first timbers; of two assemblies with one timber the first has it.
[[nodiscard]] std::vector<Piece> pieces_of(const Frame& frame, const RaisingPlan& plan);

/// Pieces as a graph.
struct Precedence {
  std::vector<Piece> pieces;
  std::vector<int> piece_of;                       ///< by timber, −1: in none
  std::vector<std::vector<int>> before;            ///< by piece: pieces that must stand first, in order, each once
  std::vector<std::vector<std::vector<int>>> any;  ///< by piece: of each list one must stand first
  std::vector<int> day;                            ///< by piece: the day wished for, 0: none
  /// A contradiction: pieces each of which has to stand before the next one, and the last before the first; by
  /// timbers that say so, with the wish of each step (−1: a support). Empty: none.
  std::vector<Edge> cycle;
};
[[nodiscard]] Precedence precedence_of(const Frame& frame, const RaisingPlan& plan, std::vector<Piece> pieces);

/// Whether piece `p` may come where `stands` says, by piece.
[[nodiscard]] bool may_come(const Precedence& graph, int p, std::span<const char> stands);

}  // namespace bentbook
