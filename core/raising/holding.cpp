#include "raising/holding.h"

#include <algorithm>

#include "frame/facts.h"
#include "numeric/index.h"
#include "numeric/libm.h"
#include "numeric/sorting.h"
#include "raising/limits.h"
#include "raising/order.h"

namespace bentbook {
double held_lb(const Frame& frame, std::span<const PickBody> bodies, int timber) {
  bool stands_on = false;
  for (const int j : joints_of(frame, timber)) {
    const Joint& joint = frame.joints[at(j)];
    stands_on = stands_on || (joint.carried == timber && joint.bearing == Bearing::kBearsOn);
  }
  const bool upright = libm::fabs(frame.timbers[at(timber)].at.x.z) > limits::kUprightSine;
  return bodies[at(timber)].weight_lb * (stands_on && upright ? limits::kHeldUpright : limits::kHeldSeated);
}

int hands_for(const Frame& frame, const RaisingPlan& plan, std::span<const PickBody> bodies, int timber) {
  const double each = plan.crew.each.lb();
  const double hands = libm::ceil(held_lb(frame, bodies, timber) / (each > 1 ? each : 1) - 1e-9);
  return hands < 1 ? 1 : hands > 999 ? 999 : static_cast<int>(hands);
}

int hands_free(const RaisingPlan& plan) {
  return plan.crew.people > limits::kTagLines ? plan.crew.people - limits::kTagLines : 0;
}

Pick pick_of_step(const Frame& frame, const RaisingPlan& plan, std::span<const PickBody> bodies,
                  const RaisingStep& step) {
  int busy = 0;
  for (const SetPiece& piece : step.set_first)
    if (const int t = timber_by_mark(frame, piece.mark); t >= 0 && piece.by == HeldBy::kHands)
      busy += hands_for(frame, plan, bodies, t);
  std::vector<int> main = timbers_of(frame, step.marks);
  sort_up(main);
  return solve_pick(frame, plan, bodies, main, step.by, busy);
}

bool may_be_held(TimberKind kind) {
  return kind != TimberKind::kPost && kind != TimberKind::kPlate && kind != TimberKind::kTie &&
         kind != TimberKind::kRidgeBeam && kind != TimberKind::kSill;
}

std::vector<SetPiece> held_pieces(const Frame& frame, const RaisingPlan& plan, std::span<const PickBody> bodies,
                                  std::span<const int> timbers) {
  std::vector<SetPiece> pieces;
  int free = hands_free(plan), cleats = limits::kMostHeldOtherwise;
  for (const int t : timbers) {
    const int hands = hands_for(frame, plan, bodies, t);
    if (hands > limits::kHandsOnOne) return {};
    const bool by_hand = hands <= free;
    if (by_hand)
      free -= hands;
    else if (--cleats < 0)
      return {};
    pieces.push_back({frame.timbers[at(t)].mark, by_hand ? HeldBy::kHands : HeldBy::kCleat});
  }
  return pieces;
}

std::vector<std::vector<HungWeight>> hung_while_closing(const Frame& frame, std::span<const PickBody> bodies,
                                                        std::span<const HeldTimber> set, std::span<const int> stands) {
  std::vector<std::vector<HungWeight>> moments(set.size());
  for (std::size_t now = 0; now < set.size(); ++now) {
    std::vector<double> carried(now + 1, 0);  // on each piece, by pieces seated in it
    for (std::size_t i = now + 1; i-- > 0;) {
      const int t = set[i].timber;
      const double own = bodies[at(t)].weight_lb;
      const double lb = carried[i] + own - (set[i].by == HeldBy::kHands ? held_lb(frame, bodies, t) : 0);
      const auto before = [&](int other) {
        std::size_t k = 0;
        while (k < i && set[k].timber != other) ++k;
        return k;
      };
      std::vector<const Joint*> seats;
      for (const int j : joints_of(frame, t)) {
        const int other = other_timber(frame.joints[at(j)], t);
        if (std::binary_search(stands.begin(), stands.end(), other) || before(other) < i)
          seats.push_back(&frame.joints[at(j)]);
      }
      for (const Joint* seat : seats) {
        const int other = other_timber(*seat, t);
        const double share = lb / static_cast<double>(seats.size());
        if (const std::size_t k = before(other); k < i)
          carried[k] += share;
        else
          moments[now].push_back({other, seat->where, share});
      }
    }
  }
  return moments;
}

}  // namespace bentbook
