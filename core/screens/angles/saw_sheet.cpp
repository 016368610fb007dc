#include "screens/angles/saw_sheet.h"

#include <algorithm>
#include <string>

#include "cut/angle_drawing.h"
#include "screens/app/pages.h"
#include "screens/form/drawing_form.h"
#include "screens/settings/saws.h"
#include "words/error_words.h"
#include "words/figures.h"

namespace bentbook::screens {
namespace {

constexpr float kDrawn = 132;  ///< px: width of what is drawn beside the words

/// `draw_left` and `draw_right` side by side, the right one so wide.
template <class Left, class Right>
void beside(Ui& ui, float right_width, Left&& draw_left, Right&& draw_right) {
  const Column whole = ui.column;
  ui.column.width = whole.width - right_width - kGap;
  draw_left();
  const float left_foot = ui.column.y;
  ui.column.x = whole.x + whole.width - right_width;
  ui.column.y = whole.y;
  ui.column.width = right_width;
  draw_right();
  const float foot = std::max(left_foot, ui.column.y);
  ui.column = whole;
  ui.column.y = foot;
}

/// The scale with its blade beside the reading.
void scale_part(Context& context, const std::string& key, std::string_view label, const Saw& saw,
                const Setting& setting) {
  Ui& ui = context.ui;
  const Voice voice = voice_of(context);
  const Graduations& marks = setting.graduations;
  const Graduation& best = marks.best();
  beside(
      ui, kDrawn,
      [&] { answer(ui, key + ".set_to", say(Msg::kSawSetFor, ui.language, label), say_reading(best.reads, voice)); },
      [&] {
        const std::string name =
            std::string(context.say(Msg::kSawScalePicture)) + ": " + say_reading(best.reads, voice);
        drawing_beside(context, key + ".scale", name, kDrawn, scale_drawing(saw, best), [](std::string_view figure) {
          constexpr std::string_view kStem = "scale_";
          return std::string(figure.substr(kStem.size()));
        });
      });
  if (marks.on_mark) return body(ui, key + ".on_mark", context.say(Msg::kSawOnMark));
  body(ui, key + ".missed", say_missed(best, voice));
  note(ui, key + ".gape",
       say(Msg::kSawExactly, ui.language, say_angle(setting.set_to, voice, 2)) + " · " +
           say(Msg::kSawGape, ui.language,
               {{"gap", say_cost(best.gap, voice)}, {"mated", say_cost(best.gap_mated, voice)}}));
}

/// One way to make the cut, drawn.
void way_part(Context& context, const std::string& prefix, Ride ride, const Saw& saw, const Section& section,
              const Setting& setting) {
  Ui& ui = context.ui;
  const Voice voice = voice_of(context);
  const bool side = ride == Ride::kSide;
  const std::string key = prefix + (side ? ".on_side" : ".on_top");
  const std::string reading = say_reading(setting.graduations.best().reads, voice);
  // What lies on a table goes to the table's angle; what is run along by hand follows the line or a guide.
  const bool by_hand = saw.kind == SawKind::kCircular;
  const std::string title = !side     ? say(Msg::kSawTiltTo, ui.language, reading)
                            : by_hand ? std::string(context.say(Msg::kSawBladeSquare))
                                      : say(Msg::kSawTableAt, ui.language, reading);
  const Pass& pass = side ? setting.on_side : setting.on_top;
  const Msg how = !side ? Msg::kSawSquareLine : by_hand ? Msg::kSawAlongLine : Msg::kSawOnTable;
  const std::string way = say(how, ui.language, {{"angle", reading}, {"way", pass_text(pass, saw, voice)}});
  space(ui, kGap);
  if (pass.faces == Faces::kCannot) return note(ui, key, way);
  beside(
      ui, kDrawn,
      [&] {
        heading(ui, key + ".title", title, 3);
        body(ui, key, way);
      },
      [&] {
        drawing_beside(context, key + ".picture", context.say(Msg::kSawRidePicture), kDrawn * 0.7F,
                       ride_drawing(setting, section, ride), [](std::string_view) { return std::string{}; });
      });
}

}  // namespace

const Saw& saw_in_use(const Context& context) { return find_saw(context.kit, context.places.angles.saw); }

void saw_row(Context& context, ItemKey prefix) {
  const Saw& saw = saw_in_use(context);
  if (list_row(context.ui, std::string(prefix) + ".saw", shown_name(saw.name, context.ui.language),
               context.say(Msg::kSawRowNote)))
    context.pages.push(saws_page());
}

void saw_sheet(Context& context, ItemKey prefix, std::string_view label, const Saw& saw, const Section& section,
               Angle off_square) {
  Ui& ui = context.ui;
  const Voice voice = voice_of(context);
  const std::string key(prefix);
  const Result<Setting> solved = saw_setting(saw, section, off_square);
  if (!solved) {
    refusal(ui, key + ".refused", error_text(solved.error(), voice));
    return;
  }
  const Setting& setting = *solved;
  if (saw.kind == SawKind::kHand) {
    answer(ui, key + ".set_to", say(Msg::kSawMarkByHand, ui.language, label), say_angle(setting.exact, voice));
    fact(ui, key + ".travel", context.say(Msg::kSawTravel), say_length(setting.travel, voice));
    return;
  }
  scale_part(context, key, label, saw, setting);
  const bool top_first = setting.on_top.faces < setting.on_side.faces;
  for (const Ride ride : {top_first ? Ride::kTop : Ride::kSide, top_first ? Ride::kSide : Ride::kTop})
    way_part(context, key, ride, saw, section, setting);
  space(ui, kGap);
  fact(ui, key + ".travel", context.say(Msg::kSawTravel), say_length(setting.travel, voice));
}

}  // namespace bentbook::screens
