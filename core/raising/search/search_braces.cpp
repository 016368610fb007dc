#include "raising/search/search_braces.h"

#include <algorithm>

#include "numeric/index.h"
#include "numeric/sorting.h"
#include "raising/limits.h"
#include "raising/stability/mechanism.h"

namespace bentbook {
namespace {

constexpr int kMost = 10;         ///< braces in one step
constexpr double kStation = 12;   ///< inches between the places on a timber that are looked at
constexpr double kEnough = 0.05;  ///< least change of length, against the fastest point's travel

/// By timber of the frame; what does not stand stays.
using Motion = std::vector<TimberMotion>;

Vec3 speed(const StandingModel& model, const TimberMotion& m, Vec3 p) {
  return m.move + cross(m.turn, p - model.bodies[at(m.timber)].cg);
}

struct Place {
  int timber = 0;
  double station = 0;
  Vec3 point, speed;
};

class Bracer {
 public:
  Bracer(StandingModel& model, const Frame& frame, StandingRun& run, std::span<const int> timbers,
         std::span<const int> up)
      : model_(model), frame_(frame), run_(run), timbers_(timbers.begin(), timbers.end()), up_(up.begin(), up.end()) {
    rigid_ = rigid_joints(model);
  }

  std::vector<int> find() {
    std::vector<int> added;
    for (int i = 0; i <= kMost; ++i) {
      Motion motion;
      if (!next_motion(motion)) return pruned(added);
      const int brace = i < kMost ? best_against(motion) : -1;
      if (brace < 0 || std::binary_search(up_.begin(), up_.end(), brace)) return {};
      added.push_back(brace);
      up_.insert(std::lower_bound(up_.begin(), up_.end(), brace), brace);
    }
    return {};
  }

 private:
  /// How it would move; false: it stands.
  bool next_motion(Motion& motion) {
    const StandingSet set = standing_set(model_, timbers_, up_);
    const Mechanisms found = mechanisms_of(model_, set, rigid_, true);
    if (found.count > 0) {
      motion = found.modes.front();
      return true;
    }
    const StandingCheck check = run_.check(timbers_, up_, StandingDepth::kStands);
    if (check.stands()) return false;
    motion = check.fall;
    return true;
  }
  [[nodiscard]] Place place_on(int t, double station, const TimberMotion& motion) const {
    const Placement& own = frame_.timbers[at(t)].at;
    const Vec3 p = own.origin + station * own.x;
    return {t, station, p, speed(model_, motion, p)};
  }
  std::vector<Place> places_on(int t, const TimberMotion& motion) const {
    const double length = frame_.timbers[at(t)].length;
    std::vector<Place> places;
    const int count = std::max(1, static_cast<int>(length / kStation));
    for (int i = 0; i <= count; ++i) {
      const double inset = std::min(6.0, length / 4);
      const double x = inset + (length - 2 * inset) * i / count;
      places.push_back(place_on(t, libm::floor(x + 0.5), motion));
    }
    return places;
  }

  struct Best {
    double score = 0;
    Temporary brace;
  };
  /// The thinner stock that is long enough, a 2x or a 4x.
  void try_one(const Place& from, Vec3 to, Vec3 to_speed, double most, Temporary brace, Best& best) const {
    const Vec3 along = to - from.point;
    const double length = norm(along);
    if (length < limits::kShortestBrace) return;
    const bool thick = length > limits::kMostSlenderness * 1.5 - 1;
    brace.thickness = thick ? Length::inches(7, 2) : Length::inches(3, 2);
    if (length > limits::kMostSlenderness * brace.thickness.in() - 1) return;
    const double change = libm::fabs(dot(along, from.speed - to_speed)) / length / most;
    // Shorter and thinner ones, where they do as much.
    const double score = change * (1 - 0.2 * length / 262) * (thick ? 0.8 : 1);
    if (change < kEnough || score <= best.score + 1e-9) return;
    best = {score, brace};
  }
  void try_ground(const Place& from, double most, Best& best) const {
    const double height = from.point.z - model_.ground_z;
    if (height < 12) return;
    for (const Vec3& d : {Vec3{1, 0, 0}, Vec3{-1, 0, 0}, Vec3{0, 1, 0}, Vec3{0, -1, 0}}) {
      Temporary brace;
      brace.from = {frame_.timbers[at(from.timber)].mark, Length::from_inches(from.station)};
      const auto whole = [](double v) { return libm::floor(v + 0.5); };
      const Vec3 stake{whole(from.point.x + height * d.x), whole(from.point.y + height * d.y), model_.ground_z};
      brace.ground_x = Length::from_inches(stake.x);
      brace.ground_y = Length::from_inches(stake.y);
      brace.ground_z = Length::from_inches(stake.z);
      try_one(from, stake, {}, most, brace, best);
    }
  }

  int best_against(const Motion& motion) {
    // The fastest timber by its ends, and what stands near it.
    std::vector<const TimberMotion*> by_timber(frame_.timbers.size(), nullptr);
    const TimberMotion* fastest = nullptr;
    double most = 0;
    for (const TimberMotion& m : motion) {
      by_timber[at(m.timber)] = &m;
      const double ends = std::max(norm(speed(model_, m, model_.bodies[at(m.timber)].end_a)),
                                   norm(speed(model_, m, model_.bodies[at(m.timber)].end_b)));
      if (ends > most * (1 + 1e-9)) {
        most = ends;
        fastest = &m;
      }
    }
    if (fastest == nullptr || !(most > 0)) return -1;
    Best best;
    for (const TimberMotion& m : motion) {
      const double ends = std::max(norm(speed(model_, m, model_.bodies[at(m.timber)].end_a)),
                                   norm(speed(model_, m, model_.bodies[at(m.timber)].end_b)));
      if (ends < 0.5 * most) continue;
      for (const Place& from : places_on(m.timber, m)) {
        try_ground(from, most, best);
        if (m.timber == fastest->timber) try_timbers(from, most, by_timber, best);
      }
    }
    return best.score > 0 ? number_of(best.brace) : -1;
  }
  void try_timbers(const Place& from, double most, const std::vector<const TimberMotion*>& by_timber,
                   Best& best) const {
    for (const int other : timbers_) {
      if (other == from.timber) continue;
      const TimberMotion still{other, {}, {}};
      const TimberMotion& motion = by_timber[at(other)] != nullptr ? *by_timber[at(other)] : still;
      for (const Place& to : places_on(other, motion)) {
        Temporary brace;
        brace.from = {frame_.timbers[at(from.timber)].mark, Length::from_inches(from.station)};
        brace.to = {frame_.timbers[at(other)].mark, Length::from_inches(to.station)};
        try_one(from, to.point, to.speed, most, brace, best);
      }
    }
  }

  int number_of(const Temporary& brace) {
    for (std::size_t i = 0; i < model_.temporaries.size(); ++i) {
      Temporary known = model_.temporaries[i];
      known.name.clear();
      if (known == brace) return static_cast<int>(i);
    }
    return add_temporary(model_, frame_, brace);
  }

  /// Without those that later ones made needless.
  std::vector<int> pruned(std::vector<int> added) {
    for (std::size_t i = 0; i + 1 < added.size();) {
      std::vector<int> rest;
      for (const int t : up_)
        if (t != added[i]) rest.push_back(t);
      if (run_.rigid(timbers_, rest) && run_.stands(timbers_, rest)) {
        up_ = rest;
        added.erase(added.begin() + static_cast<std::ptrdiff_t>(i));
      } else {
        ++i;
      }
    }
    sort_up(added);
    return added;
  }

  StandingModel& model_;
  const Frame& frame_;
  StandingRun& run_;
  std::vector<int> timbers_, up_;
  std::vector<char> rigid_;
};

}  // namespace

std::vector<int> brace_step(StandingModel& model, const Frame& frame, StandingRun& run, std::span<const int> timbers,
                            std::span<const int> temporaries) {
  return Bracer(model, frame, run, timbers, temporaries).find();
}

}  // namespace bentbook
