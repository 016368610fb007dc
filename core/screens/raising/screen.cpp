#include "screens/raising/screen.h"

#include <algorithm>
#include <string>

#include "screens/form/drawing_form.h"
#include "screens/raising/form.h"
#include "screens/raising/given/loads.h"
#include "screens/raising/given/temporaries.h"
#include "screens/raising/given/wishes.h"
#include "screens/raising/lists.h"
#include "screens/raising/order.h"
#include "screens/raising/step.h"
#include "screens/raising/tap.h"
#include "screens/raising/yard/gear.h"
#include "words/frame_words.h"
#include "words/step_words.h"

namespace bentbook::screens {
namespace {

int next_step(const RaisingPlan& plan) {
  for (std::size_t i = 0; i < plan.steps.size(); ++i)
    if (!plan.steps[i].done) return static_cast<int>(i);
  return -1;
}

void verdict(Context& context, const RaisingPlan& plan, const OrderCheck& check) {
  Ui& ui = context.ui;
  int n = 0;
  for (const OrderFault& fault : check.faults)
    if (fault.step < 0) caution(ui, "raising.fault." + std::to_string(n++), order_fault_text(fault, voice_of(context)));
  if (plan.steps.empty()) return body(ui, "raising.empty", context.say(Msg::kRaisingEmpty));
  if (check.first_unstable >= 0)
    caution(
        ui, "raising.unstable",
        say(Msg::kRaisingUnstable, ui.language, std::to_string(static_cast<std::size_t>(check.first_unstable) + 1)));
  else if (check.first_bad >= 0)
    caution(ui, "raising.bad",
            say(Msg::kRaisingBad, ui.language, std::to_string(static_cast<std::size_t>(check.first_bad) + 1)));
  else if (n == 0)
    fact(ui, "raising.verdict", context.say(Msg::kRaisingVerdict), context.say(Msg::kRaisingNoFault), true);
  if (!check.left_out.empty())
    note(ui, "raising.left_out",
         say_count(Msg::kRaisingLeftOut, ui.language, static_cast<std::int64_t>(check.left_out.size())));
}

/// The verdict, or that it is being worked out: what stands below keeps its place meanwhile, or a finger on a row would
/// land on the one beside it.
void verdict_place(Context& context, const RaisingPlan& plan) {
  Ui& ui = context.ui;
  float& height = context.raising_memory.verdict_height;
  const float top = ui.column.y;
  const bool running = !context.raising.check().ended();
  if (running && plan.steps.empty())
    body(ui, "raising.empty", context.say(Msg::kRaisingEmpty));
  else if (const OrderCheck* check = order_check(context))
    verdict(context, plan, *check);
  if (running)
    ui.column.y = std::max(ui.column.y, top + height);
  else
    height = ui.column.y - top;
}

void ways_on(Context& context, const RaisingPlan& plan) {
  Ui& ui = context.ui;
  const auto row = [&](Abreast& abreast, const char* key, Msg title, std::string_view second, const Page& page) {
    abreast.next();
    if (list_row(ui, key, context.say(title), second)) context.pages.push(page);
  };
  heading(ui, "raising.order_heading", context.say(Msg::kRaisingOrder));
  {
    Abreast order(ui, 16, kRowAbreast);
    row(order, "raising.order", Msg::kRaisingSteps,
        say_count(Msg::kRaisingStepsNote, ui.language, static_cast<std::int64_t>(plan.steps.size())),
        raising_order_page());
    row(order, "raising.tap", Msg::kRaisingTap, context.say(Msg::kRaisingTapNote), raising_tap_page());
    row(order, "raising.search", Msg::kRaisingSearch, context.say(Msg::kRaisingSearchNote), raising_search_page());
    row(order, "raising.wishes", Msg::kRaisingWishes, context.say(Msg::kRaisingWishesNote), raising_wishes_page());
  }
  heading(ui, "raising.said_heading", context.say(Msg::kRaisingSaid));
  Abreast given(ui, 16, kRowAbreast);
  row(given, "raising.temporaries", Msg::kRaisingTemporaries,
      say_count(Msg::kRaisingTemporariesNote, ui.language, static_cast<std::int64_t>(plan.temporaries.size())),
      raising_temporaries_page());
  row(given, "raising.loads", Msg::kRaisingLoads,
      say(Msg::kRaisingLoadsNote, ui.language, say_kept(plan.loads.wind_mph, KeptIn::kMph, voice_of(context))),
      raising_loads_page());
  row(given, "raising.gear", Msg::kRaisingGear, context.say(Msg::kRaisingGearNote), raising_gear_page());
  row(given, "raising.lists", Msg::kRaisingLists, context.say(Msg::kRaisingListsNote), raising_lists_page());
}

}  // namespace

void raising_screen(Context& context) {
  raising_page(context, "raising.page", [&](const ShownFrame& shown) {
    Ui& ui = context.ui;
    const RaisingPlan& plan = context.desk.book().raising;
    verdict_place(context, plan);
    const int next = next_step(plan);
    if (!plan.steps.empty() && !lifting_entered(plan) &&
        list_row(ui, "raising.enter_gear", context.say(Msg::kRaisingEnterGear), context.say(Msg::kRaiseOpen)))
      context.pages.push(raising_gear_page());
    if (next >= 0 &&
        button(ui, "raising.next",
               say(Msg::kRaisingNext, ui.language,
                   {{"n", std::to_string(next + 1)},
                    {"all", std::to_string(plan.steps.size())},
                    {"marks", step_name(plan.steps[static_cast<std::size_t>(next)], *shown.frame(), ui.language)}}),
               Weight::kPrimary))
      context.pages.push(raising_step_page(next));
    caution(ui, "raising.caution", context.say(Msg::kRaisingCaution));
    ways_on(context, plan);
  });
}

}  // namespace bentbook::screens
