#include <algorithm>

#include "numeric/index.h"
#include "numeric/sorting.h"
#include "raising/limits.h"
#include "raising/stability/mechanism.h"
#include "raising/stability/standing.h"

namespace bentbook {
namespace {

constexpr double kKnee = 30;   ///< from the joint, along both timbers
constexpr double kHigh = 84;   ///< a ground brace's head above the post's foot, at most
constexpr double kLean = 0.7;  ///< its run for its rise: 84 by 59 in are 103 in, short enough to push

constexpr double kNearest = 36, kFarthest = 200;  ///< between timbers that are not joined
constexpr std::size_t kMostOthers = 24;

/// To a hundredth of an inch, as a person would say it.
Length about(double inches) { return Length::inches(static_cast<std::int64_t>(libm::floor(inches * 100 + 0.5)), 100); }

struct Candidates {
  const Frame& frame;
  const StandingModel& model;
  const StandingSet& set;
  std::vector<Temporary> found;

  [[nodiscard]] const Timber& timber(int i) const { return frame.timbers[at(i)]; }
  void to_ground(int t) {
    const Timber& post = timber(t);
    const double up = std::min(0.75 * post.length, kHigh);
    const Vec3 head = post.at.origin + up * post.at.x;
    const double rise = head.z - model.ground_z;
    if (!(rise > 12)) return;
    constexpr double kX[] = {1, -1, 0, 0}, kY[] = {0, 0, 1, -1};
    for (int k = 0; k < 4; ++k) {
      Temporary brace;
      brace.from = {post.mark, about(up)};
      brace.ground_x = about(head.x + kLean * rise * kX[k]);
      brace.ground_y = about(head.y + kLean * rise * kY[k]);
      brace.ground_z = about(model.ground_z);
      if (rise > kHigh + 12) brace.kind = TemporaryKind::kGuy;
      found.push_back(brace);
    }
  }
  void knees(int t, int joint) {
    const int other =
        model.joint_member[at(joint)] == t ? model.joint_receiver[at(joint)] : model.joint_member[at(joint)];
    if (other == t || set.place[at(other)] < 0) return;
    const Timber &a = timber(t), &b = timber(other);
    const double x = dot(model.joint_at[at(joint)] - a.at.origin, a.at.x);
    const double y = dot(model.joint_at[at(joint)] - b.at.origin, b.at.x);
    for (const double p : {x - kKnee, x + kKnee})
      for (const double q : {y - kKnee, y + kKnee}) {
        if (p < 0 || p > a.length || q < 0 || q > b.length) continue;
        const Vec3 from = a.at.origin + p * a.at.x, to = b.at.origin + q * b.at.x;
        if (norm(from - to) < 12) continue;
        Temporary brace;
        brace.from = {a.mark, about(p)};
        brace.to = {b.mark, about(q)};
        found.push_back(brace);
      }
  }
  /// To timbers near that it is not joined to, from three quarters of its length.
  void to_others(int t) {
    const Timber& a = timber(t);
    const double x = 0.75 * a.length;
    const Vec3 from = a.at.origin + x * a.at.x;
    std::vector<std::pair<double, Temporary>> near;
    for (const int other : set.timbers) {
      if (other == t || model.timber_kind[at(other)] == TimberKind::kBrace) continue;
      const Timber& b = timber(other);
      for (const double share : {0.1, 0.5, 0.9}) {
        const Vec3 to = b.at.origin + share * b.length * b.at.x;
        const double length = norm(from - to);
        if (length < kNearest || length > kFarthest || libm::fabs(from.z - to.z) > 0.9 * length) continue;
        Temporary brace;
        brace.from = {a.mark, about(x)};
        brace.to = {b.mark, about(share * b.length)};
        near.emplace_back(length, brace);
      }
    }
    sort_by(near, [](const auto& p, const auto& q) { return p.first < q.first; });
    if (near.size() > kMostOthers) near.resize(kMostOthers);
    for (const auto& [length, brace] : near) found.push_back(brace);
  }
  void of(int t) {
    const TimberKind kind = model.timber_kind[at(t)];
    if (kind == TimberKind::kPost || kind == TimberKind::kKingPost || kind == TimberKind::kQueenPost) to_ground(t);
    if (kind != TimberKind::kPost && kind != TimberKind::kBrace) to_others(t);
    int last = -1;
    for (const int r : model.touches[at(t)]) {
      const int joint = model.rows[at(r)].joint;
      if (joint < 0 || joint == last) continue;
      last = joint;
      knees(t, joint);
    }
  }
};

class Search {
 public:
  Search(const StandingModel& model, const Frame& frame, const StandingRun& run, std::span<const int> timbers,
         std::span<const int> temporaries)
      : model_(model),
        frame_(frame),
        timbers_(timbers),
        set_(standing_set(model, timbers, temporaries)),
        run_(run.on(model_)),
        first_(static_cast<int>(model.temporaries.size())),
        up_(temporaries.begin(), temporaries.end()) {}

  BraceProposal run() {
    BraceProposal proposal;
    StandingCheck check = run_.check(timbers_, up_, StandingDepth::kStands);
    proposal.at_least = check.mechanisms > 0 ? check.mechanisms : check.stands() ? 0 : 1;
    proposal.cures = check.stands();
    if (proposal.cures || check.mechanisms > limits::kMostBraces || set_.timbers.empty()) return proposal;
    add_candidates(check);
    if (check.mechanisms > 0 && !hold_mechanisms()) return proposal;
    hold_cases();
    if (!run_.stands(timbers_, up_with())) return proposal;
    take_out();
    proposal.cures = true;
    for (const int c : chosen_) proposal.braces.push_back(model_.temporaries[at(c)]);
    return proposal;
  }

 private:
  [[nodiscard]] std::vector<int> up_with() const {
    std::vector<int> all = up_;
    all.insert(all.end(), chosen_.begin(), chosen_.end());
    return all;
  }
  void add_candidates(const StandingCheck& check) {
    Candidates candidates{frame_, model_, set_, {}};
    std::vector<char> moves(frame_.timbers.size(), 0);
    if (check.mechanisms > 0) {
      const StandingCheck modes = run_.check(timbers_, up_, StandingDepth::kExplain);
      for (const Mode& mode : modes.modes)
        for (const TimberMotion& m : mode.motions) moves[at(m.timber)] = 1;
    }
    for (const int t : set_.timbers)
      if (moves[at(t)] != 0 || model_.timber_kind[at(t)] == TimberKind::kPost || check.mechanisms == 0)
        candidates.of(t);
    for (const Temporary& brace : candidates.found) add_temporary(model_, frame_, brace);
  }
  [[nodiscard]] int count() const { return static_cast<int>(model_.temporaries.size()); }
  /// By candidate and mode; 0 for what holds nothing.
  [[nodiscard]] double give_of(int candidate, const std::vector<TimberMotion>& by_place) const {
    const int r = model_.temporary_row[at(candidate)];
    if (r < 0) return 0;
    const HoldRow& row = model_.rows[at(r)];
    double sum = 0;
    for (const auto& [timber, sign] : {std::pair{row.a, 1.0}, std::pair{row.b, -1.0}}) {
      if (timber < 0) continue;
      const int p = set_.place[at(timber)];
      if (p < 0) return 0;
      const TimberMotion& m = by_place[at(p)];
      sum += sign * dot(row.direction, m.move + cross(m.turn, row.point - model_.bodies[at(timber)].cg));
    }
    return sum;
  }

  /// One candidate for each mechanism: the one that most of what is left of the null space would stretch.
  bool hold_mechanisms() {
    const Mechanisms found = mechanisms_of(model_, standing_set(model_, timbers_, up_), rigid_joints(model_), true);
    const std::size_t modes = found.modes.size();
    std::vector<std::vector<double>> gives;
    for (int c = first_; c < count(); ++c) {
      std::vector<double> g;
      for (const auto& mode : found.modes) g.push_back(give_of(c, mode));
      gives.push_back(std::move(g));
    }
    for (std::size_t k = 0; k < modes; ++k) {
      std::size_t best = 0;
      double most = 0;
      for (std::size_t c = 0; c < gives.size(); ++c) {
        double size = 0;
        for (const double g : gives[c]) size += g * g;
        // Of braces as good as each other the first, and one that also pushes before one that does not.
        const int r = model_.temporary_row[at(first_) + c];
        if (r < 0 || !model_.rows[at(r)].two_way) size /= 4;
        if (size > most * 1.000001) {
          most = size;
          best = c;
        }
      }
      if (!(most > 1e-9)) return false;
      chosen_.push_back(first_ + static_cast<int>(best));
      deflate(gives, best);
    }
    return true;
  }
  static void deflate(std::vector<std::vector<double>>& gives, std::size_t best) {
    std::vector<double> axis = gives[best];
    double size = 0;
    for (const double a : axis) size += a * a;
    for (auto& g : gives) {
      double along = 0;
      for (std::size_t k = 0; k < axis.size(); ++k) along += g[k] * axis[k];
      for (std::size_t k = 0; k < axis.size(); ++k) g[k] -= along / size * axis[k];
    }
  }

  void hold_cases() {
    for (int more = 0; more < limits::kMostBraces; ++more) {
      const StandingCheck check = run_.check(timbers_, up_with(), StandingDepth::kStands);
      if (check.stands() || check.fall.empty()) return;
      std::vector<TimberMotion> by_place(set_.timbers.size());
      for (const TimberMotion& m : check.fall)
        if (set_.place[at(m.timber)] >= 0) by_place[at(set_.place[at(m.timber)])] = m;
      int best = -1;
      double most = 0;
      for (int c = first_; c < count(); ++c) {
        if (std::find(chosen_.begin(), chosen_.end(), c) != chosen_.end()) continue;
        const int r = model_.temporary_row[at(c)];
        if (r < 0) continue;
        // It falls along the motion; a row's force works against it where the motion runs against its direction.
        const double g = give_of(c, by_place);
        const double holds = model_.rows[at(r)].two_way ? libm::fabs(g) : g > 0 ? g : 0;
        if (holds > most * 1.000001) {
          most = holds;
          best = c;
        }
      }
      if (best < 0) return;
      chosen_.push_back(best);
    }
  }
  void take_out() {
    for (std::size_t k = chosen_.size(); k-- > 0;) {
      const std::vector<int> kept = chosen_;
      chosen_.erase(chosen_.begin() + static_cast<std::ptrdiff_t>(k));
      if (!run_.rigid(timbers_, up_with()) || !run_.stands(timbers_, up_with())) chosen_ = kept;
    }
  }

  StandingModel model_;
  const Frame& frame_;
  std::span<const int> timbers_;
  StandingSet set_;
  StandingRun run_;
  int first_;
  std::vector<int> up_, chosen_;
};

}  // namespace

BraceProposal propose_braces(const StandingModel& model, const Frame& frame, StandingRun& run,
                             std::span<const int> timbers, std::span<const int> temporaries) {
  return Search(model, frame, run, timbers, temporaries).run();
}

}  // namespace bentbook
