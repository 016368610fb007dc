// The order check: each fault by a plan that has it and no other.

#include <algorithm>
#include <catch_amalgamated.hpp>

#include "frame/placing/solve_frame.h"
#include "raising/check.h"
#include "raising/holding.h"
#include "raising/order.h"
#include "raising_rules.h"

using namespace bentbook;

namespace {

/// A bent of two posts, tie and braces, timber by timber.
struct OneBent {
  Frame frame;
  RaisingPlan plan;
  OneBent() {
    const Frame whole =
        solve_frame(default_plan(Length::feet(20), Length::feet(24), Length::feet(10), Slope::in_12(Length::inches(8))))
            .value();
    std::vector<int> keep;
    for (const char* mark : {"P-A1", "P-E1", "T-1", "K-C1"}) keep.push_back(timber_by_mark(whole, mark));
    frame = part_of(whole, keep);
    bring({"P-A1"}, {"held"});
    bring({"T-1"}, {"tie"});
    bring({"P-E1"}, {});
    plan.steps.back().take_out = {"held", "tie"};
    bring({"K-C1"}, {"king"});
    for (const char* mark : {"P-A1", "T-1", "K-C1"}) {
      Temporary t;
      t.name = mark[0] == 'P' ? "held" : mark[0] == 'T' ? "tie" : "king";
      t.kind = TemporaryKind::kProp;
      t.from.mark = mark;
      plan.temporaries.push_back(t);
    }
  }
  void bring(const std::vector<std::string>& marks, const std::vector<std::string>& put_up) {
    RaisingStep step;
    step.marks = marks;
    step.put_up = put_up;
    plan.steps.push_back(step);
  }
  [[nodiscard]] OrderCheck check() const {
    RuleJudge judge(frame, plan);
    Blocking blocking(frame);
    return check_order(frame, plan, judge, blocking);
  }
};

/// But for what is true of this bent in any order: alone it needs its king post's temporary to the end.
std::vector<OrderFault> own(const OrderCheck& check) {
  std::vector<OrderFault> found;
  for (const OrderFault& f : check.faults)
    if (f.id != OrderFaultId::kTemporariesLeft && f.id != OrderFaultId::kWholeFalls) found.push_back(f);
  return found;
}
std::vector<OrderFaultId> ids(const OrderCheck& check) {
  std::vector<OrderFaultId> found;
  for (const OrderFault& f : own(check)) found.push_back(f.id);
  return found;
}
using Ids = std::vector<OrderFaultId>;

}  // namespace

TEST_CASE("what stands and is up before a step is said alike by the plan and by its check") {
  const OneBent bent;
  const OrderCheck check = bent.check();
  for (std::size_t s = 0; s < bent.plan.steps.size(); ++s) {
    CHECK(standing_before(bent.frame, bent.plan, s) == check.steps[s].stood);
    std::vector<std::string> up;
    for (const int t : check.steps[s].temporaries)
      up.push_back(bent.plan.temporaries[static_cast<std::size_t>(t)].name);
    std::vector<std::string> said = temporaries_up(bent.plan, s);
    std::sort(up.begin(), up.end());
    std::sort(said.begin(), said.end());
    CHECK(said == up);
  }
}

/// Falls without any temporary.
class NeedsSome final : public RuleJudge {
 public:
  using RuleJudge::RuleJudge;
  bool stands(std::span<const int> timbers, std::span<const int> temporaries) override {
    return !temporaries.empty() && RuleJudge::stands(timbers, temporaries);
  }
};

TEST_CASE("what stays up to the end is a fault, and so is a whole that needs it") {
  const OneBent bent;
  const OrderCheck idle = bent.check();
  REQUIRE(idle.faults.size() == 1);
  CHECK(idle.faults[0].id == OrderFaultId::kTemporariesLeft);
  CHECK(idle.faults[0].marks == std::vector<std::string>{"king"});
  CHECK_FALSE(idle.good());
  NeedsSome judge(bent.frame, bent.plan);
  Blocking blocking(bent.frame);
  const OrderCheck check = check_order(bent.frame, bent.plan, judge, blocking);
  CHECK(std::any_of(check.faults.begin(), check.faults.end(),
                    [](const OrderFault& f) { return f.id == OrderFaultId::kWholeFalls && f.step < 0; }));
}

TEST_CASE("what is set first wants a seat, hands, and something that catches it") {
  OneBent bent;
  bent.plan.steps[1].set_first = {{"K-C1", HeldBy::kHands}};
  bent.plan.steps.pop_back();
  const OrderCheck early = bent.check();
  CHECK(std::count_if(early.faults.begin(), early.faults.end(), [](const OrderFault& f) {
          return f.id == OrderFaultId::kNotSeated && f.step == 1 && f.marks == std::vector<std::string>{"K-C1", "T-1"};
        }) == 1);
  bent.plan.crew.people = 2;
  const OrderCheck nobody = bent.check();
  CHECK(std::any_of(nobody.faults.begin(), nobody.faults.end(),
                    [](const OrderFault& f) { return f.id == OrderFaultId::kHandsShort && f.value2 == 0; }));
  bent.plan.crew.each = Weight::pounds(1);
  const OrderCheck heavy = bent.check();
  CHECK(std::any_of(heavy.faults.begin(), heavy.faults.end(),
                    [](const OrderFault& f) { return f.id == OrderFaultId::kHeldTooHeavy && f.value > f.value2; }));
  OneBent apart;
  apart.plan.steps[2].set_first = {{"K-C1", HeldBy::kCleat}};
  apart.plan.steps.pop_back();
  const OrderCheck loose = apart.check();
  CHECK(std::any_of(loose.faults.begin(), loose.faults.end(), [](const OrderFault& f) {
    return f.id == OrderFaultId::kNotCaught && f.step == 2 && f.marks == std::vector<std::string>{"K-C1"};
  }));
}

TEST_CASE("what is said to be fastened later and is no joint is a fault of the whole order", "[raising]") {
  OneBent bent;
  bent.plan.later = {{"T-1", "P-A1"}, {"P-A1", "P-E1"}, {"P-A1", "X-9"}};
  const std::vector<OrderFault> where_all_is_later = bent.check().faults;
  CHECK(std::none_of(where_all_is_later.begin(), where_all_is_later.end(),
                     [](const OrderFault& f) { return f.id == OrderFaultId::kNoSuchJoint; }));
  bent.plan.fasten = FastenWhen::kWithStep;
  const OrderCheck check = bent.check();
  std::vector<std::vector<std::string>> said;
  for (const OrderFault& f : check.faults)
    if (f.id == OrderFaultId::kNoSuchJoint && f.step < 0) said.push_back(f.marks);
  CHECK(said == std::vector<std::vector<std::string>>{{"P-A1", "P-E1"}, {"P-A1", "X-9"}});
}

TEST_CASE("what hands do not carry of a piece set first hangs on what it is seated in", "[raising]") {
  OneBent bent;
  const auto index = [&](const char* mark) { return timber_by_mark(bent.frame, mark); };
  const std::vector<PickBody> bodies = pick_bodies(bent.frame, bent.plan);
  const int king = index("K-C1"), tie = index("T-1"), post = index("P-A1");
  const double lb = bodies[static_cast<std::size_t>(king)].weight_lb;
  std::vector<int> stands = {post, tie};
  std::sort(stands.begin(), stands.end());
  const auto hung = [&](std::vector<HeldTimber> set, const std::vector<int>& on) {
    return hung_while_closing(bent.frame, bodies, set, on);
  };
  const auto by_hand = hung({{king, HeldBy::kHands}}, stands);
  REQUIRE(by_hand.at(0).size() == 1);
  CHECK(by_hand[0][0].timber == tie);
  CHECK(by_hand[0][0].lb == Catch::Approx(lb - held_lb(bent.frame, bodies, king)));
  CHECK(hung({{king, HeldBy::kCleat}}, stands)[0][0].lb == Catch::Approx(lb));
  // On a piece that is itself set first it hangs where that one does; before it comes only the first one hangs.
  const auto chain = hung({{tie, HeldBy::kCleat}, {king, HeldBy::kPeg}}, {post});
  REQUIRE(chain.size() == 2);
  const double tie_lb = bodies[static_cast<std::size_t>(tie)].weight_lb;
  CHECK(chain[0].at(0).lb == Catch::Approx(tie_lb));
  CHECK(chain[1].at(0).timber == post);
  CHECK(chain[1].at(0).lb == Catch::Approx(tie_lb + lb));
  CHECK(hung({{king, HeldBy::kHands}}, {})[0].empty());
}

TEST_CASE("what stands has to bear what is set first, until it is caught", "[raising]") {
  struct Weak : RuleJudge {
    using RuleJudge::RuleJudge;
    bool bears(std::span<const int>, std::span<const int>, std::span<const std::vector<HungWeight>> moments) override {
      return moments.empty() || moments.back().empty() || moments.back()[0].lb < most;
    }
    double most = 0;
  };
  OneBent bent;
  bent.plan.steps[2].set_first = {{"K-C1", HeldBy::kCleat}};
  bent.plan.steps.pop_back();
  Weak judge(bent.frame, bent.plan);
  Blocking blocking(bent.frame);
  const OrderCheck falls = check_order(bent.frame, bent.plan, judge, blocking);
  CHECK(std::any_of(falls.faults.begin(), falls.faults.end(), [](const OrderFault& f) {
    return f.id == OrderFaultId::kHeldFalls && f.step == 2 && f.marks == std::vector<std::string>{"K-C1"};
  }));
  CHECK_FALSE(falls.steps[2].bears);
  judge.most = 1e9;
  const OrderCheck stands = check_order(bent.frame, bent.plan, judge, blocking);
  CHECK(stands.steps[2].bears);
  CHECK(std::none_of(stands.faults.begin(), stands.faults.end(),
                     [](const OrderFault& f) { return f.id == OrderFaultId::kHeldFalls; }));
}

TEST_CASE("a step takes those who raise its pieces and those who hold what is set first") {
  OneBent bent;
  const std::vector<PickBody> bodies = pick_bodies(bent.frame, bent.plan);
  RaisingStep tie;
  tie.marks = {"T-1"};
  const auto pick = [&] { return pick_of_step(bent.frame, bent.plan, bodies, tie); };
  const int alone = pick().needed();
  CHECK(alone == solve_pick(bent.frame, bent.plan, bodies, timbers_of(bent.frame, tie.marks)).people);
  tie.set_first = {{"K-C1", HeldBy::kHands}};
  const int held = hands_for(bent.frame, bent.plan, bodies, timber_by_mark(bent.frame, "K-C1"));
  CHECK(held > 0);
  CHECK(pick().needed() == alone + held);
  tie.set_first[0].by = HeldBy::kCleat;
  CHECK(pick().needed() == alone);
  tie.set_first[0].by = HeldBy::kHands;
  bent.plan.crane.present = true;
  CHECK(pick().needed() == held + limits::kTagLines);
}

TEST_CASE("what is fastened does not spread") {
  RaisingPlan plan;
  CHECK(entry_limits(plan).spread_most > 0);
  plan.fasten = FastenWhen::kWithStep;
  CHECK(entry_limits(plan).spread_most == 0);
}

TEST_CASE("a good order has no faults") {
  const OrderCheck check = OneBent().check();
  CHECK(ids(check).empty());
  CHECK(check.first_bad == -1);
  REQUIRE(check.steps.size() == 4);
  CHECK(check.steps[1].entry.path.back().kind == MoveKind::kSlide);
  CHECK(check.steps[2].temporaries.size() == 2);
  CHECK(check.steps[2].temporaries_after.empty());
}

TEST_CASE("marks that are unknown, twice or left out are said") {
  OneBent bent;
  bent.plan.steps[0].marks.emplace_back("P-Z9");
  bent.plan.steps[1].marks.emplace_back("P-A1");
  CHECK(ids(bent.check()) == Ids{OrderFaultId::kUnknownMark, OrderFaultId::kTwice});
  CHECK(bent.check().first_bad == 0);
  OneBent less;
  less.plan.steps.pop_back();
  CHECK(less.check().left_out == std::vector<int>{timber_by_mark(less.frame, "K-C1")});
}

TEST_CASE("carried before carrier, a tie between two posts, taken out too soon") {
  OneBent early;
  std::swap(early.plan.steps[3].marks, early.plan.steps[1].marks);
  const OrderCheck check = early.check();
  CHECK(std::count_if(check.faults.begin(), check.faults.end(), [](const OrderFault& f) {
          return f.id == OrderFaultId::kSupportMissing && f.step == 1 &&
                 f.marks == std::vector<std::string>{"K-C1", "T-1"};
        }) == 1);
  OneBent between;
  std::swap(between.plan.steps[1].marks, between.plan.steps[2].marks);
  between.plan.temporaries[1].from.mark = "P-E1";
  CHECK(ids(between.check()) == Ids{OrderFaultId::kCantGoIn});
  CHECK(between.check().first_bad == 2);
  CHECK_FALSE(between.check().steps[2].entry.remedies.empty());
  OneBent soon;
  soon.plan.steps[0].take_out = {"held"};
  soon.plan.steps[2].take_out = {"tie"};
  CHECK(soon.check().first_unstable == 0);
}

TEST_CASE("temporaries that are not there, or up, or loose") {
  OneBent bent;
  bent.plan.steps[0].put_up.emplace_back("nothing");
  bent.plan.steps[1].put_up.emplace_back("held");
  bent.plan.steps[3].take_out = {"tie"};
  CHECK(ids(bent.check()) ==
        Ids{OrderFaultId::kUnknownTemporary, OrderFaultId::kTemporaryTwice, OrderFaultId::kTemporaryNotUp});
  OneBent loose;
  loose.plan.steps[0].put_up.emplace_back("king");
  loose.plan.steps[3].put_up.clear();
  CHECK(ids(loose.check()) == Ids{OrderFaultId::kTemporaryLoose});
}

TEST_CASE("wishes that are broken, and wishes that can't all be kept") {
  OneBent bent;
  Wish wish;
  wish.marks = {"P-E1"};
  wish.others = {"P-A1"};
  bent.plan.wishes = {wish};
  OrderCheck check = bent.check();
  REQUIRE(ids(check) == Ids{OrderFaultId::kWishBroken});
  CHECK(own(check)[0].marks == std::vector<std::string>{"P-E1", "P-A1"});
  CHECK(own(check)[0].step == 0);
  Wish back;
  back.marks = {"P-A1"};
  back.others = {"P-E1"};
  bent.plan.wishes.push_back(back);
  check = bent.check();
  CHECK(ids(check) == Ids{OrderFaultId::kWishCycle, OrderFaultId::kWishBroken});
  CHECK(own(check)[0].marks == std::vector<std::string>{"P-A1", "P-E1"});
  OneBent day;
  Wish on;
  on.kind = WishKind::kDay;
  on.marks = {"K-C1"};
  on.number = 2;
  day.plan.wishes = {on};
  CHECK(ids(day.check()) == Ids{OrderFaultId::kWishBroken});
  day.plan.steps[3].day = 2;
  CHECK(own(day.check()).empty());
  Wish together;
  together.kind = WishKind::kTogether;
  together.marks = {"P-A1", "P-E1"};
  day.plan.wishes.push_back(together);
  CHECK(ids(day.check()) == Ids{OrderFaultId::kWishBroken});
}

TEST_CASE("a moved step is checked again as if all were") {
  Random random(5);
  const Frame frame =
      solve_frame(default_plan(Length::feet(20), Length::feet(24), Length::feet(10), Slope::in_12(Length::inches(8))))
          .value();
  RaisingPlan plan;
  for (const Timber& t : frame.timbers) {
    RaisingStep step;
    step.marks = {t.mark};
    plan.steps.push_back(step);
  }
  RuleJudge judge(frame, plan);
  Blocking blocking(frame);
  OrderCheck check = check_order(frame, plan, judge, blocking);
  for (int i = 0; i < 20; ++i) {
    RaisingPlan moved = plan;
    const auto pick = [&] { return static_cast<std::ptrdiff_t>(random.whole(0, 60)); };
    const std::ptrdiff_t from = pick(), to = pick();
    const RaisingStep step = moved.steps[static_cast<std::size_t>(from)];
    moved.steps.erase(moved.steps.begin() + from);
    moved.steps.insert(moved.steps.begin() + to, step);
    const int before = judge.asked;
    const OrderCheck again = check_order_again(frame, moved, judge, blocking, check, plan);
    CHECK(judge.asked - before <= std::abs(from - to) + 1);
    const OrderCheck fresh = check_order(frame, moved, judge, blocking);
    CHECK(again.faults == fresh.faults);
    CHECK(again.first_bad == fresh.first_bad);
    for (std::size_t s = 0; s < fresh.steps.size(); ++s) {
      CHECK(again.steps[s].entry == fresh.steps[s].entry);
      CHECK(again.steps[s].good == fresh.steps[s].good);
    }
    plan = moved;
    check = again;
  }
}
