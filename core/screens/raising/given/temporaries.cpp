#include "screens/raising/given/temporaries.h"

#include <algorithm>
#include <optional>
#include <string>

#include "raising/drawings/temporary_drawing.h"
#include "screens/raising/form.h"
#include "screens/raising/given/choose_timbers.h"
#include "screens/raising/yard/drawn.h"

namespace bentbook::screens {
namespace {

std::string path_of(const Temporary& temporary) { return "temporaries.@" + temporary.name; }

/// Where it runs, drawn; false: that is not told yet.
bool drawn_part(Context& context, const Frame& frame, const Temporary& temporary) {
  const auto line = temporary_line(frame, temporary);
  if (!line) return false;
  const auto words = [&](std::string_view key) { return temporary_figure(key, temporary, *line, voice_of(context)); };
  const auto tapped = drawing_form(context, "brace", context.say(Msg::kBracePicture), drawing_height(context, 380),
                                   temporary_drawing(frame, temporary), words);
  if (!tapped) return true;
  if (*tapped == "from.mark" || *tapped == "to.mark")
    context.pages.push(raising_choose_page(temporary.name, *tapped == "from.mark" ? Choosing::kFrom : Choosing::kTo));
  else
    open_field(context, "raising." + path_of(temporary) + "." + *tapped, words(*tapped).name);
  return true;
}

/// What the drawing has no figure for.
void rows_part(Context& context, const Temporary& temporary, const std::optional<TemporaryLine>& line) {
  const std::string path = path_of(temporary);
  if (line && temporary.to.mark.empty()) {
    if (elevation_of(*line) == Elevation::kAcross)
      raising_field(context, path + ".ground_y", Msg::kBraceGroundY);
    else
      raising_field(context, path + ".ground_x", Msg::kBraceGroundX);
    raising_field(context, path + ".ground_z", Msg::kBraceGroundZ);
  }
  if (temporary.kind == TemporaryKind::kDiagonal) raising_field(context, path + ".thickness", Msg::kBraceThickness);
  raising_field(context, path + ".rated", Msg::kBraceRated);
}

void temporary_screen(Context& context) {
  raising_page(context, "brace.page", [&](const ShownFrame& frame) {
    Ui& ui = context.ui;
    const RaisingShown shown(context);
    const std::string name = context.subject;
    const std::vector<Temporary>& all = shown.book().raising.temporaries;
    const auto it = std::find_if(all.begin(), all.end(), [&](const Temporary& t) { return t.name == name; });
    if (it == all.end()) return body(ui, "brace.gone", context.say(Msg::kStepGone));
    given_choice(
        context, "raising." + path_of(*it) + ".kind", context.say(Msg::kBraceKind),
        {context.say(Msg::kTemporaryGuy), context.say(Msg::kTemporaryDiagonal), context.say(Msg::kTemporaryProp)});
    if (!drawn_part(context, *frame.frame(), *it) &&
        list_row(ui, "brace.choose", context.say(Msg::kBraceFrom),
                 it->from.mark.empty() ? context.say(Msg::kBraceTapTimber) : std::string_view(it->from.mark)))
      context.pages.push(raising_choose_page(name, Choosing::kFrom));
    rows_part(context, *it, temporary_line(*frame.frame(), *it));
    note(ui, "brace.rated_note", context.say(Msg::kBraceRatedNote));
    if (!button(ui, "brace.delete", context.say(Msg::kBraceDelete), Weight::kDestructive)) return;
    edit_raising(context, [&](RaisingPlan& p) { drop_temporary(p, name); });
    context.pages.pop();
    context.toast(std::string(context.say(Msg::kStepDeleted)), true);
  });
}

void temporaries_screen(Context& context) {
  raising_page(context, "braces.page", [&](const ShownFrame& shown) {
    Ui& ui = context.ui;
    const RaisingPlan& plan = context.desk.book().raising;
    body(ui, "braces.note", context.say(Msg::kBracesNote));
    for (const Temporary& t : plan.temporaries)
      if (list_row(ui, "braces." + t.name, temporary_text(t, *shown.frame(), voice_of(context)),
                   t.rated.count == 0 ? std::string(context.say(Msg::kBraceNoRating))
                                      : say_weight(t.rated.lb(), voice_of(context))))
        context.pages.push(raising_temporary_page(t.name));
    if (!button(ui, "braces.add", context.say(Msg::kBracesAdd), Weight::kPrimary)) return;
    const std::string name = free_temporary_name(plan);
    edit_raising(context, [&](RaisingPlan& p) {
      Temporary t;
      t.name = name;
      p.temporaries.push_back(t);
    });
    context.pages.push(raising_temporary_page(name));
    context.pages.push(raising_choose_page(name, Choosing::kFrom));
  });
}

}  // namespace

bentbook::FigureText temporary_figure(std::string_view key, const Temporary& temporary, const TemporaryLine& line,
                                      const Voice& voice) {
  const auto named = [&](std::string said, Msg name) {
    return bentbook::FigureText{std::move(said), std::string(text(name, voice.language))};
  };
  if (key == "from.mark") return named(temporary.from.mark, Msg::kBraceFrom);
  if (key == "to.mark")
    return named(
        temporary.to.mark.empty() ? std::string(text(Msg::kTemporaryGround, voice.language)) : temporary.to.mark,
        Msg::kBraceTo);
  if (key == "length") return named(say_inches(norm(line.to - line.from), voice), Msg::kFieldLength);
  if (key == "ground_x") return drawn_unsigned(named(say_length(temporary.ground_x, voice), Msg::kBraceGroundX));
  if (key == "ground_y") return drawn_unsigned(named(say_length(temporary.ground_y, voice), Msg::kBraceGroundY));
  return named(say_length(key == "to.station" ? temporary.to.station : temporary.from.station, voice),
               Msg::kBraceStation);
}

Page raising_temporaries_page() { return {"raising.braces", Msg::kRaisingTemporaries, temporaries_screen}; }
Page raising_temporary_page(std::string name) {
  return {"raising.brace", Msg::kRaisingTemporaries, temporary_screen, std::move(name)};
}

}  // namespace bentbook::screens
