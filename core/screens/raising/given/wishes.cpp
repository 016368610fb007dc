#include "screens/raising/given/wishes.h"

#include <string>
#include <vector>

#include "screens/raising/form.h"
#include "screens/raising/given/choose_timbers.h"

namespace bentbook::screens {
namespace {

void wish_part(Context& context, const Wish& wish, std::size_t i) {
  Ui& ui = context.ui;
  const std::string key = "wish." + std::to_string(i), path = "wishes." + std::to_string(i);
  given_choice(context, "raising." + path + ".kind", context.say(Msg::kWishKind),
               {context.say(Msg::kWishBefore), context.say(Msg::kWishTogether), context.say(Msg::kStepDay),
                context.say(Msg::kWishStartFrom)});
  const auto marks_row = [&](const char* which, Msg title, const std::vector<std::string>& marks, Choosing choosing) {
    if (list_row(ui, key + which, context.say(title),
                 marks.empty() ? std::string(context.say(Msg::kWishNone)) : marks_text(marks)))
      context.pages.push(raising_choose_page(std::to_string(i), choosing));
  };
  if (wish.kind != WishKind::kStartFrom) marks_row(".marks", Msg::kWishMarks, wish.marks, Choosing::kWished);
  if (wish.kind == WishKind::kBefore) marks_row(".others", Msg::kWishOthers, wish.others, Choosing::kOthers);
  if (wish.kind == WishKind::kDay) raising_field(context, path + ".number", Msg::kStepDay);
  if (wish.kind == WishKind::kStartFrom) raising_field(context, path + ".number", Msg::kWishBent);
  if (button(ui, key + ".drop", context.say(Msg::kWishDrop), Weight::kDestructive))
    edit_raising(context, [&](RaisingPlan& p) { p.wishes.erase(p.wishes.begin() + static_cast<std::ptrdiff_t>(i)); });
  space(ui, 16);
}

void wishes_screen(Context& context) {
  raising_page(context, "wishes.page", [&](const ShownFrame&) {
    Ui& ui = context.ui;
    const RaisingPlan& plan = context.desk.book().raising;
    body(ui, "wishes.note", context.say(Msg::kRaisingWishesNote));
    for (std::size_t i = 0; i < plan.wishes.size(); ++i) wish_part(context, plan.wishes[i], i);
    if (button(ui, "wishes.add", context.say(Msg::kWishAdd), Weight::kPrimary))
      edit_raising(context, [](RaisingPlan& p) { p.wishes.push_back({}); });
  });
}

}  // namespace

Page raising_wishes_page() { return {"raising.wishes", Msg::kRaisingWishes, wishes_screen}; }

}  // namespace bentbook::screens
