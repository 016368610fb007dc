#pragma once
/// Words of the raising, in the user's language. A verdict reads "no collapse found, as assumed", never "safe".

#include <span>
#include <string>
#include <vector>

#include "raising/check.h"
#include "raising/insertion/blocking.h"
#include "raising/lifting/pick.h"
#include "raising/search/search.h"
#include "raising/stability/standing.h"
#include "words/words.h"

namespace bentbook {

/// "P-A1, P-E1".
[[nodiscard]] std::string marks_text(const std::vector<std::string>& marks);
[[nodiscard]] std::string marks_text(const Frame& frame, const std::vector<int>& timbers);

/// Where a nail goes or how far something is moved: as lengths are said, but of millimetres no tenths, and nothing that
/// is less than that is told.
[[nodiscard]] std::string say_near(Length length, const Voice& voice);

/// "567 lb": the sum of what is said of each part, so that the parts as they are printed add up to it.
[[nodiscard]] std::string say_sum(std::span<const double> parts_lb, const Voice& voice);
/// "567 lb wet": what all of the raising says that something weighs. Several: their sum.
[[nodiscard]] std::string say_wet(std::span<const double> parts_lb, const Voice& voice);
[[nodiscard]] std::string say_wet(double lb, const Voice& voice);

/// Toward which side of the building a direction goes most of all: "the left wall".
[[nodiscard]] std::string_view toward_text(Vec3 direction, Language language);

/// "Checked: no fault found. No collapse found, as assumed."; as far as it goes, where not all is in it. No check: that
/// it is not checked.
[[nodiscard]] std::string_view checked_text(const OrderCheck* check, Language language);
/// "Bent 2 can rack across the building."
[[nodiscard]] std::string mode_text(const Mode& mode, const Frame& frame, Language language);
/// Each kind of warning once, with all that it is said of; what all depends on, one by one. `temporaries`: the model's.
[[nodiscard]] std::vector<std::string> standing_warning_texts(std::span<const StandingWarning> warnings,
                                                              const Frame& frame,
                                                              const std::vector<Temporary>& temporaries,
                                                              Language language);
/// Whether pegs, pins, screws and the temporaries that are up all have ratings: only then is a margin shown.
[[nodiscard]] bool margin_is_rated(std::span<const StandingWarning> warnings, const FastenerRatings& ratings);
/// What pushes where: "a push to the right".
[[nodiscard]] std::string load_text(const LoadCase& load, const Frame& frame, Language language);

/// How it comes in: "Straight down.", "Beside its place, then 6″ toward the ridge." Empty where it cannot.
[[nodiscard]] std::string path_text(const Entry& entry, const Frame& frame, const Voice& voice);
[[nodiscard]] std::string remedy_text(const Remedy& remedy, const Frame& frame, Language language);

[[nodiscard]] std::string order_fault_text(const OrderFault& fault, const Voice& voice);
/// What a step sets first, each with what holds it.
[[nodiscard]] std::string held_text(const RaisingStep&, const Frame&, const RaisingPlan&, const Voice&);
/// Why a piece did not come in; `plan`: what was asked.
[[nodiscard]] std::string stuck_text(const Stuck& stuck, const RaisingPlan& plan, Language language);
/// What to do about those that shut others out, said once for all of them; empty where none does.
[[nodiscard]] std::string_view stuck_advice(std::span<const Stuck> stuck, Language language);

/// "By hand", "Second crane".
[[nodiscard]] std::string_view lift_by_text(LiftBy by, Language language);
[[nodiscard]] std::string pick_note_text(const PickNote& note, const Voice& voice);

/// "Diagonal T1: P-A1 at 6′ to the ground".
[[nodiscard]] std::string temporary_text(const Temporary& temporary, const Frame& frame, const Voice& voice);

}  // namespace bentbook
