#include "screens/shop/stock/sticks.h"

#include <algorithm>
#include <string>

#include "numeric/index.h"
#include "screens/form/drawing_form.h"
#include "screens/form/field_form.h"
#include "screens/shop/stock/yard.h"
#include "stock/held.h"
#include "stock/stick_drawing.h"
#include "stock/stock_csv.h"
#include "words/stock_words.h"

namespace bentbook::screens {
namespace {

std::string stick_title(const Context& context, const PlannedStick& stick) {
  return say(Msg::kStockStick, context.ui.language, std::to_string(stick.number)) + " · " +
         say_length(stick.length, voice_of(context));
}

bentbook::FigureText stick_figure(const Context& context, const StockOrder& order, const PlannedStick& stick,
                                  std::string_view key) {
  const Voice voice = voice_of(context);
  const auto n = static_cast<std::size_t>(std::stoi(std::string(key.substr(key.find(':') + 1))));
  if (key.starts_with("offcut"))
    return {say_length(stick.offcuts[n].length, voice), std::string(context.say(Msg::kStockOffcut))};
  const StickPiece& piece = stick.pieces[n];
  const std::string& mark = order.pieces[at(piece.piece)].mark;
  return {mark,
          say_length(piece.length, voice) + (piece.held ? " · " + std::string(context.say(Msg::kStockHeld)) : "")};
}

/// The stick as it is cut; a piece that is tapped leads to the stick's page.
bool stick_drawn(Context& context, const StockOrder& order, const StockGroup& group, const PlannedStick& stick,
                 float height) {
  const auto tapped = drawing_form(context, "stock.stick." + std::to_string(stick.number), stick_title(context, stick),
                                   height, stick_drawing(group.section, stick, context.desk.book().stock.trim),
                                   [&](std::string_view key) { return stick_figure(context, order, stick, key); });
  return tapped.has_value();
}

/// What keeps wood from being planned, each once; a price that is missing can be given here.
void troubles_part(Context& context, const std::vector<StockTrouble>& troubles) {
  int n = 0;
  for (const StockTrouble& trouble : troubles) {
    refusal(context.ui, "stock.trouble." + std::to_string(n++), stock_trouble_text(trouble, voice_of(context)));
    if (trouble.error.code == ErrorCode::kMissing) price_field(context);
  }
}

void totals_part(Context& context, const StockOrder& order) {
  Ui& ui = context.ui;
  const Voice voice = voice_of(context);
  const Book& book = context.desk.book();
  const StockTotals totals = totals_of(order);
  heading(ui, "stock.order", say_count(Msg::kStockSticks, ui.language, totals.bought));
  note(ui, "stock.proven",
       totals.proven ? std::string(context.say(Msg::kStockProven)) : bound_text(totals, book.stock.aim, voice));
  int n = 0;
  for (const OrderRow& row : order_rows(order))
    fact(ui, "stock.row." + std::to_string(n++), order_row_text(row, voice),
         std::to_string(row.count) + " × " + say_length(row.length, voice));
  fact(ui, "stock.wood", context.say(Msg::kStockWood), say_wood(totals.board_feet, voice), true);
  const Truck& truck = book.raising.truck;
  const Trips trips = trips_for(order, truck.length, truck.carries.lb());
  fact(ui, "stock.load", context.say(Msg::kStockLoad), say_weight(totals.weight_lb, voice));
  fact(ui, "stock.trips", context.say(Msg::kStockTrips), std::to_string(trips.loads));
  if (trips.over > 0) refusal(ui, "stock.over", say_count(Msg::kStockOver, ui.language, trips.over));
  fact(ui, "stock.waste", context.say(Msg::kStockWaste), say_length(totals.waste, voice), true);
  if (totals.kept.count > 0) fact(ui, "stock.kept", context.say(Msg::kStockKept), say_length(totals.kept, voice));
  if (totals.bought > 0 && totals.priced)
    fact(ui, "stock.cost", context.say(Msg::kStockCost), money_text(totals.price), true);
}

void share_part(Context& context, const StockOrder& order) {
  const auto share = [&](const char* key, Msg name, const std::string& bytes) {
    if (button(context.ui, key, context.say(name)))
      context.platform.share_file(context.desk.title() + " " + key + ".csv", "text/csv", bytes);
  };
  share("stock.share_order", Msg::kStockShareOrder, write_order_rows(order));
  share("stock.share_plan", Msg::kStockSharePlan, write_cutting_plan(order));
}

void sticks_part(Context& context, const StockOrder& order) {
  Ui& ui = context.ui;
  const Voice voice = voice_of(context);
  int n = 0;
  for (const StockGroup& group : order.groups) {
    if (group.trouble) continue;
    heading(ui, "stock.group." + std::to_string(n++), wood_text(group.section, group.species, voice));
    Abreast abreast(ui, 16, kRowAbreast);
    for (const PlannedStick& stick : group.sticks) {
      abreast.next();
      const bool row = list_row(ui, "stock.row_of." + std::to_string(stick.number), stick_title(context, stick),
                                stick_state_text(stick, context.ui.language));
      if (stick_drawn(context, order, group, stick, 72) || row) context.pages.push(shop_stick_page(stick.number));
    }
  }
}

void stock_screen(Context& context) {
  frame_page(context, "stock.page", [&](const ShownFrame& shown) {
    if (!shown.frame()) return frame_refused(context, shown);
    Ui& ui = context.ui;
    given_choice(
        context, "stock.aim", context.say(Msg::kStockAim),
        {context.say(Msg::kStockAimSticks), context.say(Msg::kStockAimWaste), context.say(Msg::kStockAimCost)});
    if (list_row(ui, "stock.to_yard", context.say(Msg::kStockYard), context.say(Msg::kStockYardNote)))
      context.pages.push(shop_yard_page());
    const StockOrder& order = stock_order(context, shown);
    if (order.trouble) return refusal(ui, "stock.trouble", stock_trouble_text(*order.trouble, voice_of(context)));
    if (!order.gone.empty())
      refusal(ui, "stock.gone", say_count(Msg::kStockGone, ui.language, static_cast<std::int64_t>(order.gone.size())));
    const std::vector<StockTrouble> troubles = troubles_of(order);
    troubles_part(context, troubles);
    if (!totals_of(order).planned) return;
    if (!troubles.empty()) note(ui, "stock.rest", context.say(Msg::kStockRest));
    totals_part(context, order);
    share_part(context, order);
    sticks_part(context, order);
  });
}

void stick_screen(Context& context) {
  frame_page(context, "stick.page", [&](const ShownFrame& shown) {
    if (!shown.frame()) return frame_refused(context, shown);
    Ui& ui = context.ui;
    const StockOrder& order = stock_order(context, shown);
    const int number = std::stoi(context.subject);
    for (const StockGroup& group : order.groups)
      for (const PlannedStick& stick : group.sticks) {
        if (stick.number != number) continue;
        heading(ui, "stick.title", stick_title(context, stick));
        note(ui, "stick.wood",
             wood_text(group.section, group.species, voice_of(context)) + " · " +
                 stick_state_text(stick, context.ui.language));
        (void)stick_drawn(context, order, group, stick, drawing_height(context, 120));
        if (toggle(ui, "stick.used", context.say(Msg::kStockMarkUsed), stick.used,
                   context.say(Msg::kStockMarkUsedNote)))
          return edit_book(context, [&](Book& b) { b.stock = with_stick_used(b.stock, order, number, !stick.used); });
        for (const StickPiece& piece : stick.pieces) {
          const std::string& mark = order.pieces[at(piece.piece)].mark;
          std::string length = say_length(piece.length, voice_of(context));
          if (stick.used)
            fact(ui, "stick.piece." + mark, mark, length);
          else if (toggle(ui, "stick.hold." + mark, say(Msg::kStockHoldPiece, ui.language, mark), piece.held, length))
            return edit_book(context,
                             [&](Book& b) { b.stock = with_piece_held(b.stock, order, number, mark, !piece.held); });
        }
        int n = 0;
        for (const Offcut& offcut : stick.offcuts)
          if (offcut.kept)
            fact(ui, "stick.offcut." + std::to_string(n++), context.say(Msg::kStockOffcut),
                 say_length(offcut.length, voice_of(context)));
        return;
      }
    body(ui, "stick.gone", context.say(Msg::kStockStickGone));
  });
}

}  // namespace

const StockOrder& stock_order(Context& context, const ShownFrame& shown) {
  ShopMemory::Stock& kept = context.shop_memory.stock;
  if (kept.of != shown.solved || !(kept.plan == shown.book.stock))
    kept = {shown.solved, shown.book.stock, plan_stock(pieces_of(*shown.frame()), shown.book.stock)};
  return kept.order;
}

Page shop_stock_page() { return {"shop.stock", Msg::kStockTitle, stock_screen}; }
Page shop_stick_page(int number) { return {"shop.stick", Msg::kStockTitle, stick_screen, std::to_string(number)}; }

}  // namespace bentbook::screens
