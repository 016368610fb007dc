#include "raising/stability/mode_name.h"

#include <algorithm>

namespace bentbook {
namespace {

/// Less than this share of the largest travel is standing still.
constexpr double kStill = 1e-3;

struct Travel {
  Vec3 a, b, cg;
  [[nodiscard]] double most() const { return std::max({norm(a), norm(b), norm(cg)}); }
};
Travel travel_of(const StandingModel& model, const TimberMotion& m) {
  const StandingBody& body = model.bodies[static_cast<std::size_t>(m.timber)];
  return {m.move + cross(m.turn, body.end_a - body.cg), m.move + cross(m.turn, body.end_b - body.cg), m.move};
}

WorldAxis main_axis(Vec3 d) {
  const double x = libm::fabs(d.x), y = libm::fabs(d.y), z = libm::fabs(d.z);
  if (z > 1.5 * x && z > 1.5 * y) return WorldAxis::kUp;
  return x > y ? WorldAxis::kAcross : WorldAxis::kAlong;
}

/// The one bent of all that moves, −1: none.
int only_bent(const StandingModel& model, const std::vector<TimberMotion>& motions) {
  int bent = -1;
  for (const TimberMotion& m : motions) {
    const int b = model.bent[static_cast<std::size_t>(m.timber)];
    if (b < 0 || (bent >= 0 && b != bent)) return -1;
    bent = b;
  }
  return bent;
}

void name_one(const StandingModel& model, Mode& mode) {
  const TimberMotion& m = mode.motions.front();
  const Travel travel = travel_of(model, m);
  const double most = travel.most();
  const double length = model.length[static_cast<std::size_t>(mode.timber)];
  const double about = libm::fabs(dot(m.turn, model.axis[static_cast<std::size_t>(mode.timber)])) * length;
  if (most < 0.1 * about) {
    mode.kind = ModeKind::kTurns;
  } else if (norm(m.turn) * length < 0.02 * most) {
    mode.kind = ModeKind::kSlides;
    mode.axis = main_axis(m.move);
  } else {
    const double a = norm(travel.a), b = norm(travel.b);
    mode.kind = std::min(a, b) < 0.2 * std::max(a, b) ? ModeKind::kSwings : ModeKind::kMoves;
    mode.at_end_a = a < b;
    mode.axis = main_axis(a < b ? travel.b : travel.a);
  }
}

}  // namespace

Mode name_mode(const StandingModel& model, std::vector<TimberMotion> motions) {
  Mode mode;
  double most = 0;
  for (const TimberMotion& m : motions) {
    // Turning in place moves no end: its size is then that of the arrises.
    const double size = std::max(travel_of(model, m).most(), 4 * norm(m.turn));
    if (size > most) {
      most = size;
      mode.timber = m.timber;
    }
  }
  if (!(most > 0)) return mode;
  Vec3 sum;
  for (TimberMotion& m : motions) {
    m.move = (1 / most) * m.move;
    m.turn = (1 / most) * m.turn;
    if (std::max(travel_of(model, m).most(), 4 * norm(m.turn)) > kStill) mode.motions.push_back(m);
    const Travel travel = travel_of(model, m);
    for (const Vec3& d : {travel.a, travel.b, travel.cg})
      sum = sum + Vec3{libm::fabs(d.x), libm::fabs(d.y), libm::fabs(d.z)};
  }
  if (mode.motions.size() == 1) {
    name_one(model, mode);
    return mode;
  }
  mode.axis = main_axis(sum);
  mode.bent = only_bent(model, mode.motions);
  bool posts = false;
  for (const TimberMotion& m : mode.motions)
    posts = posts || model.timber_kind[static_cast<std::size_t>(m.timber)] == TimberKind::kPost;
  mode.kind = posts && mode.axis != WorldAxis::kUp ? ModeKind::kRacks : ModeKind::kMoves;
  return mode;
}

}  // namespace bentbook
