#include "screens/rafter/plan_pages.h"

#include <string>
#include <utility>

#include "book/places.h"
#include "roof/pattern.h"
#include "roof/rafter_drawing.h"
#include "screens/form/task_button.h"
#include "screens/rafter/form.h"
#include "words/error_words.h"
#include "words/words.h"

namespace bentbook::screens {
namespace {

// ── Marks ─────────────────────────────────────────────────────────────────────────────────────────────────────────

void marks_of(Context& context, const ShownRafter& shown, Side side, const Rafter& rafter, const Voice& voice) {
  Ui& ui = context.ui;
  const std::string prefix = of_side("rafter.marks", side);
  rafter_form(context, prefix, context.say(Msg::kMarksPicture), 230, pattern_drawing(shown.input, rafter, side), shown);
  const auto edge = [&](const char* which, Msg title, const FixedList<Mark, 6>& marks) {
    heading(ui, prefix + "." + which, context.say(title), 3);
    for (int i = 0; i < marks.count; ++i)
      answer(ui, prefix + "." + which + "_" + std::to_string(i), mark_text(marks[i].name, shown.input, ui.language),
             say_length(marks[i].from_peak, voice));
  };
  edge("top", Msg::kMarksTop, rafter.marks_top);
  edge("bottom", Msg::kMarksBottom, rafter.marks_bottom);
  note(ui, prefix + ".setback", say(Msg::kMarksSetback, ui.language, say_length(rafter.peak_setback, voice)));
}

/// What is under way is of the rafter as it was when it was asked for; an edit ends it.
void share_pattern(Context& context, Side side) {
  Ui& ui = context.ui;
  Asked<PatternSheet>& asked = context.rafter_memory.patterns[static_cast<std::size_t>(side)];
  PatternRequest request{context.places.rafter, side, ui.language, context.style().denominator};
  const Fingerprint now = fingerprint_of(request);
  if (asked.of() != now) asked.cancel(context.platform);
  asked.turn_to(now);
  const std::string key = "rafter.share_" + of_side("pattern", side);
  const TaskPressed pressed = task_button(context, key, context.say(Msg::kPatternShare), asked.per_mille());
  if (pressed == TaskPressed::kStart) asked.ask(context.platform, TaskKind::kPattern, request);
  if (pressed == TaskPressed::kStop) asked.cancel(context.platform);
  if (!asked.ended()) return;
  if (const Error* failure = asked.failure()) context.toast(error_text(*failure, voice_of(context)), false);
  if (const PatternSheet* sheet = asked.answer())
    context.platform.share_file(std::string(context.say(Msg::kPatternFile)) + ".svg", "image/svg+xml", sheet->svg);
  asked.forget();
}

void marks_screen(Context& context) {
  const ShownRafter shown = rafter_now(context);
  begin_scroll(context.ui, "marks.page", context.page);
  if (shown.pair) {
    for_each_side(context, *shown.pair, [&](Side side, const Rafter& rafter) {
      marks_of(context, shown, side, rafter, voice_of(context));
      share_pattern(context, side);
    });
  } else {
    rafter_refused(context, shown);
  }
  space(context.ui, 24);
  end_scroll(context.ui);
}

// ── Left and right ────────────────────────────────────────────────────────────────────────────────────────────────

void plan_part(Context& context, const ShownRafter& shown) {
  Ui& ui = context.ui;
  const auto by = choice(ui, "rafter.plan_by", context.say(Msg::kPlanBy),
                         {context.say(Msg::kPlanBySpan), context.say(Msg::kPlanByRun), context.say(Msg::kPlanByBoth)},
                         static_cast<int>(shown.input.plan_by));
  if (by) edit_rafter(context, [&](RafterInput& input) { input.plan_by = static_cast<PlanBy>(*by); });
  if (shown.input.plan_by != PlanBy::kRun) rafter_field(context, "span");
  if (shown.input.plan_by != PlanBy::kSpan) rafter_field(context, "run");
}

void side_part(Context& context, const ShownRafter& shown, Side side) {
  Ui& ui = context.ui;
  const RafterSide& given_side = side == Side::kLeft ? shown.input.left : shown.input.right;
  heading(ui, of_side("sides.heading", side),
          context.say(shown.input.alike     ? Msg::kSideBoth
                      : side == Side::kLeft ? Msg::kSideLeft
                                            : Msg::kSideRight));
  for (const char* field : {"pitch", "seat", "heel", "plate_height", "overhang"}) {
    const bool follows = std::string_view(field) == (given_side.heel_by == HeelBy::kSeat ? "heel" : "seat");
    if (!follows) rafter_field(context, of_side(field, side));
  }
  if (toggle(ui, of_side("rafter.measured", side), context.say(Msg::kMeasuredToggle), given_side.measured,
             context.say(Msg::kMeasuredNote))) {
    edit_rafter(context, [&](RafterInput& input) {
      RafterSide& changed = side == Side::kLeft ? input.left : input.right;
      changed.measured = !changed.measured;
    });
  }
  if (!given_side.measured) return;
  rafter_field(context, of_side("measured_rise", side));
  rafter_field(context, of_side("measured_run", side));
}

void unlike_part(Context& context, const ShownRafter& shown) {
  Ui& ui = context.ui;
  const auto held = choice(
      ui, "rafter.held", context.say(Msg::kHeldTitle),
      {context.say(Msg::kHeldHeelsPlates), context.say(Msg::kHeldRidgePlates), context.say(Msg::kHeldRidgeHeels)},
      static_cast<int>(shown.input.held));
  if (held) {
    edit_rafter(context, [&](RafterInput& input) {
      input.held = static_cast<Held>(*held);
      // Heels and plates held, the ridge finds its own place: it cannot be placed too.
      if (input.held == Held::kHeelsAndPlates && input.plan_by == PlanBy::kSpanAndRun) input.plan_by = PlanBy::kSpan;
    });
  }
  side_part(context, shown, Side::kRight);
}

void sides_screen(Context& context) {
  Ui& ui = context.ui;
  const ShownRafter shown = rafter_now(context);
  const Voice voice = voice_of(context);
  begin_scroll(ui, "sides.page", context.page);
  if (shown.pair) {
    rafter_form(context, "sides", context.say(Msg::kRoofPicture), 270,
                roof_drawing(shown.input, *shown.pair, has_usual_type(context)), shown);
    if (!shown.pair->alike)
      fact(ui, "sides.off_centre", context.say(Msg::kSidesOffCentre), say_length(shown.pair->ridge_off_centre, voice),
           true);
  } else {
    refusal(ui, "rafter.refused", error_text(shown.pair.error(), voice));
  }
  if (toggle(ui, "rafter.alike", context.say(Msg::kSidesAlike), shown.input.alike, context.say(Msg::kSidesAlikeHow))) {
    edit_rafter(context, [](RafterInput& input) {
      if (input.alike) input.right = input.left;  // unlike starts from alike
      input.alike = !input.alike;
    });
  }
  plan_part(context, shown);
  side_part(context, shown, Side::kLeft);
  if (!shown.input.alike) unlike_part(context, shown);
  space(ui, 24);
  end_scroll(ui);
}

}  // namespace

Page rafter_marks_page() { return {"rafter.marks", Msg::kMarksTitle, marks_screen}; }
Page rafter_sides_page() { return {"rafter.sides", Msg::kSidesTitle, sides_screen}; }

}  // namespace bentbook::screens
