#include "screens/raising/step_shown.h"

#include <string>

#include "words/raising_words.h"

namespace bentbook::screens {

/// How it stands when the sling comes off.
void standing_part(ShownStep& s) {
  Ui& ui = s.context.ui;
  const Frame& frame = *s.frame.frame();
  heading(ui, "step.standing", s.context.say(Msg::kStepStanding));
  const StepExplained* what = s.order == nullptr ? nullptr : explained_step(s.context, s.index);
  if (what == nullptr) return;  // said: it is being looked at, or why it was not
  const StandingCheck& standing = what->standing;
  if (standing.stands()) {
    fact(ui, "step.verdict", s.context.say(Msg::kRaisingVerdict), s.context.say(Msg::kRaisingNoFault), true);
    if (margin_is_rated(standing.warnings, s.plan.ratings))
      fact(ui, "step.margin", s.context.say(Msg::kStepMargin), print_fixed(standing.factor, 2), true);
    note(ui, "step.worst", load_text(standing.worst, frame, ui.language));
  } else if (standing.mechanisms == 0) {
    caution(ui, "step.falls", say(Msg::kStepFalls, ui.language, load_text(standing.worst, frame, ui.language)));
  }
  RaisingMemory& memory = s.context.raising_memory;
  for (std::size_t i = 0; i < standing.modes.size() && i < 12; ++i) {
    const std::string key = "step.mode." + std::to_string(i);
    caution(ui, key, mode_text(standing.modes[i], frame, ui.language));
    if (button(ui, key + ".show", s.context.say(Msg::kStepShowMode))) {
      memory.mode = static_cast<int>(i);
      memory.moving_since_ms = ui.now_ms;
    }
  }
  int n = 0;
  for (const std::string& warning : standing_warning_texts(standing.warnings, frame, s.plan.temporaries, ui.language))
    body(ui, "step.warning." + std::to_string(n++), warning);
  if (what->braces.empty()) return;
  heading(ui, "step.braces", s.context.say(Msg::kStepBraces), 3);
  n = 0;
  for (const Temporary& brace : what->braces)
    body(ui, "step.brace." + std::to_string(n++), temporary_text(brace, frame, s.voice));
  if (button(ui, "step.take_braces", s.context.say(Msg::kStepTakeBraces), Weight::kPrimary)) {
    edit_raising(s.context, [&](RaisingPlan& plan) { take_braces(plan, s.index, what->braces); });
    s.context.toast(std::string(s.context.say(Msg::kStepBracesTaken)), true);
  }
}

}  // namespace bentbook::screens
