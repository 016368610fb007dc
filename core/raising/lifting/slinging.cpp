#include "raising/lifting/slinging.h"

#include <algorithm>

#include "numeric/sorting.h"
#include "raising/limits.h"

namespace bentbook {
namespace {

/// How a sling of the user's would carry it.
struct Try {
  int sling = -1;
  Hang hang;
  const PickWay* way = nullptr;
  double carries = 0;
  bool choked = false;
  [[nodiscard]] bool good() const { return hang.least_angle >= limits::kSlingWarn && hang.most_tension <= carries; }
  /// What is worse than good, for a choice among bad ones.
  [[nodiscard]] double share() const { return carries > 0 ? hang.most_tension / carries : 1e9; }
};

std::vector<Vec3> points_of(const PickWay& way) {
  std::vector<Vec3> points;
  for (const PickSpot& spot : way.spots) points.push_back(spot.point);
  return points;
}

class Slinging {
 public:
  Slinging(const RaisingPlan& plan, Pick& pick, const PickPoints& points) : plan_(plan), pick_(pick), points_(points) {}

  void solve() {
    if (points_.ways.empty()) return note(PickNoteId::kNoPoints);
    legs_ = points_.ways[0].spots.size();
    std::optional<Try> best = best_sling();
    if ((!best || !best->good()) && legs_ == 2 && by_spreader()) return finish();
    if (best) {
      take(*best);
    } else {
      without_slings();
    }
    finish();
  }

 private:
  void note(PickNoteId id, double value = 0, double value2 = 0) { pick_.notes.push_back({id, value, value2}); }

  [[nodiscard]] const LiftingGear& gear(std::size_t i) const { return plan_.gear[i]; }
  static double carries(const LiftingGear& sling) {
    return sling.choked.count > 0 ? sling.choked.lb() : sling.rated.lb();
  }

  /// Indices of gear of a kind, the lightest first.
  [[nodiscard]] std::vector<std::size_t> lightest(GearKind kind) const {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < plan_.gear.size(); ++i)
      if (gear(i).kind == kind && gear(i).count > 0) found.push_back(i);
    sort_by(found, [&](std::size_t a, std::size_t b) {
      const auto of = [&](std::size_t g) { return kind == GearKind::kSling ? carries(gear(g)) : gear(g).rated.lb(); };
      return of(a) < of(b);
    });
    return found;
  }

  [[nodiscard]] std::optional<Try> with_sling(std::size_t g) const {
    if (gear(g).length.in() < points_.clear) return std::nullopt;
    Try best;
    best.sling = static_cast<int>(g);
    best.choked = gear(g).choked.count > 0;
    best.carries = carries(gear(g));
    for (const PickWay& way : points_.ways) {
      const auto hang = hang_on_legs(points_of(way), points_.cg, points_.up, pick_.weight_lb, gear(g).length.in());
      if (!hang || hang->above_cg <= 0) continue;
      const bool flat = best.way != nullptr && best.hang.least_angle < limits::kSlingWarn;
      if (best.way == nullptr || (flat && hang->least_angle > best.hang.least_angle) ||
          hang->least_angle >= limits::kSlingWanted) {
        best.hang = *hang;
        best.way = &way;
      }
      if (best.hang.least_angle >= limits::kSlingWanted) break;
    }
    return best.way != nullptr ? std::optional(best) : std::nullopt;
  }

  [[nodiscard]] std::optional<Try> best_sling() const {
    std::optional<Try> best;
    for (const std::size_t g : lightest(GearKind::kSling)) {
      if (static_cast<std::size_t>(gear(g).count) < legs_) continue;
      auto now = with_sling(g);
      if (!now) continue;
      if (now->good()) return now;
      if (!best || now->share() < best->share()) best = now;
    }
    return best;
  }

  void put_legs(const PickWay& way, const Hang& hang) {
    for (std::size_t i = 0; i < way.spots.size(); ++i) {
      const PickSpot& spot = way.spots[i];
      const SlingLeg& leg = hang.legs[i];
      pick_.legs.push_back({spot.timber, spot.station, spot.world, leg.length, leg.from_level, leg.tension});
    }
    pick_.least_angle = hang.least_angle;
    pick_.most_tension = hang.most_tension;
    if (hang.above_cg <= 0) note(PickNoteId::kTurnsOver, hang.above_cg);
    if (hang.lean > limits::kMostLean) note(PickNoteId::kLeans, hang.lean);
  }

  void take(const Try& best) {
    pick_.sling = best.sling;
    pick_.sling_carries = best.carries;
    pick_.choked = best.choked;
    put_legs(*best.way, best.hang);
    if (best.hang.most_tension > best.carries) note(PickNoteId::kSlingWeak, best.hang.most_tension, best.carries);
    if (!best.choked) note(PickNoteId::kNeedsFitting, best.hang.most_tension);
  }

  /// A spreader's legs hang plumb at its ends.
  bool by_spreader() {
    for (const std::size_t s : lightest(GearKind::kSpreader)) {
      const double half = gear(s).length.in() / 2;
      if (gear(s).rated.lb() < pick_.weight_lb || half <= 0 || half > points_.reach) continue;
      const auto way = points_.way_at(half);
      if (!way) continue;
      // Plumb: a hook so high that the legs' slant is nothing.
      auto hang = hang_on_legs(points_of(*way), points_.cg, points_.up, pick_.weight_lb, 1e7);
      if (!hang || hang->above_cg <= 0) continue;
      for (const std::size_t g : lightest(GearKind::kSling)) {
        if (gear(g).count < 2 || carries(gear(g)) < hang->most_tension) continue;
        for (SlingLeg& leg : hang->legs) leg.length = gear(g).length.in(), leg.from_level = 90;
        hang->least_angle = 90;
        pick_.spreader = static_cast<int>(s);
        take({static_cast<int>(g), *hang, &*way, carries(gear(g)), gear(g).choked.count > 0});
        note(PickNoteId::kSpreader);
        return true;
      }
    }
    return false;
  }

  /// The figures of what is wanted.
  void without_slings() {
    std::optional<Hang> wanted;
    const PickWay* at = nullptr;
    for (const PickWay& way : points_.ways) {
      wanted = hang_at_angle(points_of(way), points_.cg, points_.up, pick_.weight_lb, limits::kSlingWanted);
      at = &way;
      if (wanted && wanted->above_cg > 0) break;
    }
    if (!wanted) return note(PickNoteId::kNoPoints);
    for (SlingLeg& leg : wanted->legs) leg.length = std::max(leg.length, points_.clear);
    put_legs(*at, *wanted);
    double longest = 0, most = 0;
    for (const SlingLeg& leg : wanted->legs) longest = std::max(longest, leg.length);
    bool any = false, enough = false;
    double reach = 0;
    for (const LiftingGear& g : plan_.gear) {
      if (g.kind != GearKind::kSling || g.count <= 0) continue;
      any = true;
      most = std::max(most, static_cast<double>(g.count));
      enough = enough || static_cast<std::size_t>(g.count) >= legs_;
      reach = std::max(reach, g.length.in());
    }
    if (!any) return note(PickNoteId::kNoSlings, wanted->most_tension, longest);
    if (!enough) return note(PickNoteId::kSlingsFew, static_cast<double>(legs_), most);
    note(PickNoteId::kSlingShort, longest, reach);
  }

  void shackles() {
    const auto all = lightest(GearKind::kShackle);
    if (all.empty()) return note(PickNoteId::kNoShackles);
    double most = 0;
    for (const std::size_t s : all) {
      if (static_cast<std::size_t>(gear(s).count) < legs_) continue;
      most = std::max(most, gear(s).rated.lb());
      if (gear(s).rated.lb() < pick_.most_tension || pick_.shackle >= 0) continue;
      pick_.shackle = static_cast<int>(s);
    }
    if (pick_.shackle < 0) note(PickNoteId::kShackleWeak, pick_.most_tension, most);
  }

  void finish() {
    shackles();
    if (legs_ == 4) note(PickNoteId::kTwoOfFour);
    if (pick_.least_angle < limits::kSlingRefuse)
      note(PickNoteId::kAngleTooFlat, pick_.least_angle);
    else if (pick_.least_angle < limits::kSlingWarn)
      note(PickNoteId::kAngleFlat, pick_.least_angle);
    double shortest = 1e9, longest = 0;
    for (const PickLeg& leg : pick_.legs)
      shortest = std::min(shortest, leg.length), longest = std::max(longest, leg.length);
    if (pick_.spreader < 0 && longest - shortest > limits::kMostTakeUp) note(PickNoteId::kTakeUp, longest - shortest);
    if (legs_ == 2 && libm::fabs(pick_.hang_degrees) > limits::kMostTilt) note(PickNoteId::kSlides, pick_.hang_degrees);
  }

  const RaisingPlan& plan_;
  Pick& pick_;
  const PickPoints& points_;
  std::size_t legs_ = 0;
};

}  // namespace

void sling_up(const RaisingPlan& plan, const PickPoints& points, Pick& pick) { Slinging(plan, pick, points).solve(); }

}  // namespace bentbook
