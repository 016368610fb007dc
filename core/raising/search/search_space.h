#pragma once
/// What every search of an order shares: pieces and their places, states, and the one rule by which a piece is added.

#include <map>
#include <utility>
#include <vector>

#include "raising/lifting/pick.h"
#include "raising/search/search.h"

namespace bentbook {

/// What stands.
struct SearchState {
  std::vector<char> in;      ///< by piece
  int placed = 0;            ///< pieces
  std::vector<int> timbers;  ///< in order
  std::vector<int> up;       ///< temporaries, the judge's numbers, in order
  int last = -1;             ///< the piece that came last
  OrderCost cost;
};

struct SearchStep {
  std::vector<int> set;  ///< pieces set first and held, in order of time
  int piece = -1;        ///< that closes on them
  std::vector<int> put_up, take_out;
};

struct PiecePlace {
  double x = 0, y = 0;
  int zone = 0;  ///< index of the nearest bent
};

/// What a depth-first search takes first; among equals the nearest.
enum class Preference : std::uint8_t {
  kSills,   ///< sills, then whatever is near: bay by bay
  kLevels,  ///< from the ground up through the whole frame: sills, posts and bents, girts, braces, plates, roof
};

/// Whether a step may put up temporaries that do not stand yet.
enum class NewTemporaries : std::uint8_t { kNone, kPutUp };

class SearchSpace {
 public:
  SearchSpace(const Frame& frame, const RaisingPlan& plan, Judge& judge, Blocking& blocking, std::vector<Piece> pieces);

  [[nodiscard]] const Precedence& graph() const { return graph_; }
  [[nodiscard]] int count() const { return static_cast<int>(graph_.pieces.size()); }
  [[nodiscard]] const SearchState& start() const { return start_; }
  [[nodiscard]] const Piece& piece(int p) const { return graph_.pieces[static_cast<std::size_t>(p)]; }
  [[nodiscard]] const PiecePlace& place(int p) const { return places_[static_cast<std::size_t>(p)]; }
  [[nodiscard]] const std::vector<RaisingStep>& done() const { return done_; }
  [[nodiscard]] bool lifts(int p) const { return lifts_[static_cast<std::size_t>(p)] != 0; }

  /// Lower ones first.
  [[nodiscard]] int tier(int p, Preference preference) const;
  [[nodiscard]] bool enters(const SearchState& state, int p);
  /// Pieces that can't come in any more once `p` stands.
  [[nodiscard]] std::vector<int> shut_out(const SearchState& state, int p);
  /// Adds the piece by the rule for temporaries; false: it can't stand with what may be put up.
  [[nodiscard]] bool add(SearchState& state, int p, SearchStep& step, NewTemporaries may = NewTemporaries::kPutUp);
  /// The same for a piece that closes on `set`, with at most `most` new temporaries.
  [[nodiscard]] bool close_on(SearchState& state, const std::vector<int>& set, int p, SearchStep& step, int most);
  /// May it come, does it go in, can it be picked, does it stand: the whole rule, once for all searches.
  [[nodiscard]] bool extend(SearchState& state, int p, SearchStep& step);
  [[nodiscard]] const std::vector<PickBody>& bodies() const { return bodies_; }
  /// How often the judge found no braces to propose: the dearest answer, so searches count them.
  [[nodiscard]] int not_braced() const { return not_braced_; }
  [[nodiscard]] OrderCost leg(int from, int to) const;
  /// No sequence costs less.
  [[nodiscard]] OrderCost bound() const;

 private:
  [[nodiscard]] bool stands(const std::vector<int>& timbers, const std::vector<int>& up);
  /// Whether what stands bears the pieces that are set into it, until one closes on them.
  [[nodiscard]] bool bears(const SearchState& state, const std::vector<int>& set);
  /// Whether a temporary has an end at the piece or at a timber joined to it.
  [[nodiscard]] bool beside(int temporary, int p);
  void find_places();
  void take_over_done();
  /// Whether rigidity can miss it; with a spare one wanted, also together with any other that holds the same timber.
  /// Cheap to ask: `stands` has the last word.
  bool seems_idle(const std::vector<int>& timbers, const std::vector<int>& up, int temporary);
  void take_out_idle(SearchState& state, SearchStep& step, const std::vector<int>& from);
  void take_out_all_idle(SearchState& state, SearchStep& step);
  /// `next` with the step's pieces in it and its cost becomes the state.
  void take(SearchState& state, SearchState&& next, const SearchStep& step) const;

  const Frame& frame_;
  const RaisingPlan& plan_;
  Judge& judge_;
  Blocking& blocking_;
  Precedence graph_;
  std::vector<PiecePlace> places_;
  std::vector<char> lifts_;
  std::vector<PickBody> bodies_;
  EntryLimits limits_;
  std::vector<std::vector<int>> ways_;  ///< by piece: what lies in the free way found last; empty at first
  std::vector<char> way_known_;
  std::vector<std::vector<char>> near_;  ///< by piece, then timber; empty: not yet found
  std::vector<RaisingStep> done_;
  SearchState start_;
  int not_braced_ = 0;
};

/// Remembers what it has asked another judge.
class MemoJudge final : public Judge {
 public:
  explicit MemoJudge(Judge& judge) : judge_(judge) {}
  bool rigid(std::span<const int> timbers, std::span<const int> temporaries) override;
  bool stands(std::span<const int> timbers, std::span<const int> temporaries) override;
  std::vector<int> propose(std::span<const int> timbers, std::span<const int> temporaries) override;
  StandingCheck check(std::span<const int> timbers, std::span<const int> temporaries, std::span<const int> coming,
                      StandingDepth depth) override {
    return judge_.check(timbers, temporaries, coming, depth);
  }
  bool bears(std::span<const int> timbers, std::span<const int> temporaries,
             std::span<const std::vector<HungWeight>> moments) override {
    return judge_.bears(timbers, temporaries, moments);
  }
  bool lifts(std::span<const int> timbers) override { return judge_.lifts(timbers); }
  [[nodiscard]] const std::vector<Temporary>& temporaries() const override { return judge_.temporaries(); }

 private:
  using Key = std::pair<std::vector<int>, std::vector<int>>;
  Judge& judge_;
  std::map<Key, bool> stood_;
  std::map<Key, std::vector<int>> proposed_;
};

/// What a search has found so far.
struct Sequence {
  bool found = false;
  std::vector<SearchStep> steps;
  OrderCost cost;
};

/// Counts what is tried and asks the caller whether to go on.
class SearchClock {
 public:
  SearchClock(const SearchCallback& go_on, int pieces) : go_on_(go_on) { progress_.pieces = pieces; }
  /// False: stop.
  bool tick(int placed) {
    ++progress_.tried;
    if (placed > progress_.placed) progress_.placed = placed;
    stopped_ = stopped_ || (go_on_ && !go_on_(progress_));
    return !stopped_;
  }
  void found(const OrderCost& cost) {
    progress_.found = true;
    progress_.best = cost;
  }
  [[nodiscard]] bool stopped() const { return stopped_; }
  [[nodiscard]] int tried() const { return progress_.tried; }

 private:
  const SearchCallback& go_on_;
  SearchProgress progress_;
  bool stopped_ = false;
};

}  // namespace bentbook
