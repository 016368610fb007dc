#pragma once
/// A found order looked at again without the search's means: the solids themselves moved in samples along the path that
/// the lead is shown, and every state judged from nothing by a model of the order as it is handed out; some of these go
/// to an outside solver.

#include <algorithm>
#include <cstdio>
#include <string>
#include <vector>

#include "frame/facts.h"
#include "geometry/solid.h"
#include "raising/check.h"
#include "raising/stability/force_cases.h"
#include "raising/stability/force_system.h"
#include "raising/stability/mechanism.h"
#include "raising/stability/standing.h"

namespace bentbook {

class Audit {
 public:
  /// `number`: which frame this is; from it which states are written out.
  Audit(const Frame& frame, const RaisingPlan& plan, int number)
      : frame_(frame), plan_(plan), model_(make_standing_model(frame, plan)), states_(number) {
    for (const Timber& t : frame.timbers) solids_.push_back(solid_of(t));
  }

  /// What is wrong, in words for the log.
  std::vector<std::string> run() {
    Blocking blocking(frame_);
    std::vector<int> stood, up;
    for (std::size_t s = 0; s < plan_.steps.size(); ++s) {
      const RaisingStep& step = plan_.steps[s];
      for (const SetPiece& piece : step.set_first) bring(s, blocking, {piece.mark}, stood);
      bring(s, blocking, step.marks, stood);
      for (const std::string& name : step.put_up) up.push_back(temporary(s, name));
      std::sort(up.begin(), up.end());
      judge(s, stood, up, "when the sling comes off");
      without_one(s, stood, up);
      for (const std::string& name : step.take_out)
        up.erase(std::remove(up.begin(), up.end(), temporary(s, name)), up.end());
      if (step.take_out.empty()) continue;
      judge(s, stood, up, "with what is taken out");
      without_one(s, stood, up);
    }
    return faults_;
  }

 private:
  /// What comes together goes in beside what stands, without a clash, and stands then.
  void bring(std::size_t s, Blocking& blocking, const std::vector<std::string>& marks, std::vector<int>& stood) {
    std::vector<int> coming;
    coming.reserve(marks.size());
    for (const std::string& mark : marks) coming.push_back(timber_by_mark(frame_, mark));
    const Entry entry = blocking.entry(coming, stood, entry_limits(plan_));
    if (!entry.free) say(s, "no way in");
    const bool spreads = std::any_of(entry.path.begin(), entry.path.end(),
                                     [](const Move& m) { return m.kind == MoveKind::kSpread && m.distance > 0; });
    if (spreads && plan_.fasten == FastenWhen::kWithStep) say(s, "what is fastened is spread");
    move_in(s, coming, stood, entry.path);
    stood.insert(stood.end(), coming.begin(), coming.end());
    std::sort(stood.begin(), stood.end());
  }
  void say(std::size_t step, const std::string& what) {
    faults_.push_back("step " + std::to_string(step) + ": " + what);
  }
  int temporary(std::size_t s, const std::string& name) {
    for (std::size_t i = 0; i < plan_.temporaries.size(); ++i)
      if (plan_.temporaries[i].name == name) return static_cast<int>(i);
    say(s, "no temporary " + name);
    return -1;
  }
  void judge(std::size_t s, const std::vector<int>& stood, const std::vector<int>& up, const char* when) {
    const StandingCheck check = check_standing(model_, stood, up, StandingDepth::kStands);
    // A state now and then, and each that can't be decided from nothing (the check has come to it step by step), goes
    // to an outside solver of linear programs.
    if (check.mechanisms == 0 && (check.not_decided || states_++ % 40 == 0)) write_programs(s, stood, up, when);
    if (!check.stands() && !check.not_decided)
      say(s, std::string("does not stand ") + when + (check.mechanisms > 0 ? ": a mechanism" : ""));
  }

  /// Where the lead wants a spare: the same without any one of the temporaries.
  void without_one(std::size_t s, const std::vector<int>& stood, const std::vector<int>& up) {
    for (std::size_t i = 0; plan_.spare && i < up.size(); ++i) {
      std::vector<int> less = up;
      less.erase(less.begin() + static_cast<std::ptrdiff_t>(i));
      judge(s, stood, less, "without one of its temporaries");
    }
  }

  /// Columns (their bounds and what a unit does to the bodies), then each case at λ = 1.
  void write_programs(std::size_t s, const std::vector<int>& stood, const std::vector<int>& up,
                      const char* when) const {
    const StandingSet set = standing_set(model_, stood, up);
    const ForceSystem system = force_system(model_, set.timbers, set.rows);
    std::printf("program %d step %d %s\n", system.size(), static_cast<int>(s), when);
    for (const ForceSystem::Column& c : system.columns) {
      std::printf("column %.17g %.17g %d %d", c.lo, c.hi, c.a, c.b);
      for (const double* on : {c.on_a, c.on_b})
        for (int k = 0; k < 6; ++k) std::printf(" %.17g", on[k]);
      std::printf("\n");
    }
    for (const LoadCase& load : load_cases(model_, set)) {
      const CaseLoads loads = case_loads(model_, system.bodies, load);
      std::printf("needs");
      for (int k = 0; k < system.size(); ++k) std::printf(" %.17g", loads.fixed[k] + loads.scaled[k]);
      std::printf("\n");
    }
    std::printf("solve\n");
  }

  [[nodiscard]] Vec3 corner(int t, const Placement& at, int c) const {
    const Box& b = solids_[static_cast<std::size_t>(t)].blank;
    return to_world(at,
                    {(c & 1) != 0 ? b.hi.x : b.lo.x, (c & 2) != 0 ? b.hi.y : b.lo.y, (c & 4) != 0 ? b.hi.z : b.lo.z});
  }
  [[nodiscard]] bool apart(int a, const Placement& at_a, int b, const Placement& at_b) const {
    double lo[2][3], hi[2][3];
    for (int side = 0; side < 2; ++side)
      for (int c = 0; c < 8; ++c) {
        const Vec3 p = corner(side == 0 ? a : b, side == 0 ? at_a : at_b, c);
        const double v[3] = {p.x, p.y, p.z};
        for (int k = 0; k < 3; ++k) {
          lo[side][k] = c == 0 ? v[k] : std::min(lo[side][k], v[k]);
          hi[side][k] = c == 0 ? v[k] : std::max(hi[side][k], v[k]);
        }
      }
    for (int k = 0; k < 3; ++k)
      if (hi[0][k] <= lo[1][k] || hi[1][k] <= lo[0][k]) return true;
    return false;
  }
  void meet(std::size_t s, int a, const Placement& at_a, int b, const Placement& at_b) {
    if (apart(a, at_a, b, at_b)) return;
    const double shared =
        shared_volume(solids_[static_cast<std::size_t>(a)], at_a, solids_[static_cast<std::size_t>(b)], at_b);
    if (shared > 0.3)
      say(s, frame_.timbers[static_cast<std::size_t>(a)].mark + " runs into " +
                 frame_.timbers[static_cast<std::size_t>(b)].mark + " by " + std::to_string(shared) + " in³");
  }
  static Placement moved(Placement at, Vec3 by) {
    at.origin = at.origin + by;
    return at;
  }
  static Placement swung(const Placement& at, const Move& m, double angle) {
    const double c = libm::cos(angle), sn = libm::sin(angle);
    const auto turn = [&](Vec3 v) {
      return c * v + sn * cross(m.direction, v) + ((1 - c) * dot(m.direction, v)) * m.direction;
    };
    return {m.pivot + turn(at.origin - m.pivot), turn(at.x), turn(at.y), turn(at.z)};
  }

  /// Backward from the place.
  void move_in(std::size_t s, const std::vector<int>& coming, const std::vector<int>& stood,
               const std::vector<Move>& path) {
    const Move* spread = nullptr;
    for (const Move& m : path)
      if (m.kind == MoveKind::kSpread) spread = &m;
    const auto gives = [&](int t) {
      return spread != nullptr && std::count(spread->who.begin(), spread->who.end(), t) > 0;
    };
    const auto at_of = [&](int t) { return frame_.timbers[static_cast<std::size_t>(t)].at; };
    const auto all_meet = [&](const std::vector<Placement>& where, double open) {
      for (std::size_t i = 0; i < coming.size(); ++i)
        for (const int t : stood)
          meet(s, coming[i], where[i], t, gives(t) ? moved(at_of(t), open * spread->direction) : at_of(t));
    };
    std::vector<Placement> where;
    where.reserve(coming.size());
    for (const int t : coming) where.push_back(at_of(t));
    if (spread != nullptr)
      for (double d = 0; d < spread->distance; d += 0.5) all_meet(where, d);
    const double open = spread != nullptr ? spread->distance : 0;
    for (std::size_t m = path.size(); m-- > 0;) {
      const Move& move = path[m];
      if (move.kind == MoveKind::kSpread) continue;
      if (move.kind == MoveKind::kSwing) {
        for (int i = 1; i <= 24; ++i) {
          where.clear();
          for (const int t : coming) where.push_back(swung(at_of(t), move, -move.distance * i / 24));
          all_meet(where, open);
        }
        continue;
      }
      const std::vector<Placement> end = where;
      for (double d = 0; d < std::min(move.distance, 600.0); d += d < 12 ? 0.75 : d < 60 ? 2 : 5) {
        for (std::size_t i = 0; i < where.size(); ++i) where[i] = moved(end[i], -d * move.direction);
        all_meet(where, open);
      }
      for (std::size_t i = 0; i < where.size(); ++i) where[i] = moved(end[i], -move.distance * move.direction);
    }
  }

  const Frame& frame_;
  const RaisingPlan& plan_;
  StandingModel model_;
  std::vector<Solid> solids_;
  std::vector<std::string> faults_;
  int states_;
};

}  // namespace bentbook
