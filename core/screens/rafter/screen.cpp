#include "screens/rafter/screen.h"

#include <string>

#include "frame/common_rafter.h"
#include "roof/rafter_drawing.h"
#include "roof/square_drawing.h"
#include "screens/app/aloud.h"
#include "screens/rafter/corner_pages.h"
#include "screens/rafter/form.h"
#include "screens/rafter/pages.h"
#include "screens/rafter/plan_pages.h"
#include "words/words.h"

namespace bentbook::screens {
namespace {

/// This place's rafter is its own. Where the open book's roof is another one, that is said, and taken in a tap.
void book_roof_row(Context& context, const RafterInput& input, const Voice& voice) {
  if (context.desk.state() != BooksDesk::State::kOpen || !context.desk.book().framed) return;
  const FramePlan& plan = context.desk.book().frame;
  const std::optional<RafterInput> roof = common_rafter_of(plan, input);
  if (!roof || *roof == input) return;
  if (list_row(context.ui, "rafter.row.of_book", context.say(Msg::kRafterOfBook),
               say(Msg::kRafterOfBookNote, context.ui.language,
                   {{"title", context.desk.title()},
                    {"span", say_length(plan.span, voice)},
                    {"pitch", print_slope(plan.pitch_left, voice.marks)}})))
    edit_rafter(context, [&](RafterInput& rafter) { rafter = *roof; });
}

/// Plumb and seat cut side by side, then the length: beside them where the page is large.
void main_answers(Context& context, const std::string& prefix, const Rafter& rafter, const Voice& voice) {
  Ui& ui = context.ui;
  const Angle seat = Angle::degrees(90) - rafter.slope;
  const auto tip_to_tip = [&](Ui& part) {
    answer(part, prefix + ".tip_to_tip", context.say(Msg::kFieldTipToTip), say_length(rafter.tip_to_tip, voice),
           say(Msg::kRafterLineLength, ui.language, say_length(rafter.line_length, voice)));
  };
  const auto plumb_cut = [&](Ui& part) {
    answer(part, prefix + ".plumb_cut", context.say(Msg::kPlumbCut), say_angle(rafter.slope, voice),
           say_angle(rafter.slope, voice, 3));
  };
  const auto seat_cut = [&](Ui& part) {
    answer(part, prefix + ".seat_cut", context.say(Msg::kSeatCut), say_angle(seat, voice), say_angle(seat, voice, 3));
  };
  if (is_large_page(context)) return side_by_side(ui, 16, 120, plumb_cut, seat_cut, tip_to_tip);
  side_by_side(ui, 16, 120, plumb_cut, seat_cut);
  tip_to_tip(ui);
}

/// At large type, or on a narrow page, the names of its parts would leave no room for the roof: they are rows then.
bool parts_on_roof(const Context& context) {
  constexpr float kRoom = 350;
  return context.page.w * 100 >= kRoom * static_cast<float>(context.kit.settings.text_percent);
}

/// Rows that lead on; each says its main answer.
void rows(Context& context, const RafterInput& input, const RafterPair& pair, const Voice& voice) {
  Ui& ui = context.ui;
  const Rafter& left = pair.left;
  const SquareSteps steps = square_steps(left, square_run(is_metric(voice.lengths.form)));
  Abreast abreast(ui, 16, kRowAbreast);
  const auto row = [&](const char* key, Msg title, const std::string& second, const Page& page) {
    abreast.next();
    if (list_row(ui, key, context.say(title), second)) context.pages.push(page);
  };
  row("rafter.row.marks", Msg::kMarksTitle, std::string(context.say(Msg::kMarksNote)), rafter_marks_page());
  if (!parts_on_roof(context)) {
    row("rafter.row.foot", Msg::kFootTitle, {}, rafter_foot_page());
    row("rafter.row.peak", Msg::kPeakTitle, {}, rafter_peak_page());
    row("rafter.row.tail", Msg::kTailTitle, {}, rafter_tail_page());
  }
  row("rafter.row.saw", Msg::kRafterSawTitle, std::string(context.say(Msg::kRafterSawNote)), rafter_saw_page());
  row("rafter.row.square", Msg::kSquareTitle,
      say_count(Msg::kSquareNote, ui.language, steps.steps, {{"odd", say_length(steps.odd, voice)}}),
      rafter_square_page());
  row("rafter.row.sides", Msg::kSidesTitle,
      std::string(context.say(pair.alike ? Msg::kSidesAlikeNote : Msg::kSidesUnlikeNote)), rafter_sides_page());
  row("rafter.row.timber", Msg::kTimberTitle,
      say(Msg::kTimberNote, ui.language,
          {{"breadth", say_length(input.section.breadth, voice)},
           {"depth", say_length(input.section.depth, voice)},
           {"stock", say_length(left.stock, voice)}}),
      rafter_timber_page());
  row("rafter.row.feet", Msg::kFeetTitle,
      std::string(context.say(input.feet == Feet::kTied ? Msg::kFeetTied : Msg::kFeetLoose)), rafter_feet_page());
  row("rafter.row.corner", Msg::kCornerTitle, std::string(context.say(Msg::kCornerNote)), corner_page());
}

void cautions(Context& context, const RafterPair& pair, const Voice& voice) {
  int count = 0;
  const auto say_all = [&](const Rafter& rafter) {
    for (const Caution& item : rafter.cautions)
      caution(context.ui, "rafter.caution." + std::to_string(count++), caution_text(item, pair, voice));
  };
  say_all(pair.left);
  if (!pair.alike) say_all(pair.right);
}

}  // namespace

void rafter_screen(Context& context) {
  Ui& ui = context.ui;
  const ShownRafter shown = rafter_now(context);
  const Voice voice = voice_of(context);
  begin_scroll(ui, "rafter.page", context.page);
  if (!shown.pair) {
    rafter_refused(context, shown);
    end_scroll(ui);
    return;
  }
  const RafterPair& pair = *shown.pair;
  side_by_side(
      ui, 16, beside_drawing(context),
      [&](Ui&) {
        draw::Drawing roof = roof_drawing(shown.input, pair, has_usual_type(context));
        if (parts_on_roof(context)) name_parts(roof, pair);
        rafter_form(context, "rafter", context.say(Msg::kRoofPicture), 300, roof, shown);
      },
      [&](Ui&) {
        for_each_side(context, pair, [&](Side side, const Rafter& rafter) {
          main_answers(context, side == Side::kLeft ? "rafter.answer_left" : "rafter.answer_right", rafter, voice);
        });
        aloud_row(context, "rafter.aloud", {"rafter.answer"});
      });
  book_roof_row(context, shown.input, voice);
  space(ui, 8);
  cautions(context, pair, voice);
  rows(context, shown.input, pair, voice);
  space(ui, 24);
  end_scroll(ui);
}

}  // namespace bentbook::screens
