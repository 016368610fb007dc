#include "stock/order.h"

#include <algorithm>
#include <utility>

#include "frame/facts.h"
#include "numeric/index.h"
#include "numeric/sorting.h"
#include "stock/group.h"

namespace bentbook {
namespace {

/// Computed lengths are taken to a thousandth of a millimetre: what is alike is alike.
constexpr std::int64_t kAlike = 8'000;

std::optional<StockTrouble> trouble_with(const StockPlan& plan) {
  const auto wrong = [](ErrorCode code, const char* where, Length limit = {}) {
    return StockTrouble{{code, where, -1, limit.count}, {}};
  };
  if (plan.kerf.count < 0) return wrong(ErrorCode::kNegative, "stock_kerf");
  if (plan.trim.count < 0) return wrong(ErrorCode::kNegative, "stock_trim");
  if (plan.allowance.count < 0) return wrong(ErrorCode::kNegative, "stock_allowance");
  if (plan.step.count <= 0) return wrong(ErrorCode::kNotPositive, "stock_step");
  if (plan.shortest.count <= 0) return wrong(ErrorCode::kNotPositive, "stock_shortest");
  if (plan.longest < plan.shortest) return wrong(ErrorCode::kTooSmall, "stock_longest", plan.shortest);
  const std::int64_t span = plan.longest.count - plan.shortest.count;
  if (span / plan.step.count >= limits::kMostLengths)
    return wrong(ErrorCode::kTooSmall, "stock_step", {span / limits::kMostLengths + 1});
  for (std::size_t i = 0; i < plan.held.size(); ++i)
    for (std::size_t j = 0; j < i; ++j)
      if (plan.held[i].number == plan.held[j].number) return wrong(ErrorCode::kConflict, "stock_held");
  if (static_cast<int>(plan.lengths.size()) > limits::kMostLengths) return wrong(ErrorCode::kTooLarge, "stock_lengths");
  for (const Length length : plan.lengths)
    if (length.count <= 0) return wrong(ErrorCode::kNotPositive, "stock_lengths");
  std::int64_t lying = 0;
  for (const YardStick& stick : plan.yard) {
    if (stick.length.count <= 0) return wrong(ErrorCode::kNotPositive, "stock_yard");
    lying += stick.count * static_cast<std::int64_t>(stick.defects.size() + 1);
  }
  if (lying > limits::kMostYard) return wrong(ErrorCode::kTooLarge, "stock_yard");
  return std::nullopt;
}

/// In the order in which groups stand: largest section first, then by species.
bool comes_before(const StockPiece& a, const StockPiece& b) {
  const Section s = lying(a.section), t = lying(b.section);
  if (s.depth != t.depth) return s.depth > t.depth;
  if (s.breadth != t.breadth) return s.breadth > t.breadth;
  return a.species < b.species;
}

template <class Each>
void each_bought(const StockOrder& order, Each&& each) {
  for (const StockGroup& group : order.groups)
    for (const PlannedStick& stick : group.sticks)
      if (stick.yard.empty()) each(group, stick);
}

}  // namespace

std::vector<StockPiece> pieces_of(const Frame& frame) {
  std::vector<StockPiece> pieces;
  pieces.reserve(frame.timbers.size());
  for (const Timber& timber : frame.timbers) {
    const std::int64_t count = Length::from_inches(timber.length).count;
    pieces.push_back({timber.mark,
                      timber.wood.nominal,
                      timber.species.name,
                      {std::max<std::int64_t>((count + kAlike / 2) / kAlike, 1) * kAlike},
                      density_at(timber.species, timber.moisture)});
  }
  return pieces;
}

StockOrder plan_stock(std::vector<StockPiece> pieces, const StockPlan& plan) {
  StockOrder order;
  order.pieces = std::move(pieces);
  order.trouble = trouble_with(plan);
  if (order.trouble) return order;
  std::vector<int> in_order = sorted_order(
      order.pieces.size(), [&](int a, int b) { return comes_before(order.pieces[at(a)], order.pieces[at(b)]); });
  for (std::size_t i = 0; i < in_order.size();) {
    std::size_t end = i + 1;
    while (end < in_order.size() && !comes_before(order.pieces[at(in_order[i])], order.pieces[at(in_order[end])]))
      ++end;
    const std::vector<int> members(in_order.begin() + static_cast<std::ptrdiff_t>(i),
                                   in_order.begin() + static_cast<std::ptrdiff_t>(end));
    order.groups.push_back(plan_group(order.pieces, members, plan));
    i = end;
  }
  number_sticks(order, plan);
  for (const HeldStick& held : plan.held)
    for (const std::string& mark : held.marks) {
      const PlannedStick* stick = stick_of(order, mark);
      if (stick == nullptr || stick->number != held.number) order.gone.push_back(mark);
    }
  return order;
}

double board_feet_of(const Section& section, Length length) {
  return section.breadth.in() * section.depth.in() * length.in() / 144;
}

double stick_weight(const StockOrder& order, const StockGroup& group, const PlannedStick& stick) {
  double density = 0;
  for (const PlannedStick& other : group.sticks)
    for (const StickPiece& piece : other.pieces) density = std::max(density, order.pieces[at(piece.piece)].density);
  return group.section.breadth.in() * group.section.depth.in() * stick.length.in() / 1728 * density;
}

std::vector<OrderRow> order_rows(const StockOrder& order) {
  std::vector<OrderRow> rows;
  each_bought(order, [&](const StockGroup& group, const PlannedStick& stick) {
    const auto known = std::find_if(rows.begin(), rows.end(), [&](const OrderRow& row) {
      return row.section == group.section && row.species == group.species && row.length == stick.length;
    });
    OrderRow& row = known != rows.end() ? *known : rows.emplace_back();
    row.section = group.section;
    row.species = group.species;
    row.length = stick.length;
    row.to_order = stick.to_order;
    ++row.count;
    row.board_feet += board_feet_of(group.section, stick.length);
    row.price += stick.price;
  });
  const auto group_of = [&](const OrderRow& row) {
    for (std::size_t g = 0; g < order.groups.size(); ++g)
      if (order.groups[g].section == row.section && order.groups[g].species == row.species) return g;
    return order.groups.size();
  };
  sort_by(rows, [&](const OrderRow& a, const OrderRow& b) {
    return std::pair(group_of(a), a.length) < std::pair(group_of(b), b.length);
  });
  return rows;
}

StockTotals totals_of(const StockOrder& order) {
  StockTotals totals;
  for (const StockGroup& group : order.groups) {
    totals.counted += group.counted;
    totals.bound += group.bound;
    totals.planned |= !group.trouble;
    totals.proven &= group.trouble || group.proven();
    for (const PlannedStick& stick : group.sticks) {
      ++totals.sticks;
      totals.waste = totals.waste + stick.length;
      for (const StickPiece& piece : stick.pieces) totals.waste = totals.waste - order.pieces[at(piece.piece)].length;
      for (const Offcut& offcut : stick.offcuts)
        if (offcut.kept) totals.kept = totals.kept + offcut.length;
    }
  }
  totals.waste = totals.waste - totals.kept;
  totals.proven &= totals.planned;
  each_bought(order, [&](const StockGroup& group, const PlannedStick& stick) {
    ++totals.bought;
    totals.priced &= stick.price > 0;
    totals.price += stick.price;
    totals.board_feet += board_feet_of(group.section, stick.length);
    totals.weight_lb += stick_weight(order, group, stick);
  });
  return totals;
}

std::vector<StockTrouble> troubles_of(const StockOrder& order) {
  std::vector<StockTrouble> troubles;
  for (const StockGroup& group : order.groups) {
    if (!group.trouble) continue;
    const StockTrouble& own = *group.trouble;
    const bool said = own.error.code == ErrorCode::kMissing &&
                      std::any_of(troubles.begin(), troubles.end(), [&](const StockTrouble& other) {
                        return other.error.code == own.error.code && other.error.where == own.error.where;
                      });
    if (!said) troubles.push_back(own);
  }
  return troubles;
}

Trips trips_for(const StockOrder& order, Length bed, double carries) {
  std::vector<double> weights;
  Trips trips;
  each_bought(order, [&](const StockGroup& group, const PlannedStick& stick) {
    weights.push_back(stick_weight(order, group, stick));
    if (stick.length > bed || weights.back() > carries) ++trips.over;
  });
  sort_by(weights, [](double a, double b) { return a > b; });
  std::vector<double> loads;
  for (const double weight : weights) {
    const auto roomy = std::find_if(loads.begin(), loads.end(), [&](double load) { return load + weight <= carries; });
    if (roomy != loads.end())
      *roomy += weight;
    else
      loads.push_back(weight);
  }
  trips.loads = static_cast<int>(loads.size());
  return trips;
}

const PlannedStick* stick_of(const StockOrder& order, std::string_view mark) {
  for (const StockGroup& group : order.groups)
    for (const PlannedStick& stick : group.sticks)
      for (const StickPiece& piece : stick.pieces)
        if (order.pieces[at(piece.piece)].mark == mark) return &stick;
  return nullptr;
}

}  // namespace bentbook
