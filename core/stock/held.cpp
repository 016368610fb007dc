#include "stock/held.h"

#include <algorithm>

#include "numeric/index.h"

namespace bentbook {
namespace {

struct Found {
  const StockGroup* group = nullptr;
  const PlannedStick* stick = nullptr;
};
Found find_stick(const StockOrder& order, int number) {
  for (const StockGroup& group : order.groups)
    for (const PlannedStick& stick : group.sticks)
      if (stick.number == number) return {&group, &stick};
  return {};
}

/// The held stick of that number, begun where there is none yet.
HeldStick& held_stick(StockPlan& plan, const Found& found) {
  const auto known = std::find_if(plan.held.begin(), plan.held.end(),
                                  [&](const HeldStick& held) { return held.number == found.stick->number; });
  if (known != plan.held.end()) return *known;
  HeldStick held;
  held.number = found.stick->number;
  held.section = found.group->section;
  held.species = found.group->species;
  held.length = found.stick->length;
  held.yard = found.stick->yard;
  plan.held.push_back(std::move(held));
  return plan.held.back();
}

}  // namespace

StockPlan with_piece_held(StockPlan plan, const StockOrder& order, int number, std::string_view mark, bool held) {
  for (HeldStick& stick : plan.held) std::erase(stick.marks, mark);
  if (const Found found = find_stick(order, number); held && found.stick != nullptr)
    held_stick(plan, found).marks.emplace_back(mark);
  std::erase_if(plan.held, [](const HeldStick& stick) { return stick.marks.empty() && !stick.used; });
  return plan;
}

StockPlan with_stick_used(StockPlan plan, const StockOrder& order, int number, bool used) {
  const Found found = find_stick(order, number);
  if (found.stick == nullptr) return plan;
  if (!used) {
    std::erase_if(plan.held, [&](const HeldStick& stick) { return stick.number == number; });
    return plan;
  }
  for (const StickPiece& piece : found.stick->pieces)
    plan = with_piece_held(std::move(plan), order, number, order.pieces[at(piece.piece)].mark, true);
  held_stick(plan, found).used = true;
  return plan;
}

}  // namespace bentbook
