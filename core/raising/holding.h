#pragma once
/// What a crew can hold while a step closes: pieces set into what stands, each kept there by hands, a cleat, a rope or
/// a peg until the main piece catches them. Pounds; weights as picks have them. Source: SOURCES.md, "held pieces".

#include <span>
#include <vector>

#include "frame/plan.h"
#include "raising/lifting/pick.h"
#include "raising/plan.h"
#include "raising/stability/standing.h"

namespace bentbook {

/// Pounds that whoever holds the piece carries: half of what sits in a mortise, less of an upright that stands on what
/// bears it.
[[nodiscard]] double held_lb(const Frame& frame, std::span<const PickBody> bodies, int timber);
/// People for that, at the crew's own limit each.
[[nodiscard]] int hands_for(const Frame& frame, const RaisingPlan& plan, std::span<const PickBody> bodies, int timber);
/// People who may hold: two stay on the tag lines.
[[nodiscard]] int hands_free(const RaisingPlan& plan);
/// The pick of a step's main pieces, by what the lead says, past those who hold what is set first.
[[nodiscard]] Pick pick_of_step(const Frame& frame, const RaisingPlan& plan, std::span<const PickBody> bodies,
                                const RaisingStep& step);
/// Whether a kind of timber is held by hand for any main piece: posts, ties, plates and ridge beams are not. (The
/// search also sets a post first that a plate comes down on, where two others carry the plate: it is steadied, not
/// carried.)
[[nodiscard]] bool may_be_held(TimberKind kind);
struct HeldTimber {
  int timber = 0;  ///< index in Frame::timbers
  HeldBy by = HeldBy::kHands;
};
/// What hangs on the timbers that stand, after each of the pieces is set, in order of time: of one that hands hold what
/// its seat carries, all of one on a cleat, a rope or a peg, alike at each of its joints with what stands. A piece
/// seated in one set before hangs where that one does. `stands`: in order.
[[nodiscard]] std::vector<std::vector<HungWeight>> hung_while_closing(const Frame& frame,
                                                                      std::span<const PickBody> bodies,
                                                                      std::span<const HeldTimber> set,
                                                                      std::span<const int> stands);
/// The step's set pieces, each by hands while there are some, then by cleats. Empty: too many, or one is too heavy.
[[nodiscard]] std::vector<SetPiece> held_pieces(const Frame& frame, const RaisingPlan& plan,
                                                std::span<const PickBody> bodies, std::span<const int> timbers);

}  // namespace bentbook
