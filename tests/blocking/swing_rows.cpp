/// Writes timbers that are swung into place, and ones that can't be, as text for tests/blocking/check.mjs.
///   swing_rows CASES SEED
/// In random frames a timber for which a swing is found, whether or not it could come straight; and scenes of plain
/// timbers in which nothing but a swing will do: a beam on a post, cheeks beside its end, stops before both ends,
/// something over it. case free: the way said; case stopped: each swing that is tried where none is said to be free.
/// At least CASES of either from frames and from scenes. Then CASES timbers for which a standing one gives way.

#include <array>
#include <cstdlib>

#include "frame/placing/solve_frame.h"
#include "raising/insertion/springing.h"
#include "solid_rows.h"

using namespace bentbook;

namespace {

constexpr double kTurn = 12 * libm::kPi / 180;  ///< as blocking_spring.cpp tries

void write_list(const char* name, const std::vector<int>& list) {
  std::printf("%s", name);
  for (const int t : list) std::printf(" %d", t);
  std::printf("\n");
}

void write_case(const char* what, int coming, const std::vector<int>& standing, const std::vector<Move>& moves) {
  std::printf("case %s\n", what);
  write_list("coming", {coming});
  write_list("standing", standing);
  write_list("blockers", {});
  for (const Move& m : moves) {
    std::printf("move %d %.17g %.17g %.17g %.17g %.17g %.17g %.17g", static_cast<int>(m.kind), m.direction.x,
                m.direction.y, m.direction.z, m.distance, m.pivot.x, m.pivot.y, m.pivot.z);
    for (const int t : m.who) std::printf(" %d", t);
    std::printf("\n");
  }
  std::printf("judge\n");
}

/// All that could have been said: about each end that stands, either way round both of the timber's cross axes.
void write_stopped(const Frame& frame, int timber, const std::vector<int>& standing, double far) {
  const Placement& at = frame.timbers[static_cast<std::size_t>(timber)].at;
  for (const Joint& joint : frame.joints) {
    if (joint.member != timber || joint.crossing) continue;
    if (std::find(standing.begin(), standing.end(), joint.receiver) == standing.end()) continue;
    for (const Vec3& axis : {at.y, -1 * at.y, at.z, -1 * at.z}) {
      Move lower, swing{MoveKind::kSwing, axis, kTurn, joint.where, {}};
      lower.distance = far;
      write_case("stopped", timber, standing, {lower, swing});
    }
  }
}

void write_plan(const Frame& frame, int& number) {
  std::printf("plan %d\n", number++);
  for (const Timber& t : frame.timbers) write_timber(t);
}

struct Counts {
  int free = 0, stopped = 0;
};

/// Random frames: only those with a timber that can be swung in are written.
Counts from_frames(Random& random, int cases, int& number) {
  Counts counts;
  while (counts.free < cases || counts.stopped < cases) {
    const auto frame = solve_frame(plan_to_check(random));
    if (!frame || clashes(*frame)) continue;
    Blocking::Graph in(*frame);
    const int count = static_cast<int>(frame->timbers.size());
    bool begun = false;
    for (int t = 0; t < count; ++t) {
      std::vector<int> standing;
      for (const Joint& j : frame->joints)
        if (j.member == t && chance(random, 80)) standing.push_back(j.receiver);
      if (standing.empty()) continue;
      const int share = static_cast<int>(random.whole(0, 2)) * 20;
      for (int other = 0; other < count; ++other)
        if (other != t && chance(random, share)) standing.push_back(other);
      const int coming[] = {t};
      const EntryCase entry = case_of(in, coming, standing);
      if (entry.coming.empty()) continue;
      const std::vector<Move> moves = find_swing(in, entry);
      // Nearly all are stopped: of those only some, beside ones that are not.
      if (moves.empty() && (!begun || counts.stopped >= cases)) continue;
      if (!begun) write_plan(*frame, number);
      begun = true;
      if (moves.empty())
        write_stopped(*frame, t, entry.standing, in.far);
      else
        write_case("free", t, entry.standing, moves);
      ++(moves.empty() ? counts.stopped : counts.free);
    }
    if (begun) std::printf("end\n");
  }
  return counts;
}

/// Random frames: timbers that go between two standing ones, of which one gives way.
int spreads_from_frames(Random& random, int cases, int& number) {
  int written = 0;
  while (written < cases) {
    const auto frame = solve_frame(plan_to_check(random));
    if (!frame || clashes(*frame)) continue;
    Blocking blocking(*frame);
    bool begun = false;
    for (int t = 0; t < blocking.count(); ++t) {
      std::vector<int> standing;
      for (const Joint& j : frame->joints)
        if (j.member == t && frame->timbers[static_cast<std::size_t>(j.receiver)].kind == TimberKind::kPost)
          standing.push_back(j.receiver);
      if (standing.size() < 2) continue;
      for (int other = 0; other < blocking.count(); ++other)
        if (other != t && frame->timbers[static_cast<std::size_t>(other)].kind == TimberKind::kSill)
          standing.push_back(other);
      std::sort(standing.begin(), standing.end());
      standing.erase(std::unique(standing.begin(), standing.end()), standing.end());
      const int coming[] = {t};
      const Entry entry = blocking.entry(coming, standing);
      if (!entry.free || entry.path.front().kind != MoveKind::kSpread) continue;
      if (!begun) write_plan(*frame, number);
      begun = true;
      write_case("free", t, standing, entry.path);
      ++written;
    }
    if (begun) std::printf("end\n");
  }
  return written;
}

/// A scene of plain timbers turned about the upright through the origin.
class Scene {
 public:
  explicit Scene(double turn) : along_{libm::cos(turn), libm::sin(turn), 0} {}

  /// Between two corners, its axis along the longest side.
  int add(Vec3 lo, Vec3 hi) {
    const std::array<double, 3> size = {hi.x - lo.x, hi.y - lo.y, hi.z - lo.z};
    const std::size_t longest = static_cast<std::size_t>(std::max_element(size.begin(), size.end()) - size.begin());
    Timber t;
    t.mark = "S-" + std::to_string(frame.timbers.size());
    t.kind = TimberKind::kOther;
    t.placed = true;
    t.length = size[longest];
    const double y = size[longest == 1 ? 0 : 1] / 2, z = size[longest == 2 ? 0 : 2] / 2;
    t.sides = {-y, y, -z, z};
    Vec3 start = 0.5 * (lo + hi);
    const Vec3 across = cross({0, 0, 1}, along_), up{0, 0, 1};
    if (longest == 0) {
      start.x = lo.x;
      t.at = {{}, along_, across, up};
    } else if (longest == 1) {
      start.y = lo.y;
      t.at = {{}, across, -1 * along_, up};
    } else {
      start.z = lo.z;
      t.at = {{}, up, across, -1 * along_};
    }
    t.at.origin = placed(start);
    frame.timbers.push_back(t);
    return static_cast<int>(frame.timbers.size()) - 1;
  }
  [[nodiscard]] Vec3 placed(Vec3 p) const { return p.x * along_ + p.y * cross({0, 0, 1}, along_) + Vec3{0, 0, p.z}; }

  Frame frame;

 private:
  Vec3 along_;
};

/// Beam first, then the post that it lies on, then what is in its way or nearly.
Frame some_scene(Random& random) {
  Scene scene(random.real(0, 2 * libm::kPi));
  const double length = random.real(70, 340), breadth = random.real(1, 8), depth = random.real(4, 10);
  const double seat = random.real(60, 140), side = breadth / 2, top = seat + depth;
  scene.add({0, -side, seat}, {length, side, top});
  const double inset = chance(random, 50) ? 0 : random.real(1, 4);
  scene.add({inset, -4, 0}, {inset + 8, 4, seat});
  const double gap = random.real(1.2, 2.9);
  for (const double y : {-side - gap - 6, side + gap}) scene.add({inset, y, 0}, {inset + 6, y + 6, top + 40});
  scene.add({-6 - random.real(1, 2.9), -4, 0}, {-6 + 5 - random.real(1.5, 2.9), 4, top + 40});
  const double stop = length + random.real(0.3, 2.9);
  scene.add({stop, -6, 0}, {stop + 6, 6, top + 40});
  const double over = random.real(length / 3, length - 8), half = random.real(2, 12);
  scene.add({over, -half, top + 1}, {over + 6, half, top + 60});
  for (int i = static_cast<int>(random.whole(0, 2)); i > 0; --i) {
    // Thin ones too: a coarse turn would step past them.
    const double thick = random.real(0.5, 4), x = random.real(length / 2, length + 4);
    const double y = (chance(random, 50) ? 1 : -1) * random.real(side + 0.2, length / 4);
    scene.add({x, y, 0}, {x + random.real(0.5, 4), y + thick, random.real(seat - 10, top + 60)});
  }
  Joint joint;
  joint.kind = JointKind::kHousedButt;
  joint.bearing = Bearing::kBearsOn;
  joint.member = joint.carried = 0;
  joint.receiver = joint.carrier = 1;
  joint.end = End::kA;
  joint.where = scene.placed({chance(random, 50) ? inset : inset + 4, 0, seat});
  scene.frame.joints.push_back(joint);
  return scene.frame;
}

Counts from_scenes(Random& random, int cases, int& number) {
  Counts counts;
  while (counts.free < cases || counts.stopped < cases) {
    const Frame frame = some_scene(random);
    Blocking blocking(frame);
    bool clash = false;
    std::vector<int> standing;
    for (int t = 1; t < blocking.count(); ++t) {
      clash = clash || blocking.clash(0, t);
      standing.push_back(t);
    }
    if (clash) continue;
    const int coming[] = {0};
    const Entry entry = blocking.entry(coming, standing);
    if (entry.free ? entry.path.back().kind != MoveKind::kSwing || counts.free >= 2 * cases
                   : counts.stopped >= 2 * cases)
      continue;
    write_plan(frame, number);
    if (entry.free)
      write_case("free", 0, standing, entry.path);
    else
      write_stopped(frame, 0, standing, blocking.graph().far);
    ++(entry.free ? counts.free : counts.stopped);
    std::printf("end\n");
  }
  return counts;
}

}  // namespace

int main(int argc, char** argv) try {
  if (argc < 3) return 2;
  const int cases = std::atoi(argv[1]);
  Random random(std::strtoull(argv[2], nullptr, 10));
  int number = 0;
  from_frames(random, cases, number);
  from_scenes(random, cases, number);
  spreads_from_frames(random, cases, number);
  return 0;
} catch (...) {
  return 1;
}
