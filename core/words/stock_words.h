#pragma once
/// Words of stock, in the user's language.

#include "stock/order.h"
#include "words/frame_words.h"

namespace bentbook {

/// What keeps sticks from being planned, with what would do.
[[nodiscard]] inline std::string stock_trouble_text(const StockTrouble& trouble, const Voice& voice) {
  const Error& error = trouble.error;
  if (error.where == "stock_piece")
    return say(Msg::kStockTooLong, voice.language,
               {{"mark", trouble.mark}, {"limit", say_length_at_most({error.limit}, voice)}});
  return frame_error_text(error, voice);
}

/// "8 x 8 · Douglas-fir"; a piece of no section has none.
[[nodiscard]] inline std::string wood_text(const Section& section, std::string_view species, const Voice& voice) {
  std::string out = section.depth.count > 0 ? section_text(section, voice) : std::string{};
  if (!species.empty()) out += (out.empty() ? "" : voice.marks == Marks::kScreen ? " · " : ", ") + std::string(species);
  return out;
}

/// What an order's row is of; "8 x 10 · Douglas-fir · sawn to order".
[[nodiscard]] inline std::string order_row_text(const OrderRow& row, const Voice& voice) {
  std::string out = wood_text(row.section, row.species, voice);
  if (row.to_order) (out += voice.marks == Marks::kScreen ? " · " : ", ") += text(Msg::kStockToOrder, voice.language);
  return out;
}

/// Whether it is used, in the yard, to be sawn to order or bought.
[[nodiscard]] inline std::string stick_state_text(const PlannedStick& stick, Language language) {
  if (stick.used) return std::string(text(Msg::kStockUsed, language));
  if (!stick.yard.empty()) return say(Msg::kStockOfYard, language, stick.yard);
  return std::string(text(stick.to_order ? Msg::kStockToOrder : Msg::kStockToBuy, language));
}

/// Hundredths as money, of no currency.
[[nodiscard]] inline std::string money_text(std::int64_t hundredths) {
  return print_fixed(static_cast<double>(hundredths) / 100, 2);
}

/// What the best plan that was found comes to, and what no plan is below, as the aim counts.
[[nodiscard]] inline std::string bound_text(const StockTotals& totals, StockAim aim, const Voice& voice) {
  const auto counted = [&](std::int64_t n) {
    return aim == StockAim::kSticks  ? std::to_string(n)
           : aim == StockAim::kWaste ? say_length({n}, voice)
                                     : money_text(n);
  };
  return say(Msg::kStockNotProven, voice.language,
             {{"found", counted(totals.counted)}, {"bound", counted(totals.bound)}});
}

}  // namespace bentbook
