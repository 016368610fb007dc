#include "screens/raising/lists.h"

#include <string>

#include "screens/raising/form.h"
#include "words/brief_text.h"
#include "words/frame_words.h"
#include "words/raise_text.h"

namespace bentbook::screens {
namespace {

void timber_rows(Context& context, const Frame& frame, const std::string& key,
                 const std::vector<LoadedTimber>& timbers) {
  Ui& ui = context.ui;
  const Voice voice = voice_of(context);
  for (auto it = timbers.rbegin(); it != timbers.rend(); ++it) {
    const std::string& mark = frame.timbers[static_cast<std::size_t>(it->timber)].mark;
    fact(ui, key + "." + mark, mark + (it->step < 0 ? std::string{} : " · " + std::to_string(it->step + 1)),
         say_inches(it->length, voice) + " · " + say_wet(it->weight_lb, voice));
    if (it->too_long) caution(ui, key + ".long." + mark, say(Msg::kListsTooLong, ui.language, mark));
    if (it->too_heavy) caution(ui, key + ".heavy." + mark, say(Msg::kListsTooHeavy, ui.language, mark));
  }
}

void lists_screen(Context& context) {
  raising_page(context, "lists.page", [&](const ShownFrame& shown) {
    Ui& ui = context.ui;
    const Frame& frame = *shown.frame();
    const Voice voice = voice_of(context);
    body(ui, "lists.note", context.say(Msg::kListsNote));
    if (button(ui, "lists.share", context.say(Msg::kListsShare), Weight::kPrimary)) {
      Voice plain = voice;
      plain.marks = Marks::kAscii;
      context.platform.share_file(context.desk.title() + " " + std::string(context.say(Msg::kPlaceRaising)) + ".txt",
                                  "text/plain",
                                  raising_text(context.desk.book(), frame, plain, context.raising.known_check()));
    }
    if (button(ui, "lists.brief", context.say(Msg::kListsBrief))) {
      Voice plain = voice;
      plain.marks = Marks::kAscii;
      context.platform.share_file(context.desk.title() + " " + std::string(context.say(Msg::kBriefTitlePlain)) + ".txt",
                                  "text/plain",
                                  raising_brief(context.desk.book(), frame, plain, context.raising.known_check()));
    }
    int n = 0;
    const RaisingPlan& plan = context.desk.book().raising;
    const std::vector<TemporaryTime> times = temporary_times(frame, plan);
    if (!times.empty()) {
      heading(ui, "lists.temporaries", context.say(Msg::kRaisingTemporaries));
      note(ui, "lists.most", say(Msg::kListsMost, ui.language, std::to_string(most_temporaries_up(plan))));
      for (const TemporaryTime& time : times)
        body(ui, "lists.temporary." + std::to_string(n++), temporary_time_text(time, frame, plan, voice));
    }
    n = 0;
    const RaisingMemory::Lists& lists = raising_lists(context, shown);
    for (const TruckLoad& load : lists.loads) {
      const std::string key = "lists.truck." + std::to_string(n++);
      heading(ui, key,
              say(Msg::kListsTruck, ui.language,
                  {{"n", std::to_string(n)}, {"weight", say_wet(weights_of(load.timbers), voice)}}));
      timber_rows(context, frame, key, load.timbers);
    }
    n = 0;
    const bool days = has_days(context.desk.book().raising);
    for (const LayDownStack& stack : lists.stacks) {
      const std::string key = "lists.stack." + std::to_string(n++);
      heading(ui, key,
              stack.day == 0 ? std::string(context.say(Msg::kListsNoStep))
              : !days        ? std::string(context.say(Msg::kListsStackWhole))
                             : say(Msg::kListsStack, ui.language, std::to_string(stack.day)));
      timber_rows(context, frame, key, stack.timbers);
    }
  });
}

}  // namespace

Page raising_lists_page() { return {"raising.lists", Msg::kRaisingLists, lists_screen}; }

}  // namespace bentbook::screens
