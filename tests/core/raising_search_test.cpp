// Searched orders against trying every sequence: the rule of search.h written down once more, and nothing shared with
// the search but the judge and the blocking graph.

#include <algorithm>
#include <catch_amalgamated.hpp>
#include <optional>

#include "raising/check.h"
#include "raising/search.h"
#include "raising_rules.h"

using namespace bentbook;

namespace {

struct Costs {
  std::int64_t temporaries = 0, moves = 0, carry = 0;
  [[nodiscard]] bool below(const Costs& o) const {
    if (temporaries != o.temporaries) return temporaries < o.temporaries;
    return moves != o.moves ? moves < o.moves : carry < o.carry;
  }
};

/// Every sequence of the pieces, each judged step by step.
class EverySequence {
 public:
  EverySequence(const Frame& frame, const RaisingPlan& plan, std::vector<std::vector<int>> pieces, Judge& judge)
      : frame_(frame), plan_(plan), pieces_(std::move(pieces)), judge_(judge), blocking_(frame) {
    for (const Timber& t : frame.timbers)
      if (t.kind == TimberKind::kPost) {
        bool near = false;
        for (const double y : bents_) near = near || (t.at.origin.y - y < 12 && y - t.at.origin.y < 12);
        if (!near) bents_.push_back(t.at.origin.y);
      }
    std::sort(bents_.begin(), bents_.end());
  }
  std::optional<Costs> cheapest() {
    place({}, {}, -1, {});
    return best_;
  }

 private:
  struct At {
    double x = 0, y = 0;
    int zone = 0;
  };
  At where(const std::vector<int>& piece) const {
    At p;
    for (const int t : piece) {
      const Timber& it = frame_.timbers[static_cast<std::size_t>(t)];
      p.x += (it.at.origin.x + it.length / 2 * it.at.x.x) / static_cast<double>(piece.size());
      p.y += (it.at.origin.y + it.length / 2 * it.at.x.y) / static_cast<double>(piece.size());
    }
    for (std::size_t b = 0; b < bents_.size(); ++b)
      if (std::abs(bents_[b] - p.y) < std::abs(bents_[static_cast<std::size_t>(p.zone)] - p.y) - 1e-6)
        p.zone = static_cast<int>(b);
    return p;
  }
  bool supported(const std::vector<int>& piece, const std::vector<int>& stood) const {
    const auto there = [&](int t) {
      return std::count(piece.begin(), piece.end(), t) > 0 || std::count(stood.begin(), stood.end(), t) > 0;
    };
    for (const int t : piece) {
      int bears = 0, bears_met = 0, hangs = 0, hangs_met = 0, ends = 0, ends_met = 0;
      for (const Joint& j : frame_.joints) {
        if (j.carried != t) continue;
        const int met = there(j.carrier) ? 1 : 0;
        if (j.bearing == Bearing::kBearsOn) ++bears, bears_met += met;
        if (j.bearing == Bearing::kHangsFrom) ++hangs, hangs_met += met;
        if (j.bearing == Bearing::kButts || j.bearing == Bearing::kBraces) ++ends, ends_met += met;
      }
      if (bears_met < bears || (hangs > 0 && hangs_met == 0)) return false;
      const bool post = frame_.timbers[static_cast<std::size_t>(t)].kind == TimberKind::kPost;
      if (bears == 0 && hangs == 0 && ends > 0 && ends_met == 0 && !post) return false;
    }
    return true;
  }
  bool wished(const std::vector<int>& piece, const std::vector<int>& stood) const {
    const auto named = [&](const std::vector<std::string>& marks, const std::vector<int>& who) {
      int n = 0;
      for (const int t : who)
        n += static_cast<int>(std::count(marks.begin(), marks.end(), frame_.timbers[static_cast<std::size_t>(t)].mark));
      return n;
    };
    for (const Wish& w : plan_.wishes)
      if (w.kind == WishKind::kBefore && named(w.others, piece) > 0 &&
          named(w.marks, stood) < static_cast<int>(w.marks.size()))
        return false;
    return true;
  }
  void place(const std::vector<int>& stood, const std::vector<int>& up, int last, Costs cost) {
    if (best_ && !cost.below(*best_)) return;
    if (static_cast<std::size_t>(placed_) == pieces_.size()) {
      best_ = cost;
      return;
    }
    for (std::size_t p = 0; p < pieces_.size(); ++p) {
      const std::vector<int>& piece = pieces_[p];
      if (std::count(stood.begin(), stood.end(), piece[0]) > 0) continue;
      if (!supported(piece, stood) || !wished(piece, stood) || !judge_.lifts(piece)) continue;
      if (!blocking_.entry(piece, stood).free) continue;
      std::vector<int> now = stood;
      for (const int t : piece) now.push_back(t);
      std::sort(now.begin(), now.end());
      std::vector<int> then = up;
      Costs sum = cost;
      if (!hold(piece, now, then, sum)) continue;
      const At a =
          last < 0 ? At{plan_.stack_x.in(), plan_.stack_y.in(), 0} : where(pieces_[static_cast<std::size_t>(last)]);
      const At b = where(piece);
      if (last >= 0) sum.moves += std::abs(a.zone - b.zone);
      sum.carry += static_cast<std::int64_t>(libm::floor(libm::hypot(b.x - a.x, b.y - a.y) + 0.5));
      ++placed_;
      place(now, then, static_cast<int>(p), sum);
      --placed_;
    }
  }
  static std::vector<int> less(const std::vector<int>& all, const std::vector<int>& out) {
    std::vector<int> left;
    for (const int t : all)
      if (std::count(out.begin(), out.end(), t) == 0) left.push_back(t);
    return left;
  }
  /// Of the piece or joined to it.
  bool close(const std::vector<int>& piece, const std::string& mark) const {
    const auto is = [&](int t) { return frame_.timbers[static_cast<std::size_t>(t)].mark == mark; };
    for (const int t : piece) {
      if (is(t)) return true;
      for (const Joint& j : frame_.joints)
        if ((j.member == t && is(j.receiver)) || (j.receiver == t && is(j.member))) return true;
    }
    return false;
  }
  /// The rule for temporaries.
  bool hold(const std::vector<int>& piece, const std::vector<int>& now, std::vector<int>& up, Costs& sum) {
    if (judge_.stands(now, {})) {
      up.clear();
      return true;
    }
    const std::vector<int> before = up;
    if (!judge_.stands(now, up)) {
      const std::vector<int> more = judge_.propose(now, up);
      if (more.empty()) return false;
      for (const int t : more) up.push_back(t);
      std::sort(up.begin(), up.end());
      sum.temporaries += static_cast<std::int64_t>(more.size());
      if (!judge_.stands(now, up)) return false;
    }
    std::vector<int> idle, left = up;
    for (const int t : before) {
      const std::string& mark = judge_.temporaries()[static_cast<std::size_t>(t)].from.mark;
      if (now.size() < frame_.timbers.size() && !close(piece, mark)) continue;
      if (!judge_.rigid(now, less(left, {t}))) continue;
      left = less(left, {t});
      idle.push_back(t);
    }
    std::vector<int> first, second;
    for (std::size_t i = 0; i < idle.size(); ++i) (2 * i < idle.size() ? first : second).push_back(idle[i]);
    for (const std::vector<int>& out : {idle, first, second})
      if (!out.empty() && judge_.stands(now, less(up, out))) {
        up = less(up, out);
        break;
      }
    return true;
  }

  const Frame& frame_;
  const RaisingPlan& plan_;
  std::vector<std::vector<int>> pieces_;
  Judge& judge_;
  Blocking blocking_;
  std::vector<double> bents_;
  int placed_ = 0;
  std::optional<Costs> best_;
};

std::vector<std::vector<int>> singles(const Frame& frame) {
  std::vector<std::vector<int>> pieces;
  for (std::size_t t = 0; t < frame.timbers.size(); ++t) pieces.push_back({static_cast<int>(t)});
  return pieces;
}

/// An order that is shown as good has no fault for a judge that knows nothing of the search.
void check_good(const Frame& frame, const FoundOrder& found) {
  RuleJudge judge(frame, found.plan);
  Blocking blocking(frame);
  const OrderCheck check = check_order(frame, found.plan, judge, blocking);
  CHECK(check.good());
  CHECK(check.left_out.empty());
}

Frame default_frame(int feet) {
  return solve_frame(
             default_plan(Length::feet(20), Length::feet(feet), Length::feet(10), Slope::in_12(Length::inches(8))))
      .value();
}

}  // namespace

TEST_CASE("up to seven pieces no sequence is cheaper than the order found") {
  Random random(11);
  SearchOptions options;
  options.propose = false;
  int found_some = 0, with_temporaries = 0;
  for (int i = 0; i < 60; ++i) {
    const Frame whole = solve_frame(random_plan(random)).value_or(Frame{});
    if (whole.timbers.empty()) continue;
    const Frame frame = random_part(random, whole, 7);
    RaisingPlan plan;
    if (chance(random, 40) && frame.timbers.size() > 2) {
      Wish wish;
      wish.marks = {frame.timbers[0].mark};
      wish.others = {frame.timbers.back().mark};
      if (chance(random, 50)) std::swap(wish.marks, wish.others);
      plan.wishes.push_back(wish);
    }
    RuleJudge judge(frame, plan);
    Blocking blocking(frame);
    const FoundOrder found = search_order(frame, plan, judge, blocking, options);
    RuleJudge other(frame, plan);
    const std::optional<Costs> cheapest = EverySequence(frame, plan, singles(frame), other).cheapest();
    CAPTURE(i, frame.timbers.size());
    REQUIRE(found.found == cheapest.has_value());
    if (!cheapest) continue;
    ++found_some;
    CHECK(found.proven_optimal);
    CHECK(found.cost.temporaries == cheapest->temporaries);
    CHECK(found.cost.moves == cheapest->moves);
    CHECK(found.cost.carry == cheapest->carry);
    with_temporaries += cheapest->temporaries > 0 ? 1 : 0;
    check_good(frame, found);
  }
  CHECK(found_some > 30);
  CHECK(with_temporaries > 10);
}

TEST_CASE("a whole frame is ordered, bent by bent, the same each time") {
  const Frame frame = default_frame(36);
  const RaisingPlan plan;
  SearchOptions options;
  options.steps = 600;
  const auto search = [&] {
    RuleJudge judge(frame, plan);
    Blocking blocking(frame);
    return search_order(frame, plan, judge, blocking, options);
  };
  const FoundOrder found = search();
  REQUIRE(found.found);
  check_good(frame, found);
  CHECK(found.plan.assemblies.size() == 4);
  CHECK(found.bound <= found.cost);
  CHECK(search().plan == found.plan);
}

TEST_CASE("the first order is kept when the search is stopped") {
  const Frame frame = default_frame(36);
  const RaisingPlan plan;
  RuleJudge judge(frame, plan);
  Blocking blocking(frame);
  bool was_found = false;
  const FoundOrder found = search_order(frame, plan, judge, blocking, {}, [&](const SearchProgress& progress) {
    was_found = progress.found;
    return !progress.found;
  });
  CHECK(found.stopped);
  REQUIRE(found.found);
  check_good(frame, found);
  const FoundOrder none = search_order(frame, plan, judge, blocking, {}, [](const SearchProgress&) { return false; });
  CHECK(none.stopped);
  CHECK_FALSE(none.found);
}

TEST_CASE("wishes that contradict each other are named as a cycle") {
  const Frame frame = default_frame(24);
  RaisingPlan plan;
  Wish a, b;
  a.marks = {"P-A1"};
  a.others = {"P-A2"};
  b.marks = {"L-A1"};
  b.others = {"P-A1"};
  plan.wishes = {a, b};
  RuleJudge judge(frame, plan);
  Blocking blocking(frame);
  SearchOptions options;
  options.propose = false;
  const FoundOrder found = search_order(frame, plan, judge, blocking, options);
  CHECK_FALSE(found.found);
  CHECK(found.cycle == std::vector<std::string>{"P-A1", "L-A1"});
}

TEST_CASE("what can't stand or be picked is said, with the first step that can't stand") {
  const Frame frame = default_frame(24);
  const RaisingPlan plan;
  Blocking blocking(frame);
  RuleJudge judge(frame, plan);
  judge.cant_be_held = TimberKind::kBrace;
  SearchOptions options;
  options.propose = false;
  options.steps = 400;
  const FoundOrder found = search_order(frame, plan, judge, blocking, options);
  CHECK_FALSE(found.found);
  CHECK(found.first_unstable == static_cast<int>(found.plan.steps.size()));
  RuleJudge weak(frame, plan, 300);
  const FoundOrder heavy = search_order(frame, plan, weak, blocking, options);
  CHECK_FALSE(heavy.found);
  CHECK(std::any_of(heavy.stuck.begin(), heavy.stuck.end(),
                    [](const Stuck& s) { return s.reason == StuckReason::kCantPick; }));
}

TEST_CASE("what is done stays, days and the end to start from are kept") {
  const Frame frame = default_frame(36);
  RaisingPlan plan;
  Wish start, day;
  start.kind = WishKind::kStartFrom;
  start.number = 4;
  day.kind = WishKind::kDay;
  day.marks = {"C-A1"};
  day.number = 2;
  plan.wishes = {start, day};
  RuleJudge judge(frame, plan);
  Blocking blocking(frame);
  SearchOptions options;
  options.steps = 400;
  const FoundOrder found = search_order(frame, plan, judge, blocking, options);
  REQUIRE(found.found);
  check_good(frame, found);
  CHECK(std::count(found.plan.steps[0].marks.begin(), found.plan.steps[0].marks.end(), "P-A4") == 1);
  RaisingPlan going = found.plan;
  going.wishes.clear();
  for (std::size_t i = 0; i < 5; ++i) going.steps[i].done = true;
  RuleJudge later(frame, going);
  const FoundOrder rest = search_order(frame, going, later, blocking, options);
  REQUIRE(rest.found);
  for (std::size_t i = 0; i < 5; ++i) CHECK(rest.plan.steps[i] == going.steps[i]);
  check_good(frame, rest);
}

TEST_CASE("a bent is raised with braces and judged again; too heavy for the crane it is refused with its weight") {
  const Frame whole = default_frame(24);
  std::vector<int> keep;
  for (const char* mark : {"P-A1", "P-E1", "T-1", "B-A1.1", "B-E1.1"}) keep.push_back(timber_by_mark(whole, mark));
  std::sort(keep.begin(), keep.end());
  const Frame frame = part_of(whole, keep);
  RaisingPlan plan;
  plan.crane.present = true;
  plan.crane.chart.push_back({Length::feet(200), Weight::pounds(20'000)});
  SearchOptions options;
  options.improve = false;
  const FoundOrder found = search_order(frame, plan, options);
  REQUIRE(found.found);
  REQUIRE(found.plan.steps.size() == 1);
  CHECK_FALSE(found.plan.steps[0].put_up.empty());
  CHECK(check_order(frame, found.plan).good());
  RaisingPlan bare = found.plan;
  bare.steps[0].put_up.clear();
  CHECK(check_order(frame, bare).first_unstable == 0);
  RaisingPlan weak = found.plan;
  weak.crane.chart[0].capacity = Weight::pounds(500);
  const OrderCheck refused = check_order(frame, weak);
  REQUIRE(refused.faults.size() == 1);
  CHECK(refused.faults[0].id == OrderFaultId::kCantPick);
  CHECK(refused.faults[0].value > 500);
}
