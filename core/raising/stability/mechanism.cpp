#include "raising/stability/mechanism.h"

#include <Eigen/Dense>
#include <algorithm>
#include <utility>

#include "numeric/index.h"
#include "numeric/sorting.h"

namespace bentbook {
namespace {

using Matrix = Eigen::MatrixXd;
using Index = Eigen::Index;

/// What a row says of a body that moves about `origin`: six numbers.
void write_row(Matrix& m, Index row, Index column, const HoldRow& hold, Vec3 origin, double sign) {
  const Vec3 turn = (1 / kMechanismLength) * cross(hold.point - origin, hold.direction);
  const double values[] = {hold.direction.x, hold.direction.y, hold.direction.z, turn.x, turn.y, turn.z};
  for (Index k = 0; k < 6; ++k) m(row, column + k) = sign * values[k];
}

/// Rows over some bodies, six columns to each.
struct Front {
  std::vector<int> bodies;  ///< in order
  Matrix rows;
};

/// No more rows than columns say the same.
void compress(Matrix& rows) {
  if (rows.rows() <= rows.cols()) return;
  const Eigen::HouseholderQR<Matrix> qr(rows);
  Matrix top = qr.matrixQR().topRows(rows.cols()).triangularView<Eigen::Upper>();
  rows = std::move(top);
}

struct Eliminated {
  int body = 0;
  std::vector<int> others;
  Eigen::ColPivHouseholderQR<Matrix> qr;  ///< of the body's own columns
  Matrix beside;                          ///< Q^T of the others' columns, the first `rank` rows
  Index rank = 0;
};

class Elimination {
 public:
  Elimination(int bodies, std::vector<Front> fronts) : fronts_(std::move(fronts)), touching_(at(bodies)) {
    for (std::size_t f = 0; f < fronts_.size(); ++f)
      for (const int b : fronts_[f].bodies) touching_[at(b)].push_back(static_cast<int>(f));
    left_.assign(at(bodies), 1);
    degree_.resize(at(bodies));
    for (int b = 0; b < bodies; ++b) degree_[at(b)] = static_cast<int>(neighbours(b).size());
  }

  int run() {
    int free = 0;
    for (std::size_t n = 0; n < left_.size(); ++n) free += eliminate(next());
    return free;
  }
  [[nodiscard]] double least_pivot() const { return least_; }

  /// Calls `take(motions)` with a basis vector (six numbers a body, in columns' units) for each free motion.
  template <class Take>
  void each_mode(const Take& take) const {
    for (std::size_t k = 0; k < done_.size(); ++k) {
      for (Index f = done_[k].rank; f < 6; ++f) {
        Eigen::VectorXd x = Eigen::VectorXd::Zero(static_cast<Index>(6 * left_.size()));
        Eigen::VectorXd own = Eigen::VectorXd::Zero(6);
        own(f) = 1;
        solve(done_[k], x, own);
        for (std::size_t back = k; back-- > 0;) {
          Eigen::VectorXd none = Eigen::VectorXd::Zero(6);
          solve(done_[back], x, none);
        }
        take(x);
      }
    }
  }

 private:
  [[nodiscard]] std::vector<int> neighbours(int body) const {
    std::vector<int> all;
    for (const int f : touching_[at(body)])
      for (const int b : fronts_[at(f)].bodies)
        if (b != body) all.push_back(b);
    sort_up(all);
    all.erase(std::unique(all.begin(), all.end()), all.end());
    return all;
  }

  [[nodiscard]] int next() const {
    int best = -1;
    for (std::size_t b = 0; b < left_.size(); ++b)
      if (left_[b] != 0 && (best < 0 || degree_[b] <= degree_[at(best)])) best = static_cast<int>(b);
    return best;
  }

  int eliminate(int body) {
    Eliminated e;
    e.body = body;
    e.others = neighbours(body);
    Index count = 0;
    for (const int f : touching_[at(body)]) count += fronts_[at(f)].rows.rows();
    Matrix own = Matrix::Zero(count, 6), beside = Matrix::Zero(count, static_cast<Index>(6 * e.others.size()));
    gather(e, own, beside);
    left_[at(body)] = 0;
    if (count > 0) {
      e.qr.compute(own);
      while (e.rank < 6 && e.rank < count && libm::fabs(e.qr.matrixR()(e.rank, e.rank)) > kHeldPivot) {
        const double pivot = libm::fabs(e.qr.matrixR()(e.rank, e.rank));
        least_ = least_ < 0 || pivot < least_ ? pivot : least_;
        ++e.rank;
      }
      beside.applyOnTheLeft(e.qr.householderQ().adjoint());
      e.beside = beside.topRows(e.rank);
      pass_on(e, beside);
    }
    touching_[at(body)].clear();
    const int free = 6 - static_cast<int>(e.rank);
    for (const int b : e.others) degree_[at(b)] = static_cast<int>(neighbours(b).size());
    done_.push_back(std::move(e));
    return free;
  }

  void gather(const Eliminated& e, Matrix& own, Matrix& beside) {
    Index row = 0;
    for (const int f : touching_[at(e.body)]) {
      Front& front = fronts_[at(f)];
      const Index n = front.rows.rows();
      for (std::size_t k = 0; k < front.bodies.size(); ++k) {
        const auto block = front.rows.block(0, static_cast<Index>(6 * k), n, 6);
        const int b = front.bodies[k];
        if (b == e.body) {
          own.block(row, 0, n, 6) = block;
          continue;
        }
        const auto where = std::lower_bound(e.others.begin(), e.others.end(), b) - e.others.begin();
        beside.block(row, static_cast<Index>(6 * where), n, 6) = block;
        auto& list = touching_[at(b)];
        list.erase(std::find(list.begin(), list.end(), f));
      }
      row += n;
      front.rows.resize(0, 0);
    }
  }

  void pass_on(const Eliminated& e, const Matrix& beside) {
    if (beside.rows() <= e.rank || e.others.empty()) return;
    Front front{e.others, beside.bottomRows(beside.rows() - e.rank)};
    compress(front.rows);
    for (const int b : e.others) touching_[at(b)].push_back(static_cast<int>(fronts_.size()));
    fronts_.push_back(std::move(front));
  }

  /// The body's motion from its neighbours' (in x) and its free part (`own`, pivoted order, entries past the rank).
  static void solve(const Eliminated& e, Eigen::VectorXd& x, Eigen::VectorXd& own) {
    if (e.rank > 0) {
      Eigen::VectorXd right = Eigen::VectorXd::Zero(e.rank);
      for (std::size_t k = 0; k < e.others.size(); ++k)
        right -= e.beside.middleCols(static_cast<Index>(6 * k), 6) * x.segment(6 * e.others[k], 6);
      const auto& r = e.qr.matrixR();
      right -= r.block(0, e.rank, e.rank, 6 - e.rank) * own.tail(6 - e.rank);
      own.head(e.rank) = r.topLeftCorner(e.rank, e.rank).template triangularView<Eigen::Upper>().solve(right);
      x.segment(6 * e.body, 6) = e.qr.colsPermutation() * own;
    } else {
      x.segment(6 * e.body, 6) = own;
    }
  }

  std::vector<Front> fronts_;
  std::vector<std::vector<int>> touching_;  ///< by body: fronts that still count
  std::vector<char> left_;
  std::vector<int> degree_;
  std::vector<Eliminated> done_;
  double least_ = -1;
};

/// Timbers that are one body: by place in the set, the body's number and the timber whose centre is its origin.
struct Bodies {
  std::vector<int> of;
  std::vector<int> origin;  ///< by body: a timber
};
Bodies bodies_of(const StandingModel& model, const StandingSet& set, const std::vector<char>& rigid_joint) {
  std::vector<int> root(set.timbers.size());
  for (std::size_t i = 0; i < root.size(); ++i) root[i] = static_cast<int>(i);
  const auto find = [&](int i) {
    while (root[at(i)] != i) i = root[at(i)] = root[at(root[at(i)])];
    return i;
  };
  for (std::size_t j = 0; j < rigid_joint.size(); ++j) {
    if (rigid_joint[j] == 0) continue;
    const int a = set.place[at(model.joint_member[j])], b = set.place[at(model.joint_receiver[j])];
    if (a < 0 || b < 0) continue;
    const int x = find(a), y = find(b);
    if (x != y) root[at(x > y ? x : y)] = x > y ? y : x;
  }
  Bodies bodies;
  bodies.of.assign(root.size(), -1);
  for (std::size_t i = 0; i < root.size(); ++i) {
    const int r = find(static_cast<int>(i));
    if (r == static_cast<int>(i)) {
      bodies.of[i] = static_cast<int>(bodies.origin.size());
      bodies.origin.push_back(set.timbers[i]);
    } else {
      bodies.of[i] = bodies.of[at(r)];
    }
  }
  return bodies;
}

std::vector<Front> fronts_of(const StandingModel& model, const StandingSet& set, const Bodies& bodies) {
  std::vector<std::pair<std::pair<int, int>, int>> keyed;
  for (const int r : set.rows) {
    const HoldRow& row = model.rows[at(r)];
    int a = bodies.of[at(set.place[at(row.a)])], b = row.b < 0 ? -1 : bodies.of[at(set.place[at(row.b)])];
    if (a == b) continue;
    keyed.push_back({{std::min(a, b), std::max(a, b)}, r});
  }
  sort_up(keyed);
  std::vector<Front> fronts;
  for (std::size_t i = 0; i < keyed.size();) {
    std::size_t end = i;
    while (end < keyed.size() && keyed[end].first == keyed[i].first) ++end;
    Front front;
    if (keyed[i].first.first >= 0) front.bodies.push_back(keyed[i].first.first);
    front.bodies.push_back(keyed[i].first.second);
    front.rows = Matrix::Zero(static_cast<Index>(end - i), static_cast<Index>(6 * front.bodies.size()));
    for (std::size_t k = i; k < end; ++k) {
      const HoldRow& row = model.rows[at(keyed[k].second)];
      for (std::size_t b = 0; b < front.bodies.size(); ++b) {
        const bool a_side = bodies.of[at(set.place[at(row.a)])] == front.bodies[b];
        const Vec3 origin = model.bodies[at(bodies.origin[at(front.bodies[b])])].cg;
        write_row(front.rows, static_cast<Index>(k - i), static_cast<Index>(6 * b), row, origin, a_side ? 1 : -1);
      }
    }
    compress(front.rows);
    fronts.push_back(std::move(front));
    i = end;
  }
  return fronts;
}

}  // namespace

StandingSet standing_set(const StandingModel& model, std::span<const int> timbers, std::span<const int> temporaries) {
  StandingSet set;
  set.place.assign(model.bodies.size(), -1);
  const int n = static_cast<int>(model.bodies.size());
  for (const int t : timbers)
    if (t >= 0 && t < n && model.bodies[at(t)].placed) set.place[at(t)] = 0;
  for (int t = 0; t < n; ++t) {
    if (set.place[at(t)] < 0) continue;
    set.place[at(t)] = static_cast<int>(set.timbers.size());
    set.timbers.push_back(t);
  }
  std::vector<char> up(model.temporaries.size(), 0);
  for (const int t : temporaries)
    if (t >= 0 && at(t) < up.size()) up[at(t)] = 1;
  for (const int t : set.timbers)
    for (const int r : model.touches[at(t)]) {
      const HoldRow& row = model.rows[at(r)];
      if (row.a != t || (row.b >= 0 && set.place[at(row.b)] < 0)) continue;
      if (row.temporary >= 0 && up[at(row.temporary)] == 0) continue;
      set.rows.push_back(r);
    }
  sort_up(set.rows);
  return set;
}

std::vector<char> rigid_joints(const StandingModel& model) {
  std::vector<char> rigid(model.joint_at.size(), 0);
  for (std::size_t r = 0; r < model.rows.size();) {
    const int joint = model.rows[r].joint;
    std::size_t end = r + 1;
    while (end < model.rows.size() && joint >= 0 && model.rows[end].joint == joint) ++end;
    if (joint >= 0 && end - r >= 6) {
      Matrix rows(static_cast<Index>(end - r), 6);
      const Vec3 origin = model.joint_at[at(joint)];
      for (std::size_t k = r; k < end; ++k) write_row(rows, static_cast<Index>(k - r), 0, model.rows[k], origin, 1);
      const Eigen::ColPivHouseholderQR<Matrix> qr(rows);
      // Far from the tolerance: what is nearly loose is left to the elimination.
      rigid[at(joint)] = libm::fabs(qr.matrixR()(5, 5)) > 1e-4 ? 1 : 0;
    }
    r = end;
  }
  return rigid;
}

Mechanisms mechanisms_of(const StandingModel& model, const StandingSet& set, const std::vector<char>& rigid_joint,
                         bool modes) {
  Mechanisms result;
  const Bodies bodies = bodies_of(model, set, rigid_joint);
  Elimination elimination(static_cast<int>(bodies.origin.size()), fronts_of(model, set, bodies));
  result.count = elimination.run();
  result.least_pivot = elimination.least_pivot();
  if (!modes) return result;
  elimination.each_mode([&](const Eigen::VectorXd& x) {
    std::vector<TimberMotion> motions;
    for (std::size_t i = 0; i < set.timbers.size(); ++i) {
      const Index b = 6 * bodies.of[i];
      const Vec3 turn = (1 / kMechanismLength) * Vec3{x(b + 3), x(b + 4), x(b + 5)};
      const Vec3 arm = model.bodies[at(set.timbers[i])].cg - model.bodies[at(bodies.origin[at(bodies.of[i])])].cg;
      motions.push_back({set.timbers[i], Vec3{x(b), x(b + 1), x(b + 2)} + cross(turn, arm), turn});
    }
    result.modes.push_back(std::move(motions));
  });
  return result;
}

}  // namespace bentbook
