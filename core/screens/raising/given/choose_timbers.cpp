#include "screens/raising/given/choose_timbers.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>
#include <vector>

#include "raising/plan_edits.h"
#include "screens/form/drawing_form.h"
#include "screens/frame/solid_view.h"
#include "screens/raising/form.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

using render::PartLook;

constexpr std::array<std::string_view, 4> kChoosingWords = {"from", "to", "wished", "others"};
constexpr std::array<Msg, 4> kChoosingTitles = {Msg::kBraceFrom, Msg::kBraceTo, Msg::kWishMarks, Msg::kWishOthers};

struct Question {
  Choosing choosing = Choosing::kFrom;
  std::string of;
  [[nodiscard]] bool one() const { return choosing == Choosing::kFrom || choosing == Choosing::kTo; }
};

/// The page's subject: "from T1".
Question asked_of(const Context& context) {
  const std::size_t blank = context.subject.find(' ');
  const std::string word = context.subject.substr(0, blank);
  const auto it = std::find(kChoosingWords.begin(), kChoosingWords.end(), word);
  return {static_cast<Choosing>(it - kChoosingWords.begin()), context.subject.substr(blank + 1)};
}

/// The list that is chosen for; nullptr: it is gone.
std::vector<std::string>* wished_in(RaisingPlan& plan, const Question& asked) {
  std::size_t i = 0;
  for (const char c : asked.of) i = i * 10 + static_cast<std::size_t>(c - '0');
  if (i >= plan.wishes.size()) return nullptr;
  return asked.choosing == Choosing::kWished ? &plan.wishes[i].marks : &plan.wishes[i].others;
}

std::vector<std::string> chosen_now(RaisingPlan plan, const Question& asked) {
  if (!asked.one()) {
    const std::vector<std::string>* wished = wished_in(plan, asked);
    return wished != nullptr ? *wished : std::vector<std::string>{};
  }
  const Temporary* temporary = find_temporary(plan, asked.of);
  if (temporary == nullptr) return {};
  const std::string& mark = (asked.choosing == Choosing::kFrom ? temporary->from : temporary->to).mark;
  return mark.empty() ? std::vector<std::string>{} : std::vector{mark};
}

/// One end goes to the timber that was tapped; a wish takes it in or out.
void choose(Context& context, const Frame& frame, const Question& asked, const std::string& mark) {
  const Length step = is_metric(context.style().form) ? Length::mm(25) : Length::inches(1);
  edit_raising(context, [&](RaisingPlan& plan) {
    if (!asked.one()) {
      if (std::vector<std::string>* wished = wished_in(plan, asked)) toggle_name(*wished, mark);
    } else if (Temporary* temporary = find_temporary(plan, asked.of)) {
      if (asked.choosing == Choosing::kFrom)
        hold_timber(frame, *temporary, mark, step);
      else
        lead_to(frame, *temporary, mark, step);
    }
  });
}

void names_part(Context& context, const Frame& frame, const Question& asked, const std::vector<std::string>& chosen) {
  Ui& ui = context.ui;
  Abreast abreast(ui, 16, kRowAbreast);
  for (const Timber& timber : frame.timbers) {
    if (!timber.placed) continue;
    const bool on = std::find(chosen.begin(), chosen.end(), timber.mark) != chosen.end();
    const std::string key = "choose.mark." + timber.mark;
    const std::string kind(kind_name(timber.kind, ui.language));
    abreast.next();
    if (asked.one() ? pick_row(ui, key, timber.mark, kind, on) : toggle(ui, key, timber.mark, on, kind))
      choose(context, frame, asked, timber.mark);
  }
}

void choose_screen(Context& context) {
  Ui& ui = context.ui;
  if (!book_is_open(context)) return;
  const ShownFrame shown = frame_now(context);
  if (!shown.frame()) return raising_page(context, "choose.page", [](const ShownFrame&) {});
  const Frame& frame = *shown.frame();
  const Question asked = asked_of(context);
  const std::vector<std::string> chosen = chosen_now(context.desk.book().raising, asked);
  SolidMemory& solids = context.raising_memory.tapping;
  make_scene(solids, shown);
  const auto [picture, below] = beside_picture(context);
  (void)draw_solids(context, shown, solids, picture,
                    {"choose", std::string(context.say(Msg::kChoosePicture)), context.subject + marks_text(chosen)},
                    [&] {
                      SolidLooks out;
                      out.looks.reserve(solids.timbers.size());
                      for (const int t : solids.timbers) {
                        const std::string& mark = frame.timbers[static_cast<std::size_t>(t)].mark;
                        const bool lit = std::find(chosen.begin(), chosen.end(), mark) != chosen.end();
                        out.looks.push_back(static_cast<std::uint8_t>(lit ? PartLook::kLit : PartLook::kPlain));
                      }
                      return out;
                    });
  if (!solids.lit.empty()) choose(context, frame, asked, std::exchange(solids.lit, {}));
  begin_scroll(ui, "choose.page", below);
  view_choice(context, "choose.kind", solids);
  fact(ui, "choose.chosen", context.say(kChoosingTitles[static_cast<std::size_t>(asked.choosing)]),
       chosen.empty()
           ? std::string(context.say(asked.choosing == Choosing::kTo ? Msg::kTemporaryGround : Msg::kWishNone))
           : marks_text(chosen),
       true);
  if (asked.choosing == Choosing::kTo && !chosen.empty() &&
      button(ui, "choose.ground", context.say(Msg::kChooseGround)))
    choose(context, frame, asked, {});
  if (!chosen.empty() && button(ui, "choose.done", context.say(Msg::kKeyDone), Weight::kPrimary)) context.pages.pop();
  heading(ui, "choose.names", context.say(Msg::kTapNames));
  names_part(context, frame, asked, chosen);
  space(ui, 24);
  end_scroll(ui);
}

}  // namespace

Page raising_choose_page(std::string of, Choosing choosing) {
  const auto i = static_cast<std::size_t>(choosing);
  const bool brace = choosing == Choosing::kFrom || choosing == Choosing::kTo;
  return {"raising.choose", brace ? Msg::kBracePicture : Msg::kRaisingWishes, choose_screen,
          std::string(kChoosingWords[i]) + " " + std::move(of)};
}

}  // namespace bentbook::screens
