#pragma once
/// What a step of the raising is called, and how its piece goes in, as a lead says it.

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "frame/plan.h"
#include "raising/fasteners.h"
#include "raising/insertion/blocking.h"
#include "raising/lifting/pick.h"
#include "raising/plan.h"
#include "words/words.h"

namespace bentbook {

/// "Bent 2 up, 4 girts caught", "Plate L-A1, 4 braces caught", "Common rafter C-A3 + C-E3". A step that brings nothing:
/// "Temporary braces". Marks that the frame does not have are said as they stand.
[[nodiscard]] std::string step_name(const RaisingStep& step, const Frame& frame, Language language);

/// Marks: more are counted, not named.
inline constexpr std::size_t kMostMarksNamed = 3;
/// What a step's name is put together from.
struct StepNameParts {
  int bent = 0;                    ///< goes up whole, and no mark is named; 0: none does
  std::string kind;                ///< of what comes; empty where it is of different ones
  std::vector<std::string> marks;  ///< of what comes
  std::string caught;              ///< ", 4 girts caught"
};
/// Nothing where nothing of the frame comes.
[[nodiscard]] std::optional<StepNameParts> step_name_parts(const RaisingStep& step, const Frame& frame,
                                                           Language language);

/// How the step's main piece goes in: "Lower it onto P-A1, P-A2." A way in from far outside is said by its side alone;
/// with what it lands on where it comes from above; what is tipped up turns about its feet instead. Empty where there
/// is no way in. See path_text.
[[nodiscard]] std::string way_text(const Entry& entry, const RaisingStep& step, LiftBy by, const Frame& frame,
                                   const Voice& voice);

/// By what it goes up, in brief: "By hand, 2 people", "Crane, 340 lb left", "12 people or a machine".
[[nodiscard]] std::string goes_up_text(const Pick& pick, const Voice& voice);

/// What of the temporaries goes up and comes out: "+T1 +T2 −T3".
[[nodiscard]] std::string temporaries_text(const RaisingStep& step);

/// "8 pegs 1″, 4 plate pins 3⁄4″, screws at 2 joints"; empty where nothing is driven.
[[nodiscard]] std::string driven_text(std::span<const Driven> driven, const Voice& voice);

/// What holds for the whole raising, a sentence each: what is fastened with the steps and what later, the crew or that
/// none is entered, who stands on lines and poles.
[[nodiscard]] std::vector<std::string> whole_raising_texts(const RaisingPlan& plan, const Voice& voice);

/// "P-A1 and T-1, P-E1 and T-1".
[[nodiscard]] std::string joints_text(std::span<const JointName> joints, Language language);

}  // namespace bentbook
