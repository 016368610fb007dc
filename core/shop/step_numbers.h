#pragma once
/// Inside the steps: what each is set to. A step is one setting; what a cut or feature wants is a list of them in the
/// shop's order.

#include "shop/steps.h"

namespace bentbook {

/// One setting of one cut or feature.
struct StepSetting {
  StepPart part = StepPart::kWhole;
  std::optional<SawSetup> setup;
  std::optional<End> end;     ///< a notch that runs out at this end, though its feature does not belong to it
  std::vector<int> saw_cuts;  ///< in Sheet::saw_cuts
  std::vector<StepNumber> numbers;
};

[[nodiscard]] StepSetting end_cut_setting(const Sheet& sheet, const Timber& timber, const BenchStep& step);
/// Not of holes; none where the feature takes no wood.
[[nodiscard]] std::vector<StepSetting> feature_settings(const Frame& frame, const Sheet& sheet, const BenchStep& step);

/// Bores of one bit from one face to one depth, and with one drawbore, are one setting.
struct BoreSetting {
  HoleUse use = HoleUse::kOther;
  Face face = Face::kTop;
  double diameter = 0, depth = 0, drawbore = 0;
};
[[nodiscard]] BoreSetting bore_setting(const Frame& frame, int timber, const Feature& hole);
[[nodiscard]] bool same_setting(const BoreSetting& a, const BoreSetting& b);
/// Bit, depth, drawbore, then station and offset of each bore.
[[nodiscard]] std::vector<StepNumber> bore_numbers(const Timber& timber, const BoreSetting& setting,
                                                   std::span<const Feature* const> holes);

/// Steps from seating the plate to drilling through. `joint`: a knife plate in this timber's end.
[[nodiscard]] std::vector<StepNumber> plate_numbers(const Frame& frame, int timber, int joint, StepWork work);

}  // namespace bentbook
