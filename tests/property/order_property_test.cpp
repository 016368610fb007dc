// Orders of eight to ten pieces against every sequence of them (every_order.h).

#include <algorithm>
#include <catch_amalgamated.hpp>
#include <memory>
#include <optional>

#include "dice_judge.h"
#include "every_order.h"
#include "frame/placing/solve_frame.h"
#include "numeric/index.h"
#include "raising/insertion/assemblies.h"
#include "raising/search/search.h"
#include "raising_rules.h"

using namespace bentbook;

namespace {

bool long_run() { return property_cases() > 100'000; }

const std::string& any_mark(Random& random, const Frame& frame) {
  return frame.timbers[static_cast<std::size_t>(random.whole(0, static_cast<int>(frame.timbers.size()) - 1))].mark;
}

/// None in half; of each kind.
std::vector<Wish> some_wishes(Random& random, const Frame& frame) {
  std::vector<Wish> wishes;
  for (int i = static_cast<int>(random.whole(-2, 2)); i > 0; --i) {
    Wish w;
    w.kind = static_cast<WishKind>(random.whole(0, 3));
    w.marks = {any_mark(random, frame)};
    if (w.kind == WishKind::kTogether) w.marks.push_back(any_mark(random, frame));
    if (w.kind == WishKind::kBefore) w.others = {any_mark(random, frame)};
    w.number = static_cast<int>(random.whole(1, 2));
    wishes.push_back(w);
  }
  return wishes;
}

/// Of some joints both timbers come as one.
std::vector<Assembly> some_assemblies(Random& random, const Frame& frame) {
  std::vector<Assembly> made;
  std::vector<int> taken;
  for (int i = static_cast<int>(random.whole(-1, 3)); i > 0 && !frame.joints.empty(); --i) {
    const Joint& j = frame.joints[static_cast<std::size_t>(random.whole(0, static_cast<int>(frame.joints.size()) - 1))];
    if (std::count(taken.begin(), taken.end(), j.member) + std::count(taken.begin(), taken.end(), j.receiver) > 0)
      continue;
    taken.insert(taken.end(), {j.member, j.receiver});
    made.push_back({"A" + std::to_string(i),
                    {frame.timbers[static_cast<std::size_t>(j.member)].mark,
                     frame.timbers[static_cast<std::size_t>(j.receiver)].mark}});
  }
  return made;
}

struct Case {
  Frame frame;
  RaisingPlan plan;
  EveryOrder::Pieces pieces;
};

/// Eight to ten pieces, some of them of two timbers or more.
Case some_case(Random& random) {
  while (true) {
    const Frame whole = solve_frame(random_plan(random)).value_or(Frame{});
    if (whole.timbers.size() < 8) continue;
    Case c;
    c.frame = random_part(random, whole, static_cast<std::size_t>(random.whole(8, 13)));
    c.plan.wishes = some_wishes(random, c.frame);
    c.plan.assemblies = some_assemblies(random, c.frame);
    c.pieces = pieces_together(c.frame, c.plan);
    if (c.pieces.size() >= 8 && c.pieces.size() <= 10) return c;
  }
}

/// Pieces as they come, those set first before the one that closes on them.
std::vector<int> sequence_of(const Frame& frame, const FoundOrder& found, const EveryOrder::Pieces& pieces) {
  std::vector<int> sequence;
  const auto add = [&](const std::string& mark) {
    for (std::size_t p = 0; p < pieces.size(); ++p)
      if (frame.timbers[static_cast<std::size_t>(pieces[p][0])].mark == mark) sequence.push_back(static_cast<int>(p));
  };
  for (const RaisingStep& step : found.plan.steps) {
    for (const SetPiece& piece : step.set_first) add(piece.mark);
    add(step.marks[0]);
  }
  return sequence;
}

/// One bay without its roof: two bents, raised as one each, plates and what braces the walls, fastened with the step.
Case small_frame(Random& random) {
  while (true) {
    FramePlan plan = default_plan(Length::feet(random.whole(12, 20)), Length::feet(random.whole(8, 14)),
                                  Length::feet(random.whole(8, 12)), Slope::in_12(Length::inches(random.whole(6, 12))));
    plan.bays.resize(1);
    plan.girts.clear();
    plan.sections.post = random_section(random, plan.sections.post);
    if (chance(random, 40)) plan.form = RoofForm::kLeanTo;
    const Frame whole = solve_frame(plan).value_or(Frame{});
    std::vector<int> keep;
    for (std::size_t t = 0; t < whole.timbers.size(); ++t)
      for (const TimberKind kind : {TimberKind::kPost, TimberKind::kTie, TimberKind::kPlate, TimberKind::kBrace})
        if (whole.timbers[t].kind == kind) keep.push_back(static_cast<int>(t));
    if (keep.empty()) continue;
    Case c;
    c.frame = part_of(whole, keep);
    Blocking blocking(c.frame);
    c.plan.assemblies = propose_assemblies(c.frame, blocking);
    c.plan.fasten = FastenWhen::kWithStep;
    c.plan.ratings.peg = Weight::pounds(1000);
    c.pieces = pieces_together(c.frame, c.plan);
    if (c.pieces.size() <= 10) return c;
  }
}

/// Wishes that leave only the sequences in which no piece comes before one that came `steps` pieces sooner in `first`.
void stay_near(const Case& c, const std::vector<int>& first, std::size_t steps, RaisingPlan& plan) {
  const auto mark = [&](int p) { return c.frame.timbers[at(c.pieces[at(p)][0])].mark; };
  for (std::size_t i = 0; i + steps < first.size(); ++i) {
    Wish w;
    w.marks = {mark(first[i])};
    w.others = {mark(first[i + steps])};
    plan.wishes.push_back(w);
  }
}

FoundOrder first_order(const Case& c, Judge& judge, Blocking& blocking) {
  SearchOptions options;
  options.propose = options.improve = false;
  options.steps = 100;
  return search_order(c.frame, c.plan, judge, blocking, options);
}

struct Tally {
  int found = 0, none = 0, braced = 0, compound = 0;
  int of_size[11] = {};
};

void compare(const Case& c, const FoundOrder& found, EveryOrder& every, Tally& tally) {
  const std::optional<Costs> cheapest = every.by_rests();
  ++(cheapest ? tally.found : tally.none);
  if (!cheapest) return;  // set first and caught, pieces may go where one by one nothing goes
  REQUIRE(found.found);
  ++tally.of_size[c.pieces.size()];
  tally.braced += cheapest->temporaries > 0 ? 1 : 0;
  const Costs cost{found.cost.temporaries, found.cost.moves, found.cost.carry};
  CHECK_FALSE(cheapest->below(cost));
  if (!(cost == *cheapest)) {  // pieces set first need less
    ++tally.compound;
    return;
  }
  CHECK(found.proven_optimal);
  const std::vector<int> sequence = sequence_of(c.frame, found, c.pieces);
  CHECK(sequence.size() == c.pieces.size());
  CHECK(every.cost_of(sequence) == cost);
}

SearchOptions as_given() {
  SearchOptions options;
  options.propose = false;
  return options;
}

/// `judges(case, random)` gives what makes the case's judge, once for the search and once for the reference.
template <class Judges>
void compare_many(std::uint64_t seed, int cases, const Judges& judges) {
  Random random(seed);
  Tally tally;
  for (int i = 0; i < cases; ++i) {
    const Case c = some_case(random);
    const auto make = judges(c, random);
    const auto judge = make(), other = make();
    Blocking blocking(c.frame);
    const FoundOrder found = search_order(c.frame, c.plan, *judge, blocking, as_given());
    EveryOrder every(c.frame, c.plan, c.pieces, *other);
    CAPTURE(i, c.pieces.size());
    compare(c, found, every, tally);
  }
  CAPTURE(tally.found, tally.none, tally.braced, tally.compound);
  CHECK(tally.compound > 5);
  for (const int pieces : {8, 9, 10}) CHECK(tally.of_size[pieces] > 20);
  CHECK(tally.none > 5);
  CHECK(tally.braced > 40);
}

}  // namespace

TEST_CASE("of eight to ten pieces no sequence is cheaper than the order found, by a rule of joints") {
  compare_many(21, long_run() ? 3000 : 200, [](const Case& c, Random& random) {
    const double most_lb = chance(random, 10) ? 900 : 1e9;
    return [&c, most_lb] { return std::make_unique<RuleJudge>(c.frame, c.plan, most_lb); };
  });
}

TEST_CASE("of eight to ten pieces no sequence is cheaper than the order found, by dice") {
  compare_many(22, long_run() ? 6000 : 600, [](const Case& c, Random& random) {
    const std::uint64_t seed = random.bits();
    return [&c, seed] { return std::make_unique<DiceJudge>(c.frame, c.plan, seed); };
  });
}

TEST_CASE("a small frame of eight to ten pieces has no cheaper sequence than the order found, by the statics") {
  Random random(24);
  Tally tally;
  for (int i = 0; tally.found < (long_run() ? 40 : 9) && i < 1000; ++i) {
    Case c = small_frame(random);
    const std::unique_ptr<Judge> statics = make_judge(c.frame, c.plan);
    SameAgain judge(*statics);
    Blocking blocking(c.frame);
    // The statics take long: but for the long run and a few only some sequences are left, those near a first good one.
    const FoundOrder first = first_order(c, judge, blocking);
    if (!first.found) continue;
    const bool all = long_run() || (c.pieces.size() == 8 && tally.found < 4);
    if (!all) stay_near(c, sequence_of(c.frame, first, c.pieces), c.pieces.size() == 8 ? 3 : 2, c.plan);
    const FoundOrder found = search_order(c.frame, c.plan, judge, blocking, as_given());
    EveryOrder every(c.frame, c.plan, c.pieces, judge);
    CAPTURE(i, c.pieces.size());
    compare(c, found, every, tally);
  }
  CHECK(tally.found >= 9);
  CHECK(tally.braced >= 9);
}

TEST_CASE("looking at each rest once finds what going through all sequences finds") {
  Random random(23);
  int found = 0;
  for (int i = 0; i < 120; ++i) {
    const Case c = some_case(random);
    const std::uint64_t seed = random.bits();
    DiceJudge judge(c.frame, c.plan, seed), other(c.frame, c.plan, seed);
    const std::optional<Costs> one = EveryOrder(c.frame, c.plan, c.pieces, judge).by_sequences();
    CHECK(one == EveryOrder(c.frame, c.plan, c.pieces, other).by_rests());
    found += one ? 1 : 0;
  }
  CHECK(found > 20);
}
