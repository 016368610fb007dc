#include "stock/plan.h"

#include <algorithm>

#include "numeric/sorting.h"

namespace bentbook {

std::vector<Length> lengths_sold(const StockPlan& plan) {
  std::vector<Length> sold = plan.lengths;
  if (sold.empty())
    for (Length n = plan.shortest; n <= plan.longest; n = n + plan.step) sold.push_back(n);
  sort_up(sold);
  sold.erase(std::unique(sold.begin(), sold.end()), sold.end());
  return sold;
}

StockPlan metric_stock() {
  StockPlan plan;
  plan.shortest = Length::mm(3000);
  plan.longest = Length::mm(6000);
  plan.step = Length::mm(600);
  plan.kerf = Length::mm(4);
  plan.trim = Length::mm(25);
  plan.keep = Length::mm(1200);
  plan.priced_by = PricedBy::kCubicMetre;
  return plan;
}

}  // namespace bentbook
