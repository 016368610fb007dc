#include "screens/roofs/timbers.h"

#include <algorithm>
#include <string>

#include "frame/facts.h"
#include "numeric/index.h"
#include "screens/roofs/form.h"
#include "screens/timber/sheet.h"
#include "words/frame_words.h"
#include "words/roofs/roof_words.h"

namespace bentbook::screens {
namespace {

std::string marks_of(const RoofSolution& roof, const AlikeRoofTimbers& alike, Language language) {
  std::string marks = roof_marks(roof, alike.by_hand[0]);
  const std::string right = roof_marks(roof, alike.by_hand[1]);
  if (marks.empty())
    marks = right;
  else if (!right.empty())
    marks += "; " + say(Msg::kRoofOtherHand, language, right);
  return marks;
}

/// Where the roof is the book's frame, its timbers have sheets.
bool is_in_frame(Context& context, const std::string& mark) {
  if (context.desk.book().framed) return false;
  const ShownFrame shown = frame_now(context);
  return shown.frame() && timber_by_mark(*shown.frame(), mark) >= 0;
}

void timber_screen(Context& context) {
  roof_page(context, "roofs.timber.page", [&](const ShownRoof& shown) {
    Ui& ui = context.ui;
    const RoofSolution* roof = shown.solved();
    if (roof == nullptr) return roof_refused(context, shown);
    const Voice voice = voice_of(context);
    const std::vector<AlikeRoofTimbers> all = alike_timbers(*roof, voice);
    const auto own = std::find_if(all.begin(), all.end(), [&](const AlikeRoofTimbers& alike) {
      return roof->timbers[at(alike.first())].mark == context.subject;
    });
    if (own == all.end()) return body(ui, "roofs.timber.gone", context.say(Msg::kStepGone));
    const RoofTimber& timber = roof->timbers[at(own->first())];
    heading(ui, "roofs.timber.name", roof_timber_title(timber, voice));
    body(ui, "roofs.timber.marks", marks_of(*roof, *own, ui.language));
    answer(ui, "roofs.timber.length", context.say(Msg::kTipToTip), say_inches(timber.length, voice));
    int n = 0;
    for (const std::string& row : roof_timber_rows(timber, voice))
      body(ui, "roofs.timber.row." + std::to_string(n++), row);
    // Faces and cards are the frame's.
    note(ui, "roofs.timber.how", context.say(Msg::kRoofAsFrameNote));
    if (!button(ui, "roofs.timber.sheet", context.say(Msg::kRoofMakeFrame), Weight::kPrimary)) return;
    edit_book(context, [](Book& book) { book.framed = false; });
    context.pages.turn_to(frame_sheet_page(context.subject));
  });
}

Page timber_page(std::string mark) { return {"roofs.timber", Msg::kRoofTimbers, timber_screen, std::move(mark)}; }

void timbers_screen(Context& context) {
  roof_page(context, "roofs.timbers.page", [&](const ShownRoof& shown) {
    Ui& ui = context.ui;
    const Voice voice = voice_of(context);
    if (const RoofSolution* roof = shown.solved()) {
      Abreast abreast(ui, 16, kRowAbreast);
      for (const AlikeRoofTimbers& alike : alike_timbers(*roof, voice)) {
        const RoofTimber& timber = roof->timbers[at(alike.first())];
        abreast.next();
        if (list_row(ui, "roofs.timbers." + timber.mark,
                     std::to_string(alike.by_hand[0].size() + alike.by_hand[1].size()) + " × " +
                         roof_timber_title(timber, voice),
                     say(Msg::kRoofTipToTip, ui.language, {{"length", say_inches(timber.length, voice)}}) + " · " +
                         marks_of(*roof, alike, ui.language)))
          context.pages.push(is_in_frame(context, timber.mark) ? frame_sheet_page(timber.mark)
                                                               : timber_page(timber.mark));
      }
    } else {
      roof_refused(context, shown);
    }
  });
}

}  // namespace

Page roof_timbers_page() { return {"roofs.timbers", Msg::kRoofTimbers, timbers_screen}; }

}  // namespace bentbook::screens
