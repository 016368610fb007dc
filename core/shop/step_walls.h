#pragma once
/// Inside the steps: a recess's walls as gauge lines, stations and how far they lean.

#include "shop/steps.h"

namespace bentbook {

/// Whether what goes so deep under the face comes out at the other one.
[[nodiscard]] bool goes_through(const Timber& timber, Face face, double depth);
/// Of a recess in a face: where it begins and ends along the timber, its sides from the reference face, its depth. A
/// side of which nothing is said is open.
[[nodiscard]] std::vector<StepNumber> recess_numbers(const Timber& timber, const Feature& feature);
/// Of a slot, relief, let-in or fork in an end.
[[nodiscard]] std::vector<StepNumber> end_recess_numbers(const Timber& timber, const Feature& feature);

}  // namespace bentbook
