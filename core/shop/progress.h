#pragma once
/// How far a timber is: its steps against what the log says was done, and what the plan has changed under finished
/// work.

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "shop/steps.h"

namespace bentbook {

/// A number of a finished step that the plan has changed since, or a finished step that it no longer has. Nothing is
/// reset: the crew says what becomes of it, by finishing the step anew or by taking it back.
struct StepFlag {
  std::string step;
  bool gone = false;  ///< the plan has no such step any more
  StepNumberName number = StepNumberName::kDepth;
  std::optional<double> was, now;  ///< nothing: there was none, there is none
  EventId finished;
};

/// `state`: nullptr where the log does not speak of the timber.
[[nodiscard]] std::vector<StepFlag> flags_of(std::span<const WorkStep> steps, const TimberState* state);

/// A word by which a step is finished, and the id that it was said of.
struct StepClaim {
  std::string_view step;
  const Claim* claim = nullptr;
};
/// Whether the log has it finished: by its own id, or by all those that older logs know it by.
[[nodiscard]] bool finished(const WorkStep& step, const TimberState& state);
/// The words that finished it; none where it is not finished.
[[nodiscard]] std::vector<StepClaim> finishes_of(const WorkStep& step, const TimberState* state);

struct TickCount {
  int steps = 0, done = 0;
  [[nodiscard]] bool full() const { return done == steps; }
};
struct TimberProgress {
  std::array<TickCount, 4> ticks{};  ///< by Tick
  std::vector<bool> done;            ///< by step
  int next = -1;                     ///< the first step that is not done; −1: none
  bool held = false;
  std::vector<StepFlag> flags;
  /// All its steps are done. A timber with no steps of a tick gets it with the one before: what has no joints is not
  /// joined before it is cut.
  [[nodiscard]] bool has(Tick tick) const {
    const auto i = static_cast<std::size_t>(tick);
    return ticks[i].full() && (ticks[i].steps > 0 || i == 0 || has(static_cast<Tick>(i - 1)));
  }
};
[[nodiscard]] TimberProgress progress_of(std::span<const WorkStep> steps, const TimberState* state);

/// Why a plate stops the step that it is about.
struct PlateTrouble {
  bool twice = false;        ///< `plate` is recorded here and at `other_timber`; else it is in hand and not the one
  std::string plate;         ///< its number
  std::string recorded;      ///< the number that belongs here; empty: none is known
  std::string other_timber;  ///< where `plate` is recorded; empty: nowhere else
};
/// `step`: any that a plate has to do with (plate_step); nothing where all is well, or nothing is known.
[[nodiscard]] std::optional<PlateTrouble> plate_trouble(const ShopState& state, std::string_view mark,
                                                        std::span<const WorkStep> steps, const WorkStep& step);

/// The events that tick these steps off, device and times still to be filled in (next_event): each step of `tick` that
/// is not done, with its numbers.
[[nodiscard]] std::vector<Event> tick_events(std::string_view mark, std::span<const WorkStep> steps,
                                             const TimberProgress& progress, Tick tick);

}  // namespace bentbook
