#include "shop/log/conflicts.h"

#include <utility>

#include "numeric/sorting.h"

namespace bentbook {
namespace {

/// What of a claim must agree: of a reading the measure alone.
std::string_view essence(const Claim& c) {
  const std::string_view value = c.value;
  return c.action == EventAction::kMeasured ? value.substr(0, value.find(' ')) : value;
}

/// Claims of one step by action, in their order.
using Sides = std::vector<const Claim*>;

Sides of_action(const StepState& step, EventAction action) {
  Sides sides;
  for (const Claim& c : step.claims)
    if (c.action == action) sides.push_back(&c);
  return sides;
}

/// The first of the others that does not go with this one, or nullptr.
template <class Differs>
const Claim* first_unlike(const Claim& claim, const Sides& others, Differs differs) {
  for (const Claim* c : others)
    if (differs(claim, *c)) return c;
  return nullptr;
}

class StepConflicts {
 public:
  StepConflicts(const TimberState& timber, const StepState& step, std::vector<Conflict>& found)
      : timber_(timber), step_(step), found_(found) {}

  void find() {
    between(ConflictKind::kFinishedTwice, EventAction::kDone, EventAction::kDone, other_device);
    between(ConflictKind::kHeldAndPassed, EventAction::kHeld, EventAction::kPassed, other_device);
    for (const EventAction action :
         {EventAction::kMeasured, EventAction::kPlate, EventAction::kWitness, EventAction::kStock})
      between(ConflictKind::kValuesDiffer, action, action,
              [](const Claim& a, const Claim& b) { return other_device(a, b) && essence(a) != essence(b); });
    between(ConflictKind::kWrongPlate, EventAction::kPlate, EventAction::kPaired,
            [](const Claim& a, const Claim& b) { return a.value != b.value; });
  }

 private:
  static bool other_device(const Claim& a, const Claim& b) { return a.id.device != b.id.device; }

  /// One conflict if any claim of one action does not go with any of the other. Going with one another is going with
  /// the same (a device speaks once of what has one value): if any two do not, one does not go with the other's first.
  template <class Differs>
  void between(ConflictKind kind, EventAction one, EventAction other, Differs differs) {
    const Sides a = of_action(step_, one), b = one == other ? a : of_action(step_, other);
    if (a.empty() || b.empty()) return;
    const Claim *first = a[0], *second = first_unlike(*first, b, differs);
    if (second == nullptr) {
      second = b[0];
      first = first_unlike(*second, a, [&](const Claim& y, const Claim& x) { return differs(x, y); });
    }
    if (first == nullptr) return;
    Conflict c{kind,          timber_.mark, step_.step, first->id, second->id, first->value,
               second->value, {},           {},         a.size(),  {}};
    if (one != other) c.sides += b.size();
    name_sides(c, a);
    if (one != other) name_sides(c, b);
    found_.push_back(std::move(c));
  }

  static void name_sides(Conflict& c, const Sides& sides) {
    for (std::size_t i = 0; i < sides.size() && c.who.size() < kNamedSides; ++i) c.who.push_back(sides[i]->who);
  }

  const TimberState& timber_;
  const StepState& step_;
  std::vector<Conflict>& found_;
};

struct PlateAt {
  const TimberState* timber;
  const StepState* step;
  const Claim* claim;
};

std::vector<PlateAt> plates_of(const ShopState& state) {
  std::vector<PlateAt> plates;
  for (const TimberState& timber : state.timbers)
    for (const StepState& step : timber.steps)
      for (const Claim& c : step.claims)
        if (c.action == EventAction::kPlate) plates.push_back({&timber, &step, &c});
  return plates;
}

void find_plates_twice(const ShopState& state, std::vector<Conflict>& found) {
  std::vector<PlateAt> plates = plates_of(state);
  sort_by(plates, [](const PlateAt& a, const PlateAt& b) { return a.claim->value < b.claim->value; });
  for (std::size_t from = 0, to = 0; from < plates.size(); from = to) {
    const PlateAt& a = plates[from];
    const PlateAt* other = nullptr;
    std::size_t places = 1;
    for (to = from + 1; to < plates.size() && plates[to].claim->value == a.claim->value; ++to) {
      if (plates[to].step == plates[to - 1].step) continue;  // two phones' word on one place
      ++places;
      if (other == nullptr) other = &plates[to];
    }
    if (other == nullptr) continue;
    Conflict c{ConflictKind::kPlateTwice,
               a.timber->mark,
               a.step->step,
               a.claim->id,
               other->claim->id,
               a.claim->value,
               other->claim->value,
               other->timber->mark,
               other->step->step,
               places,
               {}};
    for (std::size_t i = from; i < to && c.who.size() < kNamedSides; ++i) c.who.push_back(plates[i].claim->who);
    found.push_back(std::move(c));
  }
}

/// What the log itself lacks or has twice: one conflict of each kind.
void find_in_log(const ShopState& state, std::vector<Conflict>& found) {
  if (!state.twice.empty()) {
    const EventId id = state.twice.front();
    found.push_back({ConflictKind::kNumberTwice, {}, {}, id, id, {}, {}, {}, {}, state.twice.size(), {}});
  }
  Conflict missing{ConflictKind::kEventsMissing, {}, {}, {}, {}, {}, {}, {}, {}, 0, {}};
  for (const auto& [device, d] : state.devices) {
    if (d.whole == d.last) continue;
    if (missing.sides++ > 0) continue;
    missing.first = {device, d.whole + 1};
    missing.second = {device, d.last};
  }
  if (missing.sides > 0) found.push_back(std::move(missing));
}

}  // namespace

std::vector<Conflict> conflicts_of(const ShopState& state) {
  std::vector<Conflict> found;
  for (const TimberState& timber : state.timbers)
    for (const StepState& step : timber.steps) StepConflicts(timber, step, found).find();
  find_plates_twice(state, found);
  find_in_log(state, found);
  return found;
}

PairingAnswer check_pairing(const ShopState& state, std::string_view timber, std::string_view step,
                            std::string_view plate) {
  PairingAnswer answer;
  for (const PlateAt& at : plates_of(state)) {
    const bool here = at.timber->mark == timber && at.step->step == step;
    if (here) {
      answer.recorded = at.claim->value;
      answer.pairing = at.claim->value == plate ? Pairing::kMatches : Pairing::kOther;
    } else if (at.claim->value == plate) {
      answer.other_timber = at.timber->mark;
      answer.other_step = at.step->step;
    }
  }
  // A number that is known at another place does not belong here, whatever is recorded.
  if (answer.pairing == Pairing::kNotRecorded && !answer.other_timber.empty()) answer.pairing = Pairing::kOther;
  return answer;
}

}  // namespace bentbook
