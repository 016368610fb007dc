#pragma once
/// Timbers entered by hand: a few measures in, a timber with cuts, features and pockets out.

#include "frame/plan.h"
#include "frame/timber.h"
#include "numeric/result.h"

namespace bentbook {

/// The kinds of features that can be entered by hand: slot, mortise, housing, hole, tenon, lap.
[[nodiscard]] bool enters_by_hand(FeatureKind kind);

/// In timber axes and, where `placed`, in the building. Moisture is left at its default: it is the plan's.
/// Slots, tenons and laps whose station is 0 or the length belong to that end and reach in from its tip by `along`;
/// all else lies about its station. A tenon's `across` is its thickness, its shoulder is square; its depth is not
/// looked at.
/// Errors, `where` as in HandTimber: kMissing and kTooLarge ("mark": 60 bytes); kNotPositive and kTooLarge ("length":
/// 200 ft; "breadth", "depth": 10 ft); kSteep ("end_a", "end_b": past 80°; ends that cross); and with `at` = index of
/// the feature: kConflict ("kind"), kNotPositive ("along", "across", "diameter"), kNegative ("feature_depth"),
/// kImpossible
/// ("station", "offset": it does not touch the timber; "feature_depth": it parts the timber in two).
[[nodiscard]] Result<Timber> solve_hand_timber(const HandTimber& hand);

}  // namespace bentbook
