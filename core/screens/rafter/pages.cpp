#include "screens/rafter/pages.h"

#include <algorithm>
#include <string>

#include "roof/cut_section.h"
#include "roof/pattern.h"
#include "roof/rafter_drawing.h"
#include "roof/rafter_fields.h"
#include "roof/square_drawing.h"
#include "screens/angles/saw_sheet.h"
#include "screens/rafter/form.h"
#include "words/words.h"

namespace bentbook::screens {
namespace {

/// One page: solves, refuses or draws `content` in a scroll area.
template <class Content>
void page(Context& context, ItemKey key, Content&& content) {
  const ShownRafter shown = rafter_now(context);
  begin_scroll(context.ui, key, context.page);
  if (shown.pair)
    content(shown, *shown.pair, voice_of(context));
  else
    rafter_refused(context, shown);
  space(context.ui, 24);
  end_scroll(context.ui);
}

std::string side_key(std::string_view key, Side side) {
  return of_side(std::string("rafter.") + std::string(key), side);
}

std::string percent(double share) { return std::to_string(static_cast<int>(share * 100 + 0.5)) + " %"; }

// ── The bird's mouth ──────────────────────────────────────────────────────────────────────────────────────────────

void foot_screen(Context& context) {
  page(context, "foot.page", [&](const ShownRafter& shown, const RafterPair& pair, const Voice& voice) {
    Ui& ui = context.ui;
    for_each_side(context, pair, [&](Side side, const Rafter& rafter) {
      rafter_form(context, side_key("foot_picture", side), context.say(Msg::kFootPicture), 300,
                  foot_drawing(shown.input, pair, side), shown);
      const RafterSide& given_side = side == Side::kLeft || pair.alike ? shown.input.left : shown.input.right;
      const auto by =
          choice(ui, side_key("heel_by", side), context.say(Msg::kFootGivenBy),
                 {context.say(Msg::kFootBySeat), context.say(Msg::kFootByHeel)}, static_cast<int>(given_side.heel_by));
      if (by) {
        const std::string field = of_side(*by == 0 ? "seat" : "heel", side);
        edit_rafter(context,
                    [&](RafterInput& input) { set_rafter_length(input, field, *by == 0 ? rafter.seat : rafter.heel); });
      }
      side_by_side(
          ui, 16, 120,
          [&](Ui& half) {
            answer(half, side_key("seat_answer", side), context.say(Msg::kFootSeat), say_length(rafter.seat, voice));
          },
          [&](Ui& half) {
            answer(half, side_key("heel_answer", side), context.say(Msg::kFootHeel), say_length(rafter.heel, voice));
          });
      answer(ui, side_key("birdsmouth_depth", side), context.say(Msg::kFootDepth),
             say_length(rafter.birdsmouth_depth, voice));
      fact(ui, side_key("share_left", side), context.say(Msg::kFootShareLeft), percent(rafter.share_left), true);
      fact(ui, side_key("plumb_depth", side), context.say(Msg::kPlumbDepth), say_length(rafter.plumb_depth, voice));
      fact(ui, side_key("plumb_cut", side), context.say(Msg::kPlumbCut), say_angle(rafter.slope, voice));
      fact(ui, side_key("seat_cut", side), context.say(Msg::kSeatCut),
           say_angle(Angle::degrees(90) - rafter.slope, voice));
      int count = 0;
      for (const Caution& item : rafter.cautions)
        caution(ui, side_key("foot_caution_" + std::to_string(count++), side), caution_text(item, pair, voice));
    });
  });
}

// ── The peak ──────────────────────────────────────────────────────────────────────────────────────────────────────

void ridge_depth_row(Context& context, const ShownRafter& shown) {
  const Length depth = shown.input.ridge_depth;
  const std::string name = field_name("ridge_depth", context.ui.language);
  if (depth > Length{}) return rafter_field(context, "ridge_depth");
  if (given(context.ui, "rafter.ridge_depth", name, context.say(Msg::kPeakBoardNone),
            context.keypad.is_open("rafter.ridge_depth")))
    open_field(context, "rafter.ridge_depth", name);
}

void peak_screen(Context& context) {
  page(context, "peak.page", [&](const ShownRafter& shown, const RafterPair& pair, const Voice& voice) {
    Ui& ui = context.ui;
    const auto kind =
        choice(ui, "rafter.peak", context.say(Msg::kPeakTitle),
               {context.say(Msg::kPeakAgainst), context.say(Msg::kPeakBoard), context.say(Msg::kPeakBeam)},
               static_cast<int>(shown.input.peak));
    if (kind) edit_rafter(context, [&](RafterInput& input) { input.peak = static_cast<PeakKind>(*kind); });
    if (shown.input.peak == PeakKind::kRidgeBoard) ridge_depth_row(context, shown);
    for_each_side(context, pair, [&](Side side, const Rafter& rafter) {
      rafter_form(context, side_key("peak_picture", side), context.say(Msg::kPeakPicture), 280,
                  peak_drawing(shown.input, pair, side), shown);
      const auto length = [&](const char* key, Msg label, Length value) {
        fact(ui, side_key(key, side), context.say(label), say_length(value, voice), true);
      };
      answer(ui, side_key("peak_plumb_cut", side), context.say(Msg::kPlumbCut), say_angle(rafter.slope, voice));
      if (shown.input.peak == PeakKind::kRidgeBoard) {
        answer(ui, side_key("ridge_deduction", side), context.say(Msg::kPeakDeduction),
               say_length(rafter.ridge_deduction, voice));
        length("ridge_top", Msg::kPeakBoardTop, rafter.ridge_top);
        length("board_depth", Msg::kPeakBoardDepth, rafter.plumb_depth);
      } else if (shown.input.peak == PeakKind::kOverBeam) {
        answer(ui, side_key("ridge_top", side), context.say(Msg::kPeakBeamTop), say_length(rafter.ridge_top, voice));
        length("beam_notch", Msg::kPeakNotchDepth, rafter.beam_notch_depth);
        fact(ui, side_key("beam_share", side), context.say(Msg::kFootShareLeft), percent(1 - rafter.beam_notch_share));
      }
      for (const Caution& item : rafter.cautions)
        if (item.id == CautionId::kRidgeShallow)
          caution(ui, side_key("peak_caution", side), caution_text(item, pair, voice));
      length("rise", Msg::kRise, rafter.rise);
      length("peak_height", Msg::kPeakHeight, rafter.peak_height);
      length("rafter_top", Msg::kPeakRafterTop, rafter.rafter_top);
      length("peak_setback", Msg::kPeakSetback, rafter.peak_setback);
    });
  });
}

// ── The tail ──────────────────────────────────────────────────────────────────────────────────────────────────────

void tail_screen(Context& context) {
  page(context, "tail.page", [&](const ShownRafter& shown, const RafterPair& pair, const Voice& voice) {
    Ui& ui = context.ui;
    const auto kind =
        choice(ui, "rafter.tail", context.say(Msg::kTailTitle),
               {context.say(Msg::kTailPlumb), context.say(Msg::kTailSquare), context.say(Msg::kTailLevel)},
               static_cast<int>(shown.input.tail));
    if (kind) edit_rafter(context, [&](RafterInput& input) { input.tail = static_cast<TailCut>(*kind); });
    if (shown.input.tail == TailCut::kLevelAndPlumb) rafter_field(context, "tail_plumb");
    for_each_side(context, pair, [&](Side side, const Rafter& rafter) {
      rafter_field(context, of_side("overhang", side));
      rafter_form(context, side_key("tail_picture", side), context.say(Msg::kTailPicture), 220,
                  pattern_part(shown.input, rafter, side, PatternPart::kTail), shown);
      answer(ui, side_key("tail_along", side), context.say(Msg::kTailAlong), say_length(rafter.tail_along, voice));
      for (const CutAngle& cut : rafter.cuts) {
        if (cut.name < CutName::kTailPlumb) continue;
        answer(ui, side_key("tail_cut_" + std::to_string(static_cast<int>(cut.name)), side),
               cut_text(cut.name, ui.language), say_angle(cut.off_square, voice));
      }
    });
  });
}

// ── The saw ───────────────────────────────────────────────────────────────────────────────────────────────────────

void saw_screen(Context& context) {
  page(context, "cuts.page", [&](const ShownRafter& shown, const RafterPair& pair, const Voice&) {
    Ui& ui = context.ui;
    saw_row(context, "cuts");
    const Saw& saw = saw_in_use(context);
    for_each_side(context, pair, [&](Side side, const Rafter& rafter) {
      for (int i = 0; i < rafter.cuts.count; ++i) {
        const Angle angle = rafter.cuts[i].off_square;
        // Cuts at one setting are said together: the table is set once.
        std::string names;
        bool said = false;
        Section crossed;
        crossed.breadth = shown.input.section.breadth;
        crossed.depth = {};
        for (int j = 0; j < rafter.cuts.count; ++j) {
          if (!(rafter.cuts[j].off_square == angle)) continue;
          said |= j < i;
          crossed.depth = std::max(crossed.depth, crossed_by(rafter, rafter.cuts[j], shown.input.section).depth);
          names += (names.empty() ? "" : " · ") + std::string(cut_text(rafter.cuts[j].name, ui.language));
        }
        if (said) continue;
        saw_sheet(context, side_key("cut_" + std::to_string(i), side), names, saw, crossed, angle);
        space(ui, 24);
      }
    });
  });
}

// ── The framing square ────────────────────────────────────────────────────────────────────────────────────────────

void square_screen(Context& context) {
  page(context, "square.page", [&](const ShownRafter& shown, const RafterPair& pair, const Voice& voice) {
    Ui& ui = context.ui;
    for_each_side(context, pair, [&](Side side, const Rafter& rafter) {
      const SquareSteps steps = square_steps(rafter, square_run(is_metric(voice.lengths.form)));
      const Voice on_square = square_voice(voice);
      const std::string rise = say_length(steps.rise, on_square), run = say_length(steps.run, on_square);
      const auto words = [&](std::string_view key) -> bentbook::FigureText {
        if (key == "square_rise") return {rise, std::string(context.say(Msg::kSquareRise))};
        if (key == "square_run") return {run, std::string(context.say(Msg::kSquareRun))};
        return {say_length(steps.along, voice), std::string(context.say(Msg::kSquareStep))};
      };
      (void)drawing_form(context, side_key("square_picture", side), context.say(Msg::kSquarePicture),
                         drawing_height(context, 260), square_drawing(rafter, shown.input.section.depth), words);
      body(ui, side_key("square_how", side), say(Msg::kSquareHow, ui.language, {{"rise", rise}, {"run", run}}));
      answer(ui, side_key("steps", side), context.say(Msg::kSquareSteps), std::to_string(steps.steps));
      answer(ui, side_key("step_odd", side), context.say(Msg::kSquareOdd), say_length(steps.odd, voice));
      fact(ui, side_key("step_length", side), context.say(Msg::kSquareStep), say_length(steps.along, voice));
      fact(ui, side_key("tail_steps", side), context.say(Msg::kSquareTailSteps), std::to_string(steps.tail_steps));
      fact(ui, side_key("tail_odd", side), context.say(Msg::kSquareTailOdd), say_length(steps.tail_odd, voice));
      if (rafter.ridge_deduction > Length{})
        note(ui, side_key("square_deduct", side),
             say(Msg::kSquareDeduct, ui.language, say_length(rafter.ridge_deduction, voice)));
    });
  });
}

// ── Section and stock ─────────────────────────────────────────────────────────────────────────────────────────────

void timber_screen(Context& context) {
  page(context, "timber.page", [&](const ShownRafter& shown, const RafterPair& pair, const Voice& voice) {
    Ui& ui = context.ui;
    for (const char* field : {"breadth", "depth", "sheathing", "trim"}) rafter_field(context, field);
    for_each_side(context, pair, [&](Side side, const Rafter& rafter) {
      answer(ui, side_key("stock", side), context.say(Msg::kTimberStock), say_length(rafter.stock, voice));
      fact(ui, side_key("longest", side), context.say(Msg::kTimberLongest), say_length(rafter.longest, voice), true);
      if (shown.input.sheathing > Length{})
        fact(ui, side_key("sheathing_plumb", side), context.say(Msg::kTimberSheathing),
             say_length(rafter.sheathing_plumb, voice), true);
    });
  });
}

// ── Feet ──────────────────────────────────────────────────────────────────────────────────────────────────────────

void feet_screen(Context& context) {
  page(context, "feet.page", [&](const ShownRafter& shown, const RafterPair& pair, const Voice& voice) {
    Ui& ui = context.ui;
    const auto kind =
        choice(ui, "rafter.feet", context.say(Msg::kFeetTitle),
               {context.say(Msg::kFeetTied), context.say(Msg::kFeetLoose)}, static_cast<int>(shown.input.feet));
    if (kind) edit_rafter(context, [&](RafterInput& input) { input.feet = static_cast<Feet>(*kind); });
    body(ui, "feet.how", context.say(Msg::kFeetHow));
    if (shown.input.feet == Feet::kTied) return;
    given_field(context, "rafter.load_psf", context.say(Msg::kFeetLoad));
    rafter_field(context, "spacing");
    answer(ui, "feet.thrust", context.say(Msg::kFeetThrust), say_weight(pair.thrust_lb, voice));
    for (const Caution& item : pair.left.cautions)
      if (item.id == CautionId::kThrust) caution(ui, "feet.caution", caution_text(item, pair, voice));
  });
}

}  // namespace

Page rafter_foot_page() { return {"rafter.foot", Msg::kFootTitle, foot_screen}; }
Page rafter_peak_page() { return {"rafter.peak", Msg::kPeakTitle, peak_screen}; }
Page rafter_tail_page() { return {"rafter.tail", Msg::kTailTitle, tail_screen}; }
Page rafter_saw_page() { return {"rafter.saw", Msg::kRafterSawTitle, saw_screen}; }
Page rafter_square_page() { return {"rafter.square", Msg::kSquareTitle, square_screen}; }
Page rafter_timber_page() { return {"rafter.timber", Msg::kTimberTitle, timber_screen}; }
Page rafter_feet_page() { return {"rafter.feet", Msg::kFeetTitle, feet_screen}; }

}  // namespace bentbook::screens
