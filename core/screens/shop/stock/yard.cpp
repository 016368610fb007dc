#include "screens/shop/stock/yard.h"

#include <algorithm>
#include <string>

#include "screens/form/field_form.h"
#include "screens/frame/form.h"

namespace bentbook::screens {
namespace {

void stick_in_yard(Context& context, std::size_t i) {
  Ui& ui = context.ui;
  const YardStick& stick = context.desk.book().stock.yard[i];
  const std::string root = "stock.yard." + std::to_string(i) + ".";
  heading(ui, root + "title", stick.name + (stick.species.empty() ? "" : " · " + stick.species));
  given_field(context, root + "section.breadth", context.say(Msg::kStockBreadth));
  given_field(context, root + "section.depth", context.say(Msg::kStockDepth));
  given_field(context, root + "length", context.say(Msg::kFieldLength));
  given_field(context, root + "count", context.say(Msg::kStockCount));
  for (std::size_t d = 0; d < stick.defects.size(); ++d) {
    const std::string at = root + "defects." + std::to_string(d) + ".";
    given_field(context, at + "from", context.say(Msg::kStockDefectFrom));
    given_field(context, at + "to", context.say(Msg::kStockDefectTo));
  }
  if (button(ui, root + "defect", context.say(Msg::kStockAddDefect)))
    edit_book(context, [&](Book& b) { b.stock.yard[i].defects.push_back({Length::feet(4), Length::feet(5)}); });
  if (button(ui, root + "drop", say(Msg::kStockDropYard, ui.language, stick.name), Weight::kDestructive))
    edit_book(context, [&](Book& b) { b.stock.yard.erase(b.stock.yard.begin() + static_cast<std::ptrdiff_t>(i)); });
}

/// A name that no other stick in the yard has.
std::string fresh_name(const StockPlan& plan) {
  for (int n = 1;; ++n) {
    std::string name = "Y" + std::to_string(n);
    if (std::none_of(plan.yard.begin(), plan.yard.end(), [&](const YardStick& s) { return s.name == name; }))
      return name;
  }
}

void yard_screen(Context& context) {
  frame_page(context, "yard.page", [&](const ShownFrame&) {
    Ui& ui = context.ui;
    const StockPlan& plan = context.desk.book().stock;
    heading(ui, "yard.sold", context.say(Msg::kStockSold));
    given_field(context, "stock.shortest", context.say(Msg::kFieldStockShortest));
    given_field(context, "stock.longest", context.say(Msg::kFieldStockLongest));
    given_field(context, "stock.step", context.say(Msg::kFieldStockStep));
    given_flag(context, "stock.longer", context.say(Msg::kStockLonger), context.say(Msg::kStockLongerNote));
    given_choice(context, "stock.priced_by", context.say(Msg::kStockPricedBy),
                 {context.say(Msg::kStockPerBoardFoot), context.say(Msg::kStockPerCubicMetre)});
    price_field(context);
    heading(ui, "yard.taken", context.say(Msg::kStockTaken));
    given_field(context, "stock.kerf", context.say(Msg::kFieldStockKerf));
    given_field(context, "stock.trim", context.say(Msg::kFieldStockTrim));
    given_field(context, "stock.allowance", context.say(Msg::kFieldStockAllowance));
    given_field(context, "stock.keep", context.say(Msg::kStockKeepFrom));
    heading(ui, "yard.lying", context.say(Msg::kStockLying));
    note(ui, "yard.lying_note", context.say(Msg::kStockLyingNote));
    for (std::size_t i = 0; i < plan.yard.size(); ++i) stick_in_yard(context, i);
    if (button(ui, "yard.add", context.say(Msg::kStockAddYard)))
      edit_book(context, [&](Book& b) {
        YardStick stick;
        stick.name = fresh_name(b.stock);
        stick.section = b.frame.sections.post;
        stick.species = b.frame.species.name;
        stick.length = b.stock.longest;
        b.stock.yard.push_back(std::move(stick));
      });
  });
}

}  // namespace

void price_field(Context& context) {
  const bool by_foot = context.desk.book().stock.priced_by == PricedBy::kBoardFoot;
  given_field(context, "stock.price", context.say(by_foot ? Msg::kStockPriceFoot : Msg::kStockPriceMetre));
}

Page shop_yard_page() { return {"shop.yard", Msg::kStockYard, yard_screen}; }

}  // namespace bentbook::screens
