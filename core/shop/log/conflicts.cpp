#include "shop/log/conflicts.h"

#include "numeric/sorting.h"

namespace bentbook {
namespace {

bool one_value(EventAction action) {
  return action == EventAction::kMeasured || action == EventAction::kPlate || action == EventAction::kWitness ||
         action == EventAction::kStock;
}

/// What of a claim must agree: of a reading the measure alone.
std::string_view essence(const Claim& c) {
  const std::string_view value = c.value;
  return c.action == EventAction::kMeasured ? value.substr(0, value.find(' ')) : value;
}

/// kFinishedTwice … kWrongPlate between two claims on one step, or nothing.
bool disagree(const Claim& a, const Claim& b, ConflictKind& kind) {
  if (a.id.device == b.id.device && !(a.action == EventAction::kPlate && b.action == EventAction::kPaired))
    return false;
  if (a.action == EventAction::kDone && b.action == EventAction::kDone) {
    kind = ConflictKind::kFinishedTwice;
    return true;
  }
  if (a.action == EventAction::kHeld && b.action == EventAction::kPassed) {
    kind = ConflictKind::kHeldAndPassed;
    return true;
  }
  if (a.action == b.action && one_value(a.action) && essence(a) != essence(b)) {
    kind = ConflictKind::kValuesDiffer;
    return true;
  }
  if (a.action == EventAction::kPlate && b.action == EventAction::kPaired && a.value != b.value) {
    kind = ConflictKind::kWrongPlate;
    return true;
  }
  return false;
}

void find_in_step(const TimberState& timber, const StepState& step, std::vector<Conflict>& found) {
  const std::vector<Claim>& claims = step.claims;
  for (std::size_t i = 0; i < claims.size(); ++i)
    for (std::size_t k = 0; k < claims.size(); ++k) {
      ConflictKind kind{};
      if (i == k || (claims[i].action == claims[k].action && k < i) || !disagree(claims[i], claims[k], kind)) continue;
      found.push_back(
          {kind, timber.mark, step.step, claims[i].id, claims[k].id, claims[i].value, claims[k].value, {}, {}});
    }
}

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
  for (std::size_t i = 1; i < plates.size(); ++i) {
    const PlateAt &a = plates[i - 1], &b = plates[i];
    if (a.claim->value != b.claim->value || a.step == b.step) continue;
    found.push_back({ConflictKind::kPlateTwice, a.timber->mark, a.step->step, a.claim->id, b.claim->id, a.claim->value,
                     b.claim->value, b.timber->mark, b.step->step});
  }
}

}  // namespace

std::vector<Conflict> conflicts_of(const ShopState& state) {
  std::vector<Conflict> found;
  for (const TimberState& timber : state.timbers)
    for (const StepState& step : timber.steps) find_in_step(timber, step, found);
  find_plates_twice(state, found);
  for (const EventId& id : state.twice) found.push_back({ConflictKind::kNumberTwice, {}, {}, id, id, {}, {}, {}, {}});
  for (const DeviceState& d : state.devices)
    if (d.whole < d.last)
      found.push_back(
          {ConflictKind::kEventsMissing, {}, {}, {d.device, d.whole + 1}, {d.device, d.last}, {}, {}, {}, {}});
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
